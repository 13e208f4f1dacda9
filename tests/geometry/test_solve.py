"""Roots of a measure: against numbers known from mathematics."""

from __future__ import annotations

import math

import pytest

from drafting.geometry import solve
from drafting.geometry.solve import root_near, zero_between
from drafting.ground.errors import DraftError

DOTTIE = 0.7390851332151607
"""The number that is its own cosine (from memory; cos gives it back to the last place)."""


def test_the_number_that_is_its_own_cosine_is_found_from_both_sides() -> None:
    assert math.cos(DOTTIE) == pytest.approx(DOTTIE, abs=1e-15)
    for way in (1.0, -1.0):

        def miss(x: float, way: float = way) -> float:
            return way * (x - math.cos(x))

        assert zero_between(miss, (0.0, 1.0), (miss(0.0), miss(1.0)), 1e-12) == pytest.approx(DOTTIE, abs=1e-10)


def test_where_secant_steps_run_away_the_root_is_found_all_the_same() -> None:
    # the cube root of x has no slope that a secant could follow: its steps grow (calculus)
    def miss(x: float) -> float:
        return math.copysign(abs(x - 0.3) ** (1 / 3), x - 0.3)

    assert root_near(miss, 0.9, (-1.0, 1.0), 1e-9) is None
    assert zero_between(miss, (-1.0, 1.0), (miss(-1.0), miss(1.0)), 1e-9) == pytest.approx(0.3, abs=1e-8)


@pytest.mark.parametrize("guess", [None, 1.0, 1.999])
def test_a_guess_changes_the_way_to_the_root_and_not_the_root(guess: float | None) -> None:
    found = solve(lambda x: x * x, 2.0, (0.0, 2.0), what="side of a square", guess=guess)
    assert found == pytest.approx(math.sqrt(2), abs=1e-9)


def test_a_guess_does_not_bring_in_reach_what_is_not() -> None:
    with pytest.raises(DraftError, match="side of a square"):
        solve(lambda x: x * x, 5.0, (0.0, 2.0), what="side of a square", guess=1.9)
