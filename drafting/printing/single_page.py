"""Sheets that fit on one page each, as a PDF true to scale."""

from __future__ import annotations

from collections.abc import Sequence

from drafting.printing.paper import PAPERS, Paper
from drafting.printing.pdf import Page, pdf_bytes
from drafting.sheet import Sheet

EITHER = PAPERS["a4-or-letter"]


def single_page_pdf(sheet: Sheet, paper: Paper = EITHER) -> bytes:
    """Return a sheet on one page; raises `ValueError` where it does not fit within the margins."""
    return single_pages_pdf((sheet,), paper)


def single_pages_pdf(sheets: Sequence[Sheet], paper: Paper = EITHER) -> bytes:
    """Return sheets (at least one) on a page each; raises `ValueError` where one does not fit."""
    wide, high = paper.net
    for sheet in sheets:
        if sheet.width > wide or sheet.height > high:
            raise ValueError(f"{sheet.title} is larger than {paper.title}")
    pages = [
        Page(
            name=f"{number}",
            width=paper.width,
            height=paper.tall,
            margin=paper.margin,
            window=(0.0, 0.0, wide, high),
            strokes=sheet.strokes,
            texts=sheet.texts,
        )
        for number, sheet in enumerate(sheets, 1)
    ]
    return pdf_bytes(sheets[0].title, sheets[0].description, {}, pages)
