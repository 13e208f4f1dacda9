"""A garment's draft as one sewn mesh."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np

from drafting.draft.draft import Draft, EdgeRef
from drafting.ground.errors import DraftError
from drafting.worn.nouns import Limb, Ply, SewnMesh, SewnPiece, Truth
from drafting.worn.sewn.chosen import SewnParts, sewn_parts
from drafting.worn.sewn.closed import middle_sides, worn_seams
from drafting.worn.sewn.folds import folded
from drafting.worn.sewn.joined import Merged, all_merged, finer, meshed_piece
from drafting.worn.sewn.rings import PieceRing
from drafting.worn.sewn.stations import stations

ROUNDS = 4
"""How often an outline is made finer where two sides of a piece come near each other (ours)."""


def sewn_mesh(draft: Draft, name: str, plies: Mapping[str, Ply], mesh: float = 20.0) -> SewnMesh:
    """Return a garment's draft sewn up as one mesh of about `mesh` mm.

    `plies` are the cloths by the role of their material, "" the garment's own. A garment whose sides are
    alike is halved: its left half, whose middle stays in x = 0.
    """
    pieces = sewn_parts(draft)
    rings = {piece.name: folded(piece) for piece in pieces.shell}
    whole = _joined(pieces, rings, mesh)
    return SewnMesh(
        garment=name,
        halved=pieces.halved,
        pieces=tuple(SewnPiece(p.name, limb=Limb.TRUNK, grain=p.grain, hand=p.hand) for p in pieces.shell),
        plies=(plies[""],),
        flat=whole.flat,
        triangles=whole.triangles,
        merged=whole.merged,
        piece=whole.piece,
        ply=np.zeros(len(whole.triangles), dtype=np.int64),
        count=whole.count,
        on_middle=_on_middle(middle_sides(pieces, rings), whole),
        added=np.zeros(whole.count),
        folds=np.zeros((0, 2), dtype=np.int64),
        tied=np.zeros((0, 2), dtype=np.int64),
        edges={(n, side.name): whole.along((n, side.name)) for n, ring in rings.items() for side in ring.sides},
    )


def _joined(pieces: SewnParts, rings: Mapping[str, PieceRing], mesh: float) -> Merged:
    """Return the pieces meshed and merged, their outlines made finer where they have to be."""
    marks: dict[EdgeRef, list[float]] = {}
    seams = worn_seams(pieces, rings)
    for _ in range(ROUNDS):
        places = stations(pieces.draft, rings, seams, mesh, marks)
        sheets = [meshed_piece(ring, places, {}, mesh) for ring in rings.values()]
        more = [found for sheet in sheets for found in finer(sheet)]
        if not more:
            return all_merged(sheets, places)
        for ref, way in more:
            marks.setdefault(ref, []).append(way)
    raise DraftError(
        f"piece {more[0][0][0]} cannot be meshed: two of its sides come too near each other at {more[0][0][1]}",
        turn="choose a finer mesh, or look whether the piece is as it should be",
    )


def _on_middle(sides: Sequence[EdgeRef], whole: Merged) -> Truth:
    """Return which sewn vertices stay in the plane x = 0."""
    on = np.zeros(whole.count, dtype=bool)
    for ref in sides:
        on[whole.along(ref)] = True
    return on
