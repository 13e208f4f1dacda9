"""Lengths, weights, angles and percents as makers write them; millimetres inside.

Numbers stay `Fraction` until the last step, so that 36 1/2 in is 927.1 mm and not 927.0999.
"""

from __future__ import annotations

import math
import re
import unicodedata
from fractions import Fraction
from typing import Literal

from drafting.ground.names import clean_text

LengthUnit = Literal["cm", "in"]
"""The unit that lengths are shown in on a screen; it is never the unit they are kept in."""

ShownUnit = Literal["cm", "mm", "in"]
"""The unit that lengths are told in, by a maker's file."""

Sign = Literal["positive", "not negative", "any"]

LENGTH_UNITS: dict[str, Fraction] = {
    **dict.fromkeys(("mm", "millimetre", "millimetres"), Fraction(1)),
    **dict.fromkeys(("cm", "centimetre", "centimetres"), Fraction(10)),
    **dict.fromkeys(("m", "metre", "metres"), Fraction(1000)),
    **dict.fromkeys(('"', "in", "in.", "inch", "inches"), Fraction(254, 10)),
    **dict.fromkeys(("'", "ft", "ft.", "foot", "feet"), Fraction(3048, 10)),
    **dict.fromkeys(("yd", "yard", "yards"), Fraction(9144, 10)),
}
_IN_PARTS = frozenset({"in", "yd"})
_SCALES = {name: float(mm) for name, mm in LENGTH_UNITS.items()}
WEIGHT_UNITS = {"kg": Fraction(1), "g": Fraction(1, 1000)} | dict.fromkeys(
    ("lb", "lbs", "pound", "pounds"), Fraction(45359237, 100000000)
)
ANGLE_UNITS = dict.fromkeys(("deg", "degree", "degrees", "°"), Fraction(1))
PERCENT_UNITS = dict.fromkeys(("%", "percent", "per cent"), Fraction(1))
FORMS = {
    "length": "92 cm, 36 1/4 in or 92,5",
    "weight": "68 kg or 150 lb",
    "angle": "24 deg",
    "percentage": "4 % or 4,5",
}
"""How each kind of value is written, for a message."""
PLAIN_UNITS: dict[str, Fraction] = {"": Fraction(1)}

SHOWN = 40  # characters of a value that a message repeats
LONGEST_TEXT = 60  # characters; no measure a person writes is longer
FARTHEST = 1e7  # mm (10 km): beyond it a value is a slip whatever it is for

_NUMBER = r"(?:[0-9]+[.,]?[0-9]*|[.,][0-9]+)"
_AMOUNT = re.compile(
    rf"(?P<sign>[-+])?\s*(?:(?:(?P<whole>[0-9]+)(?:\s+|\s*-\s*))?(?P<top>[0-9]+)\s*/\s*(?P<bottom>[0-9]+)"
    rf"|(?P<number>{_NUMBER}))\s*(?P<unit>[^0-9]*)"
)
_FEET = re.compile(r"(?P<feet>[0-9]+)\s*(?:'|ft\.?|foot|feet)\s*-?\s*(?P<inches>[0-9].*)")
_MARKS = str.maketrans(
    {"″": '"', "”": '"', "“": '"', "„": '"', "′": "'", "’": "'", "‘": "'", "´": "'"}
    | {"−": "-", "–": "-", "—": "-", "‐": "-", "‑": "-", "⁄": "/", "∕": "/"}
)


class BadValue(ValueError):  # noqa: N818 - reads as what a maker gave
    """A value that cannot be used: `what` is wrong with it, and what would be `right`."""

    def __init__(self, what: str, right: str = "") -> None:
        self.what, self.right = what, right
        super().__init__(f"{what}; {right}" if right else what)


class NoUnit(BadValue):
    """A length without a unit in a file that names none."""


SAY_UNIT = 'say it once: a line unit = "cm" at the top, or in a table "(cm)" in the heading or a column unit'


def parse_length(value: object, unit: str | None = None, *, sign: Sign = "positive") -> float:
    """Return a length in mm from a number or a text such as "92 cm", "36 1/4 in", 5' 4".

    A text's own unit wins; `unit` (the file's) is for bare numbers, and None means that there is
    none. Raises `BadValue` for anything else, and for a sign that `sign` does not allow.

    >>> parse_length("36-1/2 in"), parse_length("92,5", "cm"), parse_length("3/4 in")
    (927.1, 925.0, 19.05)
    """
    return _signed(_length(value, unit), value, sign, FARTHEST, "10 km")


def parse_weight(value: object, unit: str | None = "kg") -> float:
    """Return a weight in kg from a number or a text such as "68 kg" or "150 lb"."""
    return _signed(_amount(value, unit, WEIGHT_UNITS, "weight"), value, "positive", 1e6, "1000 t")


def parse_angle(value: object, *, sign: Sign = "any") -> float:
    """Return an angle in degrees from a number or a text such as "24 deg" or "24°"."""
    return _signed(_amount(value, "deg", ANGLE_UNITS, "angle"), value, sign, 36000, "100 turns")


