"""Left and right that differ: two drafts named by hand, joined along their centre lines.

A block drafts the wearer's left half. Where the two sides of a body differ, the left half is drafted
to the left side's measures and once more to the right side's; the second is mirrored, and both are
named by hand. What lies on the fold is opened out into one whole piece (`draft/centres.py`).
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Literal

from drafting.draft.centres import half_name, joins_hands, on_over_the_middle, opened_out, settled
from drafting.draft.draft import Corner, Draft, EdgeRef, Notion, Seam
from drafting.draft.named import handed_name
from drafting.draft.of_both import girths_of_both, one_of_both
from drafting.draft.piece import EdgeKind, Piece
from drafting.draft.roles import FACINGS, SMALL, PieceRole, SeamKind
from drafting.ground import tolerances as tol
from drafting.ground.findings import Finding, of_whole

ALIKE = 0.01
"""mm: two hands whose edges differ by no more are one."""

BODY_APART = "The two sides of this body differ"
STYLED_APART = "One hand alone has a line of its own"
"""Why each hand is cut for itself."""


def alike(left: Draft, right: Draft) -> bool:
    """Return whether two drafts of one garment are the same within 0.01 mm."""
    if [p.name for p in left.pieces] != [p.name for p in right.pieces]:
        return False
    return all(
        [e.name for e in a.edges] == [e.name for e in b.edges]
        and all(abs(x.length - y.length) <= ALIKE for x, y in zip(a.edges, b.edges, strict=True))
        for a, b in zip(left.pieces, right.pieces, strict=True)
    )


def both_hands(left: Draft, right: Draft, why: str = BODY_APART) -> Draft:
    """Return the draft with a left and a right copy of every piece, joined along their middle.

    What lies on the fold in both hands becomes one whole piece, or where the halves do not meet two
    pieces with a seam between them; what a pair sews to itself becomes a seam from left to right. `why` is told.
    Raises `DraftError` where the two middles differ by more than 15 %.
    """
    left, right = one_of_both(*settled(left, right))
    whole = _whole(_own(left, "left"), _own(right, "right"))
    folds = [(p, p.fold_edge.name) for p in left.pieces if p.fold_edge and not p.hand and p.name not in whole]
    centres = tuple(
        Seam(
            f"centre {p.name}",
            ((handed_name(p.name, "left"), edge),),
            ((handed_name(p.name, "right"), edge),),
            kind=_centre_of(p.role),
        )
        for p, edge in folds
        if not p.material and p.name in right
    )
    both = _handed(left, _Hand("left", frozenset(whole)), whole) + _handed(
        right, _Hand("right", frozenset(whole)), {}
    )
    both = _without_partner(both, left, right)
    return replace(
        both,
        uneven=why == BODY_APART,
        seams=both.seams + _across(left, right) + centres,
        girths=girths_of_both(left.girths, right.girths),
        findings=(_said(left, whole, why), *of_whole(both.findings, whole)),
    )


def _without_partner(both: Draft, left: Draft, right: Draft) -> Draft:
    """Return the draft with the middle of a half that the other hand does not have left free."""
    lone = {p.name for a, b in ((left, right), (right, left)) for p in a.pieces if p.fold_edge and p.name not in b}

    def freed(piece: Piece) -> Piece:
        folds = [
            p.fold_edge for hand in (left, right) for p in hand.pieces if p.name == piece.base and p.fold_edge
        ]
        names = {fold.name for fold in folds}
        edges = (replace(e, kind=EdgeKind.FREE) if e.name in names else e for e in piece.edges)
        return replace(piece, edges=tuple(edges))

    return both.with_pieces(freed(p) for p in both.pieces if p.base in lone and p.hand)


@dataclass(frozen=True)
class _Hand:
    """Which side is named, and the pieces that both sides share."""

    side: Literal["left", "right"]
    whole: frozenset[str]

    def piece(self, name: str) -> str:
        return name if name in self.whole else handed_name(name, self.side)

    def ref(self, draft: Draft, old: EdgeRef) -> EdgeRef:
        edge = draft.edge(old)
        if old[0] in self.whole:
            return old[0], half_name(edge, self.side)
        return handed_name(old[0], self.side), (edge.mirrored() if self.side == "right" else edge).name

    def chain(self, draft: Draft, refs: tuple[EdgeRef, ...]) -> tuple[EdgeRef, ...]:
        named = tuple(self.ref(draft, ref) for ref in refs)
        return tuple(reversed(named)) if self.side == "right" else named


def _whole(left: Draft, right: Draft) -> dict[str, Piece]:
    """Return the pieces that both hands share, opened out, by their names."""
    found = {}
    for piece in left.pieces:
        if piece.fold_edge and not piece.hand and piece.name in right:
            opened = opened_out(piece, right[piece.name])
            if opened is not None:
                found[piece.name] = opened
    return found


def _across(left: Draft, right: Draft) -> tuple[Seam, ...]:
    """Return the seams that sew the left of a pair to its right."""
    theirs = {seam.name: seam for seam in right.seams}
    mine, other = _Hand("left", frozenset()), _Hand("right", frozenset())
    found = []
    for seam in left.seams:
        if joins_hands(left, seam) and seam.name in theirs:
            b = other.chain(right, theirs[seam.name].a)[::-1]
            found.append(replace(seam, a=mine.chain(left, seam.a), b=b))
    return tuple(found)


def _said(left: Draft, whole: dict[str, Piece], why: str) -> Finding:
    shared = [name.replace("-", " ") for name, piece in whole.items() if not piece.material]
    one = f" Cut in one piece over the middle, its halves uneven: {', '.join(shared)}." if shared else ""
    return Finding(
        "two sides",
        "note",
        "both hands",
        None,
        None,
        f"{why}: every piece is drafted once for the left and once for the "
        f"right, named by hand. Mark each piece as soon as it is cut.{one}",
    )


def _centre_of(role: PieceRole) -> SeamKind:
    """Return what the seam is that joins the two hands of a piece."""
    if role in FACINGS:
        return SeamKind.FACING
    return SeamKind.MADE_UP if role in SMALL else SeamKind.CENTRE


def _handed(draft: Draft, hand: _Hand, whole: dict[str, Piece]) -> Draft:
    """Return the draft of one hand: pieces renamed, and for the right mirrored.

    The `whole` pieces that both share are put in where they stood; they are listed with one hand.
    """
    draft = _own(draft, hand.side)
    single = {piece.name for piece in draft.pieces if piece.hand}
    return Draft(
        pieces=tuple(_placed(draft, hand, whole)),
        seams=tuple(_seam(draft, seam, hand) for seam in draft.seams if not joins_hands(draft, seam)),
        girths=(),
        findings=tuple(replace(f, where=f"{f.where} {hand.side}", hand=hand.side) for f in draft.findings),
        facts={f"{name}_{hand.side}": value for name, value in draft.facts.items()},
        chains={f"{name}_{hand.side}": hand.chain(draft, refs) for name, refs in draft.chains.items()},
        notions=tuple(_notions(draft, hand, single)),
    )


def _placed(draft: Draft, hand: _Hand, whole: dict[str, Piece]) -> Iterator[Piece]:
    for piece in draft.pieces:
        if piece.name not in hand.whole:
            yield _piece(piece, hand)
        elif piece.name in whole:
            yield _renamed(whole[piece.name], hand)


def _renamed(piece: Piece, hand: _Hand) -> Piece:
    """Return a whole piece with what it stiffens and lines called as it is now."""

    def both(old: tuple[str, ...]) -> tuple[str, ...]:
        hands = (hand, _Hand("right", hand.whole))
        return tuple(dict.fromkeys(one.piece(name) for name in old for one in hands))

    return replace(piece, stiffens=both(piece.stiffens), lines=both(piece.lines))


def _notions(draft: Draft, hand: _Hand, single: set[str]) -> Iterator[Notion]:
    """Yield one hand's share of what is bought; what a shared piece needs is listed with the left."""
    for notion in draft.notions:
        if notion.piece not in hand.whole:
            marked = _marked(draft, notion)
            given = _notion(notion, hand, notion.piece in single or marked == {hand.side})
            if given.count and (not marked or hand.side in marked):
                yield replace(given, edges=hand.chain(draft, notion.edges))
        elif hand.side == "left":
            other = _Hand("right", hand.whole)
            edges = (*hand.chain(draft, notion.edges), *other.chain(draft, notion.edges))
            yield replace(notion, edges=edges)


