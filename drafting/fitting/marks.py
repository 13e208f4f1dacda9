"""What is drawn on a mock-up beyond a pattern's own lines: balance lines run out to the cut edge, the
bust and the blades crossed, the middle named.

Cloth is marked from these on both faces, so every line ends on the cut edge, where a clip shows it on
either face.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import replace

from drafting.draft.by_role import BUST_POINTS, edges_as
from drafting.draft.pattern import CutPiece
from drafting.draft.piece import NAMED_MARK, Edge, Piece, Placement
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.geometry import Path, line
from drafting.geometry.crossing import first_crossing

ARM = 8.0
"""mm from the middle of a cross to its end (ours: seen from two steps away)."""

MIDDLES = {PieceRole.FRONT: "centre front", PieceRole.BACK: "centre back"}

ROOM = 200.0
"""mm beyond a stitching line within which its cut line is looked for: four of the widest allowances (ours)."""


def marked_for_fitting(cut: CutPiece) -> CutPiece:
    """Return the piece with the marks of a mock-up on it.

    Raises nothing: a line that meets no cut edge stays as it is.
    """
    piece = cut.piece
    marks = (*_bust(piece), *_blades(piece), *_middles(piece), *_run_out(cut))
    return replace(cut, piece=replace(piece, placements=(*piece.placements, *marks)))


def _bust(piece: Piece) -> Iterator[Placement]:
    for name in BUST_POINTS:
        if name in piece.points:
            yield Placement(name, _cross(piece.points[name]), NAMED_MARK, piece.hand)


def _blades(piece: Piece) -> Iterator[Placement]:
    """Yield the blades' cross of each half of a back: half-way down the armhole, half-way out to it (ours)."""
    middles = edges_as(piece, EdgeRole.CENTRE, EdgeRole.CENTRE_SEAM)
    armholes = edges_as(piece, EdgeRole.ARMHOLE)
    if piece.role is not PieceRole.BACK or not armholes:
        return
    for name, armhole in zip(("blade", "other blade"), armholes, strict=False):
        _, y0, _, y1 = armhole.path.bounds
        high = (y0 + y1) / 2
        centre = _x_at(middles[0], high) if middles else 0.0
        out = _x_at(armhole, high)
        yield Placement(name, _cross(complex((centre + out) / 2, high)), NAMED_MARK, piece.hand)


def _x_at(edge: Edge, y: float) -> float:
    return min(edge.path.evenly(41), key=lambda p: abs(p.imag - y)).real


def _middles(piece: Piece) -> Iterator[Placement]:
    """Yield the centre line by name: an edge that lies on it, or the mark that is drawn there."""
    name = MIDDLES.get(piece.role)
    if name is None:
        return
    edges = edges_as(piece, EdgeRole.CENTRE, EdgeRole.CENTRE_SEAM)
    drawn = [mark.path for mark in piece.placements if mark.what == "centre"]
    for path in [*drawn, *(edge.path for edge in edges)][:1]:
        yield Placement(name, path, NAMED_MARK, piece.hand)


def _run_out(cut: CutPiece) -> Iterator[Placement]:
    """Yield what each level, roll line and grainline runs on by, from the stitching line to the cut edge."""
    lines = [(level.name, path) for level in cut.piece.levels for path in level.paths]
    lines += [(mark.name, mark.path) for mark in cut.piece.placements if mark.what == "roll line"]
    ends: Counter[str] = Counter()
    for name, path in lines:
        for at, out in ((path.start, -path.leave), (path.end, path.arrive)):
            end = first_crossing(line(at + 0.01 * out, at + ROOM * out), cut.cut)
            if end is not None and _on_outline(cut.piece, at):
                ends[name] += 1
                yield Placement(
                    f"{name} run out {ends[name]}", line(at, end.point), "balance line", cut.piece.hand
                )


def _on_outline(piece: Piece, at: complex) -> bool:
    """Return whether a point lies on an edge that is sewn or raw: a fold has nothing beyond it."""
    near = (e for e in piece.edges if min(abs(p - at) for p in e.path.evenly(81)) < e.length / 80 + 0.5)
    return any(edge.path.length and _beyond(edge) for edge in near)


def _beyond(edge: Edge) -> bool:
    return bool(edge.allowance)


def _cross(at: complex) -> Path:
    """Return a cross to be drawn through: one line that crosses itself."""
    return line(at - ARM, at + ARM, at, at + 1j * ARM, at - 1j * ARM)
