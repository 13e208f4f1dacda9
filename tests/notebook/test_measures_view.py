"""The table of measures on the bench, read by the standard library's XML reader."""

from __future__ import annotations

from xml.etree import ElementTree

import pytest

from drafting.body import wearer
from drafting.notebook.bench.measures import measures_html


def test_the_table_says_which_measures_were_estimated_and_how_far_off_they_may_be() -> None:
    body = wearer({"height": 1650.0, "bust": 900.0, "waist": 740.0, "hip": 980.0})
    table = ElementTree.fromstring(measures_html(body))
    found = [[cell.text or "" for cell in row] for row in table.findall("tbody/tr")]
    rows = {name.lower(): cells for name, *cells in found}
    assert len(rows) == len(body.measures)
    assert rows["bust girth"] == ["90.0", "measured", ""]
    _, taken, off = rows["neck base girth"]
    assert taken == "estimated"
    sd = body.measures["neck_base_girth"].sd
    assert sd is not None
    assert float(off.removeprefix("± ")) == pytest.approx(2 * sd / 10, abs=0.05)
    assert rows["across front width"][2] == "not known"
