"""What is seen of a garment when it is worn: over or under others, its edges, what lies turned over."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.draft.draft import Draft, EdgeRef
from drafting.draft.piece import EdgeKind, Piece
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.worn.nouns import Limb, SewnMesh
from drafting.worn.picture.buttons import SeenButton
from drafting.worn.sewn.guides import BUTTON, HOLE, ROLL

WITHIN = frozenset({EdgeRole.PLEAT, EdgeRole.EASE_PLEAT, EdgeRole.UNDERLAP})
"""Edges that lie inside when it is worn, and no picture shows."""


def seen_edges(draft: Draft, mesh: SewnMesh) -> Iterator[EdgeRef]:
    """Yield the edges of a mesh that are seen as a seam or as an end of the cloth."""
    roles = {(p.name, e.name): (e.role, e.kind) for p in draft.pieces for e in p.edges}
    for ref in mesh.edges:  # where a piece was cut back to a fold the draft has no such edge
        role, kind = roles.get(ref, (EdgeRole.PLAIN, EdgeKind.FOLD))
        if role not in WITHIN and kind is not EdgeKind.FOLD:
            yield ref


def seen_buttons(draft: Draft, mesh: SewnMesh) -> Iterator[SeenButton]:
    """Yield the buttons of a garment, and the holes that buttons come through, on the pieces of its mesh."""
    for index, piece in enumerate(mesh.pieces):
        marks = [mark for mark in draft[piece.name].placements if mark.what in (BUTTON, HOLE)]
        for mark in marks:
            x0, y0, x1, y1 = mark.path.bounds
            size = max(x1 - x0, y1 - y0) / 2
            hole = mark.what == HOLE
            radius = OF_HOLE * size if hole else size
            yield SeenButton(index, complex(x0 + x1, y0 + y1) / 2, radius, piece.hand or mark.hand, hole)


OF_HOLE = 0.85
"""A button's breadth as a share of its hole, which is longer by its thickness (common practice: 3 mm in 20)."""


def turns_over(piece: Piece) -> bool:
    """Return whether a piece is a collar, has a lapel, or is a cuff or a stand (of wings) with a roll line."""
    if piece.role in (PieceRole.CUFF, PieceRole.COLLAR_STAND):
        return any(mark.what == ROLL for mark in piece.placements)
    return piece.role in COLLARS or any(edge.role is EdgeRole.LAPEL for edge in piece.edges)


COLLARS = frozenset({PieceRole.COLLAR, PieceRole.UNDER_COLLAR, PieceRole.TOP_COLLAR})
"""Pieces that fall over what they are sewn to."""


def goes_over(draft: Draft, mesh: SewnMesh) -> bool:
    """Return whether a garment is made to be seen whole: with tails, or a lapel, or declared to go over others."""
    lapel = any(edge.role is EdgeRole.LAPEL for piece in draft.pieces for edge in piece.edges)
    outer = any(piece.frame and piece.frame.outer for piece in draft.pieces)
    return lapel or outer or any(piece.limb is Limb.HANGS for piece in mesh.pieces)
