"""An arc lies on its circle and is as long as its share of it."""

from __future__ import annotations

import cmath
import math

import pytest
from hypothesis import given
from hypothesis import strategies as some

from drafting.geometry.arc import arc


@given(some.floats(5, 2000), some.floats(-360, 360).filter(lambda a: abs(a) > 1), some.floats(0, 360))
def test_an_arc_is_its_share_of_the_circle(radius: float, angle: float, start: float) -> None:
    """2 pi r and the circle's own points (plane geometry)."""
    centre = 30 - 40j
    drawn = arc(centre, centre + cmath.rect(radius, math.radians(start)), angle)
    assert drawn.length == pytest.approx(2 * math.pi * radius * abs(angle) / 360, rel=5e-6)
    assert abs(drawn.end - centre - cmath.rect(radius, math.radians(start + angle))) < 1e-9 * radius
    assert all(abs(abs(p - centre) - radius) < 5e-6 * radius for p in drawn.flattened(0.05))
