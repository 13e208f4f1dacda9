"""Where a piece is cut back: facings, stands, pleats, vents and the insides of bands fold away.

Read from what the draft declares: marks of the kinds `fold` and `centre`, and the edges' roles.
"""

from __future__ import annotations

import numpy as np

from drafting.draft.by_role import edges_as
from drafting.draft.piece import Piece
from drafting.draft.roles import EdgeRole
from drafting.geometry.area import Region
from drafting.geometry.curve import Points
from drafting.worn.sewn.rings import PieceRing, at, cut_in_two, fine, piece_ring, run_length

UNDER = frozenset(
    {EdgeRole.INNER, EdgeRole.FACING, EdgeRole.FACING_NECK, EdgeRole.FACING_HEM, EdgeRole.PLEAT, EdgeRole.VENT}
)
"""Edges that lie under once their piece is folded."""

OVERLAP = 0.3
"""Of a piece: what lies beyond a centre line and is more is the piece's other half (ours)."""

REACH = 3.0
"""mm: how far a drawn line may end short of the outline that it is meant to reach (ours)."""


def folded(piece: Piece) -> PieceRing:
    """Return the piece cut back to its folds, and to the line on which it closes: the centre beyond which it laps.

    A front whose block states where its middle lies keeps what laps beyond it: that is seen when it is worn.
    """
    ring = piece_ring(piece)
    ring = _without_lap(ring)
    under = under_names(piece)
    for mark in piece.placements:
        if mark.what == "fold":
            ring = _cut(ring, fine(mark.path), mark.name, under, 1.0)
    for mark in piece.placements:
        if mark.what == "closing line":
            ring = _cut(ring, fine(mark.path), mark.name, set(), OVERLAP)
    laps = piece.frame is not None and piece.frame.front is not None
    for mark in piece.placements:
        if mark.what == "centre" and not laps:
            ring = _cut(ring, fine(mark.path), mark.name, under, OVERLAP)
    return ring


def under_names(piece: Piece) -> set[str]:
    """Return the names of the edges that fold under."""
    return {edge.name for edge in piece.edges if edge.role in UNDER or edge.twin}


def _without_lap(ring: PieceRing) -> PieceRing:
    """Return a band without the underlap at its end, where no centre is marked on it.

    It is cut between the two places where an underlap's edge meets the rest of the band.
    """
    piece = ring.piece
    laps = edges_as(piece, EdgeRole.UNDERLAP)
    if any(mark.what == "centre" for mark in piece.placements) or len(laps) != 2:
        return ring
    runs = [_between(ring, one.name, two.name) for one, two in (laps, laps[::-1])]
    first, last = laps if runs[0] < runs[1] else laps[::-1]
    joints = np.array([first.path.start, last.path.end])
    return _smaller_gone(cut_in_two(ring, joints, "overlap"))


def _between(ring: PieceRing, one: str, two: str) -> float:
    """Return the length of the sides from one to another, neither counted, in outline order."""
    names = [side.name for side in ring.sides]
    begin, end = names.index(one) + 1, names.index(two)
    sides = ring.sides[begin:end] if begin <= end else ring.sides[begin:] + ring.sides[:end]
    return sum(side.length for side in sides)


def _cut(ring: PieceRing, line: Points, name: str, under: set[str], most: float) -> PieceRing:
    """Return the ring cut along a mark that crosses it; as it was where more than `most` of it would go.

    What holds the edges that fold under goes; where both parts hold some, or none, the smaller one.
    """
    across = crossing(ring, line)
    if across is None:
        return ring
    parts = cut_in_two(ring, across, name)
    holds = [bool(under & {side.name for side in part.sides}) for part in parts]
    kept = _smaller_gone(parts) if holds[0] == holds[1] else parts[0 if holds[1] else 1]
    whole = Region.of(ring.outline).area
    return ring if Region.of(kept.cuts[-1].gone).area > most * whole else kept


def _smaller_gone(parts: tuple[PieceRing, PieceRing]) -> PieceRing:
    """Return the greater of two parts."""
    return max(parts, key=lambda part: Region.of(part.outline).area)


def crossing(ring: PieceRing, line: Points) -> Points | None:
    """Return the part of a mark inside the ring, from side to side of it, or None."""
    region = Region.of(ring.outline)
    across = region.across(line, REACH)
    return None if across is None or runs_on_rim(region, across) else across


def runs_on_rim(region: Region, line: Points) -> bool:
    """Return whether a line runs along the rim: there is nothing to cut, and vertices stand there anyway."""
    spots = at(line, np.linspace(0.0, run_length(line), 9))
    return bool(region.clearance(spots).max() < RIM)


RIM = 1.0
"""mm: a line that comes no farther from the rim lies on it."""
