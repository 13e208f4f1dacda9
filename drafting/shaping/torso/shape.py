"""The torso's curves for one depth of armhole, and the depth that the arm needs. Half frame, mm."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cache

from drafting.body import Body
from drafting.geometry import Path, turn
from drafting.geometry.solve import zero_between
from drafting.ground.scale import body_scale
from drafting.shaping.sleeve.cap import CapHalves
from drafting.shaping.sleeve.half_cap import HalfArmhole
from drafting.shaping.torso.armhole import (
    armhole,
    armhole_ends,
    armhole_leans,
    both_armhole_points,
    settle_shoulder,
)
from drafting.shaping.torso.below_bust import Bottom, draw_bottom
from drafting.shaping.torso.plan import TorsoEase, TorsoPlan, plan_torso

LOW_CAP, HIGH_CAP = 0.60, 5 / 6
"""Cap height over armhole depth that the armhole is fitted to allow (ours; `Source.BUNKA` takes 5/6)."""

DEEPEST_DROP, LEAST_DROP = 95.0, 5.0
"""mm at adult scale: how far fitting the armhole to the arm may move the underarm (ours)."""


@dataclass(frozen=True)
class TorsoShape:
    """The settled plan, what lies below the bust, and the armholes (shoulder point to underarm),
    the front one drawn with the bust dart open at the side."""

    plan: TorsoPlan
    bottom: Bottom
    back_armhole: Path
    front_armhole: Path
    back_neck: complex
    front_neck: complex

    def turned(self, path: Path, share: float) -> Path:
        """Return `path` turned about the bust point by `share` of the bust dart's angle."""
        return path.turned(self.plan.bust_point, turn(share * self.plan.kappa))

    @property
    def back_side(self) -> Path:
        """The back's side seam, underarm downwards."""
        return self.bottom.side.moved(self.plan.back)

    @property
    def front_side(self) -> Path:
        """The front's side seam, underarm downwards, in the frame without bust dart."""
        return self.bottom.side.moved(self.plan.front)


@dataclass(frozen=True)
class TorsoKind:
    """Which torso: to the waist or the hip, with darts or close, waist dart up to the bust point."""

    to_hip: bool = False
    darts: bool = True
    tip_at_point: bool = False


def shape_torso(body: Body, ease: TorsoEase, drop: float, kind: TorsoKind) -> TorsoShape:
    """Return the torso's shape for an underarm `drop` mm below the axilla."""
    plan = plan_torso(body, ease, drop, body_scale(body), darts=kind.darts)
    bottom = draw_bottom(plan, body["bust_girth"], kind.to_hip, kind.tip_at_point)
    under = bottom.side.start
    ends = armhole_ends(plan, under + plan.back, under + plan.front)
    plan = settle_shoulder(plan, ends, ease.shoulder, body.measured("across_front_width"))
    back, front = both_armhole_points(plan, ends, ease.shoulder)
    lean_back, lean_front = armhole_leans(plan, back, front)
    open_dart = turn(plan.kappa)
    square = turn(-bottom.lean)
    return TorsoShape(
        plan,
        bottom,
        armhole(back, lean_back, square),
        armhole(front, lean_front, square * open_dart),
        ends.back_neck,
        ends.front_neck,
    )


def armhole_halves(shape: TorsoShape, scale: float) -> tuple[HalfArmhole, HalfArmhole]:
    """Return front and back half armholes, underarm to shoulder, as the cap's builder wants them."""
    return (
        HalfArmhole(shape.front_armhole.reversed(), 0.0, scale),
        HalfArmhole(shape.back_armhole.reversed(), 0.0, scale),
    )


def fit_drop(body: Body, ease: TorsoEase, kind: TorsoKind) -> float:
    """Return the drop (mm) at which this armhole can carry a sleeve for this arm.

    The choice stands where a cap of 0.60 armhole depth is wide enough; else the armhole is deepened.
    For a thin arm it is made shallower until a cap of 5/6 is not too wide.
    """
    scale = body_scale(body)
    width = body["upper_arm_girth"] + ease.arm

    @cache
    def halves_at(drop: float) -> CapHalves:
        return CapHalves(*armhole_halves(shape_torso(body, ease, drop, kind), scale))

    def spare(drop: float, share: float) -> float:
        both = halves_at(drop)
        return both.width(share * (both.front.depth + both.back.depth) / 2, 3.0) - width

    drop = ease.drop
    room = body["back_waist_length"] - body["axilla_depth"] - 75 * scale
    low = spare(drop, LOW_CAP)
    if low < 0:
        most = max(drop, min(DEEPEST_DROP * scale, room))
        return _root(lambda d: spare(d, LOW_CAP), (drop, low), most)
    high = spare(drop, HIGH_CAP)
    if high > 0:
        least = min(drop, LEAST_DROP * scale)
        return _root(lambda d: spare(d, HIGH_CAP), (drop, high), least)
    return drop


def _root(spare: Callable[[float], float], start: tuple[float, float], limit: float) -> float:
    """Return where `spare` passes 0 between `start` (a drop, and what is spare there) and `limit`.

    The limit where it does not.
    """
    if start[0] == limit:
        return limit
    at_limit = spare(limit)
    if (start[1] > 0) == (at_limit > 0):
        return limit
    low, high = sorted((start, (limit, at_limit)))
    return zero_between(spare, (low[0], high[0]), (low[1], high[1]), 1e-9)
