"""Pages of a fitting sheet that are read, not drawn on: tables, and a list to check off.

For the paper that A4 and Letter have in common; a page that is full goes on on the next.
"""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from dataclasses import dataclass

from drafting.geometry import line
from drafting.sheet import LEADING, Layer, Sheet, Stroke, Text, box_path
from drafting.sheet.fitting_sheet import HIGH, WIDE

SIZE, LINE = 2.3, 3.0
"""mm: text of a table, and between two of its lines (ours: 6.5 points, as the small print of a plan)."""

LETTER = 0.56
"""Width of an average letter as a share of its size (ours, on the wide side)."""

CHECK = 7.0
"""mm between two lines to check off (ours)."""

ASKED, BOXES = 2.7, 100.0
"""mm: text of what is to be tried, and how far from its start the first box stands (ours)."""


@dataclass(frozen=True)
class SheetTable:
    """A table: its title, heads, rows of words, and each column's share of the page's width."""

    title: str
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    shares: tuple[float, ...]


@dataclass
class _Flow:
    """Pages as they fill from the top down."""

    title: str
    said: str

    def __post_init__(self) -> None:
        self.pages: list[Sheet] = []
        self._begin()

    def _begin(self) -> None:
        self.strokes: list[Stroke] = []
        self.texts = [Text(complex(0, HIGH - 5.0), 4.4, (self.title,), bold=True)]
        self.top = HIGH - 10.0

    def need(self, height: float) -> None:
        """Begin a new page where less than `height` mm are left on this one."""
        if self.top - height < 4.0:
            self.end()
            self._begin()

    def end(self) -> None:
        self.pages.append(Sheet(self.title, WIDE, HIGH, tuple(self.strokes), tuple(self.texts), self.said))

    def rule(self) -> None:
        name = f"rule.{len(self.strokes)}"
        self.strokes.append(Stroke(Layer.GUIDE, (line(complex(0, self.top), complex(WIDE, self.top)),), name))


def chart_pages(
    title: str, said: str, tables: Sequence[SheetTable], head: str, checks: Sequence[str]
) -> list[Sheet]:
    """Return pages with the tables, then a list headed `head` whose every line has boxes to check off."""
    flow = _Flow(title, said)
    for table in tables:
        flow.need(30.0)
        flow.texts.append(Text(complex(0, flow.top - 5.0), 3.2, (table.title,), bold=True))
        flow.top -= 8.0
        _row(flow, table, table.heads, bold=True)
        for row in table.rows:
            _row(flow, table, row)
        flow.top -= 4.0
    flow.need(40.0)
    flow.texts.append(Text(complex(0, flow.top - 5.0), 3.2, (head,), bold=True))
    flow.top -= 9.0
    for number, said_ in enumerate(checks):
        _check(flow, number, _broken(said_, BOXES, ASKED))
    flow.end()
    return flow.pages


def _row(flow: _Flow, table: SheetTable, cells: Sequence[str], bold: bool = False) -> None:
    widths = [share * WIDE / sum(table.shares) for share in table.shares]
    columns = [_broken(cell, wide, SIZE) for cell, wide in zip(cells, widths, strict=True)]
    tall = LINE * max(map(len, columns)) + 1.6
    flow.need(tall)
    x = 0.0
    for lines, wide in zip(columns, widths, strict=True):
        flow.texts.append(Text(complex(x + 0.8, flow.top - 3.0), SIZE, lines, bold=bold))
        x += wide
    flow.top -= tall
    flow.rule()


def _broken(words: str, wide: float, size: float) -> tuple[str, ...]:
    """Return words in lines that are narrower than `wide` mm."""
    return tuple(textwrap.wrap(words, max(4, int((wide - 2.0) / (LETTER * size))))) or ("",)


def _check(flow: _Flow, number: int, said: tuple[str, ...]) -> None:
    """Add what is tried with a box each for yes, no and the photograph, and room to say where it pulls."""
    tall = CHECK + LEADING * ASKED * (len(said) - 1)
    flow.need(tall)
    low = flow.top - 5.0
    flow.texts.append(Text(complex(0, low), ASKED, said))
    boxes = []
    for x, word in ((BOXES, "yes"), (113.0, "no"), (125.0, "photo")):
        boxes.append(box_path((x, low - 0.6, x + 3.2, low + 2.6)))
        flow.texts.append(Text(complex(x + 4.2, low), 2.4, (word,), layer=Layer.GUIDE))
    flow.texts.append(Text(complex(140.0, low), 2.4, ("pulls at",), layer=Layer.GUIDE))
    blank = line(complex(151.0, low - 0.6), complex(WIDE, low - 0.6))
    flow.strokes += [
        *(Stroke(Layer.GUIDE, (box,), f"check.{number}.{n}", closed=True) for n, box in enumerate(boxes)),
        Stroke(Layer.GUIDE, (blank,), f"check.{number}.where"),
    ]
    flow.top -= tall
