"""Cuffs turned back over their sleeve: the upper edge is caught to the sleeve's seams by a few stitches."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from drafting.draft.draft import EdgeRef
from drafting.draft.piece import Piece
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.worn.nouns import Whole
from drafting.worn.sewn.chosen import SewnParts
from drafting.worn.sewn.guides import ROLL
from drafting.worn.sewn.joined import Merged

BESIDE = frozenset({EdgeRole.ARM_SEAM, EdgeRole.UNDERARM, EdgeRole.VENT, EdgeRole.SLIT})
"""What a sleeve has beside its end: the edges up which a cuff is turned."""


def caught_to_seams(pieces: SewnParts, whole: Merged) -> Whole:
    """Return the pairs (K, 2) of sewn vertices that stitches hold: a cuff's upper edge to each seam it crosses."""
    found = {
        (upper, on)
        for cuff in pieces.shell
        if cuff.role is PieceRole.CUFF and any(mark.what == ROLL for mark in cuff.placements)
        for seam in pieces.seams
        if seam.a[0][0] == cuff.name and seam.b[0][0] != cuff.name
        for ref in seam.b
        for upper, on in _caught_beside(cuff, seam.a[0], pieces.draft[ref[0]], ref, whole)
    }
    return np.array(sorted(found), dtype=np.int64).reshape(-1, 2)


def _caught_beside(
    cuff: Piece, sewn: EdgeRef, sleeve: Piece, end: EdgeRef, whole: Merged
) -> Iterator[tuple[int, int]]:
    """Yield for both seams beside a sleeve's end the vertices of cuff and seam that lie on each other."""
    upper, foot = _opposite(cuff, sewn[1], whole), whole.flat_along(sewn)
    at = sleeve.index(end[1])
    ring = (*sleeve.edges[at + 1 :], *sleeve.edges[:at])
    for edges, way in ((ring, 1), (ring[::-1], -1)):
        chain: list[int] = []
        for edge in edges:
            if edge.role not in BESIDE:
                break
            chain += whole.flat_along((sleeve.name, edge.name))[::way].tolist()
        corners = foot[whole.merged[foot] == whole.merged[chain[0]]] if chain else ()
        up = np.linalg.norm(whole.flat[chain] - whole.flat[chain[0]], axis=1) if chain else np.zeros(0)
        for corner in corners:
            deep = np.linalg.norm(whole.flat[upper] - whole.flat[corner], axis=1)
            on = chain[int(np.abs(up - deep.min()).argmin())]
            yield int(whole.merged[upper[deep.argmin()]]), int(whole.merged[on])


def _opposite(piece: Piece, name: str, whole: Merged) -> Whole:
    """Return the flat vertices along the edges of a piece that do not touch the named one."""
    at, count = piece.index(name), len(piece.edges)
    beyond = [piece.edges[(at + more) % count].name for more in range(2, count - 1)]
    return np.concatenate([whole.flat_along((piece.name, one)) for one in beyond])
