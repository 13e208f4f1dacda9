"""Lists to check off on a fitting sheet: no word lies on a box, measured in the font by a general library."""

from __future__ import annotations

import pytest
from matplotlib.textpath import TextPath

from drafting.fitting.bands import GarmentSort
from drafting.fitting.performer import to_try
from drafting.ground.lengths import in_unit
from drafting.sheet import Sheet
from drafting.sheet.chart_page import chart_pages


def pages(seated: bool) -> list[Sheet]:
    checks = dict.fromkeys(in_unit(one, "in") for sort in GarmentSort for one in to_try(sort, seated=seated))
    return list(chart_pages("A sheet", "invented", (), "To be tried", tuple(checks)))


@pytest.mark.parametrize("seated", [False, True])
def test_no_line_to_check_off_reaches_its_boxes_or_the_line_below(seated: bool) -> None:
    """What a seated wearer tries ran through the boxes for yes and no, and could not be read."""
    for sheet in pages(seated):
        boxes = [path.bounds for s in sheet.strokes if s.closed for path in s.paths]
        assert boxes
        asked = [text for text in sheet.texts if text.at.real == 0.0 and not text.bold]
        for text in asked:
            for words in text.lines:
                assert TextPath((0, 0), words, size=text.size).get_extents().width < min(box[0] for box in boxes)
        lowest = [text.baselines[-1].imag for text in asked]
        assert all(low > after.at.imag + after.size for low, after in zip(lowest, asked[1:], strict=False))
