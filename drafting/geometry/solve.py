"""Find the number that makes a length right, or say in plain words why none does."""

from __future__ import annotations

from collections.abc import Callable

from scipy.optimize import brentq

from drafting.errors import DraftError


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
