"""Sign changes of curvature are found exactly, and turns add up. Checked against plain geometry."""

from __future__ import annotations

import itertools
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drafting.geometry import Cubic, Path, line
from drafting.geometry.curve import turn
from drafting.geometry.turning import inflections, sign_changes, turns

points = st.complex_numbers(max_magnitude=500, allow_nan=False, allow_infinity=False)


@given(points, points, points, points)
def test_the_curvature_has_one_sign_between_two_sign_changes(
    a: complex, b: complex, c: complex, d: complex
) -> None:
    # Against the curvature itself (textbook formula in Cubic.curvature), sampled between the changes.
    cubic = Cubic(a, b, c, d)
    stops = [0.0, *sign_changes(cubic), 1.0]
    for low, high in itertools.pairwise(stops):
        if high - low < 1e-3:
            continue
        inner = [low + (high - low) * share for share in (0.05, 0.2, 0.4, 0.6, 0.8, 0.95)]
        signs = {math.copysign(1, k) for t in inner if abs(k := cubic.curvature(t)) > 1e-9}
        assert len(signs) <= 1


def test_a_symmetric_s_changes_in_its_middle() -> None:
    s = Cubic(0j, 50 + 0j, 50 + 100j, 100 + 100j)
    assert sign_changes(s) == pytest.approx((0.5,))
    first, second = turns(Path((s,)))
    assert first == pytest.approx(-second)
    assert first == pytest.approx(math.degrees(math.atan2(150, 75)))  # slope at t = 1/2 is 2


def test_a_quarter_of_a_circle_turns_90_degrees_and_never_changes() -> None:
    k = 0.5522847498  # the usual cubic for a quarter circle
    quarter = Path((Cubic(1 + 0j, 1 + k * 1j, k + 1j, 1j),))
    assert turns(quarter) == (pytest.approx(90),)
    assert inflections(quarter, 1.0) == 0


def test_a_straight_path_has_no_runs() -> None:
    assert turns(line(0j, 10 + 0j, 30 + 0j)) == ()
    assert turns(Path((Cubic(0j, 1 + 1j, 2 + 2j, 3 + 3j),))) == ()


def test_a_corner_counts_as_bending() -> None:
    assert turns(line(0j, 10 + 0j, 10 + 10j, 20 + 10j)) == pytest.approx((90, -90))
    assert inflections(line(0j, 10 + 0j, 10 + 10j, 20 + 10j), 1.0) == 1


def test_a_run_that_turns_less_than_a_degree_is_no_inflection() -> None:
    small = math.tan(math.radians(0.9))
    wiggle = line(0j, 10 + 10j, 20 + 10j, 30 + (10 + 10 * small) * 1j, 30 - 20j)
    assert len(turns(wiggle)) == 3
    assert inflections(wiggle, 1.0) == 0
    assert inflections(wiggle, 0.5) == 2


@given(st.integers(-36, 36))
def test_a_turn_done_so_often_as_goes_round_comes_back(tens: int) -> None:
    """The turn by 10 degrees, 36 times, is the number 1; by 60 degrees it is half of 1 + i times the root of 3."""
    assert turn(10.0 * tens) ** 36 == pytest.approx(1.0, abs=1e-12)
    assert turn(60.0) == pytest.approx(complex(0.5, math.sqrt(0.75)), abs=1e-12)
