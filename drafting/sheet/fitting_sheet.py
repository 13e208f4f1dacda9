"""The fitting sheet of one garment: her figure, the pieces small, a line a seam to write on at the body.

Drawn for the paper that A4 and Letter have in common; a long list goes on over further pages.
"""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from drafting.draft.pattern import CutPiece
from drafting.finish.label import piece_title, spoken
from drafting.geometry import Path, line
from drafting.sheet import Layer, Sheet, Stroke, Text
from drafting.sheet.figures import SmallFigure

WIDE, HIGH = 190.0, 259.0
"""mm that are printed on A4 and on Letter alike."""

FIGURE, PIECES = 78.0, 44.0
"""mm: how tall the figure is drawn, and how tall the room of the small pieces is (ours)."""

ROW = 7.4
"""mm between two lines to write on by hand (ours: as a ruled exercise book)."""

COLUMNS = (
    (0.0, "seam or edge"),
    (58.0, "left in it"),
    (84.0, "side"),
    (103.0, "what, how much, where"),
    (156.0, "as"),
)
"""Where each column begins, mm, and its heading."""

SIDES, COUNTED = "L  R  both", "pinch  total  seam"

HANDS = {"left": "L only", "right": "R only"}
"""What stands where a side is marked, on a line that is of one side."""


@dataclass(frozen=True)
class SheetWords:
    """What a sheet says beyond its lines: `fields` to fill in, `order` of looking, `rules` and `cautions`."""

    title: str
    subtitle: str
    fields: tuple[str, ...]
    order: tuple[str, ...]
    rules: tuple[str, ...]
    cautions: tuple[str, ...]


@dataclass(frozen=True)
class RowToWrite:
    """One row: what it is called, where a fitting file would have it, what is left in it as words; `hand` is the
    one side that it exists on."""

    name: str
    where: str
    left: str
    hand: str = ""


def fitting_sheets(
    words: SheetWords, views: Sequence[SmallFigure], pieces: Sequence[CutPiece], rows: Sequence[RowToWrite]
) -> tuple[Sheet, ...]:
    """Return the pages of one garment's fitting sheet, true size of the paper, mm."""
    strokes, texts, top = _head(words)
    figures, names = _figures(views, top - 4.0)
    top -= FIGURE + 12.0
    small, numbers = _small_pieces(pieces, top)
    top -= PIECES + 7.0
    strokes, texts = [*strokes, *figures, *small], [*texts, *names, *numbers]
    pages: list[Sheet] = []
    left = list(rows)
    while True:
        room = int((top - 10.0) / ROW) - 1
        here, left = left[:room], left[room:]
        ruled, said = _table(here, top)
        strokes, texts = [*strokes, *ruled], [*texts, *said]
        top -= ROW * (len(here) + 1.4)
        if not left:
            break
        pages.append(_page(words, strokes, texts, len(pages)))
        strokes, texts, top = [], [_heading(words)], HIGH - 12.0
    closing = _closing(words)
    tall = 3.9 * sum(len(lines) for _, lines in closing) + 6.0 * len(closing)
    if top < tall + 4.0:
        pages.append(_page(words, strokes, texts, len(pages)))
        strokes, texts, top = [], [_heading(words)], HIGH - 14.0
    texts += _flowing(closing, top)
    pages.append(_page(words, strokes, texts, len(pages)))
    return tuple(pages)


def _page(words: SheetWords, strokes: Sequence[Stroke], texts: Sequence[Text], number: int) -> Sheet:
    foot = Text(complex(WIDE, 1.5), 2.4, (f"page {number + 1}",), "end", layer=Layer.GUIDE)
    said = f"{words.title}. {words.subtitle}"
    return Sheet(words.title, WIDE, HIGH, tuple(strokes), (*texts, foot), said)


def _heading(words: SheetWords) -> Text:
    return Text(complex(0, HIGH - 5.0), 3.4, (f"{words.title}, continued",), bold=True)


