"""Paths answer the same however they are turned, cut or asked.

Outside references: fontTools' recursive arc length, shapely's polygon area, and dense polylines.
"""

import math

import numpy as np
import pytest
import shapely
from fontTools.misc.bezierTools import calcCubicArcLength
from hypothesis import given, settings
from hypothesis import strategies as st

from drafting.geometry import Cubic, Path, area, smooth, turn
from drafting.geometry.healed import healed
from drafting.ground import tolerances as tol
from drafting.ground.errors import DraftError
from tests.geometry.shapes import arc, cubics, paths, point

share = st.floats(0.02, 0.98)
many = settings(max_examples=30, deadline=None)


def dense(path: Path) -> np.ndarray:
    return np.array([s.point(t) for s in path for t in np.linspace(0, 1, 4001)])


@many
@given(cubics)
def test_the_length_of_a_cubic_agrees_with_fonttools_recursive_rule(cubic: Cubic) -> None:
    theirs = calcCubicArcLength(*((p.real, p.imag) for p in cubic), tolerance=1e-6)
    assert cubic.length == pytest.approx(theirs, abs=tol.EXACT)


@many
@given(paths())
def test_the_length_agrees_with_a_dense_polyline(path: Path) -> None:
    points = dense(path)
    polyline = float(np.abs(np.diff(points)).sum())
    assert polyline <= path.length + tol.EXACT
    assert path.length == pytest.approx(polyline, rel=1e-5, abs=0.01)


@many
@given(paths())
def test_the_signed_area_agrees_with_the_shoelace_sum_of_a_dense_polyline(path: Path) -> None:
    points = dense(path)
    shoelace = 0.5 * float((np.conj(points) * np.roll(points, -1)).imag.sum())
    assert path.area == pytest.approx(shoelace, rel=1e-5, abs=1.0)


def test_the_area_of_a_closed_outline_is_that_of_shapelys_polygon() -> None:
    ring = arc(20 + 30j, 120, 0, 360)
    assert ring.area == pytest.approx(area.polygon(ring).area, rel=1e-3)
    assert ring.area == pytest.approx(math.pi * 120**2, rel=1e-7)


@many
@given(paths(), point, st.integers(-360, 360))
def test_moving_turning_reversing_and_mirroring_keep_length_and_area(
    path: Path, by: complex, degrees: int
) -> None:
    for other, sign in (
        (path.moved(by), 1),
        (path.turned(by, turn(degrees)), 1),
        (path.reversed(), -1),
        (path.mirrored(), -1),
        (path.mirrored().reversed(), 1),
    ):
        assert other.length == pytest.approx(path.length, abs=tol.EXACT / 100)  # cusps: 1e-6
        assert other.area == pytest.approx(sign * path.area, rel=1e-9, abs=1e-4)


@many
@given(paths(), share)
def test_a_split_path_laid_end_to_end_is_the_path_again(path: Path, part: float) -> None:
    before, after = path.split(part * path.length)
    assert before.length == pytest.approx(part * path.length, abs=tol.EXACT)
    assert before.length + after.length == pytest.approx(path.length, abs=tol.EXACT)
    assert abs(before.end - after.start) < tol.CLOSED
    whole = Path.joined((before, after))
    assert whole.area == pytest.approx(path.area, rel=1e-9, abs=1e-4)
    assert abs(whole.at(0.7 * path.length) - path.at(0.7 * path.length)) < 0.01


@many
@given(paths(), share, share)
def test_a_part_has_the_length_it_was_asked_for(path: Path, one: float, two: float) -> None:
    low, high = sorted((one, two))
    if high - low > 0.01:
        part = path.part(low * path.length, high * path.length)
        assert part.length == pytest.approx((high - low) * path.length, abs=2 * tol.EXACT)
        assert abs(part.start - path.at(low * path.length)) < 0.01


@many
@given(paths(), share)
def test_a_point_from_the_end_is_the_point_of_the_reversed_path(path: Path, part: float) -> None:
    assert abs(path.at(-part * path.length) - path.reversed().at(part * path.length)) < 0.01


@many
@given(paths(), share)
def test_the_tangent_is_the_unit_way_from_one_point_to_the_next(path: Path, part: float) -> None:
    index, t = path.locate(part * path.length)
    segment = path.segments[index]
    step = 1e-6
    if step < t < 1 - step and abs(segment.point(t + step) - segment.point(t - step)) > 1e-5:
        way = segment.point(t + step) - segment.point(t - step)
        assert abs(path.tangent(part * path.length) - way / abs(way)) < 1e-3
    assert abs(path.tangent(part * path.length)) == pytest.approx(1.0)


@many
@given(paths())
def test_the_bounds_hold_every_point_and_are_touched_on_all_four_sides(path: Path) -> None:
    x0, y0, x1, y1 = path.bounds
    points = dense(path)
    found = points.real.min(), points.imag.min(), points.real.max(), points.imag.max()
    assert found == pytest.approx((x0, y0, x1, y1), abs=1e-3)
    assert x0 <= found[0] + 1e-9
    assert y0 <= found[1] + 1e-9
    assert x1 >= found[2] - 1e-9
    assert y1 >= found[3] - 1e-9


@many
@given(paths(), st.sampled_from([0.5, 0.1, tol.FLAT]))
def test_no_point_of_the_curve_is_farther_from_its_chords_than_the_gap(path: Path, gap: float) -> None:
    chords = shapely.LineString([(p.real, p.imag) for p in path.flattened(gap)])
    points = shapely.points([(p.real, p.imag) for p in dense(path)[::40]])
    assert float(shapely.distance(points, chords).max()) <= gap + 1e-9


def test_the_curvature_of_a_circle_is_one_over_its_radius_and_left_is_positive() -> None:
    ring = arc(0j, 80, 0, 360)
    for at in (10.0, 100.0, 333.0):
        assert ring.curvature(at) == pytest.approx(1 / 80, rel=1e-3)
        assert ring.reversed().curvature(at) == pytest.approx(-1 / 80, rel=1e-3)


def test_a_path_split_a_hair_from_a_joint_is_split_at_the_joint() -> None:
    # A crotch split so for its fly left a curve of 4e-10 mm, and the cut line beside it coiled for 20 s.
    bent = Path((Cubic(0j, 10 + 0j, 20 + 5j, 30 + 15j), Cubic(30 + 15j, 40 + 25j, 45 + 40j, 45 + 60j)))
    joint = bent.segments[0].length
    for hair in (-4e-10, 0.0, 4e-10):
        one, other = bent.split(joint + hair)
        assert len(one.segments) == len(other.segments) == 1
        assert one.end == other.start
    assert len(bent.split(joint - 1e-3)[1].segments) == 2


def test_a_curve_that_leaves_and_arrives_backwards_is_refused_in_words() -> None:
    with pytest.raises(DraftError, match="turn back on itself"):
        smooth(0j, 10 + 0j, -1 + 0j, -1 + 0j)


@many
@given(paths(), share)
def test_what_was_split_and_laid_together_is_the_path_that_it_was(path: Path, at: float) -> None:
    again = healed(Path.joined(path.split(at * path.length)))
    for one, other in zip(again, healed(path), strict=True):
        assert max(abs(p - q) for p, q in zip(one, other, strict=True)) < tol.EXACT


def test_even_points_of_a_curve_that_starts_without_speed_lie_evenly() -> None:
    whole = Path((Cubic(0j, 0j, 0j, 215 + 0j),))  # runs along a line: lengths are abscissas
    assert [p.real for p in whole.evenly(5)] == pytest.approx([0, 53.75, 107.5, 161.25, 215], abs=1e-6)
