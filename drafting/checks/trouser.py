"""What only a trouser asks: waist and crotch with its darts closed, square centres, crotch length.

A trouser's pieces are those that have a crotch. Read off the outlines alone.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from drafting.checks.curves import Bends
from drafting.checks.words import capital, degrees, mm, plain, verdict
from drafting.draft.by_role import edge_as, edges_as
from drafting.draft.draft import Draft
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole
from drafting.geometry import Path
from drafting.geometry.turning import inflections, turns
from drafting.ground import tolerances as tol
from drafting.ground.findings import Finding

CENTRE = (EdgeRole.CROTCH, EdgeRole.FLY)
"""Edges that lie on the centre line of a trouser piece."""


WAIST = (EdgeRole.WAIST, EdgeRole.WAIST_DART)
"""The waist and the darts that open into it."""


def waists_bend_one_way(draft: Draft) -> Iterator[Finding]:
    """With its darts closed, does the waist of each trouser piece bend one way only?"""
    for piece in _trousers(draft):
        if all(edge.kind is EdgeKind.DART for edge in edges_as(piece, *WAIST)):
            continue  # a yoke has it, and the foot of a dart may be left below
        line = closed_waist(piece)
        count = inflections(line, tol.TURN_MATTERS)
        said = f"{capital(plain(piece.name))} waist: bends one way with its darts closed"
        if count:
            runs = ", ".join(f"{run:+.1f}" for run in turns(line, tol.TURN_MATTERS))
            said = f"{capital(plain(piece.name))} waist: an S with its darts closed; runs turn {runs} degrees"
        yield verdict("waist bend", count == 0, f"{piece.name}.waist", float(count), 0.0, said)


def waist_waves(piece: Piece) -> int:
    """Return how often the waist of a trouser piece bends to and fro with its darts closed."""
    return inflections(closed_waist(piece), tol.TURN_MATTERS)


def waists_of(draft: Draft) -> Iterator[Bends]:
    """Yield the waist of each trouser piece that has it in one edge, no dart or pleat in it."""
    for piece in _trousers(draft):
        waists = edges_as(piece, *WAIST)
        if len(waists) == 1 and waists[0].kind is not EdgeKind.DART:
            yield Bends(piece.name, waists[0].name, waists[0].path, (0, 0), tol.TURN_MATTERS)


def centres_square(draft: Draft) -> Iterator[Finding]:
    """Is each trouser waist square to its centre line, so that left and right make one line?"""
    for piece in _trousers(draft):
        for index, edge in enumerate(piece.edges):
            before = piece.edges[index - 1]
            if {_on_centre(before), _on_centre(edge)} != {True, False}:
                continue
            other = edge if _on_centre(before) else before
            if other.role in WAIST:
                angle = piece.corner(index)
                holds = abs(angle - 90) <= tol.SQUARE_ANGLE
                said = f"{capital(plain(piece.name))} waist: {degrees(angle)} to the centre line"
                if not holds:
                    said += f"; 90 is wanted within {tol.SQUARE_ANGLE:g}"
                yield verdict("waist centre", holds, f"{piece.name}.waist", angle, 90.0, said)


def crotch_length_kept(draft: Draft) -> Iterator[Finding]:
    """Are front and back crotch seam together as long as was asked?"""
    wanted = draft.facts.get("crotch_asked")
    pieces = _trousers(draft)
    if wanted is None or not pieces:
        return
    roles = {piece.role for piece in pieces}  # of a yoke above them too
    whole = [piece for piece in draft.pieces if piece.role in roles and not piece.material]
    found = math.fsum(e.length for p in whole for e in p.edges if _on_centre(e))
    holds = abs(found - wanted) <= tol.CROTCH_MATCH
    said = f"Crotch seam: {mm(found)} from waist to waist, {mm(wanted)} asked for"
    yield verdict("crotch length", holds, "crotch", found, wanted, said)


def closed_waist(piece: Piece) -> Path:
    """Return the waist of a piece in ring order with the darts between its parts sewn up, and its pleats laid."""
    edges = _waist_in_order(piece)
    paths = [edge.path for edge in edges]
    line = list(paths[0].segments)
    for i in range(1, len(paths) - 2, 3):
        tip, mouth, far = paths[i].end, paths[i].start, paths[i + 1].end
        if edges[i].role is EdgeRole.EASE_PLEAT:
            paths[i + 2 :] = [path.moved(mouth - far) for path in paths[i + 2 :]]
        else:
            turn = (mouth - tip) / (far - tip)
            turn /= abs(turn)
            paths[i + 2 :] = [path.turned(tip, turn) for path in paths[i + 2 :]]
        line += paths[i + 2].segments
    return Path(tuple(line))


def _waist_in_order(piece: Piece) -> list[Edge]:
    """Return waist parts, dart legs and folds as they follow each other, starting with a waist part.

    Folds are those of pleats laid at the waist, beside a part of it or another fold.
    """
    ends = {p for e in edges_as(piece, *WAIST) for p in (e.path.start, e.path.end)}
    folds = [e for e in edges_as(piece, EdgeRole.EASE_PLEAT) if {e.path.start, e.path.end} & ends]
    run = [e for e in piece.edges if e.role in WAIST or e in folds]
    first = next(i for i, e in enumerate(run) if e.role is EdgeRole.WAIST and e.kind is not EdgeKind.DART)
    return [*run[first:], *run[:first]]


def _on_centre(edge: Edge) -> bool:
    return edge.role in CENTRE


def _trousers(draft: Draft) -> list[Piece]:
    return [piece for piece in draft.pieces if edge_as(piece, EdgeRole.CROTCH)]
