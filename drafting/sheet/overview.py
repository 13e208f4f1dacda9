"""Every piece of a costume on one sheet, side by side as a cutter looks at them. Layer 5."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from statistics import fmean

from drafting.geometry import Path
from drafting.label import cut_count, piece_title, spoken
from drafting.names import clean_text
from drafting.pattern import CutPiece, Pattern
from drafting.remembered import remembered
from drafting.sheet import Box, Layer, Sheet, Stroke, Text, set_out, shifted, union
from drafting.sheet.marks import piece_strokes
from drafting.sheet.room import Room, near
from drafting.sheet.scale import scale_bar

GAP = 45.0
"""mm between two pieces of a row (ours)."""

SHAPE = 2.2
"""Row width squared over the area of all pieces (ours, by eye: gives a page wider than high)."""

KEPT = 128
"""Pieces whose lines and words are remembered (ours): some whole costumes."""

LEVEL_PARTNERS = {"upper_arm": "bust", "upper-arm": "bust", "chest": "bust"}
"""Levels laid in line with another one: a sleeve beside the armhole it goes into (ours)."""

_SHOWN = frozenset(Layer) - {Layer.STRETCH}


@dataclass(frozen=True, slots=True)
class _Laid:
    """A piece and how far it is moved from where it was drafted."""

    cut_piece: CutPiece
    by: complex

    @property
    def bounds(self) -> Box:
        return shifted(self.cut_piece.cut.bounds, self.by)


def overview_sheet(patterns: Sequence[Pattern], title: str = "", bar: bool = True) -> Sheet:
    """Return all pieces of all garments at true size: a garment a row, body levels in line.

    `title` stands above; a row too wide for the page is broken. Text is sized to the page. `bar`
    asks for a scale bar below.
    """
    patterns = [pattern for pattern in patterns if pattern.pieces]
    size = _text_size(patterns)
    strokes: list[tuple[Stroke, complex]] = []
    texts: list[Text] = []
    top = 0.0
    for pattern in patterns:
        texts.append(
            Text(complex(0, top - size), 1.2 * size, (spoken(pattern.garment),), bold=True)
        )
        top -= 2.2 * size
        for row in _rows(pattern, _row_width(patterns)):
            laid = _laid_out(row, top)
            for item in laid:
                shown = _strokes(item.cut_piece, pattern.garment)
                strokes += [(stroke, item.by) for stroke in shown]
            texts += [text for item in laid for text in _caption(item, size)]
            low = union([item.bounds for item in laid] + [text.bounds for text in texts])[1]
            top = low - 1.6 * size
    heading = clean_text(title) or "Pieces"
    texts.insert(0, Text(complex(0, 1.2 * size), 2 * size, (heading,), bold=True))
    if bar:
        long = 500.0 if top < -900 else 100.0
        rails, figures = scale_bar(complex(0.5 * size, top), long, 0.8 * size)
        strokes += [(rail, 0j) for rail in rails]
        texts += figures
    return set_out(heading, strokes, texts, size, "Overview of every piece")


def _rows(pattern: Pattern, width: float) -> Iterator[list[CutPiece]]:
    """Yield the garment's pieces in order, as many in a row as `width` mm holds."""
    row: list[CutPiece] = []
    used = 0.0
    for cut_piece in pattern.pieces:
        wide = _width(cut_piece) + GAP
        if row and used + wide > width + GAP:
            yield row
            row, used = [], 0.0
        row, used = [*row, cut_piece], used + wide
    yield row


def _laid_out(row: list[CutPiece], top: float) -> list[_Laid]:
    """Return one row from left to right, shared levels in line, the highest point at `top`."""
    levels: dict[str, float] = {}
    laid: list[_Laid] = []
    x = 0.0
    for cut_piece in row:
        bounds, own = cut_piece.cut.bounds, _levels(cut_piece)
        shared = next((name for name in own if name in levels), None)
        up = levels[shared] - own[shared] if shared else _middle(laid) - (bounds[1] + bounds[3]) / 2
        laid.append(_Laid(cut_piece, complex(x - bounds[0], up)))
        levels = {name: y + up for name, y in own.items()} | levels
        x += bounds[2] - bounds[0] + GAP
    down = top - union(item.bounds for item in laid)[3]
    return [_Laid(item.cut_piece, item.by + 1j * down) for item in laid]


def _levels(cut_piece: CutPiece) -> dict[str, float]:
    """Return the mean height of each level, waist first: the line a torso hangs from."""
    found = {
        LEVEL_PARTNERS.get(v.name, v.name): fmean(p.at(p.length / 2).imag for p in v.paths)
        for v in cut_piece.piece.levels
        if v.paths
    }
    return dict(sorted(found.items(), key=lambda item: item[0] != "waist"))


def _middle(laid: list[_Laid]) -> float:
    if not laid:
        return 0.0
    _, low, _, high = union(item.bounds for item in laid)
    return (low + high) / 2


@remembered(KEPT)
def _strokes(cut_piece: CutPiece, garment: str) -> tuple[Stroke, ...]:
    strokes = piece_strokes(cut_piece, prefix=f"{garment}.")
    return tuple(stroke for stroke in strokes if stroke.layer in _SHOWN)


def _caption(item: _Laid, size: float) -> tuple[Text, ...]:
    return tuple(text.moved(item.by) for text in _words(item.cut_piece, size))


@remembered(KEPT)
def _words(cut_piece: CutPiece, size: float) -> tuple[Text, ...]:
    """Return number, name and count, in the piece where they fit, else under it."""
    piece = cut_piece.piece
    name = (f"{cut_piece.number} {piece_title(piece)}",)
    count = (cut_count(piece),)
    room = Room.inside(piece.outline).without(_lines(cut_piece))
    for em in (size, 0.8 * size, 0.65 * size):
        block = _pair_of_texts(name, count, em)
        x0, y0, x1, y1 = union(text.bounds for text in block)
        w, h = x1 - x0 + 8, y1 - y0 + 8
        a, b, c, d = piece.outline.bounds
        corner = room.place(w, h, near(complex(a + c, b + d) / 2, w, h))
        if corner is not None:
            shift = corner + complex(4 - x0, 4 - y0)
            return tuple(text.moved(shift) for text in block)
    left, low, right, _ = cut_piece.cut.bounds
    block = _pair_of_texts(name, count, 0.65 * size)
    return tuple(t.moved(complex((left + right) / 2, low - 0.8 * size)) for t in block)


def _pair_of_texts(name: tuple[str, ...], count: tuple[str, ...], em: float) -> tuple[Text, Text]:
    return Text(0j, em, name, "middle", bold=True), Text(-1.2j * em, 0.85 * em, count, "middle")


def _lines(cut_piece: CutPiece) -> list[Path]:
    wanted = {Layer.GRAIN, Layer.DART, Layer.NOTCH, Layer.LEVEL, Layer.PLACEMENT}
    return [p for s in piece_strokes(cut_piece) if s.layer in wanted for p in s.paths]


def _width(cut_piece: CutPiece) -> float:
    left, _, right, _ = cut_piece.cut.bounds
    return right - left


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
