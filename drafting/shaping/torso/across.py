"""Both armholes settled: what gives way, in which order, where shoulder, widths across and arm conflict.

The across point lies at or inside the shoulder point: across ease shrinks to nothing, an estimated
across front goes down to 0.86 of the across back, the shoulder is drafted up to 10 mm longer, the
point lies up to 10 mm outside, and only then is the width across cut. For a thick arm across ease
shrinks too, then an estimated across front; both are cut where no scoop would be round. Under a long
flat shoulder an estimated across front grows to the across back, both widths grow by up to 15 mm a
half, then the shoulder is shortened. Each step leaves a finding. The order is that of the block
demands; the amounts are ours.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from drafting.body import Body
from drafting.geometry import Path
from drafting.shaping.torso.across_said import across_findings, turn_findings
from drafting.shaping.torso.armhole import ArmholeEnds, armhole
from drafting.shaping.torso.plan import TorsoEase, TorsoPlan
from drafting.shaping.torso.scoop import scoops
from drafting.shaping.torso.ways_out import (
    ARM_SHARE,
    Arrivals,
    Asker,
    lines,
    room_above,
    round_enough,
    shorter,
    tip_inside,
    wide_enough,
    wider,
)


@dataclass(frozen=True)
class Armholes:
    """The settled plan and both armholes, shoulder point to underarm, each ending in its scoop.

    `width` is what both measure across, 20 mm above their lowest points (adult scale).
    """

    plan: TorsoPlan
    back: Path
    front: Path
    width: float


def settled_armholes(
    body: Body, ease: TorsoEase, plan: TorsoPlan, ends: ArmholeEnds, arrive: Arrivals, front_turned: float = 0.0
) -> Armholes:
    """Return plan and armholes with every conflict settled. Raises `DraftError` where none can be drawn.

    `front_turned` (degrees) says how the front lies where the armhole's width is judged: as drawn with
    its bust dart at the side (0), or as a coat's, whose side body stands upright.
    """
    asker = _asker(body, ease, front_turned)
    wide = wide_enough(tip_inside(plan, ends, asker), ends, asker, arrive)
    now = room_above(round_enough(wide, ends, asker, arrive), ends, asker, wider)
    for _ in range(2 if _moved(wide, now) else 0):  # a shorter shoulder moves the across point, with it the scoop
        now = room_above(round_enough(now, ends, asker, arrive), ends, asker, shorter)
    at, lean, both = lines(now, ends, asker, arrive)
    can = scoops(*both, plan.scale, front_turned)
    full = can.fullness(ARM_SHARE * asker.arm)
    width = can.width(full)
    outside = max(point.outside for point in at)
    own = (asker.back if body.measured("across_back_width") else 0.0, asker.front if asker.front_measured else 0.0)
    found = (*across_findings(plan, now, own, outside, width / asker.arm), *turn_findings(can.roundness))
    return Armholes(
        replace(now, findings=(*plan.findings, *found)),
        armhole(at[0], lean[0], both[0].at(full[0])),
        armhole(at[1], lean[1], both[1].at(full[1])),
        width,
    )


def _moved(was: TorsoPlan, now: TorsoPlan) -> bool:
    return any(
        abs(a - b) > 1e-9
        for a, b in (
            (was.across_back, now.across_back),
            (was.across_front, now.across_front),
            (was.shoulder.length, now.shoulder.length),
        )
    )


def _asker(body: Body, ease: TorsoEase, front_turned: float) -> Asker:
    return Asker(
        back=(body["across_back_width"] + body.layer("across_back_width")) / 2,
        front=(body["across_front_width"] + body.layer("across_front_width")) / 2,
        front_measured=body.measured("across_front_width"),
        arm=body["upper_arm_girth"] + body.layer("upper_arm_girth"),
        shoulder_ease=ease.shoulder,
        front_turned=front_turned,
    )
