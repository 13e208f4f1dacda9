"""The pieces of a step alone, right side up, what is in work heavy: where nothing else can be shown."""

from __future__ import annotations

from collections.abc import Sequence

from drafting.draft.draft import EdgeRef
from drafting.geometry.moves import Motion
from drafting.making.stages.laid import cloth, name_on
from drafting.making.stages.picture import Ink, InkLine, StageDrawing, drawn_panel
from drafting.making.stages.shapes import Goods

APART, ROW = 60.0, 1300.0
"""mm of cloth between two pieces, and in a row of them (ours)."""


def alone(goods: Goods, pieces: Sequence[str], lit: Sequence[tuple[EdgeRef, str]]) -> StageDrawing:
    """Return the pieces in rows; `lit` holds the edges in work, each with the name of what it is."""
    inks: list[Ink] = []
    x = top = low = 0.0
    for name in pieces:
        shape = goods.shapes[name]
        x0, y0 = shape.outline.real.min(), shape.outline.imag.max()
        wide = float(shape.outline.real.max() - x0)
        if x and x + wide > ROW:
            x, top = 0.0, low - APART
        move = Motion(by=complex(x - x0, top - y0))
        inks.append(cloth(shape, move))
        inks += [InkLine("sewing", move(shape.edges[edge]), of) for (piece, edge), of in lit if piece == name]
        inks.append(name_on(shape, move(shape.outline)))
        low = min(low, top + float(shape.outline.imag.min() - y0))
        x += wide + APART
    return StageDrawing("alone", (drawn_panel(inks),))