def _marked(draft: Draft, notion: Notion) -> set[str]:
    """Return the hands whose piece is marked for a notion: buttons that close lie on one; none where on either."""
    if notion.hand:
        return {notion.hand}
    places = draft[notion.piece].placements if notion.piece in draft else ()
    found = {mark.hand for mark in places if mark.what == notion.what}
    return set() if "" in found else found


def _own(draft: Draft, side: str) -> Draft:
    """Return the draft without the pieces of the other hand, and what was sewn to them left free."""
    lost = {piece.name for piece in draft.pieces if piece.hand not in ("", side)}
    if not lost:
        return draft
    kept = tuple(s for s in draft.seams if not lost & {name for name, _ in (*s.a, *s.b)})
    sewn = {ref for seam in kept for ref in (*seam.a, *seam.b)}
    freed = {ref for s in draft.seams if s not in kept for ref in (*s.a, *s.b)} - sewn

    def own(piece: Piece) -> Piece:
        edges = (replace(e, kind=EdgeKind.FREE) if (piece.name, e.name) in freed else e for e in piece.edges)
        return replace(piece, edges=tuple(edges))

    pieces = tuple(own(piece) for piece in draft.pieces if piece.name not in lost)
    notions = tuple(n for n in draft.notions if n.piece not in lost)
    return replace(draft, pieces=pieces, seams=kept, notions=notions)


