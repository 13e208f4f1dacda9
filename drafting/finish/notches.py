"""Notches: strokes from the cut line inwards, square to the stitching line at the true place."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.draft.pattern import NotchMark
from drafting.draft.piece import Edge, EdgeKind, Notch, Piece
from drafting.finish.cut_line import CutLine
from drafting.geometry import Path, line
from drafting.geometry.crossing import crossings

DEEPEST = 5.0
"""mm: a notch is no deeper than this, nor than half the allowance (common practice: 3 to 5)."""

APART = 6.0
"""mm between the two strokes of a back notch (common practice)."""


def notch_marks(piece: Piece, cut: CutLine) -> tuple[NotchMark, ...]:
    """Return every notch of the piece: those of its seams, of its dart mouths, and of its fold."""
    marks = [
        NotchMark(edge.name, notch.name, _strokes(edge, notch, cut))
        for edge in piece.edges
        for notch in edge.notches
        if edge.kind is not EdgeKind.DART
    ]
    return (*marks, *_dart_mouths(piece, cut), *_fold_ends(piece, cut))


def notch_depth(width: float) -> float:
    """Return how deep a notch may go into an allowance of this width, mm."""
    return min(DEEPEST, width / 2)


def _strokes(edge: Edge, notch: Notch, cut: CutLine) -> tuple[Path, ...]:
    """Return 1 stroke at the notch's place, or more, spread about it."""
    width = cut.allowances[edge.name]
    spread = (notch.count - 1) * APART
    room = max(0.0, edge.length - spread)
    start = min(max(0.0, notch.at - spread / 2), room)
    places = [edge.path.locate(min(edge.length, start + APART * i)) for i in range(notch.count)]
    segments = edge.path.segments
    return tuple(_stroke(segments[i].point(t), -1j * segments[i].tangent(t), width, cut) for i, t in places)


def _stroke(at: complex, out: complex, width: float, cut: CutLine) -> Path:
    """Return the stroke that starts where the way out from `at` meets the cut line.

    Without an allowance it is a mark 3 mm into the piece, to be drawn, not clipped.
    """
    if width == 0:
        return line(at, at - 3.0 * out)
    ray = line(at + 1e-4 * out, at + 3 * width * out)
    found = [c.point for c in crossings(ray, cut.path)]
    top = found[0] if found else at + width * out
    return line(top, top - notch_depth(min(width, abs(top - at))) * out)


def _dart_mouths(piece: Piece, cut: CutLine) -> Iterator[NotchMark]:
    """Mark where each dart leg, run on, meets the cut line."""
    for cap in cut.caps:
        for name, leg_end, top in (
            (cap.edges[0], cap.stitch.start, cap.cut.start),
            (cap.edges[1], cap.stitch.end, cap.cut.end),
        ):
            if abs(top - leg_end) > 1e-3:
                inward = (leg_end - top) / abs(leg_end - top)
                yield NotchMark(name, "leg", (line(top, top + notch_depth(abs(top - leg_end)) * inward),))


def _fold_ends(piece: Piece, cut: CutLine) -> Iterator[NotchMark]:
    """Mark the centre at either end of a fold that has an allowance beyond it."""
    fold = piece.fold_edge
    if fold is None:
        return
    for name, at, out in (("top", fold.path.start, -fold.path.leave), ("end", fold.path.end, fold.path.arrive)):
        on_line = [(s.start - at) for s in cut.path if abs(((s.start - at) * out.conjugate()).imag) < 1e-3]
        run = max((v * out.conjugate()).real for v in on_line) if on_line else 0.0
        if run > 1.0:
            top = at + run * out
            yield NotchMark(fold.name, f"fold {name}", (line(top, top - notch_depth(run) * out),))