def _head(words: SheetWords) -> tuple[list[Stroke], list[Text], float]:
    """Return title and the fields to fill in, and how far down they reach."""
    texts = [
        Text(complex(0, HIGH - 6.0), 6.0, (words.title,), bold=True),
        Text(complex(0, HIGH - 11.5), 3.0, (words.subtitle,)),
    ]
    strokes, y = [], HIGH - 19.0
    step = WIDE / len(words.fields)
    for place, name in enumerate(words.fields):
        x = place * step
        texts.append(Text(complex(x, y), 2.7, (name,), layer=Layer.GUIDE))
        rule = line(complex(x + 1.7 * len(name) + 1.0, y - 0.6), complex(x + step - 3.0, y - 0.6))
        strokes.append(Stroke(Layer.GUIDE, (rule,), f"field.{place}"))
    return strokes, texts, y - 3.0


def _figures(views: Sequence[SmallFigure], top: float) -> tuple[list[Stroke], list[Text]]:
    """Return the figure from all sides, feet on one line, hands named as the wearer has them."""
    tall = max(view.box[3] for view in views)
    wide = sum(view.box[2] - view.box[0] for view in views)
    scale = min(FIGURE / tall, 0.8 * WIDE / wide)
    gap = (WIDE - scale * wide) / len(views)
    x, floor = gap / 2, top - FIGURE
    strokes, texts = [], []
    for view in views:
        by = complex(x - scale * view.box[0], floor)
        for layer, paths in ((Layer.CLOTH, view.outlines), (Layer.GUIDE, view.details)):
            moved = tuple(_shrunk(path, scale, by) for path in paths)
            strokes.append(Stroke(layer, moved, f"figure.{view.name}.{layer}"))
        middle = x + scale * (view.box[2] - view.box[0]) / 2
        texts.append(Text(complex(middle, floor - 4.0), 2.7, (view.name,), "middle"))
        texts += _hands(view, x, scale, floor)
        x += scale * (view.box[2] - view.box[0]) + gap
    return strokes, texts


def _hands(view: SmallFigure, x: float, scale: float, floor: float) -> Iterator[Text]:
    width, y = scale * (view.box[2] - view.box[0]), floor + 0.8 * FIGURE
    yield Text(complex(x - 1.0, y), 3.4, (view.hands[0],), "end", bold=True)
    yield Text(complex(x + width + 1.0, y), 3.4, (view.hands[1],), bold=True)


def _small_pieces(pieces: Sequence[CutPiece], top: float) -> tuple[list[Stroke], list[Text]]:
    """Return the pieces' stitching lines small, in rows that fill the room, each with its number and name."""
    for rows in range(1, 5):
        room = PIECES / rows - 6.0
        scale = min(room / max(_size(cut)[1] for cut in pieces), WIDE / max(_size(cut)[0] for cut in pieces))
        lines = _in_rows(pieces, scale)
        if len(lines) <= rows:
            break
    strokes, texts = [], []
    for place, row in enumerate(lines):
        low, x = top - (place + 1) * PIECES / rows + 4.0, 0.0
        spare = WIDE - sum(_room(cut, scale) for cut in row)
        for cut in row:
            x0, y0, _, _ = cut.piece.outline.bounds
            by = complex(x + _aside(cut, scale), low) - scale * complex(x0, y0)
            paths = [cut.piece.outline, *(p for level in cut.piece.levels for p in level.paths)]
            small = [_shrunk(path, scale, by) for path in paths]
            strokes.append(Stroke(Layer.PLACEMENT, (small[0],), f"piece.{cut.piece.name}", closed=True))
            strokes += [Stroke(Layer.LEVEL, (p,), f"piece.{cut.piece.name}.{n}") for n, p in enumerate(small[1:])]
            texts.append(Text(complex(x + _room(cut, scale) / 2, low - 3.2), 2.3, (_name(cut),), "middle"))
            x += _room(cut, scale) + spare / len(row)
    return strokes, texts


