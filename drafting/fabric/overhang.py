"""The overhang test: how far a strip hangs over an edge, and the bending length that this says.

The bending length c of a cloth is (rigidity / weight) ** (1 / 3): the length at which its stiffness
and its weight are even. It is found on the exact curve, not by the rule of Peirce (`Source.PEIRCE`).
"""

from __future__ import annotations

from drafting.geometry.brent import brent_zero
from drafting.geometry.elastica import bent_strip
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told

SLOPE = 41.5
"""Degrees: the slope down to which a strip is slid; c is then half of what hangs over (`Source.ASTM_D1388`)."""

ANGLES = (5.0, 80.0)
"""Degrees that can be read: below, a strip hardly bends; above, it hangs whatever its stiffness (ours)."""

RATIOS = (0.6, 6.0)
"""Bending lengths that hang over at these angles, with room."""


def overhang_ratio(angle: float) -> float:
    """Return how many bending lengths hang over where the strip's end lies `angle` degrees below its edge.

    Raises `DraftError` for an angle that tells nothing.

    >>> round(overhang_ratio(41.5), 3)
    2.0
    """
    if not ANGLES[0] <= angle <= ANGLES[1]:
        raise DraftError(
            "the end of the strip hangs too straight to tell its stiffness",
            value=f"{angle:g} degrees",
            reach=f"{ANGLES[0]:g} to {ANGLES[1]:g} degrees",
            turn=f"slide the strip until its end touches a slope of {SLOPE:g} degrees",
        )
    return float(brent_zero(lambda ratio: bent_strip(ratio, 1.0, 1.0).chord - angle, *RATIOS, within=1e-6))


def bending_length(overhang: float, angle: float = SLOPE) -> float:
    """Return the bending length (in the unit of `overhang`) of a strip whose end lies `angle` degrees down.

    >>> round(bending_length(112.0, 41.5), 1)
    56.0
    """
    if not overhang > 0:
        raise DraftError("the overhang must be more than zero", value=told(overhang, "fine"))
    return overhang / overhang_ratio(angle)
