"""Draw a path beside another, `distance` mm to its right, as lines and cubics. Layer 1.

An outline runs anticlockwise, so right is outside; a negative distance is left, inside. An offset of
a cubic is no cubic: each is fitted with exact ends and end directions, its two handles by least
squares, and split until no measured point is off by more than `tolerances.OFFSET_FIT`. Where an
inside bend is tighter than the distance the line turns back on itself (two cusps); `offset` cuts
such loops away, `beside` leaves them for `rings.outer`.
"""

from __future__ import annotations

from itertools import pairwise

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import brentq

from drafting import tolerances as tol
from drafting.geometry.crossing import between, pinned, self_crossings
from drafting.geometry.curve import Cubic, Line, Segment
from drafting.geometry.join import Corner, join
from drafting.geometry.path import Path

Points = NDArray[np.complex128]
_T = np.linspace(0, 1, 25)[1:-1]
_S = 1 - _T
_MOST_SPLITS = 7


def offset(path: Path, distance: float) -> Path:
    """Return the line `distance` mm to the right of an open path, its loops cut away."""
    return _unlooped(beside(path, distance))


def beside(path: Path, distance: float) -> Path:
    """Return the line `distance` mm to the right, loops and all; corners are mitred to 2 x distance."""
    if distance == 0:
        return path
    parts = [segment for segment in path.segments if segment.length > 1e-9]
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

    ts = np.linspace(0.002, 0.998, 60)
    values = [swell(float(t)) for t in ts]
    pairs = zip(ts, ts[1:], values, values[1:], strict=False)
    return [float(brentq(swell, a, b)) for a, b, at_a, at_b in pairs if at_a * at_b < 0]


def _fitted(cubic: Cubic, distance: float, splits: int) -> list[Cubic]:
    one = _fit(cubic, distance)
    if splits == 0 or _miss(one, cubic, distance) < tol.OFFSET_FIT / 2:
        return [one]
    first, second = cubic.split(0.5)
    return _fitted(first, distance, splits - 1) + _fitted(second, distance, splits - 1)


def _fit(cubic: Cubic, distance: float) -> Cubic:
    """Return the cubic with the true ends and end directions that lies nearest (least squares)."""
    leave, arrive = cubic.tangent(0.0), cubic.tangent(1.0)
    a, d = cubic.a - 1j * distance * leave, cubic.d - 1j * distance * arrive
    back = -1 if 1 + distance * cubic.curvature(0.5) < 0 else 1
    wanted = _true(cubic, distance, _T)
    near, far = 3 * _S**2 * _T, 3 * _S * _T**2
    rest = wanted - (_S**3 + near) * a - (_T**3 + far) * d
    columns = np.stack([near * leave * back, -far * arrive * back], axis=1)
    both = np.concatenate([columns.real, columns.imag])
    handles = np.linalg.lstsq(both, np.concatenate([rest.real, rest.imag]), rcond=None)[0]
    one, two = (max(0.0, float(h)) * back for h in handles)
    return Cubic(a, a + one * leave, d - two * arrive, d)


def _true(cubic: Cubic, distance: float, t: NDArray[np.float64]) -> Points:
    velocity = _velocity(cubic, t)
    return np.asarray(
        _point(cubic, t) - 1j * distance * velocity / np.maximum(abs(velocity), 1e-12)
    )


def _point(c: Cubic, t: NDArray[np.float64]) -> Points:
    s = 1 - t
    return np.asarray(s**3 * c.a + 3 * s * s * t * c.b + 3 * s * t * t * c.c + t**3 * c.d)


def _velocity(c: Cubic, t: NDArray[np.float64]) -> Points:
    s = 1 - t
    return np.asarray(3 * s * s * (c.b - c.a) + 6 * s * t * (c.c - c.b) + 3 * t * t * (c.d - c.c))


def _miss(fit: Cubic, cubic: Cubic, distance: float) -> float:
    """Return the greatest distance (mm) of the fit from the true offset, at 23 points.

    Each point of the fit is dropped square onto the cubic (Newton); what is left over beside the
    distance is the miss. Where that does not settle (near a cusp) points of one parameter compare.
    """
    on_fit = _point(fit, _T)
    plain = abs(on_fit - _true(cubic, distance, _T))
    worst = float(plain.max())
    if not tol.OFFSET_FIT / 2 < worst < 100 * tol.OFFSET_FIT:  # plainly good, or plainly not
        return worst
    t = _T.copy()
    for _ in range(4):
        v, off = _velocity(cubic, t), on_fit - _point(cubic, t)
        bend = 6 * (1 - t) * (cubic.c - 2 * cubic.b + cubic.a) + 6 * t * (
            cubic.d - 2 * cubic.c + cubic.b
        )
        slope = (off * bend.conj()).real - abs(v) ** 2
        steady = np.where(abs(slope) > 1e-9, slope, -1.0)
        t = np.clip(t - (off * v.conj()).real / steady, 0, 1)
    off, v = on_fit - _point(cubic, t), _velocity(cubic, t)
    square = abs((off * v.conj()).real) < 1e-6 * np.maximum(abs(v) * abs(off), 1e-12)
    across = abs(abs(off) - abs(distance))
    return float(np.max(np.where(square, np.minimum(across, plain), plain)))


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
