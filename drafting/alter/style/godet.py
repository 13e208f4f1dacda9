r"""Let a godet into a seam, from its open end up, or into a slash; its sides are as long as what it is sewn to.

It is a part of a circle about its tip: sides of one length, its hem square to them, its warp down its middle
(common practice). At a fold, or a seam between a left and a right, it is whole over the middle, half of it on
the fold. A slash takes a seam at its edge that runs out to nothing at its tip, so the piece loses that much:
the godet is wider by it.

        tip                      .
         .                      /|\
        / \   height           / | \    slash: two lines of stitching that meet in its tip
       /   \                  /  |  \
      '-._.-'  width      ---'   |   '---
"""

from __future__ import annotations

import math
from dataclasses import replace

from drafting.alter.style.godet_piece import Gap, hem_beside, let_in
from drafting.alter.style.places import RingSpot, spot_on, spot_point
from drafting.alter.style.rings import (
    Names,
    RingStretch,
    become,
    edge_part,
    free_name,
    named_apart,
    renamed_chains,
    run_between,
)
from drafting.draft.draft import Draft, EdgeRef, Seam
from drafting.draft.named import edge_named, piece_named
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole
from drafting.geometry import Path, line
from drafting.geometry.area import is_simple
from drafting.geometry.crossing import crossings
from drafting.ground import tolerances as tol
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.ground.names import name_in_words
from drafting.reading.style_made import GodetWish

WIDEST = 180.0
"""Degrees of a circle in one godet (ours: a wider one is cut as two)."""

SLASH_SEAM, SLASH_CUT = 10.0, 6.0
"""mm: how far from a slash its stitching begins at the edge, running out to nothing, and what of it is left on
either side as allowance (common practice: 6 to 10)."""

OPEN_ENDS = frozenset({EdgeKind.HEM, EdgeKind.FREE})
"""What an open end of a seam lies beside."""


def with_godet(draft: Draft, wish: GodetWish) -> Draft:
    """Return the draft with a godet in a seam or a slash; raises `DraftError` where it does not find room."""
    if wish.name and wish.name in draft:
        raise DraftError(f"there is a piece {wish.name} already", turn="give the new one another name")
    most = math.radians(WIDEST) * wish.height
    if not tol.LEAST_EDGE <= wish.width <= most:
        raise DraftError(
            "a godet cannot be so wide for its height",
            value=told(wish.width),
            reach=f"{told(tol.LEAST_EDGE, 'least')} to {told(most, 'most')}",
            turn="make it higher, or let in two",
        )
    return _slashed(draft, wish) if wish.at else _in_seam(draft, wish)


# --------------------------------------------------------------------------------------- into a seam


def _in_seam(draft: Draft, wish: GodetWish) -> Draft:
    piece = piece_named(draft, wish.piece)
    edge = edge_named(piece, wish.edge)
    if edge.kind is EdgeKind.FOLD:
        ends: list[EdgeRef] = [(piece.name, edge.name)]
        at_end = _opens_at(draft, wish, ends)[0]
        return _opened_fold(draft, wish, at_end)
    seam = next((s for s in draft.seams if (piece.name, edge.name) in (*s.a, *s.b)), None)
    if seam is None or edge.kind is EdgeKind.DART:
        raise DraftError(
            f"the {name_in_words(f'{piece.name}.{edge.name}')} is sewn to nothing",
            turn="name a seam's edge, or give piece and from, for a slash",
        )
    at_end, ends = _end_of_seam(draft, wish, seam)
    parted, below = draft, []
    for ref, last in zip(ends, (at_end, not at_end), strict=False):
        parted, new = _parted(parted, ref, wish.height, at_end=last)
        below.append(new)
    first, sides = draft[ends[0][0]], tuple(dict.fromkeys(below))
    gap = Gap(
        sides=sides if at_end else sides[::-1],
        length=wish.height,
        width=wish.width,
        like=hem_beside(draft, ends[0], at_end),
        pair=any(draft[name].both_hands for name, _ in ends),
        first=first,
        down=at_end,
    )
    shut = _without(next(s for s in parted.seams if s.name == seam.name), set(below))
    shut = replace(shut, end=None) if at_end else replace(shut, start=None)
    lengths = [sum(parted.edge(ref).length for ref in chain) for chain in (shut.a, shut.b)]
    taken = 0.0 if at_end else wish.height
    kept = [replace(n, a=n.a - taken, b=n.b - taken) for n in shut.notches]
    notches = tuple(n for n in kept if 0 <= n.a <= lengths[0] and 0 <= n.b <= lengths[1])
    shut = replace(shut, notches=notches)
    return let_in(
        replace(parted, seams=tuple(shut if s.name == seam.name else s for s in parted.seams)), wish, gap
    )


