"""How far a cloth may be stretched on the body all day before it is felt and seen."""

from __future__ import annotations

import numpy as np

from drafting.fabric import Fabric
from drafting.worn.nouns import Reals

WORN_SHARE = 0.5
"""Of what a swatch stretches, as much as is worn with comfort at most (common practice: 0.2 to 0.5)."""

CRIMP = 0.01
"""A fraction that any cloth gives before it shows a line of pull: its threads lie in waves (ours)."""


def gives_at(fabric: Fabric | None, angle: Reals) -> Reals:
    """Return the fraction a cloth gives in comfort at each `angle`, degrees to its warp (0 along, 90 across).

    Between the three ways that a swatch was pulled it goes over evenly, by cos 2a and cos 4a.

    >>> gives_at(Fabric("jersey", stretch_across=0.5), np.array([90.0])).tolist()
    [0.25]
    """
    if fabric is None:
        return np.full(angle.shape, CRIMP)
    along, across, bias = fabric.stretch_along, fabric.stretch_across, fabric.stretch_bias
    twice, four = np.cos(np.radians(2 * angle)), np.cos(np.radians(4 * angle))
    straight = (along + across) / 2
    diagonal = max(bias, straight)
    stretch = (straight + diagonal) / 2 + (along - across) / 2 * twice + (straight - diagonal) / 2 * four
    return np.maximum(CRIMP, WORN_SHARE * stretch)
