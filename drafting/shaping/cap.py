"""The sleeve cap that fits one armhole, half by half.

From the underarm to the notch each half cap *is* its armhole, laid on it; above the notch one
smooth curve rises to the crown. For a given cap height each half has one width at which it is as
long as its half armhole plus its ease; the height is right when both halves together are as wide
as the sleeve. Frame: sleeve upright, upper-arm line on y = 0, crown at x = 0, side +x.

The copied stretch ends at 65 mm, or where the armhole has turned 62 degrees, whichever is first
(chosen by trial on measured bodies: a longer copy of a hooked armhole makes a box-shaped cap).
"""

from __future__ import annotations

import cmath
import math
from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property

from scipy.optimize import brentq

from drafting import tolerances as tol
from drafting.errors import DraftError
from drafting.geometry import Cubic, Path, smooth
from drafting.geometry.solve import root_near

NOTCH_AT = 65.0
"""mm at adult scale: where the notch stands along the seam from the underarm."""

NOTCH_TURN = 62.0
"""degrees: the armhole may turn so far before the notch."""

SEARCHED = (0.6, 0.5, 0.42, 0.34)
"""Cap heights over armhole depth at which a wide enough sleeve is looked for before `LOWEST`: a cap
lower than its own notches curls, and the sleeve it fits is narrower again."""

STRAIGHT = 1.3
"""How much longer the cap's handle above the notch is, so that it leaves the notch straighter."""

LOWEST = 0.25
"""Lowest cap, as a share of the armhole's depth (row W24: a shirt's cap is AH/8 or more)."""

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
        return min(most, first.split(brentq(turned, 1e-9, 1.0, xtol=1e-9))[0].length)

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


def _upper_length(half: HalfArmhole, width: float, height: float, factor: complex) -> float:
    copy = half.copy
    return smooth(
        width + copy.end * factor, complex(0, height), copy.arrive * factor, -1 + 0j, STRAIGHT,
        may_wave=True,
    ).length  # fmt: skip


def half_width(half: HalfArmhole, height: float, lean: float, near: float | None = None) -> float:
    """Return the width (mm) at which the half cap is exactly as long as its armhole plus ease.

    The wide root is taken: a too narrow half would make the cap curl and grow again. Where the cap
    is too tall for this half at any width, the least width is returned. `near` is the width at
    another height, to be looked about first.
    """
    factor = cmath.exp(-1j * math.radians(lean))
    wanted = half.target - half.notch

    def excess(width: float) -> float:
        return _upper_length(half, width, height, factor) - wanted

    widest = half.target * 1.05
    if near is not None:
        found = root_near(excess, near, (half.notch, widest), 1e-7)
        if found is not None:
            return found
    widths = (share * half.notch for share in WIDE_ROOT)
    low = next((w for w in widths if excess(w) < 0), None)
    return half.notch if low is None else float(brentq(excess, low, widest, xtol=1e-8))


@dataclass(frozen=True)
class Cap:
    """A fitted cap: both halves from underarm to crown (front on +x, back on -x), mm, degrees."""

    front: Path
    back: Path
    height: float
    front_width: float
    back_width: float
    lean: float
    lift: float


class CapReachError(DraftError):
    """No cap of this armhole is as wide as the sleeve; `reach` holds the widths (mm) that are."""

    def __init__(self, armhole: float, width: float, reach: tuple[float, float]) -> None:
        self.widths = reach
        super().__init__(
            f"no sleeve cap fits: the armhole is {armhole:.0f} mm round",
            value=f"sleeve width {width:.0f} mm",
            reach=f"{reach[0]:.0f} to {reach[1]:.0f} mm",
            turn="a deeper or wider armhole, other upper-arm ease, or gathers bring it in reach",
        )


class Halves:
    """Both halves of one armhole, and how wide each half cap was when last asked.

    A solver asks for many heights in turn, and each answer tells where the next one lies.
    """

    def __init__(self, front: HalfArmhole, back: HalfArmhole) -> None:
        self.front, self.back = front, back
        self.last: tuple[float | None, float | None] = (None, None)

    def widths(self, height: float, lean: float) -> tuple[float, float]:
        """Return the widths (mm) of front and back half cap."""
        found = (
            half_width(self.front, height, lean, self.last[0]),
            half_width(self.back, height, lean, self.last[1]),
        )
        self.last = found
        return found

    def width(self, height: float, lean: float) -> float:
        """Return the sleeve width (mm) that a cap of this height fits."""
        return sum(self.widths(height, lean))

    def tallest(self, low: float, high: float, lean: Callable[[float], float]) -> float:
        """Return the greatest height (mm, `low`..`high`) at which both halves are long enough."""
        for half in (self.front, self.back):
            high = _tallest(half, low, high, lean)
        return high


def width_at(front: HalfArmhole, back: HalfArmhole, height: float, lean: float) -> float:
    """Return the sleeve width (mm) that a cap of this height fits."""
    return Halves(front, back).width(height, lean)


