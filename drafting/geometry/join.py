"""Join two lines drawn beside the two sides of a corner: mitre, cut-off point, or step. Layer 1."""

from __future__ import annotations

import cmath
import math
from typing import NamedTuple

from drafting.geometry.crossing import pinned
from drafting.geometry.path import Path, line

SMOOTH = math.radians(3.0)
"""A turn smaller than this is joined without extra lines (ours; at 10 mm it moves an end 0.26 mm)."""


class Corner(NamedTuple):
    """A corner of the line that was followed: its point and the directions in and out."""

    at: complex
    arrive: complex
    leave: complex

    @property
    def turn(self) -> float:
        """The turn to the left, radians, -pi..pi."""
        return cmath.phase(self.leave / self.arrive)

    def reversed(self) -> Corner:
        """Return the same corner walked backwards."""
        return Corner(self.at, -self.leave, -self.arrive)


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


def join(before: Path, after: Path, corner: Corner, reach: float) -> Joined:
    """Join two lines drawn beside the sides of `corner`.

    Outside a corner the lines run on to their mitre; where that lies more than `reach` mm from the
    corner, each is cut off at that distance. Inside a corner the way leads over the corner itself:
    the loop this makes is cut away by `rings.outer`. Unlike widths at a flat corner make a step.
    """
    p, q = before.end, after.start
    wide_p, wide_q = _right_of(p, corner.at, corner.arrive), _right_of(q, corner.at, corner.leave)
    if abs(p - q) < 1e-9:
        return Joined(before, None, pinned(after, start=p))
    tip = _mitre(p, q, corner)
    if tip is not None and abs(corner.turn) < SMOOTH and abs(wide_p - wide_q) < 1e-6:
        if _long_enough(before, after, abs(tip - p)):
            return Joined(pinned(before, end=tip), None, pinned(after, start=tip))
    if corner.turn * (wide_p + wide_q) < 0:
        return Joined(before, line(p, corner.at, q), after)
    return Joined(before, _outside(p, q, tip, corner, reach), after)


def _right_of(p: complex, corner: complex, heading: complex) -> float:
    return -((p - corner) * heading.conjugate()).imag


def _mitre(p: complex, q: complex, corner: Corner) -> complex | None:
    cross = (corner.arrive.conjugate() * corner.leave).imag
    if abs(cross) < 1e-9:
        return None
    return p + corner.arrive * (((q - p).conjugate() * corner.leave).imag / cross)


def _long_enough(before: Path, after: Path, shift: float) -> bool:
    return min(before.segments[-1].length, after.segments[0].length) > 20 * shift


def _outside(p: complex, q: complex, tip: complex | None, corner: Corner, reach: float) -> Path:
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
        p, p + corner.arrive * _run(reach, p - corner.at),
        q - corner.leave * _run(reach, q - corner.at), q,
    )  # fmt: skip


def _run(reach: float, across: complex) -> float:
    """How far a line that passes the corner at distance |across| may run on to stay in `reach`."""
    return math.sqrt(max(0.0, reach * reach - abs(across) ** 2))


def _clean(*points: complex) -> Path:
    kept = [
        points[0],
        *(b for a, b in zip(points, points[1:-1], strict=False) if abs(b - a) > 1e-6),
    ]
    if len(kept) > 1 and abs(points[-1] - kept[-1]) < 1e-6:
        kept.pop()
    return line(*kept, points[-1])
