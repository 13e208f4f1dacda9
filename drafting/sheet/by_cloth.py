"""In which order a cutter takes up the pieces of a garment: cloth by cloth, hands together, tall ones first."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.draft.pattern import CutPiece, Pattern
from drafting.geometry.path import Box


def by_cloth(pattern: Pattern) -> Iterator[tuple[str, tuple[CutPiece, ...]]]:
    """Yield each cloth's role and its pieces, cloths in the order in which the pieces name them.

    A left and a right lie side by side, the tallest pair first, so that a row holds pieces of about one height.
    """
    cloths: dict[str, list[CutPiece]] = {}
    for cut in pattern.pieces:
        cloths.setdefault(cut.piece.material or pattern.fabric, []).append(cut)
    for cloth, pieces in cloths.items():
        hands: dict[str, list[CutPiece]] = {}
        for cut in pieces:
            hands.setdefault(cut.piece.base or cut.piece.name, []).append(cut)
        tall = sorted(hands.values(), key=lambda both: -max(_height(cut.cut.bounds) for cut in both))
        yield cloth, tuple(cut for both in tall for cut in both)


def _height(box: Box) -> int:
    """Return whole cm: what differs by less keeps the order of the draft."""
    return round((box[3] - box[1]) / 10)
