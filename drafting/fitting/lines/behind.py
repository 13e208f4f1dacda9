"""What lies behind a piece follows it: a facing or a lining is moved as the cloth in front of it.

A second layer is drawn as it lies or turned over. Each of its corners that lies on the outline in front
goes where that place of the outline goes; an edge between two such corners of one edge is that edge again.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
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
    """Return every piece that lies behind one that was moved, moved with it.

    What ends on another second layer, as a lining does on a facing, goes along with that one there.
    """
    lying: dict[str, dict[str, Reshaped]] = {}
    turned = {}
    for piece in draft.pieces:
        name = next((name for name in (*piece.lines, *piece.stiffens) if name in found), None)
        if name is not None and piece.name not in found:
            front = found[name]
            turned[piece.name] = _shared(piece.mirrored(), front.before) > _shared(piece, front.before)
            as_lies = piece.mirrored() if turned[piece.name] else piece
            lying.setdefault(name, {})[piece.name] = _moved(as_lies, (front,))
    behind = {}
    for name, layers in lying.items():
        for own, one in layers.items():
            others = [other for other_name, other in layers.items() if other_name != own]
            moved = (
                _moved(one.before, (found[name], *others)) if _ends_on(one.before, found[name], others) else one
            )
            behind[own] = _turned_back(moved, draft[own]) if turned[own] else moved
    return behind


def _ends_on(piece: Piece, front: Reshaped, others: Sequence[Reshaped]) -> bool:
    """Say whether a corner of a layer lies on another layer, and not on the outline in front."""
    inside = [edge.path.start for edge in piece.edges if _on((front,), edge.path.start) is None]
    return any(_on(others, corner) is not None for corner in inside)


def _turned_back(back: Reshaped, piece: Piece) -> Reshaped:
    """Return a layer that was moved as it lies turned over, as it is drawn."""
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
    return sum(_on_piece(front, edge.path.start) is not None for edge in piece.edges)


def _on_piece(front: Piece, point: complex) -> tuple[str, float] | None:
    for edge in front.edges:
        gap, at = on_path(edge.path, point)
        if gap <= TOUCHES:
            return edge.name, at
    return None


def _on(moved: Sequence[Reshaped], point: complex) -> complex | None:
    """Return where a point has come to that lies on the outline of one of these; None where it lies on none."""
    for one in moved:
        at = _on_piece(one.before, point)
        if at is not None:
            return one.point(*at)
    return None


def _moved(piece: Piece, fronts: Sequence[Reshaped]) -> Reshaped:
    """Return a layer moved with the first of these that each of its corners lies on."""
    front = fronts[0]
    places = [_on(fronts, edge.path.start) for edge in piece.edges]
    corners = {
        edge.name: place - edge.path.start
        for edge, place in zip(piece.edges, places, strict=True)
        if place is not None
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
