"""Fronts that meet on the middle of the body: which piece laps over which, and how places of one lie on the other.

A halved garment's front meets its own mirror image; where the hands differ the buttons tell which fronts meet.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from drafting.geometry.curve import Points
from drafting.worn.fronts import ON_MIDDLE, FrontSide, front_side
from drafting.worn.nouns import AtRest, Limb, Reals, SewnMesh, Truth, Whole
from drafting.worn.rolls import laid_back, past_roll


@dataclass(frozen=True)
class FrontsMeeting:
    """A front that laps over the `other` hand's, whose places beside it lie `lower` mm farther down; `mirrored`
    where the other is its own mirror image."""

    own: FrontSide
    other: FrontSide
    lower: float
    mirrored: bool

    def beside(self, flat: Points, inside: Reals | float) -> Points:
        """Return (N,): the places on the other piece beside places of this one, so far within its middle."""
        along = self.own.along(flat) + self.lower
        return self.other.at(along, np.broadcast_to(inside, along.shape))

    def foot(self, flat: Points) -> Points:
        """Return (N,): the places on the middle beside these."""
        return self.own.at(self.own.along(flat), np.zeros(len(flat)))


def meetings(mesh: SewnMesh) -> Iterator[FrontsMeeting]:
    """Yield each front that states its middle, with the one it laps over."""
    sides = [side for index in range(len(mesh.pieces)) if (side := front_side(mesh, index)) is not None]
    if mesh.halved:
        yield from (FrontsMeeting(side, side, 0.0, True) for side in sides)
        return
    for own in sides:
        for other in sides:
            pairs = _buttoned(mesh, own, other)
            if len(pairs):
                lower = float(np.median(other.along(pairs[:, 1]) - own.along(pairs[:, 0])))
                yield FrontsMeeting(own, other, lower, False)


def _buttoned(mesh: SewnMesh, own: FrontSide, other: FrontSide) -> Points:
    """Return (K, 2): places on two fronts' middles that buttons hold together."""
    ours, theirs = _on_middle(mesh, own), _on_middle(mesh, other)
    both = (*mesh.tied.tolist(), *mesh.tied[:, ::-1].tolist())
    found = [(ours[a], theirs[b]) for a, b in both if a in ours and b in theirs]
    return np.array(found, dtype=complex).reshape(-1, 2) if own.piece != other.piece else np.zeros((0, 2), complex)


def _on_middle(mesh: SewnMesh, side: FrontSide) -> dict[int, complex]:
    """Return the place of each sewn vertex on a front's middle."""
    own: Whole = np.unique(mesh.triangles[mesh.piece == side.piece])
    flat = mesh.places(own)
    on = np.abs(side.inside(flat)) < ON_MIDDLE
    return dict(zip(mesh.merged[own[on]].tolist(), flat[on].tolist(), strict=True))


def hand_over(mesh: SewnMesh) -> str:
    """Return the hand that laps over the other: the one with the buttonholes, the left where neither has any."""
    return next((piece.holes for piece in mesh.pieces if piece.holes and piece.limb is not Limb.LEG), "left")


def under_other(rest: AtRest) -> Truth:
    """Return (count,): which sewn points of a garment lap under the other hand's front: those of the hand beneath
    that lie beyond the middle. Of a halved one its left hand is told, whose middle is x = 0."""
    mesh, lapped = rest.mesh, np.zeros(rest.mesh.count, bool)
    beneath = "right" if hand_over(mesh) == "left" else "left"
    if mesh.halved:
        return lapped if beneath == "right" else np.asarray(~mesh.on_middle & (rest.points[:, 0] < 0.0))
    for side in {meeting.own.piece: meeting.own for meeting in meetings(mesh)}.values():
        piece = mesh.pieces[side.piece]
        if piece.hand == beneath:
            own = np.unique(mesh.triangles[mesh.piece == side.piece])
            flat = mesh.places(own)
            if piece.rolls:  # the foot of a lapel lies on its own lap, the rest of it on its own hand
                flat = np.where(past_roll(piece.rolls, flat), laid_back(piece.rolls, flat), flat)
            lapped[mesh.merged[own[side.inside(flat) < -ON_MIDDLE]]] = True
    return lapped
