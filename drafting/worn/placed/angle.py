"""How far round the body each vertex lies: even over the cloth between the middle in front and behind."""

from __future__ import annotations

import numpy as np
from scipy.sparse import coo_matrix, csr_matrix
from scipy.sparse.linalg import spsolve

from drafting.draft.frame import Limb
from drafting.ground.errors import DraftError
from drafting.worn.nouns import Reals, SewnMesh, Truth
from drafting.worn.placed.top_edge import top_edges

DROPS = 300.0
"""How much more the way round keeps down a hanging piece than across it (ours: it drops straight)."""


def round_the_body(mesh: SewnMesh, chosen: Truth, hangs: Truth) -> Reals:
    """Return for each sewn vertex of the chosen triangles 0 in front to 1 behind; NaN for the others.

    Harmonic on the sewn cloth: darts, gathers and panels come out even of themselves. What `hangs` (a
    truth for each triangle) drops straight. Raises `DraftError` where nothing says where the middles are.
    """
    known = np.full(mesh.count, np.nan)
    if not chosen.any():
        return known
    laplace = stiffness(mesh, chosen, hangs)
    known[mesh.back], known[mesh.front] = 1.0, 0.0
    used = laplace.diagonal() > 0
    if not (used & (known == 0.0)).any() or not (used & (known == 1.0)).any():
        raise DraftError(
            f"nothing says where the middle of the body lies on the {mesh.garment}",
            turn="put an edge on the fold or a seam at the middle, or state it in the piece's frame",
        )
    found = np.where(used, known, np.nan)
    free = used & np.isnan(known)
    pulled = -(laplace[free][:, used & ~free] @ known[used & ~free])
    if free.any():
        found[free] = spsolve(laplace[free][:, free].tocsc(), pulled)
    return found


def stiffness(mesh: SewnMesh, chosen: Truth, hangs: Truth) -> csr_matrix:
    """Return the matrix of a field's squared slope over the chosen triangles, steeper down what hangs."""
    triangles = mesh.triangles[chosen]
    a, b, c = (mesh.flat[triangles[:, i]] for i in range(3))
    turned = np.stack([c - b, a - c, b - a], axis=1)[:, :, ::-1] * [-1.0, 1.0]  # (T, 3, 2): slopes times 2 areas
    twice = np.abs((b - a)[:, 0] * (c - a)[:, 1] - (b - a)[:, 1] * (c - a)[:, 0])
    down = (turned * _downwards(mesh)[chosen][:, None]).sum(axis=2)
    local = turned @ turned.transpose(0, 2, 1) + (hangs[chosen] * DROPS)[:, None, None] * (
        down[:, :, None] * down[:, None, :]
    )
    local /= 2 * twice[:, None, None]
    corners = mesh.merged[triangles]
    rows, columns = np.repeat(corners, 3, axis=1).ravel(), np.tile(corners, 3).ravel()
    return coo_matrix((local.ravel(), (rows, columns)), shape=(mesh.count, mesh.count)).tocsr()


def _downwards(mesh: SewnMesh) -> Reals:
    """Return the way down at each triangle on the flat: a panel that leans falls along its length, what hangs from
    an edge that it names away from that edge, as a part of a circle does."""
    found = np.tile([0.0, 1.0], (len(mesh.triangles), 1))
    for index, piece in enumerate(mesh.pieces):
        if piece.limb is not Limb.HANGS:
            continue
        own = mesh.piece == index
        if piece.frame.heights:
            top, middles = mesh.flat[top_edges(mesh, index)], mesh.flat[mesh.triangles[own]].mean(axis=1)
            ways = middles - top[np.argmin(np.linalg.norm(middles[:, None] - top[None], axis=2), axis=1)]
            found[own] = ways / np.maximum(np.linalg.norm(ways, axis=1), 1e-9)[:, None]
        else:
            spots = mesh.flat[np.unique(mesh.triangles[own])]
            _, _, ways = np.linalg.svd(spots - spots.mean(axis=0), full_matrices=False)
            found[own] = ways[0]
    return found


def hand_of_each(mesh: SewnMesh) -> Reals:
    """Return for each sewn vertex 1 on the wearer's left, -1 on the right; a halved garment is its left."""
    sums = np.zeros(mesh.count)
    for index, piece in enumerate(mesh.pieces):
        flat = np.unique(mesh.triangles[mesh.piece == index])
        middle = piece.frame.front or piece.frame.back
        side = {"left": 1.0, "right": -1.0}.get(piece.hand, 1.0)
        way = np.full(len(flat), side)
        if not mesh.halved and not piece.hand and middle is not None:
            points = mesh.flat[flat, 0] + 1j * mesh.flat[flat, 1]
            way = np.sign(((points - middle[0]) / (middle[1] - middle[0])).imag)
        np.add.at(sums, mesh.merged[flat], way)
    return np.where(sums < 0, -1.0, 1.0)
