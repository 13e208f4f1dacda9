"""One cross-section of the body: a rounded oblong whose girth is the one that was measured.

|x / a| ** n + |y / b| ** n = 1, half width a, half depth b. n = 2 is an ellipse, which limbs come
near; a trunk is squarer (medians of 3,034 adults of ANSUR II, Gordon et al. 2014: the breadth is
.349 of the waist girth and .342 of the hip girth, and with the depth measured there n is 2.8 and
3.5).
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from scipy.optimize import brentq

TRUNK = 2.8
LIMB = 2.0
ROUNDEST, SQUAREST = 1.8, 3.8
"""The powers that a trunk's section is given (ours)."""
STEPS = 512
"""Chords to a quarter: the girth is then right to 1e-5 of itself."""

_T = np.linspace(0.0, math.pi / 2, STEPS + 1)
_COS, _SIN = np.clip(np.cos(_T), 0.0, 1.0), np.clip(np.sin(_T), 0.0, 1.0)


@dataclass(frozen=True, slots=True)
class Section:
    """A level section `width` by `depth` mm; `power` is n."""

    width: float
    depth: float
    power: float

    @property
    def girth(self) -> float:
        """Its length all round, mm."""
        return self.width * _round(self.depth / self.width, self.power)


def section(girth: float, share: float, power: float = LIMB) -> Section:
    """Return the section of `girth` mm whose width is `share` of it; the depth follows.

    A share of .30 to .35 suits a body; from .49 on there is no depth left.
    """
    return Section(share * girth, share * girth * _depth_to_width(share, power), power)


def section_like(girth: float, width: float, depth: float) -> Section:
    """Return the section of `girth` mm nearest to `width` by `depth`: how square it is gives way first."""
    low, high = ROUNDEST, SQUAREST
    for _ in range(24):
        power = (low + high) / 2
        low, high = (power, high) if width * _round(depth / width, power) < girth else (low, power)
    grown = girth / (width * _round(depth / width, power))
    return Section(width * grown, depth * grown, power)


def section_deep(girth: float, depth: float, power: float = TRUNK) -> Section:
    """Return the section of `girth` mm that is `depth` deep; the width follows."""
    found = brentq(lambda width: width * _round(depth / width, power) - girth, 0.01 * girth, 0.5 * girth)
    return Section(float(found), depth, power)


@lru_cache(maxsize=512)
def _depth_to_width(share: float, power: float) -> float:
    return float(brentq(lambda ratio: share * _round(ratio, power) - 1.0, 1e-4, 10.0, xtol=1e-12))


def _round(ratio: float, power: float) -> float:
    """Return the girth of a section 1 wide and `ratio` deep."""
    x, y = _COS ** (2 / power), ratio * _SIN ** (2 / power)
    return float(2 * np.hypot(np.diff(x), np.diff(y)).sum())
