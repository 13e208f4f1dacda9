"""Fill in the measures that nobody took, from those that somebody did.

An adult's come from the survey as a whole, conditioned on all that was taken (`survey`). What the survey
does not have, a child and a build far from everybody surveyed come from one rule each
(`rule_table`); between the two lies a ramp, so that nothing jumps.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache, lru_cache
from typing import Literal

from drafting.body.children import child_share, childs_neck, for_child
from drafting.body.figure_rules import Figure, rules_for
from drafting.body.from_survey import READINGS, ReadOff, survey_spread, survey_words
from drafting.body.rules import INNER, Known, Rule, bust_less, rounded
from drafting.body.sightings import Sighting
from drafting.body.survey import BUILD, FromAll, conditioned, from_all, spread
from drafting.ground.sources import Sources

ADULT_LOW, ADULT_HIGH = 1400.0, 2000.0  # mm, the heights of the survey
USUAL, STRANGE = 5.5, 9.0
"""How far height, bust and hip may lie from the survey's mean (Mahalanobis) before its estimates begin to
give way to the rules', and where they have (ours; nobody surveyed lies farther than 5.3)."""


@dataclass(frozen=True, slots=True)
class Measure:
    """One measure in mm (the mean of both hands), where it comes from, and what each hand gave.

    `rule` says in words how an estimate was made, `cited` what stands behind it; people stray from
    it by `sd` (mm), 19 of 20 by no more than twice that (None: nobody knows).
    """

    mm: float
    source: Literal["measured", "estimated"]
    rule: str = ""
    sd: float | None = None
    left: float | None = None
    right: float | None = None
    cited: Sources = ()


@dataclass(frozen=True, slots=True)
class _Step:
    """One measure to fill in: by its rule, or off the survey where that has it (`reading`).

    `by_rule` and `by_survey` are the sd in mm of the two ways; `said` are the words where the latter is the
    survey's and holds alone, of an adult.
    """

    rule: Rule
    reading: ReadOff | None
    by_rule: float | None
    by_survey: float | None
    said: str


@dataclass(frozen=True, slots=True)
class _Plan:
    steps: tuple[_Step, ...]
    survey: FromAll
    figure: Figure


def estimate_scale(height: float) -> float:
    """Return by what the rules' millimetre constants grow or shrink on a body of `height` mm.

    1 inside the survey's heights; a doll is the survey's shortest adult made smaller.
    """
    return height / min(max(height, ADULT_LOW), ADULT_HIGH)


def estimates(measured: Mapping[str, float], natural: bool, figure: Figure = "") -> dict[str, Measure]:
    """Return a `Measure` for every dimension a torso and a sleeve need and `measured` (mm) lacks.

    `measured` holds at least height, waist, hip, and bust or high bust. `natural` says that its
    waist is the natural one, not the navel's; `figure` may name whose charts come nearer. Every
    result is finite, positive and continuous in every measure.
    """
    scale = estimate_scale(measured["height"])
    known: Known = {name: mm / scale for name, mm in measured.items()}
    known["natural"] = float(natural)
    known["child"], known["childs_neck"] = child_share(measured), childs_neck(measured) / scale
    known["rounding"] = rounded(known)
    plan = _plan(frozenset(measured), figure, natural, known["child"] > 0)
    bust = known.get("bust_girth")
    share = survey_share({**known, "bust_girth": known["high_bust_girth"] if bust is None else bust})
    known["bust_less"] = bust_less(known)
    values: Mapping[str, float] = {}
    found: dict[str, Measure] = {}
    for step in plan.steps:
        if "bust_girth" in known and not values:
            values = plan.survey.values(known)
        name = step.rule.name
        known[name] = _value(step, share, values, known)
        if name not in INNER:
            found[name] = _measure(step, plan, share, known[name], scale)
    return found


