"""Three curves of the trouser: a corner, a bow that bends one way, and a steered S. mm, radians."""

from __future__ import annotations

import cmath
import math

from drafting.geometry import Cubic, unit

LEAST_SHARE = 0.08
"""Least share of a bow's handles at one end, where the curve is nearly straight there (ours)."""

BOW = 0.64
"""Handles of a bow as a share of the way to where its end tangents meet (between a quarter ellipse,
0.55, and a parabola, 0.67)."""


REALLY_S, BARELY_S = math.radians(-2.0), math.radians(-0.5)
"""Smaller end angle of an S, as a negative: up to the first it is meant, from the second on it is as
good as one bend (ours)."""

SHORT = 0.85
"""Longest handle, of the way to where the end tangents meet (ours)."""


def corner(a: complex, meet: complex, b: complex, share: float) -> Cubic:
    """Return the curve in the corner a-meet-b, tangent to both sides.

    It never inflects for a `share` between 0 and 1; 0.552 is a quarter ellipse, 2/3 a parabola.
    """
    return Cubic(a, a + share * (meet - a), b + share * (meet - b), b)


def one_way_curve(a: complex, leave: complex, b: complex, arrive: complex, share: float = BOW) -> Cubic:
    """Return the curve from `a` to `b` with these unit directions, bending one way only.

    The handles share the chord as the angles at the ends do, so the curve stays continuous through
    the straight line.
    """
    chord = b - a
    size = abs(chord)
    way = chord / size
    at_a, at_b = abs((leave / way).imag), abs((arrive / way).imag)
    part = (at_b + 1e-9) / (at_a + at_b + 2e-9)
    part = min(max(part, LEAST_SHARE), 1 - LEAST_SHARE)
    reach = size * share
    return Cubic(a, a + leave * reach * part, b - arrive * reach * (1 - part), b)


def curve_with_handles(
    a: complex, leave: complex, b: complex, arrive: complex, first: float, last: float
) -> Cubic:
    """Return the curve with these unit directions, its handles `first` and `last` of the chord.

    It may be an S. Where the directions bend one way, or as good as, the handles are kept short of
    where they meet, so that it is none; between the two kinds the handles change over 1.5 degrees.
    """
    chord = b - a
    size, at_a, at_b = abs(chord), cmath.phase(chord / leave), cmath.phase(arrive / chord)
    one_way = math.copysign(min(abs(at_a), abs(at_b)), at_a * at_b)
    sure = clamp((one_way - REALLY_S) / (BARELY_S - REALLY_S), 0.0, 1.0)
    meets = math.sin(at_a + at_b)
    if sure > 0 and abs(meets) > 1e-6 and abs(at_a + at_b) < 3.0:
        first += sure * (_short(first, math.sin(at_b) / meets) - first)
        last += sure * (_short(last, math.sin(at_a) / meets) - last)
    return Cubic(a, a + leave * size * first, b - arrive * size * last, b)


def _short(handle: float, meet: float) -> float:
    """Return a handle (of the chord) kept short of where the end tangents meet."""
    return min(handle, max(SHORT * meet, LEAST_SHARE))


def direction_between(one: complex, other: complex, share: float) -> complex:
    """Return the unit direction turned from `one` by a share of the turn to `other`."""
    return unit(one) * cmath.exp(1j * share * cmath.phase(other / one))


def rising_direction(slope: float) -> complex:
    """Return the unit direction that leans by `slope` (tangent) to -x while going up."""
    return complex(-slope, 1.0) / math.hypot(slope, 1.0)


def clamp(value: float, low: float, high: float) -> float:
    """Return `value` kept within `low`..`high`."""
    return min(max(value, low), high)
