"""A fall front: what it leaves alone, what meets what, where it is buttoned; by shapely and plain arithmetic.

That bearers carry the waistband beneath a flap that buttons over them, 180 to 230 mm deep, is common practice of
breeches and trousers of the 18th and early 19th century.
"""

from __future__ import annotations

import itertools
from functools import cache

import pytest
from shapely.geometry import Point

from drafting.body import Body, wearer
from drafting.costume.garment import MadeGarment, draft_garment
from drafting.costume.stand_in import stand_ins
from drafting.draft.by_role import edges_as
from drafting.draft.roles import EdgeRole, SeamKind
from drafting.draft.walk import walk
from drafting.ground.errors import DraftError
from drafting.making.rules import unsound
from drafting.worn.sewn.chosen import sewn_parts
from tests.alter.styles import ring
from tests.blocks.figures import chart_woman, errors
from tests.drawn_bodies import drawn, far
from tests.making.orders import KNIT, WOVEN, costume_of, order_of
from tests.worn.unusual import child

BLOCKS = ("trousers", "knee-breeches")


@cache
def sample() -> tuple[Body, ...]:
    return (chart_woman(), *drawn(3), *far()[::9], child(1160.0), *stand_ins())


def fall(body: Body, block: str = "trousers", **choices: object) -> MadeGarment:
    return draft_garment(body, WOVEN, block, {"fall_front": True, **choices})


@pytest.mark.parametrize("block", BLOCKS)
def test_a_fall_changes_neither_leg_nor_waist(block: str) -> None:
    for body in sample():
        plain, made = draft_garment(body, WOVEN, block), fall(body, block)
        assert errors(made) == [], body.title
        assert made.draft.girths == plain.draft.girths
        old = {piece.name: piece for piece in plain.draft.pieces}
        for piece in made.draft.pieces:
            if piece.name.startswith(("front", "back", "waistband")) and not piece.material:
                assert piece.area == pytest.approx(old[piece.name].area, abs=0.5)
        for seam in made.draft.seams:
            assert abs(walk(made.draft, seam).difference) < 0.5, (body.title, seam.name)


def test_the_bearers_carry_the_waistband_and_both_sides_open_as_deep() -> None:
    made = fall(chart_woman())
    draft = made.draft
    band = next(
        seam for seam in draft.seams if seam.kind is SeamKind.ATTACHED and ("waistband", "waist") in seam.a
    )
    assert {piece for piece, _ in band.b} == {"bearer", "back"}
    depth = draft.facts["fall_depth"]
    assert 180 <= depth <= 230
    assert [draft[piece]["fall_side"].length for piece in ("front", "back", "bearer")] == pytest.approx(
        [depth] * 3
    )
    assert "fly-facing" not in draft
    # The opening passes the hip: the waist and twice the depth go round it.
    waist, hip = (next(g for g in draft.girths if g.level == level) for level in ("waist", "hip"))
    assert waist.body + waist.settled_ease + 2 * depth >= hip.body


def test_every_hole_of_the_fall_lies_over_its_button() -> None:
    for body in sample()[:-1]:  # the last is drafted once for each hand
        draft = fall(body).draft
        holes = [m.path for m in draft["front"].placements if m.what == "buttonhole"]
        buttons = [m.path for m in draft["bearer"].placements if m.what == "button"]
        assert len(holes) == len(buttons) >= 2
        for hole, button in zip(holes, buttons, strict=True):
            x0, y0, x1, y1 = button.bounds
            assert abs(hole.start - complex(x0 + x1, y0 + y1) / 2) <= 4.0
            assert hole.length >= x1 - x0  # common practice: the diameter and the thickness
            for end in (hole.start, hole.end):
                assert ring(draft["front"]).contains(Point(end.real, end.imag))
        notion = next(n for n in draft.notions if n.what == "button" and n.piece == "bearer")
        assert notion.count == 2 * len(holes)


def test_no_two_buttons_of_a_fall_stand_so_far_apart_that_it_gapes() -> None:
    """A hand's length, 18 cm (from memory), is the most. Two stood 36 cm apart on a front of 42 cm."""
    large = wearer({"height": 1820, "bust_girth": 1460, "waist_girth": 1580, "hip_girth": 1480}, figure="mens")
    for body, most in ((chart_woman(), 2), (large, 4)):
        holes = [m.path.start for m in fall(body).draft["front"].placements if m.what == "buttonhole"]
        assert len(holes) == most
        assert max(abs(b - a) for a, b in itertools.pairwise(holes)) <= 190.0  # along the waist 180 at most


@pytest.mark.parametrize("block", BLOCKS)
def test_its_order_of_work_is_sound_in_any_cloth(block: str) -> None:
    garment = fall(chart_woman(), block)
    for fabric in (WOVEN, KNIT):
        costume = costume_of(garment, fabric)
        steps = order_of(costume)
        assert unsound(costume, steps) == ()
        at = {name: i for i, step in enumerate(steps) for name in step.seams}
        assert at["bearer side"] < at["waistband"]
        assert at["front crotch"] < at["fall facing top"]


def test_worn_the_fall_is_buttoned_up_where_the_bearers_hang() -> None:
    parts = sewn_parts(fall(chart_woman()).draft)
    assert {piece.name for piece in parts.shell} == {"front", "back", "waistband"}
    band = next(seam for seam in parts.seams if ("waistband", "waist") in seam.a)
    waist = {("front", edge.name) for edge in edges_as(parts.draft["front"], EdgeRole.WAIST)}
    assert waist <= set(band.b)
    assert any({("front", "fall_side"), ("back", "fall_side")} == {*s.a, *s.b} for s in parts.seams)


def test_what_is_pulled_on_has_no_fall() -> None:
    with pytest.raises(DraftError, match="for a fall"):
        fall(chart_woman(), waist_finish="casing")
