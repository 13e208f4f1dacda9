"""A smooth curve of numbers through given ones: cubics that meet with the same slope and bend."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from drafting.geometry.curve import Numbers

Ordinates = NDArray[Any]
"""Real or complex numbers."""


@dataclass(frozen=True, eq=False)
class Spline:
    """Cubics between nodes `at` (n, rising), with these `values` and `slopes` there (n, or n x k)."""

    at: Numbers
    values: Ordinates
    slopes: Ordinates

    def __post_init__(self) -> None:
        for numbers in (self.at, self.values, self.slopes):
            numbers.setflags(write=False)

    def __call__(self, x: Any, order: int = 0) -> Ordinates:
        """Return the values at `x`, or with `order` 1 the slopes there."""
        x = np.asarray(x, dtype=float)
        k = np.clip(np.searchsorted(self.at, x, side="right") - 1, 0, len(self.at) - 2)
        wide = self.at[k + 1] - self.at[k]
        t = (x - self.at[k]) / wide
        if self.values.ndim > 1:
            t, wide = t[..., None], wide[..., None]
        a, b, va, vb = self.values[k], self.values[k + 1], self.slopes[k] * wide, self.slopes[k + 1] * wide
        rise = b - a
        bends, twists = 3 * rise - 2 * va - vb, va + vb - 2 * rise
        if order:
            return np.asarray((va + t * (2 * bends + t * 3 * twists)) / wide)
        return np.asarray(a + t * (va + t * (bends + t * twists)))

    @property
    def so_far(self) -> Ordinates:
        """The integral from the first node up to each."""
        wide = np.diff(self.at).reshape(-1, *(1,) * (self.values.ndim - 1))
        a, b, va, vb = self.values[:-1], self.values[1:], self.slopes[:-1], self.slopes[1:]
        each = wide / 2 * (a + b) + wide**2 / 12 * (va - vb)
        return np.concatenate([np.zeros_like(self.values[:1]), each.cumsum(0)])


def spline_through(at: Numbers, values: Ordinates) -> Spline:
    """Return the spline through values (n, or n x k) at four nodes or more.

    Its first two cubics are one, and its last two: no end slope is made up (C. de Boor 1978,
    *A Practical Guide to Splines*, chapter IV: "not a knot").
    """
    wide = np.diff(at)
    rise = (np.diff(values, axis=0).T / wide).T
    whole = np.zeros((len(at), len(at)))
    wanted = np.zeros_like(values)
    inner = np.arange(1, len(at) - 1)
    whole[inner, inner - 1], whole[inner, inner + 1] = wide[1:], wide[:-1]
    whole[inner, inner] = 2 * (wide[:-1] + wide[1:])
    wanted[inner] = (3 * (wide[1:] * rise[:-1].T + wide[:-1] * rise[1:].T)).T
    for end, beside, (h, g), (d, e) in (
        (0, 1, wide[:2], rise[:2]),
        (len(at) - 1, len(at) - 2, wide[:-3:-1], rise[:-3:-1]),
    ):
        whole[end, end], whole[end, beside] = g, h + g
        wanted[end] = ((3 * h + 2 * g) * g * d + h * h * e) / (h + g)
    return Spline(at.copy(), np.array(values), np.linalg.solve(whole, wanted))


def simpson_so_far(values: Ordinates, step: float) -> Ordinates:
    """Return the integral up to each of an odd number of values a `step` apart, by Simpson's rule.

    Each pair of steps goes by the parabola through its three values.
    """
    a, b, c = values[:-2:2], values[1:-1:2], values[2::2]
    each = np.empty_like(values[:-1])
    each[::2], each[1::2] = (5 * a + 8 * b - c) * (step / 12), (-a + 8 * b + 5 * c) * (step / 12)
    return np.concatenate([np.zeros_like(values[:1]), each.cumsum(0)])
