"""A sheet that fits on one page, as a PDF true to scale."""

from __future__ import annotations

from drafting.printing.paper import PAPERS, Paper
from drafting.printing.pdf import Page, pdf_bytes
from drafting.sheet import Sheet

EITHER = PAPERS["a4-or-letter"]


def single_page_pdf(sheet: Sheet, paper: Paper = EITHER) -> bytes:
    """Return a sheet on one page; raises `ValueError` where it does not fit within the margins."""
    wide, high = paper.net
    if sheet.width > wide or sheet.height > high:
        raise ValueError(f"{sheet.title} is larger than {paper.title}")
    page = Page(
        name="1",
        width=paper.width,
        height=paper.tall,
        margin=paper.margin,
        window=(0.0, 0.0, wide, high),
        strokes=sheet.strokes,
        texts=sheet.texts,
    )
    return pdf_bytes(sheet.title, sheet.description, {}, [page])
