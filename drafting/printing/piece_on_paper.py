"""Pieces as they are drawn on paper: lines, words, and the outline that nothing else may enter."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from drafting.draft.pattern import CutPiece
from drafting.finish.label import Label, cut_count, piece_title
from drafting.geometry import Path
from drafting.geometry.area import ring_around
from drafting.geometry.path import Box
from drafting.sheet import Layer, Stroke, Text, text_width, wider_box
from drafting.sheet.faces import faced
from drafting.sheet.marks import piece_strokes
from drafting.sheet.piece import piece_drawing
from drafting.sheet.room import Room, near

AROUND = 3.0
"""mm kept free round a piece and the words beside it (ours; joins a label to its piece)."""

OUT = 0.5
"""mm: what passes the cut line by more is counted to the piece's room."""

MODEL_TEXT = 2.4
"""mm: text on a small copy, about the least that is read without a glass (ours)."""

_NOT_CROSSED = (Layer.GRAIN, Layer.DART, Layer.STITCH, Layer.FOLD, Layer.PLACEMENT)


@dataclass(frozen=True)
class PieceOnPaper:
    """One piece on paper, where it was drafted; `ring` goes round everything that is drawn."""

    name: str
    title: str
    strokes: tuple[Stroke, ...]
    texts: tuple[Text, ...]
    ring: tuple[complex, ...]
    area: float


def piece_on_paper(cut_piece: CutPiece, label: Label, place: int = 0) -> PieceOnPaper:
    """Return a piece with everything on it, true to scale; `place` as `faces.face` wants it."""
    strokes, texts = piece_drawing(cut_piece, label)
    return _drawing(cut_piece, cut_piece.cut, faced(cut_piece, strokes, place), texts)


def model_drawing(cut_piece: CutPiece, part: int, place: int = 0) -> PieceOnPaper:
    """Return a piece at 1 : `part` for a paper model, so marked; lines are as wide as ever."""
    strokes = tuple(
        replace(s, paths=tuple(path.mapped(lambda p: p / part) for path in s.paths))
        for s in piece_strokes(cut_piece)
    )
    cut = cut_piece.cut.mapped(lambda p: p / part)
    lines = (
        f"{cut_piece.number} {piece_title(cut_piece.piece)}",
        cut_count(cut_piece.piece),
        f"scale 1:{part}, paper model",
    )
    drawn = [path for s in strokes if s.layer in _NOT_CROSSED for path in s.paths]
    text = _inside(cut, drawn, Text(0j, MODEL_TEXT, lines, "middle"))
    return _drawing(cut_piece, cut, faced(cut_piece, strokes, place), (text,))


def _inside(cut: Path, drawn: Sequence[Path], text: Text) -> Text:
    """Return the words in the piece where they fit, else under it."""
    x0, y0, x1, y1 = cut.bounds
    a, b, c, d = text.bounds
    free, middle = Room.inside(cut, drawn), complex(x0 + x1, y0 + y1) / 2
    corner = free.place(c - a, d - b, near(middle, c - a, d - b))
    if corner is None:
        corner = complex((x0 + x1) / 2 - text_width(text) / 2, y0 - 1.5 - (d - b))
    return text.moved(corner - complex(a, b))


def _drawing(cut_piece: CutPiece, cut: Path, strokes: Sequence[Stroke], texts: Sequence[Text]) -> PieceOnPaper:
    boxes = [*(s.bounds for s in strokes), *(t.bounds for t in texts)]
    beyond = [box for box in boxes if _sticks_out(box, cut)]
    ring = ring_around(cut, beyond, AROUND)
    title = f"{cut_piece.number} {piece_title(cut_piece.piece)}"
    name = cut_piece.piece.name
    return PieceOnPaper(name, title, tuple(strokes), tuple(texts), tuple(ring), abs(cut.area))


def _sticks_out(box: Box, cut: Path) -> bool:
    x0, y0, x1, y1 = wider_box(cut.bounds, OUT)
    return box[0] < x0 or box[1] < y0 or box[2] > x1 or box[3] > y1
