"""Printed sheets come back true: read by pdfplumber and pypdfium2, general PDF libraries."""

from __future__ import annotations

from dataclasses import replace

import pytest

from drafting.costume.make import Made
from drafting.finish.label import Label
from drafting.output.report import report
from drafting.output.sheets import PrintedSheet, piece_label, printed_sheets
from drafting.printing.pages_made import imposed, sheet_pdf
from drafting.printing.paper import PAPERS, paper_named
from drafting.printing.piece_on_paper import model_drawing, piece_on_paper
from drafting.printing.wishes import PrintWishes
from tests.export import invented
from tests.pace import paced
from tests.printing.reading_pdf import cut_lines, layers, only, pages, pixels, squares, words
from tests.published import several


def kite_sheet(paper: str, label: Label = invented.KITE) -> tuple[bytes, tuple[str, ...]]:
    cuts = (invented.front(), invented.sleeve(), invented.cuff())
    found = sheet_pdf(imposed("The kite - bodice", [piece_on_paper(c, label) for c in cuts], paper_named(paper)))
    return found.data, found.said


def as_reported(sheet: PrintedSheet, made: Made) -> None:
    """Measure every piece of a sheet on every page that shows it."""
    rows = [row for row in report(made)["pieces"] if row["garment"] == sheet.garment]
    cuts = {c.piece.name: c.cut for g in made.garments if g.name == sheet.garment for c in g.pattern.pieces}
    found = set()
    for _, paths in list(pages(sheet.data))[1:]:
        for read in cut_lines(paths):
            near = [row for row in rows if row["cut_area"] == pytest.approx(read.area, rel=2e-4)]
            true = [
                row["piece"] for row in near if cuts[row["piece"]].length == pytest.approx(read.length, abs=0.02)
            ]
            assert true, f"a piece of {read.area:.0f} mm2, {read.length:.3f} mm round, is none of ours"
            found |= set(true)
    assert found == {row["piece"] for row in rows}


def test_every_piece_has_the_length_and_area_of_the_report(sheet: PrintedSheet, made: Made) -> None:
    as_reported(sheet, made)


@pytest.mark.slow
def test_the_whole_lamplighter_is_printed_true_in_seconds(costume: Made) -> None:
    a4 = replace(costume.costume, prints=PrintWishes(papers=(PAPERS["a4"],)))
    sheets: list[PrintedSheet] = []
    took = paced(lambda: sheets.extend(printed_sheets(replace(costume, costume=a4))))
    for sheet in sheets:
        as_reported(sheet, costume)
        assert len(sheet.data) < 2_000_000
        assert sheet.least < sheet.pages < 2 * sheet.least
    assert {sheet.garment for sheet in sheets} == {g.name for g in costume.garments}
    assert took < 240.0  # 2.5 s where the fixed work takes 10.5 ms


def test_every_page_has_a_100_mm_and_a_4_in_square_each_a_closed_path(sheet: PrintedSheet) -> None:
    # ISO 32000: 72 units an inch; an inch is 25.4 mm by definition.
    read = list(pages(sheet.data))
    assert len(read) == sheet.pages
    for _, paths in read:
        for side in (100.0, 101.6):
            (square,) = squares(paths, side)
            x0, y0, x1, y1 = square.box
            assert (x1 - x0, y1 - y0) == pytest.approx((side, side), abs=0.01)


@pytest.mark.parametrize(
    "paper", ["a4", "letter", "a4-or-letter", "a3", "tabloid", "a0", "roll", "roll 61 cm", "50 x 70 cm"]
)
def test_on_any_paper_the_squares_lie_within_the_margins_and_are_true(paper: str) -> None:
    data, _ = kite_sheet(paper)
    for page, paths in pages(data):
        wide, high = float(page.width) * 25.4 / 72, float(page.height) * 25.4 / 72
        (square,), (inch,) = squares(paths, 100.0), squares(paths, 101.6)
        assert square.box[2] - square.box[0] == pytest.approx(100.0, abs=0.01)
        x0, y0, x1, y1 = inch.box
        assert min(x0, y0, wide - x1, high - y1) > 10.0


