"""The lining: joined as the shell was, then laid into the garment wrong sides together and felled."""

from __future__ import annotations

from collections.abc import Container, Iterator, Sequence

import numpy as np

from drafting.geometry.moves import STAY, TURNED_OVER
from drafting.making.stages.laid import flat, name_on
from drafting.making.stages.picture import Face, Ink, InkLine, StageDrawing, drawn_panel
from drafting.making.stages.rows import in_rows
from drafting.making.stages.so_far import SoFar


def lining_joined(so_far: SoFar, linings: Sequence[str]) -> StageDrawing:
    """Return the lining's pieces laid as those they lie behind, wrong side up, its seams heavy."""
    return StageDrawing("lining", (drawn_panel(in_rows(_laid(so_far, linings, work=True))),))


def lining_felled(so_far: SoFar, linings: Sequence[str]) -> StageDrawing:
    """Return the shell wrong side up, the lining on it right side up, felled round."""
    return StageDrawing("felled", (drawn_panel(in_rows(_laid(so_far, linings, work=False))),))


def _laid(so_far: SoFar, linings: Sequence[str], *, work: bool) -> Iterator[list[Ink]]:
    shapes = so_far.goods.shapes
    behind = {shapes[name].piece.lines[0]: name for name in linings if shapes[name].piece.lines}
    for part in so_far.parts([(shell, "") for shell in behind if shell in shapes]):
        inks: list[Ink] = [] if work else list(flat(so_far, part, over=True, hands=False))
        for shell, placing in part.items():
            shape = shapes[behind[shell]]
            move = (TURNED_OVER if not work else STAY).after(placing)
            ring = move(shape.outline)
            inks.append(Face("wrong" if work else "lining", ring, shape.name, over=work))
            if not work:
                inks.append(InkLine("basting", np.append(ring, ring[:1]), shape.name))
            inks += (
                [InkLine("sewing", move(line), of) for line, of in _joined_edges(so_far, shell, behind)]
                if work
                else []
            )
            inks.append(name_on(shape, ring))
        yield inks


def _joined_edges(so_far: SoFar, shell: str, behind: Container[str]) -> Iterator[tuple[np.ndarray, str]]:
    """Yield the lining's edges that lie behind seams of the shell whose pieces are all lined, where they have
    the same place in it."""
    own = so_far.goods.shapes[shell]
    for seam in so_far.goods.seams.values():
        refs = (*seam.a, *seam.b)
        if seam.name in so_far.sewn and all(piece in behind for piece, _ in refs):
            yield from ((own.edges[edge], f"lining: {seam.name}") for piece, edge in refs if piece == shell)
