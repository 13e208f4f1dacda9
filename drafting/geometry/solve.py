"""Find the number that makes a length right, or say in plain words why none does."""

from __future__ import annotations

from collections.abc import Callable

from scipy.optimize import brentq

from drafting.errors import DraftError


def root_near(
    measure: Callable[[float], float], guess: float, between: tuple[float, float], within: float
) -> float | None:
    """Return the x near `guess` at which the rising `measure(x)` is 0, or None.

    Secant steps, a third of what Brent's method takes from afar. None where they leave `between`,
    do not settle in a few steps, or settle where `measure` falls.
    """
    low, high = between
    step = 1e-3 * (high - low)
    last = min(max(guess, low + step), high - step)
    x, at_last = last - step, measure(last)
    for _ in range(8):
        at = measure(x)
        slope = (at - at_last) / (x - last)
        if not slope > 0:
            return None
        last, at_last = x, at
        x -= at / slope
        if not low < x < high:
            return None
        if abs(x - last) < within:
            return x
    return None


def solve(
    measure: Callable[[float], float],
    wanted: float,
    between: tuple[float, float],
    *,
    what: str,
    turn: str = "",
    within: float = 1e-9,
) -> float:
    """Return x in `between` for which `measure(x)` is `wanted` (Brent's method, scipy).

    Raises `DraftError` naming `what`, the reach and what to `turn` where `wanted` lies outside.

    >>> round(solve(lambda x: x * x, 2.0, (0, 2), what="side of a square"), 9)
    1.414213562
    """
    low, high = between
    at_low, at_high = measure(low), measure(high)
    if at_low == wanted:
        return low
    if at_high == wanted:
        return high
    if (at_low - wanted) * (at_high - wanted) > 0:
        least, most = sorted((at_low, at_high))
        raise DraftError(
            f"no {what} can be found",
            value=f"{wanted:.0f} mm wanted",
            reach=f"{least:.0f} to {most:.0f} mm",
            turn=turn,
        )
    return float(brentq(lambda x: measure(x) - wanted, low, high, xtol=within))
