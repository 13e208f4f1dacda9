"""How long every seam and hem of a garment is on the finished thing, both hands counted.

A half piece on the fold is drawn once and sewn twice as long; a pair is sewn on each hand; a seam
of a pair to its own mirror image (a centre seam) is sewn once. Lengths in mm on the stitching line,
gathers pulled up.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from drafting.costume.garment import MadeGarment
from drafting.draft.draft import Draft, Seam
from drafting.draft.openings import hands
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.walk import walk
from drafting.ground.frozen import FrozenDict
from drafting.ground.remembered import remembered


def times_sewn(draft: Draft, seam: Seam) -> int:
    """Return how often a seam, as drawn, is sewn in the whole garment."""
    if any(draft[name].hand for name, _ in (*seam.a, *seam.b)):
        return 1  # one side of the wearer only
    if draft[seam.a[0][0]].fold_edge is not None:
        return 2  # a half drawn, a whole sewn
    if seam.a == seam.b:
        return 1  # a pair joined to its own mirror image
    pairs = [draft[name].pair for name, _ in (*seam.a, *seam.b)]
    return 2 if any(pairs) else 1


def has_half(draft: Draft, seam: Seam) -> bool:
    """Return whether a seam is drawn as half of one that runs over the middle: one that reaches the fold.

    An armhole of a front on the fold does not: it is one seam on either hand.
    """
    return any(edge in at_fold(draft[name]) for name, edge in (*seam.a, *seam.b))


def at_fold(piece: Piece) -> set[str]:
    """Return the names of the edges on either side of a piece's fold; none of a piece drawn whole."""
    names = [edge.name for edge in piece.edges]
    folds = [at for at, edge in enumerate(piece.edges) if edge.kind is EdgeKind.FOLD]
    return {names[(at + step) % len(names)] for at in folds for step in (-1, 1)}


@remembered(8)
def seam_lengths(garment: MadeGarment) -> Mapping[str, float]:
    """Return the length sewn of every seam, darts too, by the seam's name; every step of a plan asks for it."""
    draft = garment.draft
    walked = ((seam, walk(draft, seam)) for seam in draft.seams)
    return FrozenDict({s.name: times_sewn(draft, s) * min(w.a_sewn, w.b_sewn) for s, w in walked})


def inner_dart_length(pieces: Iterable[Piece]) -> float:
    """Return the mm sewn of the darts inside these pieces, both hands and halves."""
    return sum(hands(piece) * dart.leg_a.length for piece in pieces for dart in piece.darts)


def turned_edges(garment: MadeGarment) -> Iterator[tuple[Piece, Edge]]:
    """Yield every edge of the cloth's own pieces that is turned in and sewn down."""
    for piece in garment.draft.pieces:
        if piece.material:
            continue
        for edge in piece.edges:
            if edge.kind in (EdgeKind.HEM, EdgeKind.OPENING):
                yield piece, edge
