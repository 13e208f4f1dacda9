"""The buttonholes that a draft really has: how many, on which side, which way they lie. Lengths in mm.

A button without a hole is for show: nothing is cut for it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from drafting.draft.draft import Draft
from drafting.draft.piece import Piece, Placement

UPRIGHT = 0.5
"""Share of a hole's length that rises from which it counts as upright (ours: at 30 degrees)."""


@dataclass(frozen=True, slots=True)
class Holes:
    """`count` buttonholes alike in one piece: on which `side` of the wearer, how they `lie`, how long."""

    piece: str
    side: str
    lie: str
    length: float
    count: int


def holes(draft: Draft) -> tuple[Holes, ...]:
    """Return the buttonholes of a garment by piece, side, lie and length, each hand counted."""
    found: dict[tuple[str, str, str, float], int] = {}
    for piece in draft.pieces:
        if piece.material:
            continue
        for mark in _holes(piece):
            key = piece.name, mark.hand or piece.hand, _lie(mark), round(mark.path.length, 1)
            found[key] = found.get(key, 0) + times(piece, mark)
    return tuple(Holes(*key, count) for key, count in found.items())


def times(piece: Piece, mark: Placement) -> int:
    """Return how often a mark comes in the garment: on one side only where it names one."""
    if mark.hand or piece.hand:
        return 1
    return 2 if piece.pair else 1


def _holes(piece: Piece) -> Iterator[Placement]:
    return (mark for mark in piece.placements if mark.what == "buttonhole")


def _lie(mark: Placement) -> str:
    run = mark.path.end - mark.path.start
    return "upright" if abs(run.imag) > UPRIGHT * abs(run) else "level"
