"""What a page carries beside the pieces: joins, its name, and the squares that prove its scale.

Lines to cut along lie in the middle of the overlaps, and crosses and diamonds on them: cut along the
line, a page has half of each, and its neighbour the other half.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from drafting.geometry import Path, line
from drafting.geometry.path import Box
from drafting.printing.pages import Place, Tiling, page_name
from drafting.sheet import Anchor, Layer, Stroke, Text, box_path
from drafting.sheet.scale import SQUARES

ARM = 0.8
"""Reach of crosses and diamonds, as a share of half the overlap."""

INSET = 0.2
"""mm by which lines stay within a page's window, so that their ink does."""

STAMPED = 2.6
"""mm: size of the words in a page's square (ours)."""

SIDE = max(side for _, _, side in SQUARES)
BIN = 3.0
"""mm: how finely ink is counted where the squares look for a quiet place (ours)."""

WORDS = 1000.0
"""What a bin of words costs beside a point of a line: no line is worth a word (ours)."""

BESIDE = 6.0
"""mm from a diamond to the name of the page that belongs there."""

CLEAR = 2.0
"""mm between the squares and the line to cut along."""

Marks = tuple[tuple[Stroke, ...], tuple[Text, ...]]


@dataclass(frozen=True, slots=True)
class Stamp:
    """What is printed in the square of a page: its name, and lines that say what it belongs to."""

    name: str
    lines: tuple[str, ...]


def page_marks(tiling: Tiling, place: Place, stamp: Stamp, corner: complex, words: Sequence[Box] = ()) -> Marks:
    """Return a page's marks on the plane, the squares at their lower left `corner`.

    The neighbours' names stand clear of the squares and of these `words`.
    """
    strokes, texts = _joins(tiling, place, (*words, square_box(corner)))
    squares, stamped = stamped_squares(corner, stamp)
    return (*strokes, *squares), (*texts, *stamped)


def _joins(tiling: Tiling, place: Place, taken: Sequence[Box]) -> tuple[list[Stroke], list[Text]]:
    strokes: list[Stroke] = []
    texts: list[Text] = []
    window, cell = tiling.window(place), tiling.cell(place)
    for side, other in tiling.neighbours(place).items():
        start, end, out = _edge(side, window, cell)
        reach = ARM * tiling.paper.overlap / 2
        mark = f"join.{side}"
        strokes.append(Stroke(Layer.JOIN, (line(start, end),), f"{mark}.line"))
        for share in (1 / 6, 5 / 6):
            at = start + share * (end - start)
            cross = (line(at - out * reach, at + out * reach), line(at - 1j * out * reach, at + 1j * out * reach))
            strokes.append(Stroke(Layer.JOIN, cross, f"{mark}.cross.{share:.2f}"))
        middle = (start + end) / 2
        diamond = Path.polygon(*(middle + reach * out * turn for turn in (1, 1j, -1, -1j)))
        strokes.append(Stroke(Layer.JOIN, (diamond,), f"{mark}.diamond", closed=True))
        room = abs(end - start) / 3
        tried = [_neighbour(side, middle, page_name(other), way) for way in _ways(room)]
        free = (text for text in tried if not any(_touch(text.bounds, box) for box in taken))
        texts.append(next(free, tried[0]))
    return strokes, texts


def _edge(side: str, window: Box, cell: Box) -> tuple[complex, complex, complex]:
    """Return the ends of the line to cut along on one side, and the way out over it."""
    left, low, right, high = (window[0] + INSET, window[1] + INSET, window[2] - INSET, window[3] - INSET)
    if side in ("left", "right"):
        x, out = (cell[0], -1 + 0j) if side == "left" else (cell[2], 1 + 0j)
        return complex(x, low), complex(x, high), out
    y, out = (cell[3], 1j) if side == "above" else (cell[1], -1j)
    return complex(left, y), complex(right, y), out


def _ways(room: float) -> Iterator[float]:
    """Yield how far along a side its neighbour's name may stand from the middle, the nearest first."""
    for n in range(int((room - BESIDE) / 6)):
        yield from (BESIDE + 6.0 * n, -BESIDE - 6.0 * n)


def _neighbour(side: str, middle: complex, name: str, way: float) -> Text:
    """Return the neighbour's name, in the strip that is cut off or covered."""
    size = 2.2 if len(name) < 4 else 1.7
    if side in ("left", "right"):
        at = middle + complex(0.6 if side == "right" else -0.6, way if way > 0 else way - 0.75 * size)
        return Text(at, size, (name,), "start" if side == "right" else "end", layer=Layer.JOIN)
    down = 1.2 if side == "above" else -1.2 - 0.75 * size
    anchor: Anchor = "start" if way > 0 else "end"
    return Text(middle + complex(way, down), size, (name,), anchor, layer=Layer.JOIN)


