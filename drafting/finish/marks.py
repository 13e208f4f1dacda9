"""Grainline, stretch arrow, and the room for the label: all inside the stitching line."""

from __future__ import annotations

from functools import lru_cache
from typing import Any

import numpy as np
from numpy.typing import NDArray

from drafting.draft.pattern import CutPiece
from drafting.draft.piece import Piece
from drafting.geometry import Path, area, line, turn
from drafting.ground.remembered import remembered

LONGEST = 400.0
"""mm: no grainline need be longer (ours)."""

SHARE = 0.7
"""Share of the room along the grain that the arrow takes (ours)."""

GRID = 40
"""Cells along the longer side of a piece when room for the label is looked for."""


def grainline(piece: Piece) -> Path | None:
    """Return the arrow along the warp, tail first, through a roomy place; None without room."""
    return _grainline(piece.outline, _legs(piece), piece.grain)


@lru_cache(maxsize=64)
def _grainline(outline: Path, legs: tuple[Path, ...], grain: float) -> Path | None:
    """Return the arrow, kept: an interfacing has the outline of its shell."""
    return _arrow(_clear(outline, legs), turn(grain), SHARE, LONGEST)


def stretch_arrow(piece: Piece, grain: Path | None, off_warp: float) -> Path | None:
    """Return the arrow along the greatest stretch, `off_warp` degrees from the warp, beside the grainline
    where there is room."""
    region = area.without(_clear(piece.outline, _legs(piece)), [grain] if grain else [], 4.0)
    if region.is_empty:
        region = _clear(piece.outline, _legs(piece))
    return _arrow(region, turn((piece.grain + off_warp) % 180), 0.4, 120.0)


@remembered(256)
def label_room(cut: CutPiece) -> tuple[complex, tuple[float, float]]:
    """Return the middle and (width, height, mm) of an upright box free of edges, darts and arrows."""
    piece = cut.piece
    marks = [mark for mark in (cut.grainline, cut.stretch_arrow) if mark]
    x0, y0, x1, y1 = piece.outline.bounds
    cell = max(x1 - x0, y1 - y0) / GRID
    region = area.without(_clear(piece.outline, _legs(piece)), marks, max(3.0, 0.6 * cell))
    if region.is_empty:
        region = area.inset(piece.outline, 0.0)
    return _box(region, cell)


def _legs(piece: Piece) -> tuple[Path, ...]:
    return tuple(leg for dart in piece.darts for leg in (dart.leg_a, dart.leg_b))


@lru_cache(maxsize=64)
def _clear(outline: Path, legs: tuple[Path, ...]) -> Any:
    """Return the region a little way off every edge and inner dart, thinner on small pieces."""
    x0, y0, x1, y1 = outline.bounds
    margin = min(12.0, 0.08 * min(x1 - x0, y1 - y0))
    for share in (1.0, 0.5, 0.2, 0.0):
        region = area.without(area.inset(outline, margin * share), legs, margin * share + 0.1)
        if not region.is_empty:
            return region
    return area.inset(outline, 0.0)


def _arrow(region: Any, direction: complex, share: float, longest: float) -> Path | None:
    """Return the middle of the best stretch of `region` along `direction`.

    Lines are tried across the whole width. A longer stretch is better up to what the arrow needs;
    then the line nearest to the deepest point of the region wins.
    """
    if region.is_empty:
        return None
    heart, across = area.deepest(region), direction * 1j
    x0, y0, x1, y1 = region.bounds
    size = abs(complex(x1 - x0, y1 - y0))
    steps = np.linspace(-0.5, 0.5, 41)
    starts, ends = area.longest_chords(region, np.asarray(heart + across * size * steps), direction)
    lengths = abs(ends - starts)
    best = int(np.argmax(np.minimum(lengths, longest / share) * (1 - 0.8 * abs(steps))))
    if lengths[best] == 0:
        return None
    middle, length = (complex(starts[best] + ends[best]) / 2, min(longest, share * float(lengths[best])))
    return line(middle - direction * length / 2, middle + direction * length / 2)


def _box(region: Any, cell: float) -> tuple[complex, tuple[float, float]]:
    """Return the upright box with the most useful room: up to 160 x 120 mm counts."""
    x0, y0, x1, y1 = region.bounds
    xs, ys = np.arange(x0, x1 + cell, cell), np.arange(y0, y1 + cell, cell)
    inside = area.mask(region, xs, ys)
    full = inside[:-1, :-1] & inside[1:, :-1] & inside[:-1, 1:] & inside[1:, 1:]
    i, j, wide, high = _largest(full, cell)
    if wide == 0:
        return area.deepest(region), (0.0, 0.0)
    corner = complex(xs[j], ys[i])
    return corner + complex(wide, high) * cell / 2, (wide * cell, high * cell)


def _largest(full: NDArray[np.bool_], cell: float) -> tuple[int, int, int, int]:
    """Return row, column, columns and rows of the block of full cells worth most.

    A block is known by its upper row, its first column and its width; how high it reaches is the
    least of its columns' full runs downwards.
    """
    rows, columns = full.shape
    runs = np.zeros((rows, 2 * columns), dtype=int)
    for i in range(rows):
        runs[i, :columns] = np.where(full[i], runs[i - 1, :columns] + 1, 0)
    reach = [runs[:, :columns]]
    for more in range(1, columns):
        reach.append(np.minimum(reach[-1], runs[:, more : more + columns]))
        if not reach[-1].any():
            break
    high = np.stack(reach)
    wide = np.arange(1, len(high) + 1)[:, None, None]
    worth = np.minimum(wide * cell, 160.0) * np.minimum(high * cell, 120.0) + 0.01 * wide * high
    i, j = (int(k) for k in np.unravel_index(np.argmax(worth.max(0)), full.shape))
    more = int(np.argmax(worth[:, i, j]))
    tall = int(high[more, i, j])
    return (i - tall + 1, j, more + 1, tall) if tall else (0, 0, 0, 0)
