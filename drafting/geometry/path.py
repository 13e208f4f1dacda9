"""A `Path`: joined segments that answer the same questions as one segment. Immutable."""

from __future__ import annotations

import itertools
import math
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from functools import cached_property, lru_cache

import numpy as np
from fontTools.misc.bezierTools import calcCubicBounds
from numpy.typing import NDArray

from drafting.geometry.curve import Cubic, Line, Segment

Box = tuple[float, float, float, float]
"""Least x, least y, greatest x, greatest y, mm."""


NOTHING = 1e-8
"""mm: a part of a path that is shorter is none."""


@dataclass(frozen=True)
class Path:
    """Segments, each starting where the last ends (checked to `tolerances.CLOSED`, mm).

    >>> square = Path.polygon(0j, 10 + 0j, 10 + 10j, 10j)
    >>> square.length, square.area
    (40.0, 100.0)
    """

    segments: tuple[Segment, ...]

    @staticmethod
    def polygon(*corners: complex) -> Path:
        """Return the closed path through `corners`."""
        ring = (*corners, corners[0])
        return Path(tuple(Line(a, b) for a, b in itertools.pairwise(ring)))

    @staticmethod
    def joined(paths: Iterable[Path]) -> Path:
        """Return one path from `paths` laid end to end; small gaps at the joints are kept."""
        return Path(tuple(segment for path in paths for segment in path.segments))

    @property
    def start(self) -> complex:
        return self.segments[0].start

    @property
    def end(self) -> complex:
        return self.segments[-1].end

    @cached_property
    def lengths(self) -> tuple[float, ...]:
        return tuple(segment.length for segment in self.segments)

    @cached_property
    def length(self) -> float:
        """Arc length, mm."""
        return math.fsum(self.lengths)

    @property
    def leave(self) -> complex:
        """The direction in which the path starts."""
        return self.segments[0].tangent(0.0)

    @property
    def arrive(self) -> complex:
        """The direction in which the path ends."""
        return self.segments[-1].tangent(1.0)

    def locate(self, distance: float) -> tuple[int, float]:
        """Return the segment's index and the parameter in it, `distance` mm from the start."""
        if distance < 0:
            distance += self.length
        for index, length in enumerate(self.lengths):
            if distance <= length or index == len(self.segments) - 1:
                return index, self.segments[index].parameter_at(min(distance, length))
            distance -= length
        raise IndexError("an empty path has no points")

    def at(self, distance: float) -> complex:
        """Return the point `distance` mm from the start (from the end where negative)."""
        index, t = self.locate(distance)
        return self.segments[index].point(t)

    def tangent(self, distance: float) -> complex:
        """Return the unit direction of travel `distance` mm from the start."""
        index, t = self.locate(distance)
        return self.segments[index].tangent(t)

    def curvature(self, distance: float) -> float:
        """Return the signed curvature (1/mm, left positive) `distance` mm from the start."""
        index, t = self.locate(distance)
        return self.segments[index].curvature(t)

    def split(self, distance: float) -> tuple[Path, Path]:
        """Return the path before and after the point `distance` mm from the start.

        No segment shorter than `NOTHING` is left over: the line beside one would coil.
        """
        index, t = self.locate(distance)
        before, after = list(self.segments[:index]), list(self.segments[index + 1 :])
        none = min(0.5, NOTHING / max(self.segments[index].length, NOTHING))
        if t <= none and before:
            return Path(tuple(before)), Path((self.segments[index], *after))
        if t >= 1 - none and after:
            return Path((*before, self.segments[index])), Path(tuple(after))
        first, second = self.segments[index].split(t)
        return Path((*before, first)), Path((second, *after))

    def part(self, start: float, end: float) -> Path:
        """Return the stretch of path between two distances from the start."""
        return self.split(end)[0].split(start)[1] if start > 0 else self.split(end)[0]

    def reversed(self) -> Path:
        return Path(tuple(segment.reversed() for segment in reversed(self.segments)))

    def mapped(self, move: Callable[[complex], complex]) -> Path:
        """Return the path with every control point moved (exact for affine moves)."""
        return Path(tuple(type(s)(*map(move, s)) for s in self.segments))

    def moved(self, by: complex) -> Path:
        return Path(tuple([type(s)._make([p + by for p in s]) for s in self.segments]))

    def turned(self, about: complex, factor: complex) -> Path:
        """Return the path turned about a point by `geometry.turn(degrees)`."""
        return self.mapped(lambda p: about + (p - about) * factor)

    def mirrored(self) -> Path:
        """Return the path reflected across the upright through x = 0 (direction of travel kept)."""
        return Path(tuple([type(s)._make([-p.conjugate() for p in s]) for s in self.segments]))

    @cached_property
    def area(self) -> float:
        """Signed area, mm2, of the path closed by its chord; anticlockwise is positive. Exact."""
        home = self.start  # near the path, so that nothing is lost far from 0
        return math.fsum(segment.swept(home) for segment in self.segments)

    @cached_property
    def bounds(self) -> tuple[float, float, float, float]:
        """Least x, least y, greatest x, greatest y of the true curve, mm."""
        ends = _box((self.start, *(segment.end for segment in self.segments)))
        bulging = [s for s in self.segments if isinstance(s, Cubic) and not _holds(ends, s.b, s.c)]
        boxes = [ends, *(calcCubicBounds(*map(_pair, segment)) for segment in bulging)]
        lows_x, lows_y, highs_x, highs_y = zip(*boxes, strict=True)
        return min(lows_x), min(lows_y), max(highs_x), max(highs_y)

    def evenly(self, count: int) -> list[complex]:
        """Return `count` points (2 or more) that part the path into equal lengths, ends included."""
        distances = np.linspace(0.0, self.length, count)
        starts = np.concatenate([[0.0], np.cumsum(self.lengths)])
        owner = np.clip(np.searchsorted(starts, distances, side="right") - 1, 0, len(starts) - 2)
        return [
            segment.point(t)
            for i, segment in enumerate(self.segments)
            for t in segment.parameters_at(distances[owner == i] - starts[i])
        ]

    def flattened(self, gap: float) -> list[complex]:
        """Return points on the path such that no chord is farther than `gap` mm from the curve.

        The count of chords is the one that bounds a cubic by its second differences
        (Wang's formula, from memory): n = sqrt(6 * bend / (8 * gap)).
        """
        found: list[complex] = self.points(gap).tolist()
        return found

    def points(self, gap: float) -> NDArray[np.complex128]:
        """Return what `flattened` does as an array, kept for the next time (not to be written to)."""
        if gap not in self._points:
            bits = [np.array([self.start]), *(_flat(segment, gap) for segment in self.segments)]
            self._points[gap] = np.concatenate(bits)
            self._points[gap].setflags(write=False)
        return self._points[gap]

    @cached_property
    def _points(self) -> dict[float, NDArray[np.complex128]]:
        return {}

    def __iter__(self) -> Iterator[Segment]:
        return iter(self.segments)