def _touch(a: Box, b: Box) -> bool:
    return a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]


def stamped_squares(corner: complex, stamp: Stamp) -> Marks:
    """Return the 4 in and the 100 mm square, on one lower left corner, with a stamp inside."""
    strokes = tuple(
        Stroke(Layer.SCALE, (_square(corner, side),), f"scale-check.{key}", closed=True)
        for key, _, side in SQUARES
    )
    at = corner + complex(3, 3)
    rows = ("inner square 100 mm, outer 4 in: measure both ways", *stamp.lines)
    low = 1.32 * STAMPED * (len(rows) - 1)
    words = [
        Text(at + 1j * (low + 4), 12.0, (stamp.name,), bold=True, layer=Layer.PAGE),
        Text(at + 1j * low, STAMPED, rows[:1], layer=Layer.SCALE),
        Text(at + 1j * (low - 1.32 * STAMPED), STAMPED, rows[1:], layer=Layer.PAGE),
    ]
    return strokes, tuple(text for text in words if text.lines != ("",))


def _square(corner: complex, side: float) -> Path:
    return box_path((corner.real, corner.imag, corner.real + side, corner.imag + side))


def square_box(corner: complex) -> Box:
    """Return what the squares take up, from their lower left corner."""
    return corner.real, corner.imag, corner.real + SIDE, corner.imag + SIDE


def quiet_corner(cell: Box, ink: NDArray[np.complex128], texts: Sequence[Box] = ()) -> complex:
    """Return the lower left corner for the squares, in `cell`: off these `texts` where they can be, and
    where the least `ink` (points) lies in them."""
    x0, y0, x1, y1 = (cell[0] + CLEAR, cell[1] + CLEAR, cell[2] - CLEAR, cell[3] - CLEAR)
    across, up = max(1, int((x1 - x0) / BIN)), max(1, int((y1 - y0) / BIN))
    rows, columns = ((part - start) / BIN for part, start in ((ink.imag, y0), (ink.real, x0)))
    inside = (rows >= 0) & (rows < up) & (columns >= 0) & (columns < across)
    bins = rows[inside].astype(int) * across + columns[inside].astype(int)
    counts = np.bincount(bins, minlength=up * across).reshape(up, across).astype(float)
    for box in texts:
        left, low = (max(0, int((v - start) // BIN)) for v, start in zip(box[:2], (x0, y0), strict=True))
        right, top = (max(0, int((v - start) // BIN) + 1) for v, start in zip(box[2:], (x0, y0), strict=True))
        counts[low:top, left:right] += WORDS
    side = int(np.ceil((SIDE + CLEAR) / BIN))
    high, wide = up - side + 1, across - side + 1
    if high < 1 or wide < 1:
        return complex(x0, y0)
    words = min(side, int(30 / BIN)), min(side, int(75 / BIN))  # what the stamp covers
    whole, stamp = _sums(counts, side, side), _sums(counts, *words)
    cost = whole[:high, :wide] + 3 * stamp[:high, :wide]
    row, column = divmod(int(np.argmin(cost)), wide)
    return complex(x0 + BIN * column, y0 + BIN * row)


def _sums(counts: NDArray[np.float64], high: int, wide: int) -> NDArray[np.float64]:
    """Return the sum over every box of so many bins, by its lower left bin."""
    table = np.pad(counts.cumsum(0).cumsum(1), ((1, 0), (1, 0)))
    return np.asarray(table[high:, wide:] - table[:-high, wide:] - table[high:, :-wide] + table[:-high, :-wide])


def ink_points(strokes: Sequence[Stroke], texts: Sequence[Text]) -> NDArray[np.complex128]:
    """Return points about 3 mm apart along lines and over words."""
    found = [*_along(strokes), *(_over(text.bounds) for text in texts)]
    return np.concatenate(found) if found else np.zeros(0, dtype=complex)


def _along(strokes: Sequence[Stroke]) -> Iterator[NDArray[np.complex128]]:
    for stroke in strokes:
        for path in stroke.paths:
            points = np.asarray(path.points(0.5))
            steps = np.maximum(1, np.ceil(np.abs(np.diff(points)) / BIN)).astype(int)
            share = np.arange(steps.sum()) - np.repeat(np.cumsum(steps) - steps, steps)
            yield np.repeat(points[:-1], steps) + share * np.repeat(np.diff(points) / steps, steps)


def _over(box: Box) -> NDArray[np.complex128]:
    x, y = np.arange(box[0], box[2], BIN), np.arange(box[1], box[3], BIN)
    return np.asarray(x[None, :] + 1j * y[:, None]).ravel()
