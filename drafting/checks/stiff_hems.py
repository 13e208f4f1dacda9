"""Whether what stiffens a hem goes all round it: a godet that style lets in afterwards has none of its own."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.draft.by_role import edges_as, is_shell
from drafting.draft.draft import Draft
from drafting.draft.piece import Piece
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.ground.findings import Finding
from drafting.ground.lengths import told

MORE = {
    "bone": "The bone in the hem and its casing were measured without them: buy so much more of both, and lead "
    "them across.",
    "hem braid": "The braid along the hem was measured without them: buy so much more, and lead it across.",
    "hem band": "No band of interfacing is cut for them: cut one for each along its hem, as deep as the others.",
}
"""What is told by what stiffens the hem: the kind of its mark, or the role of its band."""


def godets_stiffened(draft: Draft) -> Iterator[Finding]:
    """Warn where a hem is stiffened and its godets are not."""
    stiff = {name for piece in draft.pieces if piece.role is PieceRole.HEM_BAND for name in piece.stiffens}
    hems = [piece for piece in draft.pieces if is_shell(piece) and edges_as(piece, EdgeRole.HEM)]
    whats = {what for piece in hems for what in _along_hem(piece, stiff)}
    bare = [p for p in hems if p.role is PieceRole.GODET and not set(_along_hem(p, stiff))]
    for what in sorted(whats) if bare else ():
        more = sum(
            edge.length * piece.count * (1 if piece.fold_edge is None else 2)
            for piece in bare
            for edge in edges_as(piece, EdgeRole.HEM)
        )
        said = f"The hems of the godets measure {told(more)} in all. {MORE[what]}"
        yield Finding("stiff hem", "warning", bare[0].name, more, 0.0, said)


def _along_hem(piece: Piece, stiff: set[str]) -> Iterator[str]:
    """Yield what stiffens the hem of a piece."""
    yield from (mark.what for mark in piece.placements if mark.what in MORE)
    if piece.name in stiff:
        yield "hem band"
