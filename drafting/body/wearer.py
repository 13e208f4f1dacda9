"""The door for bodies given as numbers in mm: tests, notebooks, the file readers."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from typing import Literal

from drafting.body.body import Body, WaistLevel, completed
from drafting.body.dimensions import dimension_name, names_offered
from drafting.body.figure_rules import Figure
from drafting.body.refusals import Taken, missing, refusals, unusable
from drafting.ground.errors import Fault, InputError
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.reading.given import FilePlace

MOST_WORN = 1000.0  # mm a layer may add, or a heel lift; ours: a padded giant, not a slip


def wearer(
    measures: Mapping[str, Taken],
    *,
    title: str = "",
    layers: Mapping[str, float] | None = None,
    heel: float = 0.0,
    waist_level: WaistLevel = "natural",
    taken_over: Literal["skin", "underlayers"] = "skin",
    posture: Literal["standing", "seated"] = "standing",
    measured_on: str = "",
    weight: float | None = None,
    said: tuple[Finding, ...] = (),
    figure: Figure = "",
    unit: str | None = "cm",
    stated: Collection[str] = (),
    fittings: tuple[tuple[str, FilePlace], ...] = (),
) -> Body:
    """Return a complete `Body` from measures in mm (one number, or (left, right)).

    Names may be today's or older ones; `unit` is what a maker reads, and wrote them in but for those
    `stated` in a unit of their own. Raises `InputError` with every fault at once: unknown or
    doubled names, values that are no usable number, the four least measures missing, girths that
    look like inches.
    """
    taken, faults = named(measures, unit)
    faults += _worn(layers or {}, heel)
    faults += missing(measures) if faults else refusals(taken, unit, stated)
    if faults:
        raise InputError([fault.in_unit(unit) for fault in faults])
    worn, notes = _beneath(_today(layers or {}), taken_over)
    return Body(
        title=title,
        measures=completed(taken, waist_level, figure),
        layers=worn,
        heel=heel,
        waist_level=waist_level,
        taken_over=taken_over,
        posture=posture,
        measured_on=measured_on,
        weight=weight,
        said=said + notes,
        figure=figure,
        unit=unit,
        fittings=fittings,
    )


def named(measures: Mapping[str, Taken], unit: str | None = "cm") -> tuple[dict[str, Taken], list[Fault]]:
    """Return the usable measures under today's names, and a fault for each other one."""
    taken: dict[str, Taken] = {}
    faults = []
    for given, value in measures.items():
        name = dimension_name(given)
        fault = unusable(given, value, unit)
        if name is None:
            fault = Fault("is no body dimension", names_offered(given), given)
        elif name in taken:
            fault = Fault(f"says again what {name} says", "keep one of the two", given)
        if fault:
            faults.append(fault)
        elif name:
            taken[name] = value
    return taken, faults


def _worn(layers: Mapping[str, float], heel: float) -> list[Fault]:
    """Return what is wrong with the layers beneath and the shoe."""
    faults = [
        Fault("is no body dimension", names_offered(name), f"layers.{name}")
        for name in layers
        if dimension_name(name) is None
    ]
    for field, mm in (*((f"layers.{name}", mm) for name, mm in layers.items()), ("heel", heel)):
        if not 0 <= mm <= MOST_WORN:
            right = f"it must lie between 0 and {told(MOST_WORN)}"
            faults.append(Fault(f"{told(mm)} cannot be", right, field))
    return faults


def _today(layers: Mapping[str, float]) -> dict[str, float]:
    return {dimension_name(name) or name: mm for name, mm in layers.items()}


def _beneath(layers: dict[str, float], taken_over: str) -> tuple[dict[str, float], tuple[Finding, ...]]:
    """Return the layers still to be added: none where the tape already went over them."""
    if taken_over == "skin" or not any(layers.values()):
        return layers, ()
    text = "the measures were taken over the layers beneath, so the layers are not added again"
    note = Finding("layers", "note", ", ".join(layers), 0.0, None, text)
    return dict.fromkeys(layers, 0.0), (note,)