def parse_percent(value: object, *, sign: Sign = "any") -> float:
    """Return a percentage in percent (4.0 for "4 %" and for a bare 4)."""
    return _signed(_amount(value, "%", PERCENT_UNITS, "percentage"), value, sign, 1e6, "1000000 %")


def parse_number(value: object, *, sign: Sign = "any") -> float:
    """Return a plain number from a number or a text such as "0,5" or "1 1/2"."""
    return _signed(_amount(value, "", PLAIN_UNITS, "number"), value, sign, 1e12, "1e12")


def parse_ratio(value: object) -> float:
    """Return a ratio from a number, or from a text such as "1,5" or "150 %"."""
    percent = isinstance(value, str) and re.search(r"(%|per ?cent)\s*$", value)
    return parse_percent(value) / 100 if percent else parse_number(value)


def show_length(mm: float, unit: str | None = "cm", *, finer: bool = False) -> str:
    """Return a length as a maker reads it: cm or mm to 0.1, inches or yards to the nearest eighth.

    `finer` shows cm to 0.1 mm, and inches to the nearest sixteenth.

    >>> show_length(927.1), show_length(927.1, "in"), show_length(-6, "in"), show_length(3.2, "mm")
    ('92.7 cm', '36 1/2 in', '-1/4 in', '3.2 mm')
    >>> show_length(82.55, "in", finer=True), show_length(82.55, "cm", finer=True), show_length(2057.4, "yd")
    ('3 1/4 in', '8.25 cm', '2 1/4 yd')
    """
    if not math.isfinite(mm):
        return str(mm)
    name = unit or "cm"
    if name in _IN_PARTS:
        return f"{in_parts(mm / _SCALES[name], 16 if finer else 8)} {name}"
    scale = _SCALES.get(name, 10.0)
    places = 3 if scale == 1000 else 1 + (finer and scale == 10)
    text = f"{mm / scale:.{places}f}"
    short = text.rstrip("0").rstrip(".")
    return f"{'0' if short in ('', '-0') else short} {name}"


def shown_unit(unit: str | None) -> ShownUnit:
    """Return what lengths are told in to a maker whose file is in `unit`: "cm", "mm" or "in".

    >>> shown_unit("inches"), shown_unit("yd"), shown_unit("m"), shown_unit(None)
    ('in', 'in', 'cm', 'cm')
    """
    size = LENGTH_UNITS.get((unit or "cm").strip().lower(), Fraction(10))
    return "mm" if size == 1 else "in" if size % Fraction(254, 10) == 0 else "cm"


def as_written(value: object, unit: str | None = None) -> str:
    """Return a value as its maker wrote it, short and on one line; a bare number with its `unit`.

    >>> as_written("20  in"), as_written(20, "cm"), as_written(True), as_written([1])
    ("'20 in'", '20 cm', 'true', 'a list')
    """
    if isinstance(value, (dict, list)):
        return "a table" if isinstance(value, dict) else "a list"
    if isinstance(value, str):
        return f"'{clean_text(value, SHOWN)}'"
    if isinstance(value, int) and value.bit_length() > 4 * SHOWN:
        return "a number of so many digits"
    number = isinstance(value, (int, float)) and not isinstance(value, bool)
    text = str(value) if number else clean_text(str(value), SHOWN)
    return f"{text} {unit}" if number and unit else text.lower()


def unit_of(value: object, unit: str | None = None) -> str | None:
    """Return the unit of length in which a maker wrote a value, else `unit`.

    >>> unit_of("20 in", "cm"), unit_of(20, "cm"), unit_of('36"', "cm")
    ('in', 'cm', 'in')
    """
    own = re.search(r'([a-z]+|")$', value.strip().lower()) if isinstance(value, str) else None
    size = LENGTH_UNITS.get(own[0]) if own else None
    return next((name for name in ("mm", "cm", "in") if LENGTH_UNITS[name] == size), unit)


def is_length_unit(text: str) -> bool:
    """Return whether `text` is a unit of length that files may name."""
    return text.strip().lower() in LENGTH_UNITS


def in_parts(amount: float | Fraction, parts: int) -> str:
    """Return an amount of inches or yards in whole ones and the nearest part of one, as a tape has it.

    >>> in_parts(36.53, 8), in_parts(-0.25, 16)
    ('36 1/2', '-1/4')
    """
    count = round(parts * abs(float(amount)))
    whole, rest = divmod(count, parts)
    part = str(Fraction(rest, parts)) if rest else ""
    text = " ".join(p for p in (str(whole) if whole or not rest else "", part) if p)
    return f"-{text}" if amount < 0 and count else text


def _length(value: object, unit: str | None) -> Fraction:
    feet = _FEET.fullmatch(_tidy(value).lower()) if isinstance(value, str) else None
    if feet is None:
        return _amount(value, unit, LENGTH_UNITS, "length")
    inches = _amount(feet["inches"], "in", {k: LENGTH_UNITS[k] for k in ('"', "in", "inches")}, "length")
    return int(feet["feet"]) * LENGTH_UNITS["ft"] + inches


