"""Where a function is zero between two bounds: Brent's method, as good as any and quick to load."""

from __future__ import annotations

import math
import sys
from collections.abc import Callable
from typing import Any

MOST_STEPS = 100
"""Halving alone would reach any tolerance in fewer (of a double's 52 bits)."""


def brent_zero(
    measure: Callable[..., float], low: float, high: float, within: float = 2e-12, args: tuple[Any, ...] = ()
) -> float:
    """Return an x between `low` and `high` at most `within` off one where `measure(x, *args)` is 0.

    A step by the parabola or the chord through the last points where these close in, else the
    bracket is halved (R. P. Brent 1973, *Algorithms for Minimization without Derivatives*, chapter 4). Raises
    `ValueError` where both ends have the same sign, or a value is no number.

    >>> round(brent_zero(lambda x: x * x - 2, 0.0, 2.0), 10)
    1.4142135624
    """
    before, best = low, high
    at_before, at_best = float(measure(low, *args)), float(measure(high, *args))
    if at_before == 0:
        return low
    if not at_before * at_best <= 0:
        raise ValueError(f"no zero is bracketed: {at_before} at {low}, {at_best} at {high}")
    other, at_other, step = before, at_before, high - low  # the zero lies between `best` and `other`
    last = step
    for _ in range(MOST_STEPS):
        if abs(at_other) < abs(at_best):
            before, best, other = best, other, best
            at_before, at_best, at_other = at_best, at_other, at_best
        near, half = 2 * sys.float_info.epsilon * abs(best) + within / 2, (other - best) / 2
        if abs(half) <= near or at_best == 0:
            break
        last, step = _step((before, best, other), (at_before, at_best, at_other), (last, step), near)
        before, at_before = best, at_best
        best += step if abs(step) > near else math.copysign(near, half)
        at_best = float(measure(best, *args))
        if math.isnan(at_best):
            raise ValueError(f"no number at {best}")
        if (at_best > 0) == (at_other > 0):
            other, at_other = before, at_before
            last = step = best - before
    return best


def _step(
    x: tuple[float, float, float], y: tuple[float, float, float], steps: tuple[float, float], near: float
) -> tuple[float, float]:
    """Return the last step and the next one, from the point before, the best one and the one across."""
    (before, best, other), (at_before, at_best, at_other) = x, y
    earlier, last = steps
    half = (other - best) / 2
    if abs(earlier) < near or abs(at_before) <= abs(at_best):
        return half, half
    s = at_best / at_before
    if before == other:
        over, under = 2 * half * s, 1 - s
    else:
        q, r = at_before / at_other, at_best / at_other
        over = s * (2 * half * q * (q - r) - (best - before) * (r - 1))
        under = (q - 1) * (r - 1) * (s - 1)
    over, under = (over, -under) if over > 0 else (-over, under)
    if 2 * over < min(3 * half * under - abs(near * under), abs(earlier * under)):
        return last, over / under
    return half, half
