"""Pieces, edges and darts found by what they were declared to be."""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Iterator

from drafting.draft.draft import Draft, EdgeRef, Seam
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import FACINGS, EdgeRole, PieceRole, SeamKind

BEHIND = FACINGS | {
    PieceRole.TOP_COLLAR,
    PieceRole.BONE_CASING,
    PieceRole.APPLIQUE,
    PieceRole.POCKET,
    PieceRole.STRAP,
    PieceRole.PLACKET,
    PieceRole.FLY_SHIELD,
    PieceRole.BEARER,
    PieceRole.LAPEL,
    PieceRole.BUTTON_STAND,
    PieceRole.HEM_BAND,
}
"""Pieces of a garment's own cloth that lie on, or behind, its shell."""


def pieces_as(draft: Draft, *roles: PieceRole) -> tuple[Piece, ...]:
    """Return the pieces of the garment's own cloth that have one of these roles."""
    return tuple(p for p in draft.pieces if p.role in roles and not p.material)


BUST_POINTS = ("bust_point", "bust_point_left", "bust_point_right")
"""What a front's bust point is called, and those of a whole one."""


def is_shell(piece: Piece) -> bool:
    """Return whether a piece is a layer of its own in the worn garment."""
    return not piece.material and piece.role not in BEHIND and not piece.lines


def is_double_yoke(piece: Piece) -> bool:
    """Return whether a piece is a yoke of two layers, the inner one hidden behind the outer."""
    return piece.copies > 1 and bool(edge_as(piece, EdgeRole.YOKE) and edge_as(piece, EdgeRole.SHOULDER))


def between_yokes(draft: Draft, seam: Seam) -> bool:
    """Return whether a seam's raw edges lie between the two layers of a yoke: below it and on the shoulders."""
    inner = any(is_double_yoke(draft[name]) for name, _ in (*seam.a, *seam.b))
    return inner and seam.kind in (SeamKind.YOKE, SeamKind.SHOULDER)


def piece_as(draft: Draft, role: PieceRole) -> Piece | None:
    """Return the first piece of the garment's own cloth that has this role, or None."""
    return next(iter(pieces_as(draft, role)), None)


FROM_THE_FRONT = (PieceRole.FRONT, PieceRole.SIDE_FRONT, PieceRole.SIDE_BODY, PieceRole.BACK)
"""The panels of a body as they follow one another round it."""


def lies_before(one: Piece, other: Piece) -> bool | None:
    """Return whether one panel lies nearer to the centre front than another; None where neither says so."""
    if one.role not in FROM_THE_FRONT or other.role not in FROM_THE_FRONT:
        return None
    places = [(FROM_THE_FRONT.index(piece.role), piece.place) for piece in (one, other)]
    return None if places[0] == places[1] else places[0] < places[1]


def edges_as(piece: Piece, *roles: EdgeRole) -> tuple[Edge, ...]:
    """Return the edges that have one of these roles, in outline order; dart legs as well."""
    return tuple(edge for edge in piece.edges if edge.role in roles)


def edge_as(piece: Piece, role: EdgeRole) -> Edge | None:
    """Return the first edge that has this role, or None."""
    return next(iter(edges_as(piece, role)), None)


def the_edge(piece: Piece, role: EdgeRole) -> Edge:
    """Return the first edge that has this role; a KeyError says what the piece's edges are."""
    edge = edge_as(piece, role)
    if edge is None:
        raise KeyError(f"{piece.name} has no {role}; it has {[f'{e.name}: {e.role}' for e in piece.edges]}")
    return edge


def vent_at_centre(piece: Piece) -> tuple[Edge, ...]:
    """Return the edges of a vent in which a piece's centre seam opens; none of a vent at another seam."""
    ring, found = piece.edges, list[Edge]()
    for at, edge in enumerate(ring):
        if edge.role is EdgeRole.CENTRE_SEAM:
            for step in (1, -1):
                run = (ring[(at + step * n) % len(ring)] for n in range(1, len(ring)))
                found += itertools.takewhile(lambda one: one.role is EdgeRole.VENT, run)
    return tuple(found)


def vent_tops(piece: Piece) -> list[Edge]:
    """Return the edges of a piece's vents that its seams end at, however wide the lap is."""
    ring = piece.edges
    return [
        edge
        for at, edge in enumerate(ring)
        if edge.role is EdgeRole.VENT
        and any(ring[(at + step) % len(ring)].kind is EdgeKind.SEAM for step in (-1, 1))
    ]


def roles_in(draft: Draft, seam: Seam) -> set[EdgeRole]:
    """Return the roles of the edges that a seam joins."""
    return {draft.edge(ref).role for ref in (*seam.a, *seam.b)}


def piece_roles(draft: Draft, refs: Iterable[EdgeRef]) -> list[PieceRole]:
    """Return the role of each edge's piece."""
    return [draft[piece].role for piece, _ in refs]


def dart_legs(piece: Piece) -> Iterator[tuple[Edge, Edge]]:
    """Yield the legs of each dart that opens to the outline: towards the tip and back from it.

    Two neighbouring legs that declare no dart of their own make one, unless the first is taken.
    """
    taken: set[str] = set()
    for at, leg in enumerate(piece.edges):
        after = piece.edges[(at + 1) % len(piece.edges)]
        if leg.name not in taken and _is_dart(leg, after):
            taken |= {leg.name, after.name}
            yield leg, after


def closing_turn(into: Edge, out: Edge) -> complex:
    """Return what turns what lies behind the second leg of an open dart about its tip so that the legs meet."""
    tip = into.path.end
    return (into.path.start - tip) / (out.path.end - tip)


def _is_dart(leg: Edge, after: Edge) -> bool:
    if leg.kind is not EdgeKind.DART or after.kind is not EdgeKind.DART:
        return False
    if leg.dart is None or after.dart is None:
        return leg.dart is after.dart
    return leg.dart.inward and leg.dart.dart == after.dart.dart


def edges_beside(draft: Draft, ref: EdgeRef) -> set[EdgeRef]:
    """Return the edges on either side of an edge in its piece's ring."""
    ring, at = draft[ref[0]].edges, draft[ref[0]].index(ref[1])
    return {(ref[0], ring[i % len(ring)].name) for i in (at - 1, at + 1)}
