"""Prices as makers write them: £12, 12,50 EUR, "$3.20 a yard"; what currency it is stays hers."""

from __future__ import annotations

import re

from drafting.ground.units import BadValue, as_written, parse_number, unit_of

YARDS_TO_A_METRE = 1 / 0.9144
_PRICE = re.compile(r"(?:[^\W\d]{1,4}|[£$€¥₹¢])?\s*(?P<number>\d[\d.,]*)\s*(?P<rest>[^\d]*)")
_YARD = re.compile(r"\b(?:yd|yard)s?\b")


def parse_price(value: object, unit: str | None = None) -> float:
    """Return a price from a number or a text, of what is sold by length the price of a metre.

    A text says `a yard` or `a metre`; where it says neither, `unit` does: inches are sold in yards.
    Raises `BadValue`.

    >>> parse_price("£12"), parse_price("12,50 EUR a metre"), round(parse_price("$9.144 per yd"), 6)
    (12.0, 12.5, 10.0)
    """
    number, rest = value, ""
    if isinstance(value, str):
        found = _PRICE.fullmatch(" ".join(value.split()))
        if found is None:
            raise BadValue(f"{as_written(value)} is no price", 'write it like 3.20, "£3.20" or "3.20 a yard"')
        number, rest = found["number"], found["rest"].lower()
    amount = parse_number(number, sign="not negative")
    metre = "m" in re.findall(r"[a-z]+", rest) or "metre" in rest or "meter" in rest
    yards = _YARD.search(rest) or (not metre and unit_of(f"1 {unit}") == "in")
    return amount * YARDS_TO_A_METRE if yards else amount
