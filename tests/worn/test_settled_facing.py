"""The walls of a leg: each stays on its own side of the other, inside to inside and in a pleat."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from drafting.blocks import use_blocks
from drafting.body import wearer
from drafting.costume.make import make
from drafting.costume.wearing.worn import worn
from drafting.costume.whole import read_whole_costume
from drafting.ground.shipped import shipped
from drafting.worn.form import wearers_form
from drafting.worn.nouns import AtRest, Limb, Reals, SewnMesh
from drafting.worn.settled.balance import scene_of, scene_with, second_derivative, state_at
from drafting.worn.settled.facing import LegCloth, leg_cloth, no_walls, walls_faced
from drafting.worn.settled.sheet import sheet_of
from drafting.worn.settled.touch import unheld
from tests.worn.dressed import on_form
from tests.worn.garments import drafted
from tests.worn.meshes import hoop, ply
from tests.worn.posts import post_field
from tests.worn.test_settled_derivatives import dense_matrix, differences

GIRTH, HIGH, EDGE = 800.0, 60.0, 20.0


@cache
def leg() -> tuple[SewnMesh, Reals, LegCloth]:
    """A band round a thin post: its mesh, how far round it each vertex lies (0 to 1), and who may meet."""
    mesh, turn = hoop(GIRTH, HIGH, EDGE, ply())
    mesh = replace(mesh, pieces=tuple(replace(piece, limb=Limb.LEG) for piece in mesh.pieces))
    along = turn / (2 * np.pi)
    radius = GIRTH / (2 * np.pi)
    start = laid(mesh, along, np.column_stack([radius * np.cos(turn), radius * np.sin(turn)]))
    cloth = leg_cloth(mesh, post_field(30.0), start)
    assert cloth is not None
    return mesh, along, cloth


def laid(mesh: SewnMesh, along: Reals, section: Reals) -> Reals:
    """Return (count, 3) m: the band upright on a level section (count, 2) mm."""
    high = np.zeros(mesh.count)
    high[mesh.merged] = mesh.flat[:, 1]
    return np.column_stack([section, 500.0 + high]) * 1e-3


def upon(line: list[tuple[float, float]], along: Reals) -> Reals:
    """Return (n, 2): the places so far along a closed line, from 0 to 1."""
    points = np.array([*line, line[0]])
    far = np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.diff(points, axis=0), axis=1))])
    return np.column_stack([np.interp(along * far[-1], far, points[:, axis]) for axis in (0, 1)])


def flattened(gap: float) -> tuple[Reals, Reals]:
    """Return the band pressed flat, its walls `gap` mm apart, below 0 once they slipped; and each one's wall."""
    mesh, along, _ = leg()
    section = upon(
        [(200.0, 0.0), (190.0, gap / 2), (-190.0, gap / 2), (-200.0, 0.0), (-190.0, -gap / 2), (190.0, -gap / 2)],
        along,
    )
    return laid(mesh, along, section), np.where(along < 0.5, 1.0, -1.0)


def pleated(gap: float) -> tuple[Reals, Reals]:
    """Return the band with a deep pleat turned in, and on which wall of the pleat each lies (else 0)."""
    mesh, along, _ = leg()
    half = gap / 2
    line = [
        (-60.0, half),
        (60.0, half),
        (70.0, 0.0),
        (60.0, -half),
        (-60.0, -half),
        (-60.0, -100.0),
        (120.0, -100.0),
        (120.0, 100.0),
        (-60.0, 100.0),
    ]
    section = upon(line, along)
    wall = np.where((np.abs(section[:, 1]) < 2.0) & (section[:, 0] > -40) & (section[:, 0] < 50), 1.0, 0.0)
    return laid(mesh, along, section), wall * np.sign(section[:, 1] * gap)


@pytest.mark.parametrize("gap", [2.0, 1.0, -1.0, -6.0])
def test_walls_pressed_flat_belong_inside_one_another_even_once_they_slipped_through(gap: float) -> None:
    points, wall = flattened(gap)
    found = walls_faced(leg()[2], points)
    inner = np.abs(points[found.places, 0]) < 0.17
    assert inner.sum() > 0.8 * (np.abs(points[:, 0]) < 0.17).sum()
    assert (found.way[inner, 1] * wall[found.places][inner] > 0.9).all()


@pytest.mark.parametrize("gap", [2.0, 1.0, -1.0, -2.0])
def test_walls_of_a_pleat_belong_outside_one_another_even_once_they_slipped_through(gap: float) -> None:
    points, wall = pleated(gap)
    found = walls_faced(leg()[2], points)
    of_pleat = wall[found.places] != 0
    assert of_pleat.sum() > 0.8 * (wall != 0).sum()
    assert (found.way[of_pleat, 1] * wall[found.places][of_pleat] > 0.9).all()


