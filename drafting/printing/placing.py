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
from numpy.lib.stride_tricks import as_strided

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

Cheapest = tuple[float, int, int]
"""What a place costs, and the row and column of cells of its upper left corner."""

NOWHERE: Cheapest = (math.inf, 0, 0)


class Bound(NamedTuple):
    """What a turn of an outline costs by page [row, column] and phase, and the least in each row of pages."""

    costs: Floats
    least: Floats


@dataclass
class PagePlane:
    """The plane while outlines are laid on it: cells taken and pages begun."""

    rows: int
    columns: int
    raster: Raster

    def __post_init__(self) -> None:
        self.height, self.width = self.rows * self.raster.rows, self.columns * self.raster.columns
        self.size = (quick_length(self.height), quick_length(self.width))
        self.seen: Any = np.zeros((self.size[0], self.size[1] // 2 + 1), dtype=np.complex64)
        self.blank: Bits = np.ones((self.rows, self.columns), dtype=bool)
        self.far_pages = FAR * (np.arange(self.rows)[:, None] + np.arange(self.columns))
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

        Below all that lies every place is free, and one a page lower costs more. So what is cheapest there says
        which rows of pages are worth asking whether something lies in the way.
        """
        used = self.used
        bounds = [self._bound(shape, used + 1) for shape in shapes]
        found: list[Cheapest] = [NOWHERE] * len(shapes)
        below = [bound.least[used] if used < len(bound.least) else math.inf for bound in bounds]
        nearest = [bound.least[:used].min(initial=math.inf) for bound in bounds]
        least = math.inf
        for n in sorted(range(len(shapes)), key=lambda n: below[n]):
            if below[n] <= least + CLOSE:
                found[n] = self._among(shapes[n], bounds[n], [used])
                least = min(least, found[n][0])
        for n in sorted(range(len(shapes)), key=lambda n: nearest[n]):
            if nearest[n] <= least + CLOSE:
                worth = np.flatnonzero(bounds[n].least[:used] <= least + CLOSE).tolist()
                found[n] = min(found[n], self._among(shapes[n], bounds[n], worth))
                least = min(least, found[n][0])
        (least, y, x), n = min((best, n) for n, best in enumerate(found))
        if math.isinf(least):
            return None
        self._take(shapes[n], y, x)
        return shapes[n], y, x

    def _bound(self, shape: RasterOutline, most: int) -> Bound:
        """Return what a turn costs in the first `most` rows of pages, with nothing in its way."""
        rows, (_, deep, _, wide) = min(most, self.rows), shape.pages.shape
        blank = np.zeros((rows + deep - 1, self.columns + wide - 1), dtype=np.float32)
        blank[: self.rows, : self.columns] = self.blank[: rows + deep - 1]
        windows = as_strided(blank, (rows, self.columns, deep, wide), blank.strides * 2)
        begun = windows.reshape(-1, deep * wide)
        costs = ((begun + np.float32(JOINED)) @ shape.weights[0]).reshape(rows, self.columns, -1)
        return Bound(costs, (costs.min(axis=2) + self.far_pages[:rows]).min(axis=1) + self._own(shape))

    def _own(self, shape: RasterOutline) -> float:
        """Return what a turn costs by itself: its farther corner, and how little it is known so."""
        rows, columns = shape.cells.shape
        return float(FAR * (rows / self.raster.rows + columns / self.raster.columns) + UPSIDE[shape.turn])

    def _among(self, shape: RasterOutline, bound: Bound, pages: list[int]) -> Cheapest:
        """Return the cheapest free place in these rows of pages, all of them used or all of them blank."""
        (rows, columns), per = shape.cells.shape, self.raster
        pages = [row for row in pages if row < len(bound.costs) and row * per.rows + rows <= self.height]
        right = self.width - columns + 1
        if not pages or right < 1:
            return NOWHERE
        lines = (np.array(pages)[:, None] * per.rows + np.arange(per.rows)).ravel()
        lines = lines[lines + rows <= self.height]
        cost = bound.costs[pages][:, :, shape.weights[1]].swapaxes(1, 2).reshape(-1, self.width)
        cost = cost[: len(lines), :right] + self.far[lines, :right]
        if not self.blank[pages].all():
            met = np.fft.ifft(self.seen * shape.spectrum(self.size), axis=0)[lines]
            cost[np.fft.irfft(met, self.size[1], axis=1)[:, :right] > 0.5] = np.inf
        line, x = divmod(int(np.argmin(cost)), right)
        return round(float(cost[line, x]) + self._own(shape), 5), int(lines[line]), x

    def _take(self, shape: RasterOutline, y: int, x: int) -> None:
        """Note what lies there: its pages, and its transform (that of a shape moved is turned, line by line)."""
        down, across = (
            np.exp(-2j * np.pi * np.arange(k) / n) for k, n in zip(self.seen.shape, self.size, strict=True)
        )
        moved = np.outer(down**y, across**x).astype(np.complex64)
        self.seen += shape.spectrum(self.size).conj() * moved
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
