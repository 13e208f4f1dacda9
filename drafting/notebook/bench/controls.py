"""What a control says and takes, from what its block states: unit, range, default, meaning. No widgets.

Values stay in the choice's own unit (mm, degrees) to the last digit; only what is shown is rounded,
in cm or in inches.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from decimal import Decimal
from typing import Any

from drafting.blocks import all_blocks
from drafting.checks.words import capital, plain
from drafting.costume.choices import block_named
from drafting.finish import FinishChoices
from drafting.ground.choices import Choice, choices_of
from drafting.ground.errors import InputError
from drafting.ground.lengths import in_unit
from drafting.ground.sources import printed
from drafting.ground.units import LengthUnit, show_length
from drafting.notebook.errors_said import sentence
from drafting.reading.choices import read_values
from drafting.reading.given import Given, Origin

SUFFIX = {"deg": " degrees", "percent": " %", "ratio": "", "count": ""}
LABELS = {"deg": "degrees", "percent": "%", "ratio": "times"}

REACH = 100
"""Steps either side of its value that a slider reaches where a choice states no range (ours)."""

INCH = 25.4
SIXTEENTH = INCH / 16
INCH_STEPS = ((1.0, 1), (5.0, 2), (10.0, 4))
"""A step of at most so many mm is so many sixteenths of an inch on a tape; 1/2 in beyond (ours)."""


def names_by_part(block: str, names: tuple[str, ...]) -> dict[str, tuple[str, ...]]:
    """Return `names` by the part of the garment that each belongs to, its finish last.

    >>> names_by_part("shirt", ("button_diameter", "bust_ease", "cap_ease", "seam_allowance"))
    {'Bodice': ('bust_ease',), 'Sleeve': ('cap_ease',), 'Shirt front': ('button_diameter',),
    'Seam allowances and marks': ('seam_allowance',)}
    """
    left, found = set(names), dict[str, tuple[str, ...]]()
    for heading, choices in _headings(block):
        part = {choice.name for choice in choices}
        own = tuple(name for name in dict.fromkeys(names) if name in part & left)
        if own:
            found[heading] = (*found.get(heading, ()), *own)
            left -= set(own)
    return found


def _headings(block: str) -> Iterator[tuple[str, tuple[Choice, ...]]]:
    kind = block_named(block)
    parts = list(kind.parts)
    if parts:
        for part in parts:
            yield capital(part.replace("-", " ")), all_blocks()[part].choices
    else:
        for group in dict.fromkeys(choice.group for choice in kind.choices):
            yield capital(group), tuple(c for c in kind.choices if c.group == group)
    yield "Seam allowances and marks", choices_of(FinishChoices)


def label(choice: Choice) -> str:
    """Return the words in front of a control; a length shows its unit with its value.

    >>> label(all_blocks()["bodice"].choices[0])
    'Bust ease'
    """
    unit = LABELS.get(choice.unit, "")
    return capital(plain(choice.name)) + (f", {unit}" if unit else "")


def choice_meaning(choice: Choice, usual: Any, unit: LengthUnit = "cm") -> str:
    """Return what a choice means, how far it reaches, and what is usual."""
    said = f"{capital(in_unit(choice.meaning, unit))}. "
    if choice.low is None or choice.high is None:
        return f"{said}Usually {value_shown(choice, usual, unit)}."
    ends = f"{value_shown(choice, choice.low, unit)} to {value_shown(choice, choice.high, unit)}"
    return f"{said}{capital(ends)}, usually {value_shown(choice, usual, unit)}."


def value_shown(choice: Choice, value: Any, unit: LengthUnit = "cm") -> str:
    """Return a value as a maker reads it, with its unit; cm to the millimetre, inches to 1/16.

    >>> bust = all_blocks()["bodice"].choices[0]
    >>> value_shown(bust, 105.0), value_shown(bust, 82.55, "in"), value_shown(bust, -3.0, "in")
    ('10.5 cm', '3 1/4 in', '-1/8 in')
    """
    match choice.unit:
        case "mm":
            return (
                show_length(value, "in", finer=True)
                if unit == "in"
                else f"{_trimmed(value / 10, _places(choice))} cm"
            )
        case "word":
            return str(value).replace("_", " ")
        case "yes/no":
            return "yes" if value else "no"
        case _:
            return f"{_trimmed(value, _places(choice))}{SUFFIX[choice.unit]}"


def typed_value(choice: Choice, text: str, kept: Any, unit: LengthUnit = "cm") -> Any:
    """Return the value that a typed text means, in the choice's own unit, range or no range.

    The text's own unit wins; a bare number is in the unit shown. A text that says what is shown
    already leaves the value that is `kept`, to the last digit. Raises `InputError` for a text that
    cannot be read.

    >>> bust = all_blocks()["bodice"].choices[0]
    >>> typed_value(bust, "3 1/4 in", 0.0), typed_value(bust, "6", 0.0), typed_value(bust, "10.3 cm", 102.95)
    (82.55, 60.0, 102.95)
    """
    if " ".join(text.split()) == value_shown(choice, kept, unit):
        return kept
    free = replace(choice, low=None, high=None)
    values, _ = read_values([free], {choice.name: Given(text)}, Origin(unit=unit))
    return values[choice.name]


def moved_value(
    choice: Choice, move: Mapping[str, Any], kept: Any, unit: LengthUnit, slips: dict[str, tuple[str, str]]
) -> tuple[Any, bool]:
    """Return the value that a hand's `move` means, and whether it could be read; else it joins the `slips`."""
    if "text" not in move:
        return move.get("value"), True
    try:
        return typed_value(choice, move["text"], kept, unit), True
    except InputError as error:
        slips[choice.name] = (move["text"], sentence(error, unit))
        return kept, False


def slider_ends(choice: Choice, *values: float) -> tuple[float, float]:
    """Return the ends of a slider, in the choice's unit; the range grows to hold every real value."""
    low = min(values) - REACH * choice.step if choice.low is None else choice.low
    high = max(values) + REACH * choice.step if choice.high is None else choice.high
    return min(low, *values), max(high, *values)


def key_step(choice: Choice, unit: LengthUnit = "cm") -> float:
    """Return what one key press moves, in the choice's unit: a round figure of the unit shown."""
    if choice.unit != "mm" or unit == "cm":
        return choice.step
    return SIXTEENTH * next((n for least, n in INCH_STEPS if choice.step <= least), 8)


def knob(choice: Choice, usual: Any, unit: LengthUnit = "cm") -> Mapping[str, Any]:
    """Return what the page needs to know of one control, whatever its value."""
    kinds = {"word": "word", "yes/no": "tick"}
    return {
        "name": choice.name,
        "label": label(choice),
        "kind": kinds.get(choice.unit, "number"),
        "meaning": choice_meaning(choice, usual, unit),
        "source": in_unit(printed(*choice.source), unit),
        "step": key_step(choice, unit),
        "words": [[w, capital(w.replace("_", " "))] for w in choice.words],
    }


def _places(choice: Choice) -> int:
    """Return the decimals shown: those of one step, and at least the millimetre."""
    one = choice.step / 10 if choice.unit == "mm" else choice.step
    exponent = Decimal(repr(float(one))).normalize().as_tuple().exponent
    return max(-int(exponent), 1 if choice.unit == "mm" else 0)


def _trimmed(value: float, places: int) -> str:
    text = f"{value:.{places}f}"
    short = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if short in ("", "-0") else short
