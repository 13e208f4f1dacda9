"""The armhole: from the shoulder point through the across point to the underarm.

It leaves square to the shoulder (90 + 90 joined) and arrives square to the side seam, so that the
joined armhole is smooth at both ends. It never changes the way it bends: for that it must leave
with more lean than the chord from shoulder point to across point has. Where a shoulder is long and
flat and the across width narrow, the named rules of `settle_shoulder` make room.
"""

from __future__ import annotations

import cmath
import math
from dataclasses import dataclass, replace

from scipy.optimize import brentq

from drafting.geometry import Path, smooth, turn, unit
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding
from drafting.shaping.torso.neckline import FRONT_WIDTH
from drafting.shaping.torso.plan import Shoulder, TorsoPlan

MARGIN = 3.0
"""degrees of lean that the armhole keeps over its chord (ours)."""

UPRIGHT = (0.12, 0.80)
"""Least and greatest share of the turn between the two chords that is done at the across point."""

EVEN = 0.28
"""Least turn from the upper chord to the across point over the turn at the shoulder point: a sloped
shoulder leaves with much lean, and without this would turn sharply just below its tip (ours)."""

HOLLOW = 0.06
"""How far the across point keeps inside the straight line from shoulder point to underarm, as a
share of the armhole's height: less would make the armhole bulge (ours)."""

GROW = 15.0
"""mm at adult scale: how far each half across width may grow for a long flat shoulder (ours)."""


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


def armhole(at: ArmholePoints, lean: float, arrive: complex) -> Path:
    """Return the half armhole from shoulder point to underarm, leaving with `lean` degrees.

    It passes the across point as nearly upright as its two chords allow: there the piece is
    narrowest, and below it the curve is as round as a hollow of the arm.
    """
    leave = turn(-90 - lean)
    first, second = unit(at.across - at.shoulder), unit(at.underarm - at.across)
    bend = cmath.phase(second / first)
    share = cmath.phase(-1j / first) / bend if abs(bend) > 1e-9 else 0.5
    early = EVEN * abs(cmath.phase(first / leave)) / abs(bend) if abs(bend) > 1e-9 else 0.0
    share = min(UPRIGHT[1], max(UPRIGHT[0], share, min(0.5, early)))
    heading = first * cmath.exp(1j * bend * share)
    return Path((smooth(at.shoulder, at.across, leave, heading), smooth(at.across, at.underarm, heading, arrive)))


def armhole_leans(plan: TorsoPlan, back: ArmholePoints, front: ArmholePoints) -> tuple[float, float]:
    """Return the leans with which back and front armhole leave; their sum keeps the seam smooth.

    Square to both shoulders where the chords allow it, else one borrows from the other.
    """
    sum_of_slopes = plan.shoulder.slope_back + plan.shoulder.slope_front
    need_back, need_front = back.lean + MARGIN, front.lean + MARGIN
    lean = max(plan.shoulder.slope_back, need_back)
    lean = min(lean, max(sum_of_slopes - need_front, need_back))
    return lean, sum_of_slopes - lean


def settle_shoulder(
    plan: TorsoPlan, ends: ArmholeEnds, shoulder_ease: float, front_is_measured: bool
) -> TorsoPlan:
    """Return the plan with room for the armhole under a long flat shoulder.

    Wide across widths give way first where the armhole would bulge under a short shoulder. Then, in
    this order: an estimated across front grows to the across back; both across widths grow by
    up to 15 mm a half; the shoulder is drafted shorter. Each step says so in a finding.
    """
    plan = _hollowed(plan, ends, shoulder_ease)

    def spare(amount: float) -> float:
        trial = _given_way(plan, amount, front_is_measured)
        back, front = both_armhole_points(trial, ends, shoulder_ease)
        slopes = trial.shoulder.slope_back + trial.shoulder.slope_front
        return slopes - back.lean - front.lean - 2 * MARGIN

    if spare(0.0) >= 0:
        return plan
    if spare(3.0) < 0:
        raise DraftError(
            "no armhole can be drawn under this shoulder",
            value=f"shoulder {plan.shoulder.length:.0f} mm, across back {2 * plan.across_back:.0f} mm, "
            f"across front {2 * plan.across_front:.0f} mm",
            turn="measure shoulder length, shoulder drop and across widths again",
        )
    settled = _given_way(plan, float(brentq(spare, 0.0, 3.0, xtol=1e-9)), front_is_measured)
    return replace(settled, findings=(*plan.findings, *_say(plan, settled)))


def _hollowed(plan: TorsoPlan, ends: ArmholeEnds, shoulder_ease: float) -> TorsoPlan:
    """Return the plan with both across points inside the line from shoulder point to underarm."""

    def most(at: ArmholePoints) -> float:
        tip, under = at.shoulder, at.underarm
        return (tip.real + under.real) / 2 - HOLLOW * (tip.imag - under.imag)

    back, front = both_armhole_points(plan, ends, shoulder_ease)
    now = replace(
        plan, across_back=min(plan.across_back, most(back)), across_front=min(plan.across_front, most(front))
    )
    less = max(plan.across_back - now.across_back, plan.across_front - now.across_front)
    if less <= 0.02:
        return now
    return replace(
        now,
        findings=(
            *plan.findings,
            Finding(
                "across",
                "warning",
                "bodice",
                2 * now.across_back,
                2 * plan.across_back,
                f"Across back {2 * plan.across_back:.0f} to {2 * now.across_back:.0f} mm, across front "
                f"{2 * plan.across_front:.0f} to {2 * now.across_front:.0f} mm: the widths across are great "
                "for this shoulder, and the armhole may not bulge. Measure shoulder length and across back "
                "again.",
            ),
        ),
    )


def _given_way(plan: TorsoPlan, amount: float, front_is_measured: bool) -> TorsoPlan:
    first, second, third = (min(1.0, max(0.0, amount - step)) for step in (0.0, 1.0, 2.0))
    front, back = plan.across_front, plan.across_back
    room = max(0.0, 0.88 * plan.half - back - front)
    lift = 0.0 if front_is_measured else min(max(0.0, back - front), room)
    grow = min(GROW * plan.scale, (room - lift) / 2)
    shoulder = plan.shoulder
    return replace(
        plan,
        across_front=front + lift * first + grow * second,
        across_back=back + grow * second,
        shoulder=Shoulder(shoulder.slope_back, shoulder.slope_front, shoulder.length * (1 - 0.5 * third)),
    )


def _say(was: TorsoPlan, now: TorsoPlan) -> tuple[Finding, ...]:
    found = []
    if now.across_front > was.across_front + 0.02 or now.across_back > was.across_back + 0.02:
        found.append(
            Finding(
                "across",
                "note",
                "bodice",
                2 * now.across_front,
                2 * was.across_front,
                f"Across back {2 * was.across_back:.0f} to {2 * now.across_back:.0f} mm, across front "
                f"{2 * was.across_front:.0f} to {2 * now.across_front:.0f} mm: the shoulder is long and "
                "flat for the widths across, and the armhole has to stay smooth.",
            )
        )
    lost = was.shoulder.length - now.shoulder.length
    if lost > 0.05:
        found.append(
            Finding(
                "shoulder",
                "warning",
                "bodice",
                now.shoulder.length,
                was.shoulder.length,
                f"The shoulder is drafted {lost:.0f} mm shorter ({now.shoulder.length:.0f} of "
                f"{was.shoulder.length:.0f} mm), as the widths across are narrow for it. Measure "
                "shoulder length, shoulder drop and across back again.",
            )
        )
    return tuple(found)
