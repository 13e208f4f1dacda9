"""A draft made ready for a first try in cheap cloth: the shell alone, wide allowances, no hem turned up."""

from __future__ import annotations

from dataclasses import replace

from drafting.draft.by_role import is_shell
from drafting.draft.draft import Draft
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import SMALL, PieceRole
from drafting.fitting.wide import KEPT, wide_allowance

NOT_TRIED = frozenset({PieceRole.CASING})
"""A casing's elastic is tied round the wearer instead (ours)."""

CARRIES = frozenset({PieceRole.BEARER})
"""What lies behind the shell and carries it: without it nothing closes, and nothing stays up (common practice)."""


def tried(draft: Draft, scale: float = 1.0) -> Draft:
    """Return what of a draft is tried on: one layer of the shell, its edges with a mock-up's allowances.

    Facings, linings, interfacings, casings and shapes sewn on are left out with their seams, but what
    carries the garment from behind is not; of a collar or a band that is cut twice one is enough; all is cut
    from one cheap cloth. `scale` (1: a person) makes a doll's allowances smaller, but none below what has to
    stay.
    """
    pieces = tuple(_widened(piece, scale) for piece in draft.pieces if is_tried(piece))
    names = {piece.name for piece in pieces}
    seams = tuple(s for s in draft.seams if {name for name, _ in (*s.a, *s.b)} <= names)
    chains = {name: refs for name, refs in draft.chains.items() if {piece for piece, _ in refs} <= names}
    return replace(draft, pieces=pieces, seams=seams, chains=chains, notions=(), findings=())


def left_out(draft: Draft) -> tuple[Piece, ...]:
    """Return the pieces that a mock-up does without."""
    return tuple(piece for piece in draft.pieces if not is_tried(piece))


def is_tried(piece: Piece) -> bool:
    """Return whether a piece is cut for a first try."""
    carries = piece.role in CARRIES and not piece.material
    return carries or (is_shell(piece) and piece.role not in NOT_TRIED)


def _widened(piece: Piece, scale: float) -> Piece:
    edges = tuple(_wide(piece, edge, scale) for edge in piece.edges)
    return replace(piece, edges=edges, copies=1 if piece.role in SMALL else piece.copies, cloth="")


def _wide(piece: Piece, edge: Edge, scale: float) -> Edge:
    """Return an edge with its allowance; nothing is turned up, so a hem ends as any raw edge does."""
    wide = wide_allowance(piece, edge).mm
    kind = EdgeKind.FREE if edge.kind is EdgeKind.HEM else edge.kind
    return replace(edge, kind=kind, allowance=max(KEPT, wide * scale) if wide else 0.0)
