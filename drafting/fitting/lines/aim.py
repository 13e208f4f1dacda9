"""A bust dart keeps its aim: where its mouth or the bust point has moved, its tip turns with them."""

from __future__ import annotations

from drafting.draft.by_role import BUST_POINTS
from drafting.draft.piece import Edge, Piece
from drafting.draft.roles import EdgeRole
from drafting.fitting.lines.places import outline_darts
from drafting.fitting.lines.shift import Shift

OFF = 1e-9
"""mm: a tip that would move by no more stays."""


def aimed(before: Piece, after: Piece) -> Shift:
    """Return how a piece is moved so that the tip of each bust dart is as far from the bust point as before.

    It lies in line with the dart's mouth, too.
    """
    points = [name for name in BUST_POINTS if name in before.points]
    corners: dict[str, complex] = {}
    if not points:
        return Shift(before.name)
    for into, out in outline_darts(before, EdgeRole.BUST_DART):
        tip = out.path.start
        name = min(points, key=lambda n: abs(before.points[n] - tip))
        old, new = before.points[name], after.points[name]
        one, two = _mouth(into, out) - old, _mouth(after[into.name], after[out.name]) - new
        turned = two / one
        by = new + (tip - old) * turned / abs(turned) - after[out.name].path.start
        if abs(by) > OFF:
            corners[out.name] = by
    return Shift(before.name, corners)


def _mouth(into: Edge, out: Edge) -> complex:
    return (into.path.start + out.path.end) / 2
