"""The lines of one finished piece, layer by layer."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.draft.pattern import CutPiece
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.geometry import Path, line, turn
from drafting.sheet import Layer, Stroke
from drafting.sheet.style import HEAD, bracket, full_head, open_head


def piece_strokes(cut_piece: CutPiece, one_way: bool = False, prefix: str = "") -> tuple[Stroke, ...]:
    """Return every line of the piece; ids start with `prefix` and the piece's name."""
    piece, name = cut_piece.piece, f"{prefix}{cut_piece.piece.name}"
    return (
        Stroke(Layer.CUT, (cut_piece.cut,), f"{name}.cut-line", closed=True),
        *(Stroke(Layer.STITCH, (edge.path,), f"{name}.{edge.name}") for edge in piece.edges),
        *_folds(piece, name),
        *_darts(cut_piece, name),
        *(Stroke(Layer.LEVEL, v.paths, f"{name}.level.{v.name}") for v in piece.levels if v.paths),
        *(Stroke(Layer.PLACEMENT, (m.path,), f"{name}.placement.{m.name}") for m in piece.placements),
        *_arrows(cut_piece, name, one_way),
        *_notches(cut_piece, name),
    )


def fold_mark(edge: Edge) -> tuple[tuple[Path, ...], complex, complex]:
    """Return the fold bracket, the middle of its shaft and the direction into the piece."""
    size = min(HEAD, edge.length / 12)
    start, end = edge.path.at(0.15 * edge.length), edge.path.at(0.85 * edge.length)
    inward = edge.path.tangent(edge.length / 2) * 1j  # the cloth lies on the left
    paths = bracket(start, end, inward, size)
    return paths, (paths[0].segments[1].point(0.5)), inward


def dart_middles(piece: Piece) -> Iterator[tuple[str, Path]]:
    """Yield each open dart's first leg by name, and its fold line from the tip to mid mouth."""
    for leg, after in zip(piece.edges, (*piece.edges[1:], piece.edges[0]), strict=True):
        if leg.kind is after.kind is EdgeKind.DART and _turns_back(leg, after):
            yield leg.name, line(leg.path.end, (leg.path.start + after.path.end) / 2)


def _turns_back(leg: Edge, after: Edge) -> bool:
    """Return whether two dart legs meet at a tip (and not two neighbours at their mouths)."""
    mouth = abs(leg.path.start - after.path.end)
    return (leg.path.arrive.conjugate() * after.path.leave).real < 0 and mouth < leg.length


def _folds(piece: Piece, name: str) -> Iterator[Stroke]:
    for edge in piece.edges:
        if edge.kind is EdgeKind.FOLD:
            yield Stroke(Layer.FOLD, (edge.path,), f"{name}.fold.{edge.name}")
            yield Stroke(Layer.PLACEMENT, fold_mark(edge)[0], f"{name}.fold-mark.{edge.name}")


def _darts(cut_piece: CutPiece, name: str) -> Iterator[Stroke]:
    """Yield the creases of open darts with the seam's roof over their mouths, and inner darts."""
    piece = cut_piece.piece
    caps = {cap.edges[0]: (cap.fold, cap.stitch) for cap in cut_piece.caps}
    for leg, middle in dart_middles(piece):
        lines = caps.get(leg, (middle,))
        yield Stroke(Layer.DART, (*lines, _cross(middle.start)), f"{name}.dart.{leg}")
    for dart in piece.darts:
        yield Stroke(Layer.DART, (dart.leg_a,), f"{name}.{dart.name}.a")
        yield Stroke(Layer.DART, (dart.leg_b,), f"{name}.{dart.name}.b")


def _cross(at: complex, arm: float = 2.5) -> Path:
    """Return the mark for a point to be pricked through: one line that crosses itself."""
    return line(at - arm, at + arm, at, at + 1j * arm, at - 1j * arm)


def _arrows(cut_piece: CutPiece, name: str, one_way: bool) -> Iterator[Stroke]:
    """Yield the arrows: shaft and heads apart, so that a shaft's ends are the arrow's."""
    if grain := cut_piece.grainline:
        size = min(HEAD, grain.length / 6)
        ends = [(grain.start, -grain.leave), (grain.end, grain.arrive)]
        if one_way:
            warp = turn(cut_piece.piece.grain)
            ends = [max(ends, key=lambda tip: (tip[1].conjugate() * warp).real)]
        heads = tuple(open_head(tip, heading, size) for tip, heading in ends)
        yield Stroke(Layer.GRAIN, (grain,), f"{name}.grainline")
        yield Stroke(Layer.GRAIN, heads, f"{name}.grainline.heads")
    if stretch := cut_piece.stretch_arrow:
        size = min(HEAD, stretch.length / 6)
        ends = [(stretch.start, -stretch.leave), (stretch.end, stretch.arrive)]
        yield Stroke(Layer.STRETCH, (stretch,), f"{name}.stretch-arrow")
        heads = tuple(full_head(tip, heading, size) for tip, heading in ends)
        yield Stroke(Layer.STRETCH, heads, f"{name}.stretch-arrow.heads")


def _notches(cut_piece: CutPiece, name: str) -> Iterator[Stroke]:
    seen: dict[str, int] = {}
    for mark in cut_piece.notches:
        key = f"{name}.notch.{mark.edge}.{mark.name}"
        seen[key] = seen.get(key, 0) + 1
        yield Stroke(Layer.NOTCH, mark.strokes, key if seen[key] == 1 else f"{key}.{seen[key]}")
