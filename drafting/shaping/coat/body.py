"""The coat body settled and drawn: girths exact at bust and waist, then pieces, seams, findings."""

from __future__ import annotations

from dataclasses import dataclass

from drafting.body import Body
from drafting.draft import Draft, Girth
from drafting.findings import Finding
from drafting.piece import Placement
from drafting.shaping.coat.body_pieces import (
    CHAINS,
    back_piece,
    body_seams,
    facing_piece,
    front_piece,
    half_waist,
    side_piece,
    tail_front,
)
from drafting.shaping.coat.lapel import FrontEdge, Fronts, front_edge
from drafting.shaping.coat.shape import CoatShape, coat_shape, gaps
from drafting.shaping.torso import TorsoEase

CLOSE = 1e-3
"""mm: how near the half bust and half waist come to what is wanted."""


@dataclass(frozen=True)
class CoatBody:
    """The settled shape and front, and how far from the centre front the tails start."""

    shape: CoatShape
    front: FrontEdge
    tails_at: float


def settle_body(
    body: Body, ease: TorsoEase, drop: float, asked: Fronts, cutaway: float
) -> CoatBody:
    """Return the body whose drawn bust and waist are those asked for.

    What shaped seams take out at the bust line, and slanting edges add at the waist, is measured
    and made good (the secant rule on each of the two).
    """
    chest = body["bust_girth"] + ease.bust
    wanted = (body["waist_girth"] + ease.waist) / 2
    more, tried = (20.0, 0.0), ((0.0, 0.0), (-15.0, 1.0))
    for _ in range(12):
        shape = coat_shape(body, ease, drop, more)
        front = front_edge(shape, asked, chest)
        miss = gaps(shape) - more[0], wanted - half_waist(shape, front)
        if max(map(abs, miss)) < CLOSE:
            break
        steps = [_step(more[i], miss[i], tried[0][i], tried[1][i]) for i in (0, 1)]
        tried, more = (more, miss), (more[0] + steps[0], more[1] + steps[1])
    return CoatBody(shape, front, tail_front(shape, cutaway))


def _step(now: float, miss: float, then: float, missed: float) -> float:
    """Return the secant step; a plain one where the two tries do not tell a slope near -1."""
    slope = (miss - missed) / (now - then) if abs(now - then) > 1e-9 else -1.0
    return -miss / slope if -1.6 < slope < -0.4 else miss


def body_draft(
    body: Body, ease: TorsoEase, drawn: CoatBody, buttons: tuple[Placement, ...] = ()
) -> Draft:
    """Return the body's pieces, seams, girths, facts and chains; `buttons` are drawn on the front."""
    shape, plan = drawn.shape, drawn.shape.plan
    front = front_piece(shape, drawn.front, drawn.tails_at, buttons)
    pieces = (back_piece(shape), side_piece(shape), front, facing_piece(front))
    return Draft(
        pieces, body_seams(shape, ease.shoulder), _girths(body, ease, shape),
        (*plan.findings, *_said(drawn)), _facts(drawn), dict(CHAINS),
    )  # fmt: skip


def _girths(body: Body, ease: TorsoEase, shape: CoatShape) -> tuple[Girth, ...]:
    plan = shape.plan
    back, front = body["across_back_width"], body["across_front_width"]
    return (
        Girth("bust", body["bust_girth"], ease.bust, ease.bust),
        Girth("waist", body["waist_girth"], ease.waist, ease.waist),
        Girth("across_back", back, ease.across_back, 2 * plan.across_back - back),
        Girth("across_front", front, ease.across_front, 2 * plan.across_front - front),
    )


def _facts(drawn: CoatBody) -> dict[str, float]:
    shape, plan = drawn.shape, drawn.shape.plan
    return {
        "scale": plan.scale, "bust_shaping_degrees": plan.kappa,
        "taken_centre_back": shape.taken.centre, "taken_back_seam": shape.taken.back,
        "taken_front_seam": shape.taken.front, "front_edge_out": shape.taken.belly,
        "waist_half": plan.waist_half, "scye_depth": -plan.underarm,
        "shoulder_slope": plan.shoulder.slope_front,
    }  # fmt: skip


def _said(drawn: CoatBody) -> tuple[Finding, ...]:
    taken = drawn.shape.taken
    found = [Finding(
        "suppression", "note", "coat body", taken.centre + taken.back + taken.front, None,
        f"Each half of the coat is taken in at the waist by {taken.centre:.0f} mm at the centre back, "
        f"{taken.back:.0f} mm at the back seam and {taken.front:.0f} mm at the front seam.",
    ), Finding(
        "let out", "note", "coat body", "25-50 mm", None,
        "A costume that will be worn by others: allow 25 to 50 mm at the centre back and the back seam to "
        "let out.",
    )]  # fmt: skip
    if taken.belly > 1:
        found.append(Finding(
            "front edge", "note", "front", taken.belly, 0.0,
            f"The waist is large for the chest: the centre front moves out by {taken.belly:.0f} mm at the "
            "waist, and the front edge with it.",
        ))  # fmt: skip
    return tuple(found)
