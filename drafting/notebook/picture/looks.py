"""How the picture looks on the screen.

It is a sheet of paper on either theme: what is shown is what gets printed, and dark ink on light
paper stays legible; in a dark page the paper is toned down so that it does not glare. Nothing is
told by colour alone: the edge under the pointer is a solid band, its partner a dashed one.
"""

from __future__ import annotations

PAPER, DIM_PAPER = "#ffffff", "#e8e4da"

LOOKS = f"""<style>
.pattern-preview .widget-html-content {{ width: 100%; height: 100%; }}
.pattern-preview svg {{ display: block; box-sizing: border-box; width: 100%; height: 100%;
  --paper: {PAPER}; background: var(--paper); border: 1px solid #b8b8b8; border-radius: 2px; }}
body[data-jp-theme-light="false"] .pattern-preview svg {{ --paper: {DIM_PAPER}; border-color: #555; }}
.pattern-preview svg path {{ vector-effect: non-scaling-stroke; pointer-events: none; }}
.pattern-preview svg text {{ pointer-events: none; user-select: none; }}
.pattern-preview .halo {{ stroke: var(--paper); }}
.pattern-preview .grid path {{ fill: none; stroke-width: 1; }}
.pattern-preview .grid .fine {{ stroke: #1b3a57; stroke-opacity: .09; }}
.pattern-preview .grid .strong {{ stroke: #1b3a57; stroke-opacity: .22; }}
.pattern-preview .foot {{ fill: var(--paper); stroke: #1b3a57; stroke-opacity: .3; }}
.pattern-preview .scale-check {{ fill: none; stroke: #111; stroke-width: 1.5; }}
.pattern-preview .measured, .pattern-preview .seams {{ fill: #222; }}
.pattern-preview .guide {{ stroke: #a9a9a9; stroke-width: 1.6; mix-blend-mode: multiply; }}
.pattern-preview svg .hit {{ fill: none; stroke: transparent; stroke-width: 13;
  pointer-events: stroke; stroke-linejoin: round; }}
.pattern-preview .said {{ visibility: hidden; }}
.pattern-preview .edge .said {{ font-weight: bold; }}
.pattern-preview .seam:hover .hit, .pattern-preview .seam.looked .hit {{ stroke: #1f4e79;
  stroke-opacity: .75; stroke-dasharray: 9 6; stroke-width: 7; }}
.pattern-preview .edge:hover .hit, .pattern-preview .edge.looked .hit {{ stroke: #d98a00;
  stroke-opacity: .6; stroke-dasharray: none; stroke-width: 13; }}
.pattern-preview .looked > .said {{ visibility: visible; }}
.pattern-preview .seams:has(.edge:hover) .looked > .said {{ visibility: hidden; }}
.pattern-preview .seams .seam:hover > .said, .pattern-preview .seams .edge:hover > .said {{
  visibility: visible !important; }}
.pattern-view {{ gap: 2px 6px; }}
.pattern-view .jupyter-button {{ width: auto; padding: 0 10px; }}
</style>"""
