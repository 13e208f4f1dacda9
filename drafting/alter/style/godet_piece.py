"""A godet as a piece, sewn to the sides of the gap that it closes."""

from __future__ import annotations

import cmath
import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from drafting.alter.style.rings import free_name
from drafting.draft.draft import Draft, EdgeRef, Seam
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole, Half, PieceRole, SeamKind
from drafting.geometry import line
from drafting.geometry.arc import arc
from drafting.reading.style_made import GodetWish


@dataclass(frozen=True)
class Gap:
    """What a godet is sewn into: the edge that runs down to its hem, then the one that runs up from it (one of the
    two where it is whole over the middle, `down` says which), their length, what its hem adds, the hem that its
    own is like, whether left and right have one each, and the piece that it hangs in."""

    sides: tuple[EdgeRef, ...]
    length: float
    width: float
    like: Edge
    pair: bool
    first: Piece
    down: bool = True


def let_in(draft: Draft, wish: GodetWish, gap: Gap) -> Draft:
    """Return the draft with the godet that closes a gap, sewn to its sides, its hem part of what runs on there."""
    piece = _drawn(draft, wish, gap)
    own = [edge.name for edge in piece.edges if edge.role is EdgeRole.GODET_SIDE]
    own = own[::-1] if len(gap.sides) == 1 and not gap.down else own
    taken = [s.name for s in draft.seams]
    seams = []
    for side, ref in zip(own, gap.sides, strict=True):
        name = free_name(f"{piece.name} {side}".replace("-", " ").replace("_", " "), taken)
        taken.append(name)
        seams.append(Seam(name, ((piece.name, side),), (ref,), start=None, end=None, kind=SeamKind.PANEL))
    chains = {name: tuple(_run_on(draft, refs, gap, (piece.name, "hem"))) for name, refs in draft.chains.items()}
    return replace(draft, pieces=(*draft.pieces, piece), seams=(*draft.seams, *seams), chains=chains)


def _drawn(draft: Draft, wish: GodetWish, gap: Gap) -> Piece:
    """Return the godet, its tip up, its middle upright; half of it on the fold where its gap has one side."""
    name = free_name(wish.name or f"{wish.piece}-godet", (piece.name for piece in draft.pieces))
    half = len(gap.sides) == 1
    angle = gap.width / gap.length / (2 if half else 1)
    start = cmath.rect(gap.length, -math.pi / 2 - (0.0 if half else angle / 2))
    hem = arc(0j, start, math.degrees(angle))
    up = Edge("side", line(hem.end, 0j), role=EdgeRole.GODET_SIDE)
    down = Edge("side_2", line(0j, hem.start), role=EdgeRole.GODET_SIDE)
    if half:
        down = replace(down, name="centre", kind=EdgeKind.FOLD, role=EdgeRole.CENTRE)
    like = replace(
        gap.like, name="hem", path=hem, notches=(), sewn=None, half=Half.NONE, hand="", base="", twin=""
    )
    piece = Piece(
        name,
        (like, up, down),
        pair=gap.pair and not half,
        hand=gap.first.hand,
        title=name.replace("-", " ").capitalize(),
        copies=gap.first.copies,
        role=PieceRole.GODET,
    )
    return piece if gap.down or not half else piece.mirrored()


def _run_on(draft: Draft, refs: tuple[EdgeRef, ...], gap: Gap, hem: EdgeRef) -> Iterator[EdgeRef]:
    """Yield the edges of a chain, with the godet's hem between those that lay side by side at its gap."""
    down, up = gap.sides[0], gap.sides[-1]
    after = (down[0], hem_beside(draft, down, True).name)
    before = (up[0], hem_beside(draft, up, False).name)
    whole = len(gap.sides) == 2
    for at, ref in enumerate(refs):
        if ref == after and ((whole and at and refs[at - 1] == before) or (not whole and gap.down)):
            yield hem
        yield ref
        if ref == before and not whole and not gap.down:
            yield hem


def hem_beside(draft: Draft, ref: EdgeRef, at_end: bool) -> Edge:
    """Return what lies beside the open end of a seam's edge."""
    piece = draft[ref[0]]
    return piece.edges[(piece.index(ref[1]) + (1 if at_end else -1)) % len(piece.edges)]
