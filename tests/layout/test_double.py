"""Cloth with two folds, the selvedges brought in to meet: two pieces lie on a fold side by side."""

from __future__ import annotations

import io

import pytest
from svgelements import SVG
from svgelements import Path as SvgPath

from drafting.export.svg import svg_text
from drafting.layout import Lay, Part, broken_rules, lay_out, lay_row
from drafting.layout.moved import moved
from drafting.sheet.lay import layout_sheet
from tests.export.reading import check
from tests.layout.figures import box, breaks, cloth, drawn, half, part

TOP: tuple[Part, ...] = (
    part("back", half(230, 640), fold=4),
    part("front", half(230, 620), fold=4, number=2),
    part("sleeve", box(260, 600), pair=True, number=3),
    part("neckband", half(30, 300), fold=4, number=4),
)
"""A close top with figures made up: half 230 wide, so that two halves and a sleeve lie abreast on 1480."""

JERSEY = cloth(1480.0, "double")


@pytest.fixture(scope="module")
def lay() -> Lay:
    return lay_out(TOP, JERSEY, count=400, table=False)


def test_back_and_front_lie_beside_each_other_and_nothing_crosses_where_the_selvedges_meet(lay: Lay) -> None:
    assert breaks(lay, TOP) == []
    assert broken_rules(lay.job, lay.packing) == []
    by_name = {one.cut.piece.name: one for one in TOP}
    shapes = {r["piece"]: drawn(by_name[r["piece"]], r).bounds for r in lay_row(lay)["placed"]}
    meet = lay.job.strip.meet
    assert meet is not None
    assert 0 < meet < 740
    assert all(y1 <= meet + 0.01 or y0 >= meet - 0.01 for _, y0, _, y1 in shapes.values())
    folds = {name: (round(shapes[name][1], 1), round(shapes[name][3], 1)) for name in ("back", "front")}
    assert {low == 0.0 for low, _ in folds.values()} == {True, False}  # one on each fold
    assert {high == 740.0 for _, high in folds.values()} == {True, False}
    # On one fold back, front and neckband follow each other: 640 + 620 + 300 less what nests.
    assert lay.length < 1000
    assert lay_row(lay)["lay"] == "double"


def test_few_pieces_are_laid_on_two_folds_by_themselves_where_that_takes_a_tenth_less() -> None:
    chosen = lay_out(TOP, cloth(1480.0), count=200, table=False)
    once = lay_out(TOP, cloth(1480.0, "folded"), count=200, table=False)
    assert chosen.lay == "double"
    assert chosen.length < 0.9 * once.length
    assert lay_out(TOP[2:3], cloth(1480.0), count=50, table=False).lay == "folded"  # nothing on a fold
    striped = cloth(1480.0, repeat_across=40.0)
    assert lay_out(TOP, striped, count=50, table=False).lay == "folded"


def test_the_drawing_has_two_folds_and_the_line_between(lay: Lay) -> None:
    text = svg_text(layout_sheet(lay, "The kite"))
    check(text)
    drawn_paths = [e for e in SVG.parse(io.StringIO(text), ppi=25.4).elements() if isinstance(e, SvgPath)]
    folds = [e.bbox() for e in drawn_paths if e.values.get("class") == "fold-line"]
    (whole,) = [e.bbox() for e in drawn_paths if e.values.get("class") == "cloth"]
    assert sorted(y0 for _, y0, _, _ in folds) == pytest.approx([whole[1], whole[3]])
    (meeting,) = [e.bbox() for e in drawn_paths if str(e.id) == "selvedges-meet"]
    assert whole[3] - meeting[1] == pytest.approx(lay.job.strip.meet, abs=1e-3)


@pytest.mark.parametrize("meet", [200.0, 370.0])
def test_a_fault_lies_where_folding_puts_it(meet: float) -> None:
    """Folded on paper: the cloth from one selvedge down to the first fold, under both parts, and back."""
    usable, half_wide = 1480.0, 740.0
    creases = (meet, meet + half_wide)

    def folded(y: float) -> float:
        if y <= creases[0]:
            return meet - y
        return y - meet if y <= creases[1] else half_wide - (y - creases[1])

    whole = cloth(usable, faults=((100.0, 150.0, 120.0, 1400.0),))
    strip = whole.strip("double", meet)
    covered = [(y0, y1) for _, y0, _, y1 in strip.blocked]
    for k in range(0, 1481, 7):
        y = float(k)
        hit = any(a - 1e-6 <= folded(y) <= b + 1e-6 for a, b in covered)
        assert hit or not 150.0 <= y <= 1400.0
    assert sum(b - a for a, b in covered) == pytest.approx(1400.0 - 150.0)


def test_a_piece_moved_by_hand_stays_on_its_fold(lay: Lay) -> None:
    high = next(s for s in lay.packing.spots if lay.outline(s).fold and s.y > 0 and "neckband" not in lay.id(s))
    there = moved(lay, lay.id(high), lay.end + 50.0, 0.0)
    (now,) = [s for s in there.packing.spots if s.copy == high.copy]
    assert now.y == pytest.approx(high.y, abs=0.01)
    assert now.x > high.x


def test_a_piece_with_no_room_on_two_folds_is_left_out_in_words() -> None:
    wide = (*TOP, part("skirt", box(760, 400), number=5, pair=True))
    lay = lay_out(wide, JERSEY, count=20, table=False)
    assert [outline.part.name for outline in lay.left_out] == ["coat.skirt"]
    (said,) = [f for f in lay.findings if f.level == "error"]
    assert "where the selvedges meet" in said.message
    assert lay_out(wide, cloth(1480.0), count=20, table=False).lay == "open"
