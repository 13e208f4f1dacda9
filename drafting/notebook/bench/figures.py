"""Lengths in the tables of the bench: to the millimetre in cm, to 1/8 in inches. No widgets."""

from __future__ import annotations

from drafting.ground.units import show_length
from drafting.notebook.bench.controls import LengthUnit


def length(mm: float, unit: LengthUnit = "cm") -> str:
    """Return a length without its unit, which stands at the head of the table.

    >>> length(927.04), length(927.1, "in"), length(-6.0)
    ('92.7', '36 1/2', '-0.6')
    """
    if unit == "in":
        return show_length(mm, "in").removesuffix(" in")
    text = f"{mm / 10:.1f}"
    return "0.0" if text == "-0.0" else text
