"""Openings that a wearer gets into a garment by: how long the whole ring is, and whether something closes it.

Ring of an opening = its edges as drawn (elastic lets them out again), both hands where it goes round the body.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator

from drafting.draft.by_role import edge_as, edges_as, is_double_yoke
from drafting.draft.draft import Draft, EdgeRef
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import FACINGS, SLEEVES, EdgeRole, SeamKind

CLOSINGS = ("button", "zip", "hook", "hook and eye", "eyelet", "press stud")


def hands(piece: Piece) -> int:
    """Return how often an edge of this piece comes in the garment: pairs and halves count twice, a layer that lies
    hidden behind another not at all."""
    return piece.count // _hidden_behind(piece) * (2 if piece.fold_edge is not None else 1)


def cut_layers(draft: Draft, piece: Piece) -> int:
    """Return in how many layers a piece lies on the garment, one of them seen: two of what is sewn to itself and
    turned, as a band, a cuff, a collar or a flap, and of a double yoke."""
    own = (s for s in draft.seams if {name for name, _ in (*s.a, *s.b)} == {piece.name})
    turned = piece.copies % 2 == 0 and any(seam.kind is SeamKind.MADE_UP for seam in own)
    return 2 if turned else _hidden_behind(piece)


def _hidden_behind(piece: Piece) -> int:
    """Return how many pieces lie one behind the other with nothing between them: of a double yoke all copies."""
    return piece.copies if is_double_yoke(piece) else 1


def is_sleeve(piece: Piece) -> bool:
    return piece.role in SLEEVES


def is_leg(piece: Piece) -> bool:
    return edge_as(piece, EdgeRole.INSEAM) is not None


def ring_of(draft: Draft, piece: Piece, edge: Edge) -> float:
    """Return the length (mm) of the whole opening that an edge is part of."""
    limb = (is_sleeve(piece) or is_leg(piece)) and edge.role is not EdgeRole.WAIST
    alike = [
        (other, part)
        for other in draft.pieces
        for part in edges_as(other, edge.role)
        if not other.material
        and is_sleeve(other) == is_sleeve(piece)
        and part.kind is edge.kind
        and (not limb or other.hand == piece.hand)
    ]
    return math.fsum(part.length * (1 if limb else hands(other)) for other, part in alike)


def bare_necks(draft: Draft) -> Iterator[tuple[Piece, Edge]]:
    """Yield the neck edges that a head goes through: left open, or with nothing but a facing sewn to them."""
    faced = {ref for seam in draft.seams if seam.kind is SeamKind.FACING for ref in (*seam.a, *seam.b)}
    for piece in draft.pieces:
        if piece.material or piece.role in FACINGS:
            continue
        for edge in edges_as(piece, EdgeRole.NECK):
            if edge.kind is EdgeKind.OPENING or (piece.name, edge.name) in faced:
                yield piece, edge


def bare_neck(draft: Draft) -> float:
    """Return the length (mm) of the neck that a head goes through, both hands; 0 where a collar closes it."""
    return math.fsum(edge.length * hands(piece) for piece, edge in bare_necks(draft))


def is_ring(draft: Draft, refs: Iterable[EdgeRef]) -> bool:
    """Return whether edges run round whole: no edge beside them opens, none belongs to a stand or a facing."""
    for name, edge in refs:
        ring, at = draft[name].edges, draft[name].index(edge)
        for beside in (ring[at - 1], ring[(at + 1) % len(ring)]):
            if beside.kind is EdgeKind.OPENING or beside.role in PAST_AN_EDGE:
                return False
    return True


PAST_AN_EDGE = (EdgeRole.STAND_NECK, EdgeRole.FACING_NECK)
"""What follows a neck where its front or back opens."""


def opens(draft: Draft) -> bool:
    """Return whether the garment has a closing, so that nothing has to be stretched to get in."""
    fastened = any(notion.what in CLOSINGS for notion in draft.notions)
    return fastened or any(edge_as(piece, EdgeRole.FLY) for piece in draft.pieces)
