"""What the lay table says: of a lay, and of other bolt widths."""

from __future__ import annotations

from drafting.ground.lengths import in_unit
from drafting.ground.names import name_in_words
from drafting.ground.templates import Html, macros
from drafting.ground.units import ShownUnit, show_length
from drafting.layout import Lay, OtherWay
from drafting.notebook.lay_table import state as ls
from drafting.notebook.said import paragraphs_html

CAPTION = "Cloth needed in other bolt widths (quick lays; the own width is bold)"


def lay_html(lay: Lay, found: Lay, unit: ShownUnit = "cm") -> Html:
    """Return what is said of a lay: lengths, use of the cloth, and everything that is no mere note."""
    rest = [f.said(unit) for f in lay.findings if f.level in ("error", "warning")]
    repeats = [f.said(unit) for f in lay.findings if f.check == "repeat"]
    rows = [in_unit(ls.lay_words(lay, found), unit), *rest, *repeats, *_faults(lay)]
    return paragraphs_html(rows)


def _faults(lay: Lay) -> list[str]:
    count = len(lay.cloth.faults)
    places = "1 faulty place is" if count == 1 else f"{count} faulty places are"
    return [f"{places} left out of the lay, crossed through in the drawing."] if count else []


def widths_html(lay: Lay, unit: ShownUnit = "cm") -> Html:
    """Return the table of what other bolt widths would need; words while it is being worked out."""
    said = macros(__file__)
    if not lay.others:
        return Html(said.waiting("What other widths need is being worked out ..."))
    widths = sorted({other.width for other in lay.others})
    ways = list(dict.fromkeys(other.lay for other in lay.others))
    by = {(other.width, other.lay): other for other in lay.others}
    rows = [
        (width == lay.cloth.width, show_length(width, unit), [_needed(by.get((width, w)), unit) for w in ways])
        for width in widths
    ]
    return Html(said.widths(CAPTION, ways, rows))


def _needed(other: OtherWay | None, unit: ShownUnit) -> str:
    if other is None:
        return ""
    if other.length:
        return show_length(other.length, unit)
    return f"cannot hold {', '.join(map(name_in_words, other.sticks_out))}"
