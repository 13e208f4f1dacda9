"""The signs page of a fitting sheet: each sign drawn, its causes in order, and what to try."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from drafting.geometry import Path
from drafting.geometry.area import clipped_to
from drafting.geometry.path import Box
from drafting.sheet import Layer, Sheet, Stroke, Text, box_path
from drafting.sheet.fitting_sheet import HIGH, WIDE

COLUMNS, ROWS = 3, 4
DRAWN = 29.0
"""mm: how tall a sign is drawn (ours)."""

SIZE, LETTERS = 2.1, 48
"""mm: the text of the causes, and letters to a line (ours: 6 points)."""


@dataclass(frozen=True)
class SignCell:
    """One sign: what is seen, its drawing (lines within `box`, mm), and what is said of its causes."""

    seen: str
    outlines: tuple[Path, ...]
    lines: tuple[Path, ...]
    box: Box
    said: tuple[str, ...]


def sign_pages(title: str, head: str, cells: Sequence[SignCell]) -> Iterator[Sheet]:
    """Yield pages of signs, three by four."""
    each = COLUMNS * ROWS
    for first in range(0, len(cells), each):
        strokes: list[Stroke] = []
        texts = [
            Text(complex(0, HIGH - 5.0), 4.4, (title,), bold=True),
            Text(complex(0, HIGH - 10.0), 2.5, (head,), layer=Layer.GUIDE),
        ]
        for place, cell in enumerate(cells[first : first + each]):
            row, column = divmod(place, COLUMNS)
            corner = complex(column * WIDE / COLUMNS, HIGH - 13.0 - row * (HIGH - 14.0) / ROWS)
            drawn, said = _cell(cell, corner, f"sign.{first + place}")
            strokes += drawn
            texts += said
        yield Sheet(title, WIDE, HIGH, tuple(strokes), tuple(texts), head)


def _cell(cell: SignCell, corner: complex, name: str) -> tuple[list[Stroke], list[Text]]:
    """Return a sign with its upper left corner at `corner`."""
    wide = WIDE / COLUMNS - 4.0
    x0, y0, x1, y1 = cell.box
    scale = min(DRAWN / (y1 - y0), wide / (x1 - x0))
    seen = tuple(textwrap.wrap(cell.seen, 38))
    low = corner - 1j * (5.0 + 3.4 * len(seen) + DRAWN)
    by = low + complex((wide - scale * (x1 - x0)) / 2, 0.0) - scale * complex(x0, y0)
    frame = box_path(cell.box)
    parts = [part for path in cell.outlines for part in clipped_to(path, frame)]
    body = tuple(path.mapped(lambda p: scale * p + by) for path in parts)
    folds = tuple(path.mapped(lambda p: scale * p + by) for path in cell.lines)
    strokes = [Stroke(Layer.CLOTH, body, f"{name}.figure"), Stroke(Layer.STRETCH, folds, f"{name}.folds")]
    texts = [Text(corner - 4.0j, 2.6, seen, bold=True)]
    lines = tuple(row for said in cell.said for row in textwrap.wrap(said, LETTERS, subsequent_indent="   "))
    texts.append(Text(low - 4.0j, SIZE, lines))
    return strokes, texts
