"""What a ruler says of the printed square, and what to do about it. Pure.

Both sides are asked for: a printer may stretch one way only, and one factor cannot mend that.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.ground.units import ShownUnit, parse_length, show_length

TRUE = 0.5
"""mm by which a side of a 100 mm square may be off and still count as true (common practice)."""

WILD = 2.0
"""A square more than so many times too large or small was misread, or is another one (ours)."""


@dataclass(frozen=True)
class Repair:
    """The answer: scale across and up (1 is true), whether the print holds, and sentences.

    `factor` is what to print at instead, None where no one factor mends it; `bust` what the bust
    girth would come out as, mm (None where it was not given or the sides differ).
    """

    across: float
    up: float
    holds: bool
    factor: float | None
    bust: float | None
    said: tuple[str, ...]


def scale_repair(
    across: float, up: float, *, bust: float | None = None, side: float = 100.0, told_in: ShownUnit = "cm"
) -> Repair:
    """Return what a printed square means that measures `across` x `up` mm instead of `side`.

    The bust is told in the unit `told_in`.

    Raises `ValueError` for a side that no printer makes.

    >>> repair = scale_repair(97.0, 97.0, bust=914.0)
    >>> repair.holds, round(repair.factor, 5), round(repair.bust, 1)
    (False, 1.03093, 886.6)
    """
    for value in (across, up):
        if not side / WILD <= value <= side * WILD:
            raise ValueError(f"{value:g} mm is no side of the {side:g} mm square; measure it again")
    x, y = across / side, up / side
    tolerance = TRUE * side / 100
    if max(abs(across - side), abs(up - side)) <= tolerance:
        said = ("The print is true: both sides are within half a millimetre.",)
        return Repair(x, y, True, 1.0, bust, said)
    if abs(across - up) > tolerance:
        return Repair(x, y, False, None, None, tuple(_stretched(x, y)))
    scale = (x + y) / 2
    became = None if bust is None else bust * scale
    return Repair(x, y, False, 1 / scale, became, tuple(_scaled(scale, bust, told_in)))


def typed_repair(across: str, up: str, *, bust: str = "", unit: str = "mm", told_in: ShownUnit = "cm") -> Repair:
    """Return the same from what a maker types; a bare number takes `unit` (in means the 4 in square).

    Raises `BadValue` (a ValueError) for what is no length.

    >>> typed_repair("3 7/8 in", "3 7/8 in").said[0]
    'The print came out at 96.9 % of true size.'
    """
    inches = any("in" in text or '"' in text for text in (across, up)) or unit == "in"
    girth = parse_length(bust, "cm") if bust else None
    sides = [parse_length(text, unit) for text in (across, up)]
    return scale_repair(*sides, bust=girth, side=101.6 if inches else 100.0, told_in=told_in)


def _scaled(scale: float, bust: float | None, unit: ShownUnit) -> list[str]:
    said = [f"The print came out at {100 * scale:.1f} % of true size."]
    if bust is not None:
        said.append(f"A bust of {show_length(bust, unit)} would come out as {show_length(bust * scale, unit)}.")
    said.append(
        "Print again at 100 % or 'actual size', with 'fit to page' off; where the printer lets that "
        f"setting alone, print at {100 / scale:.1f} %. Then measure both sides again."
    )
    return said


def _stretched(x: float, y: float) -> list[str]:
    true = 0.005
    if abs(x - 1) <= true or abs(y - 1) <= true:
        way, scale = ("up the page", y) if abs(x - 1) <= true else ("across the page", x)
        head = f"The print is stretched {way} only: {100 * scale:.1f} % there, true the other way."
    else:
        head = f"The print is stretched unevenly: {100 * x:.1f} % across, {100 * y:.1f} % up the page."
    return [
        head,
        "No one scale mends that. Measure once more; then print on another printer, or feed the paper "
        "anew: a tray that slips, or a driver's 'fit' in one direction, does this.",
    ]
