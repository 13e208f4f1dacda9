"""Flaps on coats: on the side body or across the breast, alone, over a welt's mouth, over a patch.

Where they lie is asked of shapely; what is sewn first is common practice (mouth, bag, then flap).
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from shapely.geometry import Polygon

from drafting.blocks import all_blocks
from drafting.body import Body
from drafting.costume.choices import choose
from drafting.costume.garment import MadeGarment, make_garment
from drafting.draft.piece import Piece
from drafting.ground.scale import body_scale
from drafting.making.rules import unsound
from drafting.reading.given import Origin
from drafting.reading.pockets import PocketWish
from tests.blocks.figures import chart_woman, errors
from tests.blocks.test_contact_sheets_of_settings import six
from tests.making.orders import WOVEN, costume_of, order_of

FLAP = PocketWish("side-body", "panel_front", "flap", 140.0, 55.0, 90.0, along=0.78, corners="round")
JET = replace(FLAP, kind="welt", height=12.0, corners="square")
PATCH = replace(FLAP, kind="patch", height=150.0, inside=100.0, along=0.6)


def made(body: Body, block: str, *wishes: PocketWish) -> MadeGarment:
    kind = all_blocks()[block]
    chosen = choose(kind, {}, body_scale(body), Origin())
    return make_garment(body, WOVEN, kind, chosen, name=block, role="shell", pockets=wishes)


def polygon(piece: Piece) -> Polygon:
    return Polygon([(p.real, p.imag) for p in piece.outline.flattened(0.1)])


@pytest.mark.parametrize("block", ["coat", "tailcoat", "spencer"])
def test_a_flap_lies_on_the_side_body_of_every_figure_lined_and_stiffened(block: str) -> None:
    for body in six().values():
        found = made(body, block, FLAP)
        assert errors(found) == [], body.title
        (mark,) = [m for m in found.draft["side-body"].placements if m.what == "pocket"]
        inside = Polygon([(p.real, p.imag) for p in mark.path.flattened(0.1)])
        assert polygon(found.draft["side-body"]).buffer(0.05).contains(inside)
        assert found.draft["flap-1"].count == 4, "two layers, two hands"
        assert found.draft["flap-1-interfacing"].count == 2


@pytest.mark.parametrize("listed", [(JET, FLAP), (FLAP, JET), (PATCH, FLAP), (FLAP, PATCH)])
def test_a_flap_is_sewn_on_after_the_pocket_that_it_covers(listed: tuple[PocketWish, ...]) -> None:
    costume = costume_of(made(chart_woman(), "coat", *listed), WOVEN)
    steps = order_of(costume)
    assert unsound(costume, steps) == ()
    first = {made: i for i, step in enumerate(steps) for made in [step.makes]}
    flap = next(i for makes, i in first.items() if "with flap" in makes)
    others = [i for makes, i in first.items() if "with welt" in makes or "with patch" in makes]
    assert max(others) < flap


def test_a_mouth_below_the_flap_has_bags_of_lining_and_a_facing_of_the_cloth() -> None:
    draft = made(six()["largest"], "coat", JET, FLAP).draft
    assert (draft["welt-1-bag"].cut_from, draft["welt-1-facing"].cut_from) == ("lining", "")


def test_a_welt_beside_a_seam_has_a_narrower_bag_and_not_a_useless_one() -> None:
    """5 mm from the side body's seam its bag was 45 mm deep, as no bag 10 mm wider than the mouth found room; a
    bag has room for a hand (common practice: 10 to 15 cm)."""
    body = six()["largest"]
    front = made(body, "coat").draft["front"]
    for gap in (13.0, 17.0, 30.0):
        wish = replace(JET, piece="front", edge="panel", along=0.6, width=90.0, inside=45.0 + gap)
        garment = made(body, "coat", wish)
        (mark,) = [m for m in garment.draft["front"].placements if m.what == "pocket bag"]
        x0, low, _, _ = mark.path.bounds
        (mouth,) = [m for m in garment.draft["front"].placements if m.what == "welt"]
        assert mouth.path.bounds[1] - low >= 100, gap
        assert 4 <= mouth.path.bounds[0] - x0 <= 10
        assert polygon(front).contains(Polygon([(p.real, p.imag) for p in mark.path.flattened(0.1)]))
