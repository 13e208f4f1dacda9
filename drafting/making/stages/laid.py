"""Inks that all drawings share: laid pieces, their names, seams in work, allowances folded back, pins."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

import numpy as np

from drafting.draft.draft import EdgeRef, Seam
from drafting.geometry.curve import Points
from drafting.geometry.moves import TURNED_OVER, Motion
from drafting.geometry.polylines import left_of, part_along, point_along, polyline_length
from drafting.making.stages.picture import Face, FaceLook, Ink, InkLine, InkMark, InkName, LineLook
from drafting.making.stages.shapes import Goods, LaidAs, LaidPieces, Shape, laid_edges, outward_at
from drafting.making.stages.so_far import SoFar, hands_of

LEAST_ALLOWANCE = 22.0
"""mm of cloth: an allowance is drawn at least so wide, or it is not seen on paper (ours)."""

PRESS_FROM, PRESS_LONG = 92.0, 54.0
"""mm of cloth from a seam to the head of a pressing arrow, and the arrow's length on paper (0.1 mm)."""


def face_look(shape: Shape, over: bool) -> FaceLook:
    """Return how a piece's face looks, right side up or turned over."""
    if shape.piece.material == "interfacing":
        return "interfacing"
    if over:
        return "wrong"
    return "lining" if shape.piece.material == "lining" else "right"


def cloth(shape: Shape, placing: LaidAs, *, over: bool | None = None, cut: bool = False) -> Face:
    """Return a piece's face where it lies: its outline, or with its allowances.

    `over` says which side is seen; None: the other one where the move turns over. A right hand is the
    mirror of what is drafted, and lies right side up all the same.
    """
    ring = placing(shape.cut if cut else shape.outline)
    seen = placing.over if over is None else over
    return Face(face_look(shape, seen), ring, shape.name, seen)


def name_on(shape: Shape, ring: Points, hidden: Iterable[Points] = ()) -> InkName:
    return InkName(shape.title, shape.number, ring, tuple(hidden))


def each_hand(so_far: SoFar, where: LaidPieces, view: Motion) -> Iterator[tuple[Motion, str]]:
    """Yield each piece that is drawn and how it is moved: what comes twice once for each hand."""
    for other, hand in enumerate(hands_of(so_far, where)):
        for name, placing in where.items():
            shape = so_far.goods.shapes[name]
            if isinstance(placing, Motion) and not (other and (shape.axis or shape.piece.hand)):
                yield view.after(hand.after(placing)), name


def flat(so_far: SoFar, where: LaidPieces, *, over: bool, hands: bool = True) -> Iterator[Ink]:
    """Yield the garment so far, one side up, with the seams that are sewn as thin lines."""
    view = TURNED_OVER if over else Motion()
    drawn = (
        list(each_hand(so_far, where, view))
        if hands
        else [(view.after(placing), name) for name, placing in where.items() if isinstance(placing, Motion)]
    )
    shapes = so_far.goods.shapes
    for move, name in drawn:
        yield cloth(shapes[name], move, over=over)
    for seam in (so_far.goods.seams[name] for name in so_far.laid if name in so_far.goods.seams):
        for move, name in drawn:
            yield from (InkLine("before", move(shapes[p].edges[e])) for p, e in seam.a if p == name)


def names_of(goods: Goods, where: LaidPieces, view: Motion, hidden: Sequence[Points] = ()) -> Iterator[InkName]:
    for name, placing in where.items():
        yield name_on(goods.shapes[name], view(placing(goods.shapes[name].outline)), hidden)


def in_work(lines: Iterable[Points], of: str, stroke: LineLook) -> Iterator[InkLine]:
    return (InkLine(stroke, line, of) for line in lines)


def turned_back(shape: Shape, edge: str, placing: LaidAs, *, look: FaceLook, by: float = 0.0) -> Face:
    """Return the allowance of an edge folded back onto its piece: what shows is its other face."""
    line = shape.edges[edge]
    length = polyline_length(line)
    wide = min(by or max(LEAST_ALLOWANCE, shape.allowances.get(edge, 15.0)), length / 3)
    inner = left_of(line, wide)
    off = min(wide * 0.8, length / 4)
    inner = part_along(inner, off, polyline_length(inner) - off)
    return Face(look, placing(np.concatenate([line, inner[::-1]])))


def pressed_to(line: Points, *, over: bool) -> InkMark:
    """Return the pressing arrow from the middle of a laid edge into its piece."""
    at = polyline_length(line) / 2
    out = outward_at(line, at, over=over)
    return InkMark("press", point_along(line, at) - out * PRESS_FROM, -out, PRESS_LONG)


def pins_at_ends(lines: Sequence[Points], *, over: bool) -> Iterator[InkMark]:
    """Yield a pin near each end of a row of laid edges."""
    if not lines:
        return
    first, last = lines[0], lines[-1]
    for line, at in ((first, 12.0), (last, polyline_length(last) - 12.0)):
        yield InkMark("pin", point_along(line, at), outward_at(line, at, over=over), 46.0)


def lines_sewn(
    goods: Goods, seam: Seam, where: LaidPieces, of: Sequence[EdgeRef], stroke: LineLook
) -> Iterator[InkLine]:
    """Yield one chain of a seam as lines in work."""
    return in_work(laid_edges(goods, of, where), seam.name, stroke)
