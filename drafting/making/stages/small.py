"""Small things made up by themselves, a collar, a cuff, a band: layers together, joined, turned out."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np

from drafting.draft.draft import Seam
from drafting.geometry.curve import Points
from drafting.geometry.moves import STAY, Motion, mirrored_in
from drafting.geometry.polylines import kept_left, line_crossings
from drafting.making.stages.faced import grouped
from drafting.making.stages.joined import right_sides_together
from drafting.making.stages.laid import flat, name_on, names_of
from drafting.making.stages.own_twin import UNDER, middle_line, on_same_side
from drafting.making.stages.pairing import paired
from drafting.making.stages.picture import Face, Ink, InkLine, Panel, StageDrawing, drawn_panel
from drafting.making.stages.rows import in_rows
from drafting.making.stages.shapes import LaidPieces, Shape, matching, pieces_along
from drafting.making.stages.so_far import SoFar, with_seam


def small_thing_made(so_far: SoFar, seams: Sequence[Seam]) -> StageDrawing:
    """Return the layers stitched, then what is joined between the pieces, then the thing turned out."""
    own = [seam for seam in seams if len(pieces_along((*seam.a, *seam.b))) == 1]
    between = [seam for seam in seams if seam not in own]
    scenes: list[list[Ink]] = []
    if own:
        names = list(dict.fromkeys(seam.a[0][0] for seam in own))
        scenes.append(in_rows(list(_layers(so_far, name, own)) for name in names))
    for seam in between:
        pairing = paired(so_far, seam)
        if pairing is not None:
            scenes.append(list(right_sides_together(so_far, seam, pairing)))
        so_far = with_seam(so_far, seam)
    return StageDrawing("made up", (*grouped(scenes), _turned_out(so_far, seams)))


def _layers(so_far: SoFar, name: str, seams: Sequence[Seam]) -> Iterator[Ink]:
    """Yield two layers of a piece, or one folded right sides in, its own seams heavy."""
    shape = so_far.goods.shapes[name]
    mine = [seam for seam in seams if seam.a[0][0] == name]
    folded = next((seam for seam in mine if seam.a != seam.b), None)
    if folded is not None:
        yield from _folded(so_far, shape, folded, mine)
        return
    yield Face("right", shape.cut + UNDER, name)
    yield Face("wrong", shape.cut, name, over=True)
    for seam in mine:
        for half in (STAY, mirrored_in(*shape.axis)) if shape.axis else (STAY,):
            yield from (InkLine("sewing", half(shape.edges[edge]), seam.name) for _, edge in seam.a)
    yield name_on(shape, shape.cut)


def _folded(so_far: SoFar, shape: Shape, first: Seam, seams: Sequence[Seam]) -> Iterator[Ink]:
    here: LaidPieces = {shape.name: STAY}
    a, b = matching(so_far.goods, first, here, here)
    through, way = middle_line((a + b) / 2, a, b)
    lies, turned = kept_left(shape.cut, through, way), kept_left(shape.cut, through, -way)
    over = mirrored_in(through, through + way)
    yield Face("right", lies, shape.name)
    yield Face("wrong", over(turned), shape.name, over=True)
    ends = line_crossings(shape.cut, through, way)
    if len(ends):
        yield InkLine("fold", np.array([ends[0], ends[-1]]))
    for seam in seams:
        for _, edge in dict.fromkeys((*seam.a, *seam.b)):
            line: Points = shape.edges[edge]
            if on_same_side(line, turned, through, way):
                yield InkLine("sewing", over(line), seam.name)
    yield name_on(shape, over(turned))


def _turned_out(so_far: SoFar, seams: Sequence[Seam]) -> Panel:
    """Return the thing as it is turned out: right side up, its sewn edges firm."""
    pieces = list(dict.fromkeys(p for seam in seams for p in pieces_along((*seam.a, *seam.b))))
    blocks = []
    for part in so_far.parts([(name, "") for name in pieces]):
        inks = [*flat(so_far, part, over=False), *names_of(so_far.goods, part, Motion())]
        for seam in seams:
            inks += [
                InkLine("firm", half(part[p](so_far.goods.shapes[p].edges[e])))
                for p, e in dict.fromkeys((*seam.a, *seam.b))
                if p in part
                for half in (STAY,)
            ]
        blocks.append(inks)
    return drawn_panel(in_rows(blocks))
