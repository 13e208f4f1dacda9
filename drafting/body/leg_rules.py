"""The sex-free rules for hip and leg: rise, crotch length, leg lengths and girths.

Least squares on the same survey as `rule_table` (3,034 adults; `Source.BDIMS` where it is named), mm. The
survey's waist is the navel's: a natural waist lies .026 of the height higher, and the crotch length
grows by 2.05 times that (from memory). A body rise taken sitting is longer than the survey's by
about a fiftieth of the hip, as the flesh spreads (common practice: 25-30 mm).
"""

from __future__ import annotations

from drafting.body.depths import ROUND_SEAT, SQUARE_SEAT, seat_depth
from drafting.body.rules import FIT, NATURAL_RISE, SURVEY, Known, Rule, linear
from drafting.ground.sources import Source, Sources, cite, memory, practice

SITTING = 0.02  # of the hip: what a rise taken sitting has over the survey's; ours, from 25-30 mm
CROTCH_NATURAL = 2.05  # times the step from navel to natural waist; from memory
BDIMS: Sources = (cite(Source.BDIMS, FIT),)
LEG_IDENTITY: Sources = (practice("outside leg = inside leg + body rise, one person, one waist level"),)


def body_rise(m: Known) -> float:
    """Return waist to crotch in mm, from the navel or from the natural waist."""
    natural = NATURAL_RISE * m["natural"] * m["height"]
    return 0.1110 * m["height"] - 0.0104 * m["hip_girth"] + 26.8 + natural


def total_crotch(m: Known) -> float:
    """Return the total crotch length in mm for the waist level of the measures."""
    natural = NATURAL_RISE * m["natural"] * m["height"]
    over = (CROTCH_NATURAL - 0.9382) * natural  # the rise has grown by the step already
    return 0.9382 * m["standing_rise"] + 0.3870 * m["hip_girth"] + 33.4 + over


def round_the_seat(crotch: float, m: Known) -> float:
    """Return a total crotch length (mm) that goes down the rise, round the seat and up again.

    It cannot be far from twice the rise and the seat's depth.
    """
    twice, deep = 2 * m["standing_rise"], seat_depth(m)
    return min(max(crotch, twice + ROUND_SEAT * deep), twice + SQUARE_SEAT * deep)


RISES: tuple[Rule, ...] = (
    linear(
        "body_rise",
        0,
        ("height", 0.05, 0.40),
        ((1, "outside_leg_length"), (-1, "inside_leg_length")),
        0.0,
        LEG_IDENTITY,
        ("outside_leg_length", "inside_leg_length"),
    ),
    Rule(
        "body_rise",
        ".111 height - .0104 hip + 26.8, plus .026 height for a natural waist",
        (*SURVEY, memory("the .026")),
        19.8,
        body_rise,
        ("height", 0.07, 0.30),
    ),
    linear(
        "inside_leg_length",
        0,
        ("height", 0.30, 0.65),
        ((1, "outside_leg_length"), (-1, "body_rise")),
        0.0,
        LEG_IDENTITY,
        ("outside_leg_length",),
    ),
    linear("inside_leg_length", 24.0, ("height", 0.36, 0.58), ((0.5606, "height"), (-0.0511, "hip_girth")), -83.6),
    linear(
        "outside_leg_length",
        0,
        ("height", 0.2, 1.1),
        ((1, "inside_leg_length"), (1, "body_rise")),
        0.0,
        LEG_IDENTITY,
    ),
    linear(
        "standing_rise",
        0,
        ("body_rise", 0.7, 1),
        ((1, "body_rise"), (-SITTING, "hip_girth")),
        given=("body_rise",),
    ),
    linear("standing_rise", 0, ("body_rise", 1, 1), ((1, "body_rise"),)),
    Rule(
        "total_crotch_length",
        ".938 standing rise + .387 hip + 33.4, plus .029 height for a natural waist",
        (*SURVEY, memory("the .029")),
        25.2,
        total_crotch,
        ("hip_girth", 0.35, 1.0),
        terms=((0.938, "standing_rise"),),
        kept=round_the_seat,
    ),
    linear(
        "back_crotch_length",
        30.0,
        ("total_crotch_length", 0.4, 0.7),
        ((1.30 / 2.30, "total_crotch_length"),),
        0.0,
        (practice("back to front 1.30 to 1"), cite(Source.ANSUR_II, "the spread")),
    ),
)

LEG_GIRTHS: tuple[Rule, ...] = (
    linear(
        "thigh_girth",
        18.4,
        ("hip_girth", 0.42, 0.80),
        ((0.5901, "hip_girth"), (0.0160, "waist_girth"), (0.3380, "calf_girth")),
        -124.4,
        given=("calf_girth",),
    ),
    linear("thigh_girth", 19.9, ("hip_girth", 0.42, 0.80), ((0.7099, "hip_girth"),), -101.7),
    linear("calf_girth", 19.8, ("hip_girth", 0.25, 0.60), ((0.2735, "hip_girth"), (0.0814, "height")), -32.9),
    linear(
        "lower_thigh_girth",
        14.4,
        ("thigh_girth", 0.5, 1.0),
        ((0.3126, "thigh_girth"), (0.4360, "calf_girth")),
        43.6,
    ),
    linear(
        "knee_girth",
        15.2,
        ("thigh_girth", 0.45, 1.0),
        ((0.1339, "thigh_girth"), (0.5996, "calf_girth")),
        69.6,
        BDIMS,
    ),
    linear("ankle_girth", 8.5, ("calf_girth", 0.40, 1.0), ((0.3778, "calf_girth"), (0.0392, "height")), 12.0),
    linear("heel_girth", 10.3, ("ankle_girth", 1.05, 1.9), ((0.1478, "height"), (0.5945, "ankle_girth")), -54.6),
    linear("knee_height", 11.3, ("inside_leg_length", 0.45, 0.70), ((0.5676, "inside_leg_length"),), 6.8),
)

LEGS: tuple[Rule, ...] = RISES + LEG_GIRTHS
