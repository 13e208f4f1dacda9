"""Lengths inside sentences, which are read in the maker's own unit at the very end.

Who makes a sentence knows a length in mm, and not who will read it: `told` writes the length with
all its digits between two brackets that no other text has, and `in_unit`, called where a sentence
is shown, turns each into the reader's cm, mm or inches.
"""

from __future__ import annotations

import math
import re
from typing import Literal

from drafting.ground.units import ShownUnit, show_length, shown_unit

HowTold = Literal["plain", "fine", "small", "bought", "ready", "far"]
"""How a length is told: `plain` to 1 mm or 1/8 in; `fine` to 0.1 mm or 1/16 in, as checks measure;
`small`, a button or a bone, in mm whatever the metric unit, else to 1/16 in; `bought` in metres, or
in yards and eighths; `ready`, what is sold by its length, as a zip, in whole cm or whole inches, never
too short; `far`, a distance to keep, in metres or feet."""

_TOLD = re.compile(r"⟨(-?[0-9.]+(?:e[-+]?[0-9]+)?)(?:\|(fine|small|bought|ready|far))?⟩")

TENTHS = 0.95
"""mm: what is told finely and is less than this is told in hundredths of a mm, whatever the unit (ours)."""

SIZES = {"cm": 10.0, "in": 25.4}
READY = 0.1
"""Share of a size by which what is sold ready may be short: an 18 cm zip is sold as one of 7 in."""

YARD, FOOT = 914.4, 304.8
LONG = 20.0
"""Yards from which eighths say nothing (thread; ours)."""


def told(mm: float, how: HowTold = "plain") -> str:
    """Return a length (mm) as a sentence holds it until it is read.

    >>> in_unit(f"{told(31.75)} of ease", "in"), in_unit(f"{told(31.75)} of ease", "cm")
    ('1 1/4 in of ease', '3.2 cm of ease')
    >>> in_unit(told(15.0, "small"), "cm"), in_unit(told(1500.0, "bought"), "in")
    ('15 mm', '1 3/4 yd')
    >>> in_unit(told(4572.0, "far"), "in"), in_unit(told(4572.0, "far"), "cm")
    ('15 ft', '4.6 m')
    >>> [in_unit(told(mm, "ready"), unit) for mm, unit in ((600.0, "in"), (180.0, "in"), (180.0, "cm"))]
    ['24 in', '7 in', '18 cm']
    """
    return f"⟨{mm:.7g}{'' if how == 'plain' else f'|{how}'}⟩" if math.isfinite(mm) else f"{mm} mm"


def angle_said(degrees: float) -> str:
    """Return an angle as a maker reads it, in whole degrees.

    >>> angle_said(0.6), angle_said(-1.2), angle_said(12.4)
    ('1 degree', '-1 degree', '12 degrees')
    """
    whole = round(degrees)
    return f"{whole} degree{'' if abs(whole) == 1 else 's'}"


def counted(number: float, one: str, many: str) -> str:
    """Return a number, to the nearest whole, with what it counts.

    >>> counted(1, "seam", "seams"), counted(24.0, "hour", "hours"), counted(0, "line has", "lines have")
    ('1 seam', '24 hours', '0 lines have')
    """
    return f"{number:.0f} {one if round(number) == 1 else many}"


def in_unit(text: str, unit: str | None) -> str:
    """Return a text with every length that was `told` in it in `unit` (None: cm).

    >>> in_unit(f"off by {told(0.4, 'fine')}, {told(-1e-9)} left", "in")
    'off by 0.4 mm, 0 in left'
    """
    own = shown_unit(unit)
    return _TOLD.sub(lambda found: _shown(float(found[1]), found[2] or "plain", own), text)


def _shown(mm: float, how: str, unit: ShownUnit) -> str:
    if how == "bought":
        return _bought(mm, unit)
    if how == "ready":
        own = "in" if unit == "in" else "cm"
        return show_length(math.ceil(mm / SIZES[own] - READY) * SIZES[own], own)
    if how == "far":
        return f"{mm / FOOT:.0f} ft" if unit == "in" else f"{mm / 1000:.1f} m"
    if how == "fine" and 0.005 <= abs(mm) < TENTHS:
        return f"{f'{mm:.2f}'.rstrip('0').rstrip('.')} mm"
    if how == "plain" and unit == "mm":
        return f"{round(mm)} mm"
    if how == "small" and unit != "in":
        return show_length(mm, "mm")
    shown = [show_length(mm, unit, finer=finer) for finer in ((False, True) if how == "plain" else (True,))]
    some = [text for text in shown if text != f"0 {unit}"]
    return some[0] if some else show_length(mm, "mm") if abs(mm) >= 0.05 else shown[0]


def _bought(mm: float, unit: ShownUnit) -> str:
    """Return a length as it is asked for in a shop: what is bought in yards is never too short."""
    if unit != "in":
        return f"{mm / 1000:.2f} m"
    eighths = math.ceil(mm / YARD * 8 - 1e-6)
    return f"{math.ceil(eighths / 8)} yd" if eighths >= 8 * LONG else show_length(eighths / 8 * YARD, "yd")
