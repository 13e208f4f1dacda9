"""Slash and spread without end: a piece opened like a fan, one edge its pivot, the other growing. mm.

Where paper is cut n times and each cut opened by d, the piece is bent evenly instead: at the share u
along the pivot it is turned by u times the whole angle. The move at u is rigid,

    move(u, p) = shift(u) + turn(u) p,    turn(u) = exp(i w u),    shift' = -turn' pivot(u)

so the pivot keeps its length exactly, what lies beyond its two ends moves as a whole, and a straight
strip becomes the sector of a ring (plane geometry; a cone is its straight case).
"""

from __future__ import annotations

import cmath
import math
from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

import numpy as np

from drafting.geometry import Path, smooth, solve, unit
from drafting.geometry.curve import Cubic, Line, Numbers, Points, Segment
from drafting.geometry.spline import Spline, simpson_so_far
from drafting.shaping.flare.tail_bend import cubics_through

STATIONS = 129
"""Places along the pivot at which the move is worked out (odd, for Simpson's rule)."""

SAMPLES = 33
"""Points a segment through which a bent line is drawn again."""

SPANS = 4
"""Cubics of the grown edge (ours; a smooth edge needs no more)."""

CORNER = math.radians(2.0)
"""A joint within the grown edge that turns more is a corner and stays one."""

WIDEST = math.radians(300.0)
"""A piece opened farther would lie over itself (ours, as for a tail in one piece)."""


