"""The two kinds of segment: `Line` and `Cubic`. Both are exact under move, turn, mirror and split.

Length is taken by the 24-point Gauss-Legendre rule on the true curve, never on a polyline. A curve
that may come near a standstill is measured in quarters too, and where these tell another length (a
near-cusp) in ever more halves.
"""

from __future__ import annotations

import cmath
import math
from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

import numpy as np
from fontTools.misc.bezierTools import splitCubicAtTC
from numpy.typing import NDArray

from drafting.geometry.brent import brent_zero

Numbers = NDArray[np.float64]
Points = NDArray[np.complex128]

_NODES, _WEIGHTS = np.polynomial.legendre.leggauss(24)
_T = (_NODES + 1) / 2
_W = _WEIGHTS / 2


def _speed(t: Numbers) -> NDArray[np.complex128]:
    """Return what a cubic's four points weigh in its velocity at each `t`."""
    s = 1 - t
    return np.stack([-3 * s * s, 3 * s * s - 6 * s * t, 6 * s * t - 3 * t * t, 3 * t * t], 1).astype(complex)


_SPEED = _speed(_T)
_SPEED_4, _W_4 = _speed(np.concatenate([(_T + k) / 4 for k in range(4)])), np.tile(_W / 4, 4)
"""The same rule laid over each quarter."""


DEEPEST, SURE = 12, 8
"""A curve with a near-cusp is halved at most so often, and at least `DEEPEST - SURE` times: whole and
halves may agree by chance before that."""


def turn(degrees: float) -> complex:
    """Return the factor that turns a direction anticlockwise by `degrees`.

    >>> abs(turn(90) - 1j) < 1e-12
    True
    """
    return cmath.exp(1j * math.radians(degrees))


class Line(NamedTuple):
    """A straight segment from `a` to `b`."""

    a: complex
    b: complex

    @property
    def start(self) -> complex:
        return self.a

    @property
    def end(self) -> complex:
        return self.b

    @property
    def length(self) -> float:
        return abs(self.b - self.a)

    def point(self, t: float) -> complex:
        return self.a + (self.b - self.a) * t

    def velocity(self, t: float) -> complex:
        return self.b - self.a

    def tangent(self, t: float) -> complex:
        step = self.b - self.a
        return step / abs(step) if step else 0j

    def curvature(self, t: float) -> float:
        return 0.0

    def parameter_at(self, distance: float) -> float:
        return distance / self.length if self.length else 0.0

    def parameters_at(self, distances: Numbers) -> list[float]:
        return [self.parameter_at(float(distance)) for distance in distances]

    def swept(self, home: complex) -> float:
        """Return the signed area (mm2) that the way from `home` to the segment sweeps over."""
        return _cross(self.a - home, self.b - home) / 2

    def split(self, t: float) -> tuple[Line, Line]:
        middle = self.point(t)
        return Line(self.a, middle), Line(middle, self.b)

    def reversed(self) -> Line:
        return Line(self.b, self.a)

    def as_cubic(self) -> Cubic:
        third = (self.b - self.a) / 3
        return Cubic(self.a, self.a + third, self.b - third, self.b)


class Cubic(NamedTuple):
    """A cubic Bezier segment from `a` to `d` with handles `b` and `c`."""

    a: complex
    b: complex
    c: complex
    d: complex

    @property
    def start(self) -> complex:
        return self.a

    @property
    def end(self) -> complex:
        return self.d

    @property
    def length(self) -> float:
        """Arc length, mm (within 0.001)."""
        return _cubic_length(self)

    def point(self, t: float) -> complex:
        a, b, c, d = self
        s = 1 - t
        return s * s * s * a + 3 * s * s * t * b + 3 * s * t * t * c + t * t * t * d

    def velocity(self, t: float) -> complex:
        a, b, c, d = self
        s = 1 - t
        return 3 * s * s * (b - a) + 6 * s * t * (c - b) + 3 * t * t * (d - c)

    def tangent(self, t: float) -> complex:
        """Return the unit direction of travel at `t` (defined at ends without handles too)."""
        v = self.velocity(t)
        if abs(v) > 1e-12:
            return v / abs(v)
        for far in (self.c, self.d) if t < 0.5 else (self.b, self.a):
            step = far - self.a if t < 0.5 else self.d - far
            if abs(step) > 1e-12:
                return step / abs(step)
        return 0j

    def curvature(self, t: float) -> float:
        """Return the signed curvature, 1/mm; positive turns left."""
        v = self.velocity(t)
        acceleration = 6 * (1 - t) * (self.c - 2 * self.b + self.a) + 6 * t * (self.d - 2 * self.c + self.b)
        return (v.conjugate() * acceleration).imag / abs(v) ** 3 if abs(v) > 1e-12 else 0.0

    def parameter_at(self, distance: float) -> float:
        """Return the parameter at which `distance` mm have been travelled from the start."""
        total = self.length
        if distance <= 0 or total == 0:
            return 0.0
        if distance >= total:
            return 1.0
        t = distance / total
        for _ in range(12):  # Newton; the speed is known exactly
            gap = self.split(t)[0].length - distance
            if abs(gap) < 1e-9:
                return t
            speed = abs(self.velocity(t))
            step = t - gap / speed if speed > 1e-9 else -1.0
            if not 0 < step < 1:
                break
            t = step
        return float(brent_zero(lambda u: self.split(u)[0].length - distance, 0, 1, within=1e-12))

    def parameters_at(self, distances: Numbers) -> list[float]:
        """Return `parameter_at` for many distances at once."""
        total = self.length
        if not total:
            return [0.0 for _ in distances]
        t = np.clip(distances / total, 0.0, 1.0)
        for _ in range(12):  # Newton, all together; the rule is laid over 0..t
            run, speed = _runs(self, t)
            gaps = np.where(distances < total, run - distances, 0.0)  # a step too far, to 1, comes back
            if not np.any(abs(gaps) > 1e-9):
                break
            t = np.clip(t - gaps / np.maximum(speed, 1e-9), 0.0, 1.0)
        return [
            self.parameter_at(float(distance)) if abs(gap) > 1e-9 else float(at)
            for at, distance, gap in zip(t, distances, gaps, strict=True)
        ]

    def swept(self, home: complex) -> float:
        """Return the signed area (mm2) that the way from `home` to the segment sweeps over: exact."""
        a, b, c, d = (p - home for p in self)
        return (
            6 * _cross(a, b)
            + 3 * _cross(a, c)
            + _cross(a, d)
            + 3 * _cross(b, c)
            + 3 * _cross(b, d)
            + 6 * _cross(c, d)
        ) / 20

    def split(self, t: float) -> tuple[Cubic, Cubic]:
        first, second = splitCubicAtTC(self.a, self.b, self.c, self.d, t)
        return Cubic(*first), Cubic(*second)

    def reversed(self) -> Cubic:
        return Cubic(self.d, self.c, self.b, self.a)

    def as_cubic(self) -> Cubic:
        return self


