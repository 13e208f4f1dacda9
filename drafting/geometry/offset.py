"""Draw a path beside another, `distance` mm to its right, as lines and cubics.

An outline runs anticlockwise, so right is outside; a negative distance is left, inside. An offset of
a cubic is no cubic: each is fitted with exact ends and end directions, its two handles by least
squares, and split until no measured point is off by more than `tolerances.OFFSET_FIT`. Where an
inside bend is tighter than the distance the line turns back on itself (two cusps); `offset` cuts
such loops away, `line_beside` leaves them for `rings.outer_rings`.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
from itertools import pairwise
from typing import NamedTuple

import numpy as np

from drafting.geometry.brent import brent_zero
from drafting.geometry.crossing import ends_moved, part_between, self_crossings
from drafting.geometry.curve import Cubic, Line, Numbers, Points, Segment
from drafting.geometry.join import LineCorner, join
from drafting.geometry.path import Path
from drafting.ground import tolerances as tol

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
        return _Places(t, *(np.stack(w, 1).astype(complex) for w in (point, velocity, acceleration)))


_MEASURED = _Places.at(np.linspace(0, 1, 25)[1:-1])
"""Where a fitted curve is compared with the true one."""

_SCANNED = _Places.at(np.linspace(0.002, 0.998, 60))
"""Where cusps are looked for."""

_HALF_WAY = _Places.at(np.array([0.5]))

_NEAR, _FAR = (_MEASURED.point[:, i].real.copy() for i in (1, 2))
_NEAR_2, _FAR_2, _NEAR_FAR = float(_NEAR @ _NEAR), float(_FAR @ _FAR), float(_NEAR @ _FAR)


def offset(path: Path, distance: float) -> Path:
    """Return the line `distance` mm to the right of an open path, its loops cut away."""
    return offsets([(path, distance)])[0]


def offsets(sides: Sequence[tuple[Path, float]]) -> list[Path]:
    """Return what `offset` gives for each path and its distance, all curves fitted at once."""
    return [line if _onward(line) else _unlooped(line) for line in lines_beside(sides)]


def _onward(path: Path) -> bool:
    """Say whether a path gets on along its chord all the way: then it cannot meet itself."""
    along = (path.end - path.start).conjugate()
    return all(((b - a) * along).real > 0 for part in path.segments for a, b in pairwise(part))


def line_beside(path: Path, distance: float) -> Path:
    """Return the line `distance` mm to the right, loops and all; corners are mitred to 2 x distance."""
    return lines_beside([(path, distance)])[0]


def lines_beside(sides: Sequence[tuple[Path, float]]) -> list[Path]:
    """Return what `line_beside` gives for each path and its distance, all curves fitted at once."""
    parts = [_solid(path) if distance else [] for path, distance in sides]
    wanted = dict.fromkeys(
        (part, distance) for own, (_, distance) in zip(parts, sides, strict=True) for part in own
    )  # a lining shares most edges with its shell
    found = dict(zip(wanted, _beside(list(wanted)), strict=True))
    lines = []
    for own, (path, distance) in zip(parts, sides, strict=True):
        lines.append(_mitred(own, [found[part, distance] for part in own], distance) if distance else path)
    return lines


def _solid(path: Path) -> list[Segment]:
    return [s for s, length in zip(path.segments, path.lengths, strict=True) if length > 1e-9]


def _mitred(parts: list[Segment], lines: list[Path], distance: float) -> Path:
    whole = lines[0]
    for (last, part), line in zip(pairwise(parts), lines[1:], strict=True):
        corner = LineCorner(part.start, last.tangent(1.0), part.tangent(0.0))
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
    ends, away = np.array([bit for bit, _ in bits]), np.array([distance for _, distance in bits])
    fitted = iter(_fitted(ends, away, _MOST_SPLITS))
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
    ts, corners = _SCANNED.t, np.array([cubic for cubic, _ in curves])
    distances = np.array([distance for _, distance in curves])[:, None]
    bend = _bend(corners @ _SCANNED.velocity.T, corners @ _SCANNED.acceleration.T)
    signs = np.sign(1 + distances * bend)
    found: list[list[float]] = [[] for _ in curves]
    for i, k in np.argwhere(signs[:, :-1] * signs[:, 1:] < 0):
        cubic, distance = curves[i]
        swell = partial(_swell, cubic, distance)
        ends = float(ts[k]), float(ts[k + 1])
        found[i].append(_turned_round(swell, ends))
    return found


def _turned_round(swell: Callable[[float], float], ends: tuple[float, float]) -> float:
    """Return where `swell` is 0 between two ends; the end that is 0 but for rounding where one is."""
    low, high = map(swell, ends)
    if low * high >= 0:
        return ends[0] if abs(low) < abs(high) else ends[1]
    return float(brent_zero(swell, *ends))


def _swell(cubic: Cubic, distance: float, t: float) -> float:
    return 1 + distance * cubic.curvature(t)


def _fitted(ends: Points, distances: Numbers, splits: int) -> list[list[Cubic]]:
    """Return, for each cubic, the fits beside it: one, or those of its halves where that misses.

    `ends` holds the four points of each cubic in a row.
    """
    if len(ends) == 0:
        return []
    away = distances[:, None]
    true = _true(ends, away)
    fits = _fit(ends, away, true)
    bad = _miss(fits, ends, away, true) >= tol.OFFSET_FIT / 2 if splits else np.zeros_like(distances)
    poor = np.flatnonzero(bad)
    deeper = iter(_fitted(_halves(ends[poor]), np.repeat(distances[poor], 2), splits - 1))
    return [
        [*next(deeper), *next(deeper)] if split else [Cubic(*fit)]
        for fit, split in zip(fits.tolist(), bad.tolist(), strict=True)
    ]


def _halves(ends: Points) -> Points:
    """Return both halves of each cubic, one after the other (de Casteljau)."""
    a, b, c, d = ends.T
    ab, bc, cd = (a + b) / 2, (b + c) / 2, (c + d) / 2
    abc, bcd = (ab + bc) / 2, (bc + cd) / 2
    middle = (abc + bcd) / 2
    return np.stack([a, ab, abc, middle, middle, bcd, cd, d], 1).reshape(-1, 4)


def _leaving(ends: Points) -> Points:
    """Return the unit direction in which each cubic starts, as `Cubic.tangent` does."""
    b, c, d = 3 * (ends[:, 1:] - ends[:, :1]).T
    step = np.where(abs(b) > 1e-12, b, np.where(abs(c) > 1e-12, c, d))
    return np.asarray(step / np.maximum(abs(step), 1e-12))


def _bend(velocity: Points, acceleration: Points) -> Numbers:
    """Return the signed curvature, 1/mm; positive turns left."""
    cross = (velocity.conj() * acceleration).imag
    return np.asarray(cross / np.maximum(abs(velocity), 1e-12) ** 3)


def _fit(ends: Points, away: Numbers, true: Points) -> Points:
    """Return the cubics with the true ends and end directions that lie nearest (least squares).

    The two handles solve the normal equations: near = 3 s^2 t and far = 3 s t^2 are no multiples of
    each other, so there is one answer.
    """
    distance = away[:, 0]
    leave, arrive = _leaving(ends), -_leaving(ends[:, ::-1])
    a, d = ends[:, 0] - 1j * distance * leave, ends[:, 3] - 1j * distance * arrive
    bend = _bend(ends @ _HALF_WAY.velocity[0], ends @ _HALF_WAY.acceleration[0])
    back = np.where(1 + distance * bend < 0, -1, 1)
    rest = true - np.stack([a, a, d, d], 1) @ _MEASURED.point.T
    near = (rest * leave.conj()[:, None]).real @ _NEAR * back
    far = -((rest * arrive.conj()[:, None]).real @ _FAR) * back
    both = -_NEAR_FAR * (leave * arrive.conj()).real
    size = _NEAR_2 * _FAR_2 - both * both
    one = np.maximum(0.0, (near * _FAR_2 - far * both) / size) * back
    two = np.maximum(0.0, (far * _NEAR_2 - near * both) / size) * back
    return np.stack([a, a + one * leave, d - two * arrive, d], 1)


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
        piece = part_between(path, place, crossing.on_a)
        if piece is not None:
            kept.append(ends_moved(piece, end=crossing.point))
        place = crossing.on_b
    last = part_between(path, place, end)
    if last is not None:
        kept.append(ends_moved(last, start=kept[-1].end if kept else None))
    return Path.joined(kept)
