"""Which way a path bends, and by how much: runs of one sign, and the inflections between them.

The curvature of a cubic has the sign of (velocity x acceleration), a quadratic in t whose Bernstein
coefficients are the cross products of the control polygon's legs (elementary algebra, ours). So its
sign changes are found exactly, and the turn of a run is the angle between the tangents at its ends.
"""

from __future__ import annotations

import cmath
import itertools
import math
from collections.abc import Sequence

from drafting.geometry.curve import Cubic, Line, Segment
from drafting.geometry.path import Path


def sign_changes(cubic: Cubic) -> tuple[float, ...]:
    """Return the parameters 0 < t < 1 at which the curvature of `cubic` changes sign."""
    legs = (cubic.b - cubic.a, cubic.c - cubic.b, cubic.d - cubic.c)
    first, second, third = (_cross(p, q) for p, q in itertools.combinations(legs, 2))
    # first (1-t)^2 + second t (1-t) + third t^2, with crosses 1x2, 1x3, 2x3
    square, linear, constant = first - second + third, second - 2 * first, first
    size = max(map(abs, (first, second, third)))
    if size == 0:
        return ()
    roots = _roots(square, linear, constant, 1e-14 * size)
    return tuple(sorted(root for root in roots if 1e-9 < root < 1))


def _roots(square: float, linear: float, constant: float, nothing: float) -> tuple[float, ...]:
    """Return where square x^2 + linear x + constant changes sign; leading rounding is left out."""
    if abs(square) <= nothing:
        return (-constant / linear,) if abs(linear) > nothing else ()
    inside = linear * linear - 4 * square * constant
    if inside <= 0:
        return ()
    far = -(linear + math.copysign(math.sqrt(inside), linear)) / 2  # no cancellation
    return far / square, constant / far


def turns(path: Path, matters: float = 0.0) -> tuple[float, ...]:
    """Return the turn (degrees, left positive) of each run of `path` that bends one way.

    Runs that turn less than `matters` degrees are taken as part of their neighbours. A corner
    between two segments counts as bending.

    >>> [round(t) for t in turns(Path((Cubic(0j, 50 + 0j, 50 + 100j, 100 + 100j),)))]
    [63, -63]
    """
    own = [_segment_turns(segment) for segment in path.segments]
    pieces = [turn for found in own for turn in found]
    joints = [_phase(b.tangent(0.0), a.tangent(1.0)) for a, b in itertools.pairwise(path.segments)]
    counts = list(itertools.accumulate(map(len, own)))[:-1]
    for place, joint in reversed(list(zip(counts, joints, strict=True))):
        pieces.insert(place, joint)
    runs = _merged(pieces)
    while len(runs) > 1 and min(map(abs, runs)) < matters:
        least = min(range(len(runs)), key=lambda i: abs(runs[i]))
        around = [runs[i] for i in (least - 1, least, least + 1) if 0 <= i < len(runs)]
        runs = _merged([*runs[: max(0, least - 1)], math.fsum(around), *runs[least + 2 :]])
    return tuple(runs)


def inflections(path: Path, matters: float) -> int:
    """Return how often `path` changes from bending one way to bending the other.

    A change counts where the runs on both sides of it turn more than `matters` degrees.
    """
    return max(0, len(turns(path, matters)) - 1)


def _segment_turns(segment: Segment) -> list[float]:
    if isinstance(segment, Line):
        return []
    stops = [0.0, *sign_changes(segment), 1.0]
    return [_run_turn(segment, a, b) for a, b in itertools.pairwise(stops)]


def _run_turn(cubic: Cubic, start: float, end: float) -> float:
    """Return the turn of one run; in quarters, as a run may turn more than half round."""
    steps = [cubic.tangent(start + (end - start) * i / 4) for i in range(5)]
    return math.fsum(_phase(after, before) for before, after in itertools.pairwise(steps))


def _merged(runs: Sequence[float]) -> list[float]:
    """Return the runs with neighbours of one sign added up and straight ones left out."""
    bent = [run for run in runs if abs(run) > 1e-7]
    return [math.fsum(same) for _, same in itertools.groupby(bent, key=lambda run: run > 0)]


def _phase(after: complex, before: complex) -> float:
    return math.degrees(cmath.phase(after / before)) if before else 0.0


def _cross(a: complex, b: complex) -> float:
    return (a.conjugate() * b).imag
