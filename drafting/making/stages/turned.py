"""Edges that are finished: turned up and stitched, drawn through with elastic, or only neatened."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np

from drafting.draft.draft import EdgeRef
from drafting.draft.piece import EdgeKind
from drafting.geometry.curve import Points
from drafting.geometry.moves import STAY, TURNED_OVER, Motion, mirrored_in
from drafting.geometry.polylines import evenly_spaced, left_of, point_along, polyline_length
from drafting.making.stages.laid import each_hand, flat, name_on, names_of, turned_back
from drafting.making.stages.picture import Face, Ink, InkLine, InkMark, StageDrawing, closer, drawn_panel
from drafting.making.stages.rows import in_rows
from drafting.making.stages.sections import casing_section, hem_section, ring_of_elastic, turned_section
from drafting.making.stages.shapes import LaidPieces, Shape, outward_at
from drafting.making.stages.so_far import SoFar

LEAST_HEM, CASING = 28.0, 40.0
"""mm of cloth: a turned edge and a casing are drawn at least so deep (ours)."""

STITCHED = 0.78
"""Share of a turned edge's depth at which it is stitched (ours)."""


def edges_turned(so_far: SoFar, refs: Sequence[EdgeRef], *, elastic: bool) -> StageDrawing:
    """Return the work wrong side up, these edges folded to it and stitched, and the cloth cut through."""
    blocks = [list(_turned_part(so_far, part, refs, elastic)) for part in so_far.parts(refs)]
    main = closer(drawn_panel(in_rows(blocks)))
    if elastic:
        return StageDrawing("casing", (main, ring_of_elastic(), casing_section()))
    hemmed = all(so_far.goods.drafted(ref).kind is EdgeKind.HEM for ref in refs)
    return StageDrawing("turned", (main, hem_section() if hemmed else turned_section()))


def _turned_part(so_far: SoFar, part: LaidPieces, refs: Sequence[EdgeRef], elastic: bool) -> Iterator[Ink]:
    """Yield one part, both hands of it, with those of the edges that are its own."""
    yield from flat(so_far, part, over=True)
    shapes, folds = so_far.goods.shapes, []
    for placing, name in each_hand(so_far, part, TURNED_OVER):
        for piece, edge in refs:
            if piece == name:
                for half in _halves(shapes[name], placing):
                    fold, lines = _fold(shapes[name], edge, half, elastic)
                    folds.append(fold.ring)
                    yield from (fold, *lines)
    yield from names_of(so_far.goods, part, TURNED_OVER, folds)


def _halves(shape: Shape, placing: Motion) -> list[Motion]:
    """Return how an edge of a piece comes: once, or on both halves of one that is opened out."""
    return [placing, placing.after(mirrored_in(*shape.axis))] if shape.axis else [placing]


def _fold(shape: Shape, edge: str, placing: Motion, elastic: bool) -> tuple[Face, list[Ink]]:
    line = shape.edges[edge]
    deep = max(shape.allowances.get(edge, 20.0), CASING if elastic else LEAST_HEM)
    fold = turned_back(shape, edge, placing, look="right", by=deep)
    stitched = InkLine("sewing", placing(left_of(line, deep * STITCHED)), f"{shape.name}.{edge}")
    laid = placing(line)
    half = polyline_length(line) / 2
    if elastic:
        bands = [InkLine("hidden", placing(left_of(line, deep * share))) for share in (0.22, 0.6)]
        return fold, [stitched, *bands]
    out = outward_at(laid, half, over=placing.over)
    tip = deep + min(95.0, max(20.0, half / 2))
    arrow = InkMark("move", point_along(laid, half) - out * tip, -out, 56.0)
    return fold, [stitched, arrow]


def edges_neatened(so_far: SoFar, refs: Sequence[EdgeRef]) -> StageDrawing:
    """Return pieces right side up with a row of overcasting along each of these edges."""
    shapes = so_far.goods.shapes
    blocks = []
    for name in dict.fromkeys(piece for piece, _ in refs):
        shape = shapes[name]
        inks: list[Ink] = [Face("right", shape.outline, name)]
        for _, edge in (ref for ref in refs if ref[0] == name):
            for half in _halves(shape, STAY):
                inks.append(InkLine("sewing", half(shape.edges[edge]), f"{name}.{edge}"))
                inks.append(InkLine("fine", half(_zigzag(shape.edges[edge]))))
        blocks.append([*inks, name_on(shape, STAY(shape.outline))])
    return StageDrawing("neatened", (drawn_panel(in_rows(blocks)),))


def _zigzag(line: Points) -> Points:
    even = evenly_spaced(line, 12.0)
    inner = left_of(even, 14.0)
    if len(inner) != len(even):
        return even
    return np.where(np.arange(len(even)) % 2 == 0, even, inner)
