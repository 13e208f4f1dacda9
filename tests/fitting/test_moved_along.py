"""A path that several things move at once: ends go where they are sent, and the reverse gives the path again.

The checks are plain geometry: places told in advance, chords and angles.
"""

from __future__ import annotations

import cmath
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from drafting.fitting.lines.along import Ends, Knot, Pull, moved_along, way_of
from drafting.geometry import Cubic, Path

SIDE = Path((Cubic(0j, 10 + 60j, -20 + 110j, 5 + 180j), Cubic(5 + 180j, 15 + 210j, 40 + 260j, 30 + 320j)))
"""A side seam, mm: in at the waist and out over the hip."""

BACK_AGAIN = 1e-6
"""mm: the search for the mean of before and after ends at a thousandth of that."""

moves = st.complex_numbers(max_magnitude=12.0)


def reverse(pull: Pull, at: float) -> Pull:
    """Return what undoes a pull, its knot at the joint where that lies now."""
    knots = tuple(Knot(at, -knot.by) for knot in pull.knots)
    ends = Ends(-pull.ends.start, -pull.ends.end)
    return replace(pull, ends=ends, knots=knots, turns=(-pull.turns[0], -pull.turns[1]))


@settings(max_examples=60, deadline=None)
@given(moves, moves, moves, moves, st.floats(-0.1, 0.1), st.floats(-0.1, 0.1))
def test_several_pulls_and_their_reverses_give_the_path_again(
    start: complex, end: complex, knot: complex, more: complex, one: float, two: float
) -> None:
    pulls = (
        Pull(Ends(start, end), (Knot(SIDE.lengths[0], knot),)),
        Pull(Ends(0j, more), (Knot(SIDE.lengths[0], 0j),)),
        Pull(Ends(more, 0j), as_whole=True),
        Pull(turns=(one, two)),
    )
    there = moved_along(way_of(SIDE, pulls))
    assert there.start == pytest.approx(SIDE.start + start + more, abs=1e-8)  # what moves by less is left
    assert there.end == pytest.approx(SIDE.end + end + more, abs=1e-8)
    back = moved_along(way_of(there, [reverse(pull, there.lengths[0]) for pull in pulls]))
    assert max(abs(p - q) for p, q in zip(back.evenly(17), SIDE.evenly(17), strict=True)) < BACK_AGAIN


def test_a_turned_end_turns_by_its_angle_and_stays_where_it_was() -> None:
    turned = moved_along(way_of(SIDE, (Pull(turns=(0.05, 0.0)),)))
    assert (turned.start, turned.end) == (SIDE.start, SIDE.end)
    assert cmath.phase(turned.leave / SIDE.leave) == pytest.approx(0.05, abs=2e-5)
    assert turned.arrive == pytest.approx(SIDE.arrive)


def test_a_path_that_is_moved_as_a_whole_keeps_its_bends() -> None:
    """It is turned and grows as one: the angle between its two ends' directions is what it was."""
    moved = moved_along(way_of(SIDE, (Pull(Ends(0j, 8 - 3j), as_whole=True),)))
    assert moved.end == SIDE.end + 8 - 3j
    assert cmath.phase(moved.leave / moved.arrive) == pytest.approx(cmath.phase(SIDE.leave / SIDE.arrive))
    assert moved.length / SIDE.length == pytest.approx(abs(moved.end) / abs(SIDE.end), rel=1e-3)


def test_what_moves_nothing_gives_the_very_path() -> None:
    assert moved_along(way_of(SIDE, (Pull(), Pull(as_whole=True)))) is SIDE
