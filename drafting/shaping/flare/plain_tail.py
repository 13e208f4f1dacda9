"""The plain tail of a coat: a waist edge, a hem, and straight rulings that join equal shares of both.

All functions of the place `s` along the waist edge (mm from the back fold): the direction of the
waist, the direction and the length of the ruling. Flare only turns them, see `flare`.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from drafting.geometry import Path
from drafting.geometry.curve import Numbers, Points
from drafting.geometry.path import cubics
from drafting.geometry.spline import Spline, spline_through

STEPS = 24
"""Points a segment at which an edge is read off (a cubic of 300 mm: 1e-5 mm, measured)."""

_STEPS = np.linspace(0.0, 1.0, STEPS + 1)
_SO_FAR = spline_through(_STEPS, np.eye(STEPS + 1)).so_far
"""What each point's speed weighs in the length so far: the speed's own spline, integrated."""

NODES = 65
"""Points along the waist edge between which the splines run."""


@dataclass(frozen=True)
class PlainTail:
    """A tail without flare, `width` mm along its waist edge, starting at `start` (back fold).

    `heading` and `ruling` are splines of directions (radians) over the place on the waist edge,
    `drop` the spline of ruling lengths (mm).
    """

    width: float
    heading: Spline
    ruling: Spline
    drop: Spline
    start: complex

    def length_at(self, s: float) -> float:
        """Return the length of the ruling at `s`, mm: that of a seam drawn there."""
        return float(self.drop(s))


@dataclass(frozen=True)
class _Curve:
    """Places along a path (mm), the points there, and the directions (radians, continuous)."""

    at: Numbers
    points: Points
    heading: Numbers

    def __post_init__(self) -> None:
        for numbers in (self.at, self.points, self.heading):
            numbers.setflags(write=False)


def plain_tail(waist: Path, hem: Path, spring: float = 0.0) -> PlainTail:
    """Return the tail between two curves drawn from the back fold to the front, y up.

    `spring` (degrees) is turned in evenly along the waist, as room for the seat; the rulings keep
    their lengths.
    """
    above, below = _read(waist), _read(hem)
    width, round_hem = float(above.at[-1]), float(below.at[-1])
    grid = np.linspace(0.0, width, NODES)
    read = spline_through(above.at, np.stack([above.points, above.heading], 1))(grid)
    w, heading = read[:, 0], read[:, 1].real
    h = spline_through(below.at, below.points)(grid / width * round_hem)
    down = h - w
    turned = math.radians(spring) * grid / width
    ruling = np.unwrap(np.angle(down)) + turned
    own = [spline_through(grid, numbers) for numbers in (heading + turned, ruling, np.abs(down))]
    return PlainTail(width, own[0], own[1], own[2], complex(w[0]))


def _read(path: Path) -> _Curve:
    """Return a path by its arc length, from its true points and directions."""
    points, headings, places = [], [], []
    passed = 0.0
    parts = cubics(path)
    for i, c in enumerate(parts):
        t = _STEPS
        v = 3 * ((1 - t) ** 2 * (c.b - c.a) + 2 * t * (1 - t) * (c.c - c.b) + t * t * (c.d - c.c))
        p = (1 - t) ** 3 * c.a + 3 * (1 - t) ** 2 * t * c.b + 3 * (1 - t) * t * t * c.c + t**3 * c.d
        at = passed + _SO_FAR @ np.abs(v)
        passed = float(at[-1])
        keep = slice(0, None if i == len(parts) - 1 else -1)
        points.append(p[keep])
        headings.append(np.angle(v)[keep])
        places.append(at[keep])
    return _Curve(np.concatenate(places), np.concatenate(points), np.unwrap(np.concatenate(headings)))
