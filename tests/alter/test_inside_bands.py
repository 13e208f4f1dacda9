"""Edges inside a folded band: nothing is sewn along them once it is folded and sewn down (common practice)."""

from __future__ import annotations

import pytest

from drafting.costume.garment import MadeGarment
from drafting.ground.errors import DraftError
from drafting.making.rules import unsound
from drafting.reading.style_made import EdgingWish
from tests.blocks.figures import chart_woman
from tests.making.orders import WOVEN, costume_of, order_of
from tests.making.test_read_cold import made


def edged(block: str, ref: tuple[str, str], kind: str, **asked: object) -> MadeGarment:
    return made(chart_woman(), block, asked=asked, style=(EdgingWish(kind, (ref,), 30.0),))


@pytest.mark.parametrize(
    ("block", "ref"),
    [
        ("trousers", ("waistband", "underlap_inner")),
        ("trousers", ("waistband", "inner")),
        ("bishop-top", ("cuff", "inner")),
        ("knee-breeches", ("knee-band", "inner")),
    ],
)
@pytest.mark.parametrize("kind", ["band", "binding", "facing"])
def test_nothing_is_sewn_along_the_inside_of_a_folded_band(block: str, ref: tuple[str, str], kind: str) -> None:
    """It was drafted, and its step came after the band was closed."""
    with pytest.raises(DraftError, match="lies inside the"):
        edged(block, ref, kind)


def test_the_free_edge_of_a_facing_may_still_be_bound() -> None:
    garment = edged("sleeveless-top", ("back-neck-facing", "inner"), "binding", facings="neck")
    costume = costume_of(garment, WOVEN)
    assert unsound(costume, order_of(costume)) == ()


@pytest.mark.parametrize("kind", ["band", "binding", "facing", "hem facing", "cuff"])
@pytest.mark.parametrize("ref", [("front", "waist"), ("back", "hem")])
def test_nothing_is_sewn_along_an_edge_that_is_turned_over_an_elastic(ref: tuple[str, str], kind: str) -> None:
    """A facing as long as the flat edge was sewn to the gathered one, and told as 68 mm too long."""
    with pytest.raises(DraftError, match="turned over an elastic"):
        edged("breeches", ref, kind)
