"""The garment so far where it lies flat, one side up: what is tried on, pressed, or looked at."""

from __future__ import annotations

from collections.abc import Sequence

from drafting.geometry.moves import STAY, TURNED_OVER
from drafting.making.stages.laid import flat, names_of
from drafting.making.stages.picture import Ink, StageDrawing, drawn_panel
from drafting.making.stages.rows import in_rows
from drafting.making.stages.so_far import SoFar


def as_it_stands(so_far: SoFar, pieces: Sequence[str], *, over: bool = False) -> StageDrawing:
    """Return the parts that hold these pieces, each laid flat, side by side."""
    return StageDrawing("so far", (drawn_panel(in_rows(parts_flat(so_far, pieces, over=over))),))


def parts_flat(so_far: SoFar, pieces: Sequence[str], *, over: bool) -> list[list[Ink]]:
    """Return the inks of each part that holds one of these pieces."""
    view = TURNED_OVER if over else STAY
    found = []
    for where in so_far.parts([(name, "") for name in pieces]):
        found.append([*flat(so_far, where, over=over), *names_of(so_far.goods, where, view)])
    return found
