"""The armhole: from the shoulder point through the across point to the underarm.

It leaves square to the shoulder (90 + 90 joined) and arrives square to the side seam, so that the
joined armhole is smooth at both ends. Above the across point it is a straight and one bend, below
it one scoop whose fullness is solved (`scoop`). It never changes the way it bends: for that it must
leave with more lean than the chord from shoulder point to across point has (`across` makes room).
"""

from __future__ import annotations

import cmath
import math
from dataclasses import dataclass

from drafting.geometry import Cubic, Line, Path, smooth, turn
from drafting.geometry.curve import Segment
from drafting.shaping.torso.neckline import FRONT_WIDTH
from drafting.shaping.torso.plan import TorsoPlan

MARGIN = 3.0
"""degrees of lean that the armhole keeps over its chord (ours)."""

OUTWARDS, MOST_OUTWARDS, INWARDS = 5.5, 12.0, 6.0
"""degrees: how far the armhole may head outwards or inwards of straight down at the across point; outwards
more where that lies outside the shoulder point, inwards by at most half its lean there (ours, by eye)."""

OUTWARDS_PER_MM = 0.8
"""degrees more for each mm that the across point lies outside the shoulder point."""

EVEN = 1.4
"""The bend above the across point has tangents at most so unequal; the rest of the longer is straight."""

UNSEEN = 0.05
"""mm: a straight shorter than this is left out."""


@dataclass(frozen=True)
class ArmholePoints:
    """The points of one half armhole: side neck, shoulder point, across point, underarm."""

    side_neck: complex
    shoulder: complex
    across: complex
    underarm: complex

    @property
    def lean(self) -> float:
        """Lean of the chord from across point to shoulder point, degrees outwards from upright."""
        return math.degrees(cmath.phase((self.shoulder - self.across) / 1j) * -1)

    @property
    def outside(self) -> float:
        """How far (mm) the across point lies outside the shoulder point; negative inside."""
        return self.across.real - self.shoulder.real


BothArmholePoints = tuple[ArmholePoints, ArmholePoints]


@dataclass(frozen=True)
class ArmholeEnds:
    """Side neck points and underarm points, back and front, between which both armholes lie."""

    back_neck: complex
    front_neck: complex
    back_under: complex
    front_under: complex


def armhole_ends(plan: TorsoPlan, back_under: complex, front_under: complex) -> ArmholeEnds:
    """Return these ends; the front's underarm, given flat, turns away as the bust dart opens."""
    opened = plan.bust_point + (front_under - plan.bust_point) * turn(plan.kappa)
    front_neck = complex(FRONT_WIDTH * plan.neck.width, plan.front_neck)
    return ArmholeEnds(plan.neck.back.end, front_neck, back_under, opened)


def shoulder_point(side_neck: complex, slope: float, length: float) -> complex:
    """Return the shoulder point `length` mm along a shoulder that falls by `slope` degrees."""
    return side_neck + length * turn(-slope)


def armhole_points(
    side_neck: complex, slope: float, length: float, across: float, underarm: complex
) -> ArmholePoints:
    """Return the armhole's points; the across point lies at half the armhole's height."""
    tip = shoulder_point(side_neck, slope, length)
    return ArmholePoints(side_neck, tip, complex(across, (tip.imag + underarm.imag) / 2), underarm)


def both_armhole_points(plan: TorsoPlan, ends: ArmholeEnds, shoulder_ease: float) -> BothArmholePoints:
    """Return the points of back and front armhole, the back's shoulder longer by `shoulder_ease`."""
    slopes, length = plan.shoulder, plan.shoulder.length
    return (
        armhole_points(
            ends.back_neck, slopes.slope_back, length + shoulder_ease, plan.across_back, ends.back_under
        ),
        armhole_points(ends.front_neck, slopes.slope_front, length, plan.across_front, ends.front_under),
    )


def armhole_leans(plan: TorsoPlan, back: ArmholePoints, front: ArmholePoints) -> tuple[float, float]:
    """Return the leans with which back and front armhole leave; their sum keeps the seam smooth.

    Square to both shoulders where the chords allow it, else one borrows from the other.
    """
    sum_of_slopes = plan.shoulder.slope_back + plan.shoulder.slope_front
    need_back, need_front = back.lean + MARGIN, front.lean + MARGIN
    lean = max(plan.shoulder.slope_back, need_back)
    lean = min(lean, max(sum_of_slopes - need_front, need_back))
    return lean, sum_of_slopes - lean


def heading(at: ArmholePoints, lean: float) -> float:
    """Return how far outwards of straight down the armhole heads at the across point, degrees."""
    down = at.shoulder - at.across
    even = lean - math.degrees(2 * -at.outside / max(down.imag, 1.0))
    most = min(MOST_OUTWARDS, OUTWARDS + OUTWARDS_PER_MM * max(0.0, at.outside))
    return min(most, max(-INWARDS, -0.5 * lean, even))


def tangents(a: complex, leave: complex, b: complex, arrive: complex) -> tuple[float, float]:
    """Return how far (mm) it is from `a` along `leave`, and to `b` along `arrive`, where these meet.

    Not above 0 where they meet behind one of the two; infinite where they run parallel.
    """
    cross = (leave.conjugate() * arrive).imag
    if abs(cross) < 1e-9:
        return math.inf, math.inf
    run = b - a
    return (run.conjugate() * arrive).imag / cross, (leave.conjugate() * run).imag / cross


def upper_part(at: ArmholePoints, lean: float) -> tuple[Segment, ...]:
    """Return the armhole from the shoulder point to the across point: a straight and a round bend."""
    return straight_and_bend(at.shoulder, turn(-90 - lean), at.across, turn(-90 + heading(at, lean)))


def straight_and_bend(start: complex, leave: complex, end: complex, arrive: complex) -> tuple[Segment, ...]:
    """Return a bend between two directions whose tangents are nearly even, and a straight that fills up.

    Where the tangents do not meet between the two ends it is one plain curve that bends both ways.
    """
    first, second = tangents(start, leave, end, arrive)
    if not 0 < min(first, second) < math.inf:
        return (smooth(start, end, leave, arrive),)
    a, b = start, end
    if first > EVEN * second + UNSEEN:
        a += leave * (first - EVEN * second)
        first = EVEN * second
    elif second > EVEN * first + UNSEEN:
        b -= arrive * (second - EVEN * first)
        second = EVEN * first
    share = _arc_handle(abs(cmath.phase(arrive / leave)))
    bend = Cubic(a, a + share * first * leave, b - share * second * arrive, b)
    before = (Line(start, a),) if a != start else ()
    after = (Line(b, end),) if b != end else ()
    return (*before, bend, *after)


def _arc_handle(bend: float) -> float:
    """Return a round arc's handle over its tangent length, for a turn of `bend` radians.

    An arc's handle is 4/3 tan(bend/4) radii long and its tangent tan(bend/2) (elementary geometry).
    """
    return 4 / 3 * math.tan(bend / 4) / math.tan(bend / 2) if bend > 1e-6 else 2 / 3


def armhole(at: ArmholePoints, lean: float, scoop: Cubic) -> Path:
    """Return the half armhole from shoulder point to underarm; its last segment is the scoop."""
    return Path((*upper_part(at, lean), scoop))
