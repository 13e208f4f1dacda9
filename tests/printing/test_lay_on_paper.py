"""A lay on paper, read back by pdfplumber: true at 1:1, a tenth at 1:10, the squares true on both."""

from __future__ import annotations

from dataclasses import replace

import pytest

from drafting.costume.lays import laid_out
from drafting.costume.make import Made
from drafting.printing.lay_on_paper import lay_pdf
from drafting.sheet import Sheet
from drafting.sheet.lay import layout_sheet
from tests.printing.reading_pdf import cut_lines, pages, squares


@pytest.fixture(scope="module")
def lay(made: Made) -> Sheet:
    whole = laid_out(made)
    return layout_sheet(whole.lays[0], whole.costume.title, [g.name for g in whole.garments])


@pytest.mark.parametrize("part", [1, 10])
def test_a_lay_is_printed_at_its_scale_with_true_squares(lay: Sheet, part: int) -> None:
    wanted = sorted(stroke.paths[0].length / part for stroke in lay.strokes if stroke.id.count(".") == 3)
    ((page, paths),) = pages(lay_pdf(lay, part))
    assert sorted(line.length for line in cut_lines(paths)) == pytest.approx(wanted, abs=0.02)
    (square,) = squares(paths, 100.0)
    assert square.box[2] - square.box[0] == pytest.approx(100.0, abs=0.01)
    assert f"drawn at 1:{part}" in page.extract_text()


def test_a_lay_longer_than_a_page_may_be_is_cut_into_pages(lay: Sheet) -> None:
    # ISO 32000, from memory: readers take 5,080 mm.
    read = list(pages(lay_pdf(replace(lay, width=9000.0))))
    assert len(read) == 2
    assert all(float(page.width) * 25.4 / 72 <= 5080 for page, _ in read)
    assert all(len(squares(paths, 100.0)) == 1 for _, paths in read)
