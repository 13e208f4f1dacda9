"""What lies inside a waistcoat: its front facing, and the outlines of its lining. Mm, as the pieces lie."""

from __future__ import annotations

from dataclasses import replace

from drafting.draft.by_role import edges_as, the_edge
from drafting.draft.draft import EdgeRef, Seam
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole, PieceRole, SeamKind
from drafting.geometry import line
from drafting.shaping.coat.body_pieces import FACING_ON_SHOULDER, facing_inner
from drafting.shaping.coat.inside import with_ease_pleat
from drafting.shaping.waistcoat.fronts import FACED

ON_SHOULDER = 10.0
"""mm: the facing's allowance at the shoulder, caught there with the lining (common practice)."""


def front_facing(front: Piece) -> Piece:
    """Return the facing of V, edge and point, turned over, as its right side lies inside."""
    shoulder = the_edge(front, EdgeRole.SHOULDER).path
    start = shoulder.at((1 - FACING_ON_SHOULDER) * shoulder.length)
    inner = facing_inner(front["bottom"].path.end, start, front.points["bust_point"])
    edges = (
        front["bottom"],
        Edge("inner", inner, EdgeKind.FREE, role=EdgeRole.INNER),
        Edge("shoulder", line(start, shoulder.end), EdgeKind.FREE, allowance=ON_SHOULDER, role=EdgeRole.SHOULDER),
        *(front[name] for name in FACED[:-1]),
    )
    piece = Piece(
        "front-facing", edges, pair=True, title="Front facing", role=PieceRole.FACING, lines=(front.name,)
    )
    return piece.mirrored()


def facing_seam(front: Piece, facing: Piece) -> Seam:
    """Return the seam of front and facing round the V, the edge and the point."""

    def faced(name: str) -> tuple[EdgeRef, ...]:
        return tuple((name, edge) for edge in FACED)

    seam = faced(front.name), faced(facing.name)
    return Seam("front edge", *seam, start=None, end=None, kind=SeamKind.FACING)


def front_lining(front: Piece, facing: Piece) -> tuple[Edge, ...]:
    """Return the outline of the front's lining: from the facing's inner edge to side and armhole."""
    shoulder, inner = the_edge(front, EdgeRole.SHOULDER), the_edge(facing, EdgeRole.INNER)
    at = shoulder.length - the_edge(facing, EdgeRole.SHOULDER).length
    first, last = front.index(the_edge(front, EdgeRole.HEM).name), front.index(shoulder.name)
    closed = Edge("inner", inner.mirrored().path.reversed(), EdgeKind.FREE, role=EdgeRole.INNER)
    return (*front.edges[first:last], replace(shoulder, path=shoulder.path.split(at)[0]), closed)


def back_lining(back: Piece, pleat: float) -> tuple[Edge, ...]:
    """Return the outline of the back's lining, with a `pleat` for ease at the centre."""
    (centre,) = edges_as(back, EdgeRole.CENTRE_SEAM)
    return with_ease_pleat(back.edges, back.index(centre.name), pleat)
