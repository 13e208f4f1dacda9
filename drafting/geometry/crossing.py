"""Where paths cross one another or themselves, and how to cut and extend them there.

A place on a path is one number: the index of the segment plus the parameter within it. Chords of
both paths are crossed first, then each crossing is refined on the true curves by Newton's method.
Two crossings that both lie between the same two chords (curves that only just touch) count as none:
there the curves overlap by less than `tolerances.FLAT`.
"""

from __future__ import annotations

import math
from functools import lru_cache
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from drafting.geometry.curve import Cubic, Line, Numbers, Points
from drafting.geometry.path import Path, chord_count
from drafting.ground import tolerances as tol

CELL = 0.25
"""Part of a segment within which crossings are held against each other, to find one met twice (ours)."""


SLACK = 1e-9
"""Part of a chord by which it may end short of the other and crosses it still: the last digits of arithmetic."""

FEW = 8
"""Pairs of chords that are held against each other one by one: numpy costs as much for one as for a hundred."""


class Crossing(NamedTuple):
    """A point that lies on both paths, its place on each, and those places on the chords."""

    point: complex
    on_a: float
    on_b: float
    chord_a: float
    chord_b: float


class Chords(NamedTuple):
    """The points of a flattened path and their places on it."""

    points: Points
    places: Numbers

    def at(self, place: float) -> complex:
        """Return the point of the chords (not of the curve) at a place of the path."""
        return complex(np.interp(place, self.places, self.points))


@lru_cache(maxsize=64)
def flattened_with_places(path: Path, gap: float = tol.FLAT) -> Chords:
    """Flatten `path`, remembering places."""
    counts = np.array([chord_count(segment, gap) for segment in path.segments])
    if counts.max() == 1:
        return Chords(path.points(gap), np.arange(len(counts) + 1.0))
    ends = np.cumsum(counts)
    share = np.arange(1, ends[-1] + 1) - np.repeat(ends - counts, counts)
    places = np.repeat(np.arange(len(counts)), counts) + share / np.repeat(counts, counts)
    return Chords(path.points(gap), np.concatenate([np.zeros(1), places]))


def crossings(a: Path, b: Path) -> list[Crossing]:
    """Return every point where `a` crosses `b`, in the order they are met along `a`."""
    on_a, on_b = flattened_with_places(a), flattened_with_places(b)
    return _refined(a, b, on_a, on_b, _pairs(on_a.points, on_b.points))


def self_crossings(ring: Path) -> list[Crossing]:
    """Return every point where a closed path crosses itself, each once."""
    flat = flattened_with_places(ring)
    pairs, last = _pairs(flat.points, flat.points), len(flat.points) - 2
    i, j = pairs[:, 0], pairs[:, 1]
    apart = (j - i > 1) & ~((i == 0) & (j == last))
    return _refined(ring, ring, flat, flat, pairs[apart])


def first_crossing(a: Path, b: Path) -> Crossing | None:
    """Return the crossing that is met first along `a`, or None."""
    return next(iter(crossings(a, b)), None)


def part_between(path: Path, start: float, end: float) -> Path | None:
    """Return the part of `path` between two places; None where nothing lies between them."""
    parts = []
    for index in range(max(0, math.floor(start)), min(len(path.segments), math.ceil(end))):
        segment = path.segments[index]
        low, high = max(0.0, start - index), min(1.0, end - index)
        if high - low < 1e-12:
            continue
        if high < 1:
            segment = segment.split(high)[0]
        if low > 0:
            segment = segment.split(low / high)[1]
        parts.append(segment)
    return Path(tuple(parts)) if parts else None


def extended(path: Path, before: float = 0.0, after: float = 0.0) -> Path:
    """Return `path` run on straight, by so many mm, along its own direction at either end."""
    head = (Line(path.start - before * path.leave, path.start),) if before > 0 else ()
    tail = (Line(path.end, path.end + after * path.arrive),) if after > 0 else ()
    return Path((*head, *path.segments, *tail))


def ends_moved(path: Path, start: complex | None = None, end: complex | None = None) -> Path:
    """Return `path` with its ends moved a hair; handles move along."""
    segments = list(path.segments)
    if start is not None:
        first, by = segments[0], start - segments[0].start
        segments[0] = Line(start, first.b) if isinstance(first, Line) else Cubic(start, first.b + by, *first[2:])
    if end is not None:
        last, by = segments[-1], end - segments[-1].end
        segments[-1] = Line(last.a, end) if isinstance(last, Line) else Cubic(*last[:2], last.c + by, end)
    return Path(tuple(segments))


def _pairs(p: Points, q: Points) -> NDArray[np.int64]:
    """Return the pairs of chords (i of p, j of q) that cross, ends included."""
    near: NDArray[np.int64] = np.argwhere(_may_cross(p, q))
    if len(near) <= FEW:
        return near[[_do_cross(p, q, i, j) for i, j in near.tolist()]]
    i, j = near[:, 0], near[:, 1]
    r, s, apart = p[i + 1] - p[i], q[j + 1] - q[j], q[j] - p[i]
    with np.errstate(divide="ignore", invalid="ignore"):
        cross = _cross(r, s)
        t, u = _cross(apart, s) / cross, _cross(apart, r) / cross
    return near[(t >= -SLACK) & (t <= 1 + SLACK) & (u >= -SLACK) & (u <= 1 + SLACK)]


