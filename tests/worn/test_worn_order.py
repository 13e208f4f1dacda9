"""What is worn over what: common practice of dressing, whatever order a costume's file names its garments in."""

from __future__ import annotations

from dataclasses import replace

import pytest

from drafting.costume.garment import draft_garment
from drafting.costume.wearing.sewn import sewn_and_placed
from drafting.worn.form import wearers_form
from tests.making.figures import made
from tests.making.orders import WOVEN
from tests.worn.garments import chart_body

WORN = ("shirt", "waistcoat", "coat", "cape")


@pytest.mark.parametrize("blocks", [WORN[::-1], ("waistcoat", "shirt", "cape")])
def test_a_cape_goes_over_everything(blocks: tuple[str, ...]) -> None:
    """Its shoulders are no girth of the trunk, so it went beneath a waistcoat, which was seen through it."""
    body = chart_body()
    base = made("kite")
    garments = tuple(draft_garment(body, WOVEN, block) for block in blocks)
    costume = replace(base.costume, wearer=body, fabrics={"shell": WOVEN})
    found, left_out = sewn_and_placed(replace(base, garments=garments, costume=costume), wearers_form(body), 60.0)
    assert left_out == ()
    assert [one.garment.block for one in found] == [block for block in WORN if block in blocks]
