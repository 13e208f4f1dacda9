"""Cloth bent in its plane, so that its edge follows another: what hands do when they pin a curve to a curve."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from drafting.geometry.curve import Points
from drafting.geometry.moves import Motion

NEAR = 12.0
"""mm: how near a point of the edge has to be to carry cloth along (ours)."""

FAR_SHARE, FAR_MISS = 0.45, 3.0
"""How far in the cloth still follows: as a share of the seam, or of what it misses by (ours)."""


@dataclass(frozen=True, eq=False)
class Bent:
    """A move, and then a shift of what lies near `here` towards `there`, fading within `reach` mm."""

    move: Motion
    here: Points
    there: Points
    reach: float

    @property
    def over(self) -> bool:
        return self.move.over

    def __call__(self, points: Points) -> Points:
        laid = self.move(points)
        gaps = np.abs(laid[:, None] - self.here)
        near = gaps.min(axis=1)
        weights = np.exp(-(((gaps - near[:, None]) / NEAR) ** 2))
        shift = (weights * (self.there - self.here)).sum(1) / weights.sum(1)
        return np.asarray(laid + shift * np.exp(-((near / self.reach) ** 2)))


def bent_to(move: Motion, here: Points, there: Points, seam_length: float) -> Bent:
    """Return a move after which points `here` (as moved) are drawn onto `there`."""
    miss = float(np.abs(there - here).max())
    return Bent(move, here, there, max(seam_length * FAR_SHARE, FAR_MISS * miss))
