"""The side with the bust dart in it is as long as the back's side, whatever truing bends at its mouth.

By geometry alone: both sides of a seam without ease are equally long, and so are a dart's legs.
"""

from __future__ import annotations

import math

import pytest

from drafting.body import Body
from drafting.draft.draft import Draft
from tests.blocks.figures import pair
from tests.bodies import ansur

BENT = "ANSUR 1198"
"""A woman whose curved side was bent by 2.3 degrees over 235 mm: its front came out 0.51 mm too long."""

PEOPLE = (BENT, "ANSUR 0840", "ANSUR 4600")


def person(title: str) -> Body:
    return next(body for body in ansur() if body.title == title)


def sides(draft: Draft, piece: str) -> float:
    """Return how long the side of a piece is when its dart is closed, mm."""
    return math.fsum(edge.length for edge in draft[piece].edges if edge.name.startswith("side"))


@pytest.mark.parametrize("length", ["waist", "hip"])
@pytest.mark.parametrize("title", PEOPLE)
def test_front_and_back_side_are_equally_long_with_the_dart_at_the_side(length: str, title: str) -> None:
    draft = pair(person(title), length=length, bust_dart="side")
    assert sides(draft, "front") == pytest.approx(sides(draft, "back"), abs=0.001)


def test_the_legs_of_the_dart_are_equally_long() -> None:
    draft = pair(person(BENT), length="hip", bust_dart="side")
    into, out = draft["front"]["bust_dart_in"].length, draft["front"]["bust_dart_out"].length
    assert into == pytest.approx(out, abs=0.001)
