"""The bust dart: opened about the bust point, turned to the side or the shoulder, and trued.

The front is drafted with the dart open at the side seam. To turn it elsewhere, what lies between the
two places turns about the bust point until the side is closed: every other length stays as it was.
"""

from __future__ import annotations

import cmath
import math
from dataclasses import dataclass

from drafting.geometry import Path, line, turn
from drafting.piece import Edge, EdgeKind
from drafting.shaping.dart import BEND_OVER, true_mouth
from drafting.shaping.torso import TorsoPlan
from drafting.shaping.waist import HalfWaist

SIDE_DART_BELOW = 45.0
"""mm at adult scale: least distance of the side dart below the underarm (ours)."""


@dataclass(frozen=True)
class FrontEdges:
    """The front's edges from the waist's side end up to the side neck point, in ring order.

    `ray` is the direction from the bust point to the dart's mouth in the undarted frame, `turned`
    says whether what lies above the side dart is turned up (the dart is open at the side).
    """

    edges: tuple[Edge, ...]
    mouth: complex | None
    turned: bool


def open_bust_dart(
    plan: TorsoPlan, *, waist: HalfWaist, side: Path, armhole: Path, shoulder: Path, where: str
) -> FrontEdges:
    """Return the front's outer edges with the bust dart at `where` ("side" or "shoulder").

    `side` lies in the frame without dart; `armhole` (underarm to shoulder point) and `shoulder` as
    the open side dart puts them.
    """
    if plan.kappa == 0:
        plain = (Edge("side", side), Edge("armhole", armhole), Edge("shoulder", shoulder))
        return FrontEdges(plain, None, False)
    if where == "shoulder":
        return _at_shoulder(plan, side, armhole, shoulder)
    return _at_side(plan, side, armhole, shoulder)


def _at_side(plan: TorsoPlan, side: Path, armhole: Path, shoulder: Path) -> FrontEdges:
    below = max(
        SIDE_DART_BELOW * plan.scale, side.end.imag - plan.bust_point.imag + 10 * plan.scale
    )
    from_underarm = min(below, 0.5 * side.length)
    lower, upper = side.split(side.length - from_underarm)
    mouth = true_mouth(
        lower, upper.turned(plan.bust_point, turn(plan.kappa)), plan.bust_point, plan.dart_short,
        min(BEND_OVER * plan.scale, 0.8 * from_underarm),
    )  # fmt: skip
    edges = (
        Edge("side_lower", mouth.before),
        Edge("bust_dart_in", mouth.leg_in, EdgeKind.DART),
        Edge("bust_dart_out", mouth.leg_out, EdgeKind.DART),
        Edge("side_upper", mouth.after),
        Edge("armhole", armhole),
        Edge("shoulder", shoulder),
    )
    return FrontEdges(edges, lower.end, True)


def _at_shoulder(plan: TorsoPlan, side: Path, armhole: Path, shoulder: Path) -> FrontEdges:
    outer, inner = shoulder.split(shoulder.length / 2)
    back = turn(-plan.kappa)
    mouth = true_mouth(
        outer.turned(plan.bust_point, back), inner, plan.bust_point, plan.dart_short,
        min(BEND_OVER * plan.scale, 0.8 * outer.length),
    )  # fmt: skip
    edges = (
        Edge("side", side),
        Edge("armhole", armhole.turned(plan.bust_point, back)),
        Edge("shoulder_outer", mouth.before),
        Edge("bust_dart_in", mouth.leg_in, EdgeKind.DART),
        Edge("bust_dart_out", mouth.leg_out, EdgeKind.DART),
        Edge("shoulder_inner", mouth.after),
    )
    return FrontEdges(edges, None, False)


def bust_level_paths(plan: TorsoPlan, front: FrontEdges) -> tuple[Path, ...]:
    """Return the bust line of the half front, broken at the open side dart.

    What lies above the dart's middle ray is drawn turned with its side of the dart.
    """
    start, end = complex(0, plan.bust_line), complex(plan.front, plan.bust_line)
    if not front.turned or front.mouth is None:
        return (line(start, end),)
    point, factor = plan.bust_point, turn(plan.kappa)
    ray = front.mouth - point
    rise = math.tan(cmath.phase(ray)) if ray.real > 0 else 0.0
    at = point.real if abs(rise) < 1e-9 else point.real + (plan.bust_line - point.imag) / rise
    if not point.real <= at < plan.front:
        at = point.real
    split = complex(at, plan.bust_line)
    outer = line(split, end).turned(point, factor)
    return line(start, split), outer
