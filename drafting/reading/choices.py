"""A maker's choices for a block, from the raw values of the costume file."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import partial
from typing import Any, Literal, TypeVar

from drafting.ground.choices import Choice, choices_of
from drafting.ground.errors import InputError
from drafting.ground.units import BadValue, parse_angle, parse_length, parse_number, parse_percent, show_length
from drafting.reading.given import Faults, Given, truth

_Chosen = TypeVar("_Chosen")
_Number = TypeVar("_Number", int, float)
ChosenBy = Literal["file", "notebook", "default"]


def read_choices(
    choices_cls: type[_Chosen],
    given: Mapping[str, Given],
    unit: str | None = None,
    file: str = "",
    *,
    scale: float = 1.0,
    where: str = "choices",
) -> tuple[_Chosen, dict[str, ChosenBy]]:
    """Return `choices_cls` filled from `given`, and where each value came from.

    A value is read by its choice's own unit (`unit` is the file's unit of length); defaults that
    are meant for an adult are multiplied by `scale`, what a maker typed never is. `where` heads
    the field's name in faults. Raises `InputError` with every fault: unknown names (the nearest
    is offered), values of the wrong kind, values outside the range (which is named).
    """
    values, sources = read_values(choices_of(choices_cls), given, unit, file, scale=scale, where=where)
    return choices_cls(**values), sources


def read_values(
    choices: Iterable[Choice],
    given: Mapping[str, Given],
    unit: str | None = None,
    file: str = "",
    *,
    scale: float = 1.0,
    where: str = "choices",
) -> tuple[dict[str, Any], dict[str, ChosenBy]]:
    """Return the value and the source of each choice by name; else like `read_choices`."""
    known = {choice.name: choice for choice in choices}
    faults = Faults(file)
    values: dict[str, Any] = {name: _default(choice, scale) for name, choice in known.items()}
    for name, raw in given.items():
        field = f"{where}.{name}" if where else name
        if name in known:
            values[name] = faults.value(partial(_typed, known[name], unit), raw, field)
        else:
            faults.unknown(name, known, field, raw.line)
    if faults.found:
        raise InputError(faults.found)
    return values, {name: given[name].source if name in given else "default" for name in known}


def _default(choice: Choice, scale: float) -> Any:
    scalable = choice.scales and isinstance(choice.default, (int, float))
    return choice.default * scale if scalable else choice.default


def _typed(choice: Choice, unit: str | None, value: object) -> Any:
    """Return `value` as the choice's unit has it; raises `BadValue`."""
    match choice.unit:
        case "word":
            return _word(choice, value)
        case "yes/no":
            return truth(value)
        case "count":
            return _in_range(choice, _whole(parse_number(value)), unit)
        case "mm":
            return _in_range(choice, parse_length(value, unit, sign="any"), unit)
        case "deg":
            return _in_range(choice, parse_angle(value), unit)
        case "percent":
            return _in_range(choice, parse_percent(value), unit)
        case "ratio":
            return _in_range(choice, parse_number(value), unit)


def _whole(number: float) -> int:
    if number != int(number):
        raise BadValue(f"{number:g} is no whole number", "count in whole numbers")
    return int(number)


def _word(choice: Choice, value: object) -> str:
    if value in choice.words:
        return str(value)
    raise BadValue(f"'{str(value)[:40]}' is not one of the words", f"write {' or '.join(choice.words)}")


def _in_range(choice: Choice, value: _Number, unit: str | None) -> _Number:
    low = choice.low is None or value >= choice.low
    high = choice.high is None or value <= choice.high
    if low and high:
        return value
    reach = _reach(choice, unit)
    raise BadValue(f"{_shown(choice, value, unit)} is out of range", f"it reaches from {reach}")


def _reach(choice: Choice, unit: str | None) -> str:
    low = "anything" if choice.low is None else _shown(choice, choice.low, unit)
    high = "anything" if choice.high is None else _shown(choice, choice.high, unit)
    return f"{low} to {high}"


def _shown(choice: Choice, value: float, unit: str | None) -> str:
    if choice.unit == "mm":
        return show_length(value, unit or "cm")
    return f"{value:g} {choice.unit}" if choice.unit in ("deg", "percent") else f"{value:g}"
