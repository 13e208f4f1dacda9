"""A wearer: complete for drafting, every measure marked measured or estimated."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from functools import cached_property
from typing import Literal

from drafting.body.circumstances import circumstances_doubted
from drafting.body.dimensions import dimension_name, names_offered
from drafting.body.doubts import doubts
from drafting.body.estimates import Measure, estimate_scale, estimates, in_bounds
from drafting.body.figure_rules import Figure
from drafting.body.refusals import Taken, unusable
from drafting.body.rule_table import AXILLA_BY_DROP
from drafting.body.rules import BUST_POINT_BELOW, FLEXED, NAPE_TO_SIDE_NECK, navel_back
from drafting.ground.errors import Fault, InputError
from drafting.ground.findings import Finding
from drafting.ground.frozen import FrozenDict, freeze
from drafting.reading.given import FilePlace

WaistLevel = Literal["natural", "navel"]
Side = Literal["left", "right"]
SIDES: tuple[Side, Side] = ("left", "right")


@dataclass(frozen=True)
class Body:
    """One wearer in mm. Every dimension that a torso and a sleeve need is there.

    `layers` is what the layers worn beneath add to a measure (0 where the tape went over them),
    `heel` the shoe's heel, `weight` in kg. `said` holds what the reader had to say; `findings`
    adds the doubts about the measures. `figure` names the charts that come nearer, where the maker
    said so: it sharpens estimates and does nothing else. `unit` is her file's, in which she is told of it.
    `fittings` are the paths of her fittings, with the places that name them.
    """

    title: str
    measures: Mapping[str, Measure]
    layers: Mapping[str, float] = field(default_factory=dict)
    heel: float = 0.0
    waist_level: WaistLevel = "natural"
    taken_over: Literal["skin", "underlayers"] = "skin"
    posture: Literal["standing", "seated"] = "standing"
    measured_on: str = ""
    weight: float | None = None
    said: tuple[Finding, ...] = ()
    figure: Figure = ""
    unit: str | None = "cm"
    fittings: tuple[tuple[str, FilePlace], ...] = ()

    def __post_init__(self) -> None:
        freeze(self, "measures", "layers")

    def __getitem__(self, name: str) -> float:
        """Return a measure in mm, the mean of both hands."""
        return self._measure(name).mm

    def __contains__(self, name: object) -> bool:
        return name in self.measures

    def measured(self, name: str) -> bool:
        """Return whether `name` was measured (not estimated, not absent)."""
        found = self.measures.get(name)
        return found is not None and found.source == "measured"

    def hand(self, name: str, side: Side) -> float:
        """Return a measure in mm on one side (both are the same where one number was given)."""
        found = self._measure(name)
        own = found.left if side == "left" else found.right
        return found.mm if own is None else own

    def layer(self, name: str) -> float:
        """Return what the layers beneath still add to `name`, in mm (0 where nothing is said)."""
        return self.layers.get(name, 0.0)

    def changed(self, **mm: Taken) -> Body:
        """Return this body with other measures (mm), as if measured; estimates are made anew.

        A single number for a measure that differs left and right moves both hands in proportion.
        """
        taken = {n: _taken(m) for n, m in self.measures.items() if m.source == "measured"}
        faults = []
        for given, value in mm.items():
            name = dimension_name(given)
            fault = (
                unusable(given, value, self.unit)
                if name
                else Fault("is no body dimension", names_offered(given), given)
            )
            if fault:
                faults.append(fault)
            elif name:
                taken[name] = _moved(taken.get(name), value)
        if faults:
            raise InputError([fault.in_unit(self.unit) for fault in faults])
        return replace(self, measures=completed(taken, self.waist_level, self.figure))

    @cached_property
    def findings(self) -> tuple[Finding, ...]:
        """What is doubtful about the measures, and what the reader had to say."""
        height = self.measures.get("height")
        tall = None if height is None else height.mm
        beside = circumstances_doubted(tall, self.weight, self.heel, self.measured_on, date.today())
        return (*self.said, *doubts(self.measures, self.waist_level == "natural", self.unit), *beside)

    def _measure(self, name: str) -> Measure:
        try:
            return self.measures[name]
        except KeyError:
            known = dimension_name(name) == name
            right = "measure it, and write it in the body file" if known else names_offered(name)
            raise InputError([Fault("is not among the measures", right, name)]) from None


def completed(taken: Mapping[str, Taken], waist_level: WaistLevel, figure: Figure = "") -> Mapping[str, Measure]:
    """Return `taken` (mm) as measures, and an estimate for every further one a torso needs."""
    measured = {name: _measure_of(value) for name, value in taken.items()}
    means = {name: measure.mm for name, measure in measured.items()}
    return FrozenDict(measured | estimates(means, waist_level == "natural", figure))


def bust_level(body: Body) -> float:
    """Return how far the bust level lies below the nape, along the back, in mm.

    The rule for `bust_point_depth` read backwards: what a tape from the side neck point over the
    front needs more than the back (14 mm and half the fullness, ours) is taken off again.
    """
    fullness = max(0.0, body["bust_girth"] - body["high_bust_girth"])
    return body["bust_point_depth"] - BUST_POINT_BELOW * estimate_scale(body["height"]) - 0.5 * fullness


def usual_axilla(body: Body) -> float:
    """Return the axilla depth (mm) that back waist, shoulder drop and arm lead one to expect."""
    scale = estimate_scale(body["height"])
    natural = float(body.waist_level == "natural")
    back = navel_back({"back_waist_length": body["back_waist_length"] / scale, "natural": natural})
    drop = body["shoulder_drop"] / scale + NAPE_TO_SIDE_NECK
    arm = FLEXED * body["upper_arm_girth"] / scale
    return scale * in_bounds(AXILLA_BY_DROP, {"navel_back": back, "nape_drop": drop, "flexed_arm": arm})


def shorter_back(body: Body, by: float, tape_below: float) -> Body:
    """Return the body with a back waist `by` mm shorter, as if its back were not rounded.

    What was estimated from the back waist follows. A taped scye depth loses what it has over the usual
    one, as the tape ran over the same rounding; a tape lies `tape_below` mm below what it stands for.
    """
    back = body["back_waist_length"]
    given = {name: m.mm for name, m in body.measures.items() if m.source == "measured"}
    natural = body.waist_level == "natural"
    was = estimates({**given, "back_waist_length": back}, natural, body.figure)
    now = estimates({**given, "back_waist_length": back - by}, natural, body.figure)
    changed = {
        name: replace(m, mm=m.mm + now[name].mm - was[name].mm)
        for name, m in body.measures.items()
        if m.source == "estimated" and name in now and name in was
    }
    changed["back_waist_length"] = replace(body.measures["back_waist_length"], mm=back - by)
    shorter = replace(body, measures={**body.measures, **changed})
    if not body.measured("scye_depth"):
        return shorter
    over = body["scye_depth"] - tape_below - usual_axilla(shorter)
    scye = body.measures["scye_depth"]
    changed["scye_depth"] = replace(scye, mm=scye.mm - min(by, max(0.0, over)))
    return replace(body, measures={**body.measures, **changed})


def _taken(measure: Measure) -> Taken:
    if measure.left is None or measure.right is None:
        return measure.mm
    return measure.left, measure.right


def _moved(old: Taken | None, new: Taken) -> Taken:
    if isinstance(old, tuple) and not isinstance(new, tuple):
        share = new / ((old[0] + old[1]) / 2)
        return old[0] * share, old[1] * share
    return new


def _measure_of(value: Taken) -> Measure:
    if isinstance(value, tuple):
        left, right = float(value[0]), float(value[1])
        return Measure((left + right) / 2, "measured", "", None, left, right)
    return Measure(float(value), "measured")