@dataclass(frozen=True)
class Fan:
    """A piece opened by `turned` radians about `pivot`; `far` runs beside it, the same way.

    Both run from the side that stays where it is to the side that turns.
    """

    pivot: Path
    far: Path
    turned: float

    @cached_property
    def _u(self) -> Numbers:
        return np.linspace(0.0, 1.0, STATIONS)

    @cached_property
    def _rulings(self) -> tuple[Points, Points]:
        """Pivot and far edge at even shares of their lengths."""
        return np.array(self.pivot.evenly(STATIONS)), np.array(self.far.evenly(STATIONS))

    @cached_property
    def _shift(self) -> Callable[[Numbers], Points]:
        rate = -1j * self.turned * np.exp(1j * self.turned * self._u) * self._rulings[0]
        return Spline(self._u, simpson_so_far(rate, 1.0 / (STATIONS - 1)), rate)

    def moved(self, u: Numbers, points: Points) -> Points:
        """Return points moved as the cloth at the shares `u` of the pivot moves."""
        return np.asarray(self._shift(u) + np.exp(1j * self.turned * u) * points)

    def rigid(self, u: float) -> Callable[[complex], complex]:
        """Return the move of everything that goes with the share `u`."""
        shift, factor = complex(self._shift(np.array(u))), cmath.exp(1j * self.turned * u)
        return lambda p: shift + factor * p

    def share(self, p: complex) -> float:
        """Return the share u of the ruling (pivot to far edge) on which a point lies nearest."""
        near, far = self._rulings
        ray = far - near
        down = np.clip(((p - near) * np.conj(ray)).real / np.maximum(np.abs(ray) ** 2, 1e-12), 0, 1)
        aside = ((p - near) * np.conj(ray)).imag / np.maximum(np.abs(ray), 1e-9)
        gaps = np.abs(p - near - down * ray)
        k = int(np.argmin(gaps))
        for a, b in ((k - 1, k), (k, k + 1)):
            if a >= 0 and b < len(gaps) and aside[a] * aside[b] < 0:
                return float(self._u[a] + (self._u[b] - self._u[a]) * aside[a] / (aside[a] - aside[b]))
        return float(self._u[k])

    def bent_pivot(self) -> Path:
        """Return the pivot as it lies once opened, as long as before."""
        done, parts = 0.0, []
        for segment in self.pivot.segments:
            t, points, velocity, run = _sampled(segment)
            u = (done + run) / self.pivot.length
            parts.append(cubics_through(t, self.moved(u, points), np.exp(1j * self.turned * u) * velocity))
            done += segment.length
        return _meeting(parts)

    def grown(self) -> Path:
        """Return the far edge redrawn smoothly; its ends leave their sides at the same angles."""
        stops = [0.0, *_corners(self.far), self.far.length]
        spans = max(1, SPANS // (len(stops) - 1))
        return _meeting([self._run(a, b, spans) for a, b in pairwise(stops)])

    def _run(self, start: float, end: float, spans: int) -> Path:
        """Return the stretch of the far edge between two of its corners, redrawn."""
        places = [start + (end - start) * k / spans for k in range(spans + 1)]
        nodes = [self._node(place) for place in places]
        ways = [self._way(place) for place in places]
        old = (self.far.part(start, end).leave, self.far.part(start, end).arrive)
        for k, way in ((0, old[0]), (-1, old[1])):
            ways[k] = way * cmath.exp(1j * self.turned * places[k] / self.far.length)
        ends = zip(pairwise(nodes), pairwise(ways), strict=True)
        return Path(tuple(smooth(a, b, va, vb) for (a, b), (va, vb) in ends))

    def _node(self, place: float) -> complex:
        return self.rigid(place / self.far.length)(self.far.at(place))

    def _way(self, place: float) -> complex:
        """The direction of the far edge once opened: turned, and drawn out by the opening."""
        u = place / self.far.length
        arm = self.far.at(place) - self.pivot.at(min(u, 1.0) * self.pivot.length)
        way = self.far.tangent(place) + 1j * self.turned / self.far.length * arm
        return unit(way) * cmath.exp(1j * self.turned * u)

    def bent(self, path: Path) -> Path:
        """Return a line inside the piece (a level) as it lies once opened."""
        parts = []
        for segment in path.segments:
            t, points, _, _ = _sampled(segment)
            new = self.moved(np.array([self.share(complex(p)) for p in points]), points)
            parts.append(cubics_through(t, new, np.gradient(new, t, edge_order=2)))
        return _meeting(parts)


def _sampled(segment: Segment) -> tuple[Numbers, Points, Points, Numbers]:
    """Return parameters, points, velocities and the way travelled (mm) along a segment."""
    t = np.linspace(0.0, 1.0, SAMPLES)
    cubic = segment if isinstance(segment, Cubic) else segment.as_cubic()
    points = np.array([segment.point(x) for x in t])
    velocity = np.array([cubic.velocity(x) for x in t])
    if isinstance(segment, Line):
        return t, points, velocity, t * segment.length
    run = simpson_so_far(np.abs(velocity), 1.0 / (SAMPLES - 1))
    return t, points, velocity, run * (segment.length / run[-1])


def _corners(path: Path) -> list[float]:
    """Return how far from the start (mm) the path has corners."""
    found, at = [], 0.0
    for a, b in pairwise(path.segments):
        at += a.length
        if abs(cmath.phase(b.tangent(0.0) / a.tangent(1.0))) > CORNER:
            found.append(at)
    return found


def _meeting(parts: list[Path]) -> Path:
    """Return one path of parts that meet but for rounding."""
    whole = list(parts[0].segments)
    for part in parts[1:]:
        gap = whole[-1].end - part.start
        whole += part.moved(gap).segments
    return Path(tuple(whole))


def open_fan(pivot: Path, far: Path, added: float) -> Fan:
    """Return the piece between `pivot` and `far` opened until `far` is `added` mm longer.

    Both run the same way. Raises `DraftError` where the piece would lie over itself.
    """
    inward = (far.at(far.length / 2) - pivot.at(pivot.length / 2)) / (pivot.end - pivot.start)
    sign = -1.0 if inward.imag > 0 else 1.0

    def length(angle: float) -> float:
        return Fan(pivot, far, sign * angle).grown().length

    reach = abs(far.at(far.length / 2) - pivot.at(pivot.length / 2))
    high = min(WIDEST, 3 * (added + 1.0) / max(reach, 1.0))
    angle = solve(
        length,
        far.length + added,
        (-0.02, high),
        what="slash and spread",
        turn="add less, take an edge farther off as the pivot, or cut the piece in gores",
        within=1e-10,
    )
    return Fan(pivot, far, sign * angle)
