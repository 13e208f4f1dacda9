"""The edges that a hanging piece hangs from: those that end at the places which its frame names, at its height."""

from __future__ import annotations

import numpy as np

from drafting.worn.nouns import Limb, SewnMesh, Whole


def top_edges(mesh: SewnMesh, index: int) -> Whole:
    """Return the flat vertices along every edge that a piece hangs from; its frame names a height."""
    flat = np.unique(mesh.triangles[mesh.piece == index])
    heights = mesh.pieces[index].frame.heights
    places = [place for kind, place in heights if kind is heights[0][0]]
    return np.unique(np.concatenate([_top_edge(mesh, index, flat, place) for place in places]))


def _top_edge(mesh: SewnMesh, index: int, flat: Whole, place: complex) -> Whole:
    """Return the flat vertices of the edge that a piece hangs from: it ends at `place`, off the middle.

    Where `place` lies on the middle of a piece that goes over it, the edge goes on there on the other hand.
    What is sewn to another piece that hangs so is a side, not a top.
    """
    ends = flat[np.abs(mesh.flat[flat, 0] + 1j * mesh.flat[flat, 1] - place) < 1.0]
    chains = [chain for ref, chain in mesh.edges.items() if ref[0] == mesh.pieces[index].name]
    middle = np.union1d(mesh.front, mesh.back)
    found = [c for c in chains if np.isin(mesh.merged[ends], c[[0, -1]]).any() and not np.isin(c, middle).all()]
    tops = [chain for chain in found if not _is_side(mesh, index, chain)] or found
    if not tops:
        return ends if len(ends) else flat[[mesh.flat[flat, 1].argmax()]]
    both = np.isin(mesh.merged[ends], middle).all()
    return flat[np.isin(mesh.merged[flat], np.concatenate(tops if both else tops[:1]))]


def _is_side(mesh: SewnMesh, index: int, chain: Whole) -> bool:
    """Return whether a chain of sewn vertices is a seam to another piece that hangs from an edge it names."""
    on = (mesh.sewn[:, :, None] == chain[:2]).any(axis=1).all(axis=1)
    beside = (mesh.pieces[other] for other in np.unique(mesh.piece[on]) if other != index)
    return any(piece.limb is Limb.HANGS and piece.frame.heights for piece in beside)
