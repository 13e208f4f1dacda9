"""Circle skirts, cones, gores, godets and sheared bias against exact geometry and a printed example."""

from __future__ import annotations

import pytest

from drafting.geometry.sectors import circle_width, cone, flared_skirt, godet, must_fit, sheared
from drafting.ground.errors import DraftError


@pytest.mark.parametrize(
    ("circle", "radius", "sweep"),
    [(1.0, 11.1408, 446.9911), (0.75, 14.8545, 352.7433), (0.5, 22.2817, 258.4956), (0.25, 44.5634, 164.2478)],
)
def test_circle_skirts_of_waist_70_and_length_60(circle: float, radius: float, sweep: float) -> None:
    # Plane geometry: r = W / angle, hem sweep W + angle x L (cm).
    skirt = flared_skirt(700, 600, circle)
    assert (skirt.inner, skirt.hem) == pytest.approx((10 * radius, 10 * sweep), abs=0.1)
    assert skirt.top == pytest.approx(700)


@pytest.mark.parametrize(("circle", "inches"), [(1, 4.138), (1 / 2, 8.276), (1 / 3, 12.414), (1 / 4, 16.552)])
def test_a_published_circle_skirt_example(circle: float, inches: float) -> None:
    # A sewing page prints 4.13, 8.2, 12.4 and 16.56 in for a waist of 26 in.
    assert flared_skirt(26 * 25.4, 600, circle).inner / 25.4 == pytest.approx(inches, abs=0.1)


def test_a_flared_piece_is_a_cones_sector() -> None:
    # Plane geometry: top 40, bottom 100, slant 55 cm.
    piece = cone(400, 1000, 550)
    assert (piece.degrees, piece.inner) == pytest.approx((62.504, 366.667), abs=0.01)
    with pytest.raises(DraftError, match="rectangle"):
        cone(400, 400, 550)


def test_a_godet_and_a_gore() -> None:
    # Plane geometry.
    assert godet(300, 90).hem == pytest.approx(471.239, abs=0.01)
    gore = flared_skirt(700, 600, 0.5).part(8)
    assert (gore.top, gore.hem, gore.degrees) == pytest.approx((87.5, 323.119, 22.5), abs=0.01)


def test_bias_cloth_grows_long_and_narrow() -> None:
    # An inextensible square weave: cos 40 / cos 45 and sin 40 / sin 45.
    assert sheared(10) == pytest.approx((1.0834, 0.9090), abs=0.0005)


def test_a_circle_wider_than_the_cloth_is_refused_with_halves() -> None:
    # Arithmetic: waist 70, length 60 and 66 on 150 cm: 142.3 fits, 154.3 does not.
    short, long = flared_skirt(700, 600, 1.0), flared_skirt(700, 660, 1.0)
    assert (circle_width(short), circle_width(long)) == pytest.approx((1422.8, 1542.8), abs=0.1)
    must_fit(short, 1500)
    with pytest.raises(DraftError, match=r"154\.3 cm.*77\.1"):
        must_fit(long, 1500)
    with pytest.raises(DraftError):  # allowances are counted too
        must_fit(short, 1500, allowance=40)
