"""Papers, the plan of pages, the places of pieces on them, and what a ruler says of the square."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import LinearRing, Polygon, box

from drafting.ground.errors import InputError
from drafting.printing.pages import Tiling, all_pages, page_grid, page_name
from drafting.printing.paper import PAPERS, Paper, paper_named
from drafting.printing.placing import places_on_pages
from drafting.printing.raster import Raster, touched_cells
from drafting.printing.roll import places_on_roll
from drafting.printing.scale_repair import scale_repair, typed_repair
from tests.published import pairs, several, single, span


@pytest.mark.parametrize(
    ("table", "names"), [("iso-papers", ("a4", "a3", "a0")), ("ansi-papers", ("letter", "tabloid"))]
)
def test_papers_are_those_of_the_standards(table: str, names: tuple[str, ...]) -> None:
    # ISO 216; ANSI/ASME Y14.1.
    for name, size in zip(names, pairs(table), strict=True):
        assert (PAPERS[name].width, PAPERS[name].height) == size


def test_margins_are_wider_than_what_printers_leave_unprinted() -> None:
    # Printer driver documents: 4.2 to 5.1 mm.
    _, worst = span("unprintable-edge")
    assert all(paper.margin > 1.5 * worst for paper in PAPERS.values())


def test_one_setting_comes_out_whole_on_a4_and_on_letter() -> None:
    either, a4, letter = (PAPERS[name] for name in ("a4-or-letter", "a4", "letter"))
    assert either.width == min(a4.width, letter.width)
    assert either.height == min(a4.tall, letter.tall)


def test_a_sheet_of_600_by_1000_without_overlap_takes_16_pages_upright_and_18_on_their_side() -> None:
    paper = Paper("a4", "A4", 210, 297, overlap=0)
    assert list(page_grid(600, 1000, paper)) == several("a4-tiles")
    assert page_grid(600, 1000, paper, turned=True) == (6, 3)


def test_a_piece_of_600_by_900_takes_16_pages_each_named() -> None:
    # Common practice: margin 10, overlap 10.
    tiling = all_pages(600, 900, PAPERS["a4"])
    assert len(tiling.used) == 16
    assert [page_name(place) for place in tiling.used][:5] == ["A1", "A2", "A3", "A4", "B1"]
    assert set(tiling.neighbours((1, 1))) == {"left", "right", "above", "below"}


@given(st.integers(1, 6), st.integers(1, 6), st.sampled_from(["a4", "letter", "a3", "a4-or-letter"]))
def test_cells_cover_the_plane_side_by_side_and_windows_overlap(rows: int, columns: int, name: str) -> None:
    paper = PAPERS[name]
    used = tuple((r, c) for r in range(rows) for c in range(columns))
    tiling = Tiling(paper, rows, columns, used)
    area = sum((x1 - x0) * (y1 - y0) for x0, y0, x1, y1 in map(tiling.cell, used))
    assert area == pytest.approx(rows * columns * math.prod(paper.step))
    for place in used:
        window = tiling.window(place)
        assert (window[2] - window[0], window[3] - window[1]) == pytest.approx(paper.net)
        for side, other in tiling.neighbours(place).items():
            beyond = tiling.window(other)
            shared = (
                min(window[2], beyond[2]) - max(window[0], beyond[0]),
                min(window[3], beyond[3]) - max(window[1], beyond[1]),
            )
            assert min(shared) == pytest.approx(paper.overlap), side


def outlines() -> st.SearchStrategy[list[list[complex]]]:
    """Three- to seven-cornered outlines of up to 500 mm, one in six a strip."""

    def ring(sides: list[float], wide: float, high: float) -> list[complex]:
        n = len(sides)
        return [
            complex(wide * s * math.cos(2 * math.pi * i / n), high * s * math.sin(2 * math.pi * i / n))
            for i, s in enumerate(sides)
        ]

    one = st.builds(
        ring, st.lists(st.floats(0.4, 1), min_size=3, max_size=7), st.floats(15, 250), st.floats(15, 250)
    )
    return st.lists(one, min_size=1, max_size=6)


@settings(max_examples=25, deadline=None)
@given(outlines())
def test_pieces_on_paper_never_lie_on_each_other_nor_off_the_pages(rings: list[list[complex]]) -> None:
    placing = places_on_pages(rings, PAPERS["a4"].step, 12)
    lying = [
        Polygon([(spot.of(p).real, spot.of(p).imag) for p in ring])
        for ring, spot in zip(rings, placing.spots, strict=True)
    ]
    used = set(placing.used)
    for n, a in enumerate(lying):
        assert all(a.intersection(b).area < 1e-6 for b in lying[n + 1 :])
        x0, y0, x1, y1 = a.bounds
        assert min(x0, y0) > -1e-6
        assert x1 <= placing.columns * 180 + 1e-6
        assert y1 <= placing.rows * 267 + 1e-6
        middle = a.representative_point()
        row = placing.rows - 1 - int(middle.y // 267)
        assert (row, int(middle.x // 180)) in used


@settings(max_examples=60, deadline=None)
@given(outlines())
def test_no_outline_passes_a_cell_that_it_does_not_touch(rings: list[list[complex]]) -> None:
    """shapely's overlaps of the ring's own edges with every cell judge it."""
    points = np.asarray(rings[0])
    corner = complex(points.real.min(), points.imag.max())
    cells = touched_cells(points, corner, Raster(12, 12, 15.0, 22.25))
    edge = LinearRing([(p.real - corner.real, corner.imag - p.imag) for p in rings[0]])
    for (row, column), touched in np.ndenumerate(cells):
        x, y = column * 15.0, row * 22.25
        inside = box(x, y, x + 15.0, y + 22.25).intersection(edge).length
        assert touched or inside < 1e-6, (row, column)


def test_a_piece_that_fits_a_page_lies_on_one() -> None:
    rings = [[0j, 170 + 0j, 170 + 250j, 250j], [0j, 250 + 0j, 250 + 60j, 60j]]
    placing = places_on_pages(rings, PAPERS["a4"].step)
    assert len(placing.used) == 2


def test_on_a_roll_pieces_lie_within_its_width() -> None:
    rings = [[0j, 400 + 0j, 400 + 700j, 700j], [0j, 880 + 0j, 880 + 300j, 300j]]
    placing, length = places_on_roll(rings, PAPERS["roll"].step)
    for ring, spot in zip(rings, placing.spots, strict=True):
        lying = [spot.of(p) for p in ring]
        assert min(p.real for p in lying) >= -1e-6
        assert max(p.real for p in lying) <= PAPERS["roll"].step[0] + 1e-6
        assert max(p.imag for p in lying) <= length + 1e-6
    assert length < 1010


@pytest.mark.parametrize(
    ("text", "width", "height"),
    [("A3", 297, 420), ("roll 24 in", 609.6, None), ("roll 61 cm", 610, None), ("70 x 50 cm", 500, 700)],
)
def test_papers_are_named_as_a_maker_says_them(text: str, width: float, height: float | None) -> None:
    paper = paper_named(text)
    assert paper.width == pytest.approx(width)
    assert paper.height == (pytest.approx(height) if height else None)


@pytest.mark.parametrize(
    ("text", "said"), [("roll 24 in", "roll, 24 in wide"), ("roll 61 cm", "roll, 61 cm wide"), ("roll", "36 in")]
)
def test_a_roll_is_said_back_in_the_unit_that_it_was_asked_for_in(text: str, said: str) -> None:
    assert said in paper_named(text).title


@pytest.mark.parametrize("text", ["foolscap", "roll 3 cm", "10 x 9000 mm", ""])
def test_what_is_no_paper_is_refused_with_those_there_are(text: str) -> None:
    with pytest.raises(InputError) as refused:
        paper_named(text)
    assert refused.value.faults[0].right


def test_a_square_of_97_mm_is_a_print_at_97_percent() -> None:
    # Bust 91.4 would come out 88.7; reprint at 100 %, or at 103.1 %.
    repair = scale_repair(97.0, 97.0, bust=914.0)
    assert not repair.holds
    assert repair.factor == pytest.approx(single("scale-of-97"), abs=1e-4)
    assert repair.bust == pytest.approx(887, abs=0.5)
    words = " ".join(repair.said)
    for part in ("97.0 %", "91.4", "88.7", "100 %", "actual size", "103.1 %"):
        assert part in words


@pytest.mark.parametrize(
    ("across", "up", "holds"), [(100, 100, True), (99.5, 100.5, True), (99.4, 99.4, False), (100, 100.6, False)]
)
def test_a_print_is_true_only_when_both_sides_are_within_half_a_millimetre(
    across: float, up: float, holds: bool
) -> None:
    # Common practice: within 0.5 mm.
    assert scale_repair(across, up).holds is holds


def test_a_stretch_in_one_direction_is_named_and_gets_no_factor() -> None:
    # Arithmetic: 100.0 x 98.9.
    repair = scale_repair(100.0, 98.9, bust=914.0)
    assert (repair.holds, repair.factor, repair.bust) == (False, None, None)
    assert "up the page only" in repair.said[0]
    assert not any("print at" in line for line in repair.said)


def test_the_inch_square_may_be_typed_instead() -> None:
    assert typed_repair("4 in", "4 in").holds
    assert not typed_repair("3 7/8 in", "3 7/8 in").holds


def test_a_side_that_no_printer_makes_is_refused() -> None:
    with pytest.raises(ValueError, match="measure it again"):
        scale_repair(10.0, 10.0)
