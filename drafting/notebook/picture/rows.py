"""How the pieces are set in rows so that they come out as large as the place allows."""

from __future__ import annotations

import math
from itertools import pairwise

from drafting.draft.pattern import Pattern
from drafting.geometry.path import Box
from drafting.notebook.picture.view import FOOT
from drafting.sheet.overview import GAP, Rows
from drafting.sheet.shown_piece import extent

SHAPES = (0.6, 0.9, 1.3, 1.8, 2.4, 3.2, 4.5, 6.5, 9.0)
"""Row widths tried, squared over the area of all pieces (ours)."""

LETTERS = 14.0
"""Pixels: a piece's name (common practice: a page's body text is 13 to 16)."""

SMALLEST, LARGEST = 9.0, 42.0
"""mm on the cloth: the ends of a name's size (ours)."""


WORSE = 1.2
"""Times smaller than they could be, at which pieces are set in new rows (ours: until then none jumps)."""

_Sizes = list[tuple[float, float]]


def rows_for(pattern: Pattern, place: tuple[float, float], kept: Rows | None = None) -> Rows:
    """Return the row width and text size at which all pieces are largest in a place of so many pixels.

    Rows that are `kept` stay while they do nearly as well.
    """
    size = kept.size if kept else _letters(_best([_apart(cut.cut.bounds) for cut in pattern.pieces], place)[0])
    for _ in range(2):  # words beside a piece take room as well, and their size is found with it
        sizes = [_apart(extent(cut, pattern.garment, size)) for cut in pattern.pieces]
        pixel, row = _best(sizes, place)
        if kept and _pixel(sizes, kept.wide, place) <= WORSE * pixel:
            return kept
        if abs(_letters(pixel) - size) <= 0.2 * size:
            break
        size = _letters(pixel)
    return Rows(_with_room(sizes, row), size)


def _apart(box: Box) -> tuple[float, float]:
    x0, y0, x1, y1 = box
    return x1 - x0 + GAP, y1 - y0 + GAP


def _letters(pixel: float) -> float:
    return float(min(LARGEST, max(SMALLEST, round(LETTERS * pixel))))


def _best(sizes: _Sizes, place: tuple[float, float]) -> tuple[float, float]:
    """Return the fewest mm a pixel has to show, and the row width at which it does."""
    widest, area = max(wide for wide, _ in sizes), math.fsum(wide * high for wide, high in sizes)
    tried = [max(widest, math.sqrt(shape * area)) for shape in SHAPES]
    return min((_pixel(sizes, row, place), row) for row in tried)


def _broken(sizes: _Sizes, row: float) -> list[_Sizes]:
    rows: list[_Sizes] = [[]]
    for size in sizes:
        if rows[-1] and _wide(rows[-1]) + size[0] > row + GAP:
            rows.append([])
        rows[-1].append(size)
    return rows


def _wide(row: _Sizes) -> float:
    return math.fsum(wide for wide, _ in row)


def _with_room(sizes: _Sizes, row: float) -> float:
    """Return a width that breaks the rows at the same pieces, with room for them to grow and to shrink."""
    rows = _broken(sizes, row)
    least = max(map(_wide, rows))
    most = min((_wide(one) + after[0][0] for one, after in pairwise(rows)), default=2 * least)
    return (least + most) / 2 - GAP if most > least else row


def _pixel(sizes: _Sizes, row: float, place: tuple[float, float]) -> float:
    """Return how many mm a pixel shows once the pieces stand in rows no wider than `row`."""
    rows = _broken(sizes, row)
    across = max(map(_wide, rows))
    up = math.fsum(max(high for _, high in one) for one in rows)
    return max(across / place[0], up / max(place[1] - FOOT, FOOT))
