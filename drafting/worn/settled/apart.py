"""The cloth of two legs, and both halves of what hangs: where they meet, each stays on its own side of the body's
middle plane."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from drafting.worn.nouns import Limb, Reals, SewnMesh, Whole
from drafting.worn.settled.sheet import ClothSheet
from drafting.worn.settled.touch import FIRMNESS, SKIN


@dataclass(frozen=True, eq=False)
class Sides:
    """The k sewn vertices that are kept on a side, `places` (k,), and on which: `way` (k,), 1 left, -1 right."""

    places: Whole
    way: Reals


@dataclass(frozen=True, eq=False)
class Parted:
    """What keeps them apart: `energy` J, and of k vertices the `force` (k,) N along x and its `rate` (k,) N/m."""

    energy: float
    force: Reals
    rate: Reals


def sides_of(mesh: SewnMesh) -> Sides:
    """Who belongs to one leg only, or to one half of what hangs, whose folds meet their mirror images.

    What lies on the middle or belongs to both legs is left out.
    """
    way = np.zeros(mesh.count)
    on_left, on_right = (np.zeros(mesh.count, dtype=bool) for _ in range(2))
    for index, piece in enumerate(mesh.pieces):
        if piece.limb is Limb.LEG or (mesh.halved and piece.limb is Limb.HANGS):
            own = mesh.sewn[mesh.piece == index]
            on_left[own] |= mesh.halved or piece.hand != "right"
            on_right[own] |= not mesh.halved and piece.hand != "left"
    way[on_left & ~on_right], way[on_right & ~on_left] = 1.0, -1.0
    way[mesh.on_middle] = 0.0
    places = np.flatnonzero(way)
    return Sides(places, way[places])


def kept_apart(sides: Sides, sheet: ClothSheet, points: Reals) -> Parted:
    """The middle plane presses back what passes it as the form does, without friction."""
    depth = np.maximum(-sides.way * points[sides.places, 0], 0.0)
    firm = FIRMNESS * sheet.share[sides.places]
    return Parted(
        energy=float(firm @ depth**3) / (6.0 * SKIN),
        force=-sides.way * firm * depth**2 / (2.0 * SKIN),
        rate=firm * depth / SKIN,
    )
