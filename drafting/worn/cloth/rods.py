"""What bones and a stiff braid resist: by bending, N m2, and along themselves, N for each unit of strain.

A bone's kind and width are the draft's; thickness, wire and moduli are recalled, as no trustworthy table of what
is sold was found.
"""

from __future__ import annotations

import math

from drafting.shaping.coat.bone import FLAT, ROUND, SPIRAL

ALONG = 3000.0
"""N for each unit of strain: a bone keeps its length. Under half of what a flat one 6 mm wide has (3.6 mm2 of
polyester at 2 GPa), and a skirt that hangs on it changes it by less than a hundredth (ours)."""

PLASTIC = 2e9
"""N/m2: polyester, nylon (from memory)."""

FLAT_THICK = 0.6
"""mm: a flat bone of polyester (from memory)."""

WIRE = 1.0
"""mm: the flattened wire of a spiral bone, each turn a wire's thickness from the next (from memory)."""

STEEL, POISSON = 2.0e11, 0.3
"""N/m2, and Poisson's ratio: spring steel (from memory)."""


def flat_bone(width: float, thickness: float, modulus: float) -> float:
    """Return the bending stiffness in N m2 of a flat bone, E b t^3 / 12: mm, mm and N/m2 (`COMMON_PRACTICE`)."""
    return modulus * (width / 1000) * (thickness / 1000) ** 3 / 12


def round_bone(width: float, modulus: float) -> float:
    """Return the bending stiffness in N m2 of a round rod, E pi d^4 / 64: mm and N/m2 (`COMMON_PRACTICE`)."""
    return modulus * math.pi * (width / 1000) ** 4 / 64


def spiral_bone(width: float, wire: float, pitch: float, modulus: float) -> float:
    """Return the bending stiffness in N m2 of a coil, p E d^4 / (32 D (2 + nu)): mm and N/m2.

    Half of each turn is bent, half is twisted (S. Timoshenko, *Strength of Materials*, part II, helical springs,
    from memory); D is the coil's middle.
    """
    across = (width - wire) / 1000
    return (pitch / 1000) * modulus * (wire / 1000) ** 4 / (32 * across * (2 + POISSON))


def bone_bends(kind: str, width: float) -> float:
    """Return the bending stiffness in N m2 of a bone by what is bought: its `kind` and `width` in mm.

    >>> [f"{1000 * bone_bends(kind, 6.0):.1f}" for kind in ("flat", "spiral", "round")]
    ['0.2', '1.1', '127.2']
    """
    if kind == ROUND:
        return round_bone(width, PLASTIC)
    if kind == SPIRAL:
        wire = min(WIRE, width / 3)
        return spiral_bone(width, wire, 2 * wire, STEEL)
    if kind == FLAT:
        return flat_bone(width, FLAT_THICK, PLASTIC)
    raise ValueError(f"a bone is flat, spiral or round, not {kind!r}")


TRIED_WIDTH = 6.0
"""mm: as wide as a bone is where none is asked for (common practice)."""

RING, OPEN = bone_bends(ROUND, TRIED_WIDTH), bone_bends(SPIRAL, TRIED_WIDTH)
"""N m2 of the bone that a hem is tried with: one that goes all round, and one with ends."""


def braid_rigidity(thick: float, apart: float, modulus: float) -> float:
    """Return the bending stiffness in N m2 of a braid for each mm of its width: threads `thick` mm, one every
    `apart` mm, all at 45 degrees to it, E pi d^4 / 64 and cos^4 of that each (plane geometry)."""
    return modulus * math.pi * (thick / 1000) ** 4 / 64 * math.cos(math.pi / 4) ** 4 / apart


BRAID = braid_rigidity(0.25, 0.5, 2.5e9)
"""N m2 for each mm of width: nylon threads 0.25 mm thick, two to the mm, of some 2.5 GPa (from memory). Its
threads turn on each other, so that it gives along itself."""
