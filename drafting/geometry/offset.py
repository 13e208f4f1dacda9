"""Draw a path beside another, `distance` mm to its right, as lines and cubics. Layer 1.

An outline runs anticlockwise, so right is outside; a negative distance is left, inside. An offset of
a cubic is no cubic: each is fitted with exact ends and end directions, its two handles by least
squares, and split until no measured point is off by more than `tolerances.OFFSET_FIT`. Where an
inside bend is tighter than the distance the line turns back on itself (two cusps); `offset` cuts
such loops away, `beside` leaves them for `rings.outer`.
"""

from __future__ import annotations

from itertools import pairwise
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import brentq

from drafting import tolerances as tol
from drafting.geometry.crossing import between, pinned, self_crossings
from drafting.geometry.curve import Cubic, Line, Segment
from drafting.geometry.join import Corner, join
from drafting.geometry.path import Path

Numbers = NDArray[np.float64]
Points = NDArray[np.complex128]
_MOST_SPLITS = 7


class _Places(NamedTuple):
    """Parameters, and what a cubic's four points weigh there in point, velocity, acceleration."""

    t: Numbers
    point: Points
    velocity: Points
    acceleration: Points

    @staticmethod
    def at(t: Numbers) -> _Places:
        s, ones = 1 - t, np.ones_like(t)
        point = (s**3, 3 * s * s * t, 3 * s * t * t, t**3)
        velocity = (-3 * s * s, 3 * s * s - 6 * s * t, 6 * s * t - 3 * t * t, 3 * t * t)
        acceleration = (6 * s, 6 * t - 12 * s, 6 * s - 12 * t, 6 * t * ones)
        return _Places(
            t, *(np.stack(w, 1).astype(complex) for w in (point, velocity, acceleration))
        )


_MEASURED = _Places.at(np.linspace(0, 1, 25)[1:-1])
"""Where a fitted curve is compared with the true one."""

_SCANNED = _Places.at(np.linspace(0.002, 0.998, 60))
"""Where cusps are looked for."""

_NEAR, _FAR = (_MEASURED.point[:, i].real.copy() for i in (1, 2))
_NEAR_2, _FAR_2, _NEAR_FAR = float(_NEAR @ _NEAR), float(_FAR @ _FAR), float(_NEAR @ _FAR)


def offset(path: Path, distance: float) -> Path:
    """Return the line `distance` mm to the right of an open path, its loops cut away."""
    return _unlooped(beside(path, distance))


def beside(path: Path, distance: float) -> Path:
    """Return the line `distance` mm to the right, loops and all; corners are mitred to 2 x distance."""
    if distance == 0:
        return path
    parts = [s for s, length in zip(path.segments, path.lengths, strict=True) if length > 1e-9]
    whole = _beside(parts[0], distance)
    for last, part in pairwise(parts):
        corner = Corner(part.start, last.tangent(1.0), part.tangent(0.0))
        whole = Path.joined(join(whole, _beside(part, distance), corner, 2 * abs(distance)).paths)
    return whole


def _beside(segment: Segment, distance: float) -> Path:
    if isinstance(segment, Line):
        across = -1j * distance * segment.tangent(0)
        return Path((Line(segment.a + across, segment.b + across),))
    fitted: list[Cubic] = []
    cuts = [0.0, *_cusps(segment, distance), 1.0]
    for low, high in pairwise(cuts):
        fitted.extend(_fitted(_stretch(segment, low, high), distance, _MOST_SPLITS))
    ends = pairwise(fitted)
    whole = [fitted[0], *(Cubic(a.d, *b[1:]) for a, b in ends)]
    return Path(tuple(whole))


def _stretch(cubic: Cubic, low: float, high: float) -> Cubic:
    part = cubic.split(high)[0] if high < 1 else cubic
    return part.split(low / high)[1] if low > 0 else part


def _cusps(cubic: Cubic, distance: float) -> list[float]:
    """Return the parameters where the radius of an inside bend is just the distance."""

    def swell(t: float) -> float:
        return 1 + distance * cubic.curvature(t)

    ts, ends = _SCANNED.t, np.array(cubic)
    v = _SCANNED.velocity @ ends
    bend = (v.conj() * (_SCANNED.acceleration @ ends)).imag / np.maximum(abs(v), 1e-12) ** 3
    signs = np.sign(1 + distance * bend)
    passed = np.flatnonzero(signs[:-1] * signs[1:] < 0)
    return [float(brentq(swell, ts[i], ts[i + 1])) for i in passed]


