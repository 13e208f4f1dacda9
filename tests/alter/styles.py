"""Drafts for the tests of style lines, and what every one of them has to hold."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

import shapely

from drafting.costume.choices import block_named, choose
from drafting.costume.garment import drafted
from drafting.costume.stand_in import STRETCHY
from drafting.draft.draft import Draft, EdgeRef
from drafting.draft.piece import Piece
from drafting.draft.walk import walk
from drafting.ground import tolerances as tol
from drafting.ground.scale import body_scale
from drafting.reading.given import Given, Origin
from tests.drawn_bodies import drawn, far

BLOCKS: Mapping[str, Mapping[str, str]] = {
    "bodice": {"length": "hip"},
    "fitted-top": {},
    "trouser": {},
    "close-top": {},
    "shirt": {},
}


@lru_cache(maxsize=16)
def draft_of(block: str, number: int) -> Draft:
    body = [*drawn(4), *far()[:3]][number]
    given_choices = {name: Given(value) for name, value in BLOCKS[block].items()}
    kind = block_named(block)
    return drafted(body, STRETCHY, kind, choose(kind, given_choices, body_scale(body), Origin()))


def ring(piece: Piece) -> shapely.Polygon:
    """Return the outline for the geometry library, which takes ends that lie 1e-14 mm apart for a crossing."""
    flat = list(piece.outline.points(0.01))
    while abs(flat[-1] - flat[0]) < 1e-9:
        flat.pop()
    return shapely.Polygon([(p.real, p.imag) for p in flat])


def sound(draft: Draft) -> None:
    for piece in draft.pieces:
        assert ring(piece).is_valid, piece.name
        assert piece.area > 0
        assert min(edge.length for edge in piece.edges) > 1e-6
    for seam in draft.seams:
        assert abs(walk(draft, seam).difference) < tol.SEAM_MATCH, seam.name
        for notch in seam.notches:
            long = walk(draft, seam)
            assert -1e-6 <= notch.a <= long.a_length + 1e-6
        if set(seam.a) != set(seam.b):  # as much is cut of the one as of the other, both hands and halves
            cut = [sum(_cut_length(draft, ref) for ref in chain) for chain in (seam.a, seam.b)]
            assert 0.7 < cut[0] / cut[1] < 1.4, seam.name  # what is eased or stretched in is far less
    uses = [ref for seam in draft.seams for ref in {*seam.a, *seam.b}]
    assert len(uses) == len(set(uses))


def _cut_length(draft: Draft, ref: EdgeRef) -> float:
    """Return the mm of an edge as sewn, on all that is cut of its piece for one layer."""
    piece = draft[ref[0]]
    times = 2 if piece.pair or piece.fold_edge is not None else 1
    return piece[ref[1]].sewn_length * times
