"""The ends of what is taken are rounded inwards, so that what a refusal names can be typed and is taken."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drafting.ground.errors import DraftError
from drafting.ground.lengths import in_unit, told
from drafting.ground.units import parse_length
from drafting.shaping.details.edge_pockets import slant
from tests.alter.test_pocket import made

COARSEST = 25.4 / 8
"""mm: an eighth of an inch, to which lengths are told there."""


@given(st.floats(4.0, 3000.0), st.sampled_from(["cm", "mm", "in"]))
def test_ends_are_told_inwards_by_less_than_one_step_of_the_tape(mm: float, unit: str) -> None:
    """Plain arithmetic."""
    most, least = (parse_length(in_unit(told(mm, how), unit), unit) for how in ("most", "least"))
    assert mm - COARSEST < most <= mm + 0.01
    assert mm - 0.01 <= least < mm + COARSEST


@pytest.mark.parametrize("unit", ["cm", "in"])
def test_a_pockets_width_that_a_refusal_names_is_taken(unit: str) -> None:
    """A mouth of 4 cm was refused with "reachable up to 4 cm"."""
    front = made("trousers").draft["front"]
    with pytest.raises(DraftError) as refused:
        slant(front, "waist_side", "side", 400.0, 170.0)
    named = in_unit(refused.value.reach, unit).removeprefix("up to ")
    assert slant(front, "waist_side", "side", parse_length(named, unit), 170.0).mouth.length > 0