def test_who_was_told_a_side_of_a_wall_keeps_it_when_told_to() -> None:
    """Crumpled under the seat of large breeches each look told other sides, and nothing came to rest (1.8)."""
    points, _ = flattened(-1.0)
    cloth = leg()[2]
    found = walls_faced(cloth, points)
    assert len(found.side) > 50
    turned = replace(found, side=-found.side, way=-found.way)
    again = walls_faced(cloth, points, turned)
    assert (again.side == -found.side).all()
    assert np.abs(again.way + found.way).max() < 1e-12
    strangers = replace(turned, corners=np.full_like(found.corners, -1))
    assert (walls_faced(cloth, points, strangers).side == found.side).all()
    assert (walls_faced(cloth, points, no_walls()).side == found.side).all()


def test_an_open_leg_meets_nothing() -> None:
    mesh, along, cloth = leg()
    section = np.column_stack([GIRTH / 6 * np.cos(2 * np.pi * along), GIRTH / 6 * np.sin(2 * np.pi * along)])
    assert not len(walls_faced(cloth, laid(mesh, along, section)).places)


def test_what_keeps_walls_apart_is_the_slope_of_its_energy_and_its_rate_the_slope_of_that() -> None:
    mesh, _, cloth = leg()
    points, _ = flattened(1.0)
    points = points + np.random.default_rng(3).normal(size=points.shape) * 3e-4
    scene = scene_of(sheet_of(mesh, np.zeros(mesh.count, dtype=bool), 400.0, 100.0), None, np.zeros(mesh.count))
    scene = scene_with(scene, walls_faced(cloth, points))
    state = state_at(scene, points)
    assert (state.fending.push > 0.0).sum() > 20
    found = differences(scene, points, unheld(), 1e-8)
    assert np.abs(found - state.force.ravel()).max() < 1e-6 * np.abs(state.force).max()
    dense = dense_matrix(scene, second_derivative(scene, state, unheld(), full=True))
    for row in np.random.default_rng(2).choice(points.size, 30, replace=False):
        away = np.zeros(points.size)
        away[row] = 1e-8
        more, less = (state_at(scene, points + s * away.reshape(-1, 3)).force.ravel() for s in (1, -1))
        assert np.abs((more - less) / 2e-8 - dense[:, row]).max() < 1e-5 * np.abs(dense).max()


def passing(rest: AtRest, below: float) -> int:
    """Return how many edges of cloth below a height pass through a triangle, each asked of each."""
    points, triangles = rest.points, rest.mesh.sewn
    triangles = triangles[points[triangles][:, :, 2].max(axis=1) < below]
    ends = np.concatenate([triangles[:, pair] for pair in ([0, 1], [1, 2], [2, 0])])
    edges = np.unique(np.sort(ends, axis=1), axis=0)
    start, run = points[edges[:, 0]][:, None], (points[edges[:, 1]] - points[edges[:, 0]])[:, None]
    corner, one, two = (
        points[triangles[:, 0]],
        *(points[triangles[:, i]] - points[triangles[:, 0]] for i in (1, 2)),
    )
    square = np.cross(run, two)
    volume = (one * square).sum(axis=2)
    with np.errstate(all="ignore"):
        off = start - corner
        u = (off * square).sum(axis=2) / volume
        other = np.cross(off, one)
        v, along = (run * other).sum(axis=2) / volume, (two * other).sum(axis=2) / volume
        through = (u >= 0) & (v >= 0) & (u + v <= 1) & (along >= 0) & (along <= 1)
    touching = (edges[:, :, None, None] == triangles[None, None]).any(axis=(1, 3))
    return int((through & ~touching).sum())


@pytest.mark.timeout(120)
def test_the_flared_hem_of_the_kite_does_not_pass_through_itself() -> None:
    """Without its walls kept apart 15 edges passed through cloth, at the side by up to 12 mm."""
    use_blocks(None)
    made = make(read_whole_costume(shipped("measurements") / "costumes" / "kite.toml", None))
    only = tuple(garment for garment in made.garments if garment.name == "trouser")
    (garment,) = worn(replace(made, garments=only), treat=False).garments
    assert garment.rest.settled
    assert passing(garment.rest, 400.0) == 0


def test_who_meets_is_told_by_pairs_of_which_each_block_exists() -> None:
    mesh, _, cloth = leg()
    points, _ = flattened(1.0)
    scene = scene_of(sheet_of(mesh, np.zeros(mesh.count, dtype=bool), 400.0, 100.0), None, np.zeros(mesh.count))
    once = scene_with(scene, walls_faced(cloth, points))
    assert once.pattern is not scene.pattern
    assert scene_with(once, walls_faced(cloth, points)).pattern is once.pattern


@pytest.mark.population
def test_breeches_with_a_fall_come_to_rest_on_a_very_large_wearer() -> None:
    """1.4 m round the waist: each look at the crumples beneath the seat told other sides, and 1.8 was left."""
    large = wearer({"height": 1680, "bust_girth": 1420, "waist_girth": 1400, "hip_girth": 1500})
    rest = on_form(
        drafted("knee-breeches", large, {"fall_front": True}), "knee-breeches", wearers_form(large), mesh=25.0
    )
    assert rest.settled
