"""Laps start straight across the middle in front, as wide as they were cut: nothing goes round the body there."""

from __future__ import annotations

import numpy as np

from drafting.worn.fronts import BEYOND, ON_MIDDLE, front_side
from drafting.worn.nouns import Reals, SewnMesh, Whole


def lap_across(mesh: SewnMesh, index: int, points: Reals) -> tuple[Whole, Reals]:
    """Return the sewn vertices of a piece beyond its stated middle in front, and where they start, (K, 3) mm.

    `points` (count, 3) are where the others start. None where the piece states no middle, or is of a leg.
    """
    side = front_side(mesh, index)
    if side is None:
        return NONE, np.zeros((0, 3))
    own = np.unique(mesh.triangles[mesh.piece == index])
    flat = mesh.places(own)
    inside, along = side.inside(flat), side.along(flat)
    lap, on = inside < -BEYOND, np.abs(inside) < ON_MIDDLE
    if not on.any() or not lap.any():
        return NONE, np.zeros((0, 3))
    order = np.argsort(along[on])
    line = points[mesh.merged[own[on][order]]]
    feet = [np.interp(along[lap], along[on][order], line[:, axis]) for axis in range(3)]
    hand = -1.0 if mesh.pieces[index].hand == "right" else 1.0
    feet[0] = feet[0] + hand * inside[lap]
    return mesh.merged[own[lap]], np.column_stack(feet)


NONE: Whole = np.zeros(0, dtype=np.int64)
"""No vertices."""
