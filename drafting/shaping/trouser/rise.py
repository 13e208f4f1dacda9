"""Front rise, seat angle and fork, settled together so that the crotch length is exact. mm.

The rule where measures conflict: the total crotch length always holds. The split is followed while
the centre front rises between -3 and +3.5 % of the hip, then moved. The thigh is as asked while the
seat angle stays in its range; past it the thigh moves inside its band; past that the back rise.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from drafting.geometry import Cubic
from drafting.geometry.construct import Directed, meet
from drafting.geometry.solve import root_near, zero_between
from drafting.ground import tolerances as tol
from drafting.ground.errors import DraftError
from drafting.shaping.trouser.curves import clamp, corner, rising_direction
from drafting.shaping.trouser.frame import LegFrame
from drafting.shaping.trouser.legs import FORK, Legs, draw_legs, fork_for, thigh_girth

FRONT_RISE, FRONT_RISE_SEATED = (-0.030, 0.035), (-0.09, 0.035)
"""How far the centre front may lie under or over the waist level, of the hip (ours)."""

SEAT, SEAT_SEATED = (0.035, 0.38), (0.035, 0.64)
"""Least and greatest lean of the centre back, tangent: 2 to 21 degrees, seated 33 (ours)."""

BACK_RISE = 1.18
"""The back waist rises by the lean over this: its line then stays hollow to the centre (ours)."""

FRONT_CURVE, BACK_CURVE = 0.64, 0.74
"""Fullness of the crotch curves; 0.552 is a quarter ellipse (ours)."""

FRONT_START, BACK_START = 1.25, 0.85
"""The curve starts so many times the fork's own reach above the corner of its tangents (ours)."""

MOST_CURVE = 0.62
"""The curve takes at most this share of the centre line (ours)."""

LEAST_STRAIGHT = 0.05
"""Straight part of a centre line at least, of waist to hip (ours)."""


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


@dataclass(frozen=True, slots=True)
class Rise:
    """The settled legs and centres; `seat` is the lean's tangent, `extra` bare back rise, mm."""

    legs: Legs
    front: CentreEdge
    back: CentreEdge
    seat: float
    front_rise: float
    back_rise: float
    extra: float
    thigh: float


def front_centre(frame: LegFrame, legs: Legs, over: float) -> CentreEdge:
    """Return the centre front whose top lies `over` the waist level."""
    on_hip = complex(-legs.half + frame.front_hip, frame.hip)
    heading = rising_direction(frame.centre_lean)
    top = on_hip + heading * ((frame.rise + over) / heading.imag)
    return _centre(on_hip, heading, top, legs.front_tip, legs.front_up, FRONT_START, FRONT_CURVE)


def back_centre(frame: LegFrame, legs: Legs, lean: float, extra: float) -> CentreEdge:
    """Return the centre back that leans in by `lean` (tangent), risen `extra` mm besides."""
    on_hip = complex(-legs.half - frame.wider + frame.back_hip, frame.hip)
    heading = rising_direction(lean)
    over = back_rise(frame, lean) + extra
    top = on_hip + heading * ((frame.rise + over) / heading.imag)
    return _centre(on_hip, heading, top, legs.back_tip, legs.back_up, BACK_START, BACK_CURVE)


def back_rise(frame: LegFrame, lean: float) -> float:
    """Return how far a centre back of this lean rises over the waist level, mm."""
    waist = frame.back_hip - lean * frame.rise - 0.010 * frame.asked.body["hip"]
    return lean / BACK_RISE * waist


def _centre(
    on_hip: complex, heading: complex, top: complex, tip: complex, up: complex, start: float, share: float
) -> CentreEdge:
    """Return the centre edge, its curve square to the inside seam at the fork."""
    cross = meet(Directed(tip, up * 1j), Directed(on_hip, heading))
    room = ((top - cross) / heading).real
    bend = cross + heading * min(start * abs(tip - cross), MOST_CURVE * room)
    curve = corner(bend, cross, tip, share)
    return CentreEdge(top, bend, curve, heading, on_hip, abs(top - bend) + curve.length)


def settle_rise(frame: LegFrame) -> Rise:
    """Return the rise whose crotch seam has the asked length, by the rule above."""
    fork = fork_for(frame, frame.asked.girth["thigh"])
    low, high = _seat_range(frame, fork)
    front = _with_front(frame, draw_legs(frame, fork))
    if _missing(frame, front, high) > 0:
        return _past(frame, front, high, frame.asked.thigh_band[1])
    if _missing(frame, front, low) < 0:
        return _past(frame, front, low, frame.asked.thigh_band[0])
    lean = _root(lambda v: _missing(frame, front, v), low, high)
    return _settled(frame, front, lean, 0.0)


@dataclass(frozen=True, slots=True)
class _Front:
    """Legs with the front rise settled: `over` the waist level, mm."""

    legs: Legs
    over: float
    centre: CentreEdge


