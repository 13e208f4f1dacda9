"""Front rise, seat angle and fork, settled together so that the crotch length is exact. mm.

The rule where measures conflict: the total crotch length always holds, and a measured front part of
it: its waist rises over a belly and falls without one. A split that was not measured is followed while
the centre front rises between -3 and +3.5 % of the hip, over a belly more, then moved. The thigh is as
asked while the seat angle stays in its range; past it the thigh moves inside its band; past that the
back rise.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from drafting.geometry.solve import root_near, zero_between
from drafting.ground import tolerances as tol
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.shaping.trouser.centre import CentreEdge, back_centre, back_rise, front_centre
from drafting.shaping.trouser.curves import clamp
from drafting.shaping.trouser.frame import LegFrame
from drafting.shaping.trouser.legs import FORK, Legs, draw_legs, fork_for, thigh_girth

FRONT_RISE, FRONT_RISE_SEATED = (-0.030, 0.035), (-0.09, 0.035)
"""How far the centre front may lie under or over the waist level, of the hip (ours)."""

FRONT_KEPT = (-0.14, 0.20)
"""The same where the front crotch was measured: it is kept (ours; `Source.ANSUR_II`: -0.09 to 0.08)."""

FRONT_MOVED = 9.5
"""mm at adult scale: so much a measured front may get from the back where its waist would lie low."""

LOWEST_FRONT = 0.80
"""It falls by at most so much of the way from waist to hip (ours)."""

BELLY_FROM, BELLY_RISE = 0.90, 0.35
"""Over this waist, of the hip, the centre front may rise farther, by this share of what is over (ours)."""

SEAT, SEAT_SEATED = (0.035, 0.38), (0.035, 0.64)
"""Least and greatest lean of the centre back, tangent: 2 to 21 degrees, seated 33 (ours)."""

MOST_LOWERED, SHORTEST_FORK = 0.40, 0.04
"""The back waist is lowered by at most so much of waist to hip, and the fork shortened down to so much
of the hip, for a crotch length that is too short for its thigh (ours)."""

ROOMY_LEAN = 0.25
"""A centre back that leans so far has room over its curve, or the fork is too long (ours)."""

LEAST_STRAIGHT = 0.05
"""Straight part of a centre line at least, of waist to hip (ours)."""


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


def settle_rise(frame: LegFrame) -> Rise:
    """Return the rise whose crotch seam has the asked length, by the rule above."""
    fork = _roomy_fork(frame, fork_for(frame, frame.asked.girth["thigh"]), ROOMY_LEAN)
    front = _with_front(frame, draw_legs(frame, fork))
    low, high = _seat_range(frame, front.legs)
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


def _seat_range(frame: LegFrame, legs: Legs) -> tuple[float, float]:
    """Return the leans of the centre back between which the fork still has a reach of its own.

    A back that leans so far that its curve would reach up to the waist leans less.
    """
    low, high = SEAT_SEATED if frame.asked.seated else SEAT
    leaves = 0.6 * 0.6 * legs.fork / max(frame.hip, 1.0)
    high = max(low + 0.03, min(high, leaves))

    def room(lean: float) -> float:
        return _straight(back_centre(frame, legs, lean, 0.0)) - 2 * LEAST_STRAIGHT * frame.rise

    if room(high) >= 0 or room(low) <= 0:
        return low, high
    return low, _root(room, low, high)


def _roomy_fork(frame: LegFrame, fork: float, lean: float) -> float:
    """Return the fork, shorter where the back curve that it asks for at this lean would reach the waist."""

    def room(shorter: float) -> float:
        back = back_centre(frame, draw_legs(frame, shorter), lean, 0.0)
        return _straight(back) - 3 * LEAST_STRAIGHT * frame.rise

    if room(fork) >= 0:
        return fork
    return _root(room, SHORTEST_FORK * frame.asked.body["hip"], fork)


def _past(frame: LegFrame, asked: _Front, lean: float, thigh: float) -> Rise:
    """Return the rise with the seat angle at its bound: the thigh moves, then the back rise."""
    other = _with_front(frame, draw_legs(frame, _roomy_fork(frame, fork_for(frame, thigh), lean)))
    before, after = _missing(frame, asked, lean), _missing(frame, other, lean)
    if before * after < 0:

        def miss(fork: float) -> float:
            return _missing(frame, _with_front(frame, draw_legs(frame, fork)), lean)

        fork = _root(miss, asked.legs.fork, other.legs.fork)
        return _settled(frame, _with_front(frame, draw_legs(frame, fork)), lean, 0.0)
    wanted = frame.asked.crotch - other.centre.length

    def over(extra: float) -> float:
        return back_centre(frame, other.legs, lean, extra).length - wanted

    reach, lowest = 3 * abs(after) + 30 * frame.unit, -MOST_LOWERED * frame.rise
    if over(lowest) > 0:
        return _shorter_fork(frame, other.legs.fork, lean, lowest)
    return _settled(frame, other, lean, _root(over, max(-reach, lowest), reach))


def _shorter_fork(frame: LegFrame, fork: float, lean: float, extra: float) -> Rise:
    """Return the rise with the back as low as it may be, and so short a fork that the length holds."""

    def over(shorter: float) -> float:
        front = _with_front(frame, draw_legs(frame, shorter))
        back = back_centre(frame, front.legs, lean, extra)
        return front.centre.length + back.length - frame.asked.crotch

    found = _root(over, SHORTEST_FORK * frame.asked.body["hip"], fork)
    return _settled(frame, _with_front(frame, draw_legs(frame, found)), lean, extra)


def _with_front(frame: LegFrame, legs: Legs) -> _Front:
    """Return the legs with the front rise that its part of the crotch length asks for."""
    low, high = _front_range(frame)
    wanted = frame.asked.crotch_front

    def miss(rise: float) -> float:
        return front_centre(frame, legs, rise).length - wanted

    over = root_near(miss, clamp(-miss(0.0), low, high), (low, high), 1e-7)
    if over is None:
        over = low if miss(low) > 0 else high if miss(high) < 0 else _root(miss, low, high)
    if frame.asked.front_measured and not frame.asked.front_chosen:
        over += min(max(-off_level(frame, over), 0.0), FRONT_MOVED * frame.asked.scale)
    return _Front(legs, over, front_centre(frame, legs, over))


def _front_range(frame: LegFrame) -> tuple[float, float]:
    """Return how far under and over the waist level the centre front may lie, mm."""
    asked = frame.asked
    hip = asked.body["hip"]
    if asked.front_measured or asked.front_chosen:
        return max(FRONT_KEPT[0] * hip, -LOWEST_FRONT * frame.rise), FRONT_KEPT[1] * hip
    low, high = FRONT_RISE_SEATED if asked.seated else FRONT_RISE
    belly = BELLY_RISE * max(0.0, asked.body["waist"] - BELLY_FROM * hip)
    return low * hip, high * hip + belly


def off_level(frame: LegFrame, front_rise: float) -> float:
    """Return by how much the centre front lies higher (or lower, below 0) than waists of most do, mm."""
    low, high = (
        (FRONT_RISE_SEATED if frame.asked.seated else FRONT_RISE)[k] * frame.asked.body["hip"] for k in (0, 1)
    )
    return front_rise - clamp(front_rise, low, high)


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


def _straight(centre: CentreEdge) -> float:
    """Return how much of a centre edge is straight, mm; below 0 where its curve passes the waist."""
    return ((centre.top - centre.bend) / centre.heading).real


def _room_above_curve(frame: LegFrame, name: str, centre: CentreEdge) -> None:
    """Refuse a centre whose crotch curve leaves no straight part below the waist."""
    if _straight(centre) < LEAST_STRAIGHT * frame.rise:
        asked = frame.asked
        raise DraftError(
            f"the {name} crotch curve would reach up to the waist",
            value=f"a waist {told(frame.waist)} over the crotch and a thigh of "
            f"{told(asked.girth['thigh'])} on a hip of {told(asked.girth['hip'])}",
            turn="measure body rise, thigh and total crotch length again, or raise the waist",
        )


def _length_reached(frame: LegFrame, length: float) -> None:
    """Refuse a crotch length that no thigh, seat angle and back rise together give."""
    wanted = frame.asked.crotch
    if abs(length - wanted) > tol.CROTCH_MATCH / 2:
        raise DraftError(
            "the crotch seam cannot have the length that was measured",
            value=told(wanted),
            reach=f"{told(length)} or {'more' if length > wanted else 'less'}",
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
