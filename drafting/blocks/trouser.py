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
from drafting.draft.draft import Draft
from drafting.draft.one_value import the_smaller
from drafting.fabric import Fabric
from drafting.ground.choices import choice
from drafting.ground.scale import body_scale
from drafting.ground.sources import AS_ASKED, BY_EYE, TRIED, Source, cite, ours, practice
from drafting.shaping.flare.elastic import Elastic, casing_depth, elastic_loop, elastic_notion, sold_width
from drafting.shaping.shared_choices import stretch_share
from drafting.shaping.stretch import settle_stretch
from drafting.shaping.trouser.account import trouser_facts, trouser_girths, trouser_seams, waist_chain
from drafting.shaping.trouser.fly import LEAST_FLY, MOST_FLY, fly_room
from drafting.shaping.trouser.frame import LegStyle
from drafting.shaping.trouser.measures import TrouserMeasures, trouser_measures
from drafting.shaping.trouser.pieces import CutSettings, Openings, draw_pieces
from drafting.shaping.trouser.remarks import openings_said, trouser_findings
from drafting.shaping.trouser.shape import LegShape, settle_shape
from drafting.shaping.trouser.sound import refuse_crossed

ELASTIC_WIDTH = 25.0
"""mm at adult scale: width of the waist elastic (common practice)."""

LEAST_SLIT = 40.0
"""mm at adult scale: a shorter slit at the hem is not worth making (ours)."""
PLAIN_WAIST = 10.0
"""mm: allowance of a waist that nothing was sewn to yet, a child's too (common practice)."""

BELOW_KNEE = 0.155
"""Of the inside leg: how far below the kneecap a leg ends that is to end below the knee (ours)."""

ABOVE_KNEE = 0.25
"""Of the side from knee to hip: how far up a slit reaches at most (ours)."""

SHARED = {"crotch_front": the_smaller("crotch_front")}
"""Both hands of an uneven wearer get one front crotch, and so one back crotch."""


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
        source=cite(Source.EASE_IN_CLOTHING, "⟨13⟩ to ⟨19⟩ for trousers"),
    )
    hip_ease: float = choice(
        55.0,
        "mm",
        "garment minus body at the hip (not where stretch is used)",
        low=-300,
        high=400,
        step=5,
        scales=True,
        source=cite(Source.EASE_IN_CLOTHING, "⟨51⟩ to ⟨70⟩"),
    )
    thigh_ease: float = choice(
        70.0,
        "mm",
        "garment minus body at the top of the thigh",
        low=-200,
        high=400,
        step=5,
        scales=True,
        source=(cite(Source.EASE_IN_CLOTHING, "⟨25⟩ at the least"), TRIED),
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
    crotch_front: float = choice(
        0.0,
        "mm",
        "front crotch seam from waist to fork, taken from the back's; 0 leaves it to the measures",
        low=0,
        high=700,
        step=5,
        source=AS_ASKED,
    )
    leg_length: float = choice(
        0.0,
        "mm",
        "length added at the hem, which else just clears the shoe",
        low=-500,
        high=300,
        step=5,
        group="length",
        begins="hem",
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
    leg_hem: float = choice(
        0.0,
        "mm",
        "how much is turned up at the legs' hems, whatever other hems have; 0 leaves it to hem_allowance",
        low=0,
        high=100,
        group="finish",
        of_hand=True,
        source=practice("⟨30⟩ to ⟨50⟩, flared ⟨10⟩ to ⟨15⟩"),
    )
    leg_slit: float = choice(
        0.0,
        "mm",
        "how far the side seam stays open above the hem, at least as far as the heel needs",
        low=0,
        high=300,
        step=5,
        scales=True,
        group="length",
        source=practice("⟨80⟩ to ⟨120⟩ above a band below the knee"),
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
        source=(practice("up to ⟨10⟩"), BY_EYE),
    )


def trouser(body: Body, fabric: Fabric | None, choices: Choices) -> Draft:
    """Return the trouser (pieces `front` and `back`, both pairs) for `body`.

    Raises `DraftError` where girths cannot be reached by this cloth or shaped from these measures.
    """
    scale = body_scale(body)
    stretch = settle_stretch(fabric, choices.stretch_share)
    asked = trouser_measures(body, fabric, _eases(choices), stretch, choices.crotch_front)
    shape = settle_shape(asked, _style(body, choices))
    elastic = _elastic(body, shape, choices)
    openings = _openings(shape, scale, choices.leg_slit)
    hem = choices.leg_hem or None
    front, back = draw_pieces(shape, openings, _cutting(asked, fabric, elastic, scale, hem))
    refuse_crossed(shape, (front, back))
    waist, wide = waist_chain(front, back), sold_width(ELASTIC_WIDTH * scale)
    notions = (elastic_notion(elastic, "waist", 1, wide, waist),) if elastic else ()
    said = (*asked.findings, *trouser_findings(body, shape), *openings_said(shape, openings))
    return Draft(
        (front, back),
        trouser_seams(front, back, shape),
        girths=trouser_girths(body, asked, shape),
        findings=said,
        facts=trouser_facts(shape, openings, elastic),
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


def _openings(shape: LegShape, scale: float, asked: float) -> Openings:
    """Return how long the fly and the slits at the hem have to be."""
    frame = shape.frame
    misses = frame.asked.heel - frame.hem_girth
    needs = max(misses / 2, LEAST_SLIT * scale) if misses > 0.5 else 0.0
    shin = frame.knee - frame.hem
    slit = max(min(needs, 0.8 * shin), min(asked, shin + ABOVE_KNEE * shape.rise.legs.side.length))
    if frame.style.casing:
        return Openings(0.0, slit)
    needed = (frame.asked.body["hip"] - frame.waist_girth) / 2
    room = fly_room(shape.rise.front.path, LEAST_FLY * scale, needed)
    return Openings(min(max(MOST_FLY * scale, needed), room), slit)


def _cutting(
    asked: TrouserMeasures, fabric: Fabric | None, elastic: Elastic | None, scale: float, hem: float | None
) -> CutSettings:
    stretch = asked.stretch
    lengthwise = fabric is not None and fabric.stretch_along > fabric.stretch_across
    along = 90.0 if lengthwise and not stretch.turned else 0.0
    thickness = (fabric.thickness if fabric else None) or 0.5
    allowance = casing_depth(sold_width(ELASTIC_WIDTH * scale), thickness) if elastic else PLAIN_WAIST
    return CutSettings(0.0 if stretch.turned else 90.0, along, elastic is not None, allowance, hem)
