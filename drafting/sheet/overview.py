"""Every piece of a costume on one sheet, side by side as a cutter looks at them.

`overview` says where each piece lies; its lines and words stay as they were drafted and are worked
out once a piece. `Overview.sheet` moves them there, for files.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from statistics import fmean

from drafting.draft.pattern import CutPiece, Pattern
from drafting.draft.roles import LevelKind
from drafting.finish.label import cut_count, piece_title, spoken
from drafting.geometry.path import Box
from drafting.ground.names import clean_text
from drafting.ground.remembered import remembered
from drafting.ground.units import ShownUnit
from drafting.sheet import Layer, Sheet, Stroke, Text, box_around, moved_box, page_round
from drafting.sheet.faces import faced
from drafting.sheet.marks import piece_strokes
from drafting.sheet.room import CELL, Room, near
from drafting.sheet.scale import scale_bar

GAP = 45.0
"""mm between two pieces of a row (ours)."""

SHAPE = 2.2
"""Row width squared over the area of all pieces (ours, by eye: gives a page wider than high)."""

KEPT = 128
"""Pieces whose lines and words are remembered (ours): some whole costumes."""

COARSE = 400.0
"""mm: a piece this long or longer is searched for room for its words in cells twice as large, as that
is done at every move of a slider (ours)."""

IN_LINE = (LevelKind.BUST, LevelKind.UPPER_ARM)
"""Levels laid in line with each other: a sleeve beside the armhole it goes into (ours)."""

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


@dataclass(frozen=True)
class Rows:
    """How wide a row of pieces is at most, and how large their words are, mm."""

    wide: float
    size: float


@dataclass(frozen=True)
class Overview:
    """Where every piece lies on a page of `width` x `height` mm, y up, and what stands beside them."""

    title: str
    width: float
    height: float
    laid: tuple[ShownPiece, ...]
    rails: tuple[Stroke, ...] = ()
    texts: tuple[Text, ...] = ()

    def piece(self, name: str) -> ShownPiece | None:
        """Return the first piece of this name where it lies, or None."""
        return next((item for item in self.laid if item.cut_piece.piece.name == name), None)

    def sheet(self) -> Sheet:
        """Return the page as one sheet, every line moved to its place."""
        pieces = [stroke.moved(item.by) for item in self.laid for stroke in item.strokes]
        words = [text.moved(item.by) for item in self.laid for text in item.words]
        said = "Overview of every piece"
        strokes, texts = (*pieces, *self.rails), (*self.texts, *words)
        return Sheet(self.title, self.width, self.height, strokes, texts, said)


def overview_sheet(
    patterns: Sequence[Pattern], title: str = "", bar: bool = True, unit: ShownUnit = "cm"
) -> Sheet:
    """Return the sheet of an `overview`."""
    return overview(patterns, title, bar, unit=unit).sheet()


def overview(
    patterns: Sequence[Pattern],
    title: str = "",
    bar: bool = True,
    garments: Sequence[str] = (),
    rows: Rows | None = None,
    unit: ShownUnit = "cm",
) -> Overview:
    """Return all pieces of all garments at true size: a garment a row, body levels in line.

    `title` stands above; a row too wide for the page is broken. Text is sized to the page. `bar`
    asks for a scale bar below, in `unit`. `garments` names all of the costume, where these are only some;
    `rows` asks for other rows than those of a page.
    """
    garments = [*garments, *(pattern.garment for pattern in patterns)]
    patterns = [pattern for pattern in patterns if pattern.pieces]
    rows = rows or Rows(_row_width(patterns), _text_size(patterns))
    size = rows.size
    heading = clean_text(title) or "Pieces"
    texts = [Text(complex(0, 1.2 * size), 2 * size, (heading,), bold=True)]
    laid: list[ShownPiece] = []
    top = 0.0
    for pattern in patterns:
        name = Text(complex(0, top - size), 1.2 * size, (spoken(pattern.garment),), bold=True)
        texts.append(name)
        top -= 2.2 * size
        for row in _rows(pattern, size, rows.wide):
            placed = _laid_out(row, pattern.garment, size, top)
            place = garments.index(pattern.garment)
            laid += [replace(item, place=place) for item in placed]
            top = box_around(item.extent for item in placed)[1] - 1.6 * size
    rails: tuple[Stroke, ...] = ()
    if bar:
        rails, figures = scale_bar(complex(0.5 * size, top), 0.8 * size, top < -900, unit)
        texts += figures
    return _on_a_page(Overview(heading, 0.0, 0.0, tuple(laid), rails, tuple(texts)), size)


def _on_a_page(found: Overview, margin: float) -> Overview:
    """Return it moved by whole mm, onto a page with a margin round everything."""
    boxes = [item.extent for item in found.laid] + [rail.bounds for rail in found.rails]
    box = box_around(boxes + [text.bounds for text in found.texts])
    by, width, height = page_round(box, margin)
    return Overview(
        found.title,
        width,
        height,
        laid=tuple(replace(item, by=item.by + by) for item in found.laid),
        rails=tuple(rail.moved(by) for rail in found.rails),
        texts=tuple(text.moved(by) for text in found.texts),
    )


def _rows(pattern: Pattern, size: float, width: float) -> Iterator[list[CutPiece]]:
    """Yield the garment's pieces in order, as many in a row as `width` mm holds with their words."""
    row: list[CutPiece] = []
    used = 0.0
    for cut_piece in pattern.pieces:
        left, _, right, _ = extent(cut_piece, pattern.garment, size)
        wide = right - left + GAP
        if row and used + wide > width + GAP:
            yield row
            row, used = [], 0.0
        row, used = [*row, cut_piece], used + wide
    yield row


