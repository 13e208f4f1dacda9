"""Outlines as cells: which cells of a page an outline touches, in each quarter turn."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache, cached_property
from typing import Any

import numpy as np
from numpy.typing import NDArray

from drafting.sheet.room import Floats

Bits = NDArray[np.bool_]
Corners = Sequence[complex]


@dataclass(frozen=True, slots=True)
class PlaceOnPage:
    """How an outline lies: turned by `turn` degrees about 0, then moved by `move` (mm, y up)."""

    turn: int
    move: complex

    def of(self, p: complex) -> complex:
        return p * self.factor + self.move

    @property
    def factor(self) -> complex:
        """The exact complex number that turns by these quarters."""
        return (1, 1j, -1, -1j)[self.turn // 90 % 4]


@dataclass(frozen=True, slots=True)
class Raster:
    """Cells of a page: `rows` x `columns` of them, `width` x `height` mm each."""

    rows: int
    columns: int
    width: float
    height: float


class RasterOutline:
    """An outline in one quarter turn on the raster, its upper left corner at a cell's."""

    def __init__(self, ring: Corners, turn: int, raster: Raster) -> None:
        self.turn, self.raster = turn, raster
        points = np.asarray(ring) * PlaceOnPage(turn, 0j).factor
        self.corner = complex(points.real.min(), points.imag.max())
        self.cells = touched_cells(points, self.corner, raster)
        self._spectra: dict[tuple[int, int], Any] = {}

    @cached_property
    def pages(self) -> Bits:
        """Whether the outline touches a page, [cell down, page down, cell right, page right]."""
        sums = np.pad(self.cells.astype(int).cumsum(0).cumsum(1), ((1, 0), (1, 0)))
        top, foot = _bounds(self.cells.shape[0], self.raster.rows)
        left, right = _bounds(self.cells.shape[1], self.raster.columns)
        t, f = top[:, :, None, None], foot[:, :, None, None]
        a, b = left[None, None], right[None, None]
        return np.asarray(sums[f, b] - sums[t, b] - sums[f, a] + sums[t, a] > 0)

    @cached_property
    def weights(self) -> tuple[Floats, NDArray[np.int_]]:
        """The same as numbers, and by phase [cell down, cell right] which column of them is its own.

        They have a row a page from the first one on. Most phases touch the same pages as the one beside.
        """
        table = self.pages.transpose(1, 3, 0, 2)
        flat = table.reshape(table.shape[0] * table.shape[1], -1)
        bits = np.packbits(flat, axis=0)
        keys: NDArray[Any] = bits
        axis = 1
        if len(bits) <= 8:  # as one whole number each they are sorted sooner
            keys, axis = np.pad(bits, ((0, 8 - len(bits)), (0, 0))).T.copy().view(np.uint64)[:, 0], 0
        _, first, own = np.unique(keys, axis=axis, return_index=True, return_inverse=True)
        return flat[:, first].astype(np.float32), own.reshape(self.raster.rows, self.raster.columns)

    def spectrum(self, size: tuple[int, int]) -> Any:
        """Return the transform of the cells, for finding where they strike others."""
        if size not in self._spectra:
            self._spectra[size] = np.conj(np.fft.rfft2(self.cells.astype(np.float32), size))
        return self._spectra[size]


@cache
def quick_length(least: int) -> int:
    """Return the next number of 2s, 3s and 5s alone: a transform of so many cells is quick.

    >>> [quick_length(least) for least in (1, 7, 97, 1000)]
    [1, 8, 100, 1000]
    """
    odd = (int(3**i * 5**j) for i in range(20) for j in range(14))
    return min(int(o) << max(0, math.ceil(math.log2(least / o))) for o in odd if o < 2 * least)


def _bounds(length: int, per_page: int) -> tuple[NDArray[np.int_], NDArray[np.int_]]:
    """Return the first cell and the one past the last of each page, for each phase."""
    count = (per_page + length - 2) // per_page + 1
    start = np.arange(count)[None, :] * per_page - np.arange(per_page)[:, None]
    return np.clip(start, 0, length), np.clip(start + per_page, 0, length)


def touched_cells(points: NDArray[np.complex128], corner: complex, raster: Raster) -> Bits:
    """Return the cells that a closed outline touches or encloses, row 0 at the top."""
    x = (points.real - corner.real) / raster.width
    y = (corner.imag - points.imag) / raster.height
    ring = np.append(x + 1j * y, x[0] + 1j * y[0])
    rows, columns = max(1, math.ceil(y.max())), max(1, math.ceil(x.max()))
    cells = _enclosed(ring, rows, columns)
    along = _stretches(ring)
    r, c = along.imag.astype(int), along.real.astype(int)
    cells[np.minimum(r, rows - 1), np.minimum(c, columns - 1)] = True
    return cells


def _stretches(ring: NDArray[np.complex128]) -> NDArray[np.complex128]:
    """Return the middle of each stretch of a ring between two lines of the grid: one point a cell passed."""
    a, way = ring[:-1], np.diff(ring)
    across, down = _met(a.real, way.real), _met(a.imag, way.imag)
    edges = np.concatenate((np.arange(len(a)), across[0], down[0]))
    shares = np.concatenate((np.zeros(len(a)), across[1], down[1]))
    order = np.lexsort((shares, edges))
    edges, shares = edges[order], shares[order]
    ends = np.ones(len(shares))
    ends[:-1][edges[1:] == edges[:-1]] = shares[1:][edges[1:] == edges[:-1]]
    return np.asarray(a[edges] + way[edges] * (shares + ends) / 2)


def _met(start: Floats, way: Floats) -> tuple[NDArray[np.int_], Floats]:
    """Return which edges meet a line of the grid, and how far along: an entry a meeting."""
    low = np.ceil(np.minimum(start, start + way)).astype(int)
    counts = np.maximum(0, np.floor(np.maximum(start, start + way)).astype(int) - low + 1)
    counts[way == 0] = 0
    edges = np.repeat(np.arange(len(start)), counts)
    lines = low[edges] + np.arange(counts.sum()) - np.repeat(np.cumsum(counts) - counts, counts)
    return edges, np.clip((lines - start[edges]) / way[edges], 0.0, 1.0)


def _enclosed(ring: NDArray[np.complex128], rows: int, columns: int) -> Bits:
    """Return the cells whose middle lies inside, by counting crossings to the left of it."""
    a, b, y = ring[:-1], ring[1:], np.arange(rows) + 0.5
    row, edge = np.nonzero((a.imag <= y[:, None]) != (b.imag <= y[:, None]))
    a, b = a[edge], b[edge]
    crossing = a.real + (y[row] - a.imag) * (b.real - a.real) / (b.imag - a.imag)
    passed = np.zeros((rows, columns + 1), dtype=int)
    np.add.at(passed, (row, np.searchsorted(np.arange(columns) + 0.5, crossing)), 1)
    return np.asarray(passed.cumsum(1)[:, :-1] % 2 == 1)
