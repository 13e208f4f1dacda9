"""An arc of a circle as cubics."""

from __future__ import annotations

import cmath
import math
from itertools import pairwise

from drafting.geometry.curve import Cubic
from drafting.geometry.path import Path

STEP = 45.0
"""degrees: one cubic turns no more (it leaves the circle by less than 5e-6 of the radius)."""


def arc(centre: complex, start: complex, angle: float) -> Path:
    """Return the arc from `start` round `centre` by `angle` degrees (anticlockwise positive), in mm.

    >>> round(arc(0j, 100 + 0j, 90).length, 2)  # a quarter of 2 pi 100
    157.08
    """
    parts = max(1, math.ceil(abs(angle) / STEP))
    step = cmath.exp(1j * math.radians(angle / parts))
    handle = 4 / 3 * math.tan(math.radians(angle / parts) / 4)
    rays = [(start - centre) * step**k for k in range(parts + 1)]
    cubics = (
        Cubic(centre + a, centre + a + 1j * a * handle, centre + b - 1j * b * handle, centre + b)
        for a, b in pairwise(rays)
    )
    return Path(tuple(cubics))