def _amount(value: object, unit: str | None, units: dict[str, Fraction], noun: str) -> Fraction:
    """Return the exact amount of `value` in the base unit of `units`."""
    if isinstance(value, bool) or not isinstance(value, (int, float, str)):
        article = "an" if noun == "angle" else "a"
        raise BadValue(f"{as_written(value)} is not {article} {noun}", "give a number, or a text with its unit")
    text = _tidy(value) if isinstance(value, str) else _plain(value)
    if not text:
        raise BadValue("is empty", f"give the {noun}, or leave the line out")
    match = _AMOUNT.fullmatch(text)
    if match is None:
        raise _unreadable(text, noun, units)
    amount = _exact(match, text)
    own = match["unit"].strip().lower()
    if own in units and own:
        return amount * units[own]
    if own:
        right = f"use one of {_names(units)}" if units is not PLAIN_UNITS else "write the number alone"
        raise BadValue(f"{as_written(own)} is not a unit of {noun}", right)
    return amount * _file_unit(unit, units, noun, text, amount)


def _file_unit(unit: str | None, units: dict[str, Fraction], noun: str, text: str, amount: Fraction) -> Fraction:
    if unit is None:
        ways = f"it could be {text} in ({show_length(float(amount * units.get('in', 1)))}) or {text} cm"
        raise NoUnit(f"{text} has no unit: {ways}", f'write "{text} in" or "{text} cm", or {SAY_UNIT}')
    name = unit.strip().lower()
    if name not in units:
        raise BadValue(f"'{unit}' is not a unit of {noun}", f"use one of {_names(units)}")
    if name == "mm" and re.fullmatch(r"[1-9][0-9]{0,2},[0-9]{3}", text):
        joined = text.replace(",", "")
        raise BadValue(f"{text} could be {joined} mm or a part of one", f"write {joined}, without the comma")
    return units[name]


def _exact(match: re.Match[str], text: str) -> Fraction:
    sign = -1 if match["sign"] == "-" else 1
    if match["number"] is not None:
        return sign * Fraction(match["number"].replace(",", ".").rstrip(".") or "0")
    whole, top, bottom = int(match["whole"] or 0), int(match["top"]), int(match["bottom"])
    if bottom == 0:
        raise BadValue(f"{text} divides by zero", "a fraction looks like 36 1/2")
    if match["whole"] is not None and top >= bottom:
        raise BadValue(f"{text}: the fraction after {whole} is not less than one", "as in 36 1/2")
    return sign * (whole + Fraction(top, bottom))


def _unreadable(text: str, noun: str, units: dict[str, Fraction]) -> BadValue:
    number = re.match(r"[-+]?[0-9.,']+", text)
    if number and sum(number[0].count(mark) for mark in ".,'") > 1:
        return BadValue(f"{as_written(text)} has two separators", "write one point or one comma, as in 1020.5")
    if text.lower().lstrip("+-") in ("nan", "inf", "infinity"):
        return BadValue(f"{text} is not a number", f"give the {noun} as a number")
    what, form = "an angle" if noun == "angle" else f"a {noun}", FORMS.get(noun, "36,5 or 1 1/2")
    return BadValue(f"{as_written(text)} cannot be read as {what}", f"write it like {form}")


def _signed(amount: Fraction, value: object, sign: Sign, far: float, far_text: str) -> float:
    if abs(amount) > far:
        raise BadValue(f"{as_written(value)} is far beyond anything", f"it must be below {far_text}")
    if amount < 0 and sign != "any":
        right = "it must be more than zero" if sign == "positive" else "it must be zero or more"
        raise BadValue(f"{as_written(value)} is negative", right)
    if amount == 0 and sign == "positive":
        raise BadValue("is zero", "give the real value, or leave the line out")
    return float(amount)


def _plain(value: float) -> str:
    """Return a number's own digits, without an exponent."""
    if isinstance(value, int):
        if abs(value) > 10**15:
            raise BadValue(f"{as_written(value)} is far beyond anything", "check the number")
        return str(value)
    if not math.isfinite(value):
        raise BadValue(f"{value} is not a number", "give a number")
    if abs(value) > 1e15:
        raise BadValue(f"{value} is far beyond anything", "check the number")
    text = repr(value)
    return text if "e" not in text else f"{value:.15f}"


def _tidy(value: str) -> str:
    """Return `value` with plain marks: vulgar fractions, primes, dashes and odd spaces replaced."""
    if len(value) > LONGEST_TEXT:
        raise BadValue(f"{as_written(value)} is too long for a measure", "write it like 92 cm")
    parts = []
    for mark in value:
        vulgar = unicodedata.decomposition(mark).startswith("<fraction>")
        parts.append(f" {unicodedata.normalize('NFKC', mark)}" if vulgar else mark)
    text = unicodedata.normalize("NFKC", "".join(parts).translate(_MARKS)).translate(_MARKS)
    return " ".join(text.replace("''", '"').split())


def _names(units: dict[str, Fraction]) -> str:
    """Return the shortest name of each unit, for a message."""
    first = {size: name for name, size in reversed(units.items()) if name.isalpha() or name in "%°"}
    return ", ".join(reversed(first.values()))
