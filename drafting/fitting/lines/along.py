"""A path moved by different amounts along its way, so that the same amounts back give the path again.

What is given are displacements at places of the path (its ends among them). Between two places the
displacement runs monotone and smooth (the harmonic rule of monotone cubic interpolation); handles follow
its slope, so that smooth joints stay smooth and corners turn by no more than the path does.

Several things may move one path (what was asked, and what trueing adds to it), each by its own rule. All of
them are measured on the mean of the path before and after, and added: so the rule is the same from either end,
and all of them together and their reverse undo each other to the last digit, in whatever order they were found.
"""

from __future__ import annotations

import itertools
import math
from bisect import bisect_right
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from drafting.geometry import Cubic, Line, Path, Segment
from drafting.geometry.curve import cubic_lengths
from drafting.geometry.path import cubics

ROUNDS = 40
"""How often a moved path is measured again at most (it settles by a factor of some ten a round)."""

SETTLED = 1e-9
"""mm: a path has settled when no point of it moves by more in a round."""

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


Slopes = tuple[float, float]
"""How steep the displacement sets off at either end: 1 as its mean to the next knot, 0 not at all."""


@dataclass(frozen=True)
class Pull:
    """One thing that moves a path: its ends, and places between them.

    `turns` are angles (radians, to the left) by which the path is turned at its start and its end, the ends
    where they were. A pull `as_whole` turns the path and makes it longer or shorter as one: its bends stay.
    """

    ends: Ends = Ends()
    knots: tuple[Knot, ...] = ()
    slopes: Slopes = (1.0, 1.0)
    turns: tuple[float, float] = (0.0, 0.0)
    as_whole: bool = False

    @property
    def moves(self) -> bool:
        """Say whether it moves anything."""
        ends = (self.ends.start, self.ends.end)
        return any(abs(by) >= NOTHING for by in (*ends, *(k.by for k in self.knots), *self.turns))


@dataclass(frozen=True)
class _Known:
    """What a pull says of the joints of a path: a displacement where it says one, and what its knot does there."""

    pull: Pull
    by: tuple[complex | None, ...]
    evenly: tuple[int, ...]


@dataclass(frozen=True)
class Jointed:
    """A path with joints at all knots of the pulls that move it."""

    path: Path
    pulls: tuple[Pull, ...]
    known: tuple[_Known, ...]

    def placed(self, at: float) -> tuple[int, float]:
        """Return the segment and the parameter of a place, mm from the start."""
        return self.path.locate(min(max(at, 0.0), self.path.length))


def way_of(path: Path, pulls: Sequence[Pull] = ()) -> Jointed:
    """Return the path split at the knots of all that moves it."""
    for knot in (knot for pull in pulls for knot in pull.knots):
        path = _jointed(path, knot.at)
    joints = [0.0, *itertools.accumulate(path.lengths)]
    return Jointed(path, tuple(pulls), tuple(_known(joints, pull) for pull in pulls if pull.moves))


def _known(joints: Sequence[float], pull: Pull) -> _Known:
    by: list[complex | None] = [None] * len(joints)
    evenly = [0] * len(joints)
    for knot in pull.knots:
        nearest = min(range(len(joints)), key=lambda i: abs(joints[i] - knot.at))
        by[nearest], evenly[nearest] = knot.by, knot.evenly
    by[0], by[-1] = pull.ends.start, pull.ends.end
    return _Known(pull, tuple(by), tuple(evenly))


def _jointed(path: Path, at: float) -> Path:
    joints = [0.0, *itertools.accumulate(path.lengths)]
    if any(abs(joint - at) < AT_JOINT for joint in joints):
        return path
    return Path.joined(path.split(at))


def moved_along(way: Jointed, near: Path | None = None) -> Path:
    """Return the path with its knots moved by their displacements, and all between them with them.

    `near`, a path with as many segments that lies near where it will lie, is where the search begins.
    """
    if not way.known:
        return way.path
    if all(map(_even, way.known)):
        return way.path.moved(sum(one.pull.ends.start for one in way.known))
    before = after = cubics(way.path)
    if near is not None and len(near.segments) == len(before):
        after = cubics(near)
    first = _shares(before)
    for _ in range(ROUNDS):
        again = _moved(before, after, _mean(first, _shares(after)), way.known)
        off = max(abs(p - q) for one, two in zip(after, again, strict=True) for p, q in zip(one, two, strict=True))
        after = again
        if off < SETTLED:
            break
    return Path(tuple(_as_it_was(old, new) for old, new in zip(way.path.segments, after, strict=True)))


