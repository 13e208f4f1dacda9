"""Where a point lies nearest to a path."""

from __future__ import annotations

import math

import numpy as np

from drafting.geometry import Line, Path, Segment

PARTS = 32
"""Every segment is tried at so many places first."""

_T = np.linspace(0.0, 1.0, PARTS + 1)
_WEIGHTS = np.stack([(1 - _T) ** 3, 3 * (1 - _T) ** 2 * _T, 3 * (1 - _T) * _T**2, _T**3], 1).astype(complex)
"""What a cubic's four points weigh at these places."""


def on_path(path: Path, point: complex) -> tuple[float, float]:
    """Return how far a point is from a path, and the place nearest to it, mm from the path's start."""
    best, passed = (math.inf, 0.0), 0.0
    for segment, length in zip(path.segments, path.lengths, strict=True):
        if _segment_apart(segment, point) < best[0]:
            gap, t = _nearest(segment, point)
            if gap < best[0] - 1e-12:
                part = segment.split(t)[0].length if 0 < t < 1 else t * length
                best = (gap, passed + part)
        passed += length
    return best


def at_least_apart(path: Path, point: complex) -> float:
    """Return a distance that a point has at least from a path; much sooner told than how far it is."""
    return min(_segment_apart(segment, point) for segment in path.segments)


def _segment_apart(segment: Segment, point: complex) -> float:
    """Return a distance that a point has at least from a segment: that from the box of its points."""
    xs, ys = [p.real for p in segment], [p.imag for p in segment]
    across = max(min(xs) - point.real, 0.0, point.real - max(xs))
    return math.hypot(across, max(min(ys) - point.imag, 0.0, point.imag - max(ys)))


def _nearest(segment: Segment, point: complex) -> tuple[float, float]:
    """Return the least distance from a segment and the parameter there."""
    if isinstance(segment, Line):
        t = ((point - segment.a) / (segment.b - segment.a)).real if segment.b != segment.a else 0.0
        t = min(1.0, max(0.0, t))
        return abs(segment.point(t) - point), t
    t = int(np.argmin(abs(_WEIGHTS @ np.array(segment) - point))) / PARTS
    for _ in range(30):
        here, way = segment.point(t) - point, segment.velocity(t)
        bend = 6 * (1 - t) * (segment.c - 2 * segment.b + segment.a) + 6 * t * (
            segment.d - 2 * segment.c + segment.b
        )
        slope, steep = (here.conjugate() * way).real, abs(way) ** 2 + (here.conjugate() * bend).real
        step = min(1 / PARTS, max(-1 / PARTS, slope / steep)) if steep > 1e-12 else 0.0
        new = min(1.0, max(0.0, t - step))
        if abs(new - t) < 1e-14:
            break
        t = new
    return abs(segment.point(t) - point), t
