"""Lapel, gorge and front edge of the forepart. Front frame: centre front on x = 0, front at -x, mm.

The roll line runs from the break up to a point beyond the side neck point. Lapel points are set out
along it (a, downwards from its top) and square to it (p, outwards), and grow with the chest. A shawl has no
point: its gorge runs to its outer edge, and the collar goes on in the same line. A front without a lapel goes
up to the neck, where a stand is sewn to it.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.geometry import Path, line, smooth, turn, unit
from drafting.shaping.coat.shape import CoatShape
from drafting.shaping.torso.plan import TorsoPlan

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
"""The pointed lapels by name: a peak with a gap beside the collar (from memory), a peak that the collar closes, a
step."""

SHAWL, NO_LAPEL = "shawl", "none"

FRONT_STYLES = (*LAPELS, SHAWL, NO_LAPEL)
"""What a coat's front may be."""

SHAWL_AT_GORGE, SHAWL_WIDEST, SHAWL_SPREADS = 0.94, 0.45, 7.0
"""Of a shawl: its width where the gorge ends, as a share of the greatest; how far down the roll line it is widest,
from the gorge's start to the break; and how many degrees off the roll line its edge leaves the gorge (ours, by
eye: widest on the chest, in one line with the collar)."""


@dataclass(frozen=True)
class Lapel:
    """A lapel: its `gorge`, its `top` (None of a shawl) and outer `edge`; `roll` is the roll line downwards,
    `collar_tip` the point where the collar's front edge ends."""

    gorge: Path
    top: Path | None
    edge: Path
    roll: Path
    collar_tip: complex


@dataclass(frozen=True)
class StandNeck:
    """What closes a front without a lapel above: the `line` from the centre front out to its edge."""

    line: Path


@dataclass(frozen=True)
class FrontEdge:
    """The forepart's front: `neck` from the side neck point, then on round to the lower corner.

    `upper` is what lies between: a lapel, or the neck of a button stand. `bottom` runs from the corner to the
    front seam; `breaks` is where a lapel breaks, or would; `belly` how far the waist moves the centre front out.
    """

    neck: Path
    upper: Lapel | StandNeck
    edge: Path
    bottom: Path
    breaks: complex
    belly: float

    def centre(self, y: float) -> float:
        """Return where the centre front lies across at a height, mm: out at a belly, upright from the chest up."""
        corner, at_break = self.edge.end, self.breaks
        share = (y - corner.imag) / (at_break.imag - corner.imag)
        return -self.belly * max(0.0, 1 - (1 - BELLY_AT_BREAK) * share)


BELLY_AT_BREAK = 0.45
"""Share of what the centre front moves out at the waist that it does at the lapel's break (ours)."""


@dataclass(frozen=True)
class Fronts:
    """What a maker asks of the front, mm: overlap at the waist and at the break, lapel width, and
    how far the front corner hangs below the waist; which of `FRONT_STYLES` it has, and where the lapel breaks, a
    share of the way from the underarm to the waist."""

    overlap: float
    overlap_break: float
    lapel: float
    point: float
    style: str = "peaked"
    breaks: float = BREAK_AT


def lapel_reach(lapel: Lapel) -> float:
    """Return how far from the centre front the lapel reaches once folded over its roll line, mm."""
    top, down = lapel.roll.start, lapel.roll.leave
    far = [lapel.edge.start, *(segment.end for segment in lapel.edge.segments[:-1])]
    return max((top + down * ((p - top) / down).conjugate()).real for p in far)


def front_edge(shape: CoatShape, asked: Fronts, chest: float, both: TorsoPlan) -> FrontEdge:
    """Return the front edge; `chest` (mm) scales what is set out along the roll line.

    `both` is the plan of both hands together, the shape's own on an even body: by its underarm and its shoulder
    lies the lapel, so that an uneven wearer's two lapels mirror each other.
    """
    plan, belly, foot = shape.plan, shape.taken.belly, shape.front_panel.end
    corner = complex(-belly - asked.overlap, plan.waist - asked.point)
    at_break = complex(
        -BELLY_AT_BREAK * belly - asked.overlap_break, both.underarm - asked.breaks * (both.underarm - plan.waist)
    )
    end = unit(corner - at_break) * turn(3)
    bottom = Path((smooth(corner, foot, unit(foot - corner) ** 2, 1 + 0j),))
    if asked.style == NO_LAPEL:
        neck = plan.neck.front.moved(shape.front_neck - plan.neck.front.start)
        edge = _up_to_neck(neck.end - asked.overlap_break, at_break, corner, end)
        upper: Lapel | StandNeck = StandNeck(line(neck.end, edge.start))
    else:
        upper = _lapel(shape, asked, chest / 1000, at_break, both.shoulder.slope_front)
        leave = turn(-(plan.shoulder.slope_front + 80))
        neck = Path((smooth(shape.front_neck, upper.gorge.start, leave, upper.gorge.leave),))
        edge = Path((smooth(at_break, corner, upper.edge.arrive, end),))
    return FrontEdge(neck=neck, upper=upper, edge=edge, bottom=bottom, breaks=at_break, belly=belly)


def _up_to_neck(top: complex, at_break: complex, corner: complex, end: complex) -> Path:
    """Return the edge of a front that closes to the neck: straight down the chest, on to the corner."""
    chord = unit(at_break - top)
    return Path(
        (smooth(top, at_break, -1j, chord * chord / -1j), smooth(at_break, corner, chord * chord / -1j, end))
    )


def _lapel(shape: CoatShape, asked: Fronts, k: float, at_break: complex, slope: float) -> Lapel:
    """Return the lapel on its roll line, which passes the prolonged shoulder (`slope`) beyond the neck point."""
    top = shape.front_neck - PAST_NECK * k * turn(-slope)
    down = unit(at_break - top)
    out = -1j * down

    def at(along: float, across: float) -> complex:
        return top + along * k * down + across * asked.lapel * out

    inward = down * turn(13)
    if asked.style == SHAWL:
        start = at(*GORGE_AT)
        notch = at(GORGE_AT[0] + SHAWL_AT_GORGE / _RUN[1] * _RUN[0], SHAWL_AT_GORGE)
        low = abs(at_break - top) / k
        widest = at(GORGE_AT[0] + SHAWL_WIDEST * (low - GORGE_AT[0]), 1.0)
        curves = (smooth(notch, widest, down * turn(-SHAWL_SPREADS), down), smooth(widest, at_break, down, inward))
        return Lapel(
            gorge=line(start, notch), top=None, edge=Path(curves), roll=line(top, at_break), collar_tip=notch
        )
    points = LAPELS[asked.style]
    gorge_start, notch, tip = at(*GORGE_AT), at(*points.notch), at(*points.tip)
    step = notch + STEP_COLLAR * (tip - notch) * turn(-STEP_OPENS)
    return Lapel(
        gorge=line(gorge_start, notch),
        top=line(notch, tip),
        edge=Path((smooth(tip, at_break, down * turn(-8), inward),)),
        roll=line(top, at_break),
        collar_tip=at(*points.collar) if points.collar else step,
    )
