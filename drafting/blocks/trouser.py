"""Trouser: front and back of one leg, woven with darts and fly, or in stretch with a casing.

Drafted from direct measures at the waist level of the body file. The crotch seam is solved to the
total crotch length; the construction is ours. The wearer's left leg, seen from outside.

             back                             front
         waist_centre                      waist_centre
        .--. waist_dart                    waist_dart .--.
    side |  \\/---.                           .---\\/  | fly
   waist |        \\ crotch                  |         |
         |         \\                  crotch|         | side
    side |          '-.                   .-'         |
         |             '.               .'            |
         |     |        / inseam inseam \\       |     |
         |   crease    /                 \\   crease   |
          |    |      |                   |     |    |
          '----+------'                   '-----+----'
              hem                              hem
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.body import Body
from drafting.draft.by_role import edges_as
from drafting.draft.draft import Draft, EdgeRef, Girth, Seam, SeamNotch
from drafting.draft.piece import Piece
from drafting.draft.roles import EdgeRole, SeamKind
from drafting.fabric import Fabric
from drafting.ground.choices import choice
from drafting.ground.scale import body_scale
from drafting.ground.sources import AS_ASKED, BY_EYE, TRIED, Source, cite, ours, practice
from drafting.shaping.flare.elastic import Elastic, casing_depth, elastic_loop, elastic_notion
from drafting.shaping.shared_choices import stretch_share
from drafting.shaping.stretch import settle_stretch
from drafting.shaping.torso.dart_mouth import dart_seams
from drafting.shaping.trouser.frame import LegStyle
from drafting.shaping.trouser.measures import TrouserMeasures, trouser_measures
from drafting.shaping.trouser.pieces import CutSettings, Openings, draw_pieces
from drafting.shaping.trouser.remarks import openings_said, trouser_findings
from drafting.shaping.trouser.shape import LegShape, settle_shape

ELASTIC_WIDTH = 25.0
"""mm at adult scale: width of the waist elastic (common practice)."""

LEAST_SLIT = 40.0
"""mm at adult scale: a shorter slit at the hem is not worth making (ours)."""

FLY_ABOVE_BEND = 10.0
"""mm at adult scale: a fly ends so far above the bend of the crotch seam (ours)."""


BELOW_KNEE = 0.155
"""Of the inside leg: how far below the kneecap a leg ends that is to end below the knee (ours)."""


@dataclass(frozen=True)
class Choices:
    """What a maker may choose about the trouser. Eases are garment minus body, in mm."""

    waist_ease: float = choice(
        16.0,
        "mm",
        "garment minus body at the waist (not where stretch is used)",
        low=-300,
        high=300,
        scales=True,
        source=cite(Source.EASE_IN_CLOTHING, "13 to 19 mm for trousers"),
    )
    hip_ease: float = choice(
        55.0,
        "mm",
        "garment minus body at the hip (not where stretch is used)",
        low=-300,
        high=400,
        step=5,
        scales=True,
        source=cite(Source.EASE_IN_CLOTHING, "51 to 70 mm"),
    )
    thigh_ease: float = choice(
        70.0,
        "mm",
        "garment minus body at the top of the thigh",
        low=-200,
        high=400,
        step=5,
        scales=True,
        source=(cite(Source.EASE_IN_CLOTHING, "25 mm at the least"), TRIED),
    )
    knee_ease: float = choice(
        80.0, "mm", "garment minus body at the knee", low=-200, high=400, step=5, scales=True, source=TRIED
    )
    crotch_ease: float = choice(
        12.0,
        "mm",
        "crotch seam minus total crotch length",
        low=-40,
        high=120,
        scales=True,
        source=ours("2 % of the length, by how many of the 3,034 people of ANSUR II draft well"),
    )
    leg_length: float = choice(
        0.0,
        "mm",
        "length added at the hem, which else just clears the shoe",
        low=-500,
        high=300,
        step=5,
        group="length",
        source=AS_ASKED,
    )
    leg: str = choice(
        "straight",
        "word",
        "how the leg falls below the knee",
        words=("straight", "tapered", "flared"),
        group="style",
        source=practice(),
    )
    leg_ends: str = choice(
        "shoe",
        "word",
        "where the leg ends, before leg_length is added",
        words=("shoe", "below the knee"),
        group="length",
        source=practice(),
    )
    hem_width: float = choice(
        0.0,
        "mm",
        "hem all round one leg; 0 lets the leg's style decide",
        low=0,
        high=3000,
        step=10,
        group="style",
        source=AS_ASKED,
    )
    waist_finish: str = choice(
        "waistband",
        "word",
        "a waistband with fly, or a casing with elastic that is pulled on",
        words=("waistband", "casing"),
        group="style",
        source=practice(),
    )
    stretch_share: float = stretch_share(0.0)
    elastic_opens: float = choice(
        1.8,
        "ratio",
        "how many times its length the waist elastic opens to",
        low=1.1,
        high=4,
        step=0.1,
        group="style",
        source=ours("1.8 passes the hip of all 3,034 people of ANSUR II"),
    )
    inseam_short: float = choice(
        0.0,
        "mm",
        "how much shorter the back inside leg is, stretched in from knee up",
        low=0,
        high=8,
        scales=True,
        source=(practice("up to 10 mm"), BY_EYE),
    )


def trouser(body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the trouser (pieces `front` and `back`, both pairs) for `body`.

    Raises `DraftError` where girths cannot be reached by this cloth or shaped from these measures.
    """
    scale = body_scale(body)
    stretch = settle_stretch(fabric, choices.stretch_share)
    asked = trouser_measures(body, fabric, _eases(choices), stretch)
    shape = settle_shape(asked, _style(body, choices))
    elastic = _elastic(body, shape, choices)
    openings = _openings(shape, scale)
    front, back = draw_pieces(shape, openings, _cutting(asked, fabric, elastic, scale))
    waist, wide = _waist_chain(front, back), ELASTIC_WIDTH * scale
    notions = (elastic_notion(elastic, "waist", 1, wide, waist),) if elastic else ()
    said = (*asked.findings, *trouser_findings(body, shape), *openings_said(shape, openings))
    return Draft(
        (front, back),
        _seams(front, back, shape),
        girths=_girths(body, asked, shape),
        findings=said,
        facts=_facts(shape, openings, elastic),
        chains={"waist": waist},
        notions=notions,
    )


