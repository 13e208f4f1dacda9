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

GORGE_AT = (58.0, 0.0)
"""Along (mm at a chest of 1000) and across (shares of the lapel's width) the roll line: where the gorge starts."""

STEP_NOTCH, STEP_TIP = 1.25, 2.0
"""Of a step lapel: the gorge's line goes on to notch and tip, so many times as far as to a notch at half the
width; the tip then lies at the whole width (plane geometry: the lapel's top lies in line with the gorge)."""

STEP_OPENS, STEP_COLLAR = 82.0, 0.85
"""degrees between collar and lapel in the step, and the collar's front over the lapel's top (common practice: 75
to 90, and a little less)."""

CLOSES = 0.80
"""Of a closed lapel's top: how far the collar lies against it (common practice: next to the tip)."""


@dataclass(frozen=True)
class LapelPoints:
    """Where notch, lapel tip and collar tip lie: along (mm at a chest of 1000) and across the roll line (shares of
    the lapel's width). A `step` lapel's collar tip is found from the notch instead."""

    notch: tuple[float, float]
    tip: tuple[float, float]
    collar: tuple[float, float] | None


_PEAK, _TIP = (90.0, 0.50), (54.0, 1.12)
_RUN = (_PEAK[0] - GORGE_AT[0], _PEAK[1] - GORGE_AT[1])

LAPELS = {
    "peaked": LapelPoints(_PEAK, _TIP, (54.0, 0.78)),
    "closed": LapelPoints(
        _PEAK, _TIP, (_PEAK[0] + CLOSES * (_TIP[0] - _PEAK[0]), _PEAK[1] + CLOSES * (_TIP[1] - _PEAK[1]))
    ),
    "step": LapelPoints(
        (GORGE_AT[0] + STEP_NOTCH * _RUN[0], GORGE_AT[1] + STEP_NOTCH * _RUN[1]),
        (GORGE_AT[0] + STEP_TIP * _RUN[0], GORGE_AT[1] + STEP_TIP * _RUN[1]),
        None,
    ),
}
"""The lapels by name: a peak with a gap beside the collar (from memory), a peak that the collar closes, a step."""


@dataclass(frozen=True)
class FrontEdge:
    """The forepart's front: `neck` from the side neck point, then on round to the lower corner.

    `roll` is the roll line downwards; `collar_tip` the point where the collar's front edge ends;
    `bottom` runs from the corner to the front seam; `belly` is how far the centre front moves out at the waist.
    """

    neck: Path
    gorge: Path
    lapel_top: Path
    lapel: Path
    edge: Path
    bottom: Path
    roll: Path
    collar_tip: complex
    belly: float

    def centre(self, y: float) -> float:
        """Return where the centre front lies across at a height between corner and break, mm, and beyond both."""
        corner, at_break = self.edge.end, self.edge.start
        return -self.belly * (1 - (1 - BELLY_AT_BREAK) * (y - corner.imag) / (at_break.imag - corner.imag))


BELLY_AT_BREAK = 0.45
"""Share of what the centre front moves out at the waist that it does at the lapel's break (ours)."""


@dataclass(frozen=True)
class Fronts:
    """What a maker asks of the front, mm: overlap at the waist and at the break, lapel width, and
    how far the front corner hangs below the waist; which of `LAPELS` it has."""

    overlap: float
    overlap_break: float
    lapel: float
    point: float
    style: str = "peaked"


def lapel_reach(edge: FrontEdge) -> float:
    """Return how far from the centre front the lapel's tip lies once folded over its roll line, mm."""
    top, down = edge.roll.start, edge.roll.leave
    return (top + down * ((edge.lapel.start - top) / down).conjugate()).real


FIRST_UP, LAST_UP = 26.0, 44.0
"""mm at a chest of 1000: the lowest button over the front corner, the highest over the break (from memory)."""

HOLE_IN = 18.0
"""mm at a chest of 1000: how far inside the front edge a buttonhole holds its button (from memory)."""

LEANS, MOST_IN = 26.0, 0.6
"""mm at a chest of 1000 by which a row leans outwards at most, and the share of the forepart's waist within which
its lowest button stands (ours)."""


@dataclass(frozen=True)
class ButtonPlace:
    """Where a `button` stands on each front, and where the `hole` lies, on the front on top, that it goes through.

    None above the break: that cloth is turned over, and the button is for show.
    """

    button: complex
    hole: complex | None


def buttons_at(edge: FrontEdge, count: int, chest: float) -> tuple[ButtonPlace, ...]:
    """Return one front's buttons, from the waist up, in a row that leans outwards.

    Worn closed the fronts lie centre on centre: what the edge on top holds lies mirrored in the centre front.
    """
    k, corner, at_break = chest / 1000, edge.edge.end, edge.edge.start
    low, high = corner.imag + FIRST_UP * k, at_break.imag + LAST_UP * k
    inside = [_mirrored(edge, y, HOLE_IN * k) for y in (low, high)]
    first = min(inside[0], MOST_IN * edge.bottom.end.real)
    last = min(inside[1], first + LEANS * k)
    found = []
    for number in range(count):
        share = number / max(1, count - 1)
        at = complex(first + share * (last - first), low + share * (high - low))
        hole = complex(2 * edge.centre(at.imag) - at.real, at.imag)
        found.append(ButtonPlace(at, hole if at.imag <= at_break.imag else None))
    return tuple(found)


def _mirrored(edge: FrontEdge, y: float, inside: float) -> float:
    """Return the place across, mm, that lies beneath what is `inside` mm in from the edge on top."""
    corner, at_break = edge.edge.end, edge.edge.start
    x = corner.real + (y - corner.imag) / (at_break.imag - corner.imag) * (at_break.real - corner.real)
    return 2 * edge.centre(y) - (x + inside)


def front_edge(shape: CoatShape, asked: Fronts, chest: float) -> FrontEdge:
    """Return the front edge; `chest` (mm) scales what is set out along the roll line."""
    plan, k = shape.plan, chest / 1000
    belly = shape.taken.belly
    corner = complex(-belly - asked.overlap, plan.waist - asked.point)
    at_break = complex(
        -BELLY_AT_BREAK * belly - asked.overlap_break, plan.underarm - BREAK_AT * (plan.underarm - plan.waist)
    )
    neck_point = shape.front_neck
    top = neck_point - PAST_NECK * k * turn(-plan.shoulder.slope_front)
    down = unit(at_break - top)
    out = -1j * down

    def at(along: float, across: float) -> complex:
        return top + along * k * down + across * asked.lapel * out

    points = LAPELS[asked.style]
    gorge_start, notch, tip = at(*GORGE_AT), at(*points.notch), at(*points.tip)
    step = notch + STEP_COLLAR * (tip - notch) * turn(-STEP_OPENS)
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
        collar_tip=at(*points.collar) if points.collar else step,
        belly=belly,
    )
