"""Buttons on worn garments, as rings on the cloth: what is buttoned shows its buttons through their holes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

import numpy as np

from drafting.worn.nouns import AtRest, Reals, Truth
from drafting.worn.picture.spots import spots_worn

ROUND = np.exp(2j * np.pi * np.arange(13) / 12)
"""Places round a ring, closed."""

APART = 20.0
"""mm between the middles of a hole and of the button in it at most: the button lies at the hole's end (ours)."""

ON_PIECE = 1.0
"""mm beyond its piece that a button's middle may lie: what was folded away or cut off has none."""


@dataclass(frozen=True)
class SeenButton:
    """A button, or a `hole` that one comes through: its piece by number, its middle on it, its radius, its hand.

    `hand` "" is both.
    """

    piece: int
    at: complex
    radius: float
    hand: str = ""
    hole: bool = False


@dataclass(frozen=True, eq=False)
class ButtonRing:
    """The ring of a button on the cloth (13, 3), mm: of a `hole`, or on the `mirrored` hand; `through`: a button
    that has come through a hole of what lies over it."""

    points: Reals
    hole: bool
    mirrored: bool
    through: bool = False

    @property
    def middle(self) -> Reals:
        found: Reals = self.points[:-1].mean(axis=0)
        return found


def button_rings(rest: AtRest, buttons: tuple[SeenButton, ...], hidden: Truth) -> tuple[ButtonRing, ...]:
    """Return the rings of a garment's buttons, one where a hole lies over its button.

    `hidden` (count,) says which sewn points lie under other cloth: no button is seen there.
    """
    rings = list(_all_rings(rest, buttons, hidden))
    holes, own = [one for one in rings if one.hole], [one for one in rings if not one.hole]
    met = [np.array([np.linalg.norm(one.middle - hole.middle) for one in own]) < APART for hole in holes]
    through = np.any(met, axis=0) if met else np.zeros(len(own), bool)
    alone = (hole for hole, over in zip(holes, met, strict=True) if not over.any())
    return (*(replace(one, through=bool(out)) for one, out in zip(own, through, strict=True)), *alone)


def _all_rings(rest: AtRest, buttons: tuple[SeenButton, ...], hidden: Truth) -> Iterator[ButtonRing]:
    mesh = rest.mesh
    for button in buttons:
        faces = mesh.triangles[mesh.piece == button.piece]
        middle, beyond = spots_worn(rest.points, mesh, faces, np.array([button.at]))
        if beyond[0] > ON_PIECE or _covered(rest, faces, button, hidden):
            continue
        ring, _ = spots_worn(rest.points, mesh, faces, button.at + button.radius * ROUND)
        if not mesh.halved:
            yield ButtonRing(ring, button.hole, False)
            continue
        across = abs(middle[0, 0]) < button.radius
        whole = np.ptp(ring[:, 0]) > 1.5 * button.radius  # where the piece ends on the middle, half of it is there
        if across or button.hand != "right":
            yield ButtonRing(ring, button.hole, False)
        if (across and not whole) or (not across and button.hand != "left"):
            yield ButtonRing(ring * (-1.0, 1.0, 1.0), button.hole, True)


def _covered(rest: AtRest, faces: np.ndarray, button: SeenButton, hidden: Truth) -> bool:
    """Return whether the vertex next to a button lies under other cloth."""
    own = np.unique(faces)
    flat = rest.mesh.places(own)
    return bool(hidden[rest.mesh.merged[own[np.abs(flat - button.at).argmin()]]])
