"""Pages of a printed sheet: margins, joins, names, instructions; read by general PDF libraries."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import numpy as np
import pytest

from drafting.costume.make import Made
from drafting.geometry import Path
from drafting.output.sheets import PrintedSheet, printed_sheets, sheets_said
from drafting.printing.pages import page_name
from drafting.printing.pages_made import imposed, preview, sheet_pdf
from drafting.printing.paper import PAPERS
from drafting.printing.piece_on_paper import piece_on_paper
from drafting.printing.wishes import PrintWishes
from drafting.sheet import Layer
from tests.export import invented
from tests.printing.reading_pdf import cut_lines, labels, only, pages, pixels, words
from tests.published import single

OURS = ("join mark", "scale check", "page")
"""Layers of the page itself, not of the pieces."""


def test_no_ink_lies_in_the_margin(sheet: PrintedSheet) -> None:
    # Printer driver documents: printers leave 4.2 to 5.1 mm unprinted; ours is 10.
    per_mm = 4 if sheet.length is None else 2
    for shot in pixels(sheet.data, per_mm):
        inside = np.zeros(shot.shape, dtype=bool)
        rim = 10 * per_mm - 1
        inside[rim:-rim, rim:-rim] = True
        assert shot[~inside].min() == 255
        assert shot[inside].min() < 128


def test_pages_put_together_again_are_one_drawing(sheets: dict[str, PrintedSheet]) -> None:
    """Every piece has the same coordinates on the plane from whichever page it is read."""
    tiling = sheets["a4"].work.tiling
    seen: dict[int, list[complex]] = {}
    for place, (_, paths) in zip(tiling.used, list(pages(sheets["a4"].data))[1:], strict=True):
        row, column = place
        corner = complex(column * 180, (tiling.rows - 1 - row) * 267) - (10 + 10j)
        for read in cut_lines(paths):
            seen.setdefault(round(read.area), []).append(complex(read.points[0]) + corner)
    assert max(len(places) for places in seen.values()) >= 6
    for places in seen.values():
        assert max(abs(p - places[0]) for p in places) < 0.01


def test_neighbours_show_the_same_ink_where_they_overlap(sheets: dict[str, PrintedSheet]) -> None:
    per_mm, tiling = 4, sheets["a4"].work.tiling
    shots = pixels(only(sheets["a4"].data, lambda name: name not in OURS), per_mm)[1:]
    shown = dict(zip(tiling.used, shots, strict=True))
    inked = 0
    for row, column in tiling.used:
        right, below = shown.get((row, column + 1)), shown.get((row + 1, column))
        here = shown[row, column]
        if right is not None:
            a, b = here[40:-40, 760:800], right[40:-40, 40:80]  # 190..200 mm, and 10..20
            assert np.abs(a[:, : b.shape[1]].astype(int) - b).mean() < 3
            inked += int((b < 128).sum())
        if below is not None:
            foot = here.shape[0] - 80
            a, b = here[foot : foot + 40, 40:-40], below[40:80, 40:-40]
            assert (a < 128).sum() == pytest.approx((b < 128).sum(), rel=0.2, abs=60)
    assert inked > 500


def small(thing: dict[str, Any]) -> bool:
    """Say whether a letter is as small as a neighbour's name: a label may stand beside it."""
    return thing["object_type"] != "char" or thing["size"] < 7


def test_half_marks_meet_on_all_four_sides(sheets: dict[str, PrintedSheet]) -> None:
    # Common practice: join crosses inside the overlap, the same on either page, and the neighbour's name.
    tiling = sheets["a4"].work.tiling
    diamonds: dict[tuple[int, int], list[complex]] = {}
    texts = {}
    for place, (page, paths) in zip(tiling.used, list(pages(sheets["a4"].data))[1:], strict=True):
        corner = complex(place[1] * 180, (tiling.rows - 1 - place[0]) * 267) - (10 + 10j)
        middles = [
            complex(p.points[:4].mean()) + corner
            for p in paths
            if p.closed and len(p.points) == 5 and abs(p.box[2] - p.box[0] - 8) < 0.01
        ]
        diamonds[place] = middles
        texts[place] = page.filter(small).extract_text()
    for row, column in tiling.used:
        beside = [(row + d, column + a) for d, a in ((0, 1), (0, -1), (1, 0), (-1, 0))]
        printed_beside = [place for place in beside if place in diamonds]
        assert len(diamonds[row, column]) == len(printed_beside)
        for other in printed_beside:
            gaps = [abs(p - q) for p in diamonds[row, column] for q in diamonds[other]]
            assert min(gaps) < 0.01
            assert page_name(other) in texts[row, column]


