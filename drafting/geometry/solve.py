"""Find the number that makes a length right, or say in plain words why none does."""

from __future__ import annotations

from collections.abc import Callable

from drafting.geometry.brent import brent_zero
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told

NEAR = 1e-7
"""Of the bounds: a secant step below it leaves an error some thousand times smaller (measured)."""


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
    guess: float | None = None,
) -> float:
    """Return x in `between` for which `measure(x)` is `wanted` (Brent's method).

    Raises `DraftError` naming `what`, the reach and what to `turn` where `wanted` lies outside.

    >>> round(solve(lambda x: x * x, 2.0, (0, 2), what="side of a square"), 9)
    1.414213562
    """
    low, high = between
    if guess is not None:
        near = max(within, NEAR * (high - low))
        found = root_near(lambda x: measure(x) - wanted, guess, between, near)
        if found is not None:
            return found
    at_low, at_high = measure(low), measure(high)
    if at_low == wanted:
        return low
    if at_high == wanted:
        return high
    if (at_low - wanted) * (at_high - wanted) > 0:
        least, most = sorted((at_low, at_high))
        raise DraftError(
            f"no {what} can be found",
            value=f"{told(wanted)} wanted",
            reach=f"{told(least)} to {told(most)}",
            turn=turn,
        )
    return zero_between(lambda x: measure(x) - wanted, between, (at_low - wanted, at_high - wanted), within)


def zero_between(
    measure: Callable[[float], float], between: tuple[float, float], at: tuple[float, float], within: float
) -> float:
    """Return where `measure` is 0 between two bounds `at` which it has values of either sign.

    Secant steps from where the chord is 0; Brent's method where these do not settle.
    """
    low, high = between
    way = 1.0 if at[1] > at[0] else -1.0
    guess = low - at[0] * (high - low) / (at[1] - at[0])
    found = root_near(lambda x: way * measure(x), guess, between, max(within, NEAR * (high - low)))
    return float(brent_zero(measure, low, high, within=within)) if found is None else found
