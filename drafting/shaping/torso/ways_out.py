"""The ways out where shoulder, widths across and arm conflict, each as a plan that has taken it."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import cache

from drafting.geometry import turn
from drafting.geometry.brent import brent_zero
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.shaping.torso.armhole import (
    MARGIN,
    ArmholeEnds,
    ArmholePoints,
    BothArmholePoints,
    armhole_leans,
    both_armhole_points,
    heading,
    tangents,
)
from drafting.shaping.torso.plan import TorsoPlan
from drafting.shaping.torso.scoop import BACK_RADIUS, FRONT_RADIUS, ScoopLine, radii, scoop_line, scoops

ARM_SHARE = 0.28
"""Width of the whole armhole near its bottom over the hanging upper arm (ours)."""

LEAST_FRONT = 0.86
"""An estimated across front goes down to this share of the across back (ours)."""

NARROWER = 12.0
"""mm at adult scale: how much an estimated half across front gives way to a thick arm (ours)."""

CUT = 25.0
"""mm at adult scale: how far a half width across is cut where no scoop is round enough (ours)."""

LONGER, OUTSIDE = 10.0, 10.0
"""mm at adult scale: how much longer the shoulder, how far outside the across point (ours)."""

GROW = 15.0
"""mm at adult scale: how far each half across width may grow for a long flat shoulder (ours)."""

SCOOP = 45.0
"""mm at adult scale: what a growing width across leaves each scoop, so that it stays round (ours)."""

SHORTER = 0.5
"""The share of a long flat shoulder that may be left out (ours)."""

UPPER_RADIUS = 60.0
"""mm at adult scale: the bend above the across point gets room for this radius (ours)."""


LOOKED_AT = 6
"""At so many amounts a way out is looked at where all of it is not enough."""

UPPER_LEAST = 30.0
"""mm at adult scale: the bend above the across point under a short shoulder has room for this radius (ours;
its sharpest place is a little sharper)."""


@dataclass(frozen=True)
class Asker:
    """What the ways out need to know: `back`, `front` the body's own half widths across with what is
    worn beneath, `arm` its hanging upper arm, `shoulder_ease`, all mm; whether the front was measured;
    `front_turned` by how many degrees the front lies turned where the armhole's width is judged."""

    back: float
    front: float
    front_measured: bool
    arm: float
    shoulder_ease: float
    front_turned: float


Arrivals = tuple[complex, complex]
"""The directions in which back and front armhole meet the side."""


def lines(
    plan: TorsoPlan, ends: ArmholeEnds, asker: Asker, arrive: Arrivals
) -> tuple[BothArmholePoints, tuple[float, float], tuple[ScoopLine, ScoopLine]]:
    """Return points, armhole_leans and the lines of both scoops; raises where one cannot be drawn."""
    found = _points(plan, ends, asker, arrive)
    if not all(scoop.drawn for scoop in found[2]):
        raise _none(plan)
    return found


def _points(
    plan: TorsoPlan, ends: ArmholeEnds, asker: Asker, arrive: Arrivals
) -> tuple[BothArmholePoints, tuple[float, float], tuple[ScoopLine, ScoopLine]]:
    at = both_armhole_points(plan, ends, asker.shoulder_ease)
    lean = armhole_leans(plan, *at)
    return at, lean, (scoop_line(at[0], lean[0], arrive[0]), scoop_line(at[1], lean[1], arrive[1]))


def _none(plan: TorsoPlan) -> DraftError:
    return DraftError(
        "no armhole can be drawn under this shoulder",
        value=f"shoulder {told(plan.shoulder.length)}, across back {told(2 * plan.across_back)}, "
        f"across front {told(2 * plan.across_front)}, half bust {told(plan.half)}",
        turn="measure shoulder length, shoulder drop and across widths again, or choose more bust ease",
    )


# ------------------------------------------------------------------------- the shoulder too short


