"""Left and right that differ: two drafts named by hand, joined along their centre lines.

A block drafts the wearer's left half. Where the two sides of a body differ, the left half is drafted
to the left side's measures and once more to the right side's; the second is mirrored, both are named
by hand, and what would have lain on the fold becomes a seam.
"""

from __future__ import annotations

from dataclasses import replace

from drafting.draft.draft import Corner, Draft, EdgeRef, Girth, Notion, Seam
from drafting.draft.piece import EdgeKind, Piece
from drafting.draft.roles import FACINGS, SMALL, PieceRole, SeamKind
from drafting.ground.findings import Finding

ALIKE = 0.01
"""mm: two hands whose edges differ by no more are one."""


def alike(left: Draft, right: Draft) -> bool:
    """Return whether two drafts of one garment are the same within 0.01 mm."""
    if [p.name for p in left.pieces] != [p.name for p in right.pieces]:
        return False
    return all(
        [e.name for e in a.edges] == [e.name for e in b.edges]
        and all(abs(x.length - y.length) <= ALIKE for x, y in zip(a.edges, b.edges, strict=True))
        for a, b in zip(left.pieces, right.pieces, strict=True)
    )


def both_hands(left: Draft, right: Draft) -> Draft:
    """Return the draft with a left and a right copy of every piece, sewn along centre folds."""
    folds = [(p, p.fold_edge.name) for p in left.pieces if p.fold_edge and not p.hand]
    centres = tuple(
        Seam(
            f"centre {p.name}",
            ((_named(p.name, "left"), edge),),
            ((_named(p.name, "right"), edge),),
            kind=_centre_of(p.role),
        )
        for p, edge in folds
    )
    girths = _girths(left.girths, right.girths)
    both = _handed(left, "left") + _handed(right, "right")
    said = Finding(
        "two sides",
        "note",
        "both hands",
        None,
        None,
        "The two sides of this body differ: every piece is drafted once for the left and once for the "
        "right, named by hand. Mark each piece as soon as it is cut.",
    )
    return replace(both, seams=both.seams + centres, girths=girths, findings=(said, *both.findings))


def _named(piece: str, side: str) -> str:
    """Return what the piece of one hand is called."""
    return f"{piece}-{side}"


def _centre_of(role: PieceRole) -> SeamKind:
    """Return what the seam is that joins the two hands of a piece."""
    if role in FACINGS:
        return SeamKind.FACING
    return SeamKind.MADE_UP if role in SMALL else SeamKind.CENTRE


def _handed(draft: Draft, side: str) -> Draft:
    """Return the draft of one hand: pieces renamed, and for the right mirrored."""
    draft = _own(draft, side)
    single = {piece.name for piece in draft.pieces if piece.hand}

    def ref(old: EdgeRef) -> EdgeRef:
        piece = draft[old[0]]
        edge = piece[old[1]]
        return _named(old[0], side), (edge.mirrored() if side == "right" else edge).name

    def chain(refs: tuple[EdgeRef, ...]) -> tuple[EdgeRef, ...]:
        named = tuple(ref(r) for r in refs)
        return tuple(reversed(named)) if side == "right" else named

    return Draft(
        tuple(_piece(piece, side) for piece in draft.pieces),
        tuple(_seam(draft, seam, side, chain(seam.a), chain(seam.b)) for seam in draft.seams),
        girths=(),
        findings=tuple(replace(f, where=f"{f.where} {side}") for f in draft.findings),
        facts={f"{name}_{side}": value for name, value in draft.facts.items()},
        chains={f"{name}_{side}": chain(refs) for name, refs in draft.chains.items()},
        notions=tuple(replace(_notion(n, side, n.piece in single), edges=chain(n.edges)) for n in draft.notions),
    )


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


def _piece(piece: Piece, side: str) -> Piece:
    def named(names: tuple[str, ...]) -> tuple[str, ...]:
        return tuple(_named(name, side) for name in names)

    marks = tuple(replace(m, piece=_named(m.piece, side)) if m.piece else m for m in piece.placements)
    piece = replace(
        piece,
        name=_named(piece.name, side),
        base=piece.name,
        stiffens=named(piece.stiffens),
        lines=named(piece.lines),
        placements=marks,
    )
    if piece.hand:
        return piece
    hand = piece.mirrored() if side == "right" else piece
    edges = tuple(replace(e, kind=EdgeKind.SEAM) if e.kind is EdgeKind.FOLD else e for e in hand.edges)
    return replace(hand, hand=side, pair=False, edges=edges)


def _notion(notion: Notion, side: str, only: bool) -> Notion:
    """One hand's half of what both need; an odd one goes to the left."""
    piece = _named(notion.piece, side) if notion.piece else ""
    notion = replace(notion, where=f"{notion.where} {side}", piece=piece)
    if only:
        return notion
    count = (notion.count + 1) // 2 if side == "left" else notion.count // 2
    return replace(notion, count=count)


def _seam(draft: Draft, seam: Seam, side: str, a: tuple[EdgeRef, ...], b: tuple[EdgeRef, ...]) -> Seam:
    named = replace(seam, name=f"{seam.name} {side}", a=a, b=b)
    if side == "left":
        return named
    length_a = sum(draft.edge(r).length for r in seam.a)
    length_b = sum(draft.edge(r).length for r in seam.b)
    ends: tuple[Corner, Corner] = (seam.end, seam.start)
    eased = seam.eased and (length_a - seam.eased[1], length_a - seam.eased[0])
    notches = tuple(replace(n, a=length_a - n.a, b=length_b - n.b) for n in reversed(seam.notches))
    return replace(named, start=ends[0], end=ends[1], eased=eased, notches=notches)


def _girths(left: tuple[Girth, ...], right: tuple[Girth, ...]) -> tuple[Girth, ...]:
    """A limb's girth stands once a side; one round the body once, the mean of its two halves."""
    found = []
    for a, b in zip(left, right, strict=True):
        if a.limb:
            found += [replace(a, side="left"), replace(b, side="right")]
        else:
            found.append(
                replace(
                    a,
                    body=(a.body + b.body) / 2,
                    asked_ease=(a.asked_ease + b.asked_ease) / 2,
                    settled_ease=(a.settled_ease + b.settled_ease) / 2,
                )
            )
    return tuple(found)
