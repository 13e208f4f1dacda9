"""Laps start straight across the middle in front, as wide as they were cut: nothing goes round the body there."""

from __future__ import annotations

import numpy as np

from drafting.draft.frame import Limb
from drafting.worn.nouns import Reals, SewnMesh, Whole

BEYOND = 1.0
"""mm beyond the middle at which cloth laps over it."""

ON_MIDDLE = 0.5
"""mm: what lies no farther from a stated middle lies on it."""


def lap_across(mesh: SewnMesh, index: int, points: Reals) -> tuple[Whole, Reals]:
    """Return the sewn vertices of a piece beyond its stated middle in front, and where they start, (K, 3) mm.

    `points` (count, 3) are where the others start. None where the piece states no middle, or is of a leg.
    """
    piece = mesh.pieces[index]
    if piece.frame.front is None or piece.limb is Limb.LEG:
        return NONE, np.zeros((0, 3))
    start, end = piece.frame.front
    own = np.unique(mesh.triangles[mesh.piece == index])
    ways = (mesh.flat[own] @ np.array([1.0, 1j]) - start) / (end - start) * abs(end - start)
    inside = ways.imag * np.sign(ways.imag.mean())
    lap, on = inside < -BEYOND, np.abs(inside) < ON_MIDDLE
    if not on.any() or not lap.any():
        return NONE, np.zeros((0, 3))
    order = np.argsort(ways.real[on])
    line = points[mesh.merged[own[on][order]]]
    feet = [np.interp(ways.real[lap], ways.real[on][order], line[:, axis]) for axis in range(3)]
    side = -1.0 if piece.hand == "right" else 1.0
    feet[0] = feet[0] + side * inside[lap]
    return mesh.merged[own[lap]], np.column_stack(feet)


NONE: Whole = np.zeros(0, dtype=np.int64)
"""No vertices."""
