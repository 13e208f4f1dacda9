"""A rounded back: what it is longer than its front stands above the blades, and how it is taken up.

The torso is planned without it, so that levels, side seam and front know nothing of it. The upper back is
then opened: about the across point, where the armhole turns, everything above turns outwards, and darts
that end below the blade turn what lies inside them back upright. A dart of angle t so raises the nape by
a sin t, where a is how far the blade lies inside the armhole. A yoke takes the length up in its seam, which
falls towards the armhole, and may carry a shoulder dart; a coat's centre back seam is rounded. What is left
may lengthen the back armhole a little and flatten the back neck; the rest is told. Elementary geometry; the
limits are ours, the dart of a regular back is from memory (bust / 32 - 8 mm).
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from drafting.ground import tolerances as tol
from drafting.ground.findings import Finding
from drafting.ground.lengths import angle_said, told
from drafting.shaping.torso.plan import TorsoPlan

WAYS = ("by the figure", "ease", "shoulder dart", "neck dart", "yoke")
"""How the back may be shaped above the blades; the first takes an ease or a dart as the back needs it."""

BLADE = 0.55
"""The blade's place on the across back line, as a share of the half width (ours)."""

EASED = 12.0
"""mm at adult scale: a back longer by no more than this is eased, with no dart; two tapes may disagree by
as much (ours)."""

LONGER_ARMHOLE, SHORTER_ARMHOLE = 13.0, 10.0
"""mm at adult scale: how much longer the back armhole may get, and how much shorter by a dart (ours)."""

LONGER_BY_YOKE = 12.0
"""mm at adult scale: the same above a yoke, whose turned seam adds some 2 of its own (ours)."""

MOST_MOUTH = {"shoulder dart": 22.0, "neck dart": 15.0}
"""mm at adult scale: the widest mouth of each dart (ours)."""

ON_SHOULDER, ON_NECK = 0.45, 0.5
"""Where the darts stand: on the shoulder from the neck, on the back neck from the side neck (ours)."""

MOST_YOKE, MOST_TURN = 30.0, 12.0
"""mm at adult scale by which a yoke's seam falls, degrees by which a coat's centre back turns (ours)."""

SEEN = 0.5
"""mm: what is left and less than this needs no word."""

FLATTER = 10.0
"""mm at adult scale: how far a back neck may be flattened, its nape raised by as much (ours)."""


@dataclass(frozen=True)
class Rounding:
    """How a back is shaped above the blades.

    `shoulder` and `neck` are the angles of the darts, `turned` by how much the whole upper back turns
    (a coat's), degrees; `yoke` how far the yoke's seam falls to the armhole, `lift` by how much the back
    armhole grows, `flat` by how much the back neck is flattened, `rest` what is not drafted, mm; `yoked`
    says that there is a yoke, and `depth` how far below the nape it is cut off (0: where the armhole turns).
    """

    shoulder: float = 0.0
    neck: float = 0.0
    turned: float = 0.0
    yoke: float = 0.0
    lift: float = 0.0
    flat: float = 0.0
    rest: float = 0.0
    yoked: bool = False
    depth: float = 0.0

    @property
    def plain(self) -> bool:
        """Whether the upper back is as planned."""
        return not self.yoked and max(self.shoulder, self.neck, self.turned, abs(self.lift), self.flat) < 1e-9


@dataclass(frozen=True)
class Blade:
    """Distances on the upper back, mm: `arm` from the blade out to the armhole, and from the blade up to
    where a dart stands on the shoulder and on the neck; `across` from centre back to armhole."""

    arm: float
    shoulder: float
    neck: float
    across: float


def settled_rounding(plan: TorsoPlan, blade: Blade, way: str, bust: float, yokes: bool = True) -> Rounding:
    """Return how the back is shaped: as chosen, or by the figure (with a yoke only where the garment `yokes`)."""
    scale, excess = plan.scale, plan.excess
    if way == "by the figure":
        way = "ease" if excess <= EASED * scale else "both darts"
        darted = _with_flat_neck(plan, blade, way, bust)
        return _yoked(plan, blade) if yokes and darted.rest >= SEEN else darted
    return _yoked(plan, blade) if way == "yoke" else _with_flat_neck(plan, blade, way, bust)


def _with_flat_neck(plan: TorsoPlan, blade: Blade, way: str, bust: float) -> Rounding:
    """Return the darts, a neck dart from a flattened neck no wider than from any other."""
    found = _darted(plan, blade, way, bust)
    if not (found.neck and found.flat):
        return found
    return _darted(plan, replace(blade, neck=blade.neck + FLATTER * plan.scale), way, bust)


