"""Slash and spread: fullness let into one edge of a piece while another, the pivot, keeps its length.

As if the piece were cut n times from the edge to the pivot and each cut opened by the same amount;
the lines are bent evenly, so that there is nothing to smooth. Sides, corners, darts and notches
along the other edges stay as they are. An edge that is sewn to a partner is gathered back to what
it was.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from drafting.alter.fan import edge_across, fanned, in_order
from drafting.alter.girths import fuller_girth
from drafting.draft.draft import Draft, EdgeRef, Seam, SeamNotch
from drafting.draft.named import edge_named, piece_named
from drafting.draft.piece import Piece
from drafting.draft.roles import NotchKind
from drafting.fabric import Fabric
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding
from drafting.ground.lengths import angle_said, told
from drafting.shaping.flare.fullness import QUARTERS, bulk_said, flat_length, quarter_marks, ratio_of_percentage


@dataclass(frozen=True)
class Wish:
    """One fullness asked of an edge, mm: `amount` let in over `cuts` cuts from the `pivot` edges.

    Without an `amount`: as much as makes the edge `flat` mm long, or `ratio` times as long as it is.
    `gather` pulls it up again to what it was. `pivot` "" takes what lies across; else names, a comma
    between.
    """

    edge: EdgeRef
    pivot: str = ""
    cuts: int = 6
    amount: float | None = None
    ratio: float | None = None
    gather: bool = False
    flat: float | None = None

    def added(self, length: float) -> float:
        """Return what is let into an edge of this length, mm."""
        if self.amount is not None:
            return self.amount
        return (self.flat if self.flat is not None else (self.ratio or 1.0) * length) - length


def fuller(draft: Draft, wish: Wish, fabric: Fabric | None = None) -> Draft:
    """Return the draft with the wished fullness; every seam still walks.

    A piece that was drafted once for each hand is opened on both. Raises `DraftError` where piece
    or edge is not there, or cannot be opened so.
    """
    name, edge = wish.edge
    hands = [p.name for p in draft.pieces if name in (p.name, p.base)]
    for hand in hands or [name]:
        edge_named(piece_named(draft, hand), edge)
    for hand in hands:
        draft = _fuller(draft, replace(wish, edge=(hand, edge)), fabric)
    return draft


def _fuller(draft: Draft, wish: Wish, fabric: Fabric | None) -> Draft:
    piece, edge = draft[wish.edge[0]], draft.edge(wish.edge)
    named = tuple(part.strip() for part in wish.pivot.split(",") if part.strip())
    pivot = named or edge_across(piece, edge.name)
    amount = wish.added(edge.length)
    if not wish.gather:
        return flared(draft, wish.edge, pivot, cuts=wish.cuts, each=amount / wish.cuts)
    thickness = fabric.thickness if fabric else None
    return filled(draft, wish.edge, pivot, flat=edge.length + amount, thickness=thickness)


def flared(draft: Draft, edge: EdgeRef, pivot: Sequence[str], *, cuts: int, each: float) -> Draft:
    """Return the draft with `edge` = (piece, edge) grown by `cuts` times `each` mm.

    `pivot` names neighbouring edges of the same piece that keep their lengths. Raises `DraftError`
    for edges that cannot be opened so.
    """
    if cuts < 1 or each < 0:
        raise DraftError(
            "slash and spread takes at least one cut, each of nothing or more",
            value=f"{cuts} cuts of {told(each, 'fine')}",
        )
    return _opened(draft, edge, pivot, cuts * each, f"{cuts} cuts opened {told(each)} each")


def filled(
    draft: Draft,
    edge: EdgeRef,
    pivot: Sequence[str],
    *,
    ratio: float | None = None,
    flat: float | None = None,
    percent: float | None = None,
    thickness: float | None = None,
) -> Draft:
    """Return the draft with `edge` made wider and gathered up again to what it was.

    Exactly one of: `ratio` drawn over sewn, `flat` drawn length (mm), theatre fullness in `percent`
    (100: as much again). `thickness` of the cloth (mm) lets the bulk at the seam be judged.
    """
    if sum(wish is not None for wish in (ratio, flat, percent)) != 1:
        raise DraftError("gathers are asked for by a ratio, a flat length or a percentage: one of them")
    sewn = draft.edge(edge).sewn_length
    if percent is not None:
        ratio = ratio_of_percentage(percent)
    wide = flat if flat is not None else flat_length(sewn, ratio or 1.0)
    added = wide - draft.edge(edge).length
    if added < 0:
        raise DraftError(
            f"{' '.join(edge)} is drawn wider than that already",
            value=told(wide),
            reach=f"{told(draft.edge(edge).length, 'least')} or more",
        )
    if added > 0:
        draft = _opened(draft, edge, pivot, added, f"{wide / sewn:.2f} to one")
    draft = _pulled_up(draft, edge, sewn)
    said = bulk_said(" ".join(edge), wide / sewn, thickness)
    return replace(draft, findings=(*draft.findings, *said))


def _opened(draft: Draft, ref: EdgeRef, pivot: Sequence[str], added: float, how: str) -> Draft:
    piece = draft[ref[0]]
    if added == 0:
        return draft
    if any(seam.eased and ref in (*seam.a, *seam.b) for seam in draft.seams):
        raise DraftError(
            f"{' '.join(ref)} is eased in between its notches, and fullness must stay between them",
            turn="puff a sleeve's cap with puff_width and puff_height; open the edge across from it",
        )
    sewn = draft.edge(ref).sewn_length
    within = _above_notches(draft, piece, in_order(piece, ref[1], pivot))
    new, turned = fanned(piece, ref[1], pivot, added, within)
    opened = replace(draft.with_pieces([new]), girths=tuple(fuller_girth(g, piece, new) for g in draft.girths))
    opened = replace(opened, seams=tuple(_moved(s, draft, opened) for s in draft.seams))
    if any(ref in (*seam.a, *seam.b) for seam in draft.seams):
        opened = _pulled_up(opened, ref, sewn)
    said = Finding(
        "flare",
        "note",
        " ".join(ref),
        added,
        None,
        f"{_words(ref)} is {told(added)} longer ({how}) and {' and '.join(pivot).replace('_', ' ')} as "
        f"long as before; the piece is opened by {angle_said(turned)}.",
    )
    return replace(opened, findings=(*opened.findings, said))


def _above_notches(draft: Draft, piece: Piece, pivot: tuple[str, ...]) -> tuple[float, float]:
    """Return between which shares of the pivot cuts may start: in a sleeve's cap above its notches."""
    lengths = [piece[name].length for name in pivot]
    held: list[float] = []
    for k, name in enumerate(pivot):
        before = sum(lengths[:k])
        for seam in draft.seams:
            if seam.eased and seam.a == ((piece.name, name),):
                held += [before + seam.eased[0], before + seam.eased[1]]
    whole = sum(lengths)
    return (min(held) / whole, max(held) / whole) if held else (0.0, 1.0)