def _do_cross(p: Points, q: Points, i: int, j: int) -> bool:
    """Say whether chord i of p crosses chord j of q, ends included."""
    start, other = complex(p[i]), complex(q[j])
    r, s, apart = complex(p[i + 1]) - start, complex(q[j + 1]) - other, other - start
    cross = (r.conjugate() * s).imag
    if cross == 0:
        return False
    t, u = (apart.conjugate() * s).imag / cross, (apart.conjugate() * r).imag / cross
    return -SLACK <= t <= 1 + SLACK and -SLACK <= u <= 1 + SLACK


def _may_cross(p: Points, q: Points) -> NDArray[np.bool_]:
    """Return which chords of p and q may cross: a sieve that lets all through that do."""
    if len(p) == 2:
        return _straddling(q, p)[None]
    return _straddling(p, q)[:, None] if len(q) == 2 else _boxes_meet(p, q)


def _straddling(points: Points, chord: Points) -> NDArray[np.bool_]:
    """Return which chords between `points` reach from one side of the line of `chord` to the other."""
    along = chord[1] - chord[0]
    side, hair = ((points - chord[0]) * along.conjugate()).imag, 1e-6 * abs(along)
    left, right = side > -hair, side < hair
    return np.asarray((left[:-1] | left[1:]) & (right[:-1] | right[1:]))


def _boxes_meet(p: Points, q: Points) -> NDArray[np.bool_]:
    hit = np.ones((len(p) - 1, len(q) - 1), dtype=bool)
    for x, y in ((p.real, q.real), (p.imag, q.imag)):
        low_x, high_x = np.minimum(x[:-1], x[1:]), np.maximum(x[:-1], x[1:])
        low_y, high_y = np.minimum(y[:-1], y[1:]), np.maximum(y[:-1], y[1:])
        hit &= (low_x[:, None] <= high_y + 1e-9) & (low_y <= high_x[:, None] + 1e-9)
    return hit


def _cross(a: Points, b: Points) -> Numbers:
    return np.asarray((np.conj(a) * b).imag)


def _refined(a: Path, b: Path, on_a: Chords, on_b: Chords, pairs: NDArray[np.int64]) -> list[Crossing]:
    found: list[Crossing] = []
    near: dict[int, list[Crossing]] = {}  # by place on a's chords, so that each is held against few
    for i, j in pairs:
        one = _newton(a, b, *_guess(on_a, on_b, int(i), int(j)))
        cell = round(one.on_a / CELL)
        others = (other for at in (cell - 1, cell, cell + 1) for other in near.get(at, ()))
        if not any(_same(one, other) for other in others):
            found.append(one)
            near.setdefault(cell, []).append(one)
    return sorted(found, key=lambda crossing: crossing.on_a)


def _same(one: Crossing, other: Crossing) -> bool:
    close = abs(one.chord_a - other.chord_a) < 1e-7 and abs(one.chord_b - other.chord_b) < 1e-7
    return close or (abs(one.on_a - other.on_a) < 1e-9 and abs(one.on_b - other.on_b) < 1e-9)


def _guess(on_a: Chords, on_b: Chords, i: int, j: int) -> tuple[float, float]:
    """Return the places where chord i of a and chord j of b cross; their middles where they run side by side."""
    p, q = on_a.points[i], on_b.points[j]
    r, s = on_a.points[i + 1] - p, on_b.points[j + 1] - q
    cross = (r.conjugate() * s).imag
    t = ((q - p).conjugate() * s).imag / cross if cross else 0.5
    u = ((q - p).conjugate() * r).imag / cross if cross else 0.5
    places_a, places_b = on_a.places, on_b.places
    return (
        float(places_a[i] + min(1, max(0, t)) * (places_a[i + 1] - places_a[i])),
        float(places_b[j] + min(1, max(0, u)) * (places_b[j + 1] - places_b[j])),
    )


def _newton(a: Path, b: Path, place_a: float, place_b: float) -> Crossing:
    i, j = min(int(place_a), len(a.segments) - 1), min(int(place_b), len(b.segments) - 1)
    one, two = a.segments[i], b.segments[j]
    t, u = place_a - i, place_b - j
    for _ in range(12):
        gap = two.point(u) - one.point(t)
        if abs(gap) < 1e-11:
            break
        v, w = one.velocity(t), two.velocity(u)
        cross = (v.conjugate() * w).imag
        if abs(cross) < 1e-12:
            break
        step_t, step_u = (gap.conjugate() * w).imag / cross, (gap.conjugate() * v).imag / cross
        t, u = min(1.0, max(0.0, t + step_t)), min(1.0, max(0.0, u + step_u))
    if abs(two.point(u) - one.point(t)) > tol.FLAT:  # did not settle: the chords' own answer
        t, u = place_a - i, place_b - j
    return Crossing(one.point(t), i + t, j + u, place_a, place_b)
