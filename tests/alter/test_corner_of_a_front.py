"""The point of a faced front is rounded with its facing and its interfacing (plane geometry: they stay alike)."""

from __future__ import annotations

import pytest

from drafting.costume.choices import block_named, choose
from drafting.costume.garment import make_garment
from drafting.ground.scale import body_scale
from drafting.reading.given import Given, Origin
from drafting.reading.style_made import CornerWish
from tests.bodies import bdims
from tests.making.orders import WOVEN


@pytest.mark.parametrize("lining", ["whole", "none"])
@pytest.mark.parametrize(
    ("breasted", "edge", "beside"),
    [("double", "bottom", "cut"), ("double", "edge", "cut"), ("single", "edge", "cut")],
)
def test_the_corner_of_a_faced_front_is_rounded_in_all_its_layers(
    breasted: str, edge: str, beside: str, lining: str
) -> None:
    """It was refused: the facing is sewn to four edges in one seam, edge to edge, and has the very same corner."""
    body, kind = bdims()[3], block_named("waistcoat")
    asked = {"breasted": Given(breasted), "lining": Given(lining)}
    chosen = choose(kind, asked, body_scale(body), Origin())
    plain, round_ = (
        make_garment(body, WOVEN, kind, chosen, name="waistcoat", role="shell", style=style)
        for style in ((), (CornerWish("front", edge, beside, 40.0),))
    )
    assert [f.message for f in round_.findings if f.level == "error"] == []
    for name in (edge, beside):
        front = round_.draft["front"][name].length
        assert round_.draft["front-facing"][name].length == pytest.approx(front, abs=1e-3)
        assert round_.draft["front-interfacing"][name].length == pytest.approx(front, abs=1e-3)
    lost = plain.draft["front"].area - round_.draft["front"].area
    assert lost > 2.0
    assert plain.draft["front-facing"].area - round_.draft["front-facing"].area == pytest.approx(lost, rel=1e-3)
