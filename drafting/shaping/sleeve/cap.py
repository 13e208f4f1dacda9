"""The sleeve cap that fits one armhole, half by half.

From the underarm to the notch each half cap *is* its armhole, laid on it; above the notch one
smooth curve rises to the crown. For a given cap height each half has one width at which it is as
long as its half armhole plus its ease; the height is right when both halves together are as wide
as the sleeve. Frame: sleeve upright, upper-arm line on y = 0, crown at x = 0, front on +x.
"""

from __future__ import annotations

import cmath
import math
from collections.abc import Callable
from dataclasses import dataclass

from drafting.geometry import Path
from drafting.geometry.brent import brent_zero
from drafting.geometry.solve import zero_between
from drafting.ground import tolerances as tol
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.shaping.sleeve.half_cap import WIDE_ROOT, HalfArmhole, half_cap, half_width, upper_length

STEEPEST_SEAM = 40.0
"""degrees: a sleeve seam that leans more is refused (ours)."""

WIDENS = 2.5
"""Seams of a widening sleeve lean out by at most so much of (length below the arm) / width: from 3 on,
more lean makes no wider hem, as its middle sinks (plane geometry)."""

WIDEST_HEM = 2.0
"""A one-piece sleeve's hem over its width at the upper arm: more would lie in folds (ours)."""

SEARCHED = (0.6, 0.5, 0.42, 0.34)
"""Cap heights over armhole depth at which a wide enough sleeve is looked for before `LOWEST`: a cap
lower than its own notches curls, and the sleeve it fits is narrower again."""

LOWEST = 0.25
"""Lowest cap, as a share of the armhole's depth (common practice: a shirt's cap is AH/8 or more)."""


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
            f"no sleeve cap fits: the armhole is {told(armhole)} round",
            value=f"sleeve width {told(width)}",
            reach=f"{told(reach[0])} to {told(reach[1])}",
            turn="a deeper or wider armhole, other upper-arm ease, or gathers bring it in reach",
        )


class CapHalves:
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


def _chord(arc: float, lean: float) -> float:
    """Return the chord (mm) of a hem arc between two seams that lean in by `lean` degrees."""
    half = math.radians(lean)
    return arc * math.sin(half) / half if abs(half) > 1e-9 else arc


def hem_bow(arc: float, lean: float) -> float:
    """Return how far (mm) the middle of a hem arc lies above its ends, its seams leaning in by `lean`
    degrees; minus where the sleeve widens."""
    return _chord(arc, lean) / 2 * math.tan(math.radians(lean) / 2)


def seam_lean(width: float, wrist: float, below: float) -> float:
    """Return how far (degrees) both sleeve seams lean in to a hem arc `wrist` long, whose middle lies
    `below` mm under the upper-arm line.

    Plane geometry of a ring's sector with the half angle e: width e cot e - 2 e below = wrist, by
    Newton's method. Where so short a sleeve cannot reach so wide a hem, the lean of the widest it can.
    """
    below = max(below, 1.0)
    most = math.radians(STEEPEST_SEAM) * 1.5
    widest = max(-WIDENS * below / width, -most)
    lean = min(max((width - wrist) / 2 / below, widest), most)
    for _ in range(20):
        over, slope = _sector(lean, width, below)
        last, lean = lean, min(max(lean - (over - wrist) / slope, widest), most)
        if abs(lean - last) < 1e-14:
            break
    return math.degrees(lean)


def _sector(lean: float, width: float, below: float) -> tuple[float, float]:
    """Return the hem (mm) of a sector with this lean (radians), and what one radian more adds to it."""
    if abs(lean) < 1e-3:  # e cot e = 1 - e2/3
        return width * (1 - lean * lean / 3) - 2 * lean * below, -2 * width * lean / 3 - 2 * below
    cot = 1 / math.tan(lean)
    return width * lean * cot - 2 * lean * below, width * (cot - lean * (1 + cot * cot)) - 2 * below


