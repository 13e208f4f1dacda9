"""Where each piece goes on the paper, so that few pages are printed. Knows only outlines.

Cloth asks for the least length; paper for the fewest pages, and for few joins inside a piece. So the
plane is a grid of small cells, each outline the cells that it touches, and every place and quarter
turn of an outline is weighed at once by how many blank pages it would begin. Large outlines come
first; other orders are tried as far as `COUNT` allows. The same outlines give the same places.
"""

from __future__ import annotations

import math
import random
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any, NamedTuple

import numpy as np
from numpy.lib.stride_tricks import sliding_window_view

from drafting.ground.errors import DraftError
from drafting.printing.pages import Place
from drafting.printing.raster import Bits, Corners, PlaceOnPage, Raster, RasterOutline, quick_length
from drafting.sheet.room import Floats

CELL = 5.0
"""mm, about: no two outlines share a cell (ours: fine enough beside a page)."""

MOST_CELLS = 50_000
"""Cells of a plane; a larger one takes larger cells (ours: keeps a long roll under a second)."""

ROOM = 1.5
"""A plane's area as a multiple of the boxes round the outlines; a fuller one is made longer (ours)."""

COUNT = 120
"""Outlines placed in all orders together, one order at least (ours: a third of a second)."""

TURNS = (0, 90, 180, 270)

JOINED, FAR = 0.12, 0.002
"""What a page of a piece costs beside a blank page begun (1), and a page's way from the corner (ours)."""

UPSIDE = {0: 0.0, 90: 0.05, 180: 0.25, 270: 0.05}
"""What a turn costs beside a blank page begun: a piece is known best as it is worn (ours)."""


@dataclass(frozen=True)
class Placing:
    """Where outlines lie on a plane of `rows` x `columns` cells of a page each, its corner at 0."""

    spots: tuple[PlaceOnPage, ...]
    rows: int
    columns: int
    used: tuple[Place, ...]


CLOSE = 1e-4
"""What costs differ by more than, for all their digits."""


class Bound(NamedTuple):
    """What a turn of an outline costs by page [row, column] and phase, and the least of it wherever it lies."""

    costs: Floats
    least: float


@dataclass
class PagePlane:
    """The plane while outlines are laid on it: cells taken and pages begun."""

    rows: int
    columns: int
    raster: Raster

    def __post_init__(self) -> None:
        self.height, self.width = self.rows * self.raster.rows, self.columns * self.raster.columns
        self.size = (quick_length(self.height), quick_length(self.width))
        self.taken: Bits = np.zeros((self.height, self.width), dtype=bool)
        self.blank: Bits = np.ones((self.rows, self.columns), dtype=bool)
        y, x = np.ogrid[: self.height, : self.width]
        far = FAR * (y / self.raster.rows + x / self.raster.columns)
        self.far: Floats = np.asarray(far.astype(np.float32))

    @property
    def used(self) -> int:
        """Rows of pages up to the last that is begun."""
        begun = np.flatnonzero(~self.blank.all(axis=1))
        return int(begun[-1]) + 1 if len(begun) else 0

    def lay(self, shapes: Sequence[RasterOutline]) -> tuple[RasterOutline, int, int] | None:
        """Lay the cheapest of these turns of an outline where it costs least; None without room.

        What begins more than a page below all that lies would cost less a page higher: no such place is weighed.
        A turn that costs more wherever it lies, with nothing in its way, is not tried.
        """
        used = self.used
        bounds = [self._bound(shape, used + 1) for shape in shapes]
        taken = None
        found: list[tuple[float, int, int, int]] = []
        for n in sorted(range(len(shapes)), key=lambda n: bounds[n].least):
            if found and bounds[n].least > min(found)[0] + CLOSE:
                break
            if taken is None:
                taken = np.fft.rfft2(self.taken.astype(np.float32), self.size)
            if (best := self._best(shapes[n], bounds[n], used, taken)) is not None:
                found.append((*best, n))
        if not found:
            return None
        _, y, x, n = min(found)
        self._take(shapes[n], y, x)
        return shapes[n], y, x

    def _bound(self, shape: RasterOutline, most: int) -> Bound:
        """Return what a turn costs by page and phase in the first `most` rows of pages, and its least of all."""
        rows, pages = min(most, self.rows), shape.pages
        deep, wide = pages.shape[1], pages.shape[3]
        blank = np.zeros((rows + deep - 1, self.columns + wide - 1), dtype=np.float32)
        blank[: self.rows, : self.columns] = self.blank[: rows + deep - 1]
        begun = sliding_window_view(blank, (deep, wide)).reshape(-1, deep * wide)
        costs = ((begun + np.float32(JOINED)) @ shape.weights[0]).reshape(rows, self.columns, -1)
        far = FAR * (np.arange(rows)[:, None] + np.arange(self.columns))
        return Bound(costs, float((costs.min(axis=2) + far).min()) + self._own(shape))

    def _own(self, shape: RasterOutline) -> float:
        """Return what a turn costs by itself: its farther corner, and how little it is known so."""
        rows, columns = shape.cells.shape
        return FAR * (rows / self.raster.rows + columns / self.raster.columns) + UPSIDE[shape.turn]

    def _best(self, shape: RasterOutline, bound: Bound, used: int, taken: Any) -> tuple[float, int, int] | None:
        """Return what the cheapest place costs, and that place; `taken` is the transform of what lies."""
        rows, columns = shape.cells.shape
        down, right = min(self.height - rows + 1, len(bound.costs) * self.raster.rows), self.width - columns + 1
        if down < 1 or right < 1:
            return None
        cost = self._spread(shape, bound.costs)[:down, :right]
        if used:
            struck = np.fft.irfft2(taken * shape.spectrum(self.size), self.size)[:down, :right]
            cost[struck > 0.5] = np.inf
        y, x = divmod(int(np.argmin(cost)), right)
        least = float(cost[y, x]) + self._own(shape)
        return None if math.isinf(least) else (round(least, 5), y, x)

    def _spread(self, shape: RasterOutline, costs: Floats) -> Floats:
        """Return what each place costs, its upper left cell [row, column]."""
        rows, columns, per = len(costs), self.columns, self.raster
        lying = costs[:, :, shape.weights[1]].swapaxes(1, 2).reshape(rows * per.rows, columns * per.columns)
        return np.asarray(lying + self.far[: rows * per.rows])

    def _take(self, shape: RasterOutline, y: int, x: int) -> None:
        rows, columns = shape.cells.shape
        self.taken[y : y + rows, x : x + columns] |= shape.cells
        pages = shape.pages[y % self.raster.rows, :, x % self.raster.columns, :]
        first, left = y // self.raster.rows, x // self.raster.columns
        for a, b in zip(*np.nonzero(pages), strict=True):
            self.blank[first + a, left + b] = False


