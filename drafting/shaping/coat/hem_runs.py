"""Stretches of a hem that hang together: what goes on over a seam, over the middle, or ends free. mm.

centre    .---.---.---.   open        a run of three pieces whose first end goes on over the middle: one bone
front    <  a   b   c |   slit        lies in both hands' halves, and ends at the slit on either side
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from drafting.draft.draft import Draft, EdgeRef
from drafting.draft.piece import EdgeKind, Piece
from drafting.draft.roles import EdgeRole


@dataclass(frozen=True)
class HemRun:
    """A stretch of hem of one hand: its `pieces`, its `length` in mm, and how many of its two ends go `over` the
    middle into the other hand's."""

    pieces: tuple[str, ...]
    length: float
    over: int

    @property
    def closed(self) -> bool:
        """Whether it goes all round, with the other hand's half."""
        return self.over == 2

    @property
    def count(self) -> int:
        """How many there are of both hands."""
        return 1 if self.over else 2

    @property
    def whole(self) -> float:
        """Return how long one of them is, the other hand's half in it where it goes over the middle, mm."""
        return self.length * (2 if self.over else 1)


def hem_runs(draft: Draft, hemmed: Sequence[Piece], lengths: Mapping[str, float]) -> tuple[HemRun, ...]:
    """Return the runs of one hand's hem; `lengths` (mm) says by piece how much of it lies there.

    Pieces hang together where seams join the edges beside their hems.
    """
    ends = {piece.name: _beside(piece) for piece in hemmed}
    at = {(name, edge): name for name, pair in ends.items() for edge, _ in pair}
    beyond = {name: [_beyond(draft, (name, edge), fold, at) for edge, fold in pair] for name, pair in ends.items()}
    left, found = list(ends), []
    while left:
        run = [left.pop(0)]
        for name in run:
            run += [other for other in beyond[name] if other in left]
            left = [other for other in left if other not in run]
        over = sum(other == OVER for name in run for other in beyond[name])
        found.append(HemRun(tuple(run), sum(lengths[name] for name in run), over))
    return tuple(found)


OVER = "over the middle"
"""What lies beyond an end that is sewn to its own mirror image, or on the fold."""


def _beside(piece: Piece) -> tuple[tuple[str, bool], ...]:
    """Return the edges on both sides of a piece's hem by name, and whether each is a fold."""
    at = next(i for i, edge in enumerate(piece.edges) if edge.role is EdgeRole.HEM)
    pair = piece.edges[at - 1], piece.edges[(at + 1) % len(piece.edges)]
    return tuple((edge.name, edge.kind is EdgeKind.FOLD) for edge in pair)


def _beyond(draft: Draft, ref: EdgeRef, fold: bool, at: Mapping[EdgeRef, str]) -> str:
    """Return the piece whose hem goes on beyond an edge, `OVER` the middle, or "" where it ends."""
    return OVER if fold else next(_partners(draft, ref, at), "")


def _partners(draft: Draft, ref: EdgeRef, at: Mapping[EdgeRef, str]) -> Iterator[str]:
    for seam in draft.seams:
        for own, other in ((seam.a, seam.b), (seam.b, seam.a)):
            if ref in own:
                yield from (OVER if one == ref else at[one] for one in other if one in at)
