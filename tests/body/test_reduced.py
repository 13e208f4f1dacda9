"""A body made smaller for stretch cloth, its two sides apart."""

from __future__ import annotations

from typing import Any

import pytest

from drafting.body import Body, wearer
from drafting.body.body import Side
from drafting.body.reduced import AROUND, reduced
from drafting.costume.garment import draft_garment
from tests.population import KNIT

SIDES: tuple[Side, Side] = ("left", "right")
EVEN: dict[str, Any] = {
    "height": 1680.0,
    "bust_girth": 920.0,
    "waist_girth": 740.0,
    "hip_girth": 980.0,
    "upper_arm_girth": 290.0,
    "shoulder_length": 126.0,
}
UNEVEN: dict[str, Any] = EVEN | {"upper_arm_girth": (310.0, 270.0), "shoulder_length": (130.0, 122.0)}

MEAN = {"upper_arm_girth": 290.0, "shoulder_length": 126.0}


def test_both_hands_shrink_with_their_mean() -> None:
    body, small = wearer(UNEVEN), reduced(wearer(UNEVEN), 0.8)
    for name in ("upper_arm_girth", "shoulder_length"):
        assert small[name] == pytest.approx(0.8 * body[name])
        for side in SIDES:
            assert small.hand(name, side) == pytest.approx(0.8 * body.hand(name, side))
        mean = sum(small.hand(name, side) for side in SIDES) / 2
        assert mean == pytest.approx(small[name])


def test_a_measure_of_one_number_is_the_same_on_both_hands_afterwards() -> None:
    small = reduced(wearer(EVEN), 0.8, 0.9)
    for name in small.measures:
        assert small.hand(name, "left") == small.hand(name, "right") == small[name]


def test_what_people_stray_by_shrinks_with_the_estimate() -> None:
    body, small = wearer(EVEN), reduced(wearer(EVEN), 0.8, 0.9)
    estimated = [n for n in AROUND if body.measures[n].sd]
    assert estimated
    for name in estimated:
        m, n = body.measures[name], small.measures[name]
        assert (n.sd or 0) / n.mm == pytest.approx((m.sd or 0) / m.mm)


def test_a_height_or_a_head_is_not_stretched() -> None:
    body, small = wearer(EVEN), reduced(wearer(EVEN), 0.8, 0.9)
    assert {n for n in body.measures if small[n] == body[n]} >= {"height", "nape_height", "hand_girth"}


def depth_of_neck(body: Body, piece: str, edge: str = "neck") -> float:
    """Return how far the close top's neckline falls from the shoulder to the centre, in mm."""
    neck = draft_garment(body, KNIT, "close-top").draft[piece][edge].path
    return abs((neck.end - neck.start).imag)


def test_both_sides_of_a_close_top_meet_at_the_neck_of_the_mean_body() -> None:
    # The neckline is that of the mean shoulder: it takes both hands, and the even drop beside them.
    estimated = {n: m.mm for n, m in wearer(UNEVEN).measures.items() if m.source == "estimated"}
    uneven, mean = wearer(UNEVEN | estimated), wearer(UNEVEN | estimated | MEAN)
    for piece in ("front", "back"):
        wanted = depth_of_neck(mean, piece)
        for side in SIDES:
            assert depth_of_neck(uneven, piece, f"neck_{side}") == pytest.approx(wanted, abs=0.05)
