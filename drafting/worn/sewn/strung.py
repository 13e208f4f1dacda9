"""What lies along lines of the sewn mesh: free folds, elastic, bands, and what is buttoned together."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

import numpy as np

from drafting.draft.draft import EdgeRef, Notion, Seam
from drafting.draft.frame import BodyFrame, Limb
from drafting.draft.roles import EdgeRole, PieceRole, SeamKind
from drafting.worn.nouns import ElasticThread, Ply, Whole
from drafting.worn.sewn.chosen import SewnParts
from drafting.worn.sewn.guides import ROLL
from drafting.worn.sewn.joined import Merged
from drafting.worn.sewn.rings import PieceRing
from drafting.worn.sewn.rods import end_to_end

FREE = frozenset(
    {
        SeamKind.DART,
        SeamKind.PRINCESS,
        SeamKind.SET_IN,
        SeamKind.CROTCH,
        SeamKind.ATTACHED,
        SeamKind.MADE_UP,
        SeamKind.PLEAT,
    }
)
"""Seams over which the cloth bends free: pressed to an angle, or a hinge by their making (ours)."""

PULL = 1.2
"""N for each mm of an elastic's width and unit of strain (from memory: 25 mm braid pulls 15 N at half over)."""


FIRMEST = 1700.0
"""N per unit of strain from which a band is as good as unyielding (ours: a waist is 0.2 % longer by it)."""

FACED = 300.0
"""N per unit of strain of a facing along its seam (ours: as firm as a light cloth 45 mm deep, interfaced)."""


def free_folds(rings: Mapping[str, PieceRing], whole: Merged, seams: Sequence[Seam]) -> Whole:
    """Return the pairs of sewn vertices over which cloth bends free."""
    chains = [whole.along(ref) for seam in seams if seam.kind in FREE for ref in seam.a if ref[1] in rings[ref[0]]]
    for piece, start in zip(whole.pieces, whole.starts, strict=True):
        chains += [whole.merged[dart + start] for dart in piece.inner_darts]
        rolls = {mark.name for mark in piece.ring.piece.placements if mark.what == ROLL}
        chains += [whole.inner(piece.ring.piece.name, name) for name in rolls]
    pairs = [np.column_stack([chain[:-1], chain[1:]]) for chain in chains if len(chain) > 1]
    return np.concatenate([np.zeros((0, 2), dtype=np.int64), *pairs])


def elastics(
    pieces: SewnParts, rings: Mapping[str, PieceRing], said: Mapping[str, BodyFrame], whole: Merged
) -> tuple[ElasticThread, ...]:
    """Return the elastics of a garment as threads along the edges they go to."""
    return tuple(
        thread
        for notion in pieces.draft.notions
        if notion.loop is not None and notion.edges
        for thread in _threads(pieces, rings, said, whole, notion)
    )


def _threads(
    pieces: SewnParts, rings: Mapping[str, PieceRing], said: Mapping[str, BodyFrame], whole: Merged, notion: Notion
) -> Iterator[ElasticThread]:
    """Yield one elastic as a thread; a whole garment's two sleeves or legs have one each."""
    refs = [ref for ref in notion.edges if ref[0] in rings and ref[1] in rings[ref[0]]]
    round_limb = notion.count > 1 or all(said[piece].limb is Limb.ARM for piece, _ in refs)
    hands = dict.fromkeys(pieces.draft[piece].hand for piece, _ in refs) if round_limb else [None]
    share = 0.5 if pieces.halved and not round_limb else 1.0
    for hand in hands:
        own = [ref for ref in refs if hand is None or pieces.draft[ref[0]].hand == hand]
        chain = end_to_end([whole.along(ref) for ref in own])
        if len(chain) > 1 and notion.loop is not None:
            pull = PULL * (notion.size or 10.0)
            yield ElasticThread(vertices=chain, rest=share * notion.loop, pull=pull)


def on_facings(pieces: SewnParts, rings: Mapping[str, PieceRing], whole: Merged) -> tuple[ElasticThread, ...]:
    """Return edges that are gathered to what is not meshed, as a neck to its facing, as threads of that length."""
    faced = {ref for seam in pieces.draft.seams for ref in (*seam.a, *seam.b) if not _all_meshed(seam, rings)}
    drawn = {ref for notion in pieces.draft.notions for ref in notion.edges}
    refs = [
        (piece.name, edge.name)
        for piece in pieces.shell
        for edge in piece.edges
        if edge.length > edge.sewn_length + 1.0 and edge.name in rings[piece.name]
    ]
    return tuple(
        ElasticThread(whole.along(ref), pieces.draft.edge(ref).sewn_length, FACED)
        for ref in refs
        if ref in faced and ref not in drawn
    )


def _all_meshed(seam: Seam, rings: Mapping[str, PieceRing]) -> bool:
    return all(piece in rings for piece, _ in (*seam.a, *seam.b))


def banded(
    pieces: SewnParts, rings: Mapping[str, PieceRing], whole: Merged, plies: Sequence[Ply], ply: Whole
) -> tuple[ElasticThread, ...]:
    """Return waistbands as threads along the waist that they are sewn to: as long as drafted, as firm as they are.

    `ply` (T,) says which of `plies` each triangle is of. A sheet is taken softer than most cloth (see `at_rest`),
    and a waist of it would sink until it is 2 % longer; a band is what holds it.
    """
    return tuple(
        ElasticThread(whole.along((piece.name, edge.name)), edge.length, min(FIRMEST, firm * area / edge.length))
        for n, piece in enumerate(pieces.shell)
        if piece.role is PieceRole.WAISTBAND
        for edge in piece.edges
        if edge.role is EdgeRole.WAIST and edge.name in rings[piece.name]
        for firm, area in (_firm(whole, plies, ply, n),)
    )


def _firm(whole: Merged, plies: Sequence[Ply], ply: Whole, number: int) -> tuple[float, float]:
    """Return how firm the cloth of a piece is the way it gives most, N/mm, and its area, mm2."""
    own = whole.piece == number
    firm = min(min(plies[i].along, plies[i].across) for i in np.unique(ply[own]))
    a, b, c = (whole.flat[whole.triangles[own, i]] for i in range(3))
    u, v = b - a, c - a
    return 1e-3 * firm, float(np.abs(u[:, 0] * v[:, 1] - u[:, 1] * v[:, 0]).sum() / 2)


def tied(pieces: SewnParts, whole: Merged, sides: Sequence[EdgeRef]) -> Whole:
    """Return the pairs of a whole garment that are held together: the left of a closing to its right."""
    pairs = [np.zeros((0, 2), dtype=np.int64)]
    for name, edge in sides:
        piece = pieces.draft[name]
        right = [
            (n, e)
            for n, e in sides
            if e == edge and pieces.draft[n].hand == "right" and pieces.draft[n].base == piece.base
        ]
        if piece.hand == "left" and len(right) == 1:
            one, other = whole.along((name, edge)), whole.along(right[0])[::-1]
            at = np.linspace(0, len(other) - 1, len(one)).round().astype(int)
            pairs.append(np.column_stack([one, other[at]]))
    return np.concatenate(pairs)
