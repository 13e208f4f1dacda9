"""Start points pushed out of the body and lifted off the floor."""

from __future__ import annotations

import numpy as np

from drafting.draft.frame import Limb
from drafting.worn.contact import DistanceField
from drafting.worn.nouns import Reals, SewnMesh

MARGIN = 5.0
"""mm: no vertex starts nearer to the form or to the floor (ours)."""

ROUNDS = 40
"""How often what is inside is pushed out at most (ours)."""

APART = 3.0
"""mm: no leg starts nearer to the middle than this, but at the crotch seam (ours)."""


def pushed_out(mesh: SewnMesh, points: Reals, distance: DistanceField) -> Reals:
    """Return the points with all of them at least `MARGIN` outside, the middle of a half in its plane."""
    found = points.copy()
    legs = np.zeros(mesh.count, dtype=bool)
    members = [i for i, piece in enumerate(mesh.pieces) if piece.limb is Limb.LEG]
    legs[mesh.sewn[np.isin(mesh.piece, members)]] = True
    legs &= ~mesh.on_middle
    for _ in range(ROUNDS):
        found[:, 2] = np.maximum(found[:, 2], MARGIN)
        if mesh.halved:
            found[mesh.on_middle, 0] = 0.0
            found[legs, 0] = np.maximum(found[legs, 0], APART)
        near = distance.near(found, MARGIN, curved=False)
        inside = near.distance < MARGIN - 0.01
        if not inside.any():
            break
        steps = np.minimum(MARGIN - near.distance[inside], 25.0)[:, None] * near.gradient[inside]
        found[near.places[inside]] += steps
    return found
