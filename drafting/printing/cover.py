"""The first pages of a printed sheet: how to print and join, the page map, every piece with its pages."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from drafting.geometry import Path
from drafting.geometry.path import Box
from drafting.printing.columns import Paragraph, column
from drafting.printing.page_map import map_scale, page_map
from drafting.printing.page_marks import SIDE, Marks, Stamp, stamped_squares
from drafting.printing.pages import Place, Tiling, page_name
from drafting.printing.paper import PAPERS, Paper
from drafting.sheet import Stroke, Text

SMALL, BODY, HEAD, TITLE = 2.7, 3.2, 4.2, 7.5
"""mm: sizes of text on the first pages (ours: 8 to 21 points)."""

LEFT, GAP = 104.0, 6.0
"""mm: width of the left column, with the squares at its foot, and what lies between the columns."""

HOME = 440.0
"""mm: paper longer than this is printed away from home, and its first pages made for A4 or Letter."""

LEGIBLE = 8.0
"""mm: a map whose pages would be narrower gets a page of its own (ours)."""

FOOT = 2.0
"""mm kept free at the lower edge of a column."""


@dataclass(frozen=True)
class ListedPiece:
    """A piece as the list has it: number and title, what is said of it, the pages it lies on, its outline."""

    title: str
    about: str
    places: tuple[Place, ...]
    outline: Path

    @property
    def number(self) -> str:
        """The piece's number, which begins its title."""
        return self.title.partition(" ")[0]

    @property
    def row(self) -> str:
        """The line of the list."""
        said = f"{self.title}, {self.about}" if self.about else self.title
        return f"{said}: {', '.join(map(page_name, self.places))}"


@dataclass(frozen=True)
class FirstPages:
    """What the first pages say: title, sub-title, the pieces by the pages they lie on, warnings."""

    title: str
    subtitle: str
    pieces: tuple[ListedPiece, ...]
    warnings: tuple[str, ...] = ()


def cover_paper(paper: Paper) -> Paper:
    """Return the paper of the first pages: the same, or A4 or Letter beside large paper."""
    return PAPERS["a4-or-letter"] if paper.tall > HOME else paper


def covers(told: FirstPages, tiling: Tiling) -> list[Marks]:
    """Return lines and words of each first page, the lower left corner of its window at 0.

    The first says how to print and join; the list of pieces runs on over as many as it takes.
    """
    wide, high = cover_paper(tiling.paper).net
    numbers, outlines = [piece.number for piece in told.pieces], [piece.outline for piece in told.pieces]
    head, _ = column([Paragraph(TITLE, told.title, True), Paragraph(BODY, told.subtitle)], (0.0, 0.0, wide, high))
    top = _foot(head) - 4.0
    advice, rest = column(_advice(told, tiling), (0.0, SIDE + FOOT, LEFT, top))
    rows = [
        *rest,
        Paragraph(HEAD, "Pieces and their pages", True),
        *(Paragraph(SMALL, piece.row) for piece in told.pieces),
    ]
    beside = (LEFT + GAP, 0.55 * top, wide, top - 2.0)
    page_wide = tiling.paper.step[0] * map_scale(tiling, beside[2] - beside[0], beside[3] - beside[1])
    pages: list[Marks] = []
    if page_wide >= LEGIBLE:
        strokes, words, low = page_map(numbers, outlines, tiling, beside)
        listed, rows = column(rows, (LEFT + GAP, FOOT, wide, low - 4.0))
        pages.append(_with_squares(strokes, [*head, *advice, *words, *listed], "print this page first"))
    else:
        pages.append(_with_squares([], [*head, *advice], "print this page first"))
        titled, start = _headed("Map of the pages", wide, high)
        strokes, words, _ = page_map(numbers, outlines, tiling, (0.0, SIDE + 8.0, wide, start))
        listed, rows = column(rows, (LEFT + GAP, FOOT, wide, SIDE))
        pages.append(_with_squares(strokes, [*titled, *words, *listed], told.title))
    return pages + _listed(rows, told.title, wide, high)


def _listed(rows: list[Paragraph], title: str, wide: float, high: float) -> list[Marks]:
    """Return further pages for the rows that are left: two columns each, the squares under the left one."""
    pages = []
    while rows:
        texts, start = _headed("Pieces and their pages, continued", wide, high)
        before = len(rows)
        boxes: list[Box] = [(0.0, SIDE + FOOT, LEFT, start), (LEFT + GAP, FOOT, wide, start)]
        for box in boxes:
            more, rows = column(rows, box)
            texts += more
        if len(rows) == before:
            raise ValueError("a row of the list is longer than a page")
        pages.append(_with_squares([], texts, title))
    return pages


def _headed(words: str, wide: float, high: float) -> tuple[list[Text], float]:
    """Return the head of a further page, and where what follows begins."""
    texts, _ = column([Paragraph(HEAD, words, True)], (0.0, 0.0, wide, high))
    return texts, _foot(texts) - 3.0


def _with_squares(strokes: Sequence[Stroke], texts: Sequence[Text], line: str) -> Marks:
    squares, words = stamped_squares(0.5 + 0.5j, Stamp("", (line,)))
    return (*squares, *strokes), (*texts, *words)


def _advice(told: FirstPages, tiling: Tiling) -> list[Paragraph]:
    beside = cover_paper(tiling.paper) is not tiling.paper
    first = "Print this page at home" if beside else "Print this page first"
    said = [
        Paragraph(HEAD, "How to print", True),
        Paragraph(
            BODY,
            f"{first}, at 100 % or 'actual size', never 'fit to page'. Measure both sides "
            "of the squares below: 100 mm, and 4 in. More than half a millimetre off is not true: mend "
            "the setting, or ask the kit's scale repair what your ruler means.",
        ),
        Paragraph(
            BODY,
            "Print the others with the same setting, and measure the square on each: one "
            "later page may come out at another scale.",
        ),
    ]
    if len(tiling.used) > 1:
        start = page_name(tiling.middle)
        said += [
            Paragraph(HEAD, "How to join", True),
            Paragraph(
                BODY,
                "Lay the pages out as on the map: letters count the rows from the top, "
                f"numbers the columns from the left. Begin in the middle, with {start}, and work outwards.",
            ),
            Paragraph(
                BODY,
                "Cut each page you add along the grey line on the side it joins, lay it on "
                "its neighbour's uncut edge, so that half crosses and half diamonds become whole, and "
                "tape it. Beside a diamond stands the page that belongs there.",
            ),
        ]
    return said + [Paragraph(BODY, warning, True) for warning in told.warnings]


def _foot(texts: Sequence[Text]) -> float:
    return min(text.bounds[1] for text in texts)
