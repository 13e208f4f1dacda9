"""What a piece states about the height at which it lies on the body, and what is said where it states none."""

from __future__ import annotations

from collections.abc import Mapping

from drafting.draft.frame import BodyHeight
from drafting.ground.errors import DraftError
from drafting.worn.nouns import SewnPiece

HEIGHTS = (BodyHeight.BUST, BodyHeight.WAIST, BodyHeight.HIP, BodyHeight.NAPE, BodyHeight.KNEE, BodyHeight.CROTCH)
"""What a piece is hung by, the first of these that it states: one of the trunk's before any other."""


def hung_by(piece: SewnPiece, levels: Mapping[str, float]) -> float:
    """Return the height over the floor (mm) of y = 0 of a piece; raises `DraftError` where it states none."""
    for height in HEIGHTS:
        place = piece.frame.at(height)
        if place is not None:
            return float(levels[height.value]) - place.imag
    raise lost(piece)


def lost(piece: SewnPiece) -> DraftError:
    """Return what is said of a piece that nothing tells the place of."""
    return DraftError(
        f"piece {piece.name} does not say where on the body it lies",
        turn="state in the piece's frame which of its places lies at which height of the body",
    )
