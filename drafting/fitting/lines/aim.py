"""A bust dart keeps its aim: where its mouth or the bust point has moved, its tip turns with them."""

from __future__ import annotations

from drafting.draft.by_role import BUST_POINTS
from drafting.draft.piece import Edge, Piece
from drafting.draft.roles import EdgeRole
from drafting.fitting.lines.places import outline_darts
from drafting.fitting.lines.shift import Shift, reshaped

OFF = 1e-9
"""mm: a tip that would move by no more stays."""


def aimed(before: Piece, after: Piece) -> Piece:
    """Return a piece with the tip of each bust dart as far from the bust point as before, and in line."""
    points = [name for name in BUST_POINTS if name in before.points]
    if not points:
        return after
    for into, out in outline_darts(before, EdgeRole.BUST_DART):
        tip = out.path.start
        name = min(points, key=lambda n: abs(before.points[n] - tip))
        old, new = before.points[name], after.points[name]
        one, two = _mouth(into, out) - old, _mouth(after[into.name], after[out.name]) - new
        turned = two / one
        by = new + (tip - old) * turned / abs(turned) - after[out.name].path.start
        if abs(by) > OFF:
            after = reshaped(after, Shift(after.name, {out.name: by})).after
    return after


def _mouth(into: Edge, out: Edge) -> complex:
    return (into.path.start + out.path.end) / 2
