"""The first pages of a large print, its bookmarks and what each page says; read with pikepdf and pdfium.

The coat of a wearer whose shoulders differ: every piece stands twice, more than one page can list.
"""

from __future__ import annotations

import io
import re
from collections.abc import Iterator
from dataclasses import replace

import numpy as np
import pdfplumber
import pikepdf
import pypdfium2
import pytest
from shapely import Polygon, box

from drafting.body import wearer
from drafting.costume.file import read_costume
from drafting.costume.make import make
from drafting.ground.shipped import demo_costume
from drafting.output.sheets import PrintedSheet, printed_sheets
from drafting.printing.page_map import page_map
from drafting.printing.pages import page_name
from drafting.printing.paper import PAPERS
from drafting.printing.wishes import PrintWishes
from drafting.sheet import Text

UNEVEN = {
    "height": 1700,
    "bust_girth": 900,
    "waist_girth": 720,
    "hip_girth": 970,
    "shoulder_drop": (40, 60),
    "shoulder_length": (130, 120),
    "arm_length": (590, 560),
}
"""Invented, mm: left and right where a pair stands."""


@pytest.fixture(scope="module")
def coat() -> PrintedSheet:
    demo = read_costume(demo_costume())
    prints = PrintWishes(papers=(PAPERS["a4-or-letter"],))
    garments = tuple(garment for garment in demo.garments if garment.name == "coat")
    costume = replace(demo, wearer=wearer(UNEVEN), prints=prints)
    made = make(costume)
    (sheet,) = printed_sheets(
        replace(made, garments=tuple(g for g in made.garments if g.name == garments[0].name))
    )
    return sheet


def texts(sheet: PrintedSheet) -> list[str]:
    return [" ".join(page.get_textpage().get_text_range().split()) for page in pypdfium2.PdfDocument(sheet.data)]


def first(sheet: PrintedSheet) -> int:
    return sheet.pages - len(sheet.work.tiling.used)


def rows(sheet: PrintedSheet) -> Iterator[tuple[str, str, set[str]]]:
    """Yield each row of the list as number, words, and names of pages."""
    for page in texts(sheet)[: first(sheet)]:
        _, _, listed = page.rpartition("Pieces and their pages")
        for number, words, pages in re.findall(r"(?<!\S)(\d+) ([A-Z][^:]*): ((?:[A-Z]+\d+(?:, )?)+)", listed):
            yield number, words, set(pages.split(", "))


def crossed(sheet: PrintedSheet) -> dict[str, set[str]]:
    """Return the pages whose cut-out cell a piece's outline lies on, as shapely sees it."""
    tiling = sheet.work.tiling
    found = {}
    for drawing, outline in zip(sheet.work.drawings, sheet.work.outlines, strict=True):
        piece = Polygon([(p.real, p.imag) for p in outline.points(0.5)]).exterior
        on = {page_name(place) for place in tiling.used if piece.intersects(box(*tiling.cell(place)))}
        found[drawing.title.partition(" ")[0]] = on
    return found


def test_the_list_has_every_piece_with_its_count_cloth_hand_and_pages(coat: PrintedSheet) -> None:
    listed = {number: (words, pages) for number, words, pages in rows(coat)}
    wanted = crossed(coat)
    assert len(wanted) > 50
    assert listed.keys() == wanted.keys()
    for number, (words, pages) in listed.items():
        assert wanted[number] <= pages, number
        assert "cut 1" in words
    hands = [re.search("(left|right) side", words) for words, _ in listed.values()]
    assert sum(hand is not None for hand in hands) >= len(hands) - 2  # all but what lies on the fold
    assert any("lining" in words for words, _ in listed.values())


def test_each_page_names_the_pieces_that_cross_it(coat: PrintedSheet) -> None:
    listed = {number: pages for number, _, pages in rows(coat)}
    for place, page in zip(coat.work.tiling.used, texts(coat)[first(coat) :], strict=True):
        here = {number for number, pages in listed.items() if page_name(place) in pages}
        said = re.search(r"pieces: (.*?) The lamplighter - coat", page)
        parts = said[1].split(", ") if said else []
        numbers = {found[1] for part in parts if (found := re.match(r"(\d+)(?: [A-Z]|$)", part))}
        assert numbers == here, page_name(place)


def test_no_two_letters_of_the_first_pages_lie_on_each_other(coat: PrintedSheet) -> None:
    for page in list(pypdfium2.PdfDocument(coat.data))[: first(coat)]:
        text = page.get_textpage()
        count = text.count_chars()
        shown = [n for n in range(count) if text.get_text_range(n, 1).strip()]
        boxes = np.array([text.get_charbox(n) for n in shown])
        assert len(boxes) > 100
        a, b = boxes[:, None], boxes[None]
        over = np.minimum(a[..., 2], b[..., 2]) - np.maximum(a[..., 0], b[..., 0])
        high = np.minimum(a[..., 3], b[..., 3]) - np.maximum(a[..., 1], b[..., 1])
        struck = np.triu((over > 0.3) & (high > 0.3), 1)  # points; a typeface sets some pairs closer
        assert not struck.any(), [(text.get_text_range(shown[i], 1), boxes[i]) for i in np.argwhere(struck)[0]]


def test_every_piece_stands_on_the_map_by_its_number(coat: PrintedSheet) -> None:
    work = coat.work
    numbers = [drawing.title.partition(" ")[0] for drawing in work.drawings]
    _, words, _ = page_map(numbers, work.outlines, work.tiling, (0.0, 0.0, 80.0, 120.0))
    bold = [text for text in words if text.bold]
    assert sorted(text.lines[0] for text in bold) == sorted(numbers)
    assert not [(a.lines, b.lines) for n, a in enumerate(words) for b in words[n + 1 :] if over(a, b)]


def over(a: Text, b: Text) -> bool:
    return bool(box(*a.bounds).intersection(box(*b.bounds)).area > 0)


def test_the_file_asks_for_no_scaling_says_its_language_and_has_a_bookmark_a_piece(coat: PrintedSheet) -> None:
    # ISO 32000-1, from memory: tables 28 and 150 (PrintScaling None: no page scaling is preset).
    with pikepdf.open(io.BytesIO(coat.data)) as pdf:
        assert pdf.Root.ViewerPreferences.PrintScaling == pikepdf.Name("/None")
        assert str(pdf.Root.Lang) == "en"
        assert pdf.pdf_version >= "1.5"  # layers
        with pdf.open_outline() as outline:
            titles = [str(item.title) for item in outline.root]
    read = pypdfium2.PdfDocument(coat.data)
    listed = {number: pages for number, _, pages in rows(coat)}
    marks = [(mark.get_title(), mark.get_dest().get_index()) for mark in read.get_toc()]
    assert [title for title, _ in marks] == titles
    assert titles[0] == "How to print"
    assert titles[1:] == [drawing.title for drawing in coat.work.drawings]
    for title, page in marks[1:]:
        assert read.get_page_label(page) in listed[title.partition(" ")[0]]


def test_what_is_only_paper_is_grey(coat: PrintedSheet) -> None:
    with pdfplumber.open(io.BytesIO(coat.data)) as pdf:
        page = pdf.pages[first(coat) + 1]
        words = page.extract_words(extra_attrs=["non_stroking_color"], use_text_flow=True)
    colours = {word["text"]: word["non_stroking_color"] for word in words}
    for word in ("inner", "square", "page", "pieces:"):
        assert min(colours[word]) > 0.3, word