def _pulled_up(draft: Draft, ref: EdgeRef, sewn: float) -> Draft:
    """Return the draft with one edge gathered to `sewn` mm, quarters marked on it and its partner.

    Quarters face quarters (common practice): 20, 40 and 60 of 80 face 8, 16 and 24 of 32.
    """
    edge = draft.edge(ref)
    kept = [n for n in edge.notches if n.kind is not NotchKind.QUARTER]
    notches = tuple(sorted((*kept, *quarter_marks(edge.length)), key=lambda n: n.at))
    pulled = replace(edge, sewn=sewn, notches=notches)
    draft = draft.with_pieces([draft[ref[0]].with_edges(pulled)])
    return replace(draft, seams=tuple(_quartered(s, ref, draft) for s in draft.seams))


def _quartered(seam: Seam, ref: EdgeRef, draft: Draft) -> Seam:
    """Return the seam with facing quarter marks, where the edge is all of one side of it."""
    marked = any(n.kind is NotchKind.QUARTER for n in seam.notches)
    if (ref,) not in (seam.a, seam.b) or marked:
        return seam
    a, b = (sum(draft.edge(r).length for r in chain) for chain in (seam.a, seam.b))
    marks = [SeamNotch(f"quarter_{i}", q * a, q * b, kind=NotchKind.QUARTER) for i, q in enumerate(QUARTERS, 1)]
    return replace(seam, notches=tuple(sorted((*seam.notches, *marks), key=lambda n: n.a)))


def _moved(seam: Seam, old: Draft, new: Draft) -> Seam:
    """Return the seam with its notches at the same shares of edges that changed their lengths."""
    notches = tuple(
        replace(n, a=_place(seam.a, n.a, old, new), b=_place(seam.b, n.b, old, new)) for n in seam.notches
    )
    eased = seam.eased and (_place(seam.a, seam.eased[0], old, new), _place(seam.a, seam.eased[1], old, new))
    return replace(seam, notches=notches, eased=eased)


def _place(chain: tuple[EdgeRef, ...], at: float, old: Draft, new: Draft) -> float:
    passed = 0.0
    for ref in chain:
        was, now = old.edge(ref).length, new.edge(ref).length
        if at <= was + 1e-9 or ref == chain[-1]:
            return passed + at * now / was if now != was else passed + at
        at, passed = at - was, passed + now
    return at


def _words(ref: EdgeRef) -> str:
    text = " ".join(ref).replace("_", " ")
    return text[:1].upper() + text[1:]
