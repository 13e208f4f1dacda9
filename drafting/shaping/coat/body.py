"""The coat body settled and drawn: girths exact at bust and waist, then pieces, seams, findings."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from drafting.body import Body
from drafting.body.sides import both_sides
from drafting.draft.draft import Draft, Girth
from drafting.draft.piece import Piece, Placement
from drafting.geometry.area import is_simple
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.scale import body_scale
from drafting.shaping.coat.body_pieces import (
    back_piece,
    body_seams,
    chains,
    facing_piece,
    front_piece,
    half_waist,
    side_piece,
    tail_front_most,
)
from drafting.shaping.coat.lapel import FrontEdge, Fronts, Lapel, front_edge, lapel_reach
from drafting.shaping.coat.shape import CoatShape, bust_line_gaps, coat_shape
from drafting.shaping.torso.plan import TorsoEase, TorsoPlan, plan_torso
from drafting.shaping.torso.shape import TorsoKind, fit_drop

LEAST_WAIST = 12.0
"""mm at adult scale: least width of forepart and side body at the waist (ours)."""

CLOSE = 1e-3
"""mm: how near the half bust and half waist come to what is wanted."""


@dataclass(frozen=True)
class CoatBody:
    """The settled shape and front; how far from the centre front the tails start, and were asked to, mm."""

    shape: CoatShape
    front: FrontEdge
    tails_at: float
    tails_asked: float


def settle_body(body: Body, ease: TorsoEase, drop: float, asked: Fronts, cutaway: float) -> CoatBody:
    """Return the body whose drawn bust and waist are those asked for.

    What shaped seams take out at the bust line, and slanting edges add at the waist, is measured
    and made good (the secant rule on each of the two).
    """
    chest = body["bust_girth"] + ease.bust
    wanted = (body["waist_girth"] + ease.waist) / 2
    more, tried, both = (20.0, 0.0), ((0.0, 0.0), (-15.0, 1.0)), _plan_of_both(body, ease)
    for _ in range(20):
        shape = coat_shape(body, ease, drop, more)
        _has_a_front(shape, chest, 2 * wanted)
        front = front_edge(shape, asked, chest, both or shape.plan)
        miss = bust_line_gaps(shape) - more[0], wanted - half_waist(shape, front)
        if max(map(abs, miss)) < CLOSE:
            asked_at = cutaway * shape.plan.waist_half
            return CoatBody(shape, front, min(asked_at, tail_front_most(shape)), asked_at)
        steps = [_step(more[i], miss[i], tried[0][i], tried[1][i]) for i in (0, 1)]
        tried, more = (more, miss), (more[0] + steps[0], more[1] + steps[1])
    raise _apart(chest, 2 * wanted)


def _plan_of_both(body: Body, ease: TorsoEase) -> TorsoPlan | None:
    """Return the plan of both hands of an uneven body, by which its two lapels lie; None on an even one."""
    both = both_sides(body)
    if both is body:
        return None
    return plan_torso(both, ease, fit_drop(both, ease, TorsoKind()), body_scale(body))


def _has_a_front(shape: CoatShape, chest: float, waist: float) -> None:
    """Raise where so much is taken in that the forepart or the side body has no waist left."""
    fore = shape.front_panel.end.real + shape.taken.belly
    side = shape.across(shape.front_partner.end).real - shape.back_partner.end.real
    if min(fore, side) < LEAST_WAIST * shape.plan.scale:
        raise _apart(chest, waist)


def _apart(chest: float, waist: float) -> DraftError:
    return DraftError(
        "bust and waist are too far apart for a coat of three panels",
        value=f"finished bust {told(chest)}, finished waist {told(waist)}",
        turn="choose less bust ease or more waist ease, or check both girths and the back waist length",
    )


def _step(now: float, miss: float, then: float, missed: float) -> float:
    """Return the secant step; a plain one where the two tries tell no falling slope."""
    slope = (miss - missed) / (now - then) if abs(now - then) > 1e-9 else -1.0
    return -miss / slope if -1.6 < slope < -0.08 else miss


def body_draft(body: Body, ease: TorsoEase, drawn: CoatBody, buttons: tuple[Placement, ...] = ()) -> Draft:
    """Return the body's pieces, seams, girths, facts and chains; `buttons` are drawn on the front."""
    shape, plan = drawn.shape, drawn.shape.plan
    front = front_piece(shape, drawn.front, drawn.tails_at, buttons)
    pieces = (front, side_piece(shape), back_piece(shape), facing_piece(front))
    _simple(pieces[:3], body)
    return Draft(
        pieces,
        body_seams(shape, ease.shoulder, front),
        _girths(body, ease, shape),
        (*plan.findings, *_said(drawn)),
        _facts(drawn),
        chains(front),
    )