def _shrunk(path: Path, scale: float, by: complex) -> Path:
    return path.mapped(lambda p: scale * p + by)


def _in_rows(pieces: Sequence[CutPiece], scale: float) -> list[list[CutPiece]]:
    rows: list[list[CutPiece]] = [[]]
    for cut in pieces:
        if rows[-1] and sum(_room(one, scale) for one in (*rows[-1], cut)) > WIDE:
            rows.append([])
        rows[-1].append(cut)
    return rows


def _name(cut: CutPiece) -> str:
    """Return what a small piece is called; one of one hand says whose, as the table does."""
    hand = {"left": " L", "right": " R"}.get(cut.piece.hand or "", "")
    return f"{cut.number} {piece_title(cut.piece)}{hand}"


def _size(cut: CutPiece) -> tuple[float, float]:
    x0, y0, x1, y1 = cut.piece.outline.bounds
    return x1 - x0, y1 - y0


def _room(cut: CutPiece, scale: float) -> float:
    """Return how wide a small piece with its name is."""
    return max(scale * _size(cut)[0], 1.5 * len(_name(cut))) + 3.0


def _aside(cut: CutPiece, scale: float) -> float:
    return (_room(cut, scale) - scale * _size(cut)[0]) / 2


def _table(rows: Sequence[RowToWrite], top: float) -> tuple[list[Stroke], list[Text]]:
    """Return the ruled lines: name and place, what is left, side, a blank, and how it is counted."""
    texts = [Text(complex(x + 1.0, top - 3.6), 2.4, (name,), layer=Layer.GUIDE) for x, name in COLUMNS]
    strokes = [_rule(top - 5.0, "top")]
    for place, row in enumerate(rows):
        y = top - 5.0 - ROW * (place + 1)
        texts += [
            Text(
                complex(1.0, y + 3.4),
                2.7,
                (textwrap.shorten(spoken(row.name), 34, placeholder=" ..."),),
                bold=True,
            ),
            Text(
                complex(1.0, y + 0.9),
                1.9,
                (textwrap.shorten(row.where, 48, placeholder=" ..."),),
                layer=Layer.GUIDE,
            ),
            Text(complex(COLUMNS[1][0] + 1.0, y + 2.2), 2.3, (row.left,)),
            Text(complex(COLUMNS[2][0] + 1.0, y + 2.2), 2.4, (HANDS.get(row.hand, SIDES),), layer=Layer.GUIDE),
            Text(complex(COLUMNS[4][0] + 1.0, y + 2.2), 2.4, (COUNTED,), layer=Layer.GUIDE),
        ]
        strokes.append(_rule(y, f"row.{place}"))
    low = top - 5.0 - ROW * len(rows)
    ups = tuple(line(complex(x, top - 5.0), complex(x, low)) for x, _ in COLUMNS[1:])
    return ([*strokes, Stroke(Layer.GUIDE, ups, "columns")] if rows else []), texts if rows else []


def _rule(y: float, name: str) -> Stroke:
    return Stroke(Layer.GUIDE, (line(complex(0, y), complex(WIDE, y)),), f"rule.{name}")


def _closing(words: SheetWords) -> list[tuple[str, tuple[str, ...]]]:
    """Return the headed paragraphs that end a sheet, wrapped to the page."""
    parts = (("In this order", words.order), ("A note is one line", words.rules), ("Mind", words.cautions))
    return [(head, tuple(row for said in rows for row in textwrap.wrap(said, 112))) for head, rows in parts]


def _flowing(parts: Sequence[tuple[str, tuple[str, ...]]], top: float) -> Iterator[Text]:
    for head, lines in parts:
        top -= 5.0
        yield Text(complex(0, top), 3.2, (head,), bold=True)
        yield Text(complex(0, top - 4.4), 2.7, lines)
        top -= 3.6 * len(lines) + 3.0