def _tallest(half: HalfArmhole, low: float, high: float, lean: Callable[[float], float]) -> float:
    """Return the greatest height (mm, `low`..`high`) of a cap that is short enough at some width."""
    wanted = half.target - half.notch

    def spare(height: float, share: float, at: complex | None = None) -> float:
        factor = at or cmath.exp(-1j * math.radians(lean(height)))
        return wanted - upper_length(half, share * half.notch, height, factor)

    factor = cmath.exp(-1j * math.radians(lean(high)))
    if high <= low or any(spare(high, share, factor) > 0 for share in WIDE_ROOT):
        return high
    at_high = {share: spare(high, share, factor) for share in WIDE_ROOT}
    best = low
    for share in sorted(WIDE_ROOT, key=lambda share: -at_high[share]):
        if spare(best, share) > 0:
            best = float(brent_zero(spare, best, high, args=(share,), within=1e-9))
    return best


def fit_cap(
    front: HalfArmhole, back: HalfArmhole, width: float, wrist: float, arm_length: float, more: float = 0.0
) -> Cap:
    """Return the cap for a sleeve `width` wide at the upper arm, `wrist` at the hem (mm).

    Raises `DraftError` with the widths that this armhole can carry where there is none.
    """
    depth = (front.depth + back.depth) / 2

    def lean(height: float) -> float:
        return seam_lean(width, wrist, arm_length - height) + more

    low, halves = LOWEST * depth, CapHalves(front, back)
    high = halves.tallest(low, min(depth, 0.8 * arm_length), lean)
    if high <= low:
        raise DraftError(
            "the sleeve is too short to have a cap",
            value=f"length {told(arm_length)} from the shoulder",
            reach=f"from {told(low / 0.8 + 1, 'least')} up",
            turn="make the sleeve longer, or leave it out",
        )

    def excess(height: float) -> float:
        return halves.width(height, lean(height)) - width

    heights = [share * depth for share in SEARCHED if low < share * depth < high]
    wider = ((h, over) for h in (*heights, low) if (over := excess(h)) >= 0 or h == low)
    start, at_start = next(wider)
    at_high = excess(high)
    widest, narrowest = at_start + width, at_high + width
    if not narrowest <= width <= widest:
        raise CapReachError(front.path.length + back.path.length, width, (narrowest, widest))
    height = zero_between(excess, (start, high), (at_start, at_high), 1e-8)
    at = lean(height)
    _not_too_steep(at, width, wrist, arm_length - height)
    front_width, back_width = halves.widths(height, at)
    got = front_width + back_width
    if abs(got - width) > tol.EXACT:  # the height stands where a half cap gives out
        raise CapReachError(front.path.length + back.path.length, width, (max(got, width + 1.0), widest))
    return Cap(
        front=half_cap(front, front_width, height, at),
        back=half_cap(back, back_width, height, at).mirrored(),
        height=height,
        front_width=front_width,
        back_width=back_width,
        lean=at,
        lift=arm_lift(height, depth),
    )


def _not_too_steep(lean: float, width: float, wrist: float, below: float) -> None:
    """Refuse a sleeve whose seams lean too much over the `below` mm under the arm."""
    corner = max(below + hem_bow(wrist, lean), 1.0)
    drawn = math.degrees(math.atan2(abs(width - _chord(wrist, lean)) / 2, corner))
    if max(abs(lean), drawn) > STEEPEST_SEAM:
        raise DraftError(
            "the sleeve is too short for so wide or so narrow a hem",
            value=f"hem {told(wrist)}, {told(width)} wide, {told(below)} under the arm",
            turn="make the sleeve longer, or its hem nearer to its width",
        )


def fit_widened(
    front: HalfArmhole, back: HalfArmhole, width: float, wrist: float | None, arm_length: float, more: float = 0.0
) -> tuple[Cap, float]:
    """Return the cap, and the sleeve width it is for: as asked, or the least of a thin arm's cap.

    `wrist` None lets the seams hang plumb. Raises `CapReachError` where the sleeve is too wide for
    the armhole.
    """
    for _ in range(12):
        hem = width if wrist is None else min(wrist, WIDEST_HEM * width)
        try:
            return fit_cap(front, back, width, hem, arm_length, more), width
        except CapReachError as out:
            if width >= out.widths[0]:
                raise
            width, last = out.widths[0] + 0.5, out
    raise last


def arm_lift(height: float, depth: float) -> float:
    """Return the angle (degrees from hanging) to which the arm rises before the cap pulls.

    Geometry of a tube cut by the plane of an armhole `depth` deep: cos(lift) = height / depth.
    """
    return math.degrees(math.acos(max(-1.0, min(1.0, height / depth))))
