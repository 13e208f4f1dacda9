"""A lay of cloth on paper: true to scale on one long page, and a tenth as large on a page for the table."""

from __future__ import annotations

import math
from dataclasses import replace

from drafting.printing.page_marks import SIDE, Stamp, stamped_squares
from drafting.printing.paper import LONGEST, MARGIN, PAPERS
from drafting.printing.pdf import Page, pdf_bytes
from drafting.sheet import Sheet

TENTH = 10
"""The small copy is 1 to so many."""

FOOT = SIDE + 8.0
"""mm under the drawing, where the squares stand."""


def lay_pdf(sheet: Sheet, part: int = 1) -> bytes:
    """Return a lay as PDF at 1 : `part`, with the squares at true size below it.

    A lay longer than a page may be is cut into pages of equal length.
    """
    small = _small(sheet, part)
    home = PAPERS["a4-or-letter"].net
    wide, high = max(small.width, home[0]), max(small.height + FOOT, SIDE)
    count = math.ceil(wide / (LONGEST - 2 * MARGIN))
    pages = [_page(small, n, wide / count, high, f"1:{part}") for n in range(count)]
    return pdf_bytes(f"{sheet.title}, 1:{part}", sheet.description, {}, pages)


def _small(sheet: Sheet, part: int) -> Sheet:
    """Return a sheet at 1 : `part`; lines stay as wide as they are."""
    strokes = tuple(replace(s, paths=tuple(p.mapped(lambda q: q / part) for p in s.paths)) for s in sheet.strokes)
    texts = tuple(replace(text, at=text.at / part, size=text.size / part) for text in sheet.texts)
    return replace(sheet, width=sheet.width / part, height=sheet.height / part, strokes=strokes, texts=texts)


def _page(small: Sheet, number: int, wide: float, high: float, scale: str) -> Page:
    left = number * wide
    squares, words = stamped_squares(
        complex(left + 1.0, -FOOT + 3.0), Stamp("", (small.title, f"drawn at {scale}"))
    )
    return Page(
        name=f"{number + 1}",
        width=wide + 2 * MARGIN,
        height=high + 2 * MARGIN,
        margin=MARGIN,
        window=(left, -FOOT, left + wide, high - FOOT),
        strokes=(*small.strokes, *squares),
        texts=(*small.texts, *words),
    )
