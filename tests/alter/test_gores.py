"""Flared skirts on the cloth: waists measured on the drawn line, widths, gores, bias.

Exact plane geometry unless said beside the check.
"""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from drafting.geometry import Path
from drafting.geometry.area import is_simple
from drafting.geometry.gores import bias_box, bias_strip, extent, gored, outline, panels, straight_hem
from drafting.geometry.sectors import cone, flared_skirt, godet
from drafting.ground.errors import DraftError
from tests.shared_data import check_value, check_values


def arcs(ring: Path, radius: float) -> float:
    """Return the length of all segments of a ring that lie at this radius from 0, mm."""
    return sum(s.length for s in ring if abs(abs(s.point(0.5)) - radius) < 0.1 * radius)


@pytest.mark.parametrize(("row", "circle"), [("E20", 1.0), ("E21", 0.75), ("E22", 0.5), ("E23", 0.25)])
def test_the_waist_and_hem_measured_on_the_piece_are_those_of_the_row(row: str, circle: float) -> None:
    # Plane geometry: the hole measures 70.0 +/- 0.1 on the piece, radius not diameter.
    found = check_values(row)
    skirt = flared_skirt(700, 600, circle)
    ring = outline(skirt)
    assert arcs(ring, 10 * found["radius"]) == pytest.approx(700, abs=0.1)
    assert arcs(ring, 10 * found["radius"] + 600) == pytest.approx(10 * found["sweep"], abs=0.1)
    assert ring.area == pytest.approx(math.pi * circle * (skirt.outer**2 - skirt.inner**2), rel=1e-5)


def test_a_circle_of_length_66_goes_in_two_halves_or_quarters() -> None:
    # Arithmetic: 142.3 fits 150 usable, 154.3 does not: halves of 77.1 or quarters.
    assert gored(flared_skirt(700, 600, 1.0), 1500).count == 1
    long = gored(flared_skirt(700, 660, 1.0), 1500)
    assert long.count == 2
    (said,) = long.findings
    for words in ("1543 mm", "2 equal pieces", "771 mm", "4, each 771 mm"):
        assert words in said.message
    assert gored(flared_skirt(700, 600, 1.0), 1500, allowance=40).count == 2  # allowances counted


def test_a_hem_wider_than_the_cloth_is_split_into_the_fewest_gores() -> None:
    # Common practice: hem 165 incl. allowances, usable 147: 2 gores.
    assert panels(1650, 1470) == 2
    whole = cone(700, 1600, 600)
    cut = gored(whole, 1470, allowance=15)
    assert cut.count == 2
    assert cut.count * cut.piece.hem == pytest.approx(whole.hem)
    assert cut.piece.outer - cut.piece.inner == pytest.approx(600)  # seam pairs are equal
    assert extent(cut.piece, 15)[0] <= 1470


def test_cloth_too_narrow_for_any_gore_is_refused() -> None:
    with pytest.raises(DraftError, match=r"12 gores.*wider cloth"):
        gored(flared_skirt(2000, 1500, 2.0), 600)


def test_a_straight_hemmed_godet_adds_less() -> None:
    # Plane geometry: 47.1239 cm for the sector; a straight-hemmed triangle only 42.43.
    assert godet(300, 90).hem == pytest.approx(10 * float(check_value("E26")), abs=0.01)
    assert straight_hem(300, 90) == pytest.approx(424.3, abs=0.1)
    ring = outline(godet(300, 90))
    assert is_simple(ring)
    assert ring.area == pytest.approx(math.pi * 300**2 / 4, rel=1e-5)


def test_a_panel_on_the_bias_needs_a_square_box() -> None:
    # Plane geometry: 60 x 100 at 45 degrees needs 113.137 each way, more than a bolt of 112.
    wide, high = bias_box(600, 1000)
    assert (wide, high) == pytest.approx((10 * float(check_value("E29")),) * 2, abs=0.01)
    assert wide > 1120


def test_bias_strip_out_of_a_square() -> None:
    # Plane geometry: 50 x 50 in strips of 4 is 625 cm (exact area rule, less joins).
    assert bias_strip(500 * 500, 40) == pytest.approx(10 * float(check_value("E30")), abs=50)


@settings(max_examples=50, deadline=None)
@given(
    waist=st.floats(300, 1500),
    length=st.floats(150, 1100),
    circle=st.floats(0.05, 0.99),
    allowance=st.floats(0, 40),
)
def test_the_box_of_a_sector_holds_its_outline(
    waist: float, length: float, circle: float, allowance: float
) -> None:
    piece = flared_skirt(waist, length, circle)
    ring = outline(piece)
    x0, y0, x1, y1 = ring.bounds
    assert ring.area > 0
    assert is_simple(ring)
    wide, high = extent(piece)
    assert [wide, high] == pytest.approx([x1 - x0, y1 - y0], abs=0.05)
    assert extent(piece, allowance)[0] >= wide
