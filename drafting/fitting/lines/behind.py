"""What lies behind a piece follows it: a facing or a lining is moved as the cloth in front of it.

A second layer is drawn as it lies or turned over. Each of its corners that lies on the outline in front
goes where that place of the outline goes; an edge between two such corners of one edge is that edge again.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from drafting.draft.draft import Draft
from drafting.draft.piece import Piece
from drafting.fitting.lines.on_path import on_path
from drafting.fitting.lines.shift import Reshaped, Shift, reshaped
from drafting.geometry import Path
from drafting.geometry.crossing import ends_moved

TOUCHES = 0.05
"""mm: a corner that is no farther from the outline in front lies on it."""


def brought_along(draft: Draft, found: Mapping[str, Reshaped]) -> dict[str, Reshaped]:
    """Return every piece that lies behind one that was moved, moved with it."""
    behind = {}
    for piece in draft.pieces:
        front = next((name for name in (*piece.lines, *piece.stiffens) if name in found), None)
        if front is not None and piece.name not in found:
            behind[piece.name] = _carried(piece, found[front])
    return behind


def _carried(piece: Piece, front: Reshaped) -> Reshaped:
    turned = _shared(piece.mirrored(), front.before) > _shared(piece, front.before)
    if not turned:
        return _moved(piece, front)
    back = _moved(piece.mirrored(), front)
    after = _with_own_names(back.after.mirrored(), piece)
    ways = {
        edge.name: replace(back.ways[edge.name], path=back.ways[edge.name].path.mirrored().reversed())
        for edge in piece.edges
    }
    return Reshaped(piece, after, ways)


def _with_own_names(piece: Piece, old: Piece) -> Piece:
    """Return a piece mirrored twice with its ring starting where it did."""
    at = piece.index(old.edges[0].name)
    return replace(piece, edges=(*piece.edges[at:], *piece.edges[:at]))


def _shared(piece: Piece, front: Piece) -> int:
    """Return how many corners of a second layer lie on the outline in front."""
    return sum(_on(front, edge.path.start) is not None for edge in piece.edges)


def _on(front: Piece, point: complex) -> tuple[str, float] | None:
    for edge in front.edges:
        gap, at = on_path(edge.path, point)
        if gap <= TOUCHES:
            return edge.name, at
    return None


def _moved(piece: Piece, front: Reshaped) -> Reshaped:
    places = [_on(front.before, edge.path.start) for edge in piece.edges]
    corners = {
        edge.name: front.point(*at) - edge.path.start
        for edge, at in zip(piece.edges, places, strict=True)
        if at is not None
    }
    found = reshaped(piece, (Shift(piece.name, corners),))
    ways, edges = {**found.ways}, []
    for edge in found.after.edges:
        along = _along(front, piece[edge.name].path)
        if along is None:
            edges.append(edge)
            continue
        name, start, end = along
        ways[edge.name] = replace(ways[edge.name], path=front.ways[name].path.part(start, end))
        edges.append(
            replace(edge, path=front.after[name].path.part(front.place(name, start), front.place(name, end)))
        )
    return replace(found, after=_closed(replace(found.after, edges=tuple(edges))), ways=ways)


def _along(front: Reshaped, path: Path) -> tuple[str, float, float] | None:
    """Return the edge in front along which a path runs, and from where to where; None where it runs along none."""
    middle = path.at(path.length / 2)
    for edge in front.before.edges:
        (gap, start), (off, end) = on_path(edge.path, path.start), on_path(edge.path, path.end)
        if max(gap, off, on_path(edge.path, middle)[0]) <= TOUCHES and end > start:
            whole = end - start > edge.length - TOUCHES
            return (edge.name, 0.0, front.ways[edge.name].path.length) if whole else (edge.name, start, end)
    return None


def _closed(piece: Piece) -> Piece:
    """Return a piece whose edges meet to the last digit: each starts where the one before ends."""
    ends = [edge.path.end for edge in piece.edges]
    edges = (
        replace(edge, path=ends_moved(edge.path, start=ends[at - 1])) if edge.path.start != ends[at - 1] else edge
        for at, edge in enumerate(piece.edges)
    )
    return replace(piece, edges=tuple(edges))
