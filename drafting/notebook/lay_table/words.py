"""What the lay table says and how it looks: the table of widths, the style of the drawing."""

from __future__ import annotations

import html

from drafting.ground.units import show_length
from drafting.layout import Lay, OtherWay
from drafting.notebook.lay_table import state as ls

STYLE = """<style>
.lay-table svg { width: 100% !important; height: auto !important; max-height: 560px; touch-action: none; }
.lay-table svg.lay-hatch { position: absolute; width: 0 !important; height: 0 !important; }
.lay-table svg * { pointer-events: none; }
.lay-table path.cut-line { pointer-events: all; cursor: grab; outline: none; }
.lay-table path.cut-line:focus { stroke-width: 5px; stroke-dasharray: 10 4; }
.lay-table path.held { cursor: grabbing; fill-opacity: .55; stroke-dasharray: 6 4; }
.lay-table path.not-there { fill: url(#lay-hatch) !important; stroke-width: 4px; }
.lay-page .refusal:not(:empty) { border-left: 4px solid #b3261e; padding: 2px 8px; }
.lay-page .widget-html, .lay-page .widget-html-content { line-height: 1.4; }
.lay-page p { margin: 2px 0; }
.lay-page caption { text-align: left; white-space: nowrap; padding: 4px 0; }
.lay-page table { border-collapse: collapse; }
.lay-page td, .lay-page th { padding: 1px 12px 1px 0; text-align: left; font-weight: normal; }
.lay-page thead th { color: var(--jp-ui-font-color2, #555); }
.lay-page tr.own th, .lay-page tr.own td { font-weight: bold; }
</style>"""


def lay_html(lay: Lay, found: Lay) -> str:
    """Return what is said of a lay: lengths, use of the cloth, and everything that is no mere note."""
    rest = [f.message for f in lay.findings if f.level in ("error", "warning")]
    repeats = [f.message for f in lay.findings if f.check == "repeat"]
    rows = [ls.lay_words(lay, found), *rest, *repeats, *_faults(lay)]
    return "".join(f"<p>{html.escape(row)}</p>" for row in rows)


def _faults(lay: Lay) -> list[str]:
    count = len(lay.cloth.faults)
    places = "1 faulty place is" if count == 1 else f"{count} faulty places are"
    return [f"{places} left out of the lay, crossed through in the drawing."] if count else []


def widths_html(lay: Lay) -> str:
    """Return the table of what other bolt widths would need; words while it is being worked out."""
    if not lay.others:
        return '<p class="widths">What other widths need is being worked out ...</p>'
    widths = sorted({other.width for other in lay.others})
    ways = list(dict.fromkeys(other.lay for other in lay.others))
    by = {(other.width, other.lay): other for other in lay.others}
    head = "".join(f'<th scope="col">{way}</th>' for way in ways)
    rows = "".join(
        f'<tr class="{"own" if width == lay.cloth.width else ""}">'
        f'<th scope="row">{show_length(width)}</th>'
        + "".join(f"<td>{_needed(by.get((width, way)))}</td>" for way in ways)
        + "</tr>"
        for width in widths
    )
    return (
        '<table class="widths"><caption>Cloth needed in other bolt widths (quick lays; the own width '
        f'is bold)</caption><thead><tr><th scope="col">bolt width</th>{head}</tr></thead>'
        f"<tbody>{rows}</tbody></table>"
    )


def _needed(other: OtherWay | None) -> str:
    if other is None:
        return ""
    if other.length:
        return show_length(other.length)
    return html.escape(f"too narrow for {', '.join(other.sticks_out)}")
