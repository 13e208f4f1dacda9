"""Start points pushed out of the body and lifted off the floor."""

from __future__ import annotations

import numpy as np

from drafting.draft.frame import Limb
from drafting.worn.contact import DistanceField
from drafting.worn.form.form import Form
from drafting.worn.nouns import Reals, SewnMesh

MARGIN = 5.0
"""mm: no vertex starts nearer to the form or to the floor (ours)."""

ROUNDS = 40
"""How often what is inside is pushed out at most (ours)."""

APART = 3.0
"""mm: no leg starts nearer to the middle than this, but at the crotch seam (ours)."""


DEEP, RISE, HIGHEST = 15.0, 4.0, 140.0
"""mm inside from which a way out to the nearest side may be the wrong one, the steps in which it is lifted out
instead, and how far at most (ours: shoulder cloth that was pushed out by the armpit stayed there)."""

BESIDE_NECK = 0.5
"""Of the way from the middle to the shoulder point: nearer in cloth lies on chest or back, not on a shoulder."""


def lifted_over(mesh: SewnMesh, points: Reals, form: Form) -> Reals:
    """Return the points with what of the trunk's cloth lies deep in a shoulder lifted straight above it."""
    members = [i for i, piece in enumerate(mesh.pieces) if piece.limb is Limb.TRUNK]
    own = np.unique(mesh.sewn[np.isin(mesh.piece, members)])
    over = points[own, 2] > form.levels["armpit"]
    beside = np.abs(points[own, 0]) > BESIDE_NECK * form.points["shoulder"][0]
    deep = own[over & beside & (form.distance.distance(points[own]) < -DEEP)]
    found = points.copy()
    for _ in range(int(HIGHEST / RISE) if len(deep) else 0):
        found[deep[form.distance.distance(found[deep]) < MARGIN], 2] += RISE
    stuck = deep[form.distance.distance(found[deep]) < 0.0] if len(deep) else deep
    found[stuck] = points[stuck]
    return found


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
