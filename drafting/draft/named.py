"""Pieces and edges by the names a maker gives them; a name that there is not is answered with the nearest."""

from __future__ import annotations

from drafting.draft.centres import half_name
from drafting.draft.draft import Draft
from drafting.draft.piece import Edge, Piece
from drafting.ground.errors import UnknownNameError
from drafting.ground.names import clean_text
from drafting.ground.nearest import meant
from drafting.ground.units import SHOWN

ALL_PIECES = "`drafting blocks NAME` lists the pieces and edges of a block"


def piece_named(draft: Draft, name: str) -> Piece:
    """Return a piece; raises `UnknownNameError` with the nearest names."""
    if name in draft:
        return draft[name]
    own = [piece.name for piece in draft.pieces if not piece.material]
    raise UnknownNameError(f"there is no piece {clean_text(name, SHOWN)}", turn=meant(name, own, ALL_PIECES))


def called(piece: Piece) -> tuple[str, ...]:
    """Return the names that a maker may call a piece by: its own, and where each hand has one, that of both."""
    return (piece.name, piece.base) if piece.base and piece.base != piece.name else (piece.name,)


def edge_named(piece: Piece, name: str) -> Edge:
    """Return an edge of a piece; raises `UnknownNameError` with the nearest names."""
    if name in piece:
        return piece[name]
    own = [edge.name for edge in piece.edges]
    what = f"the {piece.name} has no edge {clean_text(name, SHOWN)}"
    raise UnknownNameError(what, turn=meant(name, own))


def handed_name(piece: str, side: str) -> str:
    """Return what the piece of one hand is called."""
    return f"{piece}-{side}"


def of_hand(draft: Draft, name: str) -> tuple[str, str] | None:
    """Return a piece of a draft and the hand, where `name` is what that piece of one hand is called; else None."""
    for side in ("left", "right"):
        piece = name.removesuffix(handed_name("", side))
        if name != piece and name not in draft and piece in draft:
            return piece, side
    return None


def edge_of_hand(piece: Piece, name: str) -> tuple[str, str] | None:
    """Return an edge of a piece of one hand, and that hand, where `name` is what the edge is called on the piece
    opened out over the middle (`shoulder_left`); else None.
    """
    if name in piece:
        return None
    halves = ((edge, side) for side in ("left", "right") for edge in piece.edges)
    return next(((edge.name, side) for edge, side in halves if half_name(edge, side) == name), None)
