"""What is sewn, buttoned or zipped shut when the garment is worn, and what lies on its middle."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from drafting.draft.by_role import edges_as, vent_at_centre
from drafting.draft.centres import joins_hands
from drafting.draft.draft import EdgeRef, Seam
from drafting.draft.piece import EdgeKind, Piece
from drafting.draft.roles import SLEEVES, EdgeRole, PieceRole, SeamKind
from drafting.worn.sewn.chosen import SewnParts
from drafting.worn.sewn.guides import CLOSING
from drafting.worn.sewn.rings import PieceRing

SHUT = frozenset({EdgeRole.CENTRE, EdgeRole.FLY})
"""Edges that are held together on the middle: what opens there is worn closed."""


def worn_seams(pieces: SewnParts, rings: Mapping[str, PieceRing]) -> list[Seam]:
    """Return every seam that holds the meshed pieces together: sewn ones, pleats at their folds, closed slits."""
    sewn = [seam for seam in pieces.seams if set(seam.a) != set(seam.b)]
    return [
        *(_at_folds(seam, rings) for seam in sewn),
        *_slits(pieces),
        *_cuffs(pieces, rings),
        *_lapped(pieces, rings),
    ]


def _at_folds(seam: Seam, rings: Mapping[str, PieceRing]) -> Seam:
    """Return a seam inside a pleat as a seam of the folds that lie on each other."""
    if seam.kind is not SeamKind.PLEAT:
        return seam
    a, b = (tuple(_fold_of(rings, ref) for ref in refs) for refs in (seam.a, seam.b))
    return seam if (a, b) == (seam.a, seam.b) else replace(seam, a=a, b=b, notches=(), ease=0.0)


def _fold_of(rings: Mapping[str, PieceRing], ref: EdgeRef) -> EdgeRef:
    """Return the fold behind which an edge lies, or the edge itself."""
    return next(((ref[0], cut.name) for cut in rings[ref[0]].cuts if ref[1] in cut.edges), ref)


def _slits(pieces: SewnParts) -> Iterator[Seam]:
    """Yield the slits and vents of sleeves, which are buttoned, as seams: one for each sleeve."""
    sleeves = [piece for piece in pieces.shell if piece.role in SLEEVES]
    for hand in dict.fromkeys(piece.hand for piece in sleeves):
        for role in (EdgeRole.SLIT, EdgeRole.VENT):
            ends = [(p.name, e.name) for p in sleeves if p.hand == hand for e in edges_as(p, role)]
            if len(ends) == 2:
                yield Seam(f"{role} {hand}", tuple(ends[:1]), tuple(ends[1:]))


def _cuffs(pieces: SewnParts, rings: Mapping[str, PieceRing]) -> Iterator[Seam]:
    """Yield the closing of each cuff: the end over its underlap, to the other end."""
    for piece in pieces.shell:
        names = [side.name for side in rings[piece.name].sides]
        lap = next((cut.name for cut in rings[piece.name].cuts if cut.name == LAP), None)
        if piece.role in (PieceRole.CUFF, PieceRole.KNEE_BAND) and lap in names:
            at = names.index(lap)
            beside = {names[at - 1], lap, names[(at + 1) % len(names)]}
            facing = [(piece.name, name) for name in names if name not in beside]
            if len(facing) == 1:
                yield Seam(f"{piece.name} closed", ((piece.name, lap),), tuple(facing))


def _lapped(pieces: SewnParts, rings: Mapping[str, PieceRing]) -> Iterator[Seam]:
    """Yield what is buttoned beside the middle: two pieces of a hand that were cut back to their closing lines."""
    lines = [(p, mark.name) for p in pieces.shell for mark in p.placements if mark.what == CLOSING]
    shut = [(piece, name) for piece, name in lines if name in rings[piece.name]]
    for hand in dict.fromkeys(piece.hand for piece, _ in shut):
        ends = [(piece.name, name) for piece, name in shut if piece.hand == hand]
        if len(ends) == 2:
            yield Seam(f"closed {hand}", tuple(ends[:1]), tuple(ends[1:]))


LAP = "overlap"
"""What the side is called where a band was cut at its underlap."""


def middle_sides(pieces: SewnParts, rings: Mapping[str, PieceRing]) -> list[EdgeRef]:
    """Return the sides that lie on the middle of the body: where hands meet, folds, and what is shut there."""
    sewn = [ref for seam in pieces.seams for ref in _hands_meet(pieces, seam)]
    folds = [(p.name, p.fold_edge.name) for p in pieces.shell if p.fold_edge]
    found = dict.fromkeys([*sewn, *folds, *shut_sides(pieces, rings)])
    return [(piece, edge) for piece, edge in found if edge in rings[piece]]


def shut_sides(pieces: SewnParts, rings: Mapping[str, PieceRing]) -> list[EdgeRef]:
    """Return the sides on the middle that are held together by buttons, hooks or a zip."""
    edges = [(p.name, e.name) for p in pieces.shell for e in edges_as(p, *SHUT) if e.kind is not EdgeKind.FOLD]
    cut = [(p.name, name) for p in pieces.shell for name in _on_centres(p)]
    return [(piece, edge) for piece, edge in (*edges, *cut) if edge in rings[piece]]


def _on_centres(piece: Piece) -> Iterator[str]:
    """Yield the names of the marks along a piece's centre, the fold of a facing that ends there too: what is laced
    meets on the centre, and is cut back to its fold."""
    centres = [mark for mark in piece.placements if mark.what == "centre"]
    yield from (mark.name for mark in centres)
    for mark in piece.placements:
        ends = {mark.path.start, mark.path.end}
        if mark.what == "fold" and any(_meet(ends, {c.path.start, c.path.end}) for c in centres):
            yield mark.name


def _meet(one: set[complex], other: set[complex]) -> bool:
    return all(min(abs(p - q) for q in other) < ON_CENTRE for p in one)


ON_CENTRE = 0.5
"""mm: a fold no farther from the centre lies on it."""


def _hands_meet(pieces: SewnParts, seam: Seam) -> tuple[EdgeRef, ...]:
    """Return the edges of a seam that joins the left to the right."""
    if pieces.halved:
        return seam.a if joins_hands(pieces.draft, seam) else ()
    hands = [{pieces.draft[name].hand for name, _ in refs} for refs in (seam.a, seam.b)]
    return (*seam.a, *seam.b) if hands in ([{"left"}, {"right"}], [{"right"}, {"left"}]) else ()


def vent_folds(pieces: SewnParts, rings: Mapping[str, PieceRing]) -> list[EdgeRef]:
    """Return the folds at which vents open on the middle of the body, held by nothing; none of a side vent."""
    return [
        (piece.name, cut.name)
        for piece in pieces.shell
        for cut in rings[piece.name].cuts
        if set(cut.edges) & {edge.name for edge in vent_at_centre(piece)}
    ]
