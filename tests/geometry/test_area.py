"""The door to shapely: what GEOS says is held against plain reckoning."""

from __future__ import annotations

import numpy as np
import pytest

from drafting.geometry import area
from drafting.geometry.area import Region

LEANING = (
    [
        (99.06083679199219 + 215.3590034625697j),
        (159.0608367919922 + 250.00001961394725j),
        (226.56083679199224 + 63.80455780029297j),
    ],
    [
        (286.56083679199224 + 98.44557395167053j),
        (226.56083679199224 + 63.804557800292976j),
        (159.0608367919922 + 250.00001961394725j),
    ],
)
"""Two slim triangles whose long sides run on top of each other, as a lay without a gap puts them."""


def test_triangles_that_only_touch_share_nothing() -> None:
    """The third corner of either lies on the far side of the common line (the sign of a cross product)."""
    one, two = LEANING
    along = (one[2] - one[1]) / abs(one[2] - one[1])

    def off(p: complex) -> float:
        return ((p - one[1]) / along).imag

    assert abs(off(two[1])) < 1e-6
    assert abs(off(two[2])) < 1e-6
    assert off(one[0]) * off(two[0]) < 0
    assert area.overlaps(LEANING) == []


def test_squares_that_overlap_share_their_overlap() -> None:
    square = [0j, 10 + 0j, 10 + 10j, 10j]
    moved = [p + 6 + 7j for p in square]
    assert area.overlaps([square, moved]) == [(0, 1, pytest.approx(4 * 3))]


@pytest.mark.parametrize("order", [(0, 1, 2), (0, 2, 1), (2, 0, 1), (1, 2, 0)])
def test_the_least_gap_of_squares_in_a_row_is_found_whatever_their_order(order: tuple[int, ...]) -> None:
    """Gaps of 3 and 7 by construction; neighbours in the list and others."""
    square = [0j, 10 + 0j, 10 + 10j, 10j]
    rings = [[p + along for p in square] for along in (0.0, 13.0, 30.0)]
    assert area.least_gap([rings[i] for i in order], 100.0) == pytest.approx(3.0)
    assert area.least_gap([rings[i] for i in order], 2.0) == 2.0


def test_regions_whose_rims_cross_themselves_still_tell_what_they_share() -> None:
    """A front of absurd measures crossed itself, and the worn view ended with a fault of the geometry library."""
    bow = Region.of(np.array([0j, 40 + 30j, 40 + 0j, 0 + 30j]))  # two triangles of 20 by 30 that meet at a point
    box = Region.of(np.array([0j, 20 + 0j, 20 + 30j, 30j]))
    assert bow.common(box).area == pytest.approx(300.0)
    assert bow.less(box).area == pytest.approx(300.0)
    assert box.less(bow).area == pytest.approx(300.0)