def _end_of_seam(draft: Draft, wish: GodetWish, seam: Seam) -> tuple[bool, list[EdgeRef]]:
    """Return whether a godet goes in at the end of chain a, and the last edge there of either chain."""
    found = []
    for at_end in (True, False):
        ends = list(dict.fromkeys([seam.a[-1 if at_end else 0], seam.b[-1 if at_end else 0]]))
        opens = _opens(draft, ends[0], at_end) and (len(ends) == 1 or _opens(draft, ends[1], not at_end))
        if opens and (not wish.beside or hem_beside(draft, ends[0], at_end).name == wish.beside):
            found.append((at_end, ends))
    named = [one for one in found if (wish.piece, wish.edge) in one[1]]
    found = sorted(named or found, key=lambda one: _at_waist(draft, one[1][0], one[0]))
    if not found:
        raise DraftError(
            f"the seam {seam.name} has no open end at the {name_in_words(f'{wish.piece}.{wish.edge}')}",
            turn="let it into a seam that ends at a hem, or into a slash",
        )
    return found[0]


def _opens_at(draft: Draft, wish: GodetWish, ends: list[EdgeRef]) -> list[bool]:
    found = [at_end for at_end in (True, False) if _opens(draft, ends[0], at_end)]
    if not found:
        raise DraftError(f"the fold of the {wish.piece} has no open end", turn="let it into a seam")
    return sorted(found, key=lambda at_end: _at_waist(draft, ends[0], at_end))


def _at_waist(draft: Draft, ref: EdgeRef, at_end: bool) -> bool:
    """Return whether what lies beside an end is a waist, as a casing: a godet goes in at the hem instead."""
    return hem_beside(draft, ref, at_end).role is EdgeRole.WAIST


def _opens(draft: Draft, ref: EdgeRef, at_end: bool) -> bool:
    beside = hem_beside(draft, ref, at_end)
    sewn = any((ref[0], beside.name) in (*seam.a, *seam.b) for seam in draft.seams)
    return beside.kind in OPEN_ENDS and not sewn


def _parted(draft: Draft, ref: EdgeRef, height: float, *, at_end: bool) -> tuple[Draft, EdgeRef]:
    """Return the draft with an edge parted `height` mm from its open end, and the part that lies there."""
    piece = draft[ref[0]]
    edge = piece[ref[1]]
    if edge.sewn is not None or edge.length - height < tol.LEAST_EDGE:
        raise DraftError(
            f"the {name_in_words('.'.join(ref))} is gathered, or too short for this godet",
            value=told(height),
            reach=f"up to {told(max(edge.length - tol.LEAST_EDGE, 0.0), 'most')}",
        )
    cut = edge.length - height if at_end else height
    upper, lower = edge_part(edge, 0.0, cut), edge_part(edge, cut, edge.length)
    if not at_end:
        upper, lower = lower, upper
    lower = replace(
        lower, name=free_name(f"{edge.name}_godet", (e.name for e in piece.edges)), role=EdgeRole.GODET_SIDE
    )
    run = (upper, lower) if at_end else (lower, upper)
    at = piece.index(edge.name)
    made = replace(piece, edges=(*piece.edges[:at], *run, *piece.edges[at + 1 :]))
    names: Names = {edge.name: tuple((piece.name, one.name) for one in run)}
    return renamed_chains(draft.with_pieces([made]), piece.name, names), (piece.name, lower.name)


def _without(seam: Seam, refs: set[EdgeRef]) -> Seam:
    return replace(
        seam, a=tuple(ref for ref in seam.a if ref not in refs), b=tuple(ref for ref in seam.b if ref not in refs)
    )