def _simple(pieces: tuple[Piece, ...], body: Body) -> None:
    """Raise for measures so far apart that a piece would lie over itself."""
    for piece in pieces:
        if not is_simple(piece.outline):
            raise DraftError(
                f"the {piece.title.lower()} would lie over itself",
                value=f"across back {told(body['across_back_width'])}, across front "
                f"{told(body['across_front_width'])} at a bust of {told(body['bust_girth'])}",
                turn="measure the widths across and the bust point width again",
            )


def _girths(body: Body, ease: TorsoEase, shape: CoatShape) -> tuple[Girth, ...]:
    plan = shape.plan
    back, front = body["across_back_width"], body["across_front_width"]
    return (
        Girth("bust", body["bust_girth"], ease.bust, ease.bust),
        Girth("waist", body["waist_girth"], ease.waist, ease.waist),
        Girth("across_back", back, ease.across_back, 2 * plan.across_back - back, width=True),
        Girth("across_front", front, ease.across_front, 2 * plan.across_front - front, width=True),
    )


def _facts(drawn: CoatBody) -> dict[str, float]:
    shape, plan = drawn.shape, drawn.shape.plan
    return {
        "scale": plan.scale,
        "bust_shaping_degrees": plan.kappa,
        "taken_centre_back": shape.taken.centre,
        "taken_back_seam": shape.taken.back,
        "taken_front_seam": shape.taken.front,
        "front_edge_out": shape.taken.belly,
        "waist_half": plan.waist_half,
        "scye_depth": -plan.underarm,
        "shoulder_slope": plan.shoulder.slope_front,
        "tails_at": drawn.tails_at,
        "tails_asked": drawn.tails_asked,
    }


def _said(drawn: CoatBody) -> tuple[Finding, ...]:
    taken = drawn.shape.taken
    whole = taken.centre + taken.back + taken.front
    return (
        Finding(
            "suppression",
            "note",
            "coat body",
            whole,
            None,
            f"Each half coat is taken in by {told(whole)} at the waist: {told(taken.centre)} at the centre back, "
            f"{told(taken.back)} at the back seam and {told(taken.front)} at the front seam.",
        ),
        Finding(
            "letting out",
            "note",
            "coat body",
            "25-50 mm",
            None,
            f"A costume that will be worn by others wants {told(25.0)} to {told(50.0)} of allowance at the centre "
            "back and the panel seams: ask for let_out.",
        ),
        *_front_said(drawn),
    )


def _front_said(drawn: CoatBody) -> Iterator[Finding]:
    """Yield what is to be said of the lapel and of a front edge that a large waist moves out."""
    upper, most = drawn.front.upper, drawn.shape.plan.across_front
    if isinstance(upper, Lapel) and (reach := lapel_reach(upper)) > most:
        yield Finding(
            "lapel",
            "warning",
            "front",
            reach,
            most,
            f"The lapel's tip, folded over, reaches {told(reach - most)} past the across front into the "
            "armhole: choose a narrower lapel.",
        )
    belly = drawn.shape.taken.belly
    if belly > 1:
        yield Finding(
            "front edge",
            "note",
            "front",
            belly,
            0.0,
            f"The waist is large for the chest: the centre front moves out by {told(belly)} at the "
            "waist, and the front edge with it.",
        )
