"""A curve drawn fair again: a slight wave laid out of it, its ends, their directions and its length kept.

A wave is a run that bends against its neighbours. What lies round it is drawn anew as one cubic with the ends,
the directions at them and the length that it had (a wave may be a hair longer than any line that bends one way:
then the longest of these is taken). Such a cubic bends one way where the chord lies between the
directions at its ends and its handles end before these meet: its control polygon is convex then (elementary
geometry, ours). Of the stretches that can be drawn so, the one that moves the line least is taken.
"""

from __future__ import annotations

import cmath
import itertools
import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from drafting.geometry.curve import Cubic
from drafting.geometry.path import Path
from drafting.geometry.solve import zero_between
from drafting.geometry.turning import inflections

REACHES = (0.25, 0.5, 1.0, 1.5, 2.0, 3.0, 4.5, 6.0)
"""How far beyond the wave a stretch reaches on either side, of the wave's own length (ours)."""

LEANINGS = ((1.0, 0.5), (1.0, 0.7), (1.0, 0.85), (1.0, 1.0), (0.85, 1.0), (0.7, 1.0), (0.5, 1.0))
"""How far the two handles of a stretch go beside each other, of the ways to where they would meet (ours)."""

PLACES = 400
"""At so many places the direction of a path is followed, and two paths are held beside each other."""

SHORT = 1.0
"""mm: no stretch is shorter."""

SHORTER = 0.1
"""mm: a stretch may become shorter by as much, where no line that bends one way is as long as it was (ours)."""

LONGEST = 0.9
"""Of the ways to where its handles would meet: beyond it a cubic has a corner (ours)."""

LEAST = math.radians(0.05)
"""By so much at least the chord lies inside the directions at both ends of a stretch."""


@dataclass(frozen=True)
class Fair:
    """A path that is fair, how far (mm) it lies from what it was, place for place along it, and how much `shorter`
    it is."""

    path: Path
    off: float
    shorter: float = 0.0


@dataclass(frozen=True, slots=True)
class FairLimits:
    """How far a line may go to be fair: places `within` so many mm of where they were, and `shorter` by so much.

    `matters` is the turn, degrees, below which a run is none.
    """

    within: float
    matters: float
    shorter: float = SHORTER


def faired(path: Path, most: int, limits: FairLimits) -> Fair | None:
    """Return the path with no more than `most` inflections, no farther from what it was than `limits` say.

    None where the path is fair already, or no fair line lies so near.
    """
    found = Fair(path, 0.0)
    while (count := inflections(found.path, limits.matters)) > most:
        left = replace(limits, within=limits.within - found.off)
        less = [one for one in _with_less(found.path, left) if _waves(one, limits.matters) < count]
        if not less:
            return None
        best = min(less, key=lambda one: one.off)
        found = Fair(best.path, found.off + best.off)
    return replace(found, shorter=path.length - found.path.length) if found.off else None


def bowed(path: Path, within: float) -> Fair | None:
    """Return a nearly straight path as one cubic that bends one way, the one of two that moves it less.

    One end keeps its direction and the other is turned to lean a third as much off the chord, the start by no more
    than `TURNED`. None where that moves a place by more than `within` mm, or where it is not nearly straight.
    """
    found = [fair for way in (1.0, -1.0) if (fair := _bent(path, way)) is not None and fair.off <= within]
    return min(found, key=lambda fair: fair.off, default=None)


def _bent(path: Path, way: float) -> Fair | None:
    """Return a nearly straight path as one cubic that bends to the right (1) or to the left (-1)."""
    chord = path.end - path.start
    leans = way * cmath.phase(path.leave / chord), way * cmath.phase(chord / path.arrive)
    new = max(leans[0], BOWED), max(leans[1], leans[0] / BOW, BOWED)
    if max(map(abs, (*new, *leans))) > STRAIGHT or abs(new[0] - leans[0]) > TURNED:
        return None
    opens, closes = (cmath.exp(1j * way * angle) for angle in (new[0], -new[1]))
    sides = (abs(chord) * math.sin(angle) / math.sin(sum(new)) for angle in reversed(new))
    first, second = (side * chord / abs(chord) * turn for side, turn in zip(sides, (opens, closes), strict=True))
    drawn = [
        Path((Cubic(path.start, path.start + LONGEST * a * first, path.end - LONGEST * b * second, path.end),))
        for a, b in LEANINGS
    ]
    found = (Fair(one, _apart(path, one), path.length - one.length) for one in drawn)
    return min(found, key=lambda fair: fair.off)


