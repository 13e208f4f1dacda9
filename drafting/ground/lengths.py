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

HowTold = Literal["plain", "fine", "small", "bought", "ready", "far", "least", "most"]
"""How a length is told: `plain` to 1 mm or 1/8 in; `fine` to 0.1 mm or 1/16 in, as checks measure;
`small`, a button or a bone, in mm whatever the metric unit, else to 1/16 in; `bought` in metres, or
in yards and eighths; `ready`, what is sold by its length, as a zip, in whole cm or whole inches, never
too short; `far`, a distance to keep, in metres or feet; `least` and `most`, the ends of what would be taken, as
`plain`, but rounded inwards, so that what is read there can be typed."""

_TOLD = re.compile(r"⟨(-?[0-9.]+(?:e[-+]?[0-9]+)?)(?:\|(fine|small|bought|ready|far|least|most))?⟩")

TENTHS = 0.95
"""mm: what is told finely and is less than this is told in hundredths of a mm, whatever the unit (ours)."""

INWARDS = {"least": math.ceil, "most": math.floor}
STEPS = {"cm": 1.0, "mm": 1.0, "in": 25.4 / 8}
"""mm: what the ends of a range are rounded to, in each unit."""

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
    >>> [in_unit(told(mm, how), unit) for mm, how, unit in ((39.9, "most", "cm"), (39.9, "least", "in"))]
    ['3.9 cm', '1 5/8 in']
    """
    return f"⟨{mm:.7g}{'' if how == 'plain' else f'|{how}'}⟩" if math.isfinite(mm) else f"{mm} mm"


def angle_said(degrees: float) -> str:
    """Return an angle as a maker reads it, in whole degrees.

    >>> angle_said(0.6), angle_said(-1.2), angle_said(12.4)
    ('1 degree', '-1 degree', '12 degrees')
    """
    whole = round(degrees)
    return f"{whole} degree{'' if abs(whole) == 1 else 's'}"


def apart_said(count: int, apart: float) -> str:
    """Return how far apart `count` things of a row stand (mm), as the end of a clause; nothing of one alone."""
    return f", {told(apart)} apart" if count > 1 else ""


APART = re.compile(r", ⟨[^⟩]*⟩ apart")
"""What `apart_said` says, wherever it stands in a sentence."""


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

    Two lengths that read alike are no change, and told as one.

    >>> in_unit(f"across back {told(400.2)} to {told(401.0)}", "in")
    'across back 15 3/4 in'
    """
    own = shown_unit(unit)

    def shown(found: re.Match[str]) -> str:
        return _shown(float(found[1]), found[2] or "plain", own)

    def one(pair: re.Match[str]) -> str:
        return pair[1] if _alike(pair, own) else pair[0]

    return _TOLD.sub(shown, _FROM_TO.sub(one, text))


_FROM_TO = re.compile(r"(⟨[^⟩]*⟩) to (⟨[^⟩]*⟩)")
_INSTEAD = re.compile(r"(⟨[^⟩]*⟩)[a-z ]{0,40} instead of (⟨[^⟩]*⟩)")
"""Two lengths of which one became, or stands for, the other."""


def _alike(pair: re.Match[str], unit: ShownUnit) -> bool:
    one, other = (_TOLD.fullmatch(each) for each in (pair[1], pair[2]))
    if one is None or other is None:
        return False
    return len({_shown(float(each[1]), each[2] or "plain", unit) for each in (one, other)}) == 1


def tells_no_change(text: str, unit: str | None) -> bool:
    """Return whether all that a text tells as changed reads alike before and after, in `unit`.

    >>> tells_no_change(f"{told(510.2)} round instead of {told(509.9)}", "cm")
    True
    """
    own = shown_unit(unit)
    pairs = [*_FROM_TO.finditer(text), *_INSTEAD.finditer(text)]
    return bool(pairs) and all(_alike(pair, own) for pair in pairs)


def _shown(mm: float, how: str, unit: ShownUnit) -> str:
    if how == "bought":
        return _bought(mm, unit)
    if how == "ready":
        own = "in" if unit == "in" else "cm"
        return show_length(math.ceil(mm / SIZES[own] - READY) * SIZES[own], own)
    if how in INWARDS:
        nothing = 1e-6 if how == "most" else -1e-6
        mm, how = INWARDS[how](mm / STEPS[unit] + nothing) * STEPS[unit], "plain"
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
