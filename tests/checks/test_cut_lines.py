"""Cut lines that cross, cut into the piece or miss their allowance are found.

The rectangle of 20 x 30 cm with 1.5 cm around it has 759.0 cm2 by plane geometry.
"""

from __future__ import annotations

import pytest

from drafting.checks import check_pattern
from drafting.costume.garment import draft_garment
from drafting.draft.pattern import CutPiece, Pattern
from drafting.draft.piece import Edge, Piece
from drafting.geometry import Path
from tests.blocks.coats import lamplighter

NAMES = ("hem", "side", "top", "centre")


def box(x0: float, y0: float, x1: float, y1: float) -> Path:
    return Path.polygon(complex(x0, y0), complex(x1, y0), complex(x1, y1), complex(x0, y1))


def pattern(cut: Path, allowance: float = 15.0) -> Pattern:
    sides = box(0, 0, 200, 300).segments
    piece = Piece("card", tuple(Edge(n, Path((s,))) for n, s in zip(NAMES, sides, strict=True)))
    return Pattern("card", "shell", (CutPiece(piece, 1, cut, dict.fromkeys(NAMES, allowance)),))


def wrong(cut: Path, allowance: float = 15.0) -> list[tuple[str, str]]:
    found = check_pattern(pattern(cut, allowance))
    return [(f.check, f.where) for f in found if f.level != "ok"]


def test_a_rectangle_with_its_allowance_holds() -> None:
    assert wrong(box(-15, -15, 215, 315)) == []
    assert wrong(box(0, 0, 200, 300), allowance=0) == []


@pytest.mark.parametrize(("short", "holds"), [(0.04, True), (0.2, False), (5.0, False)])
def test_an_allowance_that_is_missed_at_one_edge_is_named(short: float, holds: bool) -> None:
    found = wrong(box(-15, -15, 215 - short, 315))
    assert found == ([] if holds else [("allowance", "card.side")])


def test_a_cut_line_inside_the_stitching_line_is_an_error() -> None:
    assert ("cut around", "card") in wrong(box(-15, -15, 195, 315))


def test_a_cut_line_that_crosses_itself_or_runs_clockwise_is_an_error() -> None:
    bow = Path.polygon(-15 - 15j, 215 + 315j, 215 - 15j, -15 + 315j)
    assert ("cut line", "card") in wrong(bow)
    assert ("cut line", "card") in wrong(box(-15, -15, 215, 315).reversed())


def test_a_check_never_raises_whatever_the_line() -> None:
    nothing = Path.polygon(0j, 0j)
    assert {f.level for f in check_pattern(pattern(nothing))} >= {"error"}


@pytest.mark.parametrize(("short", "holds"), [(0.0, True), (0.2, False)])
def test_a_wide_allowance_lies_over_a_narrow_one_in_a_corner_that_is_let_in(short: float, holds: bool) -> None:
    """A step of 30 mm beside a seam of 25 mm allowance: plane geometry, by hand."""
    ring = Path.polygon(0j, 200 + 0j, 200 + 150j, 170 + 150j, 170 + 300j, 300j)
    names = ("hem", "low_side", "step", "side", "top", "centre")
    piece = Piece("card", tuple(Edge(n, Path((s,))) for n, s in zip(names, ring.segments, strict=True)))
    widths = dict.fromkeys(names, 10.0) | {"side": 25.0}
    y = 160 - short
    cut = Path.polygon(-10 - 10j, 210 - 10j, complex(210, y), complex(195, y), 195 + 310j, -10 + 310j)
    found = check_pattern(Pattern("card", "shell", (CutPiece(piece, 1, cut, widths),)))
    assert [f.where for f in found if f.level != "ok"] == ([] if holds else ["card.step"])


@pytest.mark.parametrize("let_out", [10.0, 20.0, 40.0])
def test_a_coat_to_be_let_out_has_no_error_where_its_pleat_and_vent_begin(let_out: float) -> None:
    made = draft_garment(lamplighter(), None, "tailcoat", {"let_out": let_out})
    assert [f for f in made.findings if f.level == "error"] == []
