"""Interfacing laid to the wrong side of its piece, then fused or basted there."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from drafting.geometry.curve import Points
from drafting.geometry.moves import TURNED_OVER, mirrored_in
from drafting.making.stages.laid import cloth, name_on
from drafting.making.stages.picture import Face, Ink, InkLine, InkMark, StageDrawing, drawn_panel
from drafting.making.stages.rows import in_rows
from drafting.making.stages.shapes import Goods, Shape

MOST = 4
"""Pieces with their interfacing in one drawing (ours)."""


def interfacing_laid(goods: Goods, pairs: Sequence[tuple[str, str]], *, fused: bool) -> StageDrawing:
    """Return shells and what stiffens them, as names: before it is laid on, and with iron or basting."""
    shapes = goods.shapes
    laid = [(shapes[shell], shapes[stiff]) for shell, stiff in pairs[:MOST]]
    shell, stiff = laid[0]
    one = drawn_panel(_laid_on(shell, stiff))
    both: dict[str, list[Shape]] = {}
    for own, part in laid:
        both.setdefault(own.name, []).append(part)
    two = drawn_panel(in_rows(list(_held(shapes[name], parts, fused)) for name, parts in both.items()))
    return StageDrawing("fused", (one, two), alike=len(laid) == 1)


def _laid_on(shell: Shape, stiff: Shape) -> Iterator[Ink]:
    """Yield the shell wrong side up, the interfacing on its way to it."""
    ring = TURNED_OVER(stiff.outline)
    away = 0.22 * float(shell.cut.real.max() - shell.cut.real.min()) + 20.0
    beside = ring - away - 30j
    yield cloth(shell, TURNED_OVER, cut=True)
    yield Face("interfacing", beside, stiff.name)
    at = complex(ring.mean())
    yield InkMark("move", at + away * 0.3, 1 + 0j, 60.0)
    yield name_on(shell, TURNED_OVER(shell.cut), [beside])


def _held(shell: Shape, parts: Sequence[Shape], fused: bool) -> Iterator[Ink]:
    """Yield the interfacing in its place, all its parts, under the iron or basted round."""
    rings = [(part, ring) for part in parts for ring in _both_halves(shell, part)]
    yield cloth(shell, TURNED_OVER, cut=True)
    yield from (Face("interfacing", ring, part.name) for part, ring in rings)
    if fused:
        yield InkMark("iron", complex(rings[0][1].mean()), 1j, 40.0)
    else:
        yield from (InkLine("basting", ring, part.name) for part, ring in rings)
    yield name_on(shell, TURNED_OVER(shell.cut), [ring for _, ring in rings])


def _both_halves(shell: Shape, part: Shape) -> Iterator[Points]:
    """Yield where a part lies on its shell turned over: a pair on both halves of one opened out."""
    yield TURNED_OVER(part.outline)
    if shell.axis and not part.axis and part.piece.pair:
        yield TURNED_OVER(mirrored_in(*shell.axis)(part.outline))
