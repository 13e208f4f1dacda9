"""Lengths as a maker writes them into her files: what is written is taken back by the reader as it was."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction

from drafting.ground.units import LENGTH_UNITS, in_parts, parse_length, shown_unit

TAPE = 64
"""Parts of an inch that a ruler has at most (common practice)."""

PLACES = 3
"""Decimals of an inch that are written where no part of a tape will do (ours: `4.3 in`, as it was typed)."""

NEAR = 1e-9
"""mm by which what is read back may differ: the last digits of a reckoned number, which nobody measured."""


def written_length(mm: float | Decimal, unit: str | None = "cm") -> str:
    """Return a length in a maker's own unit, with the unit behind it, as `parse_length` takes it back.

    Inches are the parts that a tape has, else decimals that are exact; what neither says is in cm.

    >>> written_length(115.8875, "in"), written_length(-6.35, "in"), written_length(109.22, "in")
    ('4 9/16 in', '-1/4 in', '4.3 in')
    >>> written_length(45, "in"), written_length(82.55), written_length(3.2, "mm")
    ('4.5 cm', '8.255 cm', '3.2 mm')
    """
    exact = mm if isinstance(mm, Decimal) else Decimal(repr(float(mm)))
    ways = _ways(exact, shown_unit(unit))
    return next(text for text in ways if abs(parse_length(text, sign="any") - float(exact)) <= NEAR)


def inches_written(number: Fraction) -> str | None:
    """Return inches as they are written, without the unit; None where cm say it better.

    >>> inches_written(Fraction(73, 16)), inches_written(Fraction(43, 10)), inches_written(Fraction(1, 3))
    ('4 9/16', '4.3', None)
    """
    if 0 in (TAPE % number.denominator, 10**PLACES % number.denominator):
        return in_parts(number, TAPE) if not TAPE % number.denominator else plain_number(number)
    return None


def plain_number(number: Fraction | Decimal) -> str:
    """Return a number with a finite decimal writing, every digit of it and no zero behind.

    >>> plain_number(Fraction(43, 10)), plain_number(Decimal("140.0"))
    ('4.3', '140')
    """
    exact = number if isinstance(number, Decimal) else Decimal(number.numerator) / number.denominator
    text = f"{exact:f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def _ways(exact: Decimal, unit: str) -> Iterator[str]:
    if unit == "in":
        inches = Fraction(exact) / LENGTH_UNITS["in"]
        yield f"{in_parts(inches, TAPE)} in"
        yield f"{plain_number(Decimal(repr(round(float(inches), PLACES))))} in"
    yield f"{plain_number(exact)} mm" if unit == "mm" else f"{plain_number(exact / 10)} cm"