def line(*points: complex) -> Path:
    """Return the open path of straight lines through `points` (x + yj, mm, y up).

    >>> line(0j, 30 + 0j, 30 + 40j).length
    70.0
    """
    return Path(tuple(Line(a, b) for a, b in itertools.pairwise(points)))


def _pair(p: complex) -> tuple[float, float]:
    return p.real, p.imag


def _box(points: Iterable[complex]) -> tuple[float, float, float, float]:
    xs, ys = zip(*((p.real, p.imag) for p in points), strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def _holds(box: tuple[float, float, float, float], *points: complex) -> bool:
    """Say whether all points lie in the box; a cubic whose four points do lies in it too."""
    x0, y0, x1, y1 = box
    return all(x0 <= p.real <= x1 and y0 <= p.imag <= y1 for p in points)


def _flat(segment: Segment, gap: float) -> NDArray[np.complex128]:
    """Return the points of one flattened segment, without its start; see `Path.flattened`."""
    if isinstance(segment, Line):
        return np.array([segment.b])
    found = np.asarray(_basis(chord_count(segment, gap)) @ np.array(segment))
    found[-1] = segment.d
    return found


def chord_count(segment: Segment, gap: float) -> int:
    """Return how many chords keep within `gap` mm of a segment; see `Path.flattened`."""
    if isinstance(segment, Line):
        return 1
    a, b, c, d = segment
    bend = max(abs(a - 2 * b + c), abs(b - 2 * c + d))
    return max(1, math.ceil(math.sqrt(6 * bend / (8 * gap))))


@lru_cache(maxsize=256)
def _basis(count: int) -> NDArray[np.complex128]:
    """Return the weights of a cubic's four points at 1/count, 2/count, ... 1."""
    t = np.arange(1, count + 1) / count
    s = 1 - t
    return np.stack([s**3, 3 * s * s * t, 3 * s * t * t, t**3], 1).astype(complex)


def cubics(path: Path) -> tuple[Cubic, ...]:
    """Return every segment of `path` as a cubic."""
    return tuple(segment.as_cubic() for segment in path.segments)