def _seat_range(frame: LegFrame, fork: float) -> tuple[float, float]:
    """Return the leans of the centre back between which the fork still has a reach of its own."""
    low, high = SEAT_SEATED if frame.asked.seated else SEAT
    leaves = 0.6 * 0.6 * fork / max(frame.hip, 1.0)
    return low, max(low + 0.03, min(high, leaves))


def _past(frame: LegFrame, asked: _Front, lean: float, thigh: float) -> Rise:
    """Return the rise with the seat angle at its bound: the thigh moves, then the back rise."""
    other = _with_front(frame, draw_legs(frame, fork_for(frame, thigh)))
    before, after = _missing(frame, asked, lean), _missing(frame, other, lean)
    if before * after < 0:

        def miss(fork: float) -> float:
            return _missing(frame, _with_front(frame, draw_legs(frame, fork)), lean)

        fork = _root(miss, asked.legs.fork, other.legs.fork)
        return _settled(frame, _with_front(frame, draw_legs(frame, fork)), lean, 0.0)
    wanted = frame.asked.crotch - other.centre.length

    def over(extra: float) -> float:
        return back_centre(frame, other.legs, lean, extra).length - wanted

    reach = 3 * abs(after) + 30 * frame.unit
    return _settled(frame, other, lean, _root(over, max(-reach, -0.8 * frame.rise), reach))


def _with_front(frame: LegFrame, legs: Legs) -> _Front:
    """Return the legs with the front rise that its part of the crotch length asks for."""
    hip = frame.asked.body["hip"]
    bounds = FRONT_RISE_SEATED if frame.asked.seated else FRONT_RISE
    low, high = bounds[0] * hip, bounds[1] * hip
    wanted = frame.asked.crotch_front

    def miss(rise: float) -> float:
        return front_centre(frame, legs, rise).length - wanted

    over = root_near(miss, clamp(-miss(0.0), low, high), (low, high), 1e-7)
    if over is None:
        over = low if miss(low) > 0 else high if miss(high) < 0 else _root(miss, low, high)
    return _Front(legs, over, front_centre(frame, legs, over))


def _missing(frame: LegFrame, front: _Front, lean: float) -> float:
    """Return how much longer the crotch seam should be, with this lean of the centre back."""
    back = back_centre(frame, front.legs, lean, 0.0)
    return frame.asked.crotch - front.centre.length - back.length


def _settled(frame: LegFrame, front: _Front, lean: float, extra: float) -> Rise:
    back = back_centre(frame, front.legs, lean, extra)
    for name, centre in (("front", front.centre), ("back", back)):
        _room_above_curve(frame, name, centre)
    _length_reached(frame, front.centre.length + back.length)
    return Rise(
        legs=front.legs,
        front=front.centre,
        back=back,
        seat=lean,
        front_rise=front.over,
        back_rise=back_rise(frame, lean) + extra,
        extra=extra,
        thigh=thigh_girth(frame, front.legs),
    )


def _room_above_curve(frame: LegFrame, name: str, centre: CentreEdge) -> None:
    """Refuse a centre whose crotch curve leaves no straight part below the waist."""
    straight = ((centre.top - centre.bend) / centre.heading).real
    if straight < LEAST_STRAIGHT * frame.rise:
        asked = frame.asked
        raise DraftError(
            f"the {name} crotch curve would reach up to the waist",
            value=f"a waist {frame.waist:.0f} mm over the crotch and a thigh of "
            f"{asked.girth['thigh']:.0f} on a hip of {asked.girth['hip']:.0f}",
            turn="measure body rise, thigh and total crotch length again, or raise the waist",
        )


def _length_reached(frame: LegFrame, length: float) -> None:
    """Refuse a crotch length that no thigh, seat angle and back rise together give."""
    wanted = frame.asked.crotch
    if abs(length - wanted) > tol.CROTCH_MATCH / 2:
        raise DraftError(
            "the crotch seam cannot have the length that was measured",
            value=f"{wanted:.0f} mm",
            reach=f"{length:.0f} mm or {'more' if length > wanted else 'less'}",
            turn="measure total crotch length, body rise, hip and thigh again",
        )


def _root(miss: Callable[[float], float], low: float, high: float) -> float:
    """Return where `miss` is 0 between two bounds; the better bound where it is never 0."""
    at_low, at_high = miss(low), miss(high)
    if at_low * at_high >= 0:
        return low if abs(at_low) < abs(at_high) else high
    return zero_between(miss, (low, high), (at_low, at_high), 1e-9)


def at_fork_limit(frame: LegFrame, rise: Rise) -> bool:
    """Return whether the fork stands at an end of its range, so that the thigh is what it is."""
    hip = frame.asked.body["hip"]
    share = rise.legs.fork / hip
    return share != clamp(share, FORK[0] + 1e-9, FORK[1] - 1e-9)
