"""The torso's curves for one depth of armhole, and the depth that the arm needs. Half frame, mm."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import cache
from typing import NamedTuple

from drafting.body import Body
from drafting.geometry import Path, turn
from drafting.geometry.solve import zero_between
from drafting.ground.errors import DraftError
from drafting.ground.scale import body_scale
from drafting.shaping.sleeve.cap import CapHalves
from drafting.shaping.sleeve.half_cap import HalfArmhole
from drafting.shaping.torso.across import settled_armholes
from drafting.shaping.torso.armhole import armhole_ends
from drafting.shaping.torso.below_bust import Bottom, draw_bottom
from drafting.shaping.torso.plan import TorsoEase, TorsoPlan, plan_torso
from drafting.shaping.torso.round_back import rounding_said, settled_rounding
from drafting.shaping.torso.upper_back import UpperBack, blade_of, upper_back

LOW_CAP, HIGH_CAP = 0.60, 5 / 6
"""Cap height over armhole depth that the armhole is fitted to allow (ours; `Source.BUNKA` takes 5/6)."""

OPEN_ABOVE = 90.0
"""mm at adult scale: the least height of the side above the waist under an armhole without a sleeve (ours)."""

DEEPEST_DROP, LEAST_DROP = 95.0, 5.0
"""mm at adult scale: how far fitting the armhole to the arm may move the underarm (ours)."""


@dataclass(frozen=True)
class TorsoShape:
    """The settled plan, what lies below the bust, and the armholes (shoulder point to underarm),
    the front one drawn with the bust dart open at the side (what is left of it, in the plan's `kappa`,
    where a belly has some of it at the waist).

    `fitted_back` is the back's armhole before it was shaped above the blades: the underarm is fitted
    to the arm with it, so that a rounded back moves nothing in front.
    """

    plan: TorsoPlan
    bottom: Bottom
    upper_back: UpperBack
    fitted_back: Path
    front_armhole: Path
    front_neck: complex

    @property
    def back_armhole(self) -> Path:
        """The back's armhole, shoulder point to underarm, as sewn."""
        return self.upper_back.armhole

    def turned(self, path: Path, share: float) -> Path:
        """Return `path` turned about the bust point by `share` of the bust dart's angle."""
        return path.turned(self.plan.bust_point, turn(share * self.plan.kappa))

    def let_out(self, path: Path, share: float) -> Path:
        """Return `path` turned about the bust point by `share` of what a belly has of the bust dart."""
        return path.turned(self.plan.bust_point, turn(share * self.bottom.front.let))

    @property
    def back_side(self) -> Path:
        """The back's side seam, underarm downwards."""
        return self.bottom.back.side.moved(self.plan.back)

    @property
    def front_side(self) -> Path:
        """The front's side seam, underarm downwards, in the frame without bust dart."""
        return self.bottom.front.side.moved(self.plan.front)


@dataclass(frozen=True)
class TorsoKind:
    """Which torso: to the waist or the hip, with darts or close, waist dart up to the bust point, how the back is
    shaped above the blades (one of `round_back.WAYS`), and whether it may have a yoke of itself (`yokes`)."""

    to_hip: bool = False
    darts: bool = True
    tip_at_point: bool = False
    back_shaping: str = "ease"
    yoke_depth: float = 0.0
    yokes: bool = True


class _Holes(NamedTuple):
    """A torso as far as its armholes: all that the search for their depth needs."""

    plan: TorsoPlan
    bottom: Bottom
    back: Path
    front: Path
    front_neck: complex


def shape_torso(body: Body, ease: TorsoEase, drop: float, kind: TorsoKind) -> TorsoShape:
    """Return the torso's shape for an underarm `drop` mm below the axilla."""
    holes = _holes(body, ease, drop, kind)
    plan = holes.plan
    blade = blade_of(plan.neck, holes.back)
    rounding = settled_rounding(plan, blade, kind.back_shaping, body["bust_girth"], kind.yokes)
    plan = replace(plan, findings=(*plan.findings, *rounding_said(plan, rounding, blade, kind.yokes)))
    upper = upper_back(plan.neck, holes.back, replace(rounding, depth=kind.yoke_depth), plan.scale)
    return TorsoShape(plan, holes.bottom, upper, holes.back, holes.front, holes.front_neck)


