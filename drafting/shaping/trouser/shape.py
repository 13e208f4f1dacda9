"""Everything of a trouser settled: the knee wide enough for the calf, the side leaning as it must.

Knee and lean change the frame, so the draft is made again until both stand still: once for most
bodies in woven cloth, two to four times in stretch. A lean that swings to and fro (a low, large waist
draws the seat in by what the side leans out) is taken between the two it swings between.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache

from drafting.shaping.trouser.curves import clamp
from drafting.shaping.trouser.frame import LegFrame, LegStyle, frame_leg
from drafting.shaping.trouser.hem import Hems, calf_misses, draw_hems
from drafting.shaping.trouser.legs import draw_legs
from drafting.shaping.trouser.measures import TrouserMeasures
from drafting.shaping.trouser.rise import Rise
from drafting.shaping.trouser.seat import fit_seat
from drafting.shaping.trouser.waist import Waist, settle_waist

TRIES = 12
"""How often the draft is made again; it settles in two or three."""

SETTLED = 0.002
"""The lean stands still when it moves by less than this (tangent, a tenth of a degree)."""

MOST_LEAN = 0.35
"""The side leans out at the hip by at most this (tangent, 19 degrees; ours)."""


@dataclass(frozen=True)
class LegShape:
    """One leg settled: levels and widths, fork and centres, waist, and what lies below the knee."""

    frame: LegFrame
    rise: Rise
    waist: Waist
    hems: Hems


def settle_shape(asked: TrouserMeasures, style: LegStyle) -> LegShape:
    """Return the settled shape; raises `DraftError` where these measures do not make one."""
    knee_more, lean = 0.0, 0.0
    steeper, flatter = None, None  # the tried leans nearest to the right one, each with its wanted one
    for _ in range(TRIES):
        frame, knee_more = _passing_calf(asked, style, knee_more, lean)
        seat, rise, waist = _above_knee(frame.without_hem)
        up = waist.side - complex(-rise.legs.half, frame.hip)
        wanted = clamp(-up.real / up.imag, 0.0, MOST_LEAN)
        if abs(wanted - lean) < SETTLED:
            break
        if wanted > lean:
            flatter = lean, wanted
        else:
            steeper = lean, wanted
        lean = _between(flatter, steeper) if flatter and steeper else wanted
    frame = replace(frame, front_hip=seat.front_hip, back_hip=seat.back_hip)
    return LegShape(frame, rise, waist, draw_hems(frame, rise.legs))


def _between(flatter: tuple[float, float], steeper: tuple[float, float]) -> float:
    """Return where the lean is as wanted, on the straight line through two tries."""
    short, over = flatter[1] - flatter[0], steeper[0] - steeper[1]
    return flatter[0] + (steeper[0] - flatter[0]) * short / (short + over)


@lru_cache(maxsize=32)
def _above_knee(frame: LegFrame) -> tuple[LegFrame, Rise, Waist]:
    """Return frame, rise and waist, which no slider of the hem moves while the leg is flared."""
    seat, rise = fit_seat(frame)
    return seat, rise, settle_waist(seat, rise)


def _passing_calf(
    asked: TrouserMeasures, style: LegStyle, knee_more: float, lean: float
) -> tuple[LegFrame, float]:
    """Return the frame with the knee widened until the calf passes, and by how much it was."""
    fork = 0.19 * asked.body["hip"]  # the median fork; the lower leg hardly depends on it
    for _ in range(TRIES):
        frame = frame_leg(asked, style, knee_more, lean)
        short = calf_misses(frame, draw_hems(frame, draw_legs(frame, fork)))
        if short < 0.02:
            break
        knee_more += short  # the leg follows by two thirds of it or more
    return frame, knee_more
