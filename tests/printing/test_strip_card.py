"""The card of the overhang test, read back from its files by other libraries: slope, ruler, square."""

from __future__ import annotations

import math
import re
from io import BytesIO

import numpy as np
import pdfplumber
import pytest

from drafting.export.svg import svg_text
from drafting.printing.paper import PAPERS
from drafting.printing.single_page import single_page_pdf
from drafting.sheet import Sheet
from drafting.sheet.strip_card import strip_card
from tests.export.reading import check, corners, page, shapes

MM = 25.4 / 72  # PDF 1.7: 72 units to the inch


def ticks(xs: list[float]) -> list[float]:
    return sorted({round(x, 3) for x in xs})


def test_the_slope_falls_by_41_5_degrees() -> None:
    text = svg_text(strip_card())
    check(text)
    corner, foot, tip = sorted(set(corners(shapes(text, "cut-line")["slope"])), key=lambda p: (p.real, p.imag))
    assert math.degrees(math.atan2(tip.imag - corner.imag, tip.real - corner.real)) == pytest.approx(
        41.5, abs=0.01
    )  # ASTM D1388, from memory
    assert foot.real == pytest.approx(corner.real)
    assert abs(tip - corner) > 200  # a strip of 10 cm bending length hangs over by 20


def test_the_ruler_is_25_mm_wide_and_counts_every_millimetre() -> None:
    text = svg_text(strip_card())
    x0, y0, x1, y1 = shapes(text, "cut-line")["ruler"].bbox()
    assert y1 - y0 == pytest.approx(25.0, abs=1e-3)
    drawn = shapes(text, "scale-check")["scale-check.ruler"]
    found = ticks([float(part.end.x) for part in drawn])
    assert found[0] == pytest.approx(x0 + 1, abs=1e-3)
    assert np.diff(found) == pytest.approx(1.0, abs=1e-3)
    assert len(found) == round(x1 - x0) - 1
    square = shapes(text, "scale-check")["scale-check.100mm"].bbox()
    assert (square[2] - square[0], square[3] - square[1]) == pytest.approx((100.0, 100.0), abs=1e-3)


def test_the_ruler_in_inches_is_an_inch_wide_and_its_square_and_words_are_in_inches() -> None:
    text = svg_text(strip_card("in"))
    _, y0, _, y1 = shapes(text, "cut-line")["ruler"].bbox()
    assert y1 - y0 == pytest.approx(25.4, abs=1e-3)
    found = ticks([float(part.end.x) for part in shapes(text, "scale-check")["scale-check.ruler"]])
    assert np.diff(found) == pytest.approx(25.4 / 16, abs=2e-3)
    square = shapes(text, "scale-check")["scale-check.4in"].bbox()
    assert (square[2] - square[0], square[3] - square[1]) == pytest.approx((101.6, 101.6), abs=1e-3)
    words = " ".join(line for one in strip_card("in").texts for line in one.lines)
    assert "500 g (17 5/8 oz)" in words  # an ounce is 28.35 g
    assert not re.search(r"\b(mm|cm)\b", words)


@pytest.mark.parametrize("unit", ["cm", "in"])
def test_everything_lies_on_the_card_and_no_words_cross_a_line(unit: str) -> None:
    sheet = strip_card(unit)
    assert page(svg_text(sheet)).width == pytest.approx(sheet.width)
    for box in (*(text.bounds for text in sheet.texts), *(stroke.bounds for stroke in sheet.strokes)):
        assert box[0] >= 0
        assert box[1] >= 0
        assert box[2] <= sheet.width
        assert box[3] <= sheet.height
    slope = next(stroke for stroke in sheet.strokes if stroke.id == "slope").bounds
    how = next(text for text in sheet.texts if len(text.lines) > 4).bounds
    assert how[1] > slope[3]


@pytest.mark.parametrize("paper", ["a4", "letter", "a4-or-letter"])
def test_the_printed_card_is_true_on_a4_and_on_letter(paper: str) -> None:
    with pdfplumber.open(BytesIO(single_page_pdf(strip_card(), PAPERS[paper]))) as pdf:
        (printed,) = pdf.pages
        assert float(printed.width) * MM == pytest.approx(PAPERS[paper].width, abs=0.01)
        boxes = [(c["x1"] - c["x0"], c["bottom"] - c["top"]) for c in (*printed.curves, *printed.rects)]
        sizes = [(wide * MM, high * MM) for wide, high in boxes]
        for wanted in ((100.0, 100.0), (180.0, 25.0), (150 / math.tan(math.radians(41.5)), 150.0)):
            assert any(size == pytest.approx(wanted, abs=0.02) for size in sizes), wanted
        shown = printed.extract_text()
        assert "slope 41.5 degrees" in shown
        assert "half of" in shown


def test_a_sheet_that_does_not_fit_is_not_cut_off() -> None:
    with pytest.raises(ValueError, match="larger than A4"):
        single_page_pdf(Sheet("too wide", 195.0, 100.0), PAPERS["a4"])
