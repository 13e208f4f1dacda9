"""The edges that a hanging piece hangs from: those that end at the places which its frame names, at its height."""

from __future__ import annotations

import numpy as np

from drafting.worn.nouns import SewnMesh, Whole


def top_edges(mesh: SewnMesh, index: int) -> Whole:
    """Return the flat vertices along every edge that a piece hangs from; its frame names a height."""
    flat = np.unique(mesh.triangles[mesh.piece == index])
    heights = mesh.pieces[index].frame.heights
    places = [place for kind, place in heights if kind is heights[0][0]]
    return np.unique(np.concatenate([_top_edge(mesh, index, flat, place) for place in places]))


def _top_edge(mesh: SewnMesh, index: int, flat: Whole, place: complex) -> Whole:
    """Return the flat vertices of the edge that a piece hangs from: it ends at `place`, off the middle."""
    ends = flat[np.abs(mesh.flat[flat, 0] + 1j * mesh.flat[flat, 1] - place) < 1.0]
    names = [ref for ref in mesh.edges if ref[0] == mesh.pieces[index].name]
    middle = set(mesh.front.tolist()) | set(mesh.back.tolist())
    for ref in names:
        chain = mesh.edges[ref]
        if np.isin(mesh.merged[ends], chain[[0, -1]]).any() and not set(chain.tolist()) <= middle:
            return flat[np.isin(mesh.merged[flat], chain)]
    return ends if len(ends) else flat[[mesh.flat[flat, 1].argmax()]]
