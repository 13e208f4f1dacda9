"""What a lining does behind the shell: which of its seams it has too, and which raw hems it covers."""

from __future__ import annotations

from drafting.costume.garment import MadeGarment
from drafting.draft.draft import Draft, Seam
from drafting.draft.piece import Edge, Piece

LAPS, APART = 10.0, 5.0
"""mm that a lining reaches below a hem's raw edge at least (common practice: 10 to 15), and from place to place
along a hem where it is measured."""


def lining_covers(garment: MadeGarment, piece: Piece, edge: Edge) -> bool:
    """Return whether a hem is turned up so far that the lining behind it reaches `LAPS` mm below its raw edge."""
    behind = [p for p in garment.draft.pieces if p.material == "lining" and piece.name in p.lines]
    ends = [one.path for lining in behind for one in lining.edges if one.role is edge.role]
    if not ends:
        return False
    cut = next(one for one in garment.pattern.pieces if one.piece.name == piece.name)
    depth = cut.allowances[edge.name] - edge.drops
    along = edge.path.evenly(max(2, round(edge.length / APART)))
    shorter = min(abs(at - path.at(path.length / 2)) for path in ends for at in along)
    return depth > shorter + LAPS


def lined_along(draft: Draft, seam: Seam) -> bool:
    """Return whether a lining has this seam of the shell too: one lies behind every piece that it joins.

    A line that cut the shell alone has one piece of lining behind both its sides, and no seam there.
    """
    behind = {name: piece.name for piece in draft.pieces if piece.material == "lining" for name in piece.lines}
    shells = {piece for piece, _ in (*seam.a, *seam.b)}
    if not shells <= behind.keys():
        return False
    a, b = ({behind[piece] for piece, _ in side} for side in (seam.a, seam.b))
    return len(shells) == 1 or seam.a == seam.b or a != b
