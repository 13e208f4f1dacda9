"""Lapel, gorge and front edge of the forepart. Front frame: centre front on x = 0, front at -x, mm.

The roll line runs from the break up to a point beyond the side neck point. Lapel points are set out
along it (a, downwards from its top) and square to it (p, outwards), and grow with the chest.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.geometry import Path, line, smooth, turn, unit
from drafting.shaping.coat.shape import CoatShape

BREAK_AT = 0.62
"""Where the lapel breaks, from the underarm to the waist (from memory)."""

PAST_NECK = 20.0
"""mm at a chest of 1000: the roll line passes the prolonged shoulder so far beyond the neck point."""

GORGE_AT, NOTCH_AT, TIP_AT, COLLAR_AT = (58.0, 0.0), (90.0, 0.50), (54.0, 1.12), (54.0, 0.78)
"""Along (mm at a chest of 1000) and across (shares of the lapel's width) the roll line: where the
gorge starts, the notch, the lapel's tip, and the collar's (from memory)."""


@dataclass(frozen=True)
class FrontEdge:
    """The forepart's front: `neck` from the side neck point, then on round to the lower corner.

    `roll` is the roll line downwards; `collar_tip` the point where the collar's front edge ends;
    `bottom` runs from the corner to the front seam.
    """

    neck: Path
    gorge: Path
    lapel_top: Path
    lapel: Path
    edge: Path
    bottom: Path
    roll: Path
    collar_tip: complex


@dataclass(frozen=True)
class Fronts:
    """What a maker asks of the front, mm: overlap at the waist and at the break, lapel width, and
    how far the front corner hangs below the waist."""

    overlap: float
    overlap_break: float
    lapel: float
    point: float


def lapel_reach(edge: FrontEdge) -> float:
    """Return how far from the centre front the lapel's tip lies once folded over its roll line, mm."""
    top, down = edge.roll.start, edge.roll.leave
    return (top + down * ((edge.lapel.start - top) / down).conjugate()).real


BUTTON_IN = (34 + 26j, 26 + 18j)
"""mm at a chest of 1000: the lowest button from the front corner, and how much farther in than the
front edge the highest stands from the break (from memory)."""


def buttons_at(edge: FrontEdge, count: int, chest: float) -> tuple[complex, ...]:
    """Return where one front's buttons stand, from the waist up, in a row that leans outwards."""
    k = chest / 1000
    low = edge.edge.end + BUTTON_IN[0] * k
    run = edge.edge.start - edge.edge.end + BUTTON_IN[1] * k
    return tuple(low + run * i / max(1, count - 1) for i in range(count))


def front_edge(shape: CoatShape, asked: Fronts, chest: float) -> FrontEdge:
    """Return the front edge; `chest` (mm) scales what is set out along the roll line."""
    plan, k = shape.plan, chest / 1000
    belly = shape.taken.belly
    corner = complex(-belly - asked.overlap, plan.waist - asked.point)
    at_break = complex(
        -0.45 * belly - asked.overlap_break, plan.underarm - BREAK_AT * (plan.underarm - plan.waist)
    )
    neck_point = shape.front_neck
    top = neck_point - PAST_NECK * k * turn(-plan.shoulder.slope_front)
    down = unit(at_break - top)
    out = -1j * down

    def at(along: float, across: float) -> complex:
        return top + along * k * down + across * asked.lapel * out

    gorge_start, notch, tip = at(*GORGE_AT), at(*NOTCH_AT), at(*TIP_AT)
    gorge = line(gorge_start, notch)
    leave = turn(-(plan.shoulder.slope_front + 80))
    inward = down * turn(13)
    end = unit(corner - at_break) * turn(3)
    foot = shape.front_panel.end
    return FrontEdge(
        neck=Path((smooth(neck_point, gorge_start, leave, gorge.leave),)),
        gorge=gorge,
        lapel_top=line(notch, tip),
        lapel=Path((smooth(tip, at_break, down * turn(-8), inward),)),
        edge=Path((smooth(at_break, corner, inward, end),)),
        bottom=Path((smooth(corner, foot, unit(foot - corner) ** 2, 1 + 0j),)),
        roll=line(top, at_break),
        collar_tip=at(*COLLAR_AT),
    )
