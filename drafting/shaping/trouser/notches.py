"""Crotch seams and their notches: at the hip where it crosses them, single in front, double behind. mm."""

from __future__ import annotations

from drafting.draft.by_role import edge_as, the_edge
from drafting.draft.draft import Corner, Seam, SeamNotch
from drafting.draft.piece import Piece
from drafting.draft.roles import EdgeRole, PieceRole, SeamKind
from drafting.geometry import line
from drafting.geometry.crossing import first_crossing, part_between

CLEAR = 15.0
"""mm: a notch so near to an end of its seam tells nothing that the end does not (ours)."""

LONG = 250.0
"""mm: a longer seam has a notch, halfway where no level crosses it (ours)."""

COUNT = {PieceRole.FRONT: 1, PieceRole.BACK: 2}
"""Strokes of a notch (common practice: single in front, double behind)."""


def crotch_seam(piece: Piece) -> Seam:
    """Return the crotch seam of the fronts or of the backs: each piece is sewn to its twin."""
    square: Corner = None if edge_as(piece, EdgeRole.FLY) else "square"
    start, end = (square, None) if piece.role is PieceRole.FRONT else (None, square)
    ref = ((piece.name, the_edge(piece, EdgeRole.CROTCH).name),)
    return Seam(
        f"{piece.name} crotch", ref, ref, start=start, end=end, notches=_notches(piece), kind=SeamKind.CROTCH
    )


def _notches(piece: Piece) -> tuple[SeamNotch, ...]:
    crotch, level = the_edge(piece, EdgeRole.CROTCH).path, piece.points["side_hip"].imag
    x0, _, x1, _ = crotch.bounds
    met = first_crossing(crotch, line(complex(x0 - 1, level), complex(x1 + 1, level)))
    part = part_between(crotch, 0.0, met.on_a) if met else None
    at = part.length if part else 0.0
    name = "hip"
    if not CLEAR <= at <= crotch.length - CLEAR:
        if crotch.length <= LONG:
            return ()
        name, at = "half", crotch.length / 2
    return (SeamNotch(name, at, at, COUNT[piece.role]),)
