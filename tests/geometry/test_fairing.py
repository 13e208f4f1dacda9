"""A slight wave is laid out of a curve: ends, directions and length stay.

Outside references: fontTools' recursive arc length; bends counted by the signs of sampled turns (numpy).
"""

import cmath
import math

import numpy as np
import pytest
from fontTools.misc.bezierTools import calcCubicArcLength
from hypothesis import given, settings
from hypothesis import strategies as st

from drafting.geometry import Path, smooth, turn
from drafting.geometry.fairing import FairLimits, bowed, faired

WITHIN = 4.0
"""mm: the most that a line may be moved; of a line of 10 inches it suffices for waves to 5 degrees."""


def bends(path: Path) -> int:
    """Return how often the sampled direction turns back by more than a degree, counted by numpy alone."""
    points = np.array([s.point(t) for s in path for t in np.linspace(0, 1, 400, endpoint=False)])
    angle = np.degrees(np.unwrap(np.angle(np.diff(points))))
    count, extreme, way = 0, angle[0], 0
    for one in angle:
        if way and (one - extreme) * way > 0:
            extreme = one
        elif abs(one - extreme) > 1.0:
            count += way != 0
            way, extreme = (1 if one > extreme else -1), one
    return count


def length(path: Path) -> float:
    return math.fsum(
        calcCubicArcLength(*((p.real, p.imag) for p in segment.as_cubic()), tolerance=1e-7) for segment in path
    )


def waved(wave: float, hollow: float, size: float) -> Path:
    """Return a line that runs on by some degrees the wrong way, back, and on round a quarter."""
    corners = (0j, 100 + 0j, 160 + 1j, 250 - hollow * 1j)
    ways = [turn(angle) for angle in (wave / 2, -wave, wave, -50)]
    parts = [smooth(corners[i] * size, corners[i + 1] * size, ways[i], ways[i + 1]) for i in range(3)]
    return Path(tuple(parts))


@settings(max_examples=40, deadline=None)
@given(st.floats(1.2, 5.0), st.floats(28, 45), st.floats(0.4, 1.2))
def test_a_wave_is_laid_out_and_ends_directions_and_length_stay(wave: float, hollow: float, size: float) -> None:
    path = waved(wave, hollow, size)
    assert bends(path) > 0
    within = 1.25 * size * WITHIN  # the line and its wave grow together
    fair = faired(path, 0, FairLimits(within, 1.0))
    assert fair is not None
    assert bends(fair.path) == 0
    assert (fair.path.start, fair.path.end) == (path.start, path.end)
    assert fair.path.leave == pytest.approx(path.leave, abs=1e-9)
    assert fair.path.arrive == pytest.approx(path.arrive, abs=1e-9)
    assert length(path) - 0.1 < length(fair.path) < length(path) + 1e-4  # a wave may be longer than any line
    apart = [abs(p - q) for p, q in zip(fair.path.evenly(201), path.evenly(201), strict=True)]
    assert max(apart) <= min(within, fair.off * 1.1)


def test_what_has_no_fair_line_near_is_left() -> None:
    assert faired(waved(6.0, 30, 1.0), 0, FairLimits(0.1, 1.0)) is None


def test_what_bends_as_it_may_is_left() -> None:
    assert faired(waved(3.0, 30, 1.0), 2, FairLimits(WITHIN, 1.0)) is None


@given(st.floats(-6.0, 6.0), st.floats(-6.0, 6.0), st.floats(100.0, 400.0))
def test_a_line_that_is_nearly_straight_is_bowed_one_way(opens: float, closes: float, length: float) -> None:
    path = Path((smooth(0j, length + 0j, turn(opens), turn(closes)),))
    fair = bowed(path, 0.05 * length)
    assert fair is not None
    assert bends(fair.path) == 0
    assert (fair.path.start, fair.path.end) == (path.start, path.end)
    apart = [abs(p - q) for p, q in zip(fair.path.evenly(201), path.evenly(201), strict=True)]
    assert max(apart) <= fair.off * 1.1 + 0.05
    assert abs(cmath.phase(fair.path.leave / path.leave)) < math.radians(0.7)


def test_what_is_far_from_straight_or_would_move_far_is_not_bowed() -> None:
    assert bowed(Path((smooth(0j, 250 + 0j, turn(20), turn(15)),)), 50.0) is None
    assert bowed(Path((smooth(0j, 250 + 0j, turn(4), turn(4)),)), 1.0) is None
