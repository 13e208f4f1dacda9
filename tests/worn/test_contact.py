"""The smooth distance against bodies whose distance is known: a ball and a cylinder, by their formulas."""

from __future__ import annotations

import numpy as np
import pytest

from drafting.worn.contact import DistanceField
from drafting.worn.nouns import Point, Reals

STEP = 10.0
RADIUS = 60.0


def grid(x: Reals, y: Reals, z: Reals) -> tuple[Reals, Reals, Reals]:
    a, b, c = np.meshgrid(x, y, z, indexing="ij")
    return a, b, c


def ball(centre: Point = (0.0, 0.0, 100.0)) -> DistanceField:
    side = np.arange(-120.0, 120.1, STEP)
    x, y, z = grid(side, side, side + 100.0)
    away = np.sqrt((x - centre[0]) ** 2 + (y - centre[1]) ** 2 + (z - centre[2]) ** 2)
    return DistanceField(away - RADIUS, (-120.0, -120.0, -20.0), STEP)


def pillar(half: bool) -> DistanceField:
    x = np.arange(0.0 if half else -120.0, 120.1, STEP)
    a, b, _ = grid(x, np.arange(-120.0, 120.1, STEP), np.arange(0.0, 100.1, STEP))
    return DistanceField(np.hypot(a, b) - RADIUS, (x[0], -120.0, 0.0), STEP, mirror=half)


def shell(radius: float, count: int = 400) -> Reals:
    """Directions spread over a ball, times a radius, about its middle."""
    way = np.random.default_rng(3).normal(size=(count, 3))
    return radius * way / np.linalg.norm(way, axis=1)[:, None] + [0.0, 0.0, 100.0]


@pytest.mark.parametrize("radius", [52.0, 60.0, 63.0])
def test_a_ball_is_as_far_away_as_its_formula_says(radius: float) -> None:
    near = ball().near(shell(radius), 5.0)
    assert len(near.places) == 400
    assert np.abs(near.distance - (radius - RADIUS)).max() < 0.05  # smoothed, not drawn in by 0.82 mm
    out = (shell(radius) - [0.0, 0.0, 100.0]) / radius
    assert np.linalg.norm(near.gradient - out, axis=1).max() < 0.002


def test_its_curvature_is_that_of_the_ball() -> None:
    points = shell(RADIUS)
    out = (points - [0.0, 0.0, 100.0]) / RADIUS
    wanted = (np.eye(3) - out[:, :, None] * out[:, None, :]) / RADIUS
    assert np.abs(ball().near(points, 5.0).hessian - wanted).max() < 0.02 / RADIUS


def test_slope_and_curvature_are_the_differences_of_the_value() -> None:
    field, points, e = ball((3.0, -2.0, 104.0)), shell(61.0, 60), 1e-3
    near = field.near(points, 20.0)
    for axis, step in enumerate(np.eye(3) * e):
        ahead, behind = field.near(points + step, 20.0), field.near(points - step, 20.0)
        assert np.allclose((ahead.distance - behind.distance) / (2 * e), near.gradient[:, axis], atol=1e-8)
        assert np.allclose((ahead.gradient - behind.gradient) / (2 * e), near.hessian[:, axis], atol=1e-8)


def test_the_curvature_has_no_jump_where_two_cells_meet() -> None:
    field = ball((3.0, -2.0, 104.0))
    node = np.array([[40.0, 40.0, 120.0]])
    before, behind = (field.near(node + np.array([d, 0.0, 0.0]), 50.0).hessian for d in (-1e-6, 1e-6))
    assert np.abs(before - behind).max() < 1e-6


def test_half_a_grid_says_what_the_whole_grid_says() -> None:
    points = np.random.default_rng(5).uniform([-75, -75, 25], [75, 75, 75], size=(500, 3))
    half, whole = pillar(half=True).near(points, 12.0), pillar(half=False).near(points, 12.0)
    assert np.array_equal(half.places, whole.places)
    for one, other in zip(half[1:], whole[1:], strict=True):
        assert np.allclose(one, other, atol=1e-12)


def test_only_what_lies_near_is_answered() -> None:
    points = np.random.default_rng(6).uniform([-75, -75, 25], [75, 75, 75], size=(2000, 3))
    near = pillar(half=True).near(points, 3.0)
    asked = np.flatnonzero(np.hypot(points[:, 0], points[:, 1]) < RADIUS + 3.0)
    missed = np.setxor1d(near.places, asked)
    assert np.abs(np.hypot(points[missed, 0], points[missed, 1]) - RADIUS - 3.0).max(initial=0.0) < 0.2
    assert near.distance.max() < 3.0


def test_beyond_the_grid_nothing_is_near() -> None:
    points = np.array([[0.0, 0.0, 500.0], [0.0, 0.0, -40.0], [0.0, 0.0, 50.0]])
    assert pillar(half=True).near(points, 3.0).places.tolist() == [2]


def test_without_curvature_the_rest_is_the_same() -> None:
    with_it, without = ball().near(shell(61.0), 5.0), ball().near(shell(61.0), 5.0, curved=False)
    assert np.array_equal(with_it.gradient, without.gradient)
    assert without.hessian.shape == (0, 3, 3)


def test_a_half_grid_that_does_not_start_in_the_middle_is_refused() -> None:
    with pytest.raises(ValueError, match="starts at x = 0"):
        DistanceField(np.zeros((5, 5, 5)), (-10.0, 0.0, 0.0), STEP, mirror=True)