def _yoked(plan: TorsoPlan, blade: Blade) -> Rounding:
    """Return a yoke, with a dart in its shoulder where its seam, the armhole and the neck are not enough."""
    scale = plan.scale
    yoke = min(MOST_YOKE * scale, plan.excess)
    left = plan.excess - yoke
    dart = 0.0
    longer = LONGER_BY_YOKE * scale
    if left > longer + FLATTER * scale:
        dart = _dart(left - longer, blade.shoulder + 1.1 * longer, blade.arm, 0.0, ("shoulder dart", scale))
    yoked = Rounding(shoulder=math.degrees(dart), yoke=yoke, yoked=True)
    return _lifted(yoked, left - blade.arm * math.sin(dart), scale, LONGER_BY_YOKE)


def _darted(plan: TorsoPlan, blade: Blade, way: str, bust: float) -> Rounding:
    """Return the darts of a back in one piece, or none (`ease`)."""
    scale, excess = plan.scale, plan.excess
    if way == "ease":
        return _lifted(Rounding(), excess, scale)
    given = max(0.0, bust / 32 - 8 * scale) if way != "both darts" else 0.0
    shoulder = neck = 0.0
    if way != "neck dart":
        shoulder = _dart(excess, blade.shoulder, blade.arm, given, ("shoulder dart", scale))
    left = excess - blade.arm * math.sin(shoulder)
    if way == "neck dart" or (way == "both darts" and left > tol.LEAST_DART * scale):
        neck = _dart(left, blade.neck, blade.arm, given, ("neck dart", scale))
    raised = blade.arm * math.sin(shoulder + neck)
    darts = Rounding(shoulder=math.degrees(shoulder), neck=math.degrees(neck))
    return _lifted(darts, excess - raised, scale)


def settled_turn(plan: TorsoPlan, across: float) -> Rounding:
    """Return how a coat's back is shaped: its centre back turns, and the armhole takes the rest."""
    turned = min(MOST_TURN, math.degrees(math.asin(min(0.5, plan.excess / across))))
    raised = across * math.sin(math.radians(turned))
    return _lifted(Rounding(turned=turned), plan.excess - raised, plan.scale)


def _dart(wanted: float, long: float, arm: float, given: float, kind: tuple[str, float]) -> float:
    """Return a dart's angle, radians, that raises the nape by `wanted` mm or has a mouth of `given` mm.

    `long` is the dart's whole length; `kind` its name and the body's scale. A dart on a regular back
    takes what it raises out of the armhole, at most 10 mm.
    """
    name, scale = kind
    most = MOST_MOUTH[name] * scale / long
    needed = math.asin(min(0.7, max(0.0, wanted) / arm))
    allowed = math.asin(min(0.7, max(0.0, wanted + SHORTER_ARMHOLE * scale) / arm))
    found = min(most, max(needed, min(given / long, allowed)))
    return found if found * long >= tol.LEAST_DART * scale else 0.0


def _lifted(rounding: Rounding, left: float, scale: float, most: float = LONGER_ARMHOLE) -> Rounding:
    """Return the rounding with the armhole longer (or shorter) by what is `left`, mm, at `most` so much at
    adult scale, then the back neck flatter, and the rest told."""
    lift = min(most * scale, max(-SHORTER_ARMHOLE * scale, left))
    flat = min(FLATTER * scale, max(0.0, left - lift))
    return replace(rounding, lift=lift, flat=flat, rest=max(0.0, left - lift - flat))


def rounding_said(plan: TorsoPlan, rounding: Rounding, blade: Blade, yokes: bool = False) -> tuple[Finding, ...]:
    """Return what is to be said of a back that is longer than its front; of a garment that `yokes`, that too."""
    if plan.excess < SEEN:
        return ()
    above = blade.shoulder + rounding.lift * rounding.yoked
    taken = [
        f"a shoulder dart of {told(math.radians(rounding.shoulder) * above)}" * (rounding.shoulder > 0),
        f"a neck dart of {told(math.radians(rounding.neck) * blade.neck)}" * (rounding.neck > 0),
        f"the yoke's seam ({told(rounding.yoke)})" * (rounding.yoke > 0),
        f"a centre back rounded by {angle_said(rounding.turned)}" * (rounding.turned > 0),
        f"a back armhole {told(rounding.lift)} longer" * (rounding.lift >= SEEN),
        f"a back neck {told(rounding.flat)} flatter" * (rounding.flat >= SEEN),
    ]
    how = " and ".join(one for one in taken if one) or "ease"
    said = (
        f"The back is {told(plan.excess)} longer than the front leads one to expect: a rounded back. It is "
        f"taken up above the blades, by {how}; the front knows nothing of it."
    )
    if rounding.rest < SEEN:
        return (Finding("rounded back", "note", "back", plan.excess, 0.0, said),)
    more = (
        f" {told(rounding.rest)} are left, more than darts on so short a shoulder and neck may take, and the "
        "centre back is drafted shorter by as much. Measure back and front waist length again; if they are right, "
        + 'take back_shaping = "yoke", which takes most (a back that opens has a zip then), or '
        * (yokes and not rounding.yoke)
        + "shape the centre back at the fitting."
    )
    return (Finding("rounded back", "warning", "back", rounding.rest, 0.0, said + more),)
