"""The hip on the outline: crotch curves that have begun there count, and the centre lines make room. mm.

Above the curves a centre line bounds the piece. Where a curve has begun at the hip level already the
cloth is wider than to the line, so the curves are hollowed and the lines come in until the outline has
the girth asked for; no farther than the trunk above allows, and what is left over is ease that is told.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.geometry import Cubic
from drafting.geometry.heights import x_at
from drafting.geometry.solve import zero_between
from drafting.shaping.trouser.centre import CentreEdge
from drafting.shaping.trouser.frame import LegFrame
from drafting.shaping.trouser.rise import Rise, settle_rise


@dataclass(frozen=True, slots=True)
class Seat:
    """Where the hip level leaves front and back at the centre, and the girth all round it, mm."""

    front: complex
    back: complex
    girth: float


def seat_of(frame: LegFrame, rise: Rise) -> Seat:
    """Return the hip as the outlines have it: to the centre line, its curve or the inside seam."""
    legs = rise.legs
    front = _edge_at(frame.hip, rise.front, legs.front_inside)
    back = _edge_at(frame.hip, rise.back, legs.back_inside)
    half = front.real + back.real + 2 * legs.half + frame.wider
    return Seat(front, back, 2 * half)


def _edge_at(y: float, centre: CentreEdge, inside: Cubic) -> complex:
    """Return where an edge that runs up the inside seam, the curve and the centre line reaches `y`."""
    if y >= centre.bend.imag:
        return centre.on_hip
    if y >= centre.curve.d.imag:
        return complex(x_at(centre.curve, y), y)
    return complex(x_at(inside, y), y)


def fit_seat(frame: LegFrame) -> tuple[LegFrame, Rise]:
    """Return the frame, its seat drawn in as far as the hip on the outline asks, and its rise."""
    wanted = frame.asked.girth["hip"]
    found: dict[float, Rise] = {}

    def over(share: float) -> float:
        closer = frame.drawn_in(share)
        found[share] = settle_rise(closer)
        return seat_of(closer, found[share]).girth - wanted

    at_rule = over(0.0)
    if at_rule <= 1e-6:
        return frame, found[0.0]
    at_most = over(1.0)
    share = 1.0 if at_most >= 0 else zero_between(over, (0.0, 1.0), (at_rule, at_most), 1e-9)
    closer = frame.drawn_in(share)
    return closer, found.get(share) or settle_rise(closer)
