"""Cutting cloth that will still shrink: pieces enlarged along each axis of the cloth.

The better way is to wash the cloth first; then nothing is enlarged. Where a maker cuts unwashed, the
whole cut piece, allowances and marks with it, is cut larger by 1 / (1 - shrinkage) along the warp and
across it (`Source.ISO_5077` gives the shrinkage; dividing, not multiplying by 1 + shrinkage), so that it is
the finished piece once washed. Girths in the report stay the finished ones.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from drafting.draft.pattern import CutPiece, DartCap, NotchMark, Pattern
from drafting.fabric import Fabric, cut_for
from drafting.geometry import turn
from drafting.ground.findings import Finding

Move = Callable[[complex], complex]


def enlarged(pattern: Pattern, fabric: Fabric | None) -> Pattern:
    """Return the pattern as it has to be cut from this cloth unwashed, saying by how much."""
    along, across = fabric.shrinkage_to_come if fabric else (0.0, 0.0)
    if fabric is None or (along == 0 and across == 0):
        return pattern
    said = Finding(
        "cut unwashed",
        "warning",
        pattern.garment,
        100 * (cut_for(1.0, -along) - 1),
        100 * (cut_for(1.0, -across) - 1),
        f"{fabric.title} still shrinks {100 * along:.1f} % along and {100 * across:.1f} % across: every "
        f"piece is drawn {100 * (cut_for(1.0, -along) - 1):.2f} % longer along the grain and "
        f"{100 * (cut_for(1.0, -across) - 1):.2f} % wider, and comes out right after the first wash. "
        "Washing before cutting is the surer way.",
    )
    pieces = tuple(_enlarged(piece, along, across) for piece in pattern.pieces)
    return replace(pattern, pieces=pieces, findings=(*pattern.findings, said))


def stretch_by(grain: float, along: float, across: float) -> Move:
    """Return the move that makes a piece longer along its grain (degrees) and wider across it."""
    warp = turn(grain)
    long, wide = cut_for(1.0, -along), cut_for(1.0, -across)

    def move(p: complex) -> complex:
        q = p / warp  # warp on the x axis
        return complex(q.real * long, q.imag * wide) * warp

    return move


def _enlarged(cut: CutPiece, along: float, across: float) -> CutPiece:
    move = stretch_by(cut.piece.grain, along, across)
    return replace(
        cut,
        piece=cut.piece.mapped(move),
        cut=cut.cut.mapped(move),
        notches=tuple(_notch(notch, move) for notch in cut.notches),
        grainline=cut.grainline and cut.grainline.mapped(move),
        stretch_arrow=cut.stretch_arrow and cut.stretch_arrow.mapped(move),
        caps=tuple(_cap(cap, move) for cap in cut.caps),
    )


def _notch(notch: NotchMark, move: Move) -> NotchMark:
    return replace(notch, strokes=tuple(stroke.mapped(move) for stroke in notch.strokes))


def _cap(cap: DartCap, move: Move) -> DartCap:
    lines = cap.stitch.mapped(move), cap.cut.mapped(move), cap.fold.mapped(move)
    return DartCap(cap.edges, *lines)
