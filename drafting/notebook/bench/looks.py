"""How the bench looks. The page's own theme gives the colours of text.

In a window too narrow for both, the picture goes above the sliders (the row wraps upwards).
"""

from __future__ import annotations

STYLE = """<style>
.bench { gap: 12px; }
.bench .widget-html, .bench .widget-html-content { line-height: 1.4; }
.bench .widget-html-content { color: var(--jp-ui-font-color1, #222); }
.bench .findings p { margin: 0 0 4px; }
.bench .findings ul { margin: 0; padding-left: 1.2em; }
.bench table { border-collapse: collapse; margin: 4px 24px 8px 0; }
.bench table th, .bench table td { padding: 1px 10px 1px 0; text-align: right; }
.bench table th { font-weight: normal; color: var(--jp-ui-font-color2, #555); }
.bench table th[scope=row] { text-align: left; }
.bench .bench-top { gap: 12px; }
.bench table th:first-child { text-align: left; }
.bench summary { cursor: pointer; padding: 4px 2px; }
.bench svg.strip { display: block; }
.bench p.note { font-size: 12px; max-width: 560px; color: var(--jp-ui-font-color2, #555); }
</style>"""
"""One style sheet for the widgets: nothing here knows a costume."""
