"""What is seen on both sides of the centre of an uneven wearer: one V, two lapels that mirror each other.

Checked against plane geometry (a mirror image) and common practice: a low shoulder moves its shoulder and armhole.
"""

from __future__ import annotations

import pytest

from drafting.body import wearer
from drafting.costume.garment import draft_garment
from drafting.draft.roles import LevelKind
from tests.costume.test_uneven import errors, sloping
from tests.making.orders import WOVEN


@pytest.mark.parametrize("breasted", ["single", "double"])
def test_both_fronts_of_a_waistcoat_open_in_one_v(breasted: str) -> None:
    """Common practice: a low shoulder moves shoulder and armhole, never what is seen on both sides of the centre.
    The V of the lower side ended 23 mm lower and crossed the centre 53 mm from where the other did."""
    made = draft_garment(sloping(30.0), WOVEN, "waistcoat", {"breasted": breasted})
    assert errors(made) == []
    left, right = (made.draft[f"front-{hand}"] for hand in ("left", "right"))
    one, two = left["neck"].path, right["neck"].path.reversed()
    assert one.end.imag == pytest.approx(two.end.imag, abs=0.1)
    for share in (0.25, 0.5, 0.75, 1.0):
        a, b = one.at(share * one.length), two.at(share * two.length)
        assert abs(a - complex(-b.real, b.imag)) < 4.0, share  # the side neck points lie as far apart


def test_a_bust_line_that_one_front_alone_draws_is_no_girth() -> None:
    """The V cut the other off above it: the bust was told 24 cm too small."""
    tape = {"bust_girth": 852.0, "waist_girth": 700.0, "hip_girth": 900.0, "shoulder_drop": (40.0, 20.0)}
    drawn = []
    for end in range(40, -90, -10):
        body = wearer({"height": 1680.0, **tape})
        made = draft_garment(body, WOVEN, "waistcoat", {"bust_dart": "side", "v_above_bust": end})
        assert errors(made) == [], end
        fronts = [made.draft[f"front-{hand}"] for hand in ("left", "right")]
        drawn.append(sum(any(one.kind is LevelKind.BUST for one in front.levels) for front in fronts))
    assert 1 in drawn


@pytest.mark.parametrize("block", ["coat", "spencer", "tailcoat"])
def test_both_lapels_of_a_coat_break_at_one_height(block: str) -> None:
    """That of the lower side broke 11 mm lower."""
    made = draft_garment(sloping(30.0), WOVEN, block)
    assert errors(made) == []
    left, right = (made.draft[f"front-{hand}"] for hand in ("left", "right"))
    for point, most in (("break", 0.1), ("roll_top", 3.5)):  # the side neck points lie 3 mm apart
        one, two = left.points[point], right.points[point]
        assert abs(one - complex(-two.real, two.imag)) < most, point
