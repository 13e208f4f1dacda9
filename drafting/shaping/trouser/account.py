"""What holds a trouser together and what is told of it: seams, girths, chains, facts. mm."""

from __future__ import annotations

from drafting.body import Body
from drafting.draft.by_role import edges_as
from drafting.draft.draft import EdgeRef, Girth, Seam, SeamNotch
from drafting.draft.piece import Piece
from drafting.draft.roles import EdgeRole, SeamKind
from drafting.shaping.flare.elastic import Elastic
from drafting.shaping.limbs import leg_girth_at
from drafting.shaping.torso.dart_mouth import dart_seams
from drafting.shaping.trouser.measures import TrouserMeasures
from drafting.shaping.trouser.notches import CLEAR, crotch_seam
from drafting.shaping.trouser.pieces import Openings
from drafting.shaping.trouser.seat import seat_of
from drafting.shaping.trouser.shape import LegShape


def trouser_seams(front: Piece, back: Piece, shape: LegShape) -> tuple[Seam, ...]:
    """Side, inside leg, both halves of the crotch, darts. Chains run as the front's edges do."""
    lower = shape.hems.front.side.length - (front["slit"].length if "slit" in front else 0.0)
    hip = lower + shape.rise.legs.side.length
    short = shape.frame.style.inseam_short
    knee = shape.rise.legs.front_inside.length
    closed = "slit" not in front
    return (
        Seam(
            "side",
            (("front", "side"),),
            (("back", "side"),),
            start="smooth" if closed else None,
            notches=tuple(SeamNotch(n, at, at) for n, at in (("knee", lower), ("hip", hip)) if at > CLEAR),
            kind=SeamKind.SIDE,
        ),
        Seam(
            "inside leg",
            (("front", "inseam"),),
            (("back", "inseam"),),
            short,
            eased=(0.0, knee) if short else None,
            notches=(SeamNotch("knee", knee, knee - short),),
            kind=SeamKind.INSEAM,
        ),
        crotch_seam(front),
        crotch_seam(back),
        *dart_seams(front),
        *dart_seams(back),
    )


def trouser_girths(body: Body, asked: TrouserMeasures, shape: LegShape) -> tuple[Girth, ...]:
    frame = shape.frame
    settled = {
        "waist": frame.waist_girth,
        "hip": seat_of(frame, shape.rise).girth,
        "thigh": shape.rise.thigh,
        "knee": frame.knee_girth,
    }
    leg = leg_girth_at(body, -frame.hem)
    hem = frame.hem_girth - leg
    found = [
        Girth(
            level,
            asked.body[level],
            asked.girth[level] - asked.body[level],
            garment - asked.body[level],
            stretch_used=asked.stretch.used,
            limb=level in ("thigh", "knee"),
        )
        for level, garment in settled.items()
    ]
    return (*found, Girth("trouser_hem", leg, hem, hem, limb=True))


def waist_chain(front: Piece, back: Piece) -> tuple[EdgeRef, ...]:
    """Return the waist from centre back over the side to centre front, darts left out."""
    return tuple((piece.name, edge.name) for piece in (back, front) for edge in edges_as(piece, EdgeRole.WAIST))


def trouser_facts(shape: LegShape, openings: Openings, elastic: Elastic | None) -> dict[str, float]:
    rise, frame = shape.rise, shape.frame
    facts = {
        "crotch_front": rise.front.length,
        "crotch_back": rise.back.length,
        "crotch_asked": frame.asked.crotch,
        "seat_lean": rise.seat,
        "front_rise": rise.front_rise,
        "back_rise": rise.back_rise,
        "fork": rise.legs.fork,
        "fork_drop": -rise.legs.back_tip.imag,
        "side_inset": shape.waist.shaping.side,
        "side_height": shape.waist.side.imag - frame.waist,
        "knee_width": frame.knee_girth,
        "hem_width": frame.hem_girth,
        "fly": openings.fly,
        "slit": openings.slit,
        "flare_degrees": shape.hems.turned,
    }
    if elastic:
        facts |= {"waist_elastic_loop": elastic.loop, "waist_elastic_cut": elastic.cut}
    return facts