def _laid_out(row: list[CutPiece], garment: str, size: float, top: float) -> list[ShownPiece]:
    """Return one row from left to right, shared levels in line, the highest point at `top`."""
    levels: dict[str, float] = {}
    laid: list[ShownPiece] = []
    x = 0.0
    for cut_piece in row:
        bounds, own = cut_piece.cut.bounds, _levels(cut_piece)
        shared = next((name for name in own if name in levels), None)
        up = levels[shared] - own[shared] if shared else _middle(laid) - (bounds[1] + bounds[3]) / 2
        left, _, right, _ = extent(cut_piece, garment, size)
        laid.append(ShownPiece(cut_piece, garment, complex(x - left, up), size))
        levels = {name: y + up for name, y in own.items()} | levels
        x += right - left + GAP
    down = top - box_around(item.bounds for item in laid)[3]
    return [replace(item, by=item.by + 1j * down) for item in laid]


def _levels(cut_piece: CutPiece) -> dict[str, float]:
    """Return the mean height of each level, waist first: the line a torso hangs from."""
    levels = [v for v in cut_piece.piece.levels if v.paths]
    return {
        LevelKind.BUST.value if v.kind in IN_LINE else v.name: fmean(p.at(p.length / 2).imag for p in v.paths)
        for v in sorted(levels, key=lambda v: v.kind is not LevelKind.WAIST)
    }


def _middle(laid: list[ShownPiece]) -> float:
    if not laid:
        return 0.0
    _, low, _, high = box_around(item.bounds for item in laid)
    return (low + high) / 2


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


def _row_width(patterns: Sequence[Pattern]) -> float:
    """Return the row width that gives the page about its wished shape."""
    pieces = [cut_piece for pattern in patterns for cut_piece in pattern.pieces]
    boxes = [cut_piece.cut.bounds for cut_piece in pieces]
    area = math.fsum((x1 - x0 + GAP) * (y1 - y0 + GAP) for x0, y0, x1, y1 in boxes)
    return max([math.sqrt(SHAPE * area), *(x1 - x0 for x0, _, x1, _ in boxes)])


def _text_size(patterns: Sequence[Pattern]) -> float:
    """Return a text size that stays readable when the page is shrunk to a screen (ours).

    Whole mm: the words of a piece stay where they are while another one changes.
    """
    return float(min(30, max(9, round(_row_width(patterns) / 75)))) if patterns else 12.0
