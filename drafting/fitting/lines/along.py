"""A path moved by different amounts along its way, so that the same amounts back give the path again.

What is given are displacements at places of the path (its ends among them). Between two places the
displacement runs monotone and smooth (the harmonic rule of monotone cubic interpolation); handles follow
its slope, so that smooth joints stay smooth and corners turn by no more than the path does.

The places are measured as shares of length on the mean of the path before and after: the rule is the
same from either end, so a displacement and its reverse undo each other to the last digit.
"""

from __future__ import annotations

import itertools
import math
from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass

from drafting.geometry import Cubic, Line, Path, Segment
from drafting.geometry.curve import cubic_lengths
from drafting.geometry.path import cubics

ROUNDS = 40
"""How often a moved path is measured again at most (it settles by a factor of some ten a round)."""

SETTLED = 1e-11
"""Share of length: the places have settled when none moves by more."""

AT_JOINT = 0.02
"""mm: a place nearer than this to a joint of the path is the joint."""

NOTHING = 1e-9
"""mm: a displacement that is none."""


@dataclass(frozen=True, slots=True)
class Knot:
    """A place `at` mm from a path's start, and by how much it is moved (x + yj, mm).

    `evenly` is -1 where the displacement grows evenly up to here from the place before, 1 where it goes on
    evenly to the place after: it bends on the other side alone. 0 is a smooth change on both.
    """

    at: float
    by: complex
    evenly: int = 0


@dataclass(frozen=True)
class Ends:
    """How both ends of a path are moved."""

    start: complex = 0j
    end: complex = 0j


def as_a_whole(path: Path, ends: Ends) -> Path:
    """Return the path turned and made longer or shorter as a whole, so that its ends move so: its bends stay."""
    if abs(ends.start) < NOTHING and abs(ends.end) < NOTHING:
        return path
    start, there = path.start, path.start + ends.start
    grows = (path.end + ends.end - there) / (path.end - start)
    return path.mapped(lambda place: there + (place - start) * grows)


@dataclass(frozen=True)
class Jointed:
    """A path with joints at all its knots: `by` holds a displacement for each joint that is a knot.

    `evenly` says of each joint what its knot does.
    """

    path: Path
    by: tuple[complex | None, ...]
    evenly: tuple[int, ...]

    def placed(self, at: float) -> tuple[int, float]:
        """Return the segment and the parameter of a place, mm from the start."""
        return self.path.locate(min(max(at, 0.0), self.path.length))


def way_of(path: Path, ends: Ends, knots: Sequence[Knot]) -> Jointed:
    """Return the path split at its knots."""
    for knot in knots:
        path = _jointed(path, knot.at)
    joints = [0.0, *itertools.accumulate(path.lengths)]
    by: list[complex | None] = [None] * len(joints)
    evenly = [0] * len(joints)
    for knot in knots:
        nearest = min(range(len(joints)), key=lambda i: abs(joints[i] - knot.at))
        by[nearest], evenly[nearest] = knot.by, knot.evenly
    by[0], by[-1] = ends.start, ends.end
    return Jointed(path, tuple(by), tuple(evenly))


def _jointed(path: Path, at: float) -> Path:
    joints = [0.0, *itertools.accumulate(path.lengths)]
    if any(abs(joint - at) < AT_JOINT for joint in joints):
        return path
    return Path.joined(path.split(at))


Slopes = tuple[float, float]
"""How steep the displacement sets off at either end: 1 as its mean to the next knot, 0 not at all."""


def moved_along(way: Jointed, held: Slopes = (1.0, 1.0)) -> Path:
    """Return the path with its knots moved by their displacements, and all between them with them."""
    given = [by for by in way.by if by is not None]
    if all(abs(by - given[0]) < NOTHING for by in given):
        return way.path if abs(given[0]) < NOTHING else way.path.moved(given[0])
    before = cubics(way.path)
    first = _shares(before)
    shares = first
    for _ in range(ROUNDS):
        after = _moved(before, shares, way, held)
        again = _mean(first, _shares(after))
        settled = max(abs(x - y) for x, y in zip(again.flat, shares.flat, strict=True)) < SETTLED
        shares = again
        if settled:
            break
    after = _moved(before, shares, way, held)
    return Path(tuple(_as_it_was(old, new) for old, new in zip(way.path.segments, after, strict=True)))