def tip_inside(plan: TorsoPlan, ends: ArmholeEnds, asker: Asker) -> TorsoPlan:
    """Return the plan with the across points at or inside the shoulder points, or as near as may be."""

    def outside(trial: TorsoPlan) -> tuple[float, float]:
        back, front = both_armhole_points(trial, ends, asker.shoulder_ease)
        return back.outside, front.outside

    plan = _narrower(plan, outside(plan), (min(plan.across_back, asker.back), min(plan.across_front, asker.front)))
    if not asker.front_measured:
        least = min(plan.across_front, LEAST_FRONT * plan.across_back)
        plan = _narrower(plan, (0.0, outside(plan)[1]), (plan.across_back, least))
    slopes = plan.shoulder
    needed = max(
        short / math.cos(math.radians(slope))
        for short, slope in zip(outside(plan), (slopes.slope_back, slopes.slope_front), strict=True)
    )
    longer = min(LONGER * plan.scale, max(0.0, needed))
    plan = replace(plan, shoulder=replace(slopes, length=slopes.length + longer))
    beyond = outside(plan)
    most = OUTSIDE * plan.scale
    return _narrower(plan, (beyond[0] - most, beyond[1] - most), (0.0, 0.0))


def _narrower(plan: TorsoPlan, by: tuple[float, float], least: tuple[float, float]) -> TorsoPlan:
    """Return the plan with its half widths across narrower `by` so much, never under `least`."""
    return replace(
        plan,
        across_back=max(least[0], plan.across_back - max(0.0, by[0])),
        across_front=max(least[1], plan.across_front - max(0.0, by[1])),
    )


# ------------------------------------------------------------------------------- the arm too thick


def wide_enough(plan: TorsoPlan, ends: ArmholeEnds, asker: Asker, arrive: Arrivals) -> TorsoPlan:
    """Return the plan with room for the arm: across ease gives way, then an estimated across front.

    A scoop that cannot be drawn yet has no room: `round_enough` cuts the widths until it can be.
    """
    wanted = ARM_SHARE * asker.arm

    def spare(amount: float) -> float:
        both = _points(_given_way(plan, asker, amount), ends, asker, arrive)[2]
        if not all(scoop.drawn for scoop in both):
            return -wanted
        return scoops(*both, plan.scale, asker.front_turned).widest - wanted

    return _given_way(plan, asker, _first_good(spare, 2.0, 3.0))


def round_enough(plan: TorsoPlan, ends: ArmholeEnds, asker: Asker, arrive: Arrivals) -> TorsoPlan:
    """Return the plan with each width across cut until its armhole turns nowhere too sharply."""
    cuts = [_cut(plan, ends, asker, arrive, half) for half in (0, 1)]
    return _narrower(plan, (cuts[0], cuts[1]), (0.0, 0.0))


def _cut(plan: TorsoPlan, ends: ArmholeEnds, asker: Asker, arrive: Arrivals, half: int) -> float:
    """Return by how much (mm) the half width across of the back (0) or front (1) has to be cut."""
    most, least = CUT * plan.scale, (BACK_RADIUS, FRONT_RADIUS)[half] * plan.scale

    def roundness(amount: float) -> float:
        by = (amount * most, 0.0) if half == 0 else (0.0, amount * most)
        at, lean, both = _points(_narrower(plan, by, (0.0, 0.0)), ends, asker, arrive)
        hollow = _slopes(plan) - at[0].lean - at[1].lean - 2 * MARGIN
        if not both[half].drawn or hollow < 0:
            return min(-1.0, hollow)
        above = _radius_above(at[half], lean[half]) / (UPPER_LEAST * plan.scale)
        return min(above, float(radii(both[half]).max()) / least) - 1

    return _first_good(roundness, 1.0, 0.1) * most


def _given_way(plan: TorsoPlan, asker: Asker, amount: float) -> TorsoPlan:
    """Return the plan with across ease (0..1), then an estimated across front (1..2) given way."""
    ease, front = _steps(amount, 2)
    if amount <= 0:
        return plan
    back_spare = max(0.0, plan.across_back - asker.back)
    front_spare = max(0.0, plan.across_front - asker.front)
    least = LEAST_FRONT * plan.across_back
    narrower = 0.0 if asker.front_measured else NARROWER * plan.scale * front
    now = replace(
        plan, across_back=plan.across_back - ease * back_spare, across_front=plan.across_front - ease * front_spare
    )
    return _narrower(now, (0.0, narrower), (now.across_back, min(now.across_front, least)))


