"""The point of a faced front is rounded with its facing and its interfacing (plane geometry: they stay alike)."""

from __future__ import annotations

import pytest
from shapely.geometry import Point, Polygon

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


@pytest.mark.parametrize("radius", [40.0, 120.0, 200.0])
@pytest.mark.parametrize("ends", ["hip", "knee"])
def test_the_front_corner_of_a_cape_is_rounded_though_its_hem_is_an_arc(ends: str, radius: float) -> None:
    """Plane geometry by shapely: where it is rounded lies on a circle of the radius, and both edges run into it
    without a corner. A radius of 12 cm was refused, as the hem bends; and its smooth end was an error."""
    body, kind = bdims()[3], block_named("cape")
    chosen = choose(kind, {"cape_ends": Given(ends)}, body_scale(body), Origin())
    plain, round_ = (
        make_garment(body, WOVEN, kind, chosen, name="cape", role="shell", style=style)
        for style in ((), (CornerWish("cape-front", "hem", "centre_front", radius),))
    )
    assert [f.message for f in round_.findings if f.level == "error"] == []
    before, after = plain.draft["cape-front"], round_.draft["cape-front"]
    whole, less = (Polygon([(p.real, p.imag) for p in one.outline.flattened(0.001)]) for one in (before, after))
    assert less.difference(whole).area < 1.0
    at = after.index("hem")
    assert after.corner(at if after.edges[at - 1].name == "centre_front" else at + 1) == pytest.approx(
        180, abs=0.01
    )
    middle = after["hem"].path.start if after.edges[at - 1].name == "centre_front" else after["hem"].path.end
    own = Point(middle.real, middle.imag).buffer(radius / 4).intersection(less.exterior)
    found = [complex(*p) for line in getattr(own, "geoms", [own]) for p in line.coords]
    a, b, c = found[0], found[len(found) // 2], found[-1]
    area = abs(((b - a).conjugate() * (c - a)).imag) / 2
    assert abs(b - a) * abs(c - b) * abs(a - c) / (4 * area) == pytest.approx(radius, rel=0.02)
