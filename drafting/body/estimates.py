"""Fill in the measures that nobody took, from those that somebody did."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

from drafting.body.children import child_share, childs_neck, for_child
from drafting.body.figure_rules import Figure, rules_for
from drafting.body.rules import INNER, Known, Rule
from drafting.ground.sources import Sources

ADULT_LOW, ADULT_HIGH = 1400.0, 2000.0  # mm, the heights of the survey


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
    found: dict[str, Measure] = {}
    for rule, spread, words in _plan(frozenset(measured), figure, known["child"] > 0):
        value = known[rule.name] = in_bounds(rule, known)
        if rule.name not in INNER:
            sd = None if spread is None else spread * scale
            said = words if scale == 1 else rule.words(sd)
            found[rule.name] = Measure(value * scale, "estimated", said, sd, cited=rule.source)
    return found


@lru_cache(maxsize=256)
def _plan(measured: frozenset[str], figure: Figure, child: bool) -> tuple[tuple[Rule, float | None, str], ...]:
    """Return the rules that fill in what was not measured, each with its sd (mm) and its words."""
    spreads: dict[str, float | None] = {}
    plan = []
    for rule in map(for_child, rules_for(figure)) if child else rules_for(figure):
        if rule.name not in measured | spreads.keys() and measured.issuperset(rule.given):
            spread = spreads[rule.name] = rule.spread(spreads)
            plan.append((rule, spread, rule.words(spread)))
    return tuple(plan)


def in_bounds(rule: Rule, known: Known) -> float:
    """Return the rule's value, kept within its share of the measure it is held against."""
    if rule.within is None:
        return rule.of(known)
    against, low, high = rule.within
    return min(max(rule.of(known), low * known[against]), high * known[against])
