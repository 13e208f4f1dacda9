"""Write what was made into its folder: record, overview, pieces, printed sheets, lays."""

from __future__ import annotations

import time
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

from drafting.costume.make import Made
from drafting.costume.mock_up import laid_to_try
from drafting.costume.telling import Tell, tell_nobody
from drafting.export.figure import overview_png
from drafting.export.svg import svg_text
from drafting.ground.findings import Finding
from drafting.making import Plan, planned
from drafting.making.page import page
from drafting.making.shopping import shopping_csv
from drafting.output.folder import swap_in
from drafting.output.report import piece_file, report
from drafting.output.sheets import (
    LabelOf,
    PrintedSheet,
    interchange_files,
    piece_label,
    printed_sheets,
    sheet_row,
    sheets_said,
)
from drafting.printing.lay_on_paper import TENTH, lay_pdf
from drafting.printing.pages_made import preview
from drafting.sheet.lay import layout_sheet
from drafting.sheet.overview import overview_sheet
from drafting.sheet.piece import piece_sheet

if TYPE_CHECKING:
    from drafting.costume.wearing.worn import Worn
    from drafting.making.page.sections import WornShown

PREVIEW_DPI = 70
"""A preview tells which page is which; 12 in at so many dots to the inch (ours)."""


def write_output(
    made: Made, out: Path | str, tell: Tell = tell_nobody, worn: Worn | None = None
) -> tuple[Finding, ...]:
    """Write `made` beside `out` and swap it in whole; what was there stays if anything fails.

    Returns what the printing had to say; the record holds it too. `tell` hears each step. `worn` puts the
    costume on the form into the plan, and its verdict among the findings. Raises
    `InputError` where `out` is a file or a folder that this kit did not make.

    >>> from tempfile import TemporaryDirectory
    >>> from drafting.costume.make import make
    >>> from drafting.costume.file import read_costume
    >>> from drafting.ground.shipped import demo_costume
    >>> costume = read_costume(demo_costume())
    >>> cuff = replace(costume.prints, papers=costume.prints.papers[:1], pieces=("shirt.cuff",))
    >>> made = make(replace(costume, garments=costume.garments[1:2], prints=cuff))
    >>> with TemporaryDirectory() as folder:
    ...     said = write_output(made, Path(folder) / "out")
    ...     sorted(path.name for path in (Path(folder) / "out").iterdir())
    ['exchange', 'overview.png', 'pieces', 'report.json', 'sheets']
    """
    start = time.perf_counter()
    sheets = list(_told(made, tell))
    found = (*sheets_said(sheets), *_said_of(worn))
    timings = {**made.timings, "print": time.perf_counter() - start}
    made = replace(made, findings=(*made.findings, *found), timings=timings)
    swap_in(Path(out), lambda folder: _fill(made, sheets, folder, tell, worn))
    return found


def _said_of(worn: Worn | None) -> tuple[Finding, ...]:
    """Return the verdict on the form; what settles cloth is loaded by who asks for it only."""
    if worn is None:
        return ()
    from drafting.output.worn_plan import worn_findings

    return tuple(worn_findings(worn))


def _shown_of(worn: Worn | None) -> WornShown | None:
    """Return what the plan shows of the form."""
    if worn is None:
        return None
    from drafting.output.worn_plan import worn_shown

    return worn_shown(worn)


def _told(made: Made, tell: Tell) -> Iterator[PrintedSheet]:
    """Yield the printed sheets, telling each as it is done."""
    count = len(made.garments) * len(made.costume.prints.papers) or 1
    for number, sheet in enumerate(printed_sheets(made), 1):
        words = f"Setting the sheets: {sheet.garment}, {sheet.paper.title}"
        tell(words, 0.6 * min(1.0, number / count))
        yield sheet


def write_sheets(sheets: list[PrintedSheet], folder: Path, tell: Tell) -> None:
    """Write the printed sheets, and a picture beside each that shows its pages."""
    (folder / "sheets").mkdir()
    for number, sheet in enumerate(sheets):
        tell(f"Writing {sheet.file}", 0.75 + 0.2 * number / len(sheets))
        file = folder / sheet.file
        file.write_bytes(sheet.data)
        overview_png(preview(sheet.work), file.with_suffix(".png"), PREVIEW_DPI)


def _write_interchange(made: Made, folder: Path) -> None:
    (folder / "exchange").mkdir()
    for name, text in interchange_files(made):
        (folder / name).write_text(text, encoding="utf-8", newline="\n")


def _write_strips(made: Made, folder: Path) -> None:
    """Write what is to be pasted over the paper pattern since the last fitting, where one was held."""
    if not made.costume.fittings.held:
        return
    from drafting.output.strips import strips_of_last_fitting

    for name, pdf in strips_of_last_fitting(made):
        (folder / "strips").mkdir(exist_ok=True)
        (folder / "strips" / f"{name}.pdf").write_bytes(pdf)


def write_lays(made: Made, folder: Path) -> None:
    """Write the lay of each cloth, as a drawing and as a picture."""
    if made.lays:
        (folder / "layout").mkdir()
    garments = [garment.name for garment in made.garments]
    for lay in made.lays:
        sheet = layout_sheet(lay, made.costume.title, garments, made.costume.told_in)
        file = folder / "layout" / f"{lay.role}.svg"
        file.write_text(svg_text(sheet), encoding="utf-8", newline="\n")
        overview_png(sheet, file.with_suffix(".png"))
        file.with_suffix(".pdf").write_bytes(lay_pdf(sheet))
        file.with_name(f"{lay.role}-1-10.pdf").write_bytes(lay_pdf(sheet, TENTH))


def _write_plan(made: Made, folder: Path, worn: Worn | None) -> Plan | None:
    """Write the making plan and its shopping list; without lays nobody knows what to buy."""
    if not made.lays:
        return None
    plan = planned(made, laid_to_try(made))
    whole = page(plan, made, _shown_of(worn))
    files = {"plan.html": whole, "shopping.csv": shopping_csv(plan.shopping, made.costume.told_in)}
    for name, text in files.items():
        (folder / name).write_text(text, encoding="utf-8", newline="\n")
    return plan


def write_pieces(made: Made, folder: Path, tell: Tell, label_of: LabelOf = piece_label) -> None:
    """Write the drawing of each piece, and the picture of all of them."""
    (folder / "pieces").mkdir()
    for garment in made.garments:
        label = label_of(made, garment)
        tell(f"Drawing the pieces: {garment.name}", 0.62)
        for cut in garment.pattern.pieces:
            text = svg_text(piece_sheet(cut, label))
            file = folder / piece_file(garment.name, cut.piece.name)
            file.write_text(text, encoding="utf-8", newline="\n")
    patterns = [garment.pattern for garment in made.garments]
    overview_png(overview_sheet(patterns, made.costume.title, unit=made.costume.told_in), folder / "overview.png")


def _fill(made: Made, sheets: list[PrintedSheet], folder: Path, tell: Tell, worn: Worn | None) -> dict[str, Any]:
    """Fill a folder; return its record."""
    start = time.perf_counter()
    write_pieces(made, folder, tell)
    tell("Drawing the lays", 0.7)
    write_lays(made, folder)
    write_sheets(sheets, folder, tell)
    _write_interchange(made, folder)
    _write_strips(made, folder)
    tell("Writing the making plan", 0.96)
    plan = _write_plan(made, folder, worn)
    tell("Writing the record", 0.98)
    data = report(made, plan) | {"sheets": [sheet_row(sheet) for sheet in sheets]}
    data["timings"]["draw"] = time.perf_counter() - start
    return data
