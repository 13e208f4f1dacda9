"""The one place of the worn view's words: a text for each key, in `words.toml` beside this file."""

from __future__ import annotations

import string
import tomllib
from dataclasses import dataclass
from functools import cache
from typing import Any

from drafting.ground.templates import beside
from drafting.ground.units import LengthUnit, show_length

Fact = float | int | str

HALF_CM, QUARTER_INCH = 5.0, 6.35
"""mm to which a distance is told that nobody could pin closer (ours)."""


@dataclass(frozen=True, slots=True)
class Remark:
    """A sentence: the key of its text and the facts that go into it; lengths mm, shares fractions.

    A fact that is a `Remark`, or a tuple of them, is said within the sentence.
    """

    key: str
    facts: tuple[tuple[str, Fact | Remark | tuple[Remark, ...]], ...] = ()


def remark(key: str, **facts: Fact | Remark | tuple[Remark, ...]) -> Remark:
    """Return the sentence `key` with its facts."""
    return Remark(key, tuple(facts.items()))


def worded(said: Remark, unit: LengthUnit) -> str:
    """Return the sentence, lengths in the maker's unit; a KeyError names a text or fact that is not there.

    >>> worded(remark("girth.as_drafted", level="waist", worn=865.0), "cm")
    'Round the waist it is worn at 86.5 cm, as drafted.'
    """
    facts = {name: _within(fact, unit) for name, fact in said.facts}
    return _Shown(unit).vformat(_texts()[said.key], (), facts)


def _within(fact: Fact | Remark | tuple[Remark, ...], unit: LengthUnit) -> Fact:
    if isinstance(fact, Remark):
        return worded(fact, unit)
    if isinstance(fact, tuple):
        return in_a_row([worded(part, unit) for part in fact])
    return fact


def in_a_row(parts: list[str]) -> str:
    """Return parts as a list in a sentence.

    >>> in_a_row(["hip", "waist", "bust"])
    'hip, waist and bust'
    """
    return " and ".join(filter(None, (", ".join(parts[:-1]), *parts[-1:])))


@cache
def _texts() -> dict[str, str]:
    sections = tomllib.loads(beside(__file__, ".toml"))
    return {f"{section}.{name}": text for section, lines in sections.items() for name, text in lines.items()}


class _Shown(string.Formatter):
    """How a fact is shown, by the word after its colon."""

    def __init__(self, unit: LengthUnit) -> None:
        self.unit = unit

    def format_field(self, value: Any, form: str) -> str:
        match form:
            case "length":
                return show_length(value, self.unit)
            case "about":
                step = QUARTER_INCH if self.unit == "in" else HALF_CM
                return show_length(round(value / step) * step, self.unit)
            case "first":
                return f"{value[:1].upper()}{value[1:]}"
            case "%":
                return f"{100 * value:.1f}".removesuffix(".0") + " %"
            case _:
                return str(super().format_field(value, form)).replace("_", " ")
