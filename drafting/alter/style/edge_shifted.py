"""Move an edge by amounts at its two ends; the edges beside it grow or are cut off, and keep their line.

What runs straight on from it, as the hem of a button stand and of a facing from a front's, is carried along.
"""

from __future__ import annotations

from dataclasses import replace

from drafting.draft.draft import Draft
from drafting.draft.named import edge_named, piece_named
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.geometry import Path
from drafting.geometry.area import is_simple
from drafting.geometry.crossing import extended
from drafting.geometry.curve import Cubic
from drafting.geometry.path import cubics
from drafting.ground import tolerances as tol
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.reading.style import ShiftWish

STRAIGHT_ON = 20.0
"""Degrees off 180 within which an edge of the same kind runs straight on from another (ours)."""


def edge_shifted(draft: Draft, wish: ShiftWish) -> Draft:
    """Return the draft with an edge moved out (or in, where negative) by so many mm at its start and its end.

    It ends as square to its neighbours as before. Raises `DraftError` for an edge that is sewn to another, where
    a neighbour that would change its length is sewn to one, or is too short.
    """
    piece = piece_named(draft, wish.piece)
    edge = edge_named(piece, wish.edge)
    if _partner(draft, piece, edge) or edge.kind is EdgeKind.DART:
        raise DraftError(
            f"the {piece.name}'s {edge.name} is sewn to another edge, which would no longer fit it",
            turn="move an edge that is sewn to nothing, such as a hem",
        )
    (before, *early), (after, *late) = (_run(draft, piece, edge, step)[::-1] for step in (-1, 1))
    for beside, amount in ((before, wish.start), (after, wish.end)):
        _refuse(draft, piece, beside, amount)
    first, second = _grown(before, wish.start, at_end=True), _grown(after, wish.end, at_end=False)
    a, b = first.path.end - before.path.end, second.path.start - after.path.start
    carried = [replace(one, path=one.path.moved(by)) for run, by in ((early, a), (late, b)) for one in run]
    made = piece.with_edges(first, replace(edge, path=_between(edge.path, a, b)), second, *carried)
    if not is_simple(made.outline):
        raise DraftError(f"the {piece.name} would lie over itself with its {edge.name} there", turn="move it less")
    return draft.with_pieces([made])


def _run(draft: Draft, piece: Piece, edge: Edge, step: int) -> list[Edge]:
    """Return what lies beside an edge, going on by `step`: what runs straight on from it, and one more."""
    at, found = piece.index(edge.name), []
    while True:
        at = (at + step) % len(piece.edges)
        found.append(piece.edges[at])
        corner = piece.corner((at + 1) % len(piece.edges) if step < 0 else at)
        on = found[-1].kind is edge.kind and abs(corner - 180) < STRAIGHT_ON
        if not on or _partner(draft, piece, found[-1]) or len(found) > len(piece.edges) - 3:
            return found


def _partner(draft: Draft, piece: Piece, edge: Edge) -> bool:
    """Return whether an edge is sewn to any but its own mirror image."""
    ref = piece.name, edge.name
    return any(ref in (*seam.a, *seam.b) and seam.a != seam.b for seam in draft.seams)


def _refuse(draft: Draft, piece: Piece, beside: Edge, amount: float) -> None:
    if amount and (_partner(draft, piece, beside) or beside.kind is EdgeKind.DART):
        raise DraftError(
            f"the {piece.name}'s {beside.name} would change its length, and is sewn to another edge",
            value=told(amount),
            turn="leave this end as it is, and move the other",
        )
    if beside.length + amount < tol.LEAST_EDGE:
        raise DraftError(
            f"nothing would be left of the {piece.name}'s {beside.name}",
            value=told(amount),
            reach=f"{told(tol.LEAST_EDGE - beside.length, 'least')} or more",
        )


def _grown(edge: Edge, amount: float, *, at_end: bool) -> Edge:
    """Return an edge longer at one end, straight on, or cut off there."""
    if not amount:
        return edge
    if amount > 0:
        path = extended(edge.path, before=0.0 if at_end else amount, after=amount if at_end else 0.0)
    else:
        path = edge.path.split(edge.length + amount)[0] if at_end else edge.path.split(-amount)[1]
    shift = 0.0 if at_end else amount
    notches = tuple(replace(n, at=n.at + shift) for n in edge.notches if 0 <= n.at + shift <= path.length)
    return replace(edge, path=path, notches=notches)


def _between(path: Path, start: complex, end: complex) -> Path:
    """Return the path with its ends moved, their directions kept, and what lies between carried along evenly."""
    bits, last = cubics(path), len(cubics(path)) - 1
    chord = path.end - path.start

    def carried(point: complex) -> complex:
        share = min(max(((point - path.start) / chord).real, 0.0), 1.0)
        return point + start + (end - start) * share * share * (3 - 2 * share)

    moved = []
    for number, bit in enumerate(bits):
        points = [carried(point) for point in bit]
        if number == 0:
            points[:2] = [bit.a + start, bit.b + start]
        if number == last:
            points[2:] = [bit.c + end, bit.d + end]
        moved.append(Cubic(*points))
    return Path(tuple(moved))
