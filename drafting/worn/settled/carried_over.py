"""What one mesh of a garment found, carried over to another: from coarse to fine, from the last draft to this."""

from __future__ import annotations

import numpy as np
from scipy.spatial import cKDTree

from drafting.worn.nouns import AtRest, Reals, SewnMesh, Truth

# Triangles that are tried around a point.
_TRIED = 10
# How far a point may lie beyond a triangle, in its own weights: an outline that moved, a curve cut finer.
_BEYOND = 1.0


def carried_over(rest: AtRest, mesh: SewnMesh) -> tuple[Reals, Reals]:
    """Where `mesh`'s vertices lie on the cloth at rest, each at its place on its piece, and their slip: mm.

    A piece that the other mesh does not have is a ValueError: that garment has to be placed anew.
    """
    known = {(piece.name, piece.hand): place for place, piece in enumerate(rest.mesh.pieces)}
    carried = np.concatenate([rest.points, rest.slip], axis=1)
    total, times = np.zeros((mesh.count, 6)), np.zeros(mesh.count)
    for place, piece in enumerate(mesh.pieces):
        if (piece.name, piece.hand) not in known:
            raise ValueError(f"{mesh.garment} at rest had no piece {piece.name!r}; it has to be placed anew")
        flat = np.unique(mesh.triangles[mesh.piece == place])
        of_piece = rest.mesh.piece == known[piece.name, piece.hand]
        np.add.at(total, mesh.merged[flat], _on_cloth(rest.mesh, of_piece, mesh.flat[flat], carried))
        np.add.at(times, mesh.merged[flat], 1.0)
    found = total / times[:, None]
    found[mesh.on_middle, 0] = 0.0
    return found[:, :3], found[:, 3:]


def _on_cloth(mesh: SewnMesh, of_piece: Truth, flat: Reals, carried: Reals) -> Reals:
    """(k, 6): what the sewn vertices carry (count, 6), at points (k, 2) of one of their pieces."""
    triangles = mesh.triangles[of_piece]
    corners = mesh.flat[triangles]
    tried = cKDTree(corners.mean(axis=1)).query(flat, k=min(_TRIED, len(triangles)))[1].reshape(len(flat), -1)
    weights = _weights(corners[tried], flat)
    best = weights.min(axis=2).argmax(axis=1)
    own = np.arange(len(flat))
    chosen = np.clip(weights[own, best], -_BEYOND, 1.0 + _BEYOND)
    chosen /= chosen.sum(axis=1)[:, None]
    there = carried[mesh.merged[triangles[tried[own, best]]]]
    return np.asarray(np.einsum("kc,kcx->kx", chosen, there))


def _weights(corners: Reals, points: Reals) -> Reals:
    """(k, m, 3): weights of m triangles' corners (k, m, 3, 2) that give each point (k, 2)."""
    first, second = corners[:, :, 1] - corners[:, :, 0], corners[:, :, 2] - corners[:, :, 0]
    away = points[:, None] - corners[:, :, 0]
    twice = first[..., 0] * second[..., 1] - first[..., 1] * second[..., 0]
    one = (away[..., 0] * second[..., 1] - away[..., 1] * second[..., 0]) / twice
    other = (first[..., 0] * away[..., 1] - first[..., 1] * away[..., 0]) / twice
    return np.stack([1.0 - one - other, one, other], axis=2)
