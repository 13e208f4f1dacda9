"""Fill in the measures that nobody took, from those that somebody did. Layer 2."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from drafting.body.rule_table import RULES
from drafting.body.rules import INNER, Known, Rule

ADULT_LOW, ADULT_HIGH = 1400.0, 2000.0  # mm, the heights of the survey


@dataclass(frozen=True, slots=True)
class Measure:
    """One measure in mm (the mean of both hands), where it comes from, and what each hand gave.

    `rule` says in words how an estimate was made, `sd` (mm) how far people stray from it.
    """

    mm: float
    source: Literal["measured", "estimated"]
    rule: str = ""
    sd: float | None = None
    left: float | None = None
    right: float | None = None


def estimate_scale(height: float) -> float:
    """Return by what the rules' millimetre constants grow or shrink on a body of `height` mm.

    1 inside the survey's heights; a doll is the survey's shortest adult made smaller.
    """
    return height / min(max(height, ADULT_LOW), ADULT_HIGH)


def estimates(measured: Mapping[str, float], natural: bool) -> dict[str, Measure]:
    """Return a `Measure` for every dimension a torso and a sleeve need and `measured` (mm) lacks.

    `measured` holds at least height, waist, hip, and bust or high bust. `natural` says that its
    waist is the natural one, not the navel's. Every result is finite, positive and continuous
    in every measure.
    """
    scale = estimate_scale(measured["height"])
    known: Known = {name: mm / scale for name, mm in measured.items()}
    known["natural"] = float(natural)
    found: dict[str, Measure] = {}
    for rule, words in _WORDED:
        if rule.name in known or any(name not in measured for name in rule.given):
            continue
        value = _kept(rule, known)
        known[rule.name] = value
        if rule.name not in INNER:
            sd = None if rule.sd is None else rule.sd * scale
            found[rule.name] = Measure(value * scale, "estimated", words, sd)
    return found


def _kept(rule: Rule, known: Known) -> float:
    """Return the rule's value, kept within its share of the measure it is held against."""
    if rule.within is None:
        return rule.of(known)
    against, low, high = rule.within
    return min(max(rule.of(known), low * known[against]), high * known[against])


_WORDED = tuple((rule, rule.words) for rule in RULES)