def seam_lean(width: float, wrist: float, below: float) -> float:
    """Return how far (degrees) both sleeve seams lean in over `below` mm to a hem arc `wrist` long.

    The hem is square to both seams, so its chord is shorter than its arc: a few steps settle it.
    """
    lean = 0.0
    for _ in range(12):
        chord = wrist * math.sin(lean) / lean if abs(lean) > 1e-9 else wrist
        last, lean = lean, math.atan((width - chord) / 2 / max(below, 1.0))
        if abs(lean - last) < 1e-14:
            break
    return math.degrees(lean)


def _tallest(half: HalfArmhole, low: float, high: float, lean: Callable[[float], float]) -> float:
    """Return the greatest height (mm, `low`..`high`) of a cap that is short enough at some width."""
    wanted = half.target - half.notch

    def spare(height: float, share: float, at: complex | None = None) -> float:
        factor = at or cmath.exp(-1j * math.radians(lean(height)))
        return wanted - _upper_length(half, share * half.notch, height, factor)

    factor = cmath.exp(-1j * math.radians(lean(high)))
    at_high = {share: spare(high, share, factor) for share in WIDE_ROOT}
    if high <= low or max(at_high.values()) > 0:
        return high
    best = low
    for share in sorted(WIDE_ROOT, key=lambda share: -at_high[share]):
        if spare(best, share) > 0:
            best = float(brentq(spare, best, high, args=(share,), xtol=1e-9))
    return best


def fit_cap(
    front: HalfArmhole, back: HalfArmhole, width: float, wrist: float, arm_length: float
) -> Cap:
    """Return the cap for a sleeve `width` wide at the upper arm, `wrist` at the hem (mm).

    Raises `DraftError` with the widths that this armhole can carry where there is none.
    """
    depth = (front.depth + back.depth) / 2

    def lean(height: float) -> float:
        return seam_lean(width, wrist, arm_length - height)

    low, halves = LOWEST * depth, Halves(front, back)
    high = halves.tallest(low, min(depth, 0.8 * arm_length), lean)
    if high <= low:
        raise DraftError(
            "the sleeve is too short to have a cap",
            value=f"length {arm_length:.0f} mm from the shoulder",
            reach=f"from {low / 0.8 + 1:.0f} mm up", turn="make the sleeve longer, or leave it out",
        )  # fmt: skip

    def excess(height: float) -> float:
        return halves.width(height, lean(height)) - width

    heights = [share * depth for share in SEARCHED if low < share * depth < high]
    start = next((h for h in (*heights, low) if excess(h) >= 0), low)
    widest, narrowest = excess(start) + width, excess(high) + width
    if not narrowest <= width <= widest:
        raise CapReachError(front.path.length + back.path.length, width, (narrowest, widest))
    height = float(brentq(excess, start, high, xtol=1e-8))
    at = lean(height)
    front_width, back_width = halves.widths(height, at)
    got = front_width + back_width
    if abs(got - width) > tol.EXACT:  # the height stands where a half cap gives out
        raise CapReachError(
            front.path.length + back.path.length, width, (max(got, width + 1.0), widest)
        )
    return Cap(
        half_cap(front, front_width, height, at),
        half_cap(back, back_width, height, at).mirrored(),
        height, front_width, back_width, at, arm_lift(height, depth),
    )  # fmt: skip


def fit_widened(
    front: HalfArmhole, back: HalfArmhole, width: float, wrist: float, arm_length: float
) -> tuple[Cap, float]:
    """Return the cap, and the sleeve width it is for: as asked, or the least of a thin arm's cap.

    Raises `CapReachError` where the sleeve is too wide for the armhole.
    """
    for _ in range(6):
        try:
            return fit_cap(front, back, width, min(wrist, 1.5 * width), arm_length), width
        except CapReachError as out:
            if width >= out.widths[0]:
                raise
            width = out.widths[0] + 0.5
    return fit_cap(front, back, width, min(wrist, 1.5 * width), arm_length), width


def least_width(
    front: HalfArmhole, back: HalfArmhole, wanted: float, wrist: float, arm_length: float
) -> float:
    """Return the width (mm) of the tallest well shaped cap: the least that this armhole can carry."""
    depth = (front.depth + back.depth) / 2
    least, halves = wanted, Halves(front, back)
    for _ in range(4):  # the seams' lean depends a little on the width

        def lean(height: float, width: float = least) -> float:
            return seam_lean(width, min(wrist, 1.5 * width), arm_length - height)

        top = min(0.97 * depth, 0.78 * arm_length)
        height = halves.tallest(LOWEST * depth, top, lean)
        least = halves.width(height, lean(height))
    return least


def arm_lift(height: float, depth: float) -> float:
    """Return the angle (degrees from hanging) to which the arm rises before the cap pulls.

    Geometry of a tube cut by the plane of an armhole `depth` deep: cos(lift) = height / depth.
    """
    return math.degrees(math.acos(max(-1.0, min(1.0, height / depth))))