def _piece(piece: Piece, hand: _Hand) -> Piece:
    side = hand.side

    def named(names: tuple[str, ...]) -> tuple[str, ...]:
        return tuple(hand.piece(name) for name in names)

    kept = (m for m in piece.placements if m.hand in ("", side))
    marks = tuple(replace(m, piece=hand.piece(m.piece)) if m.piece else m for m in kept)
    piece = replace(
        piece,
        name=handed_name(piece.name, side),
        base=piece.name,
        stiffens=named(piece.stiffens),
        lines=named(piece.lines),
        placements=marks,
    )
    if piece.hand:
        return piece
    mine = piece.mirrored() if side == "right" else piece
    edges = tuple(replace(e, kind=EdgeKind.SEAM) if e.kind is EdgeKind.FOLD else e for e in mine.edges)
    return replace(mine, hand=side, pair=False, edges=edges)


def _notion(notion: Notion, hand: _Hand, only: bool) -> Notion:
    """One hand's half of what both need; an odd one goes to the left, a single one lies between: a zip."""
    piece = hand.piece(notion.piece) if notion.piece else ""
    count = notion.count if only else (notion.count + (hand.side == "left")) // 2
    where = notion.where if notion.count == 1 and not only else f"{notion.where} {hand.side}"
    return replace(notion, where=where, piece=piece, count=count)


def _seam(draft: Draft, seam: Seam, hand: _Hand) -> Seam:
    seam = on_over_the_middle(draft, seam, hand.whole)
    a, b = hand.chain(draft, seam.a), hand.chain(draft, seam.b)
    named = replace(seam, name=f"{seam.name} {hand.side}", a=a, b=b)
    if hand.side == "left":
        return named
    length_a = sum(draft.edge(r).length for r in seam.a)
    length_b = sum(draft.edge(r).length for r in seam.b)
    ends: tuple[Corner, Corner] = (seam.end, seam.start)
    eased = seam.eased and (length_a - seam.eased[1], length_a - seam.eased[0])
    notches = tuple(
        replace(n, a=_from_end(length_a, n.a), b=_from_end(length_b, n.b)) for n in reversed(seam.notches)
    )
    return replace(named, start=ends[0], end=ends[1], eased=eased, notches=notches)


def _from_end(length: float, at: float) -> float:
    """Return the place of a notch read from the other end, never a hair outside the chain."""
    return min(max(length - at, 0.0), length - tol.CLOSED)
