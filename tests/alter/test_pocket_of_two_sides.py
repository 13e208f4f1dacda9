"""Pockets of a wearer whose two sides differ: both hang as they would on an even one, each on its own hand.

Common practice: a pair of pockets stands at one height, and both tilt up towards the sides.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from drafting.alter.edge_pocket import SEAM_BAG
from drafting.blocks import all_blocks
from drafting.body import Body
from drafting.costume.choices import choose
from drafting.costume.garment import MadeGarment, make_garment
from drafting.geometry import Path
from drafting.ground.errors import InputError
from drafting.ground.scale import body_scale
from drafting.reading.given import Given, Origin
from drafting.reading.pockets import PocketWish
from tests.blocks.figures import chart_woman
from tests.making.orders import WOVEN, uneven

FLAP = PocketWish("front", "panel", "flap", 80.0, 40.0, 60.0, along=0.62)
WELT = replace(FLAP, kind="welt", height=20.0, tilt=8.0)
IN_SEAM = PocketWish("front", "side_lower", "in-seam", 120.0, 60.0, 0.0, along=0.45)
WITHIN = 25.0  # mm by which the two sides' own drafts may part them


def made(body: Body, block: str, wish: PocketWish, **asked: str) -> MadeGarment:
    kind = all_blocks()[block]
    chosen = choose(kind, {name: Given(word) for name, word in asked.items()}, body_scale(body), Origin())
    return make_garment(body, WOVEN, kind, chosen, name=block, role="shell", pockets=(wish,))


def marks(garment: MadeGarment, what: str) -> dict[str, Path]:
    """Return the paths of a kind of mark by the hand of the piece that they lie on, "" where both are one."""
    pieces = [piece for piece in garment.draft.pieces if piece.base or piece.pair]
    return {p.hand: mark.path for p in pieces for mark in p.placements if mark.what == what}


@pytest.mark.parametrize("wish", [FLAP, WELT])
def test_a_pair_of_pockets_stands_at_one_height_on_a_coat_of_uneven_shoulders(wish: PocketWish) -> None:
    """The right one stood as far from the wrong end of its edge: 6 cm lower than the left."""
    what = "pocket" if wish.kind == "flap" else "welt"
    even, found = (marks(made(body, "coat", wish), what) for body in (chart_woman(), uneven(chart_woman(), 4.0)))
    assert set(found) == {"left", "right"}
    x0, y0, x1, y1 = found["left"].bounds
    u0, v0, u1, v1 = found["right"].bounds
    assert v0 == pytest.approx(y0, abs=WITHIN)
    assert v1 == pytest.approx(y1, abs=WITHIN)
    assert (u0, u1) == pytest.approx((-x1, -x0), abs=WITHIN), "turned over"
    (alone,) = even.values()
    assert found["left"].bounds == pytest.approx(alone.bounds, abs=WITHIN)


def test_both_welts_rise_towards_the_sides() -> None:
    """The right one rose towards the centre front."""
    garment = made(uneven(chart_woman(), 4.0), "coat", WELT)
    for hand, path in marks(garment, "welt").items():
        highest = max(path.flattened(0.1), key=lambda place: place.imag).real
        middle = (path.bounds[0] + path.bounds[2]) / 2
        (piece,) = (p for p in garment.draft.pieces if p.base == "front" and p.hand == hand and not p.material)
        side = piece["panel"].path.at(1.0).real
        assert (highest - middle) * (side - middle) > 0, hand


def test_a_pocket_in_a_seam_opens_at_one_height_on_both_hands() -> None:
    body = uneven(chart_woman(), 4.0)
    found = marks(made(body, "fitted-top", IN_SEAM, opening="front"), SEAM_BAG)
    assert set(found) == {"left", "right"}
    assert found["right"].bounds[1] == pytest.approx(found["left"].bounds[1], abs=WITHIN)


def test_a_pocket_asked_of_the_right_piece_by_its_own_name_counts_along_that_piece() -> None:
    body = uneven(chart_woman(), 4.0)
    own = replace(FLAP, piece="front-right", along=1 - FLAP.along)
    (both, alone) = (marks(made(body, "coat", wish), "pocket")["right"] for wish in (FLAP, own))
    assert alone.bounds == pytest.approx(both.bounds, abs=0.01)


def test_an_edge_that_a_piece_of_one_hand_lacks_is_named_and_not_the_piece() -> None:
    """Of a front with a bust dart in its side it was said that there is no piece front."""
    body = uneven(chart_woman(), 4.0)
    with pytest.raises(InputError, match=r"front-left.*side_lower"):
        made(body, "fitted-top", replace(IN_SEAM, edge="side"), opening="front")
