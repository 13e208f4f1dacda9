"""Corners that stay as they are, whatever is altered: what crosses the middle of the body crosses it square."""

from __future__ import annotations

from drafting.draft.piece import EdgeKind, Piece
from drafting.draft.roles import EdgeRole


def crosses_middle(piece: Piece, at: int) -> bool:
    """Return whether a corner lies on the middle, at a fold or an open centre: what crosses it is square there."""
    into, out = piece.edges[at - 1], piece.edges[at]
    if EdgeKind.FOLD in (into.kind, out.kind):
        return True
    return any(
        middle.role is EdgeRole.CENTRE and crossing.role not in RUNS_ON and crossing.kind is not EdgeKind.DART
        for middle, crossing in ((into, out), (out, into))
    )


RUNS_ON = frozenset({EdgeRole.CENTRE, EdgeRole.SLIT, EdgeRole.GODET_SIDE})
"""What a centre goes on in: the seam below an opening, a slit below the seam."""