def _opened_fold(draft: Draft, wish: GodetWish, at_end: bool) -> Draft:
    """Return the draft with a fold slit from its open end, and half a godet on a fold of its own sewn in."""
    parted, ref = _parted(draft, (wish.piece, wish.edge), wish.height, at_end=at_end)
    piece = parted[wish.piece]
    lower = replace(piece[ref[1]], kind=EdgeKind.SEAM)
    gap = Gap(
        sides=(ref,),
        length=wish.height,
        width=wish.width,
        like=hem_beside(draft, (wish.piece, wish.edge), at_end),
        pair=False,
        first=piece,
        down=at_end,
    )
    return let_in(parted.with_pieces([piece.with_edges(lower)]), wish, gap)


# -------------------------------------------------------------------------------------- into a slash


def slash_line(piece: Piece, wish: GodetWish) -> Path:
    """Return the line along which a piece is slashed; raises `DraftError` where it runs off or over something."""
    assert wish.at is not None
    spot = spot_on(piece, wish.at)
    edge = piece.edges[spot.index]
    if not SLASH_SEAM + tol.LEAST_EDGE < spot.at < edge.length - SLASH_SEAM - tol.LEAST_EDGE:
        raise DraftError(
            f"a slash needs cloth on both sides of it on the {piece.name}'s {edge.name}",
            value=told(spot.at),
            reach=f"{told(SLASH_SEAM + tol.LEAST_EDGE, 'least')} to "
            f"{told(edge.length - SLASH_SEAM - tol.LEAST_EDGE, 'most')}",
        )
    foot = spot_point(piece, spot)
    path = line(foot, foot + 1j * edge.path.tangent(spot.at) * wish.height)
    legs = [leg for dart in piece.darts for leg in (dart.leg_a, dart.leg_b)]
    crossed = [c for one in (*(e.path for e in piece.edges), *legs) for c in crossings(path, one)]
    if any(abs(c.point - foot) > SLASH_SEAM for c in crossed):
        raise DraftError(
            f"the slash would run off the {piece.name}, or over a dart",
            value=told(wish.height),
            turn="make it shorter, or begin elsewhere",
        )
    return path


def _slashed(draft: Draft, wish: GodetWish) -> Draft:
    piece = piece_named(draft, wish.piece)
    assert wish.at is not None
    spot, path = spot_on(piece, wish.at), slash_line(piece, wish)
    edge = piece.edges[spot.index]
    if edge.kind not in OPEN_ENDS or any((piece.name, edge.name) in (*s.a, *s.b) for s in draft.seams):
        raise DraftError(
            f"the {piece.name}'s {edge.name} is sewn to something: a godet would hang in a seam",
            turn="slash from a hem, or cut the piece and let it into the new seam",
        )
    begin, end = (RingSpot(spot.index, spot.at + by) for by in (-SLASH_SEAM, SLASH_SEAM))
    run = run_between(piece, end, begin)
    a, b = run[-1].edge.path.end, run[0].edge.path.start
    # the tip stands square over the middle of the mouth, so both sides are of one length
    middle = (a + b) / 2
    tip = middle + 1j * (b - a) / abs(b - a) * math.sqrt(wish.height**2 - abs(b - a) ** 2 / 4)
    named = named_apart([stretch.edge for stretch in run])
    taken = [e.name for e in named]
    sides = [
        Edge(free_name(n, taken), p, allowance=SLASH_CUT, role=EdgeRole.GODET_SIDE) for n, p in _legs(a, tip, b)
    ]
    made = replace(piece, edges=(*named, *sides))
    if not is_simple(made.outline) or abs(path.end - tip) > wish.height / 4:
        raise DraftError(
            f"the {piece.name} has no room for this slash", turn="make it shorter, or begin elsewhere"
        )
    names = become([(piece.name, list[RingStretch](run), named)])
    found = renamed_chains(draft.with_pieces([made]), piece.name, names)
    refs = tuple((piece.name, side.name) for side in sides[::-1])
    pair = piece.both_hands
    width = wish.width + abs(b - a)
    gap = Gap(sides=refs, length=wish.height, width=width, like=edge, pair=pair, first=piece)
    return let_in(found, wish, gap)


def _legs(a: complex, tip: complex, b: complex) -> tuple[tuple[str, Path], tuple[str, Path]]:
    return ("slash_in", line(a, tip)), ("slash_out", line(tip, b))
