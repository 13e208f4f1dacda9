"""The survey's answer to each measure that a rule would estimate, under our names and for the wearer's waist."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from math import hypot

from drafting.body.figure_rules import OF_FIGURE, Figure
from drafting.body.leg_rules import CROTCH_NATURAL
from drafting.body.rules import BUST_POINT_BELOW, FLEXED, NATURAL_BACK, NATURAL_RISE, Known, Rule
from drafting.body.survey import FromAll, Leant
from drafting.ground.lengths import told
from drafting.ground.sources import Source, printed

Values = Mapping[str, float]
NAMED = 4  # measures that an estimate rests on are named, the rest counted


@dataclass(frozen=True, slots=True)
class ReadOff:
    """How a measure of ours is read off the survey's: `factor` x `variable`, and what is `added` (mm)."""

    variable: str
    factor: float = 1.0
    added: Callable[[Known], float] | None = None

    def of(self, values: Values, known: Known) -> float:
        """Return the measure in mm from the survey's `values` and what is known of the body."""
        own = self.factor * values[self.variable]
        return own if self.added is None else own + self.added(known)


def _steps(times: float) -> Callable[[Known], float]:
    """Return what a length gains, mm, whose waist is the natural one."""
    return lambda m: times * NATURAL_RISE * m["natural"] * m["height"]


def _over_the_bust(m: Known) -> float:
    return BUST_POINT_BELOW + 0.5 * m["fullness"]


PLAIN = """
    neck_base_girth neck_girth shoulder_length shoulder_drop across_back_width across_back_low_width
    arm_length upper_arm_length forearm_girth wrist_girth hand_girth axilla_depth nape_height
    inside_leg_length thigh_girth calf_girth lower_thigh_girth ankle_girth heel_girth knee_height
"""

READINGS: Mapping[str, ReadOff] = {
    **{name: ReadOff(name) for name in PLAIN.split()},
    "navel_back": ReadOff("back_waist_length"),
    "upper_arm_girth": ReadOff("flexed_arm", 1 / FLEXED),
    "bust_point_depth": ReadOff("bust_level", added=_over_the_bust),
    "waist_to_hip": ReadOff("waist_to_hip", added=_steps(1)),
    "body_rise": ReadOff("standing_rise", added=_steps(1)),
    "total_crotch_length": ReadOff("total_crotch_length", added=_steps(CROTCH_NATURAL)),
    "back_crotch_length": ReadOff("back_crotch_length", added=_steps(CROTCH_NATURAL / 2)),
}
"""By the name of the rule that would estimate it."""

SUMS: Mapping[str, ReadOff] = {
    "back_waist_length": ReadOff("back_waist_length"),
    "outside_leg_length": ReadOff("outside_leg_length"),
}
"""Leant by other estimates, to the millimetre; their spread is the joint one, not that of independent parts."""

TAKEN_AS = {"flexed_arm": "upper_arm_girth", "bust_level": "bust_point_depth", "standing_rise": "body_rise"}
"""What a maker measures to know a variable of the survey that has another name."""


def survey_spread(rule: Rule, whole: FromAll, natural: bool, fullness: float | None) -> float | None:
    """Return the sd of the rule's measure in mm at adult height; None where the survey does not have it.

    A bust point adds half of what is not known of the fullness (`fullness`, its sd).
    """
    reading = READINGS.get(rule.name) or SUMS.get(rule.name)
    if reading is None or rule.given == ("scye_depth",):
        return None
    own = reading.factor * whole.told[reading.variable].sd
    if rule.name == "back_waist_length":
        return own * (1 - NATURAL_BACK * natural)
    return hypot(own, 0.5 * fullness) if rule.name == "bust_point_depth" and fullness else own


def survey_words(rule: Rule, whole: FromAll, figure: Figure, sd: float, scale: float) -> str:
    """Return the sentence that stands wherever the estimate is used; `sd` in mm at adult height."""
    found = whole.told[(READINGS.get(rule.name) or SUMS[rule.name]).variable]
    beside = [cited for cited in rule.source if cited.source is not Source.ANSUR_II]
    sources = printed(*OF_FIGURE[figure], *beside)
    off = f"19 of 20 people within {told(2 * scale * sd)}"
    return f"from {_leaning(found)} ({sources}; {off}{_sharper(found, scale * sd)})"


def _leaning(found: Leant) -> str:
    every = list(dict.fromkeys(map(_taken, found.leaning)))
    names, more = every[:NAMED], len(every) - NAMED
    if more > 0:
        return f"{', '.join(names)} and {more} more"
    return f"{', '.join(names[:-1])} and {names[-1]}" if len(names) > 1 else names[0]


def _sharper(found: Leant, sd: float) -> str:
    if not found.sharper:
        return ""
    return f", {told(2 * sd * found.sharpened / found.sd)} once the {_taken(found.sharper)} is taken"


def _taken(name: str) -> str:
    return TAKEN_AS.get(name, name).replace("_", " ")
