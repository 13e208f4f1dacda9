"""What is taken for a cloth where no strip was tried: all guesses, and each marked as one.

The bending lengths are of the trade's kinds of cloth, recalled, not measured: chiffon 10-15 mm,
shirting 16-22, suiting 18-25, denim and canvas 30-45.
"""

from __future__ import annotations

from drafting.fabric import Fabric
from drafting.fabric.sorts import Sort
from drafting.ground.sources import Cited, memory, ours

LOAD = 98.1
"""N/m: 500 g on a strip of 5 cm, taken for a pull by hand that names no load."""

STRETCH: dict[str, tuple[float, float]] = {"woven": (0.008, 0.012), "knit": (0.10, 0.20)}
"""Fractions along and across at that load, where a file says nothing."""

BIAS = 0.08
"""The least stretch on the bias at that load, where a file says nothing."""

MASS: dict[str, float] = {"woven": 150.0, "knit": 200.0}
"""g/m2."""

DENSITY: dict[str, float] = {"woven": 0.45, "knit": 0.33}
"""g/cm3, with the air between the threads: what a thickness is taken from."""

BY_MASS: tuple[tuple[float, float], ...] = ((110.0, 16.0), (150.0, 19.0), (250.0, 21.0), (400.0, 25.0))
"""g/m2 up to which a plain woven cloth has this bending length in mm: lining, shirting, suiting, twill."""

HEAVY = 35.0
"""mm: the bending length of a heavier plain woven cloth, as denim or canvas."""

BY_SORT: dict[Sort, float] = {
    "pile": 27.0,
    "napped": 25.0,
    "satin": 17.0,
    "sheer": 13.0,
    "coated": 35.0,
    "sequinned": 20.0,
    "lace": 18.0,
    "felted": 32.0,
    "foiled": 25.0,
}
"""mm: the bending length of a woven cloth that is no plain one."""

KNIT = 15.0
"""mm: the bending length of a knit."""

SOURCES: dict[str, Cited] = {
    "along": memory("stretch of common cloths at 500 g on a strip of 5 cm"),
    "across": memory("stretch of common cloths at 500 g on a strip of 5 cm"),
    "shear": memory("stretch of common cloths on the bias"),
    "bends_along": memory("bending lengths of the trade's kinds of cloth"),
    "bends_across": memory("bending lengths of the trade's kinds of cloth"),
    "twists": ours("the mean of both threads' rigidities, as for a cloth that bends alike all ways"),
    "weight": memory("150 g/m2 woven, 200 knit"),
    "thickness": memory("woven cloth weighs some 0.45 g/cm3, knit 0.33"),
}
"""Where the guess of each value of a ply comes from."""


def guessed_bending_length(cloth: Fabric, mass: float) -> float:
    """Return a bending length in mm for a cloth of `mass` g/m2 whose strip nobody slid over an edge."""
    if cloth.weave == "knit":
        return KNIT
    sort = cloth.possible_sorts[0]
    by_mass = next((length for most, length in BY_MASS if mass < most), HEAVY)
    if (
        sort == "satin"
    ):  # from lining to brocade: the light ones are limper than plain cloth, the heavy ones are not
        return BY_SORT[sort] if mass < BY_MASS[1][0] else by_mass
    return BY_SORT.get(sort, by_mass)
