"""Pieces as they are drawn on paper: lines, words, and the outline that nothing else may enter."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cached_property

from drafting.draft.pattern import CutPiece
from drafting.finish.label import Label, cut_count, cutting_line, piece_title
from drafting.geometry import Path
from drafting.geometry.area import ring_around
from drafting.geometry.path import Box
from drafting.ground.remembered import remembered
from drafting.printing.placing import TURNS
from drafting.printing.raster import PlaceOnPage
from drafting.sheet import Layer, Stroke, Text, text_width, wider_box
from drafting.sheet.faces import faced
from drafting.sheet.marks import piece_strokes
from drafting.sheet.piece import piece_drawing
from drafting.sheet.room import Room, near

AROUND = 3.0
"""mm kept free round a piece and the words beside it (ours; joins a label to its piece)."""

OUT = 0.5
"""mm: what passes the cut line by more is counted to the piece's room."""

PLACES = 12
"""Places that are tried for words beside a piece (ours)."""

MODEL_TEXT = 2.4
"""mm: text on a small copy, about the least that is read without a glass (ours)."""

_NOT_CROSSED = (Layer.GRAIN, Layer.DART, Layer.STITCH, Layer.FOLD, Layer.PLACEMENT)


Drawn = Callable[[int, Sequence[Box]], "PieceOnPaper"]
"""Draws a piece turned by so many degrees (0, 90, 180, 270), its words upright and clear of these boxes."""


@dataclass(frozen=True)
class PieceOnPaper:
    """One piece on paper, where it was drafted; `ring` goes round everything that is drawn.

    `about` says how it is cut. Some of its words may stand `beside` it. `drawn` draws it anew as it lies on
    the paper: words are read upright however a piece is turned. Without it lines are turned, and words set
    upright where they were.
    """

    name: str
    title: str
    strokes: tuple[Stroke, ...]
    texts: tuple[Text, ...]
    ring: tuple[complex, ...]
    area: float
    about: str = ""
    beside: bool = False
    drawn: Drawn | None = None

    def turned(self, degrees: int) -> PieceOnPaper:
        """Return the piece in a quarter turn, its words upright."""
        if degrees not in self._quarters:
            self._quarters[degrees] = self._turned(degrees) if degrees else self
        return self._quarters[degrees]

    @cached_property
    def _quarters(self) -> dict[int, PieceOnPaper]:
        return {}

    def _turned(self, degrees: int) -> PieceOnPaper:
        if self.drawn is not None:
            return self.drawn(degrees, ())
        factor = PlaceOnPage(degrees, 0j).factor
        strokes = tuple(replace(s, paths=tuple(p.turned(0j, factor) for p in s.paths)) for s in self.strokes)
        texts = tuple(text.moved(_middle(text) * factor - _middle(text)) for text in self.texts)
        return replace(self, strokes=strokes, texts=texts, ring=tuple(p * factor for p in self.ring))

    @cached_property
    def rings(self) -> tuple[tuple[complex, ...], ...]:
        """What goes round everything in each quarter turn, turned back to where it was drafted."""
        back = (1, -1j, -1, 1j)
        return tuple(tuple(p * b for p in self.turned(d).ring) for d, b in zip(TURNS, back, strict=True))

    def clear_of(self, turn: int, taken: Sequence[Box]) -> Iterator[PieceOnPaper]:
        """Yield the piece so turned with its words elsewhere, where one of them touches these boxes.

        Words beside it are tried at one place after another: whoever asks knows what else lies there.
        """
        lying = self.turned(turn % 360)
        struck = any(_touch(box, wider_box(text.bounds, AROUND)) for box in taken for text in lying.texts)
        boxes = [wider_box(box, AROUND) for box in taken]
        if not struck or self.drawn is None:
            return
        for _ in range(PLACES):
            other = self.drawn(turn, boxes)
            yield other
            boxes += [text.bounds for text in other.texts if text.layer is Layer.LABEL]


def piece_on_paper(cut_piece: CutPiece, label: Label, place: int = 0) -> PieceOnPaper:
    """Return a piece with everything on it, true to scale; `place` as `faces.face` wants it."""

    def drawn(degrees: int, taken: Sequence[Box]) -> PieceOnPaper:
        lying = _lying(cut_piece, degrees)
        strokes, texts = piece_drawing(lying, label, taken)
        found = _drawing(lying, lying.cut, faced(lying, strokes, place), texts, drawn)
        return replace(found, about=cutting_line(lying.piece, label.fabric))

    return drawn(0, ())


@remembered(256)
def _lying(cut_piece: CutPiece, degrees: int) -> CutPiece:
    """Return a piece turned, the same object each time, so that what is worked out about it is kept."""
    return cut_piece.turned(degrees)


def model_drawing(cut_piece: CutPiece, part: int, place: int = 0) -> PieceOnPaper:
    """Return a piece at 1 : `part` for a paper model, so marked; lines are as wide as ever."""

    def drawn(degrees: int, taken: Sequence[Box]) -> PieceOnPaper:
        return _model(cut_piece.turned(degrees), part, place, taken, drawn)

    return drawn(0, ())


def _model(cut_piece: CutPiece, part: int, place: int, taken: Sequence[Box], again: Drawn) -> PieceOnPaper:
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
    text = _inside(cut, drawn, Text(0j, MODEL_TEXT, lines, "middle"), taken)
    return _drawing(cut_piece, cut, faced(cut_piece, strokes, place), (text,), again)


def _inside(cut: Path, drawn: Sequence[Path], text: Text, taken: Sequence[Box]) -> Text:
    """Return the words in the piece where they fit, else under it."""
    x0, y0, x1, y1 = cut.bounds
    a, b, c, d = text.bounds
    free, middle = Room.inside(cut, drawn).without(boxes=taken), complex(x0 + x1, y0 + y1) / 2
    corner = free.place(c - a, d - b, near(middle, c - a, d - b))
    if corner is None:
        corner = complex((x0 + x1) / 2 - text_width(text) / 2, y0 - 1.5 - (d - b))
    return text.moved(corner - complex(a, b))


def _drawing(
    cut_piece: CutPiece, cut: Path, strokes: Sequence[Stroke], texts: Sequence[Text], drawn: Drawn
) -> PieceOnPaper:
    boxes = [*(s.bounds for s in strokes), *(t.bounds for t in texts)]
    beyond = [box for box in boxes if _sticks_out(box, cut)]
    ring = ring_around(cut, beyond, AROUND)
    title = f"{cut_piece.number} {piece_title(cut_piece.piece)}"
    name = cut_piece.piece.name
    return PieceOnPaper(
        name=name,
        title=title,
        strokes=tuple(strokes),
        texts=tuple(texts),
        ring=tuple(ring),
        area=abs(cut.area),
        about=cutting_line(cut_piece.piece),
        beside=bool(beyond),
        drawn=drawn,
    )


def _middle(text: Text) -> complex:
    x0, y0, x1, y1 = text.bounds
    return complex(x0 + x1, y0 + y1) / 2


def _touch(a: Box, b: Box) -> bool:
    return a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]


def _sticks_out(box: Box, cut: Path) -> bool:
    x0, y0, x1, y1 = wider_box(cut.bounds, OUT)
    return box[0] < x0 or box[1] < y0 or box[2] > x1 or box[3] > y1