@dataclass(frozen=True)
class _Shares:
    """Where joints lie, and how long handles are, as shares of the whole path's length."""

    joints: tuple[float, ...]
    handles: tuple[tuple[float, float], ...]

    @property
    def flat(self) -> list[float]:
        return [*self.joints, *itertools.chain.from_iterable(self.handles)]


def _shares(segments: Sequence[Cubic]) -> _Shares:
    lengths = cubic_lengths(segments)
    whole = math.fsum(lengths)
    joints = tuple(at / whole for at in itertools.accumulate(lengths, initial=0.0))
    return _Shares(joints, tuple((abs(s.b - s.a) / whole, abs(s.d - s.c) / whole) for s in segments))


def _mean(one: _Shares, two: _Shares) -> _Shares:
    joints = tuple((p + q) / 2 for p, q in zip(one.joints, two.joints, strict=True))
    handles = tuple(((a + c) / 2, (b + d) / 2) for (a, b), (c, d) in zip(one.handles, two.handles, strict=True))
    return _Shares(joints, handles)


def _moved(segments: Sequence[Cubic], shares: _Shares, way: Jointed, held: Slopes) -> list[Cubic]:
    known = [(shares.joints[i], one, way.evenly[i]) for i, one in enumerate(way.by) if one is not None]
    displaced = _values(known, held)
    moves, slopes = zip(*map(displaced, shares.joints), strict=True)
    return [
        Cubic(
            one.a + moves[k],
            one.b + moves[k] + slopes[k] * shares.handles[k][0],
            one.c + moves[k + 1] - slopes[k + 1] * shares.handles[k][1],
            one.d + moves[k + 1],
        )
        for k, one in enumerate(segments)
    ]


@dataclass(frozen=True)
class _Monotone:
    """A cubic through known values, with given slopes there; call it for value and slope.

    Along x and along y it is monotone by itself; both are told at once, as x + yj.
    """

    places: tuple[float, ...]
    values: tuple[complex, ...]
    slopes: tuple[complex, ...]

    def __call__(self, s: float) -> tuple[complex, complex]:
        k = max(0, bisect_right(self.places, s, hi=len(self.places) - 1) - 1)
        width = self.places[k + 1] - self.places[k]
        t = (s - self.places[k]) / width
        p, q = self.values[k], self.values[k + 1]
        m, n = self.slopes[k] * width, self.slopes[k + 1] * width
        rise, bend = q - p, m + n - 2 * (q - p)
        value = p + t * m + t * t * (rise - m - bend) + t**3 * bend
        return value, (m + 2 * t * (rise - m - bend) + 3 * t * t * bend) / width


def _values(known: Sequence[tuple[float, complex, int]], held: Slopes) -> _Monotone:
    places, values, _ = zip(*known, strict=True)
    widths = [b - a for a, b in itertools.pairwise(places)]
    rises = [(b - a) / w for (a, b), w in zip(itertools.pairwise(values), widths, strict=True)]
    beside = zip(itertools.pairwise(rises), itertools.pairwise(widths), known[1:-1], strict=True)
    inner = [
        complex(_slope((p.real, q.real), width, evenly), _slope((p.imag, q.imag), width, evenly))
        for (p, q), width, (_, _, evenly) in beside
    ]
    return _Monotone(places, values, (held[0] * rises[0], *inner, held[1] * rises[-1]))


def _slope(rises: tuple[float, float], widths: tuple[float, float], evenly: int) -> float:
    """Return the slope at a place from how the values rise before and after it."""
    (p, q), (v, w) = rises, widths
    if evenly:
        return q if evenly > 0 else p
    return (v + w) / (v / p + w / q) if p * q > 0 else 0.0


def _as_it_was(old: Segment, new: Cubic) -> Segment:
    """Return a moved straight as a straight again, where it still is one."""
    if isinstance(old, Cubic):
        return new
    third = (new.d - new.a) / 3
    straight = abs(new.b - new.a - third) < 1e-7 and abs(new.d - new.c - third) < 1e-7
    return Line(new.a, new.d) if straight else new