def survey_share(known: Mapping[str, float]) -> float:
    """Return how far a body, `known` in mm at adult height, is one of those surveyed: 0 for a child.

    1 for an adult and for a doll that is one made smaller, 0 for a build unlike anybody's.
    """
    near = min(max((STRANGE - strangeness(known)) / (STRANGE - USUAL), 0.0), 1.0)
    return (1 - known["child"]) * near


def strangeness(known: Mapping[str, float]) -> float:
    """Return how many sd height, bust and hip lie from the survey's mean (Mahalanobis)."""
    total = 0.0
    for name, start, slopes, sd in _build():
        total += ((known[name] - start - sum(f * known[other] for f, other in slopes)) / sd) ** 2
    return math.sqrt(total)


@cache
def _build() -> tuple[tuple[str, float, tuple[tuple[float, str], ...], float], ...]:
    """Return each measure of the build from those before it: constant, slopes, and the sd that is left."""
    people, found = spread(""), []
    for k, name in enumerate(BUILD):
        at = people.names.index(name)
        before = conditioned(people, tuple(Sighting(other, ((1.0, other),), sd=0.0) for other in BUILD[:k]))
        slopes = tuple(zip(before.factors[at], BUILD[:k], strict=True))
        found.append((name, before.constant[at], slopes, math.sqrt(before.rest[at][at])))
    return tuple(found)


def _value(step: _Step, share: float, values: Mapping[str, float], known: Known) -> float:
    if step.reading is None or share == 0:
        return in_bounds(step.rule, known)
    surveyed = step.reading.of(values, known)
    if share == 1:
        return within_bounds(step.rule, surveyed, known)
    return within_bounds(step.rule, share * surveyed + (1 - share) * step.rule.of(known), known)


def _measure(step: _Step, plan: _Plan, share: float, value: float, scale: float) -> Measure:
    """Return the estimate with its spread and words, the survey's where that has the greater say."""
    rule, sd = step.rule, _mixed(step.by_rule, step.by_survey, share)
    if step.said and share == scale == 1:
        words = step.said
    elif step.said and share >= 0.5 and sd is not None:
        words = survey_words(rule, plan.survey, plan.figure, sd, scale)
    else:
        words = rule.words(None if sd is None else sd * scale)
    return Measure(value * scale, "estimated", words, None if sd is None else sd * scale, cited=rule.source)


def _mixed(by_rule: float | None, by_survey: float | None, share: float) -> float | None:
    if share in (0, 1):
        return by_survey if share else by_rule
    return None if by_rule is None or by_survey is None else share * by_survey + (1 - share) * by_rule


@lru_cache(maxsize=256)
def _plan(measured: frozenset[str], figure: Figure, natural: bool, child: bool) -> _Plan:
    """Return the steps that fill in what was not measured, in their order."""
    survey = from_all(measured, figure, natural)
    by_rule: dict[str, float | None] = {}
    by_survey: dict[str, float | None] = {}
    steps = []
    for rule in map(for_child, rules_for(figure)) if child else rules_for(figure):
        name = rule.name
        if name in measured | by_rule.keys() or not measured.issuperset(rule.given):
            continue
        joint = survey_spread(rule, survey, natural, by_survey.get("high_bust_girth"))
        by_rule[name] = rule.spread(by_rule)
        by_survey[name] = rule.spread(by_survey) if joint is None else joint
        reading = None if joint is None or rule.sd == 0 else READINGS.get(name)
        said = "" if joint is None else survey_words(rule, survey, figure, joint, 1.0)
        steps.append(_Step(rule, reading, by_rule[name], by_survey[name], said))
    return _Plan(tuple(steps), survey, figure)


def in_bounds(rule: Rule, known: Known) -> float:
    """Return the rule's value, kept within its share of the measure it is held against."""
    return within_bounds(rule, rule.of(known), known)


def within_bounds(rule: Rule, value: float, known: Known) -> float:
    """Return `value` (mm) within the rule's bounds."""
    if rule.within is not None:
        against, low, high = rule.within
        value = min(max(value, low * known[against]), high * known[against])
    return value if rule.kept is None else rule.kept(value, known)
