"""A piece moved by hand: it snaps, stays on the fold, is refused on top of another."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from drafting.geometry import line
from drafting.ground.errors import DraftError
from drafting.layout import Part, broken_rules, lay_out, lay_row, moved
from tests.layout.figures import COAT, box, breaks, cloth, part

LAY = lay_out(COAT, cloth(), count=100, table=False)


def spot(lay: object, name: str) -> tuple[float, float]:
    return next((s.x, s.y) for s in lay.packing.spots if lay.id(s) == name)  # type: ignore[attr-defined]


def test_a_piece_let_go_on_free_cloth_lies_there_and_the_length_is_told() -> None:
    far = moved(LAY, "coat.cuff.both.1", LAY.length + 200, 100)
    x, y = spot(far, "coat.cuff.both.1")
    assert (x, y) == pytest.approx((LAY.length + 200, 100), abs=0.01)
    cuff = next(row for row in lay_row(far)["placed"] if row["piece"] == "cuff")
    part_of = next(p for p in COAT if p.cut.piece.name == "cuff")
    x0, y0, x1, y1 = part_of.cut.cut.bounds
    long = (y1 - y0) if part_of.cut.piece.grain % 180 == 90 else (x1 - x0)
    assert cuff["x"] == pytest.approx(x, abs=0.01)
    assert far.length == pytest.approx(x + long, abs=0.02)  # the cuff is the last on the cloth now
    assert breaks(far, COAT) == []


def test_a_piece_let_go_near_its_neighbours_snaps_to_them_at_the_gap() -> None:
    parts = (part("wide", box(700, 300), pair=True), part("small", box(200, 200), pair=True))
    two = lay_out(parts, cloth(lay="folded"), count=20, table=False)
    assert spot(two, "coat.wide.both.1") == (0, 2.5)  # half the gap on each side of the fold
    near = moved(two, "coat.small.both.1", 313, 9)
    x, y = spot(near, "coat.small.both.1")
    assert 305 <= x <= 306.01  # the piece ends at 300, the gap is 5, snapped within 1 mm
    assert y == pytest.approx(2.5, abs=0.01)  # and drawn to the fold, half the gap off it
    assert breaks(near, parts) == []


def test_a_piece_on_the_fold_stays_on_it() -> None:
    far = moved(LAY, "coat.back.single.1", LAY.length + 100, 333)
    assert spot(far, "coat.back.single.1")[1] == 0
    assert breaks(far, COAT) == []


def test_a_piece_let_go_on_top_of_another_is_refused_and_the_lay_stays_as_it_was() -> None:
    before = LAY.packing
    x, y = spot(LAY, "coat.front.both.1")
    with pytest.raises(DraftError, match=r"^coat cuff cannot lie there: coat cuff lies off the cloth.*free cloth"):
        moved(LAY, "coat.cuff.both.1", x + 250, y + 100)
    assert LAY.packing == before


@pytest.mark.parametrize("at", [(float("nan"), 0.0), (0.0, float("inf"))])
def test_a_place_that_is_none_is_refused(at: tuple[float, float]) -> None:
    with pytest.raises(DraftError, match="cannot lie at"):
        moved(LAY, "coat.cuff.both.1", *at)


def test_a_piece_that_is_not_there_is_refused_with_those_like_it() -> None:
    with pytest.raises(DraftError, match=r"coat\.front\.both\.1\?"):
        moved(LAY, "coat.hood", 0, 0)


GRAINED = tuple(
    Part(
        "coat",
        replace(part(name, box(wide, long), pair=True).cut, grainline=line(at + 20j, at + (long - 20) * 1j)),
    )
    for name, wide, long, at in (("front", 300, 500, 70), ("side", 200, 470, 115))
)


@pytest.mark.parametrize("repeats", [(75.0, None), (None, 24.0), (75.0, 24.0)])
@pytest.mark.parametrize("by", [(60.0, 3.0), (333.0, -41.0), (1.0, 17.0)])
def test_on_cloth_with_a_repeat_a_piece_let_go_lies_on_the_repeat_nearest_to_it(
    repeats: tuple[float | None, float | None], by: tuple[float, float]
) -> None:
    along, across = repeats
    bolt = replace(cloth(lay="open"), repeat_along=along, repeat_across=across)
    lay = lay_out(GRAINED, bolt, count=20, table=False)
    last = max(lay.packing.spots, key=lambda s: s.x)
    wanted = (lay.length + 40 + by[0], 200 + by[1])
    new = moved(lay, lay.id(last), *wanted)
    x, y = spot(new, lay.id(last))
    first = min(s.x for s in new.packing.spots)
    assert first == pytest.approx(0, abs=0.01)
    assert abs(x - wanted[0]) <= (along or 30) / 2 + 0.01
    assert abs(y - wanted[1]) <= (across or 30) / 2 + 0.01
    if along:
        assert math.remainder(x - last.x, along) == pytest.approx(0, abs=0.01)
    if across:
        assert math.remainder(y - last.y, across) == pytest.approx(0, abs=0.01)
    assert broken_rules(new.job, new.packing) == []
    assert breaks(new, GRAINED) == []
