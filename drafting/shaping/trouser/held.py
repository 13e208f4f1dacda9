"""Whether the body below holds a garment up by its waist."""

from __future__ import annotations

HOLDS = 1.01
"""The body's greatest girth below / the garment's waist above which it stays up (ours)."""


def stays_up(waist: float, widest: float) -> bool:
    """Return whether a garment `waist` mm round stays up on a body that is `widest` mm round below it.

    >>> stays_up(800.0, 980.0), stays_up(1336.0, 1220.0)
    (True, False)
    """
    return widest > HOLDS * waist