def test_pages_are_named_by_row_and_column_and_blank_ones_left_out(sheets: dict[str, PrintedSheet]) -> None:
    used = sheets["a4"].work.tiling.used
    assert labels(sheets["a4"].data) == ["how to print", *map(page_name, used)]
    assert len(set(used)) == len(used)
    shots = pixels(only(sheets["a4"].data, lambda name: name not in OURS), 2)[1:]
    with_ink = sum(bool((shot < 200).any()) for shot in shots)
    assert with_ink == len(used)  # holds for these pieces: none has a page in its middle
    assert sheets["a4"].least <= len(used) < 2 * sheets["a4"].least


def test_the_first_page_says_how_to_print_and_how_to_join(sheets: dict[str, PrintedSheet]) -> None:
    # Common practice: true size, the map, and from the middle outwards.
    page, _ = next(pages(sheets["a4"].data))
    told = " ".join(page.extract_text(x_tolerance=1.5).split())
    for phrase in ("at 100 %", "actual size", "Print this page first", "measure the square"):
        assert phrase in " ".join(words(sheets["a4"].data).split())
    assert "outwards" in told
    middle = page_name(sheets["a4"].work.tiling.middle)
    assert f"with {middle}" in " ".join(words(sheets["a4"].data).split())


def test_a_train_of_5_4_m_is_split_over_pages_and_never_shrunk() -> None:
    # ISO 32000, from memory: readers take 5,080 mm.
    cut = invented.cuff()
    long = Path.polygon(0j, 300 + 0j, 300 + 5400j, 5400j)
    train = replace(
        piece_on_paper(cut, invented.KITE),
        ring=tuple(long.flattened(1)),
        strokes=(replace(piece_on_paper(cut, invented.KITE).strokes[0], paths=(long,)),),
        drawn=None,
    )
    data = sheet_pdf(imposed("The kite - train", [train], PAPERS["roll"])).data
    read = list(pages(data))[1:]
    limit = single("pdf-longest-page") * 10
    assert limit == 5080
    assert len(read) == 2
    for page, paths in read:
        assert max(float(page.width), float(page.height)) * 25.4 / 72 <= limit
        (line,) = cut_lines(paths)
        assert line.length == pytest.approx(2 * 5700, abs=0.02)


def test_only_the_pieces_asked_for_are_printed(made: Made) -> None:
    costume = replace(made.costume, prints=PrintWishes(papers=(PAPERS["a4"],), pieces=("shirt.cuff",)))
    cuff = next(iter(printed_sheets(replace(made, costume=costume))))
    assert cuff.pages == 2
    read = [p for _, paths in list(pages(cuff.data))[1:] for p in cut_lines(paths)]
    assert len(read) == 1


def test_the_count_of_pages_is_said_beside_the_least_that_the_area_takes(sheets: dict[str, PrintedSheet]) -> None:
    (finding,) = sheets_said(list(sheets.values()))
    a4 = sheets["a4"]
    area = sum(d.area for d in a4.work.drawings)
    assert a4.least == -(-area // (180 * 267))
    assert f"{a4.pages - 1} pages of A4 ({a4.least} by area alone)" in finding.message


def test_a_picture_beside_each_sheet_shows_every_page(sheets: dict[str, PrintedSheet]) -> None:
    work = sheets["a4"].work
    drawn = preview(work)
    names = {line for text in drawn.texts for line in text.lines}
    assert {page_name(place) for place in work.tiling.used} <= names
    assert len(drawn.on(Layer.CUT)) == len(work.drawings)
    assert (drawn.width, drawn.height) == work.tiling.size
