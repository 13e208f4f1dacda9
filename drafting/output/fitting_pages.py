"""The fitting sheet of each garment of a mock-up, ready to be written: pages, and the same as a PDF."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.costume.make import Made, MadeGarment
from drafting.costume.mock_up import MockUp
from drafting.finish.label import spoken
from drafting.fitting.bands import sort_of_garment
from drafting.fitting.performer import to_try
from drafting.fitting.to_write_on import SeamLine, seam_lines
from drafting.fitting.words import FIELDS, RULES, order_at_the_body, to_mind
from drafting.ground.lengths import in_unit
from drafting.ground.names import clean_text
from drafting.ground.units import ShownUnit, show_length
from drafting.making.fit.told import fit_tables
from drafting.making.words import text
from drafting.output.sign_sheets import sign_sheets
from drafting.sheet import Sheet
from drafting.sheet.chart_page import SheetTable, chart_pages
from drafting.sheet.fitting_sheet import RowToWrite, SheetWords, fitting_sheets
from drafting.sheet.wearer import draw_wearer
from drafting.sheet.wearer.small import small_figures


def sheets_to_write_on(mock: MockUp) -> Iterator[tuple[str, tuple[Sheet, ...]]]:
    """Yield each garment's name and the pages of its fitting sheet, in the unit of its maker."""
    costume = mock.made.costume
    figures = small_figures(draw_wearer(costume.wearer))
    for garment in mock.made.garments:
        rows = [_row(line, costume.told_in) for line in seam_lines(garment.draft)]
        signs = sign_sheets(mock.real, mock.real[garment.name], figures)
        drawn = fitting_sheets(_words(mock, garment), figures, garment.pattern.pieces, rows)
        yield garment.name, (*drawn, *_chart(mock.real, mock.real[garment.name]), *signs)


SHARES = {"table.ease": (36, 17, 19, 17, 47, 24, 30), "table.moves": (25, 36, 16, 30, 18, 65)}
"""How wide the columns of the fit chart's tables are, by each other (ours)."""


def _chart(real: Made, garment: MadeGarment) -> list[Sheet]:
    """Return the fit chart of a garment as it is drafted, and what its performer checks off."""
    unit = real.costume.told_in
    tables = [
        SheetTable(
            title=text(table.key),
            heads=tuple(text(head) for head in table.heads),
            rows=tuple(tuple(in_unit(str(cell), unit) for cell in row) for row in table.rows),
            shares=SHARES[table.key],
        )
        for table in fit_tables(real, (garment,), named=False)
    ]
    seated = real.costume.wearer.posture == "seated"
    checks = [in_unit(said, unit) for said in to_try(sort_of_garment(garment.draft), seated=seated)]
    title = f"Fit chart: {spoken(garment.name)}"
    return chart_pages(title, clean_text(real.costume.title, 60), tables, "To be tried by the performer", checks)


def _words(mock: MockUp, garment: MadeGarment) -> SheetWords:
    costume, wearer = mock.made.costume, mock.made.costume.wearer
    measured = f", measured {clean_text(wearer.measured_on, 30)}" if wearer.measured_on else ""
    whose = f", for {clean_text(wearer.title, 60)}" if wearer.title else ""
    said = (f"{clean_text(costume.title, 60)}{whose}{measured}; mock-up in", mock.cloths[garment.name].ask_for)
    return SheetWords(
        title=f"Fitting sheet: {spoken(garment.name)}",
        subtitle=" ".join(said),
        fields=FIELDS,
        order=order_at_the_body(garment.draft, seated=wearer.posture == "seated"),
        rules=tuple(in_unit(rule, costume.told_in) for rule in RULES),
        cautions=to_mind(garment.draft),
    )


def _row(line: SeamLine, unit: ShownUnit) -> RowToWrite:
    if line.dart:
        return RowToWrite(line.name, line.where, "a dart", line.hand)
    left = show_length(line.allowance, unit)
    out = show_length(line.lets_out, unit) if line.lets_out else "none"
    return RowToWrite(line.name, line.where, f"{left}, out {out}", line.hand)
