"""The two kinds of segment: `Line` and `Cubic`. Both are exact under move, turn, mirror and split.

Length is taken by the 24-point Gauss-Legendre rule on the true curve, never on a polyline. Two
halves of a curve are compared with the whole; where they differ by more than a tenth of the promised
thousandth of a millimetre (a curve with a near-cusp) the halves are measured instead.
"""

from __future__ import annotations

import cmath
import math
from typing import NamedTuple

import numpy as np
from fontTools.misc.bezierTools import splitCubicAtTC
from numpy.typing import NDArray
from scipy.optimize import brentq

Numbers = NDArray[np.float64]

_NODES, _WEIGHTS = np.polynomial.legendre.leggauss(24)
_T = (_NODES + 1) / 2
_W = _WEIGHTS / 2
_SPEED = np.stack(
    [-3 * (1 - _T) ** 2, 3 * (1 - _T) ** 2 - 6 * (1 - _T) * _T, 6 * (1 - _T) * _T - 3 * _T**2, 3 * _T**2], 1
).astype(complex)  # fmt: skip


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
        a, b, c, d = self
        whole, chord = _gauss(self), d - a
        if whole < 1.5 * abs(chord):
            back = chord.conjugate()
            legs = ((b - a) * back).real, ((c - b) * back).real, ((d - c) * back).real
            if min(legs) >= 0:  # never turns back: 24 points give 1e-8 (measured)
                return whole
        return _length_in_halves(self, whole, DEEPEST)

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
        acceleration = 6 * (1 - t) * (self.c - 2 * self.b + self.a) + 6 * t * (
            self.d - 2 * self.c + self.b
        )
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
        return float(brentq(lambda u: self.split(u)[0].length - distance, 0, 1, xtol=1e-12))

    def parameters_at(self, distances: Numbers) -> list[float]:
        """Return `parameter_at` for many distances at once."""
        total = self.length
        if not total:
            return [0.0 for _ in distances]
        t = np.clip(distances / total, 0.0, 1.0)
        for _ in range(12):  # Newton, all together; the rule is laid over 0..t
            run, speed = _runs(self, t)
            gaps = np.where(t < 1, run - distances, 0.0)
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
            6 * _cross(a, b) + 3 * _cross(a, c) + _cross(a, d)
            + 3 * _cross(b, c) + 3 * _cross(b, d) + 6 * _cross(c, d)
        ) / 20  # fmt: skip

    def split(self, t: float) -> tuple[Cubic, Cubic]:
        first, second = splitCubicAtTC(self.a, self.b, self.c, self.d, t)
        return Cubic(*first), Cubic(*second)

    def reversed(self) -> Cubic:
        return Cubic(self.d, self.c, self.b, self.a)

    def as_cubic(self) -> Cubic:
        return self


Segment = Line | Cubic


def _gauss(c: Cubic) -> float:
    return float(np.abs(_SPEED @ np.array(c)) @ _W)


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
