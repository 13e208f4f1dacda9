"""One half of a sleeve cap: a copy of its armhole up to the notch, one smooth curve to the crown.

Frame: sleeve upright, upper-arm line on y = 0, crown at x = 0, side +x. The copied stretch ends at
65 mm, or where the armhole has turned 62 degrees, whichever is first (chosen by trial on measured
bodies: a longer copy of a hooked armhole makes a box-shaped cap).
"""

from __future__ import annotations

import cmath
import math
from dataclasses import dataclass
from functools import cached_property

from drafting.geometry import Cubic, Path, smooth
from drafting.geometry.brent import brent_zero
from drafting.geometry.solve import root_near

NOTCH_AT = 65.0
"""mm at adult scale: where the notch stands along the seam from the underarm."""

NOTCH_TURN = 62.0
"""degrees: the armhole may turn so far before the notch."""

STRAIGHT = 1.3
"""How much longer the cap's handle above the notch is, so that it leaves the notch straighter."""

WIDE_ROOT = (1.0, 1.3, 1.6, 2.0, 2.5, 3.0)


@dataclass(frozen=True)
class HalfArmhole:
    """One half armhole as a path from the underarm to the shoulder point, side seam downwards.

    `ease` (mm) is what the half cap is longer; the first `notch` mm are copied.
    """

    path: Path
    ease: float
    scale: float

    @cached_property
    def target(self) -> float:
        return self.path.length + self.ease

    @cached_property
    def depth(self) -> float:
        """Height of the shoulder point above the underarm, square to the underarm tangent, mm."""
        across = (self.path.end - self.path.start) / self.path.leave
        return abs(across.imag)

    @cached_property
    def notch(self) -> float:
        """mm from the underarm to the notch."""
        most = min(NOTCH_AT * self.scale, 0.36 * self.path.length)
        first = self.path.segments[0]
        if not isinstance(first, Cubic):
            return most
        start, limit = first.tangent(0), math.radians(NOTCH_TURN)

        def turned(t: float) -> float:
            return abs(cmath.phase(first.tangent(t) / start)) - limit

        if turned(1.0) <= 0:
            return min(most, first.length)
        return min(most, first.split(brent_zero(turned, 1e-9, 1.0, within=1e-9))[0].length)

    @cached_property
    def copy(self) -> Path:
        """The stretch up to the notch, moved to start at 0 and leave along -x, cloth below."""
        part = self.path.split(self.notch)[0]
        turned = part.mapped(lambda p: -(p - part.start) / self.path.leave)
        rises = turned.end.imag > 0
        return turned if rises else turned.mapped(lambda p: p.conjugate())


def half_cap(half: HalfArmhole, width: float, height: float, lean: float) -> Path:
    """Return the half cap from the underarm (width, 0) to the crown (0, height).

    `lean` (degrees) is how far the sleeve seam leans in; the cap starts square to it.
    """
    turned = half.copy.mapped(lambda p: width + p * cmath.exp(-1j * math.radians(lean)))
    upper = smooth(turned.end, complex(0, height), turned.arrive, -1 + 0j, STRAIGHT, may_wave=True)
    return Path((*turned.segments, upper))


def upper_length(half: HalfArmhole, width: float, height: float, factor: complex) -> float:
    """Return how long (mm) the curve above the notch is; `factor` turns the copy by the lean."""
    copy = half.copy
    return smooth(
        width + copy.end * factor, complex(0, height), copy.arrive * factor, -1 + 0j, STRAIGHT, may_wave=True
    ).length


def half_width(half: HalfArmhole, height: float, lean: float, near: float | None = None) -> float:
    """Return the width (mm) at which the half cap is exactly as long as its armhole plus ease.

    The wide root is taken: a too narrow half would make the cap curl and grow again. Where the cap
    is too tall for this half at any width, the least width is returned. `near` is the width at
    another height, to be looked about first.
    """
    factor = cmath.exp(-1j * math.radians(lean))
    wanted = half.target - half.notch

    def excess(width: float) -> float:
        return upper_length(half, width, height, factor) - wanted

    widest = half.target * 1.05
    if near is not None:
        found = root_near(excess, near, (half.notch, widest), 1e-7)
        if found is not None:
            return found
    widths = (share * half.notch for share in WIDE_ROOT)
    low = next((w for w in widths if excess(w) < 0), None)
    return half.notch if low is None else float(brent_zero(excess, low, widest, within=1e-8))
