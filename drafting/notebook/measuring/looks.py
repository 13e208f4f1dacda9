"""How the measuring guide looks, and which tape shows when: CSS alone, no round trip to the kernel."""

from __future__ import annotations

from collections.abc import Iterable

STYLE = """
.guide { --skin: #f4ede4; --outline: #4a4a4a; --hint: #b8a999; --tape: #9a1f5a; --doubt: #b3261e; }
[data-jp-theme-light="false"] .guide { --skin: #4a443d; --outline: #d8d0c6; --hint: #8d8375;
  --tape: #ffb0d3; --doubt: #ffb4ab; }
.guide .wearer { display: block; width: 100%; height: auto; }
.guide .wearer .shape { fill: var(--skin); stroke: var(--outline); stroke-width: calc(5px * var(--k));
  stroke-linejoin: round; }
.guide .wearer .detail { fill: none; stroke: var(--hint); stroke-width: calc(4px * var(--k));
  stroke-linecap: round; }
.guide .wearer text { font-family: var(--jp-ui-font-family, sans-serif);
  fill: var(--jp-ui-font-color1, currentColor); }
.guide .wearer .head { font-size: calc(66px * var(--k)); font-weight: 600; fill: var(--tape); }
.guide .wearer .way { font-size: calc(52px * var(--k)); }
.guide .wearer .view-name { font-size: calc(46px * var(--k)); text-anchor: middle;
  fill: var(--jp-ui-font-color2, #555); }
.guide .wearer .tape { display: none; }
.guide .wearer .seen { fill: none; stroke: var(--tape); stroke-width: calc(10px * var(--k));
  stroke-linecap: round; }
.guide .wearer .far { fill: none; stroke: var(--tape); stroke-width: calc(6px * var(--k));
  stroke-dasharray: 16 12; }
.guide .wearer .end { fill: var(--tape); stroke: var(--skin); stroke-width: calc(4px * var(--k)); }
.guide:has(.field input:focus) .no-tape { display: none; }
.guide .widget-html, .guide .widget-html-content { line-height: 1.4; }
.guide .fields { border: 1px solid var(--jp-border-color2, #ccc); padding: 0 8px; }
.guide .fields > * { flex: 0 0 auto; overflow: visible; }
.guide .field > * { flex: 0 0 auto; }
.guide .group-title { font-weight: 600; font-size: 15px; margin-top: 10px; }
.guide .before { color: var(--jp-ui-font-color2, #555); margin-bottom: 4px; }
.guide .field { padding: 4px 0 5px; border-top: 1px solid var(--jp-border-color2, #ddd); }
.guide .field:focus-within { box-shadow: -4px 0 0 var(--tape); }
.guide .field input::placeholder { font-style: italic; color: var(--jp-ui-font-color2, #666);
  opacity: 1; }
.guide .field .widget-label { white-space: normal; line-height: 1.2; height: auto; }
.guide .how { font-size: 12px; color: var(--jp-ui-font-color2, #555); }
.guide .said { margin: 2px 0; padding: 1px 8px; }
.guide .said b { margin-right: 2px; }
.guide .said.mend, .guide .said.doubt { border-left: 4px solid var(--doubt); }
.guide .said.needed { border-left: 4px dashed var(--tape); }
.guide .said.note { border-left: 4px dotted var(--outline); }
.guide .question { border: 2px solid var(--tape); padding: 4px 10px; margin: 4px 0; }
@media (max-width: 1000px) { .guide .fields { height: 340px !important; } }
.guide .message:not(:empty) { padding: 2px 8px; border-left: 4px solid var(--outline); }
"""


def css_name(measure: str) -> str:
    """Return the class of a measure's field.

    >>> css_name("bust_girth")
    'field-bust-girth'
    """
    return f"field-{measure.replace('_', '-')}"


def style(measures: Iterable[str]) -> str:
    """Return the style sheet, with one rule for each measure that shows its tape."""
    rules = [
        f'.guide:has(.{css_name(name)} input:focus) [id="tape.{name}"] {{ display: inline; }}' for name in measures
    ]
    return f"<style>{STYLE}{chr(10).join(rules)}</style>"
