"""How the pieces are set in rows so that they come out as large as the place allows."""

from __future__ import annotations

import math

from drafting.draft.pattern import Pattern
from drafting.notebook.picture.view import FOOT
from drafting.sheet.overview import GAP, Rows

SHAPES = (0.6, 0.9, 1.3, 1.8, 2.4, 3.2, 4.5, 6.5, 9.0)
"""Row widths tried, squared over the area of all pieces (ours)."""

LETTERS = 14.0
"""Pixels: a piece's name (common practice: a page's body text is 13 to 16)."""

SMALLEST, LARGEST = 9.0, 42.0
"""mm on the cloth: the ends of a name's size (ours)."""


def rows_for(pattern: Pattern, place: tuple[float, float]) -> Rows:
    """Return the row width and text size at which all pieces are largest in a place of so many pixels."""
    boxes = [cut.cut.bounds for cut in pattern.pieces]
    sizes = [(x1 - x0 + GAP, y1 - y0 + GAP) for x0, y0, x1, y1 in boxes]
    widest, area = max(wide for wide, _ in sizes), math.fsum(wide * high for wide, high in sizes)
    tried = [max(widest, math.sqrt(shape * area)) for shape in SHAPES]
    pixel, row = min((_pixel(sizes, row, place), row) for row in tried)
    return Rows(row, float(min(LARGEST, max(SMALLEST, round(LETTERS * pixel)))))


def _pixel(sizes: list[tuple[float, float]], row: float, place: tuple[float, float]) -> float:
    """Return how many mm a pixel shows once the pieces stand in rows no wider than `row`."""
    rows: list[list[tuple[float, float]]] = [[]]
    for size in sizes:
        if rows[-1] and sum(wide for wide, _ in rows[-1]) + size[0] > row + GAP:
            rows.append([])
        rows[-1].append(size)
    across = max(sum(wide for wide, _ in one) for one in rows)
    up = sum(max(high for _, high in one) for one in rows)
    return max(across / place[0], up / max(place[1] - FOOT, FOOT))
