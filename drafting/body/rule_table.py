"""The rules in the order in which they are tried; a later one may use what an earlier one gave."""

from __future__ import annotations

from drafting.body import rules as r
from drafting.body.leg_rules import LEGS
from drafting.body.rules import CHARTS, SURVEY, Rule, linear
from drafting.ground.sources import Source, cite, memory, ours

_DELTA = "139.5 + .491 bust - .142 across back - 1.029 neck base - .983 shoulder"
_NAVEL = "-52.9 + .219 height + .134 bust, less 4.5 % for a natural waist"
_NATURAL = (*SURVEY, CHARTS)
SIDE_NECK = ours("side neck point 15 below the nape")
ROUND_THE_FRONT = ours("the bust level is the survey's, the way round the front by eye")

TORSO: tuple[Rule, ...] = (
    Rule(
        "bust_girth",
        f"guess: high bust + {_DELTA}",
        r.TWO_SURVEYS,
        35,
        r.bust_from_high_bust,
        ("high_bust_girth", 1.0, 1.16),
    ),
    linear("neck_base_girth", 9.2, ("height", 0.15, 0.34), ((0.930, "neck_girth"),), 64.6, given=("neck_girth",)),
    linear("neck_base_girth", 25, ("height", 0.16, 0.32), ((0.405, "bust_girth"),)),
    linear("neck_girth", 9.6, ("neck_base_girth", 0.75, 1.0), ((1.012, "neck_base_girth"),), -43.3),
    Rule("navel_back", "", (CHARTS,), 0, r.navel_back, given=("back_waist_length",)),
    Rule("navel_back", "", SURVEY, 21.6, r.navel_back, terms=((0.134, "bust_girth"),)),
    Rule("back_waist_length", _NAVEL, _NATURAL, 0, r.back_waist, terms=((1 - r.NATURAL_BACK, "navel_back"),)),
    linear("shoulder_length", 9.8, ("height", 0.05, 0.12), ((0.0855, "height"),), -1.6),
    linear(
        "shoulder_drop",
        12.4,
        ("shoulder_length", 0.12, 0.545),
        ((0.715, "shoulder_length"),),
        -32.6 - r.NAPE_TO_SIDE_NECK,
        (*SURVEY, SIDE_NECK),
    ),
    linear("nape_drop", 0, ("height", 0.0, 1.0), ((1, "shoulder_drop"),), r.NAPE_TO_SIDE_NECK),
    linear(
        "across_back_width",
        24.2,
        ("bust_girth", 0.25, 0.60),
        ((0.186, "bust_girth"), (0.600, "shoulder_length"), (0.404, "neck_base_girth")),
        -32.2,
    ),
    linear(
        "across_back_low_width",
        8.5,
        ("across_back_width", 0.85, 1.65),
        ((0.772, "across_back_width"), (0.627, "shoulder_length")),
        23.3,
    ),
    linear(
        "across_front_width",
        None,
        ("bust_girth", 0.20, 0.60),
        ((0.94, "across_back_width"),),
        0.0,
        (memory("two size charts"),),
    ),
    Rule(
        "high_bust_girth",
        f"guess: bust - ({_DELTA}), never above the bust",
        r.TWO_SURVEYS,
        27,
        r.high_bust,
        ("bust_girth", 0.86, 1.0),
        terms=((0.142, "across_back_width"), (1.029, "neck_base_girth"), (0.983, "shoulder_length")),
    ),
    linear("fullness", 0, ("bust_girth", 0, 1), ((1, "bust_girth"), (-1, "high_bust_girth"))),
    linear(
        "under_bust_girth",
        None,
        ("bust_girth", 0.70, 1.0),
        ((0.8, "waist_girth"), (0.2, "high_bust_girth")),
        0.0,
        (cite(Source.ASTM_D5585), ours("a guess between its sizes")),
    ),
)

ARM: tuple[Rule, ...] = (
    Rule(
        "upper_arm_girth",
        "(-16.6 + .350 bust) / 1.065",
        (*SURVEY, memory("hanging arm = flexed / 1.065")),
        21.0,
        r.upper_arm,
        ("bust_girth", 0.20, 0.45),
        terms=((0.329, "bust_girth"),),
    ),
    linear("flexed_arm", 0, ("upper_arm_girth", 1, 2), ((r.FLEXED, "upper_arm_girth"),)),
    linear("arm_length", 18.6, ("height", 0.28, 0.40), ((0.376, "height"),), -67.9),
    linear("upper_arm_length", 7.1, ("arm_length", 0.50, 0.66), ((0.508, "arm_length"),), 34.2),
    linear("forearm_girth", 12.3, ("upper_arm_girth", 0.6, 1.3), ((0.665, "flexed_arm"),), 68.2),
    linear(
        "elbow_girth",
        None,
        ("upper_arm_girth", 0.6, 1.4),
        ((0.5, "upper_arm_girth"), (0.5, "forearm_girth")),
        0.0,
        (memory("a guess"),),
    ),
    linear("wrist_girth", 8.4, ("upper_arm_girth", 0.35, 0.85), ((0.243, "flexed_arm"),), 86.2),
    linear("hand_girth", 6.8, ("wrist_girth", 1.0, 1.5), ((1.067, "wrist_girth"),), 23.4),
)

TAPE_SPREAD = 2.5
"""mm: ours, half of the 45-50 mm that the tape lies below the armpit fold."""

_SCYE = ((0.262, "navel_back"), (0.758, "nape_drop"), (0.110, "flexed_arm"))
_AXILLA = ("navel_back", 0.20, 0.65)

AXILLA_BY_DROP: Rule = linear(
    "axilla_depth",
    10.6,
    _AXILLA,
    ((0.220, "navel_back"), (1, "nape_drop"), (0.110, "flexed_arm")),
    -26.7,
    (*SURVEY, ours("the drop goes one to one: a shoulder that slopes more carries its armhole lower")),
    ("shoulder_drop",),
)

LEVELS: tuple[Rule, ...] = (
    linear(
        "axilla_depth",
        TAPE_SPREAD,
        ("scye_depth", 0.5, 1.0),
        ((1, "scye_depth"),),
        -r.TAPE_UNDER_AXILLA,
        r.TAPE,
        ("scye_depth",),
    ),
    AXILLA_BY_DROP,
    linear("axilla_depth", 10.1, _AXILLA, _SCYE, -28.5, (*SURVEY, ours("the drop itself is estimated"))),
    linear("scye_depth", TAPE_SPREAD, ("axilla_depth", 1, 2), ((1, "axilla_depth"),), r.TAPE_UNDER_AXILLA, r.TAPE),
    linear(
        "bust_point_depth",
        20.0,
        ("height", 0.11, 0.26),
        ((0.315, "navel_back"), (0.5, "fullness")),
        88.1 + r.BUST_POINT_BELOW,
        (*SURVEY, ROUND_THE_FRONT),
    ),
    linear(
        "bust_point_width",
        None,
        ("bust_girth", 0.1, 0.3),
        ((0.20, "bust_girth"),),
        0.0,
        (memory("a fifth of the bust"),),
    ),
    Rule(
        "waist_to_hip",
        "-75.5 + .220 height - .304 back waist, plus .026 height for a natural waist",
        (*SURVEY, memory("the .026")),
        23.8,
        r.waist_to_hip,
        ("height", 0.05, 0.20),
        terms=((0.304, "navel_back"),),
    ),
    linear("nape_height", 11.3, ("height", 0.80, 0.92), ((0.931, "height"),), -118.1),
)

RULES: tuple[Rule, ...] = TORSO + ARM + LEVELS + LEGS
