"""Appliqué: a shape cut of cloth and sewn onto a piece, with its outline marked where it belongs.

The shape's middle lies so far inside the middle of a named edge, square to it; it must lie wholly on
the piece, clear of the stitching line.
"""

from __future__ import annotations

import cmath
import math
from dataclasses import replace
from itertools import pairwise

from drafting.draft.draft import Draft
from drafting.draft.named import edge_named, piece_named
from drafting.draft.piece import Edge, EdgeKind, Piece, Placement
from drafting.draft.roles import PieceRole
from drafting.geometry import Path, line, turn
from drafting.geometry.area import outside
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.reading.trimming import AppliqueWish
from drafting.shaping.details.buttons import button_mark

POINTS, WAIST = 5, 0.45
"""A star's points, and how deep it is cut in between them as a share of its radius (ours)."""

TURNED = 6.0
"""mm turned under all round, or overcast by a close zigzag (common practice: 1/4 in)."""


def appliqued(draft: Draft, wish: AppliqueWish, number: int) -> Draft:
    """Return the draft with the shape marked on its piece and a piece of its own to cut.

    Raises `DraftError` for a piece or edge that there is not, and for a shape that sticks out.
    """
    piece = piece_named(draft, wish.piece)
    edge_named(piece, wish.edge)
    path = shape_on_piece(piece, wish)
    if outside(path, piece.outline) > 1.0:
        raise DraftError(
            f"the {wish.shape} on the {wish.piece} sticks out over its stitching line",
            value=f"{told(wish.width)} x {told(wish.height)}, {told(wish.inside)} inside the {wish.edge}",
            turn="make it smaller or move it",
        )
    drawn = _shape_piece(piece, path, wish, number)
    mark = Placement(drawn.name, path, "appliqué", piece=drawn.name)
    marked = replace(piece, placements=(*piece.placements, mark))
    return draft.with_pieces([marked]) + Draft((drawn,))


def shape_on_piece(piece: Piece, wish: AppliqueWish) -> Path:
    """Return the shape's outline where it lies on its piece."""
    edge = piece[wish.edge].path
    half = edge.length / 2
    inwards = 1j * cmath.rect(1.0, cmath.phase(edge.tangent(half)))
    middle = edge.at(half) + inwards * wish.inside
    return shape(wish.shape, wish.width, wish.height).moved(middle)


def shape(name: str, width: float, height: float) -> Path:
    """Return a closed outline about 0, anticlockwise, `width` by `height` mm."""
    if name == "circle":
        ring = button_mark("", 0j, 2.0).path
        return ring.mapped(lambda p: complex(p.real * width / 2, p.imag * height / 2))
    if name == "diamond":
        corners = [complex(width / 2, 0), complex(0, height / 2), complex(-width / 2, 0), complex(0, -height / 2)]
    else:
        corners = [1j * turn(180.0 * i / POINTS) * (1.0 if i % 2 == 0 else WAIST) for i in range(2 * POINTS)]
        wide = max(p.real for p in corners) - min(p.real for p in corners)
        top, low = max(p.imag for p in corners), min(p.imag for p in corners)
        corners = [
            complex(p.real * width / wide, (p.imag - (top + low) / 2) * height / (top - low)) for p in corners
        ]
    return Path.joined(line(a, b) for a, b in pairwise([*corners, corners[0]]))


def _shape_piece(piece: Piece, path: Path, wish: AppliqueWish, number: int) -> Piece:
    """Return the shape as a piece of its own, on the grain of what it is sewn to."""
    if abs(path.area) < math.pi:
        raise DraftError(f"the {wish.shape} on the {wish.piece} has no size")
    segments = path.segments
    edges = tuple(
        Edge(f"side_{i}", Path((segment,)), EdgeKind.FREE, allowance=TURNED)
        for i, segment in enumerate(segments, 1)
    )
    return Piece(
        f"applique-{number}",
        edges,
        grain=piece.grain,
        pair=piece.pair,
        hand=piece.hand,
        title=f"Appliqué {number}, for the {piece.title or piece.name}",
        copies=piece.copies * (2 if piece.fold_edge is not None else 1),
        role=PieceRole.APPLIQUE,
    )
