"""Draw a path beside another, `distance` mm to its right, as lines and cubics. Layer 1.

An outline runs anticlockwise, so right is outside; a negative distance is left, inside. An offset of
a cubic is no cubic: each is fitted with exact ends and end directions, its two handles by least
squares, and split until no measured point is off by more than `tolerances.OFFSET_FIT`. Where an
inside bend is tighter than the distance the line turns back on itself (two cusps); `offset` cuts
such loops away, `beside` leaves them for `rings.outer`.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial
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
    return all_beside([(path, distance)])[0]


def all_beside(sides: Sequence[tuple[Path, float]]) -> list[Path]:
    """Return what `beside` gives for each path and its distance, all curves fitted at once."""
    parts = [_solid(path) if distance else [] for path, distance in sides]
    wanted = [
        (part, distance) for own, (_, distance) in zip(parts, sides, strict=True) for part in own
    ]
    found = iter(_beside(wanted))
    lines = []
    for own, (path, distance) in zip(parts, sides, strict=True):
        lines.append(_mitred(own, [next(found) for _ in own], distance) if distance else path)
    return lines


def _solid(path: Path) -> list[Segment]:
    return [s for s, length in zip(path.segments, path.lengths, strict=True) if length > 1e-9]


def _mitred(parts: list[Segment], lines: list[Path], distance: float) -> Path:
    whole = lines[0]
    for (last, part), line in zip(pairwise(parts), lines[1:], strict=True):
        corner = Corner(part.start, last.tangent(1.0), part.tangent(0.0))
        whole = Path.joined(join(whole, line, corner, 2 * abs(distance)).paths)
    return whole


def _beside(wanted: Sequence[tuple[Segment, float]]) -> list[Path]:
    """Return the line beside each segment: a line, or cubics cut at cusps and fitted."""
    curves = [(s, distance) for s, distance in wanted if isinstance(s, Cubic)]
    cuts = [[0.0, *found, 1.0] for found in _cusps(curves)]
    bits = [
        (_stretch(cubic, low, high), distance)
        for (cubic, distance), own in zip(curves, cuts, strict=True)
        for low, high in pairwise(own)
    ]
    fitted = iter(_fitted([bit for bit, _ in bits], [d for _, d in bits], _MOST_SPLITS))
    counts = iter(len(own) - 1 for own in cuts)
    lines = []
    for segment, distance in wanted:
        if isinstance(segment, Line):
            across = -1j * distance * segment.tangent(0)
            lines.append(Path((Line(segment.a + across, segment.b + across),)))
        else:
            own = [cubic for _ in range(next(counts)) for cubic in next(fitted)]
            lines.append(Path((own[0], *(Cubic(a.d, *b[1:]) for a, b in pairwise(own)))))
    return lines


def _stretch(cubic: Cubic, low: float, high: float) -> Cubic:
    part = cubic.split(high)[0] if high < 1 else cubic
    return part.split(low / high)[1] if low > 0 else part


def _cusps(curves: Sequence[tuple[Cubic, float]]) -> list[list[float]]:
    """Return, for each cubic, the parameters where the radius of an inside bend is its distance."""
    if not curves:
        return []
    ts, ends = _SCANNED.t, np.array([cubic for cubic, _ in curves])
    distances = np.array([distance for _, distance in curves])[:, None]
    v = ends @ _SCANNED.velocity.T
    bend = (v.conj() * (ends @ _SCANNED.acceleration.T)).imag / np.maximum(abs(v), 1e-12) ** 3
    signs = np.sign(1 + distances * bend)
    found: list[list[float]] = [[] for _ in curves]
    for i, k in np.argwhere(signs[:, :-1] * signs[:, 1:] < 0):
        cubic, distance = curves[i]
        swell = partial(_swell, cubic, distance)
        found[i].append(float(brentq(swell, ts[k], ts[k + 1])))
    return found


def _swell(cubic: Cubic, distance: float, t: float) -> float:
    return 1 + distance * cubic.curvature(t)


def _fitted(cubics: list[Cubic], distances: list[float], splits: int) -> list[list[Cubic]]:
    """Return, for each cubic, the fits beside it: one, or those of its halves where that misses."""
    if not cubics:
        return []
    ends, away = np.array(cubics), np.array(distances)[:, None]
    true = _true(ends, away)
    fits = _fit(cubics, away, true)
    if splits == 0:
        return [[fit] for fit in fits]
    good = _miss(np.array(fits), ends, away, true) < tol.OFFSET_FIT / 2
    halves = [
        half for cubic, ok in zip(cubics, good, strict=True) if not ok for half in cubic.split(0.5)
    ]
    twice = [d for d, ok in zip(distances, good, strict=True) if not ok for _ in range(2)]
    deeper = iter(_fitted(halves, twice, splits - 1))
    return [
        [fit] if ok else [*next(deeper), *next(deeper)] for fit, ok in zip(fits, good, strict=True)
    ]


def _fit(cubics: list[Cubic], away: Numbers, true: Points) -> list[Cubic]:
    """Return the cubics with the true ends and end directions that lie nearest (least squares).

    The two handles solve the normal equations: near = 3 s^2 t and far = 3 s t^2 are no multiples of
    each other, so there is one answer.
    """
    distance = away[:, 0]
    leave, arrive = (np.array([c.tangent(t) for c in cubics]) for t in (0.0, 1.0))
    a = np.array([c.a for c in cubics]) - 1j * distance * leave
    d = np.array([c.d for c in cubics]) - 1j * distance * arrive
    back = np.where(1 + distance * np.array([c.curvature(0.5) for c in cubics]) < 0, -1, 1)
    rest = true - np.stack([a, a, d, d], 1) @ _MEASURED.point.T
    near = (rest * leave.conj()[:, None]).real @ _NEAR * back
    far = -((rest * arrive.conj()[:, None]).real @ _FAR) * back
    both = -_NEAR_FAR * (leave * arrive.conj()).real
    size = _NEAR_2 * _FAR_2 - both * both
    one = np.maximum(0.0, (near * _FAR_2 - far * both) / size) * back
    two = np.maximum(0.0, (far * _NEAR_2 - near * both) / size) * back
    points = np.stack([a, a + one * leave, d - two * arrive, d], 1)
    return [Cubic(*row) for row in points.tolist()]


def _true(ends: Points, away: Numbers) -> Points:
    """Return the points that lie to the right of each cubic, at the measured places."""
    velocity = ends @ _MEASURED.velocity.T
    across = velocity / np.maximum(abs(velocity), 1e-12)
    return np.asarray(ends @ _MEASURED.point.T - 1j * away * across)


def _miss(fits: Points, ends: Points, away: Numbers, true: Points) -> Numbers:
    """Return the greatest distance (mm) of each fit from the true offset, at 23 points.

    Each point of a fit is dropped square onto the cubic (Newton); what is left over beside the
    distance is the miss. Where that does not settle (near a cusp) points of one parameter compare.
    """
    on_fit = fits @ _MEASURED.point.T
    plain = abs(on_fit - true)
    worst = np.asarray(plain.max(axis=1))
    unsure = (worst > tol.OFFSET_FIT / 2) & (worst < 100 * tol.OFFSET_FIT)
    if unsure.any():  # the others are plainly good, or plainly not
        off, v = _dropped(ends[unsure], on_fit[unsure])
        square = abs((off * v.conj()).real) < 1e-6 * np.maximum(abs(v) * abs(off), 1e-12)
        across = abs(abs(off) - abs(away[unsure]))
        near = np.where(square, np.minimum(across, plain[unsure]), plain[unsure])
        worst[unsure] = near.max(axis=1)
    return worst


def _dropped(ends: Points, points: Points) -> tuple[Points, Points]:
    """Return how far points lie from their feet on the cubics, and the velocities there (Newton)."""
    a, b, c, d = (ends[:, i, None] for i in range(4))
    one, two, three = 3 * (b - a), 3 * (a - 2 * b + c), d - a + 3 * (b - c)
    t = np.broadcast_to(_MEASURED.t, points.shape)
    away = points - a
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
