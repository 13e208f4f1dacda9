"""How one large drawing is cut into pages: which pages there are, and what each shows.

The drawing's plane has its corner at 0, mm, y up. Columns are counted from the left, rows from the
top. A page shows its `window`; cut along the middle of each overlap it becomes its `cell`, and the
cells lie side by side without gaps.

        window of A1               window of A2
    +----------------:--+     +--:----------------+        : the line to cut along, with half a cross
    |                :  |     |  :                |        on either page
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property

from drafting.geometry.path import Box
from drafting.printing.paper import LONGEST, Paper

Place = tuple[int, int]
"""Row from the top and column from the left, each from 0."""

SIDES: dict[str, Place] = {"left": (0, -1), "right": (0, 1), "above": (-1, 0), "below": (1, 0)}

SLACK = 1e-6
"""mm by which a drawing may pass a page's edge by rounding alone."""


def page_grid(width: float, height: float, paper: Paper, turned: bool = False) -> Place:
    """Return how many rows and columns of pages a drawing of this size takes.

    `turned` lays the pages on their side.

    >>> from drafting.printing.paper import PAPERS
    >>> page_grid(600, 900, PAPERS["a4"])
    (4, 4)
    """
    across, up = paper.step[::-1] if turned else paper.step
    return _count(height, up, paper.overlap), _count(width, across, paper.overlap)


def _count(length: float, step: float, overlap: float) -> int:
    return max(1, math.ceil((length - overlap - SLACK) / step))


@dataclass(frozen=True)
class Tiling:
    """A drawing on `rows` x `columns` pages of `paper` (a roll is cut to length already).

    `used` holds the places that are printed; the others are blank.
    """

    paper: Paper
    rows: int
    columns: int
    used: tuple[Place, ...]

    @property
    def size(self) -> tuple[float, float]:
        """Width and height of the plane that all pages together show."""
        (across, up), overlap = self.paper.step, self.paper.overlap
        return self.columns * across + overlap, self.rows * up + overlap

    @cached_property
    def _printed(self) -> frozenset[Place]:
        return frozenset(self.used)

    def window(self, place: Place) -> Box:
        """Return the part of the plane that one page shows."""
        (across, up), (wide, high) = self.paper.step, self.paper.net
        x, y = place[1] * across, (self.rows - 1 - place[0]) * up
        return x, y, x + wide, y + high

    def cell(self, place: Place) -> Box:
        """Return what is left of a page's window once it is cut along its joins."""
        half = self.paper.overlap / 2
        x0, y0, x1, y1 = self.window(place)
        return x0 + half, y0 + half, x1 - half, y1 - half

    def neighbours(self, place: Place) -> dict[str, Place]:
        """Return the printed pages beside this one, by side."""
        beside = {side: (place[0] + down, place[1] + along) for side, (down, along) in SIDES.items()}
        return {side: other for side, other in beside.items() if other in self._printed}

    @property
    def middle(self) -> Place:
        """The printed page nearest to the middle of all printed ones: joining begins there."""
        rows = [row for row, _ in self.used]
        columns = [column for _, column in self.used]
        at = complex((min(rows) + max(rows)) / 2, (min(columns) + max(columns)) / 2)
        return min(self.used, key=lambda p: (abs(complex(*p) - at), p))

    @property
    def joins(self) -> int:
        """How many edges two printed pages share."""
        return sum(len(self.neighbours(place)) for place in self.used) // 2


def page_name(place: Place) -> str:
    """Return a page's name: its row as letters, its column as a number.

    >>> page_name((0, 0)), page_name((1, 11)), page_name((26, 0))
    ('A1', 'B12', 'AA1')
    """
    row, column = place
    letters = ""
    while row >= 0:
        row, last = divmod(row, 26)
        letters = chr(ord("A") + last) + letters
        row -= 1
    return f"{letters}{column + 1}"


def all_pages(width: float, height: float, paper: Paper) -> Tiling:
    """Return the tiling of a drawing of this size with every page printed.

    A roll is cut to the drawing's length, in equal parts where that passes what a page may have.
    """
    if paper.height is None:
        parts = _count(height, LONGEST - 2 * paper.margin - paper.overlap, paper.overlap)
        paper = paper.cut_to((height - paper.overlap) / parts + paper.overlap)
    rows, columns = page_grid(width, height, paper)
    places = tuple((row, column) for row in range(rows) for column in range(columns))
    return Tiling(paper, rows, columns, places)
