"""A strip along a raw edge: right sides together on the edge, then turned inside and stitched down."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np

from drafting.draft.draft import EdgeRef, Seam
from drafting.draft.roles import PieceRole
from drafting.geometry.curve import Points
from drafting.geometry.moves import STAY, TURNED_OVER, Motion, mirrored_in
from drafting.geometry.polylines import left_of, polyline_length
from drafting.making.stages.laid import each_hand, flat, names_of, pins_at_ends
from drafting.making.stages.picture import Face, Ink, InkLine, Panel, StageDrawing, closer, drawn_panel
from drafting.making.stages.rows import in_rows
from drafting.making.stages.shapes import LaidPieces
from drafting.making.stages.so_far import SoFar

BESIDE, WIDE = 10.0, 22.0
"""mm of cloth: how far a strip lies beyond its seam, and at least how far inside it, as drawn (ours)."""

STITCHED = 0.8
"""Share of a strip's width at which it is stitched down (ours)."""


def strip_sewn(so_far: SoFar, seams: Sequence[Seam]) -> StageDrawing | None:
    """Return the drawing of a strip along its edges; None where none of the seams has a strip."""
    draft = so_far.goods.garment.draft
    strip = next((n for s in seams for n, _ in (*s.a, *s.b) if draft[n].role is PieceRole.BINDING), None)
    if strip is None:
        return None
    edges = {ref: seam.name for seam in seams for ref in (*seam.a, *seam.b) if ref[0] != strip}
    return StageDrawing("strip", (_shown(so_far, edges, over=False), _shown(so_far, edges, over=True)))


def _shown(so_far: SoFar, edges: dict[EdgeRef, str], *, over: bool) -> Panel:
    """Return one stage: on the right side before it is turned, or on the wrong side after."""
    blocks = [list(_part(so_far, part, edges, over)) for part in so_far.parts(list(edges))]
    return closer(drawn_panel(in_rows(blocks)))


def _part(so_far: SoFar, part: LaidPieces, edges: dict[EdgeRef, str], over: bool) -> Iterator[Ink]:
    view, shapes, bands = TURNED_OVER if over else STAY, so_far.goods.shapes, list[Points]()
    yield from flat(so_far, part, over=over)
    for placing, name in each_hand(so_far, part, view):
        for (piece, edge), seam in edges.items():
            if piece == name:
                shape = shapes[name]
                for half in [placing, *([placing.after(mirrored_in(*shape.axis))] if shape.axis else [])]:
                    bands.append(half(_band(shape.edges[edge], 0.0 if over else BESIDE)))
                    yield from _strip(shape.edges[edge], half, bands[-1], seam, over)
    yield from names_of(so_far.goods, part, view, bands)


def _band(line: Points, beyond: float) -> Points:
    """Return the ring of a strip along a line: so far beyond it, and its width inside."""
    wide = min(WIDE, polyline_length(line) / 2)
    return np.concatenate([left_of(line, -beyond) if beyond else line, left_of(line, wide)[::-1]])


def _strip(line: Points, half: Motion, band: Points, seam: str, over: bool) -> Iterator[Ink]:
    yield Face("right" if over else "wrong", band)
    yield InkLine("sewn" if over else "sewing", half(line), seam)
    if over:
        yield InkLine("firm", half(left_of(line, min(WIDE, polyline_length(line) / 2) * STITCHED)))
    else:
        yield from pins_at_ends([half(line)], over=half.over)
