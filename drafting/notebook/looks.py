"""How the bench looks. The page's own theme gives the colours of text.

In a window too narrow for both, the picture goes above the sliders (the row wraps upwards).
"""

from __future__ import annotations

STYLE = """<style>
.bench { gap: 12px; }
.bench .widget-html, .bench .widget-html-content { line-height: 1.4; }
.bench .choice > .widget-label { white-space: normal; line-height: 1.15; height: auto; }
.bench .meaning { font-size: 12px; color: var(--jp-ui-font-color2, #555); margin: -4px 0 6px 4px; }
.bench .refusal:not(:empty) { border-left: 4px solid #b3261e; padding: 2px 8px; }
.bench .pattern-preview .widget-html-content { width: 100%; height: 100%; }
.bench .pattern-preview svg { width: 100% !important; height: 100% !important;
  border: 1px solid #ccc; box-sizing: border-box; }
.bench .pattern-preview .guide { stroke: #b9b9b9; stroke-width: 1.6; mix-blend-mode: darken; }
.bench .findings p { margin: 0 0 4px; }
.bench .findings ul { margin: 0; padding-left: 1.2em; }
.bench table.girths { border-collapse: collapse; margin: 4px 0 8px; }
.bench table.girths th, .bench table.girths td { padding: 1px 10px 1px 0; text-align: right; }
.bench table.girths th { font-weight: normal; color: var(--jp-ui-font-color2, #555); }
.bench table.girths th[scope=row] { text-align: left; }
</style>"""
"""One style sheet for the widgets: nothing here knows a costume."""