def places_on_pages(
    rings: Sequence[Corners],
    step: tuple[float, float],
    count: int = COUNT,
    *,
    turned: Sequence[Sequence[Corners]] = (),
) -> Placing:
    """Return where outlines (closed, mm) go on pages that lie `step` mm apart, across and up.

    `turned` holds for each outline the four that it has in each of `TURNS`, turned back, where words
    that stay upright make them differ.

    Raises `DraftError` for an outline too large for any plane (over 300 pages).
    """
    areas = [_area(ring) for ring in rings]
    rows, columns = _plane(rings, step)
    raster = _raster(step, rows, columns)
    fours = turned or [(ring,) * len(TURNS) for ring in rings]
    turns = [[RasterOutline(r, turn, raster) for r, turn in zip(four, TURNS, strict=True)] for four in fours]
    best: tuple[tuple[int, int, float], Placing] | None = None
    for order in _orders(areas, max(1, count // max(1, len(rings)))):
        tried = _tried(turns, order, PagePlane(rows, columns, raster), best and best[0][0])
        while tried is None and best is None:
            rows += 2
            if rows * columns > 400:
                raise DraftError("a piece is too large to be laid on this paper")
            tried = _tried(turns, order, PagePlane(rows, columns, raster))
        if tried is not None and (best is None or tried[0] < best[0]):
            best = tried
    assert best is not None
    return best[1]


def _tried(
    turns: Sequence[Sequence[RasterOutline]], order: Sequence[int], table: PagePlane, most: int | None = None
) -> tuple[tuple[int, int, float], Placing] | None:
    """Return the placing that one order gives, and how good it is (less is better).

    None where there is no room, or where it begins more than `most` pages.
    """
    found: dict[int, tuple[RasterOutline, int, int]] = {}
    for n in order:
        lying = table.lay(turns[n])
        if lying is None or (most is not None and np.count_nonzero(~table.blank) > most):
            return None
        found[n] = lying
    used = tuple((int(r), int(c)) for r, c in zip(*np.nonzero(~table.blank), strict=True))
    rows, columns = max(r for r, _ in used) + 1, max(c for _, c in used) + 1
    raster = table.raster
    top = rows * raster.rows * raster.height
    spots = tuple(
        PlaceOnPage(shape.turn, complex(x * raster.width, top - y * raster.height) - shape.corner)
        for shape, y, x in (found[n] for n in range(len(found)))
    )
    cuts = sum(
        int(shape.pages[y % raster.rows, :, x % raster.columns, :].sum()) - 1 for shape, y, x in found.values()
    )
    far = float(sum(r + c for r, c in used))
    return (len(used), cuts, far), Placing(spots, rows, columns, used)


def _orders(areas: Sequence[float], count: int) -> Iterator[tuple[int, ...]]:
    """Yield orders to lay in: large before small, then about so, as dice of one seed say."""
    dice, seen = random.Random(1), set()
    for n in range(count):
        weights = [area * dice.uniform(0.4, 1.0) if n else area for area in areas]
        order = tuple(sorted(range(len(areas)), key=lambda i: (-weights[i], i)))
        if order not in seen:
            seen.add(order)
            yield order


def _plane(rings: Sequence[Corners], step: tuple[float, float]) -> Place:
    """Return the rows and columns of a plane with room for everything (ours: ROOM times its box)."""
    boxes = [_box(ring) for ring in rings]
    across, up = step
    columns = max(math.ceil((min(w, h) + 1) / across) for w, h in boxes)
    rows = max(math.ceil((max(w, h) + 1) / up) for w, h in boxes)
    pages = ROOM * sum(w * h for w, h in boxes) / (across * up)
    columns = max(columns, min(math.ceil(math.sqrt(pages)), 12 if up > 150 else 1))
    return max(rows, math.ceil(pages / columns)), columns


def _raster(step: tuple[float, float], rows: int, columns: int) -> Raster:
    whole = step[0] * step[1] * rows * columns
    cell = max(CELL, math.sqrt(whole / MOST_CELLS))
    down, right = max(1, math.ceil(step[1] / cell)), max(1, math.ceil(step[0] / cell))
    return Raster(down, right, step[0] / right, step[1] / down)


def _box(ring: Corners) -> tuple[float, float]:
    x, y = [p.real for p in ring], [p.imag for p in ring]
    return max(x) - min(x), max(y) - min(y)


def _area(ring: Corners) -> float:
    after = (*ring[1:], *ring[:1])
    return abs(math.fsum((a.conjugate() * b).imag for a, b in zip(ring, after, strict=True)) / 2)
