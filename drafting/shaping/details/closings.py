"""The edge of a centre that is closed by a row of fasteners: a stand, and the facing folded back. mm.

Lines are those of a front drawn as the wearer's left: its centre on x = 0, the cloth at x > 0. A back
is turned over before and after.
"""

from __future__ import annotations

from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole
from drafting.geometry import line
from drafting.shaping.details.button_stand import FrontLines, front_facing_edges, outward_path, stand_edges
from drafting.shaping.details.small_pieces import reflection_at


def front_lines(piece: Piece, at: int) -> FrontLines:
    """Return the lines beside the centre at place `at` of a front's ring."""
    return FrontLines(piece.edges[at - 1].path, piece.edges[(at + 1) % len(piece.edges)].path)


def folded_back(lines: FrontLines, stand: float, width: float) -> tuple[Edge, ...]:
    """Return the edges that take the centre's place: a stand beyond it, and its facing folded back.

    `width` is the facing's, from the edge on which it folds. Without a stand it folds on the centre.
    """
    return stand_edges(lines, stand, width) if stand else _turned(lines, width)


def closing_strip(lines: FrontLines, stand: float, width: float) -> tuple[Edge, ...]:
    """Return the ring of the same facing as a piece of its own."""
    if stand:
        return front_facing_edges(lines, stand, width, unfolded=False)
    edges = _turned(lines, width)
    closing = line(edges[-1].path.end, edges[0].path.start)
    return *edges, Edge("front_edge", closing, role=EdgeRole.FRONT_EDGE)


def _turned(lines: FrontLines, width: float) -> tuple[Edge, ...]:
    turned = reflection_at(0.0)
    neck = outward_path(lines.neck.reversed(), width).mapped(turned)
    hem = outward_path(lines.hem, width).mapped(turned).reversed()
    return (
        Edge("facing_neck", neck, EdgeKind.OPENING, role=EdgeRole.FACING_NECK),
        Edge("facing", line(neck.end, hem.start), EdgeKind.FREE, role=EdgeRole.FACING),
        Edge("facing_hem", hem, EdgeKind.HEM, role=EdgeRole.FACING_HEM),
    )