def _eases(choices: Choices) -> tuple[tuple[str, float], ...]:
    return (
        ("waist", choices.waist_ease),
        ("hip", choices.hip_ease),
        ("thigh", choices.thigh_ease),
        ("knee", choices.knee_ease),
        ("crotch", choices.crotch_ease),
    )


def _style(body: Body, choices: Choices) -> LegStyle:
    below = body["knee_height"] - BELOW_KNEE * body["inside_leg_length"]
    shorter = max(0.0, below) if choices.leg_ends == "below the knee" else 0.0
    return LegStyle(
        choices.leg,
        choices.hem_width,
        choices.leg_length + body.heel - shorter,
        choices.waist_finish == "casing",
        choices.inseam_short,
    )


def _elastic(body: Body, shape: LegShape, choices: Choices) -> Elastic | None:
    if choices.waist_finish != "casing":
        return None
    return elastic_loop(body["waist_girth"], body["hip_girth"], choices.elastic_opens)


def _openings(shape: LegShape, scale: float) -> Openings:
    """Return how long the fly and the slits at the hem have to be."""
    frame = shape.frame
    misses = frame.asked.heel - frame.hem_girth
    slit = 0.0
    if misses > 0.5:
        shin = frame.knee - frame.hem
        slit = min(max(misses / 2, LEAST_SLIT * scale), 0.8 * shin)
    if frame.style.casing:
        return Openings(0.0, slit)
    front = shape.rise.front
    straight = abs(front.top - front.bend) - FLY_ABOVE_BEND * scale
    needed = (frame.asked.body["hip"] - frame.waist_girth) / 2
    return Openings(min(max(straight, needed, 0.25 * front.length), 0.75 * front.length), slit)


def _cutting(asked: TrouserMeasures, fabric: Fabric | None, elastic: Elastic | None, scale: float) -> CutSettings:
    stretch = asked.stretch
    lengthwise = fabric is not None and fabric.stretch_along > fabric.stretch_across
    along = 90.0 if lengthwise and not stretch.turned else 0.0
    thickness = (fabric.thickness if fabric else None) or 0.5
    allowance = casing_depth(ELASTIC_WIDTH * scale, thickness) if elastic else 10.0 * scale
    return CutSettings(0.0 if stretch.turned else 90.0, along, elastic is not None, allowance)


# ------------------------------------------------------------------------------------ seams


def _seams(front: Piece, back: Piece, shape: LegShape) -> tuple[Seam, ...]:
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
            notches=(SeamNotch("knee", lower, lower), SeamNotch("hip", hip, hip)),
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
        Seam(
            "front crotch",
            (("front", "crotch"),),
            (("front", "crotch"),),
            start=None if "fly" in front else "square",
            end=None,
            kind=SeamKind.CROTCH,
        ),
        Seam(
            "back crotch",
            (("back", "crotch"),),
            (("back", "crotch"),),
            start=None,
            end="square",
            kind=SeamKind.CROTCH,
        ),
        *dart_seams(front),
        *dart_seams(back),
    )


def _girths(body: Body, asked: TrouserMeasures, shape: LegShape) -> tuple[Girth, ...]:
    frame = shape.frame
    settled = {
        "waist": frame.waist_girth,
        "hip": asked.girth["hip"],
        "thigh": shape.rise.thigh,
        "knee": frame.knee_girth,
    }
    ankle = body["ankle_girth"]
    hem = frame.hem_girth - ankle
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
    return (*found, Girth("trouser_hem", ankle, hem, hem, limb=True))


def _waist_chain(front: Piece, back: Piece) -> tuple[EdgeRef, ...]:
    """Return the waist from centre back over the side to centre front, darts left out."""
    return tuple((piece.name, edge.name) for piece in (back, front) for edge in edges_as(piece, EdgeRole.WAIST))


def _facts(shape: LegShape, openings: Openings, elastic: Elastic | None) -> dict[str, float]:
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
