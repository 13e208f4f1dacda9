"""Join two lines drawn beside the two sides of a corner: mitre, cut-off point, or step."""

from __future__ import annotations

import cmath
import math
from itertools import pairwise
from typing import NamedTuple

from drafting.geometry.crossing import ends_moved
from drafting.geometry.path import Path, line

NUDGE = 0.05
"""mm: lines that need move no farther than this to meet get no extra bits between them (ours)."""


class LineCorner(NamedTuple):
    """A corner of the line that was followed: its point and the directions in and out."""

    at: complex
    arrive: complex
    leave: complex

    @property
    def turn(self) -> float:
        """The turn to the left, radians, -pi..pi."""
        return cmath.phase(self.leave / self.arrive)

    def reversed(self) -> LineCorner:
        """Return the same corner walked backwards."""
        return LineCorner(self.at, -self.leave, -self.arrive)


class Joined(NamedTuple):
    """The line before, the bits between (or None), and the line after; they meet exactly."""

    before: Path
    between: Path | None
    after: Path

    @property
    def paths(self) -> list[Path]:
        return [path for path in self if path is not None]

    def reversed(self) -> Joined:
        middle = None if self.between is None else self.between.reversed()
        return Joined(self.after.reversed(), middle, self.before.reversed())


def join(before: Path, after: Path, corner: LineCorner, reach: float) -> Joined:
    """Join two lines drawn beside the sides of `corner`.

    Outside a corner the lines run on to their mitre; where that lies more than `reach` mm from the
    corner, each is cut off at that distance. Inside a corner the way leads through a point past it:
    the loop this makes is cut away by `rings.outer_rings`. Unlike widths at a nearly flat corner make a
    step.
    """
    p, q = before.end, after.start
    wide_p, wide_q = _right_of(p, corner.at, corner.arrive), _right_of(q, corner.at, corner.leave)
    if abs(p - q) < 1e-9:
        return Joined(before, None, ends_moved(after, start=p))
    tip = _mitre(p, q, corner)
    if tip is not None and _close(before, after, tip) and abs(wide_p - wide_q) < 1e-6:
        return Joined(ends_moved(before, end=tip), None, ends_moved(after, start=tip))
    if corner.turn * (wide_p + wide_q) < 0:
        if tip is None or not _overrun(p, q, tip, corner):
            return Joined(before, line(p, q), after)
        return Joined(before, line(p, _within(corner, max(abs(wide_p), abs(wide_q))), q), after)
    return Joined(before, _outside(p, q, tip, corner, reach), after)


def _overrun(p: complex, q: complex, tip: complex, corner: LineCorner) -> bool:
    """Say whether both lines run past the point where they cross."""
    past = ((p - tip) * corner.arrive.conjugate()).real
    early = ((tip - q) * corner.leave.conjugate()).real
    return past > 0 and early > 0


def _within(corner: LineCorner, width: float) -> complex:
    """Return a point past an inside corner, off both sides' lines so that no two bits can coincide."""
    bisector = corner.leave - corner.arrive
    return corner.at - 0.37 * width * bisector / abs(bisector)


def _right_of(p: complex, corner: complex, heading: complex) -> float:
    return -((p - corner) * heading.conjugate()).imag


def _mitre(p: complex, q: complex, corner: LineCorner) -> complex | None:
    cross = (corner.arrive.conjugate() * corner.leave).imag
    if abs(cross) < 1e-9:
        return None
    return p + corner.arrive * (((q - p).conjugate() * corner.leave).imag / cross)


def _close(before: Path, after: Path, tip: complex) -> bool:
    shift = max(abs(tip - before.end), abs(tip - after.start))
    return shift < NUDGE and 20 * shift < min(before.segments[-1].length, after.segments[0].length)


def _outside(p: complex, q: complex, tip: complex | None, corner: LineCorner, reach: float) -> Path:
    sharp = tip is None and (corner.arrive.conjugate() * corner.leave).real < 0
    if tip is not None:
        ahead = ((tip - p) * corner.arrive.conjugate()).real > -1e-9
        behind = ((q - tip) * corner.leave.conjugate()).real > -1e-9
        if ahead and behind and abs(tip - corner.at) <= reach:
            return _clean(p, tip, q)
        sharp = ahead and behind
    if not sharp:
        return _clean(p, q)
    return _clean(
        p, p + corner.arrive * _run(reach, p - corner.at), q - corner.leave * _run(reach, q - corner.at), q
    )


def _run(reach: float, across: complex) -> float:
    """How far a line that passes the corner at distance |across| may run on to stay in `reach`."""
    return math.sqrt(max(0.0, reach * reach - abs(across) ** 2))


def _clean(*points: complex) -> Path:
    kept = [points[0], *(b for a, b in pairwise(points[:-1]) if abs(b - a) > 1e-6)]
    if len(kept) > 1 and abs(points[-1] - kept[-1]) < 1e-6:
        kept.pop()
    return line(*kept, points[-1])
