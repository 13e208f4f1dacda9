"""What the depth buffer sees: areas and depths worked out by hand, and the nearer of two things."""

from __future__ import annotations

import math
from itertools import pairwise

import numpy as np
import pytest

from drafting.ground.palette import Colour
from drafting.worn.picture.draw import drawn
from drafting.worn.picture.raster import NOWHERE, seen_triangles, weights_at
from drafting.worn.picture.scene import Cover, PictureScene, Trace, channels, smooth_normals
from drafting.worn.picture.view import ABOVE, BACK, FRONT, SIDE, PictureFrame, frame_for
from tests.worn.made_up import post

NONE = np.zeros(1)


def test_a_triangle_covers_its_area_and_no_more() -> None:
    corners = np.array([[[10.0, 10.0, 5.0], [110.0, 10.0, 5.0], [10.0, 90.0, 5.0]]])
    seen = seen_triangles(corners, NONE, 200, 150)
    assert (seen.triangle == 0).sum() == pytest.approx(100 * 80 / 2, rel=0.02)
    assert seen.triangle[20, 20] == 0
    assert seen.triangle[89, 109] == -1
    assert seen.depth[149, 199] == NOWHERE


def test_depth_lies_on_the_plane_through_the_corners() -> None:
    rng = np.random.default_rng(7)
    for _ in range(20):
        slope, tilt, start = rng.uniform(-2, 2, 3)
        xy = rng.uniform(0, 200, (3, 2))
        depth = start + slope * xy[:, 0] + tilt * xy[:, 1]
        seen = seen_triangles(np.column_stack((xy, depth))[None], NONE, 200, 200)
        rows, columns = np.nonzero(seen.triangle == 0)
        wanted = start + slope * (columns + 0.5) + tilt * (rows + 0.5)
        assert np.allclose(seen.depth[rows, columns], wanted, atol=1e-2)


def test_every_pixel_between_two_triangles_is_covered() -> None:
    """A fan round a point leaves no gap."""
    angles = np.linspace(0, 2 * math.pi, 18)
    rim = np.column_stack((100 + 80 * np.cos(angles), 100 + 80 * np.sin(angles), np.zeros(18)))
    middle = np.array([100.3, 99.7, 0.0])
    fan = np.stack([np.stack((middle, a, b)) for a, b in pairwise(rim)])
    seen = seen_triangles(fan, np.zeros(17), 200, 200)
    y, x = np.mgrid[0:200, 0:200] + 0.5
    inside = np.hypot(x - 100, y - 100) < 80 * math.cos(math.pi / 17) - 1
    assert (seen.triangle[inside] >= 0).all()


def test_the_nearer_of_two_is_seen_and_may_be_told_to_lie_nearer() -> None:
    flat = np.array([[0.0, 0, 0], [99, 0, 0], [0, 99, 0]])
    two = np.stack([flat + np.array([0, 0, far]) for far in (10, 12)])
    assert seen_triangles(two, np.zeros(2), 99, 99).triangle[20, 20] == 0
    assert seen_triangles(two, np.array([0.0, 5.0]), 99, 99).triangle[20, 20] == 1


def test_weights_are_those_of_the_point() -> None:
    corners = np.array([[[0.0, 0, 0], [30, 0, 0], [0, 30, 0]]])
    (found,) = weights_at(corners, np.array([9]), np.array([4]))
    assert found @ corners[0, :, :2] == pytest.approx((9.5, 4.5), abs=1e-5)


def test_what_lies_outside_the_picture_does_no_harm() -> None:
    corners = np.array([[[-500.0, -500, 0], [900, -400, 0], [100, 900, 0]]])
    assert (seen_triangles(corners, NONE, 60, 40).triangle == 0).all()


@pytest.mark.parametrize("view", [FRONT, SIDE, BACK, ABOVE])
def test_axes_are_square_to_each_other_and_right_handed(view: object) -> None:
    right, up, away = view.axes  # type: ignore[attr-defined]
    assert np.cross(right, up) == pytest.approx(-away, abs=1e-12)
    assert np.linalg.det(np.array([right, up, -away])) == pytest.approx(1)


def test_the_wearers_left_is_on_the_readers_right_from_the_front_and_on_the_left_from_behind() -> None:
    frame = PictureFrame((0.0, 0.0, 900.0), 0.4, 600, 900)
    left_hand = np.array([[300.0, 0.0, 900.0]])
    assert frame.seen(left_hand, FRONT)[0, 0] > 300
    assert frame.seen(left_hand, BACK)[0, 0] < 300
    head, foot = frame.seen(np.array([[0, 0, 1700.0], [0, 0, 0.0]]), FRONT)
    assert head[1] < foot[1]
    chest, back = frame.seen(np.array([[0, -120.0, 1200], [0, 120.0, 1200]]), FRONT)
    assert chest[2] < back[2]


def test_a_post_is_drawn_as_wide_and_as_high_as_it_is() -> None:
    surface = post(150, 1600)
    frame = frame_for(surface.points, 300, 450)
    cover = Cover(surface.points, surface.triangles, np.full(surface.points.shape, 0.5), closed=True)
    image = drawn(PictureScene((cover,)), FRONT, frame)
    ink = (image != 255).any(axis=2)
    assert image.shape == (450, 300, 3)
    assert ink.any(axis=0).sum() == pytest.approx(300 * frame.scale, abs=2)
    assert ink.any(axis=1).sum() == pytest.approx(1600 * frame.scale + 300 * frame.scale * 0.07, abs=3)


def test_normals_of_a_post_point_straight_out() -> None:
    surface = post(150, 1600)
    normals = smooth_normals(surface.points, surface.triangles)
    middle = np.abs(surface.points[:, 2] - 800) < 300
    out = surface.points[middle, :2] / 150
    assert np.einsum("nc,nc->n", normals[middle, :2], out).min() > 0.999


def test_a_line_is_hidden_by_what_lies_before_it() -> None:
    surface = post(150, 1600)
    frame = frame_for(surface.points, 300, 450)
    cover = Cover(surface.points, surface.triangles, np.full(surface.points.shape, 0.9), closed=True)
    ink = channels(Colour.INK)
    behind = Trace(np.array([[0.0, 152, 200], [0, 152, 1400]]), ink)
    before = Trace(np.array([[0.0, -152, 200], [0, -152, 1400]]), ink)
    bare = drawn(PictureScene((cover,)), FRONT, frame)
    assert (drawn(PictureScene((cover,), (behind,)), FRONT, frame) == bare).all()
    assert (drawn(PictureScene((cover,), (before,)), FRONT, frame) != bare).any(axis=2).sum() > 250


def test_along_a_sharp_fold_each_wall_is_lit_as_itself() -> None:
    """Smoothed over the fold, its edge looked away from the eye and was drawn as the inside of the cloth."""
    far = np.array([[0.0, 0, 0], [0, 0, 200], [-100, -4, 0], [-100, -4, 200], [-100, 30, 0], [-100, 30, 200]])
    front, behind = [[2, 0, 1], [2, 1, 3]], [[4, 1, 0], [4, 5, 1]]
    frame = PictureFrame((-50.0, 0.0, 100.0), 1.0, 240, 240)
    tints = np.full(far.shape, 0.5)
    both = drawn(PictureScene((Cover(far, np.array(front + behind), tints),)), FRONT, frame)
    alone = drawn(PictureScene((Cover(far, np.array(front), tints),)), FRONT, frame)
    inside = (slice(30, 210), slice(75, 165))  # what lies on the rim is mixed with paper
    assert (alone[inside] < 150).all()
    assert np.abs(both[inside].astype(int) - alone[inside].astype(int)).max() <= 3
