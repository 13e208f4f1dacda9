"""Where a puffed sleeve is told to stand off: above the place where it is close again.

The sleeve's own draft says where its elbow lies; that a leg-of-mutton sleeve is close below it is common practice.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from drafting.costume.garment import draft_garment
from drafting.costume.wearing.worn import worn
from drafting.worn.stands.puffs import puffs_told
from tests.making.figures import made
from tests.making.orders import WOVEN
from tests.worn.garments import chart_body


@pytest.mark.parametrize(("block", "close_at_hem"), [("mutton-top", False), ("bishop-top", True)])
def test_a_puff_is_told_above_where_its_sleeve_is_close_again(block: str, close_at_hem: bool) -> None:
    """A leg-of-mutton sleeve was told to stand off farthest below its wrist."""
    body, base = chart_body(), made("kite")
    garment = draft_garment(
        body, WOVEN, block, {"puff_width": 300.0, "puff_height": 120.0} if not close_at_hem else {}
    )
    costume = replace(base.costume, wearer=body, fabrics={"shell": WOVEN})
    (one,) = worn(replace(base, garments=(garment,), costume=costume), mesh=40.0, treat=False).garments
    found = [dict(remark.facts)["widest"] for remark in puffs_told(one.rest, garment.draft)]
    sleeve = next(piece for piece in garment.draft.pieces if piece.name == "sleeve")
    _, low, _, high = sleeve.outline.bounds
    elbow = next(level for level in sleeve.levels if level.name == "elbow").paths[0].start.imag
    for widest in found:
        assert widest <= (high - low if close_at_hem else high - elbow)
    assert found or close_at_hem
