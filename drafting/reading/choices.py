"""A maker's choices for a block, from the raw values of the costume file."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import partial
from typing import Any, Literal, TypeVar

from drafting.ground.choices import Choice, choices_of
from drafting.ground.errors import InputError
from drafting.ground.scale import allowance_scale
from drafting.ground.units import (
    BadValue,
    as_written,
    parse_angle,
    parse_length,
    parse_number,
    parse_percent,
    parse_ratio,
    show_length,
    unit_of,
)
from drafting.reading.given import Faults, FilePlace, Given, Origin, SaidWhere, one_of, truth

_Chosen = TypeVar("_Chosen")
ChosenBy = Literal["file", "notebook", "default"]

ALL_CHOICES = "`drafting blocks NAME` lists all choices of a block"


def read_choices(
    choices_cls: type[_Chosen], given: Mapping[str, Given], origin: Origin, scale: float = 1.0, growth: float = 1.0
) -> tuple[_Chosen, dict[str, ChosenBy]]:
    """Return `choices_cls` filled from `given`, and where each value came from.

    A value is read by its choice's own unit; defaults that are meant for an adult are multiplied by
    `scale` (those of style by `growth` too, on a large body), what a maker typed never is. Raises
    `InputError` with every fault: unknown names (the nearest are offered), values of the wrong kind, values
    outside the range (which is named).
    """
    values, sources = read_values(choices_of(choices_cls), given, origin, scale, growth)
    return choices_cls(**values), sources


def read_values(
    choices: Iterable[Choice], given: Mapping[str, Given], origin: Origin, scale: float = 1.0, growth: float = 1.0
) -> tuple[dict[str, Any], dict[str, ChosenBy]]:
    """Return the value and the source of each choice by name; else like `read_choices`."""
    known = {choice.name: choice for choice in choices}
    faults = Faults(origin.file)
    values: dict[str, Any] = {name: _default(choice, scale, growth) for name, choice in known.items()}
    for name, raw in given.items():
        field = origin.field(name)
        if name in known:
            parse = partial(_typed, known[name], origin.unit, raw.source)
            values[name] = faults.value(parse, raw, field)
        else:
            faults.unknown(FilePlace(origin.file, field, raw.line), name, known, ALL_CHOICES)
    if faults.found:
        raise InputError(faults.found)
    return values, {name: given[name].source if name in given else "default" for name in known}


def _default(choice: Choice, scale: float, growth: float) -> Any:
    if not choice.scales or not isinstance(choice.default, (int, float)):
        return choice.default
    size = allowance_scale(scale) if choice.of_hand else scale
    return choice.default * (size * growth if choice.grows else size)


def _typed(choice: Choice, unit: str | None, said: SaidWhere, value: object) -> Any:
    """Return `value` as the choice's unit has it; raises `BadValue`.

    What is wrong is told in the maker's own words, of a notebook in the file's `unit`.
    """
    match choice.unit:
        case "word":
            return one_of(value, choice.words)
        case "yes/no":
            return truth(value)
        case "count":
            number = parse_number(value)
            if number != int(number):
                what = f"{as_written(value)} is no whole number"
                raise BadValue(what, "count in whole numbers")
            amount: float = int(number)
        case "mm":
            amount = parse_length(value, unit, sign="any")
        case "deg":
            amount = parse_angle(value)
        case "percent":
            amount = parse_percent(value)
        case "ratio":
            amount = parse_ratio(value)
    low = choice.low is None or amount >= choice.low
    high = choice.high is None or amount <= choice.high
    if low and high:
        return amount
    own = {"mm": unit, "deg": "deg", "percent": "percent"}.get(choice.unit)
    typed = said == "file"
    shown = as_written(value, own) if typed else _shown(choice, amount, unit)
    reach = _reach(choice, unit_of(value, unit) if typed else unit)
    if choice.unit == "ratio" and "%" in str(value) and choice.low is not None and choice.high is not None:
        reach = f"{100 * choice.low:g} % to {100 * choice.high:g} %, where 100 % is nothing more"
    raise BadValue(f"{shown} is out of range", f"it reaches from {reach}")


def _reach(choice: Choice, unit: str | None) -> str:
    low = "anything" if choice.low is None else _shown(choice, choice.low, unit)
    high = "anything" if choice.high is None else _shown(choice, choice.high, unit)
    return f"{low} to {high}"


def _shown(choice: Choice, value: float, unit: str | None) -> str:
    if choice.unit == "mm":
        return show_length(value, unit or "cm")
    return f"{value:g} {choice.unit}" if choice.unit in ("deg", "percent") else f"{value:g}"
