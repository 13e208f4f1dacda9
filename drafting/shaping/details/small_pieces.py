"""What all small pieces share: interfacing made from a piece, turned-under edges, straight bands. mm."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from drafting.draft.draft import Notion
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.ground.lengths import told
from drafting.ground.scale import allowance_scale

PAST_STITCHING = 3.0
"""mm: interfacing reaches past the stitching line by this, and no more (common practice)."""

LIGHT = "a light fusible, lighter than the cloth"
"""What collars, cuffs and button fronts are stiffened with (from memory: not heavier than the shell)."""

TURNED_UNDER, LEAST_TURNED = 10.0, 6.0
"""mm, and for a doll: turned in where an inner edge is stitched down (common practice)."""


def turned_under(scale: float) -> float:
    """Return how much is turned in along an inner edge, mm; for a child no less than for an adult."""
    return max(LEAST_TURNED, TURNED_UNDER * allowance_scale(scale))


def interfacing(
    piece: Piece, *, bare: tuple[str, ...] = (), copies: int = 1, stiffens: tuple[str, ...] = ()
) -> Piece:
    """Return the interfacing of a piece: its stitching line and 3 mm, on its own material.

    Edges named in `bare` get nothing beyond the line (a fold, an inner edge); marks are left out. What
    it stiffens is `piece` itself, or what `stiffens` names where that is no piece of its own.
    """
    edges = tuple(_loose(edge, 0.0 if edge.name in bare else PAST_STITCHING) for edge in piece.edges)
    return replace(
        piece,
        name=f"{piece.name}-interfacing",
        title=f"{piece.title} interfacing",
        edges=edges,
        levels=(),
        darts=(),
        placements=(),
        material="interfacing",
        copies=copies,
        stiffens=stiffens or (piece.name,),
        lines=(),
    )


def _loose(edge: Edge, beyond: float) -> Edge:
    if edge.kind is EdgeKind.FOLD:
        return replace(edge, notches=())
    return Edge(edge.name, edge.path, EdgeKind.FREE, None, beyond, role=edge.role, half=edge.half)


def interfacing_notion(piece: Piece, grain: str = "on the same grain") -> Notion:
    """Return the line of the list that tells to cut an interfacing piece, and how its `grain` lies."""
    note = f"stitching line and {told(3.0)}, {grain}; try the fuse on a scrap first"
    return Notion("interfacing", piece.name, piece.count, None, note, LIGHT, piece=piece.name)


def reflection_at(at: float) -> Callable[[complex], complex]:
    """Return the reflection across the upright through x = `at`."""
    return lambda p: 2 * at - p.conjugate()
