"""How a trim is cut: one length for each stretch of edge that runs on, each hand's own where the two differ.

Lengths in mm, ends counted. All is common practice of the workroom.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from drafting.costume.garment import MadeGarment
from drafting.draft.draft import Draft, EdgeRef
from drafting.draft.openings import cut_layers
from drafting.draft.piece import Piece
from drafting.making.seam_lengths import at_fold
from drafting.reading.trimming import TrimWish

TRIM_ENDS = 40.0
"""mm of a trim beyond its edge: both ends are turned under, or reach into a seam that catches them."""

ALIKE = 3.2
"""mm by which two lengths may differ and still be cut as one, the longer: an eighth of an inch, as finely as a
tape is read, and little beside 40 mm of ends (ours)."""


@dataclass(frozen=True, slots=True)
class TrimCut:
    """`count` lengths of a trim to cut, `each` so long; for one `hand` alone, or for either ("")."""

    hand: str
    count: int
    each: float


@dataclass(frozen=True)
class LaidTrim:
    """A trim as it was asked for once: the edges it lies along, what both hands call them, what is cut of it."""

    trim: TrimWish
    refs: tuple[EdgeRef, ...]
    place: EdgeRef
    cuts: tuple[TrimCut, ...]

    @property
    def count(self) -> int:
        return sum(cut.count for cut in self.cuts)

    @property
    def total(self) -> float:
        return math.fsum(cut.count * cut.each for cut in self.cuts)

    @property
    def by_hand(self) -> Mapping[str, float]:
        """What is cut for each hand, where the two differ; nothing where they are alike."""
        return {cut.hand: cut.each for cut in self.cuts} if len(self.cuts) > 1 else {}


def laid_trims(garment: MadeGarment) -> tuple[LaidTrim, ...]:
    """Return each trim of a garment once, both hands of an edge in one."""
    groups: dict[tuple[EdgeRef, str, float, bool, int], list[TrimWish]] = {}
    for trim in garment.trims:
        ref, again = (trim.piece, trim.edge), 0
        place = _place(garment.draft, ref)
        while any(ref == (t.piece, t.edge) for t in groups.get((place, *_sort(trim), again), ())):
            again += 1  # a second row along the same edge
        groups.setdefault((place, *_sort(trim), again), []).append(trim)
    return tuple(_laid(garment.draft, found) for found in groups.values())


def _sort(trim: TrimWish) -> tuple[str, float, bool]:
    return trim.kind, trim.width, trim.bias


def _place(draft: Draft, ref: EdgeRef) -> EdgeRef:
    """Return what both hands call an edge."""
    piece = draft[ref[0]]
    return piece.base or piece.name, piece[ref[1]].base or ref[1]


def _laid(draft: Draft, found: Sequence[TrimWish]) -> LaidTrim:
    refs = tuple((trim.piece, trim.edge) for trim in found)
    cuts = tuple(_cuts(draft, refs))
    if len(cuts) == 2 and abs(cuts[0].each - cuts[1].each) <= ALIKE:
        cuts = (TrimCut("", sum(cut.count for cut in cuts), max(cut.each for cut in cuts)),)
    return LaidTrim(found[0], refs, _place(draft, refs[0]) if len(refs) > 1 else refs[0], cuts)


def _cuts(draft: Draft, refs: Sequence[EdgeRef]) -> Iterator[TrimCut]:
    for piece in (draft[name] for name in dict.fromkeys(name for name, _ in refs)):
        own = [piece[edge] for name, edge in refs if name == piece.name]
        things = piece.count // cut_layers(draft, piece)
        if len(own) > 1 and _meet(piece, *(edge.name for edge in own[:2])):
            yield TrimCut("", things, math.fsum(edge.sewn_length for edge in own) + TRIM_ENDS)
            continue
        for edge in own:
            half, runs_on = piece.fold_edge is not None, edge.name in at_fold(piece)
            length = edge.sewn_length * (2 if runs_on else 1) + TRIM_ENDS
            yield TrimCut(piece.hand or edge.hand, things * (2 if half and not runs_on else 1), length)


def _meet(piece: Piece, one: str, other: str) -> bool:
    """Return whether two edges of a piece run on into each other."""
    return abs(piece.index(one) - piece.index(other)) in (1, len(piece.edges) - 1)
