"""Outlines that cross: measures too far apart for any seam and dart are refused in words. mm."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from drafting.draft.piece import Piece
from drafting.geometry.area import is_simple
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.shaping.trouser.pieces import CutSettings, Openings, draw_pieces
from drafting.shaping.trouser.shape import LegShape, settle_shape

PLAIN = CutSettings(90.0, 0.0, False, None)
"""Pieces that are only looked at."""

STEP, WIDEST = 0.02, 1.2
"""The waist is tried wider in such steps of the hip, up to so much of the hip (ours)."""


def refuse_crossed(shape: LegShape, pieces: Sequence[Piece]) -> None:
    """Raise `DraftError` where an outline crosses itself: a waist much smaller than its hip does that."""
    if _simple(pieces):
        return
    least, girth = _least_waist(shape), shape.frame.asked.girth
    raise DraftError(
        "the trouser's outline would cross itself",
        value=f"a waist of {told(shape.frame.waist_girth)} over a hip of {told(girth['hip'])} and a crotch seam "
        f"of {told(shape.frame.asked.crotch)}",
        reach=f"a waist of {told(least, 'least')} or more" if least else "",
        turn="give the waist more ease or gathers, or measure waist, hip and total crotch length again",
    )


def _simple(pieces: Sequence[Piece]) -> bool:
    return all(is_simple(piece.outline) for piece in pieces)


def _least_waist(shape: LegShape) -> float:
    """Return the least waist from which on the outlines are sound; 0 where none is."""
    asked, style = shape.frame.asked, shape.frame.style
    hip = asked.girth["hip"]
    waist = shape.frame.waist_girth
    while waist < WIDEST * hip:
        waist += STEP * hip
        wider = replace(asked, girth={**asked.girth, "waist": waist})
        try:
            if _simple(draw_pieces(settle_shape(wider, style), Openings(), PLAIN)):
                return waist
        except DraftError:
            continue
    return 0.0
