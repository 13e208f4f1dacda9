"""Below the knee: the lower leg, the calf's room, the hem, and a flare by exact turn. mm.

The hem is a shallow curve square to both edges and to the crease. A flare turns the straight lower
edges about the knee points, all four by one angle, until front and back hem make the sweep.
"""

from __future__ import annotations

import cmath
import math
from dataclasses import dataclass

from drafting.geometry import Cubic, unit
from drafting.geometry.brent import brent_zero
from drafting.geometry.heights import x_at
from drafting.geometry.solve import root_near
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.shaping.trouser.curves import direction_between, one_way_curve
from drafting.shaping.trouser.frame import LegFrame
from drafting.shaping.trouser.legs import Legs

HEM_TURN = 0.55
"""How far the lower edge's direction at the hem turns back towards the knee's (ours)."""

CALF_LEVEL = 0.30
"""The calf lies so far down from knee to hem (ours)."""

HEM_TRIES = 12
"""How often the hem is drawn again until it has its length; twice or three times do."""

STEEPEST = 1.2
"""radians: the lower edges may turn so far for a flare (ours)."""

SEATED_LONGER, SEATED_SLOPE = 0.030, 0.012
"""Hem of a seated wearer: lower all round, and lower in front than behind by twice the second, of the
inside leg (ours; longer in front is common practice)."""


@dataclass(frozen=True, slots=True)
class LowerLeg:
    """One piece below the knee: both edges from knee to hem, and the hem from side to inside."""

    inside: Cubic
    side: Cubic
    hem: Cubic


@dataclass(frozen=True, slots=True)
class Hems:
    """Both lower legs, and the angle (degrees) by which a flare turned their edges."""

    front: LowerLeg
    back: LowerLeg
    turned: float = 0.0


def draw_hems(frame: LegFrame, legs: Legs) -> Hems:
    """Return the legs below the knee; raises `DraftError` where a flare is out of reach."""
    if frame.flared:
        return _flared(frame, legs)
    half = frame.hem_half
    for _ in range(HEM_TRIES):  # the hem's curve is a little longer than its chord
        hems = Hems(_tapered(frame, legs, half, 0.0), _tapered(frame, legs, half, frame.wider))
        over = hems.front.hem.length + hems.back.hem.length - frame.hem_girth
        if abs(over) < 1e-4:
            break
        half = max(half - over / 4, 0.1 * frame.hem_half)
    return hems


def calf_misses(frame: LegFrame, hems: Hems) -> float:
    """Return by how much the leg is too narrow over the calf, mm (below 0: room to spare)."""
    y = frame.knee - CALF_LEVEL * (frame.knee - frame.hem)
    parts = (hems.front, hems.back)
    girth = math.fsum(x_at(leg.inside, y) - x_at(leg.side, y) for leg in parts)
    return frame.asked.calf - girth


def _tapered(frame: LegFrame, legs: Legs, half: float, wider: float) -> LowerLeg:
    """Return the lower leg whose edges run on from the knee and bend one way."""
    shin = frame.shin
    knee, hem = frame.knee_half + wider, half + wider
    at_hem = direction_between(shin, shin / legs.knee_in * shin, HEM_TURN)
    outer = -shin.conjugate()
    at_side = direction_between(outer, outer / legs.knee_side * outer, HEM_TURN)
    inside = one_way_curve(complex(knee, frame.knee), -legs.knee_in, complex(hem, frame.hem), -at_hem)
    side = one_way_curve(complex(-knee, frame.knee), -legs.knee_side, complex(-hem, frame.hem), -at_side)
    slope = 0.0
    if frame.asked.seated:
        inside, side = (_dropped(frame, edge) for edge in (inside, side))
        slope = _seated_slope(frame) * (1 if wider == 0 else -1)
    return LowerLeg(inside, side, _hem(inside, side, slope))


def _dropped(frame: LegFrame, edge: Cubic) -> Cubic:
    """Return a lower edge stretched downwards for a seated wearer."""
    down = SEATED_LONGER * frame.asked.inside
    return Cubic(*(z - 1j * down * (frame.knee - z.imag) / (frame.knee - frame.hem) for z in edge))


def _seated_slope(frame: LegFrame) -> float:
    """Return the angle (radians) at which a seated wearer's hem leaves square, down in front."""
    width = 2 * frame.hem_half + frame.wider
    return math.atan(4 * SEATED_SLOPE * frame.asked.inside / width)


def _hem(inside: Cubic, side: Cubic, slope: float) -> Cubic:
    """Return the hem from side to inside, square to both edges but for `slope` (radians)."""
    leave = unit(side.d - side.c) * 1j * cmath.exp(-1j * slope)
    arrive = unit(inside.d - inside.c) * 1j * cmath.exp(1j * slope)
    return one_way_curve(side.d, leave, inside.d, arrive)


def _flared(frame: LegFrame, legs: Legs) -> Hems:
    def both(angle: float) -> tuple[LowerLeg, LowerLeg]:
        half = frame.knee_half
        return _turned(frame, legs, half, angle), _turned(frame, legs, half + frame.wider, angle)

    def sweep(angle: float) -> float:
        return math.fsum(leg.hem.length for leg in both(angle))

    def over(angle: float) -> float:
        return sweep(angle) - frame.hem_girth

    found = root_near(over, _chord_angle(frame), (0.0, STEEPEST), 1e-9)
    if found is not None:
        return Hems(*both(found), turned=math.degrees(found))
    if over(0.0) >= 0:
        return Hems(*both(0.0))
    if sweep(STEEPEST) < frame.hem_girth:
        raise DraftError(
            "the flare is wider than this lower leg can be turned to",
            value=f"a hem width of {told(frame.hem_girth)}",
            reach=f"{told(sweep(0.0), 'least')} to {told(sweep(STEEPEST), 'most')}",
            turn="ask for less width, or let the leg be longer",
        )
    angle = float(brent_zero(over, 0, STEEPEST, within=1e-11))
    return Hems(*both(angle), turned=math.degrees(angle))


def _chord_angle(frame: LegFrame) -> float:
    """Return the angle at which the chords of both hems together make the sweep."""
    out = frame.hem_girth - 4 * frame.knee_half - 2 * frame.wider
    return math.asin(min(max(out / (4 * (frame.knee - frame.hem)), 0.0), 1.0))


def _turned(frame: LegFrame, legs: Legs, half: float, angle: float) -> LowerLeg:
    """Return one lower leg with both edges turned out by `angle` about the knee points.

    Each edge runs on from the knee and bends one way, a little past its own chord at the hem.
    """
    way, height = cmath.exp(1j * angle), frame.knee - frame.hem
    inside_end = complex(half, frame.knee) - 1j * height * way
    side_end = complex(-half, frame.knee) - 1j * height / way
    down_in, down_side = -1j * way, -1j / way
    at_inside = direction_between(down_in, down_in * down_in / -legs.knee_in, HEM_TURN)
    at_side = direction_between(down_side, down_side * down_side / -legs.knee_side, HEM_TURN)
    inside = one_way_curve(complex(half, frame.knee), -legs.knee_in, inside_end, at_inside)
    side = one_way_curve(complex(-half, frame.knee), -legs.knee_side, side_end, at_side)
    return LowerLeg(inside, side, _hem(inside, side, 0.0))
