"""The two centre edges of a trouser: straight from the waist, then the crotch curve to the fork. mm."""

from __future__ import annotations

from dataclasses import dataclass

from drafting.geometry import Cubic, Path, line
from drafting.geometry.construct import Directed, meet
from drafting.shaping.trouser.curves import clamp, corner, rising_direction
from drafting.shaping.trouser.frame import LegFrame
from drafting.shaping.trouser.legs import Legs

BACK_RISE = 1.18
"""The back waist rises by the lean over this: its line then stays hollow to the centre (ours)."""

FRONT_CURVE, BACK_CURVE = 0.64, 0.74
"""Fullness of the crotch curves; 0.552 is a quarter ellipse (ours)."""

FRONT_START, BACK_START = 1.25, 0.85
"""The curve starts so many times the fork's own reach above the corner of its tangents (ours)."""

LATEST_START = 0.50
"""Of those heights: so low the curve may begin for a hip level that lies low, so that the seat is as
wide there as its girth asks (ours)."""

HOLLOWEST = 0.84
"""Fullness of the crotch curves where the seat has the least room (ours: no radius under 25 mm)."""

MOST_CURVE = 0.62
"""The curve takes at most this share of the centre line (ours)."""


@dataclass(frozen=True, slots=True)
class CentreEdge:
    """One centre edge: straight from the waist's `top` to `bend`, then the curve to the fork.

    `heading` is the straight part's direction, upwards; `on_hip` where its line meets the hip level.
    """

    top: complex
    bend: complex
    curve: Cubic
    heading: complex
    on_hip: complex
    length: float

    @property
    def path(self) -> Path:
        """The edge from the waist down to the fork."""
        return Path((*line(self.top, self.bend).segments, self.curve))


def front_centre(frame: LegFrame, legs: Legs, over: float) -> CentreEdge:
    """Return the centre front whose top lies `over` the waist level."""
    on_hip = complex(-legs.half + frame.front_hip, frame.hip)
    heading = rising_direction(frame.centre_lean)
    top = on_hip + heading * ((frame.rise + over) / heading.imag)
    return _centre(on_hip, heading, top, legs.front_tip, legs.front_up, (FRONT_START, FRONT_CURVE), frame.closer)


def back_centre(frame: LegFrame, legs: Legs, lean: float, extra: float) -> CentreEdge:
    """Return the centre back that leans in by `lean` (tangent), risen `extra` mm besides."""
    on_hip = complex(-legs.half - frame.wider + frame.back_hip, frame.hip)
    heading = rising_direction(lean)
    over = back_rise(frame, lean) + extra
    top = on_hip + heading * ((frame.rise + over) / heading.imag)
    return _centre(on_hip, heading, top, legs.back_tip, legs.back_up, (BACK_START, BACK_CURVE), frame.closer)


def back_rise(frame: LegFrame, lean: float) -> float:
    """Return how far a centre back of this lean rises over the waist level, mm."""
    waist = frame.back_hip - lean * frame.rise - 0.010 * frame.asked.body["hip"]
    return lean / BACK_RISE * waist


def _centre(
    on_hip: complex,
    heading: complex,
    top: complex,
    tip: complex,
    up: complex,
    rule: tuple[float, float],
    closer: float,
) -> CentreEdge:
    """Return the centre edge, its curve square to the inside seam at the fork.

    `rule` is where the curve starts at most and its fullness: it starts no higher than the hip level
    while the fork allows that, and drawn in `closer` it is hollower.
    """
    start, share = rule
    cross = meet(Directed(tip, up * 1j), Directed(on_hip, heading))
    room = ((top - cross) / heading).real
    highest = start * abs(tip - cross)
    begun = clamp(((on_hip - cross) / heading).real, LATEST_START * highest, highest)
    bend = cross + heading * min(begun, MOST_CURVE * room)
    curve = corner(bend, cross, tip, share + closer * (HOLLOWEST - share))
    return CentreEdge(top, bend, curve, heading, on_hip, abs(top - bend) + curve.length)
