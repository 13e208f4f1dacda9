"""Fronts that state where the middle of the body lies on them: what lies within it, and what laps over."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from drafting.draft.frame import Straight
from drafting.geometry.curve import Points
from drafting.worn.nouns import Limb, Reals, SewnMesh


@dataclass(frozen=True)
class FrontSide:
    """A front by the number of its `piece`, its `middle` running down, and on which side its cloth lies: 1.0 to
    the left of the middle as that runs, else -1.0."""

    piece: int
    middle: Straight
    hand: float

    def inside(self, flat: Points) -> Reals:
        """Return (N,): mm that places lie within the middle, less than nothing where they lap over it."""
        return self.hand * left_from(flat, self.middle)

    def along(self, flat: Points) -> Reals:
        """Return (N,): mm down the middle beside which places lie."""
        way = self.middle[1] - self.middle[0]
        found: Reals = ((flat - self.middle[0]) / way).real * abs(way)
        return found

    def at(self, along: Reals, inside: Reals) -> Points:
        """Return (N,): the places so far down the middle and so far within it."""
        way = (self.middle[1] - self.middle[0]) / abs(self.middle[1] - self.middle[0])
        found: Points = self.middle[0] + way * (along + 1j * self.hand * inside)
        return found


def front_side(mesh: SewnMesh, index: int) -> FrontSide | None:
    """Return the front that a piece is, None where it states no middle in front or belongs to a leg.

    What goes over the middle from hand to hand laps over nothing.
    """
    piece = mesh.pieces[index]
    whole = not mesh.halved and not piece.hand
    if piece.frame.front is None or piece.limb is Limb.LEG or whole:
        return None
    flat = mesh.places(np.unique(mesh.triangles[mesh.piece == index]))
    return FrontSide(index, piece.frame.front, float(np.sign(left_from(flat, piece.frame.front).mean())))


def left_from(flat: Points, middle: Straight) -> Reals:
    """Return (N,): mm that flat places lie to the left of a straight line."""
    way = middle[1] - middle[0]
    found: Reals = ((flat - middle[0]) / way).imag * abs(way)
    return found


ON_MIDDLE = 0.5
"""mm: what lies no farther from a stated middle lies on it."""

BEYOND = 1.0
"""mm beyond the middle at which cloth laps over it."""
