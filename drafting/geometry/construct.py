"""Drafting moves: a smooth curve between two directions, through a point, square and leaning lines.

Handle lengths follow `Source.HOBBY`. Each handle is then kept short of the point where the two end
tangents meet, so that a curve that should bend one way only cannot wiggle.
"""

from __future__ import annotations

import cmath
import math
from typing import NamedTuple

from drafting.geometry.curve import Cubic
from drafting.geometry.path import Path
from drafting.ground.errors import DraftError

KEEP = 0.80
"""Longest handle as a share of the way to the meeting point of the end tangents (ours, by eye)."""


class Directed(NamedTuple):
    """A point and the direction of travel there."""

    at: complex
    heading: complex


def unit(direction: complex) -> complex:
    """Return `direction` at length 1."""
    size = abs(direction)
    if size < 1e-12:
        raise DraftError(
            "two construction points fall together", turn="check the measures and the ease at this level"
        )
    return direction / size


_NEAR, _FAR = (math.sqrt(5) - 1) / 2, (3 - math.sqrt(5)) / 2


def _hobby(a: float, b: float) -> tuple[float, float]:
    """Return both handles as shares of the chord, for the angles `a` and `b` to the chord."""
    sa, sb, ca, cb = math.sin(a), math.sin(b), math.cos(a), math.cos(b)
    swing = math.sqrt(2) * (sa - sb / 16) * (sb - sa / 16) * (ca - cb)
    near, far = 1 + _NEAR * ca + _FAR * cb, 1 + _NEAR * cb + _FAR * ca
    if min(near, far) < 1e-9:
        raise DraftError("a curve would have to turn back on itself", turn="check the measures and lengths here")
    return (2 + swing) / (3 * near), (2 - swing) / (3 * far)


def smooth(
    a: complex, b: complex, leave: complex, arrive: complex, flatter_start: float = 1.0, *, may_wave: bool = False
) -> Cubic:
    """Return one cubic from `a` to `b` that leaves and arrives in the given directions.

    `flatter_start` lengthens the first handle, so that the curve starts straighter. `may_wave`
    lets it begin with a bend the other way, as a sleeve cap does: its length then changes without
    a jump when `leave` swings across the chord. Raises `DraftError` where `a` and `b` fall together.

    >>> quarter = smooth(100 + 0j, 100j, 1j, -1 + 0j)  # nearly a quarter of a circle, 157.08 long
    >>> round(quarter.length, 1)
    157.1
    """
    chord = b - a
    size = abs(chord)
    if size < 1e-9:
        unit(chord)
    leave, arrive = unit(leave), unit(arrive)
    th, ph = cmath.phase(leave / chord), cmath.phase(chord / arrive)
    share_a, share_b = _hobby(th, ph)
    handle_a, handle_b = flatter_start * size * share_a, size * share_b
    if th * ph > 1e-8 and abs(th + ph) < 3.0:
        meet = math.sin(th + ph)
        handle_a = min(handle_a, KEEP * size * math.sin(ph) / meet)
        if not may_wave:
            handle_b = min(handle_b, KEEP * size * math.sin(th) / meet)
    return Cubic(a, a + leave * handle_a, b - arrive * handle_b, b)


def heading_through(
    a: complex, m: complex, b: complex, leave: complex, arrive: complex, share: tuple[float, float]
) -> complex:
    """Return the direction at `m` that makes the curve a-m-b bend evenly (Hobby's mock curvature).

    The direction is kept between `share` of the turn from the first chord to the second.
    """
    first, second = m - a, b - m
    d1, d2 = abs(first), abs(second)
    psi = cmath.phase(unit(second) / unit(first))
    th0, ph2 = cmath.phase(unit(leave) / unit(first)), cmath.phase(unit(second) / unit(arrive))
    th = (ph2 / d2 - (th0 + 2 * psi) / d1) / (2 / d1 + 2 / d2)
    th = -psi * min(share[1], max(share[0], -th / psi)) if psi else 0.0
    return unit(second) * cmath.exp(1j * th)


def curve_through(
    a: complex, m: complex, b: complex, leave: complex, arrive: complex, share: tuple[float, float] = (0.12, 0.88)
) -> Path:
    """Return the smooth path of two cubics from `a` through `m` to `b`."""
    heading = heading_through(a, m, b, leave, arrive, share)
    return Path((smooth(a, m, leave, heading), smooth(m, b, heading, arrive)))


def meet(a: Directed, b: Directed) -> complex:
    """Return the point where the straight lines through `a` and `b` cross.

    Raises `DraftError` where they are parallel.
    """
    cross = (a.heading.conjugate() * b.heading).imag
    if abs(cross) < 1e-12:
        raise DraftError("two construction lines run parallel and never meet")
    along = ((b.at - a.at).conjugate() * b.heading).imag / cross
    return a.at + a.heading * along