def _holes(body: Body, ease: TorsoEase, drop: float, kind: TorsoKind) -> _Holes:
    plan = plan_torso(body, ease, drop, body_scale(body), darts=kind.darts)
    bottom = draw_bottom(plan, body["bust_girth"], kind.to_hip, kind.tip_at_point)
    plan = replace(plan, kappa=plan.kappa - bottom.front.let)
    ends = armhole_ends(plan, bottom.back.side.start + plan.back, bottom.front.side.start + plan.front)
    square = turn(-bottom.back.lean), turn(plan.kappa - bottom.front.lean)
    holes = settled_armholes(body, ease, plan, ends, square)
    return _Holes(holes.plan, bottom, holes.back, holes.front, ends.front_neck)


def fit_drop(body: Body, ease: TorsoEase, kind: TorsoKind) -> float:
    """Return the drop (mm) at which this armhole can carry a sleeve for this arm.

    The choice stands where an armhole can be drawn there, and a cap of 0.60 of its depth is wide enough; else the
    armhole is deepened.
    For a thin arm it is made shallower until a cap of 5/6 is not too wide.
    """
    scale = body_scale(body)
    width = body["upper_arm_girth"] + ease.arm

    @cache
    def holes_at(drop: float) -> _Holes:
        return _holes(body, ease, drop, kind)

    @cache
    def halves_at(drop: float) -> CapHalves:
        holes = holes_at(drop)
        return CapHalves(*(HalfArmhole(one.reversed(), 0.0, scale) for one in (holes.front, holes.back)))

    def spare(drop: float, share: float) -> float:
        both = halves_at(drop)
        return both.width(share * (both.front.depth + both.back.depth) / 2, 3.0) - width

    drop = _first_drawn(holes_at, ease.drop, DEEPEST_DROP * scale, DEEPER * scale)
    low = spare(drop, LOW_CAP)
    if low < 0:
        plan = holes_at(drop).plan
        room = drop + plan.underarm - plan.waist - 75 * scale
        most = max(drop, min(DEEPEST_DROP * scale, room))
        return _root(lambda d: spare(d, LOW_CAP), (drop, low), most)
    high = spare(drop, HIGH_CAP)
    if high > 0:
        least = min(drop, LEAST_DROP * scale)
        return _root(lambda d: spare(d, HIGH_CAP), (drop, high), least)
    return drop


def _first_drawn(holes_at: Callable[[float], _Holes], drop: float, most: float, step: float) -> float:
    """Return a drop (mm), or the next deeper one at which an armhole can be drawn; raises where none can."""
    while drop < most:
        try:
            holes_at(drop)
        except DraftError:
            drop = min(drop + step, most)
        else:
            return drop
    holes_at(drop)
    return drop


DEEPER = 2.5
"""mm at adult scale: by so much an armhole that cannot be drawn is made deeper, again and again (ours)."""


def open_drop(body: Body, ease: TorsoEase) -> float:
    """Return the drop (mm) of an armhole without a sleeve: the choice, less where it came too near the waist."""
    scale = body_scale(body)
    plan = plan_torso(body, ease, 0.0, scale)
    return max(0.0, min(ease.drop, plan.underarm - plan.waist - OPEN_ABOVE * scale))


def _root(spare: Callable[[float], float], start: tuple[float, float], limit: float) -> float:
    """Return where `spare` first passes 0 from `start` (a drop, and what is spare there) to `limit`.

    The limit where it does not; where no armhole can be drawn beyond some place on the way, a third of the
    way to that. It is looked at in thirds, as it may pass 0 twice.
    """
    if start[0] == limit:
        return limit
    last = start
    for third in (1, 2, 3):
        asked = start[0] + (limit - start[0]) * third / 3
        drop = _last_drawn(spare, last[0], asked)
        here = (drop, spare(drop))
        if (last[1] > 0) != (here[1] > 0):
            low, high = sorted((last, here))
            return zero_between(spare, (low[0], high[0]), (low[1], high[1]), 1e-9)
        if drop != asked:
            return drop + SHORT_OF * (start[0] - drop)
        last = here
    return limit


def _last_drawn(spare: Callable[[float], float], good: float, drop: float) -> float:
    """Return the drop, or the last from a good one to it at which an armhole can be drawn."""
    tried = drop
    for _ in range(HALVINGS):
        try:
            spare(tried)
        except DraftError:
            drop = tried
        else:
            if tried == drop:
                return drop
            good = tried
        tried = (good + drop) / 2
    return good


SHORT_OF = 2 / 3
"""Of the way: an armhole keeps so far from where none can be drawn, as its bend would be a corner there (ours)."""

HALVINGS = 12
"""So often the way to an armhole that cannot be drawn is halved: 15 mm to less than 0.01 mm."""
