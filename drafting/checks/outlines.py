"""Is every outline a simple ring, anticlockwise, square at folds, without slivers?"""

from __future__ import annotations

from collections.abc import Iterator

from drafting.checks.words import capital, degrees, edge_words, mm, plain, verdict
from drafting.draft.draft import Draft
from drafting.draft.piece import EdgeKind, Piece
from drafting.draft.roles import EdgeRole
from drafting.geometry.area import is_simple
from drafting.ground import tolerances as tol
from drafting.ground.findings import Finding


def outlines_simple(draft: Draft) -> Iterator[Finding]:
    """Does no outline cross or touch itself?"""
    for piece in draft.pieces:
        holds = is_simple(piece.outline)
        said = f"{capital(plain(piece.name))}: one closed outline that never crosses itself"
        if not holds:
            said = f"{capital(plain(piece.name))}: the outline crosses or touches itself"
        yield Finding("outline", "ok" if holds else "error", piece.name, None, None, said)


def outlines_anticlockwise(draft: Draft) -> Iterator[Finding]:
    """Does every outline hold cloth, with the inside on the left?"""
    for piece in draft.pieces:
        if piece.area <= 0:
            said = (
                f"{capital(plain(piece.name))}: the outline runs clockwise or holds no cloth "
                f"({piece.area:.0f} mm2)"
            )
            yield Finding("area", "error", piece.name, piece.area, "above 0", said)


def edges_long_enough(draft: Draft, scale: float) -> Iterator[Finding]:
    """Is every edge at least 3 mm (adult scale) long, unless it is meant to be short?"""
    least = tol.LEAST_EDGE * scale
    for piece in draft.pieces:
        for edge in piece.edges:
            if edge.length < least - tol.EXACT and edge.role is not EdgeRole.SHORT:
                name = capital(edge_words((piece.name, edge.name)))
                said = f"{name}: only {mm(edge.length)} long, {mm(least)} is the least"
                where = f"{piece.name}.{edge.name}"
                yield Finding("edge length", "error", where, edge.length, least, said)


def folds_square(draft: Draft) -> Iterator[Finding]:
    """Do the lines that cross a fold or centre line leave it square, so that no point is there?"""
    for piece in draft.pieces:
        for index, edge in enumerate(piece.edges):
            if edge.kind is EdgeKind.FOLD or edge.role is EdgeRole.CENTRE:
                yield from _fold(piece, index)


def _fold(piece: Piece, index: int) -> Iterator[Finding]:
    count, fold = len(piece.edges), edge_words((piece.name, piece.edges[index].name))
    for neighbour, corner in ((index - 1, index), ((index + 1) % count, (index + 1) % count)):
        crossing = piece.edges[neighbour]
        if crossing.kind is EdgeKind.DART:
            continue  # a dart on the fold: its corner is judged with the dart closed
        runs_on = crossing.role in (EdgeRole.CENTRE, EdgeRole.SLIT)
        if runs_on and EdgeKind.OPENING in (crossing.kind, piece.edges[index].kind):
            continue  # the centre goes on: the seam below an opening, a slit below the seam
        if crossing.role is EdgeRole.GODET_SIDE:
            continue  # a slit for a godet runs on, and the godet's tip is a point
        angle = piece.corner(corner)
        if piece.edges[index].kind is EdgeKind.OPENING and abs(angle - 180) <= tol.SQUARE_ANGLE:
            continue  # a front that opens, its corner rounded: nothing of the other hand meets it there
        holds = abs(angle - 90) <= tol.SQUARE_ANGLE
        said = f"{capital(fold)}: the {plain(crossing.name)} meets it at {degrees(angle)}"
        if not holds:
            said += ", so the whole piece has a point there; 90 is wanted within 1"
        yield verdict("fold corner", holds, f"{piece.name}.{crossing.name}", angle, 90.0, said)
