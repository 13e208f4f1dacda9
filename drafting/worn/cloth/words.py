"""What a ply is taken for, as sentences: each number measured, or a guess with where it comes from."""

from __future__ import annotations

from drafting.fabric.strip_tests import GRAVITY
from drafting.ground.lengths import told
from drafting.ground.sources import printed
from drafting.worn.cloth.guesses import SOURCES
from drafting.worn.nouns import Ply

MICRO = 1e6

NUMBERS: dict[str, tuple[str, float, str]] = {
    "along": ("stiffness along the warp", 1.0, "N/m"),
    "across": ("stiffness across it", 1.0, "N/m"),
    "shear": ("stiffness in shear", 1.0, "N/m"),
    "bends_along": ("rigidity along the warp", MICRO, "µN m"),
    "bends_across": ("rigidity across it", MICRO, "µN m"),
    "twists": ("rigidity to twist", MICRO, "µN m"),
    "weight": ("mass", 1000.0 / GRAVITY, "g/m2"),
    "thickness": ("thickness", 1.0, "mm"),
}
"""What each value of a ply is called, and how it is shown."""


def ply_said(ply: Ply) -> tuple[str, ...]:
    """Return a sentence a value, lengths as they are `told`.

    >>> from drafting.fabric import Fabric
    >>> from drafting.worn.cloth.single import single_ply
    >>> ply_said(single_ply(Fabric("shirting", mass=118.0)))[6]
    'mass: 118 g/m2, measured'
    """
    return tuple(_said(ply, name) for name in NUMBERS)


def _said(ply: Ply, name: str) -> str:
    called, scale, unit = NUMBERS[name]
    value = scale * (ply.twisting if name == "twists" else getattr(ply, name))
    shown = f"{value:,.0f} {unit}" if value >= 100 else f"{value:.3g} {unit}"
    if unit == "mm":
        shown = told(value, "fine")
    known = f"a guess ({printed(SOURCES[name])})" if name in ply.guessed else "measured"
    return f"{called}: {shown}, {known}"