def test_a_page_of_a4_is_as_large_as_iso_216_says(sheets: dict[str, PrintedSheet]) -> None:
    # ISO 216: 595.276 x 841.890 units of 1/72 in; the page is not cropped to its drawing.
    wide, high = several("a4-points")
    for page, _ in pages(sheets["a4"].data):
        assert (float(page.width), float(page.height)) == pytest.approx((wide, high), abs=0.01)
        assert page.mediabox == page.cropbox


def test_layers_can_be_switched(sheets: dict[str, PrintedSheet]) -> None:
    data = sheets["a4"].data
    names = layers(data)
    assert {"scale check", "cut line", "stitch line", "grainline", "label"} <= set(names)
    whole = pixels(data, 2)
    for name in ("cut line", "stitch line", "scale check", "label"):
        less = pixels(only(data, lambda n, off=name: n != off), 2)
        assert sum(int((shot < 200).sum()) for shot in less) < sum(int((shot < 200).sum()) for shot in whole)
    bare = pixels(only(data, lambda name: name == "scale check"), 2)
    assert all((shot < 200).any() for shot in bare), "the square is on every page, alone in its layer"
    assert not any((shot < 250).any() for shot in pixels(only(data, lambda _: False), 1))


def test_curves_stay_curves_and_the_file_is_small(sheet: PrintedSheet) -> None:
    # No facets, and far under 2 MB.
    assert len(sheet.data) < 2_000_000
    assert max(p.curves for _, paths in pages(sheet.data) for p in cut_lines(paths) or paths) >= 3


def test_the_same_pieces_give_the_same_bytes(made: Made, sheets: dict[str, PrintedSheet]) -> None:
    again = next(iter(printed_sheets(made)))
    assert again.data == sheets["a4"].data


def test_a_small_copy_is_a_quarter_as_long_and_says_so_on_each_piece() -> None:
    cuts = (invented.front(), invented.sleeve(), invented.cuff())
    work = imposed("The kite, paper model 1:4", [model_drawing(c, 4) for c in cuts], PAPERS["a4"])
    read = list(pages(sheet_pdf(work).data))[1:]
    lengths = {round(p.length, 1) for _, paths in read for p in cut_lines(paths)}
    assert lengths == {round(c.cut.length / 4, 1) for c in cuts}
    text = "".join(page.extract_text() for page, _ in read)
    assert text.count("scale 1:4, paper model") >= 3
    for _, paths in read:
        assert squares(paths, 100.0)


def test_text_in_several_scripts_is_embedded_and_read_back() -> None:
    label = Label(
        costume="Плащ ½ “Żółw” α", garment="bodice", fabric="Σατέν", wearer="שרה", measured_on="2026-11-02"
    )
    data, warned = kite_sheet("a3", label)
    read = words(data)
    for word in ("Плащ ½", "Żółw", "Σατέν"):
        assert word in read
    assert "שרה" in read or "הרש" in read  # set as it is seen, from right to left
    assert warned == ()
    fonts = {font for page, _ in pages(data) for font in {c["fontname"] for c in page.chars}}
    assert fonts
    assert all("DejaVu" in font for font in fonts), "no other typeface, all embedded"


def test_a_letter_that_the_typeface_lacks_is_said_plainly() -> None:
    data, warned = kite_sheet("a4", Label("凧 kite", "bodice"))
    assert len(warned) == 1
    assert "凧" in warned[0]
    read = words(data)
    assert "□ kite" in read
    assert "凧" not in read


def test_the_label_of_the_sheet_is_that_of_the_pieces(made: Made, sheets: dict[str, PrintedSheet]) -> None:
    label = piece_label(made, made.garments[0])
    read = words(sheets["roll"].data)
    assert label.costume in read
    assert label.measured_on in read
