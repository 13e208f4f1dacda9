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
from drafting.finish.label import spoken
from drafting.ground.names import clean_text
from drafting.ground.units import ShownUnit
from drafting.sheet import Sheet, Stroke, Text, box_around, page_round
from drafting.sheet.by_cloth import by_cloth
from drafting.sheet.scale import scale_bar
from drafting.sheet.shown_piece import ShownPiece, extent

GAP = 45.0
"""mm between two pieces of a row (ours)."""

SHAPE = 2.2
"""Row width squared over the area of all pieces (ours, by eye: gives a page wider than high)."""

WIDER = (1.0, 0.75, 0.85, 1.15, 1.3)
"""Row widths tried beside that one, as shares of it (ours): the page with least of it empty is taken."""

PAGE_SHAPES = (0.6, 2.2)
"""Width by height of a page that is easily looked at on a screen (ours)."""

IN_LINE = (LevelKind.BUST, LevelKind.UPPER_ARM)
"""Levels laid in line with each other: a sleeve beside the armhole it goes into (ours)."""


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
    """Return all pieces of all garments at true size, body levels in line.

    `title` stands above; a garment begins a row unless all of it has room behind another, and a row too wide
    for the page is broken. Text is sized to the page. `bar` asks for a scale bar below, in `unit`.
    `garments` names all of the costume, where these are only some. Pieces are grouped by cloth; with the
    `rows` of a picture that changes under the hand they keep the draft's order.
    """
    garments = [*garments, *(pattern.garment for pattern in patterns)]
    patterns = [pattern for pattern in patterns if pattern.pieces]
    heading = clean_text(title) or "Pieces"
    if rows:
        drafted = [_queue(pattern, [("", pattern.pieces)], garments) for pattern in patterns]
        return _set_in_rows(drafted, heading, bar, rows, unit)
    grouped = [_queue(pattern, list(by_cloth(pattern)), garments) for pattern in patterns]
    wide, size = _row_width(patterns), _text_size(patterns)
    shares = WIDER if patterns else WIDER[:1]
    pages = [_set_in_rows(grouped, heading, bar, Rows(wide * share, size), unit) for share in shares]
    return min(pages, key=_emptiness)


def _emptiness(page: Overview) -> tuple[float, float]:
    """Return how far a page is from an easy shape, then its area."""
    low, high = PAGE_SHAPES
    shape = page.width / page.height
    return max(low / shape, shape / high, 1.0), page.width * page.height


def _set_in_rows(
    queues: Sequence[Sequence[Queued]], heading: str, bar: bool, rows: Rows, unit: ShownUnit
) -> Overview:
    """Return the page on which garments stand in rows so wide."""
    size = rows.size
    texts = [Text(complex(0, 1.2 * size), 2 * size, (heading,), bold=True)]
    laid: list[ShownPiece] = []
    top = 0.0
    for row in _rows(queues, size, rows.wide):
        first = top - size
        top -= 2.2 * size * any(one.garment for one in row) + 1.2 * size * any(one.cloth for one in row)
        placed = _laid_out([one.shown for one in row], size, top)
        for one, shown in zip(row, placed, strict=True):
            left = shown.extent[0]
            if one.garment:
                texts.append(Text(complex(left, first), 1.2 * size, (spoken(one.garment),), bold=True))
            if one.cloth:
                texts.append(Text(complex(left, top + 0.4 * size), 0.8 * size, (spoken(one.cloth),)))
        laid += placed
        top = box_around(shown.extent for shown in placed)[1] - 1.6 * size
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


@dataclass(frozen=True, slots=True)
class Queued:
    """A piece that waits for its place in a row; `garment` and `cloth` where one begins with it."""

    shown: ShownPiece
    garment: str = ""
    cloth: str = ""

    def wide(self, size: float) -> float:
        left, _, right, _ = extent(self.shown.cut_piece, self.shown.garment, size)
        return right - left + GAP


def _queue(
    pattern: Pattern, cloths: Sequence[tuple[str, Sequence[CutPiece]]], garments: Sequence[str]
) -> list[Queued]:
    """Return a garment's pieces in the order given, cloth by cloth; one cloth alone is not named."""
    place = garments.index(pattern.garment)
    found: list[Queued] = []
    for cloth, pieces in cloths:
        for n, cut in enumerate(pieces):
            shown = ShownPiece(cut, pattern.garment, 0j, 0.0, place)
            head = pattern.garment if not found else ""
            found.append(Queued(shown, head, cloth if n == 0 and len(cloths) > 1 else ""))
    return found


def _rows(queues: Sequence[Sequence[Queued]], size: float, width: float) -> Iterator[list[Queued]]:
    """Yield the pieces in order, as many in a row as `width` mm holds with their words."""
    row: list[Queued] = []
    used = 0.0
    for queue in queues:
        whole = math.fsum(one.wide(size) for one in queue)
        for one in queue:
            wide = whole if one.garment else one.wide(size)
            if row and used + wide > width + GAP:
                yield row
                row, used = [], 0.0
            row, used = [*row, one], used + one.wide(size)
    if row:
        yield row


def _laid_out(row: list[ShownPiece], size: float, top: float) -> list[ShownPiece]:
    """Return one row from left to right, shared levels in line, the highest point at `top`."""
    levels: dict[str, float] = {}
    laid: list[ShownPiece] = []
    x = 0.0
    for shown in row:
        cut_piece = shown.cut_piece
        bounds, own = cut_piece.cut.bounds, _levels(cut_piece)
        shared = next((name for name in own if name in levels), None)
        up = levels[shared] - own[shared] if shared else _middle(laid) - (bounds[1] + bounds[3]) / 2
        left, _, right, _ = extent(cut_piece, shown.garment, size)
        laid.append(replace(shown, by=complex(x - left, up), size=size))
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