Segment = Line | Cubic


@lru_cache(maxsize=4096)
def _cubic_length(cubic: Cubic) -> float:
    """Return the length of a cubic, kept: checks and notches ask again for every second one of a draft."""
    return _sure_length(cubic, _gauss(cubic))


def _gauss(c: Cubic) -> float:
    return float(np.abs(_SPEED @ np.array(c)) @ _W)


def cubic_lengths(cubics: Sequence[Cubic]) -> list[float]:
    """Return the length of each of some cubics: measured together, as numpy costs per call."""
    wholes = _W @ np.abs(_SPEED @ np.array(cubics).T)
    return [_sure_length(cubic, float(whole)) for cubic, whole in zip(cubics, wholes, strict=True)]


def _sure_length(c: Cubic, whole: float) -> float:
    """Return the length of a cubic that 24 points make `whole`, by more of them where these may not tell it."""
    chord = abs(c.d - c.a)
    if whole < 1.5 * chord and _goes_on(c):
        if _is_tame(c, chord):
            return whole
        quarters = float(np.abs(_SPEED_4 @ np.array(c)) @ _W_4)
        if abs(quarters - whole) < 1e-6 * chord:
            return quarters
    return _length_in_halves(c, whole, DEEPEST)


def _goes_on(cubic: Cubic) -> bool:
    """Say whether no leg of the control polygon leads back along the chord."""
    a, b, c, d = cubic
    back = (d - a).conjugate()
    return ((b - a) * back).real >= 0 and ((c - b) * back).real >= 0 and ((d - c) * back).real >= 0


def _is_tame(cubic: Cubic, chord: float) -> bool:
    """Say whether 24 points give the length within 4e-8 of the chord (measured on random cubics).

    No leg of the control polygon is very short, and no two of them are much more than a right angle
    apart: so the speed comes nowhere near nothing. A curve that is not tame is measured in quarters;
    where these tell the whole within a millionth they are right to 2e-8 (measured).
    """
    a, b, c, d = cubic
    one, two, three = b - a, c - b, d - c
    p, q, r, back = abs(one), abs(two), abs(three), two.conjugate()
    return (
        min(p, q, r) >= 0.05 * chord
        and (one * back).real >= -0.1 * p * q
        and (three * back).real >= -0.1 * q * r
        and (one * three.conjugate()).real >= -0.1 * p * r
    )


def _runs(c: Cubic, t: Numbers) -> tuple[Numbers, Numbers]:
    """Return the arc lengths from the start to each parameter, and the speeds there."""
    one, two, three = 3 * (c.b - c.a), 6 * (c.a - 2 * c.b + c.c), 3 * (c.d - c.a + 3 * (c.b - c.c))
    at = t[:, None] * _T
    return np.abs((three * at + two) * at + one) @ _W * t, np.abs((three * t + two) * t + one)


def _cross(a: complex, b: complex) -> float:
    return a.real * b.imag - a.imag * b.real


def _length_in_halves(c: Cubic, whole: float, depth: int) -> float:
    first, second = c.split(0.5)
    halves = _gauss(first), _gauss(second)
    if depth == 0 or (depth <= SURE and abs(sum(halves) - whole) < 1e-5):
        return sum(halves)
    return sum(
        _length_in_halves(part, part_length, depth - 1)
        for part, part_length in zip((first, second), halves, strict=True)
    )