def _even(known: _Known) -> bool:
    """Say whether a pull moves all of a path alike."""
    given = [by for by in known.by if by is not None]
    return not any(known.pull.turns) and all(abs(by - given[0]) < NOTHING for by in given)


@dataclass(frozen=True)
class _Shares:
    """Where joints lie, and how long handles are, as shares of the whole path's length."""

    joints: tuple[float, ...]
    handles: tuple[tuple[float, float], ...]


def _shares(segments: Sequence[Cubic]) -> _Shares:
    lengths = cubic_lengths(segments)
    whole = math.fsum(lengths)
    joints = tuple(at / whole for at in itertools.accumulate(lengths, initial=0.0))
    return _Shares(joints, tuple((abs(s.b - s.a) / whole, abs(s.d - s.c) / whole) for s in segments))


def _mean(one: _Shares, two: _Shares) -> _Shares:
    joints = tuple((p + q) / 2 for p, q in zip(one.joints, two.joints, strict=True))
    handles = tuple(((a + c) / 2, (b + d) / 2) for (a, b), (c, d) in zip(one.handles, two.handles, strict=True))
    return _Shares(joints, handles)


_Points = list[list[complex]]
"""The four points of each segment of a path."""


def _moved(
    before: Sequence[Cubic], after: Sequence[Cubic], shares: _Shares, known: Iterable[_Known]
) -> tuple[Cubic, ...]:
    """Return a path moved by all its pulls, measured on the mean of what it was and what it has become."""
    middle = [[(p + q) / 2 for p, q in zip(one, two, strict=True)] for one, two in zip(before, after, strict=True)]
    points = [list(one) for one in before]
    for one in known:
        if one.pull.as_whole:
            _pulled_whole(points, middle, one.pull.ends)
        else:
            _pulled(points, shares, one)
        start, end = one.pull.turns
        points[0][1] += 1j * start * (middle[0][1] - middle[0][0])
        points[-1][2] += 1j * end * (middle[-1][2] - middle[-1][3])
    return tuple(Cubic(*one) for one in points)


def _pulled_whole(points: _Points, middle: _Points, ends: Ends) -> None:
    start, chord = middle[0][0], middle[-1][3] - middle[0][0]
    grows = (ends.end - ends.start) / chord
    for k, one in enumerate(points):
        for i, at in enumerate(middle[k]):
            last = (k, i) == (len(points) - 1, 3)
            one[i] += ends.end if last else ends.start + grows * (at - start)


def _pulled(points: _Points, shares: _Shares, known: _Known) -> None:
    given = [(shares.joints[i], by, known.evenly[i]) for i, by in enumerate(known.by) if by is not None]
    moves, slopes = zip(*map(_values(given, known.pull.slopes), shares.joints), strict=True)
    for k, one in enumerate(points):
        one[0] += moves[k]
        one[1] += moves[k] + slopes[k] * shares.handles[k][0]
        one[2] += moves[k + 1] - slopes[k + 1] * shares.handles[k][1]
        one[3] += moves[k + 1]


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
    first, last = (
        _sets_off(*end) for end in zip(held, (rises[0], rises[-1]), (inner[:1], inner[-1:]), strict=True)
    )
    return _Monotone(places, values, (first, *inner, last))


def _sets_off(share: float, rise: complex, beside: list[complex]) -> complex:
    """Return the slope at an end: its share of the mean, steeper by what it has to turn up to the next place.

    A cubic bends one way only where it sets off by no less than 3/2 of its mean slope, less half of the slope at
    its other end (its second derivative, by elementary algebra): so a share over 1 asks for that much more.
    """
    return share * rise - (share / 3 * beside[0] if share > 1 and beside else 0j)


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
