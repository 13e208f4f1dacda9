"""Prices as makers write them: £12, 12,50 EUR, "$3.20 a yard"; what currency it is stays hers.

Read strictly: a word that is no currency and no known measure is refused, never passed over.
"""

from __future__ import annotations

import re

from drafting.ground.units import BadValue, as_written, parse_number, unit_of

YARDS_TO_A_METRE = 1 / 0.9144
_MONEY = r"(?:[^\W\d]{3}|[£$€¥₹¢]|kr|zł|Fr|Kč|p)"
_EACH = r"(?:a|an|per|the|je|pro|le|/)"
_PRICE = re.compile(
    rf"{_MONEY}?\s*(?P<number>\d[\d.,]*)\s*(?:(?!yds\b){_MONEY}(?=[\s/]|$))?\s*(?:{_EACH}?\s*(?P<unit>[^\W\d]+)\.?)?",
    re.IGNORECASE,
)
_UNITS = {
    "metre": ("m", "metre", "metres", "meter", "meters"),
    "yard": ("yd", "yds", "yard", "yards"),
    "piece": ("each", "piece", "pieces", "packet", "pack", "card", "pair"),
}
"""What a price is of."""

_THOUSAND = re.compile(r"\d{1,3}[.,]\d{3}")
"""1.250 is a thousand to one maker and one and a quarter to another."""


def parse_price(value: object, unit: str | None = None) -> float:
    """Return a price from a number or a text, of what is sold by length the price of a metre.

    A text says `a yard` or `a metre`; where it says neither, `unit` does: inches are sold in yards.
    Raises `BadValue`.

    >>> parse_price("£12"), parse_price("12,50 EUR a metre"), round(parse_price("$9.144 per yd"), 6)
    (12.0, 12.5, 10.0)
    """
    number: object = value
    of: str | None = ""
    if isinstance(value, str):
        found = _PRICE.fullmatch(" ".join(value.split()))
        of = _unit(found["unit"] or "") if found else None
        if found is None or of is None:
            raise BadValue(f"{as_written(value)} is no price", 'write it like 3.20, "£3.20" or "3.20 a yard"')
        number = found["number"]
        if _THOUSAND.fullmatch(number) and not of:
            raise BadValue(
                f"{as_written(value)} may be a thousand or a little more than one",
                "write it without a separator of thousands, and with two decimals",
            )
    amount = parse_number(number, sign="not negative")
    yards = of == "yard" or (of != "metre" and unit_of(f"1 {unit}") == "in")
    return amount * YARDS_TO_A_METRE if yards else amount


def _unit(word: str) -> str | None:
    """Return what a word of measure stands for, "" where there is none, None where nobody knows it."""
    if not word:
        return ""
    return next((name for name, words in _UNITS.items() if word.lower() in words), None)
