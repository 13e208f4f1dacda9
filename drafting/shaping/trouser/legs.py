"""Fork, inside seams and side seam for one width of fork, and the thigh that they give. mm.

The side seam is one shape for both pieces and so are the lower inside seams; front and back inside
seams share their direction at the knee. So only knee to fork has to be made equal: the back fork
drops until it is.
"""

from __future__ import annotations

import cmath
import math
from dataclasses import dataclass

from drafting.geometry import Cubic, unit
from drafting.geometry.heights import x_at
from drafting.geometry.solve import root_near, zero_between
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.shaping.trouser.curves import (
    clamp,
    curve_with_handles,
    direction_between,
    one_way_curve,
    rising_direction,
)
from drafting.shaping.trouser.frame import LegFrame

FRONT_SHARE = 0.40
"""Front share of the whole fork (`Source.ALDRICH` 0.4, `Source.TEXTBOOK_FORK` a third; ours)."""

KNEE_TURN, FORK_TURN = 0.42, 0.55
"""How far the inside seam's direction turns from the lower leg to the chord at the knee, and beyond
the chord at the fork: one sign of curvature (ours)."""

SIDE_TURN, SIDE_BENT = 0.80, math.radians(5.0)
"""The same turn at the knee of a side seam that is straight above it; bent by the second at the hip,
it is a rounded one again (ours)."""

SIDE_KNEE, SIDE_HIP = 0.34, 0.40
"""Handles of the side seam, of its chord: hollow over the knee, round at the hip (ours)."""

FORK = (0.09, 0.29)
"""Least and greatest whole fork, of the hip (`Source.ANSUR_II`, 1-99 %: 0.11 to 0.27; ours)."""

DEEPEST_DROP = 0.20
"""The back fork may drop so far, of the hip (`Source.ANSUR_II`, 1-99 %: 1.5 to 15.6 mm; ours)."""

THIGH_UNDER_FORK = 5.0
"""mm at a hip of 1,000: the thigh is measured at least so far under the back fork (ours)."""


@dataclass(frozen=True, slots=True)
class Legs:
    """Both legs for one width of `fork`. Curves run upwards; `up` are directions at the fork.

    `half` is half the front crotch width (the crease lies in its middle), `side` the front's side
    seam from knee to hip, `knee_in` and `knee_side` the directions in which the edges pass the knee.
    """

    fork: float
    half: float
    front_tip: complex
    back_tip: complex
    front_inside: Cubic
    back_inside: Cubic
    front_up: complex
    back_up: complex
    side: Cubic
    knee_in: complex
    knee_side: complex


def draw_legs(frame: LegFrame, fork: float) -> Legs:
    """Return the legs; raises `DraftError` where no drop makes the inside seams equal."""
    half = (frame.front_hip + FRONT_SHARE * fork) / 2
    front_tip = complex(half, 0.0)
    knee = complex(frame.knee_half, frame.knee)
    knee_in = direction_between(frame.shin, front_tip - knee, KNEE_TURN)
    front, front_up = _inside(knee, front_tip, knee_in)
    back_x = -half - frame.wider + frame.back_hip + (1 - FRONT_SHARE) * fork
    wanted = front.length - frame.style.inseam_short
    back, back_up = _back_inside(frame, knee + frame.wider, back_x, knee_in, wanted)
    side, knee_side = _side(frame, half)
    return Legs(
        fork=fork,
        half=half,
        front_tip=front_tip,
        back_tip=back.d,
        front_inside=front,
        back_inside=back,
        front_up=front_up,
        back_up=back_up,
        side=side,
        knee_in=knee_in,
        knee_side=knee_side,
    )


def _side(frame: LegFrame, half: float) -> tuple[Cubic, complex]:
    """Return the front's side seam from knee to hip, and its direction at the knee.

    Where it runs straight on to the hip, its turn at the knee is left to the lower leg.
    """
    knee, hip = complex(-frame.knee_half, frame.knee), complex(-half, frame.hip)
    at_hip = rising_direction(frame.side_lean)
    bent = abs(cmath.phase(at_hip / (hip - knee)))
    straight = clamp(1 - bent / SIDE_BENT, 0.0, 1.0)
    turn = KNEE_TURN + straight * (SIDE_TURN - KNEE_TURN)
    at_knee = direction_between(-frame.shin.conjugate(), hip - knee, turn)
    return curve_with_handles(knee, at_knee, hip, at_hip, SIDE_KNEE, SIDE_HIP), at_knee


def _inside(knee: complex, tip: complex, knee_in: complex) -> tuple[Cubic, complex]:
    """Return the inside seam from knee to fork, and its direction at the fork."""
    chord = unit(tip - knee)
    up = chord * unit(direction_between(1 + 0j, chord / knee_in, FORK_TURN))
    return one_way_curve(knee, knee_in, tip, up), up


def _back_inside(
    frame: LegFrame, knee: complex, x: float, knee_in: complex, wanted: float
) -> tuple[Cubic, complex]:
    """Return the back inside seam with its fork dropped until it has the `wanted` length."""

    def over(drop: float) -> float:
        return _inside(knee, complex(x, -drop), knee_in)[0].length - wanted

    low, high = 0.0, 12.0 * frame.unit
    at_low, at_high = over(low), over(high)
    for _ in range(12):  # secant: the length is nearly linear in the drop
        if abs(at_high) < 1e-9 or at_high == at_low:
            break
        low, high, at_low = high, high - at_high * (high - low) / (at_high - at_low), at_high
        at_high = over(high)
    if abs(at_high) > 1e-6 or abs(high) > DEEPEST_DROP * frame.asked.body["hip"]:
        raise DraftError(
            "the inside leg seams of front and back cannot be made equal",
            value=f"knee {told(-frame.knee)} below the crotch, back fork {told(x)} from the crease",
            turn="measure inside leg, knee height and thigh again: the leg is too short for this thigh",
        )
    return _inside(knee, complex(x, -high), knee_in)


def thigh_level(frame: LegFrame, legs: Legs) -> float:
    """Return the y of the thigh line, always a little under the back fork."""
    return min(frame.thigh, legs.back_tip.imag - THIGH_UNDER_FORK * frame.unit)


def thigh_girth(frame: LegFrame, legs: Legs) -> float:
    """Return the girth of one leg at the thigh line, mm."""
    y = thigh_level(frame, legs)
    side = x_at(legs.side, y)
    return x_at(legs.front_inside, y) + x_at(legs.back_inside, y) - 2 * side + frame.wider


def fork_for(frame: LegFrame, thigh: float) -> float:
    """Return the whole fork that gives the thigh, or the nearest end of its range."""

    def miss(fork: float) -> float:
        return thigh_girth(frame, draw_legs(frame, fork)) - thigh

    low, high = (share * frame.asked.body["hip"] for share in FORK)
    found = root_near(miss, (low + high) / 2, (low, high), 1e-7)
    if found is not None:
        return found
    at_low, at_high = miss(low), miss(high)
    if at_low > 0 or at_high < 0:
        return low if at_low > 0 else high
    return zero_between(miss, (low, high), (at_low, at_high), 1e-9)
