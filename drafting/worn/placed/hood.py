"""A hood starts drawn up over the head: its sides flat beside it, turned in to the seam over the crown."""

from __future__ import annotations

import numpy as np
from scipy.spatial import cKDTree

from drafting.draft.roles import PieceRole
from drafting.geometry.curve import Points
from drafting.worn.nouns import Reals, SewnMesh, Whole

ROOM = 10.0
"""mm that a hood starts clear of the head (ours)."""

OVER_NAPE = 50.0
"""mm over the nape from which the form is head, no longer neck (ours)."""


def goes_over_head(mesh: SewnMesh, index: int) -> bool:
    """Return whether a piece is half a hood, sewn to its other hand over the head."""
    return mesh.pieces[index].role is PieceRole.HOOD and len(_over_the_head(mesh, index)) > 1


def drawn_up(mesh: SewnMesh, index: int, form: Reals, nape: float) -> Reals:
    """Return where the flat vertices of a hood's piece start, (K, 3) mm.

    `form` (V, 3) is the wearer's surface, `nape` mm over the floor: the head's breadth, back and crown are read
    from it.
    """
    flat = np.unique(mesh.triangles[mesh.piece == index])
    at, to = mesh.places(flat), mesh.merged[flat]
    head = form[form[:, 2] > nape + OVER_NAPE]
    half = float(np.abs(head[:, 0]).max()) + ROOM
    seam = at[np.isin(to, _over_the_head(mesh, index))]
    gap, near = cKDTree(np.column_stack((seam.real, seam.imag))).query(np.column_stack((at.real, at.imag)))
    way = np.where(gap > 0.0, at - seam[near], at.mean() - seam[near])
    turned_in = np.where(gap < half, seam[near] + half * way / np.abs(way), at)
    behind = 1.0 if _face_at_left(at, seam) else -1.0
    back, up = behind * turned_in.real, turned_in.imag
    side = -1.0 if mesh.pieces[index].hand == "right" else 1.0
    return np.column_stack(
        (
            side * np.minimum(gap, half),
            head[:, 1].max() + ROOM + back - back.max(),
            head[:, 2].max() + ROOM + up - up.max(),
        )
    )


def _over_the_head(mesh: SewnMesh, index: int) -> Whole:
    """Return the sewn vertices of a hood's piece that lie on the seam to its other hand."""
    own = np.unique(mesh.sewn[mesh.piece == index])
    if mesh.halved:
        found: Whole = own[mesh.on_middle[own]]
        return found
    role = mesh.pieces[index].role
    others = [i for i, piece in enumerate(mesh.pieces) if piece.role is role and i != index]
    return np.intersect1d(own, mesh.sewn[np.isin(mesh.piece, others)])


def _face_at_left(flat: Points, seam: Points) -> bool:
    """Return whether the open edge of a hood's piece lies left of its seam on the flat piece."""
    return bool(flat.real.mean() < seam.real.mean())
