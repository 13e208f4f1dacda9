"""Is the cut line one sound ring around the outline, at its allowance?"""

from __future__ import annotations

import math
from collections.abc import Iterator

from drafting.checks.words import capital, edge_words, mm, plain, verdict
from drafting.draft.pattern import CutPiece, Pattern
from drafting.draft.piece import Edge, EdgeKind
from drafting.geometry import Path, line
from drafting.geometry.area import distances, is_simple, outside
from drafting.ground import tolerances as tol
from drafting.ground.findings import Finding
from drafting.ground.remembered import remembered

KEPT = 128
"""Pieces whose answers are remembered (ours): a slider leaves most of them as they were."""

CUT_MATCH = tol.OFFSET_FIT + 2 * tol.FLAT
"""mm: the offset's own error and that of two flattened curves."""


def cut_lines_sound(pattern: Pattern) -> Iterator[Finding]:
    """Is every cut line one simple ring, anticlockwise?"""
    for cut_piece in pattern.pieces:
        yield from _sound(cut_piece)


@remembered(KEPT)
def _sound(cut_piece: CutPiece) -> tuple[Finding, ...]:
    name, cut = cut_piece.piece.name, cut_piece.cut
    if is_simple(cut) and cut.area > 0 and abs(cut.end - cut.start) <= tol.EXACT:
        return ()
    said = f"{capital(plain(name))}: the cut line is no simple closed ring"
    return (Finding("cut line", "error", name, None, None, said),)


def cut_lines_around(pattern: Pattern) -> Iterator[Finding]:
    """Does the stitching line lie inside the cut line?"""
    for cut_piece in pattern.pieces:
        yield from _around(cut_piece)


@remembered(KEPT)
def _around(cut_piece: CutPiece) -> tuple[Finding, ...]:
    name = cut_piece.piece.name
    out = outside(cut_piece.piece.outline, cut_piece.cut)
    if out <= _shared(cut_piece) * CUT_MATCH + tol.EXACT:
        return ()
    said = f"{capital(plain(name))}: {out:.1f} mm2 of the stitching line's inside lie outside the cut line"
    return (Finding("cut around", "error", name, out, 0.0, said),)


def _shared(cut_piece: CutPiece) -> float:
    """Return the length, mm, along which cut and stitching line are one (a fold, a cut hem)."""
    edges = (e for e in cut_piece.piece.edges if not cut_piece.allowances.get(e.name))
    return math.fsum(edge.length for edge in edges)


def allowances_kept(pattern: Pattern) -> Iterator[Finding]:
    """Does the cut line run at its allowance beside every edge, in the middle of what is its own?"""
    for cut_piece in pattern.pieces:
        yield from _kept(cut_piece)


@remembered(KEPT)
def _kept(cut_piece: CutPiece) -> tuple[Finding, ...]:
    sides = (edge for edge in cut_piece.piece.edges if edge.kind is not EdgeKind.DART)
    widths = [(edge, cut_piece.allowances.get(edge.name)) for edge in sides]
    return tuple(_allowance(cut_piece, edge, width) for edge, width in widths if width is not None)


def _allowance(cut_piece: CutPiece, edge: Edge, allowance: float) -> Finding:
    off = _from(cut_piece.cut, edge, edge.length / 2, allowance)
    if off > CUT_MATCH:
        own = _own_places(cut_piece, edge, allowance)
        off = _from(cut_piece.cut, edge, own[len(own) // 2], allowance) if own else 0.0
    name = edge_words((cut_piece.piece.name, edge.name))
    said = f"{capital(name)}: the cut line runs {mm(allowance)} beside it"
    if off > CUT_MATCH:
        said = f"{capital(name)}: the cut line misses its allowance of {mm(allowance)} by {mm(off)}"
    where = f"{cut_piece.piece.name}.{edge.name}"
    return verdict("allowance", off <= CUT_MATCH, where, off, 0.0, said)


def _from(path: Path, edge: Edge, at: float, allowance: float) -> float:
    """Return how far what lies at its allowance beside a place of an edge lies from a path, mm."""
    ahead = edge.path.tangent(at)
    beside = edge.path.at(at) - 1j * ahead * allowance
    return float(distances(line(beside, beside + tol.EXACT * ahead), path)[0])


PLACES = 24
"""Places along an edge that are looked at where its middle is not its own (ours)."""


def _own_places(cut_piece: CutPiece, edge: Edge, allowance: float) -> list[float]:
    """Return where along an edge no allowance of a neighbour lies over its own, as in a corner that is let in.

    There the neighbour's, if it is wider, leaves more cloth than this edge asks for.
    """
    piece = cut_piece.piece
    i, count = piece.index(edge.name), len(piece.edges)
    let_in = [
        piece.edges[k] for k, at in ((i - 1, i), ((i + 1) % count, (i + 1) % count)) if piece.corner(at) > 180.0
    ]
    found = [edge.length * (k + 0.5) / PLACES for k in range(PLACES)]
    for beside in let_in:
        wide = cut_piece.allowances.get(beside.name, 0.0)
        found = [at for at in found if _from(beside.path, edge, at, allowance) >= wide]
    return found