def _steps(amount: float, count: int) -> tuple[float, ...]:
    """Return how much of each of `count` ways out is taken, one after the other, each 0..1."""
    return tuple(min(1.0, max(0.0, amount - step)) for step in range(count))


def _first_good(spare: Callable[[float], float], most: float, worth: float) -> float:
    """Return an amount (0..most) at which `spare` is 0, none where it is above 0 without.

    Where no amount is enough it is the one that comes nearest, taken in full only where it gains at
    least `worth`: so that nothing jumps where giving way begins to make things worse.
    """
    spare = cache(spare)  # both ends are asked for again by every search
    without = spare(0.0)
    if without >= 0:
        return 0.0
    if spare(most) > 0:
        return float(brent_zero(spare, 0.0, most, within=1e-7))
    tries = [most * i / LOOKED_AT for i in range(LOOKED_AT + 1)]
    found = [spare(amount) for amount in tries]
    best = max(range(len(tries)), key=found.__getitem__)
    if found[best] > 0:
        return float(brent_zero(spare, 0.0, tries[best], within=1e-7))
    return tries[best] * min(1.0, (found[best] - without) / min(worth, -without))


# ------------------------------------------------------------------------- the shoulder too long


Way = Callable[[TorsoPlan, ArmholeEnds, Asker, float], TorsoPlan]
"""A plan with so much (0..3) of its ways out taken."""


def room_above(plan: TorsoPlan, ends: ArmholeEnds, asker: Asker, way: Way) -> TorsoPlan:
    """Return the plan with room for the bend above the across point under a long flat shoulder."""

    def spare(amount: float) -> float:
        trial = way(plan, ends, asker, amount)
        at = both_armhole_points(trial, ends, asker.shoulder_ease)
        radius = min(map(_spare_above, at, armhole_leans(trial, *at)))
        return min(radius / plan.scale - UPPER_RADIUS, _slopes(trial) - at[0].lean - at[1].lean - 2 * MARGIN)

    return way(plan, ends, asker, _first_good(spare, 3.0, 5.0))


def _slopes(plan: TorsoPlan) -> float:
    return plan.shoulder.slope_back + plan.shoulder.slope_front


def _spare_above(at: ArmholePoints, lean: float) -> float:
    """Return the radius (mm) for which the across point leaves room under a long shoulder.

    There the tangent at the across point is the short one; under a short shoulder it is the other.
    """
    head = heading(at, lean)
    _, lower = tangents(at.shoulder, turn(-90 - lean), at.across, turn(-90 + head))
    return lower / math.tan(math.radians(max(lean + head, 1.0) / 2))


def _radius_above(at: ArmholePoints, lean: float) -> float:
    """Return the same for the tangent at the shoulder point, the short one under a short shoulder."""
    head = heading(at, lean)
    upper, _ = tangents(at.shoulder, turn(-90 - lean), at.across, turn(-90 + head))
    return upper / math.tan(math.radians(max(lean + head, 1.0) / 2)) if upper > 0 else math.inf


def wider(plan: TorsoPlan, ends: ArmholeEnds, asker: Asker, amount: float) -> TorsoPlan:
    if amount <= 0:
        return plan
    first, second, third = _steps(amount, 3)
    front, back = plan.across_front, plan.across_back
    scoop = SCOOP * plan.scale
    before = max(0.0, ends.front_under.real - scoop - front)
    behind = max(0.0, ends.back_under.real - scoop - back)
    lift = 0.0 if asker.front_measured else min(max(0.0, back - front), before)
    grow = min(GROW * plan.scale, before - lift, behind)
    now = replace(plan, across_front=front + lift * first + grow * second, across_back=back + grow * second)
    return shorter(now, ends, asker, 3 * third)


def shorter(plan: TorsoPlan, ends: ArmholeEnds, asker: Asker, amount: float) -> TorsoPlan:
    """Return the plan with a shorter shoulder: by `SHORTER` of it where `amount` is 3."""
    length = plan.shoulder.length * (1 - SHORTER * amount / 3)
    return replace(plan, shoulder=replace(plan.shoulder, length=length))
