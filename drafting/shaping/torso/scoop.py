"""The scoop of an armhole, from the across point to the underarm, and how full it is.

One cubic whose handles are shares of the two tangents' lengths to their meeting point: `HANDLES`
at fullness 0 and what 1 adds. A fuller scoop is wider near its bottom and turns more sharply. Back
and front have one fullness, solved for the width that the arm needs and held where either would turn
on too small a radius. Shares and limits were tried on 200 measured bodies (ours).
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from drafting.geometry import Cubic, turn
from drafting.geometry.curve import Numbers
from drafting.shaping.torso.armhole import ArmholePoints, heading, tangents

HANDLES = ((0.56, 0.38), (0.62, 0.30))
"""Share of each tangent (at the across point, at the underarm) at fullness 0, and what 1 adds."""

LEAST_FULL = 0.25
"""The fullness of an armhole that is wide enough; only a small radius asks for less."""

FRONT_RADIUS, BACK_RADIUS = 26.0, 19.0
"""mm at adult scale: least radius of front and back scoop, 1 mm over the least that is drafted."""

WIDTH_ABOVE = 20.0
"""mm at adult scale above an armhole's lowest point: where its width is judged (ours)."""

_FULL = np.linspace(0.0, 1.0, 17)
_T = np.linspace(0.0, 1.0, 57)
_S = 1 - _T
_PLACE = np.stack([_S**3, 3 * _S * _S * _T, 3 * _S * _T * _T, _T**3])
_SPEED = np.stack([-3 * _S * _S, 3 * _S * (_S - 2 * _T), 3 * _T * (2 * _S - _T), 3 * _T * _T])
_CHANGE = np.stack([6 * _S, 6 * (_T - 2 * _S), 6 * (_S - 2 * _T), 6 * _T])


@dataclass(frozen=True)
class ScoopLine:
    """What a half's scoop lies between: across point and heading there, underarm and arrival."""

    start: complex
    leave: complex
    end: complex
    arrive: complex

    @property
    def drawn(self) -> bool:
        """Whether the tangents meet between the two ends, so that it bends one way."""
        return 0 < min(self.reach) < float("inf")

    @property
    def reach(self) -> tuple[float, float]:
        return tangents(self.start, self.leave, self.end, self.arrive)

    def turned(self, degrees: float) -> ScoopLine:
        """Return the line turned by so much, as the armhole lies where its width is judged."""
        by = turn(degrees)
        return ScoopLine(self.start * by, self.leave * by, self.end * by, self.arrive * by)

    def at(self, fullness: float) -> Cubic:
        """Return the scoop of this fullness."""
        (low, more), (low_end, more_end) = HANDLES
        first, last = self.reach
        return Cubic(
            self.start,
            self.start + (low + more * fullness) * first * self.leave,
            self.end - (low_end + more_end * fullness) * last * self.arrive,
            self.end,
        )


def scoop_line(at: ArmholePoints, lean: float, arrive: complex) -> ScoopLine:
    """Return the scoop's line below the across point of an armhole that leaves with `lean` degrees."""
    return ScoopLine(at.across, turn(-90 + heading(at, lean)), at.underarm, arrive)


def _all(scoop: ScoopLine) -> NDArray[np.complex128]:
    """Return the four points of the scoop at every fullness looked at, one row each."""
    first, last = scoop.reach
    (low, more), (low_end, more_end) = HANDLES
    b = scoop.start + (low + more * _FULL) * (first * scoop.leave)
    c = scoop.end - (low_end + more_end * _FULL) * (last * scoop.arrive)
    return np.stack([np.full_like(b, scoop.start), b, c, np.full_like(b, scoop.end)], 1)


def radii(scoop: ScoopLine) -> Numbers:
    """Return the least radius (mm) at every fullness of `_FULL`."""
    points = _all(scoop)
    speed, change = points @ _SPEED, points @ _CHANGE
    bend = (speed.conj() * change).imag / np.maximum(np.abs(speed), 1e-9) ** 3
    least: Numbers = 1 / np.maximum(bend.max(axis=1), 1e-9)
    return least


