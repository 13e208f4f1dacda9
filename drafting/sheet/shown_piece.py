"""A piece where it lies among others, its lines, and its words in it or under it."""

from __future__ import annotations

from dataclasses import dataclass

from drafting.draft.pattern import CutPiece
from drafting.finish.label import cut_count, piece_title
from drafting.geometry.path import Box
from drafting.ground.remembered import remembered
from drafting.sheet import Layer, Stroke, Text, box_around, moved_box
from drafting.sheet.faces import faced
from drafting.sheet.marks import piece_strokes
from drafting.sheet.room import CELL, Room, near

KEPT = 128
"""Pieces whose lines and words are remembered (ours): some whole costumes."""

COARSE = 400.0
"""mm: a piece this long or longer is searched for room for its words in cells twice as large, as that
is done at every move of a slider (ours)."""

_NOT_CROSSED = {Layer.GRAIN, Layer.STRETCH, Layer.DART, Layer.NOTCH, Layer.LEVEL, Layer.PLACEMENT}
"""Lines that the words of a piece keep off."""


@dataclass(frozen=True, slots=True)
class ShownPiece:
    """A piece of `garment`, how far it is moved from where it was drafted, and its words' size, mm.

    `place` is the garment's among all of its costume (for its face).
    """

    cut_piece: CutPiece
    garment: str
    by: complex
    size: float
    place: int = 0

    @property
    def bounds(self) -> Box:
        """The box round its cut line where it lies."""
        return moved_box(self.cut_piece.cut.bounds, self.by)

    @property
    def extent(self) -> Box:
        """The box round all its lines and words where it lies."""
        return moved_box(extent(self.cut_piece, self.garment, self.size), self.by)

    @property
    def strokes(self) -> tuple[Stroke, ...]:
        """Its lines as drafted; ids start with garment and piece."""
        return faced(self.cut_piece, _strokes(self.cut_piece, self.garment), self.place)

    @property
    def words(self) -> tuple[Text, ...]:
        """Number, name and count, beside its lines as drafted."""
        return _words(self.cut_piece, self.garment, self.size)


@remembered(KEPT)
def _strokes(cut_piece: CutPiece, garment: str) -> tuple[Stroke, ...]:
    return piece_strokes(cut_piece, prefix=f"{garment}.")


@remembered(KEPT)
def extent(cut_piece: CutPiece, garment: str, size: float) -> Box:
    """Return the box round a piece and its words of `size` mm; every line of it lies within its cut line."""
    words = [text.bounds for text in _words(cut_piece, garment, size)]
    return box_around([cut_piece.cut.bounds, *words])


@remembered(KEPT)
def _words(cut_piece: CutPiece, garment: str, size: float) -> tuple[Text, ...]:
    """Return number, name, count and hand, in the piece where they fit, else under it."""
    piece = cut_piece.piece
    name = (f"{cut_piece.number} {piece_title(piece)}",)
    count = (", ".join(filter(None, (cut_count(piece), piece.hand))),)
    drawn = [p for s in _strokes(cut_piece, garment) if s.layer in _NOT_CROSSED for p in s.paths]
    a, b, c, d = piece.outline.bounds
    room = Room.inside(piece.outline, drawn, CELL if max(c - a, d - b) < COARSE else 2 * CELL)
    for em in (size, 0.8 * size, 0.65 * size):
        block = _pair_of_texts(name, count, em)
        x0, y0, x1, y1 = box_around(text.bounds for text in block)
        w, h = x1 - x0 + 8, y1 - y0 + 8
        corner = room.place(w, h, near(complex(a + c, b + d) / 2, w, h))
        if corner is not None:
            shift = corner + complex(4 - x0, 4 - y0)
            return tuple(text.moved(shift) for text in block)
    left, low, right, _ = cut_piece.cut.bounds
    block = _pair_of_texts(name, count, 0.65 * size)
    return tuple(t.moved(complex((left + right) / 2, low - 0.8 * size)) for t in block)


def _pair_of_texts(name: tuple[str, ...], count: tuple[str, ...], em: float) -> tuple[Text, Text]:
    return Text(0j, em, name, "middle", bold=True), Text(-1.2j * em, 0.85 * em, count, "middle")