def _fitted(cubic: Cubic, distance: float, splits: int) -> list[Cubic]:
    true = _true(cubic, distance)
    one = _fit(cubic, distance, true)
    if splits == 0 or _miss(one, cubic, distance, true) < tol.OFFSET_FIT / 2:
        return [one]
    first, second = cubic.split(0.5)
    return _fitted(first, distance, splits - 1) + _fitted(second, distance, splits - 1)


def _fit(cubic: Cubic, distance: float, true: Points) -> Cubic:
    """Return the cubic with the true ends and end directions that lies nearest (least squares).

    Its two handles solve the normal equations: near = 3 s^2 t and far = 3 s t^2 are no multiples of
    each other, so there is one answer.
    """
    leave, arrive = cubic.tangent(0.0), cubic.tangent(1.0)
    a, d = cubic.a - 1j * distance * leave, cubic.d - 1j * distance * arrive
    back = -1 if 1 + distance * cubic.curvature(0.5) < 0 else 1
    rest = true - _MEASURED.point @ np.array((a, a, d, d))
    near = float(_NEAR @ (rest * leave.conjugate()).real) * back
    far = -float(_FAR @ (rest * arrive.conjugate()).real) * back
    both = -_NEAR_FAR * (leave * arrive.conjugate()).real
    size = _NEAR_2 * _FAR_2 - both * both
    handles = (near * _FAR_2 - far * both) / size, (far * _NEAR_2 - near * both) / size
    one, two = (max(0.0, h) * back for h in handles)
    return Cubic(a, a + one * leave, d - two * arrive, d)


def _true(cubic: Cubic, distance: float) -> Points:
    """Return the points that lie `distance` mm to the right of the cubic, at the measured places."""
    ends = np.array(cubic)
    velocity = _MEASURED.velocity @ ends
    across = velocity / np.maximum(abs(velocity), 1e-12)
    return np.asarray(_MEASURED.point @ ends - 1j * distance * across)


def _miss(fit: Cubic, cubic: Cubic, distance: float, true: Points) -> float:
    """Return the greatest distance (mm) of the fit from the true offset, at 23 points.

    Each point of the fit is dropped square onto the cubic (Newton); what is left over beside the
    distance is the miss. Where that does not settle (near a cusp) points of one parameter compare.
    """
    on_fit = _MEASURED.point @ np.array(fit)
    plain = abs(on_fit - true)
    worst = float(plain.max())
    if not tol.OFFSET_FIT / 2 < worst < 100 * tol.OFFSET_FIT:  # plainly good, or plainly not
        return worst
    off, v = _dropped(cubic, on_fit)
    square = abs((off * v.conj()).real) < 1e-6 * np.maximum(abs(v) * abs(off), 1e-12)
    across = abs(abs(off) - abs(distance))
    return float(np.max(np.where(square, np.minimum(across, plain), plain)))


def _dropped(cubic: Cubic, points: Points) -> tuple[Points, Points]:
    """Return how far points lie from their feet on the cubic, and its velocity there (Newton)."""
    a, b, c, d = cubic
    one, two, three = 3 * (b - a), 3 * (a - 2 * b + c), d - a + 3 * (b - c)
    t = _MEASURED.t
    away = np.asarray(points - a)
    for _ in range(4):
        off, v = away - ((three * t + two) * t + one) * t, (3 * three * t + 2 * two) * t + one
        slope = (off * (6 * three * t + 2 * two).conj()).real - (v * v.conj()).real
        steady = np.where(abs(slope) > 1e-9, slope, -1.0)
        last, t = t, np.minimum(np.maximum(t - (off * v.conj()).real / steady, 0), 1)
        if np.max(abs(t - last)) < 1e-9:
            break
    off, v = away - ((three * t + two) * t + one) * t, (3 * three * t + 2 * two) * t + one
    return np.asarray(off), np.asarray(v)


def _unlooped(path: Path) -> Path:
    """Return an open path without its loops: at a crossing with itself it goes on where it came by."""
    kept, place = [], 0.0
    end = float(len(path.segments))
    for crossing in self_crossings(path):
        if crossing.on_a < place:
            continue
        piece = between(path, place, crossing.on_a)
        if piece is not None:
            kept.append(pinned(piece, end=crossing.point))
        place = crossing.on_b
    last = between(path, place, end)
    if last is not None:
        kept.append(pinned(last, start=kept[-1].end if kept else None))
    return Path.joined(kept)