def widths(scoop: ScoopLine, above: float) -> Numbers:
    """Return how far it is across (mm) from the scoop to the underarm, `above` mm over its lowest point."""
    points = _all(scoop) @ _PLACE
    lowest = points.imag.argmin(axis=1)
    level = points.imag[np.arange(len(lowest)), lowest] + above
    before = np.arange(points.shape[1]) < lowest[:, None]  # a front turned up by its dart rises again
    over = before & (points.imag > level[:, None])
    last = np.clip(over.shape[1] - 1 - np.argmax(over[:, ::-1], axis=1), 0, over.shape[1] - 2)
    rows = np.arange(len(last))
    a, b = points[rows, last], points[rows, last + 1]
    share = np.clip((a.imag - level) / np.maximum(a.imag - b.imag, 1e-9), 0.0, 1.0)
    across: Numbers = scoop.end.real - (a + (b - a) * share).real
    return across


@dataclass(frozen=True)
class ScoopRange:
    """What one half's scoop can be, for every fullness: its width (mm), and its least radius over what is
    allowed (1 and more: good)."""

    width: Numbers
    round: Numbers

    def __post_init__(self) -> None:
        for numbers in (self.width, self.round):
            numbers.setflags(write=False)

    @cached_property
    def band(self) -> tuple[float, float]:
        """Least and greatest fullness at which it is round enough; the roundest where none is."""
        best = int(np.argmax(self.round))
        if self.round[best] < 1:
            return float(_FULL[best]), float(_FULL[best])
        return _edge(self.round, best, -1), _edge(self.round, best, 1)

    def kept(self, fullness: Numbers | float) -> Numbers:
        """Return this fullness, or the nearest at which the scoop is round enough."""
        found: Numbers = np.clip(fullness, *self.band)
        return found

    def width_at(self, fullness: Numbers | float) -> Numbers:
        """Return the width (mm) at this fullness, or at the nearest that is round enough."""
        found: Numbers = np.interp(self.kept(fullness), _FULL, self.width)
        return found


@dataclass(frozen=True)
class Scoops:
    """What the two scoops of an armhole can be. Both are as full as each other where radii allow it."""

    back: ScoopRange
    front: ScoopRange

    @cached_property
    def widths(self) -> Numbers:
        return self.back.width_at(_FULL) + self.front.width_at(_FULL)

    @property
    def widest(self) -> float:
        """The greatest width (mm) of both together."""
        return float(self.widths[-1])

    @property
    def roundness(self) -> float:
        """Least radius over what is allowed, at best."""
        return float(min(self.back.round.max(), self.front.round.max()))

    def fullness(self, wanted: float) -> tuple[float, float]:
        """Return the fullness of back and front that is `wanted` mm wide, or as near as radii allow."""
        full = max(LEAST_FULL, float(np.interp(wanted, np.maximum.accumulate(self.widths), _FULL)))
        return float(self.back.kept(full)), float(self.front.kept(full))

    def width(self, fullness: tuple[float, float]) -> float:
        return float(self.back.width_at(fullness[0]) + self.front.width_at(fullness[1]))


def _edge(ratio: Numbers, best: int, way: int) -> float:
    """Return where the run of ratios of 1 and more about `best` ends, that way."""
    i = best
    while 0 <= i + way < len(ratio) and ratio[i + way] >= 1:
        i += way
    if not 0 <= i + way < len(ratio):
        return float(_FULL[i])
    share = (ratio[i] - 1) / (ratio[i] - ratio[i + way])
    return float(_FULL[i] + share * (_FULL[i + way] - _FULL[i]))


def scoops(back: ScoopLine, front: ScoopLine, scale: float, front_turned: float = 0.0) -> Scoops:
    """Return what the two scoops of an armhole can be; widths are those of a front turned by
    `front_turned` degrees, where it lies so when it is joined to the back."""
    above = WIDTH_ABOVE * scale
    joined = front.turned(front_turned)
    return Scoops(
        ScoopRange(widths(back, above), radii(back) / (BACK_RADIUS * scale)),
        ScoopRange(widths(joined, above), radii(front) / (FRONT_RADIUS * scale)),
    )