STRAIGHT, BOWED, TURNED = math.radians(10.0), math.radians(0.2), math.radians(0.6)
"""Both ends of a nearly straight line lean off its chord by no more than the first; one that bends one way by the
second at least; and a start that another line runs on into is turned by no more than the third (ours)."""

BOW = 3.0
"""Its start leans no more than so many times as far as its end, or all of its bend were there (ours)."""


def _waves(fair: Fair, matters: float) -> int:
    return inflections(fair.path, matters)


def _with_less(path: Path, limits: FairLimits) -> Iterator[Fair]:
    """Yield the path with a stretch round each of its waves drawn anew, where that moves it by no more."""
    ends = _run_ends(path, limits.matters)
    for number, (low, high) in enumerate(itertools.pairwise(ends)):
        first, last = ends[max(number - 1, 0)], ends[min(number + 2, len(ends) - 1)]
        for before, after in itertools.product(REACHES, REACHES):
            start = max(low - before * (high - low), first)
            end = min(high + after * (high - low), last)
            fair = _redrawn(path, start, end, limits)
            if fair is not None:
                yield fair


def _run_ends(path: Path, matters: float) -> list[float]:
    """Return where the runs of a path begin and end, mm from its start, those that turn less left out."""
    places = [path.length * i / PLACES for i in range(PLACES + 1)]
    ways = [path.tangent(at) for at in places]
    turned = [0.0, *itertools.accumulate(cmath.phase(b / a) for a, b in itertools.pairwise(ways))]
    ends, extreme, rising = [0.0], 0, 0
    for i, angle in enumerate(turned):
        if rising and (angle - turned[extreme]) * rising > 0:
            extreme = i
        elif abs(angle - turned[extreme]) > math.radians(matters):
            if rising:
                ends.append(places[extreme])
            rising, extreme = (1 if angle > turned[extreme] else -1), i
    return [*ends, path.length]


def _redrawn(path: Path, start: float, end: float, limits: FairLimits) -> Fair | None:
    """Return the path with the stretch between two places as one cubic of its length that bends one way."""
    low, rest = path.split(start) if start > 0 else (None, path)
    old, high = rest.split(end - start) if end < path.length else (rest, None)
    drawn = [cubic for lean in LEANINGS if (cubic := _one_way(old, lean, limits.shorter)) is not None]
    if not drawn:
        return None
    off, cubic = min(((_apart(old, Path((one,))), one) for one in drawn), key=lambda one: one[0])
    if off > limits.within:
        return None
    parts = [part for part in (low, Path((cubic,)), high) if part is not None]
    return Fair(Path.joined(parts), off)


def _one_way(old: Path, lean: tuple[float, float], shorter: float) -> Cubic | None:
    """Return a cubic with a path's ends, directions and length (or next to it) that bends one way, or None."""
    a, b, chord = old.start, old.end, old.end - old.start
    if abs(chord) < SHORT:
        return None
    opens, closes = cmath.phase(old.leave / chord), cmath.phase(chord / old.arrive)
    if opens * closes <= 0 or min(abs(opens), abs(closes)) < LEAST or abs(opens + closes) > math.pi / 2:
        return None
    sides = (abs(chord) * math.sin(angle) / math.sin(opens + closes) for angle in (closes, opens))
    first, second = (side * share for side, share in zip(sides, lean, strict=True))

    def drawn(share: float) -> Cubic:
        return Cubic(a, a + share * first * old.leave, b - share * second * old.arrive, b)

    def over(share: float) -> float:
        return drawn(share).length - old.length

    ends = over(0.0), over(LONGEST)
    if ends[1] <= 0:
        return drawn(LONGEST) if ends[1] > -shorter else None
    return drawn(zero_between(over, (0.0, LONGEST), ends, 1e-12)) if ends[0] < 0 else None


def _apart(one: Path, two: Path) -> float:
    return max(abs(p - q) for p, q in zip(one.evenly(33), two.evenly(33), strict=True))
