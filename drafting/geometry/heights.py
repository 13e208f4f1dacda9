"""Where a curve that runs steadily up or down reaches a height. mm."""

from __future__ import annotations

from drafting.geometry import Cubic


def x_at(curve: Cubic, y: float) -> float:
    """Return the x at which a curve that runs up or down reaches the height `y` (its end's beyond)."""
    return curve.point(t_at(curve, y)).real


def t_at(curve: Cubic, y: float) -> float:
    """Return the parameter (0..1) at which a curve that runs up or down reaches the height `y`."""
    low, high = curve.a.imag, curve.d.imag
    if abs(high - low) < 1e-9:
        return 0.0
    t = min(max((y - low) / (high - low), 0.0), 1.0)
    for _ in range(20):
        miss = curve.point(t).imag - y
        speed = curve.velocity(t).imag
        if abs(miss) < 1e-10 or abs(speed) < 1e-9:
            break
        t = min(max(t - miss / speed, 0.0), 1.0)
    return t
