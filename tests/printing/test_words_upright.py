"""Words on printed pieces: upright however a piece lies, and never in the squares; read with pdfium."""

from __future__ import annotations

import io
from collections import Counter
from collections.abc import Iterator
from dataclasses import replace
from typing import NamedTuple

import pikepdf
import pypdfium2
import pypdfium2.raw as pdfium
import pytest

from drafting.costume.make import Made
from drafting.output.sheets import printed_sheets
from drafting.printing.paper import paper_named
from drafting.printing.wishes import PrintWishes
from tests.printing.reading_pdf import MM

PRINTED = {"coat": ("letter", "roll 24 in"), "shirt": ("a4", "roll 90 cm")}
"""The coat has narrow bands, whose words stand beside them."""

Box = tuple[float, float, float, float]


class Letter(NamedTuple):
    text: int
    box: Box
    angle: float


@pytest.fixture(scope="module")
def printed(costume: Made) -> dict[str, bytes]:
    found = {}
    for garment, papers in PRINTED.items():
        wishes = PrintWishes(papers=tuple(paper_named(name) for name in papers))
        own = replace(costume, garments=(costume[garment],), costume=replace(costume.costume, prints=wishes))
        found |= {sheet.file: sheet.data for sheet in printed_sheets(own)}
    return found


def without_pieces(data: bytes) -> bytes:
    """Return the file with what belongs to its pages alone: no drawing that is stored once and shown."""
    with pikepdf.open(io.BytesIO(data)) as pdf:
        for page in pdf.pages:
            kept = [one for one in pikepdf.parse_content_stream(page) if str(one.operator) != "Do"]
            page.Contents = pdf.make_stream(pikepdf.unparse_content_stream(kept))
        out = io.BytesIO()
        pdf.save(out)
    return out.getvalue()


def letters(page: pypdfium2.PdfPage) -> Counter[Letter]:
    text = page.get_textpage()
    found: Counter[Letter] = Counter()
    for n in range(text.count_chars()):
        code = pdfium.FPDFText_GetUnicode(text, n)
        if code > 32:
            box = tuple(round(v, 2) for v in text.get_charbox(n))
            found[Letter(code, box, pdfium.FPDFText_GetCharAngle(text, n))] += 1
    return found


def square(page: pypdfium2.PdfPage) -> Box:
    """Return the 4 in square (101.6 mm; the 100 mm one has the same lower left corner), in points."""
    paths = [one.get_bounds() for one in page.get_objects([pdfium.FPDF_PAGEOBJ_PATH], max_depth=1)]
    (found,) = [b for b in paths if abs(b[2] - b[0] - 101.6 / MM) < 1 and abs(b[3] - b[1] - 101.6 / MM) < 1]
    return found


def read(data: bytes) -> Iterator[tuple[Box, Counter[Letter], Counter[Letter]]]:
    """Yield of each page its square, the letters of its pieces and its own; the first page is left out."""
    whole, bare = pypdfium2.PdfDocument(data), pypdfium2.PdfDocument(without_pieces(data))
    for n in range(1, len(whole)):
        own = letters(bare[n])
        yield square(bare[n]), letters(whole[n]) - own, own


def test_every_letter_is_upright_and_none_of_a_piece_stands_in_the_squares(printed: dict[str, bytes]) -> None:
    assert len(printed) == 4
    for file, data in printed.items():
        count = 0
        for number, (box, pieces, own) in enumerate(read(data), 2):
            count += sum(pieces.values())
            turned = [chr(one.text) for one in (*pieces, *own) if abs(one.angle) > 1e-3]
            assert not turned, (file, number, turned)
            (x0, y0, x1, y1) = box
            inside = [
                chr(one.text)
                for one in pieces
                if one.box[0] < x1 and x0 < one.box[2] and one.box[1] < y1 and y0 < one.box[3]
            ]
            assert not inside, (file, number, inside)
            assert any(x0 < one.box[0] < x1 and y0 < one.box[1] < y1 for one in own)
        assert count > 1000, file


def test_no_name_of_a_neighbour_is_set_on_the_words_of_a_piece(printed: dict[str, bytes]) -> None:
    for file, data in printed.items():
        for number, (_, pieces, own) in enumerate(read(data), 2):
            met = [
                (chr(a.text), chr(b.text))
                for a in own
                for b in pieces
                if a.box[0] < b.box[2] and b.box[0] < a.box[2] and a.box[1] < b.box[3] and b.box[1] < a.box[3]
            ]
            assert not met, (file, number, met)
