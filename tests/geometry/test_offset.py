"""A line drawn beside another keeps its distance, and crossing lines are cut at the true point.

Outside references: exact circles, shapely's distances, and shapely's buffer as a cross-check.
"""

import math

import numpy as np
import pytest
import shapely
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from drafting.geometry import Cubic, Path, area, line, smooth, turn
from drafting.geometry.crossing import crossings, extended, part_between, self_crossings
from drafting.geometry.join import LineCorner, join
from drafting.geometry.offset import _turned_round, line_beside, offset
from drafting.geometry.rings import outer_rings
from drafting.ground import tolerances as tol
from tests.geometry.shapes import arc, point

many = settings(max_examples=50, deadline=None)
MISS = tol.OFFSET_FIT + 2 * tol.FLAT  # the fit's own error and two flattenings


@st.composite
def gentle(draw: st.DrawFn) -> Cubic:
    """A curve whose tightest bend has a radius of more than 40 mm, C- or S-shaped."""
    start, way = draw(point), turn(draw(st.integers(0, 359)))
    end = start + way * draw(st.integers(150, 400))
    lean, fall = draw(st.integers(-40, 40)), draw(st.integers(-40, 40))
    cubic = smooth(start, end, way * turn(lean), way * turn(fall))
    assume(max(abs(cubic.curvature(t)) for t in np.linspace(0, 1, 200)) < 1 / 40)
    return cubic


@many
@given(gentle(), st.sampled_from([3.0, 10.0, 25.0, -10.0, -25.0]))
def test_every_point_beside_a_gentle_curve_is_square_off_it(cubic: Cubic, distance: float) -> None:
    beside_it = line_beside(Path((cubic,)), distance)
    for t in np.linspace(0, 1, 40):
        normal = -1j * distance * cubic.tangent(t)
        ray = line(cubic.point(t) + 0.8 * normal, cubic.point(t) + 1.2 * normal)
        ends = [cubic.point(t) + normal - p for p in (beside_it.start, beside_it.end)]
        found = [abs(c.point - cubic.point(t) - normal) for c in crossings(ray, beside_it)]
        assert min([*found, *map(abs, ends)]) < 2 * tol.OFFSET_FIT


@many
@given(gentle(), st.sampled_from([10.0, -10.0]))
def test_the_ends_and_end_directions_are_exact(cubic: Cubic, distance: float) -> None:
    beside_it = line_beside(Path((cubic,)), distance)
    for at, tangent, t in ((beside_it.start, beside_it.leave, 0.0), (beside_it.end, beside_it.arrive, 1.0)):
        assert abs(at - cubic.point(t) + 1j * distance * cubic.tangent(t)) < 1e-9
        assert abs(tangent - cubic.tangent(t)) < 1e-6


@pytest.mark.parametrize("distance", [10.0, 40.0, -10.0, -60.0])
def test_beside_an_arc_lies_the_arc_of_the_other_radius(distance: float) -> None:
    made = line_beside(arc(0j, 100, 10, 170), distance)
    assert made.length == pytest.approx((100 + distance) * math.radians(160), abs=0.005)
    radii = [abs(made.at(s)) for s in np.linspace(0, made.length, 60)]
    assert radii == pytest.approx([100 + distance] * 60, abs=tol.OFFSET_FIT)


def test_a_smooth_curve_is_followed_with_few_cubics() -> None:
    armhole = Cubic(0j, 40 + 0j, 70 + 60j, 65 + 170j)
    assert len(line_beside(Path((armhole,)), 10).segments) <= 12


def test_a_bend_tighter_than_the_distance_loses_its_loop() -> None:
    hollow = Path.joined([line(-100 + 0j, -8 + 0j), arc(0j, 8, 180, 360), line(8 + 0j, 100 + 0j)])
    above = hollow.turned(0j, -1)  # walked right to left: its right side is above it
    raw, clean = line_beside(above, 15), offset(above, 15)
    assert self_crossings(Path.joined([raw])) != []
    assert self_crossings(clean) == []
    assert area.distances(clean, above).min() == pytest.approx(15, abs=MISS)
    assert (clean.start, clean.end) == (raw.start, raw.end)


@many
@given(st.integers(-200, 200), st.integers(1, 179))
def test_a_line_and_a_circle_cross_where_pythagoras_says(height: int, degrees: int) -> None:
    ring, at = arc(0j, 150, 0, 360), complex(0, height)
    tilt = complex(math.cos(math.radians(degrees)), math.sin(math.radians(degrees)))
    away = abs((at.conjugate() * tilt).imag)
    assume(abs(away - 150) > 1)
    found = crossings(line(at - 500 * tilt, at + 500 * tilt), ring)
    if away > 150:
        assert found == []
    else:
        assert len(found) == 2
        half = math.sqrt(150**2 - away**2)
        # A line that grazes the circle stretches any error across it: by radius over half chord.
        slack = 1e-4 * max(1.0, 150 / half)
        assert abs(found[0].point - found[1].point) == pytest.approx(2 * half, abs=slack)


def test_a_path_cut_at_a_crossing_ends_there_and_runs_on_straight() -> None:
    one, two = arc(0j, 100, 0, 180), arc(120 + 0j, 100, 0, 180)
    (hit,) = crossings(one, two)
    assert hit.point == pytest.approx(60 + 80j, abs=1e-5)  # 3-4-5 triangle
    first = part_between(one, 0, hit.on_a)
    assert first is not None
    assert first.length == pytest.approx(100 * math.acos(0.6), abs=1e-4)
    longer = extended(first, before=20, after=30)
    assert longer.length == pytest.approx(first.length + 50)
    assert abs(longer.arrive - first.arrive) < 1e-9


def test_a_ring_that_crosses_itself_is_resolved_as_shapely_unites_it() -> None:
    hollow = Path.polygon(0j, 100 + 0j, 100 + 100j, 60 + 100j, 60 + 40j, 40 + 40j, 40 + 100j, 100j)
    sides = [Path((s,)) for s in hollow]
    beside_them = [line_beside(s, 15) for s in sides]  # the slot of 20 mm closes: 15 + 15 overlap
    parts = []
    for side, after, a, b in zip(
        sides, sides[1:] + sides[:1], beside_them, beside_them[1:] + beside_them[:1], strict=True
    ):
        corner = LineCorner(side.end, side.arrive, after.leave)
        parts.append(Path.joined([a, join(a, b, corner, 0.0).between or line()]))
    (ring,) = outer_rings(Path.joined(parts))
    strips = [
        area.polygon(Path.joined([s, line(s.end, b.end, b.start, s.start)]))
        for s, b in zip(sides, beside_them, strict=True)
    ]
    bevels = [
        area.polygon(line(a.end, s.end, b.start, a.end))
        for s, a, b in zip(sides, beside_them, beside_them[1:] + beside_them[:1], strict=True)
    ]
    united = shapely.union_all([area.polygon(hollow), *strips, *bevels])
    assert ring.area == pytest.approx(united.area, abs=1e-6)


def test_a_cusp_that_lies_on_a_scanned_place_to_the_last_digit_is_that_place() -> None:
    # Rounding gave both ends of a stretch one sign, and the search between them refused.
    assert _turned_round(lambda t: t - 0.25 + 1e-17, (0.25, 0.5)) == 0.25
    assert _turned_round(lambda t: t - 0.5 - 1e-17, (0.25, 0.5)) == 0.5
    assert _turned_round(lambda t: t - 0.3, (0.25, 0.5)) == pytest.approx(0.3, abs=1e-12)
