"""The fitting sheet of each garment of a mock-up, ready to be written: pages, and the same as a PDF."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.costume.make import MadeGarment
from drafting.costume.mock_up import MockUp
from drafting.finish.label import spoken
from drafting.fitting.to_write_on import SeamLine, seam_lines
from drafting.fitting.words import CAUTIONS, FIELDS, RULES, order_at_the_body
from drafting.ground.lengths import in_unit
from drafting.ground.names import clean_text
from drafting.ground.units import ShownUnit, show_length
from drafting.sheet import Sheet
from drafting.sheet.fitting_sheet import RowToWrite, SheetWords, fitting_sheets
from drafting.sheet.wearer import draw_wearer
from drafting.sheet.wearer.small import small_figures


def sheets_to_write_on(mock: MockUp) -> Iterator[tuple[str, tuple[Sheet, ...]]]:
    """Yield each garment's name and the pages of its fitting sheet, in the unit of its maker."""
    costume = mock.made.costume
    figures = small_figures(draw_wearer(costume.wearer))
    for garment in mock.made.garments:
        rows = [_row(line, costume.told_in) for line in seam_lines(garment.draft)]
        yield garment.name, fitting_sheets(_words(mock, garment), figures, garment.pattern.pieces, rows)


def _words(mock: MockUp, garment: MadeGarment) -> SheetWords:
    costume, wearer = mock.made.costume, mock.made.costume.wearer
    measured = f", measured {clean_text(wearer.measured_on, 30)}" if wearer.measured_on else ""
    said = (
        f"{clean_text(costume.title, 60)}, for {clean_text(wearer.title, 60)}{measured}; mock-up in",
        mock.cloths[garment.name].ask_for,
    )
    return SheetWords(
        title=f"Fitting sheet: {spoken(garment.name)}",
        subtitle=" ".join(said),
        fields=FIELDS,
        order=order_at_the_body(garment.draft),
        rules=tuple(in_unit(rule, costume.told_in) for rule in RULES),
        cautions=CAUTIONS,
    )


def _row(line: SeamLine, unit: ShownUnit) -> RowToWrite:
    if line.dart:
        return RowToWrite(line.name, line.where, "a dart")
    left = show_length(line.allowance, unit)
    out = show_length(line.lets_out, unit) if line.lets_out else "none"
    return RowToWrite(line.name, line.where, f"{left}, out {out}")
