"""What a fitting sheet says adds up in every unit, and names no edge twice."""

from __future__ import annotations

import re

from drafting.costume.garment import draft_garment
from drafting.fitting.to_write_on import seam_lines
from drafting.fitting.words import RULES
from drafting.ground.lengths import in_unit
from tests.bodies import bdims
from tests.making.orders import WOVEN


def test_a_pinch_adds_up_in_inches_as_in_cm() -> None:
    """A pinch of 3/8 in took 3/4 in of cloth, and at two side seams 1 5/8 in of the girth (plane arithmetic: four
    times as much)."""
    for unit in ("in", "cm"):
        said = in_unit(RULES[0], unit)
        assert not re.search(r"\d", said)
        assert "twice its width" in said
        assert "four times its width" in said


def test_a_fronts_own_front_edge_is_called_so_once() -> None:
    draft = draft_garment(bdims()[3], WOVEN, "coat", {"lapel_style": "none"}).draft
    names = [line.name for line in seam_lines(draft)]
    assert not [name for name in names if "front front" in name]
