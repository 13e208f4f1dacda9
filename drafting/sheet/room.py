"""Free room on a sheet: where a box fits without touching a line.

The plane is cut into square cells. A cell is free where it lies on the wanted side of the outline
and no line passes it; a table of sums then answers for every box at once. It errs to the safe side
by one cell.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Any

import numpy as np
from numpy.typing import NDArray

from drafting.geometry import Path
from drafting.geometry.path import Box

CELL = 4.0
"""mm: fine enough for a label's place on any piece."""

LINE = 1.0
"""mm: a line is taken as chords no farther off than this."""

Floats = NDArray[np.floating[Any]]

Cost = Callable[[Floats, Floats], Floats]
"""From the lower left corners (x, y) of a box to what each place costs."""


@dataclass(frozen=True)
class Room:
    """Cells of `cell` mm from the corner `x0`, `y0` (whole mm); `free[row, column]`, rows upwards."""

    x0: float
    y0: float
    free: NDArray[np.bool_]
    cell: float = CELL

    def __post_init__(self) -> None:
        self.free.setflags(write=False)

    @staticmethod
    def inside(outline: Path, lines: Iterable[Path] = (), cell: float = CELL) -> Room:
        """Return the room inside a closed path, beside the lines in it."""
        return _room(outline, 0.0, lambda within: within, lines, cell)

    @staticmethod
    def around(outline: Path, reach: float) -> Room:
        """Return the room outside a closed path, up to `reach` mm beyond its bounds."""
        return _room(outline, reach, np.logical_not)

    def without(self, paths: Iterable[Path] = (), boxes: Iterable[Box] = ()) -> Room:
        """Return the room left beside these lines and boxes."""
        free = self.free.copy()
        lines = [path.points(LINE) for path in paths]
        if lines:
            _strike(free, self._cells(lines))
        for left, low, right, top in boxes:
            (r0, c0), (r1, c1) = self._cell(left, low), self._cell(right, top)
            free[max(r0, 0) : max(r1 + 1, 0), max(c0, 0) : max(c1 + 1, 0)] = False
        return replace(self, free=free)

    def holds(self, box: Box) -> bool:
        """Return whether every cell under `box` is free."""
        left, low, right, top = box
        (r0, c0), (r1, c1) = self._cell(left, low), self._cell(right, top)
        rows, columns = self.free.shape
        if r0 < 0 or c0 < 0 or r1 >= rows or c1 >= columns:
            return False
        return bool(self.free[r0 : r1 + 1, c0 : c1 + 1].all())

    def place(self, width: float, height: float, cost: Cost) -> complex | None:
        """Return the lower left corner of the cheapest free box of this size, or None."""
        tall, wide = math.ceil(height / self.cell), math.ceil(width / self.cell)
        rows, columns = self.free.shape
        if tall > rows or wide > columns:
            return None
        sums = self._sums
        count = sums[tall:, wide:] - sums[:-tall, wide:] - sums[tall:, :-wide] + sums[:-tall, :-wide]
        row, column = np.nonzero(count == tall * wide)
        if not row.size:
            return None
        x, y = self.x0 + column * self.cell, self.y0 + row * self.cell
        best = int(np.argmin(np.round(cost(x, y), 6)))
        return complex(x[best], y[best])

    @cached_property
    def _sums(self) -> NDArray[np.int32]:
        """How many cells are free below and to the left of each corner of the cells."""
        rows, columns = self.free.shape
        sums = np.zeros((rows + 1, columns + 1), dtype=np.int32)
        np.cumsum(self.free.cumsum(0, dtype=np.int32), axis=1, out=sums[1:, 1:])
        return sums

    def _cell(self, x: float, y: float) -> tuple[int, int]:
        return math.floor((y - self.y0) / self.cell), math.floor((x - self.x0) / self.cell)

    def _cells(self, lines: Sequence[NDArray[np.complex128]]) -> Floats:
        """Return points on lines as (row, column) in cells, close enough together to skip none."""
        points = np.concatenate(lines)
        chords = np.diff(points)
        steps = np.maximum(1, np.ceil(np.abs(chords) / (self.cell / 2)).astype(int))
        ends = np.cumsum([len(line) for line in lines])
        steps[ends[:-1] - 1] = 0  # from the end of one line to the start of the next
        share = (np.arange(steps.sum()) - np.repeat(np.cumsum(steps) - steps, steps)) / np.repeat(steps, steps)
        on_way = np.repeat(points[:-1], steps) + share * np.repeat(chords, steps)
        along = np.append(on_way, points[ends - 1])
        return np.stack([(along.imag - self.y0) / self.cell, (along.real - self.x0) / self.cell])


def near(target: complex, width: float, height: float) -> Cost:
    """Return the cost that draws the middle of a box to `target`."""
    middle = target - complex(width, height) / 2
    return lambda x, y: (x - middle.real) ** 2 + (y - middle.imag) ** 2


def least_page(box: Box, width: float, height: float) -> Cost:
    """Return the cost that keeps the page round `box` and the new box small, then low and left."""
    x0, y0, x1, y1 = box

    def cost(x: Floats, y: Floats) -> Floats:
        across = np.maximum(x + width, x1) - np.minimum(x, x0)
        up = np.maximum(y + height, y1) - np.minimum(y, y0)
        return np.asarray(across * up + (x - x0) + (y - y0))

    return cost


def _room(
    outline: Path,
    reach: float,
    side: Callable[[NDArray[np.bool_]], NDArray[np.bool_]],
    lines: Iterable[Path] = (),
    cell: float = CELL,
) -> Room:
    left, low, right, top = outline.bounds
    x0, y0 = float(math.floor(left - reach)), float(math.floor(low - reach))
    rows = math.ceil((top + reach - y0) / cell) + 1
    columns = math.ceil((right + reach - x0) / cell) + 1
    empty = Room(x0, y0, np.ones((rows, columns), dtype=bool), cell)
    ring = np.append(outline.points(0.5), outline.start)
    x, y = x0 + cell * (np.arange(columns) + 0.5), y0 + cell * (np.arange(rows) + 0.5)
    free = side(_within(ring, x, y))
    _strike(free, empty._cells([ring, *(path.points(LINE) for path in lines)]))
    return replace(empty, free=free)


def _within(ring: NDArray[np.complex128], x: Floats, y: Floats) -> NDArray[np.bool_]:
    """Return for each (y, x) whether it lies inside, by counting crossings to the left of it."""
    a, b = ring[:-1], ring[1:]
    rows, edges = np.nonzero((a.imag <= y[:, None]) != (b.imag <= y[:, None]))
    a, b = a[edges], b[edges]
    crossing = a.real + (y[rows] - a.imag) * (b.real - a.real) / (b.imag - a.imag)
    passed = np.zeros((len(y), len(x) + 1), dtype=int)
    np.add.at(passed, (rows, np.searchsorted(x, crossing, side="right")), 1)
    return np.asarray(passed.cumsum(1)[:, :-1] % 2 == 1)


def _strike(free: NDArray[np.bool_], cells: Floats) -> None:
    """Take every cell within a quarter of a cell of these points out of the room."""
    rows, columns = free.shape
    shifts = np.array([(up, across) for up in (-0.25, 0.25) for across in (-0.25, 0.25)])
    r, c = np.floor(cells[:, None, :] + shifts.T[:, :, None]).astype(int).reshape(2, -1)
    kept = (r >= 0) & (r < rows) & (c >= 0) & (c < columns)
    free[r[kept], c[kept]] = False
