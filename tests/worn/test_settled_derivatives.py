"""Forces are the differences of the energy, and the second derivative the differences of the forces."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from drafting.worn.contact import DistanceField
from drafting.worn.nouns import ElasticThread, Reals, Rod, SewnMesh
from drafting.worn.settled.balance import Scene, scene_of, second_derivative, state_at
from drafting.worn.settled.sheet import sheet_of
from drafting.worn.settled.touch import Held, held_by
from tests.worn.meshes import halved, lattice, ply, sewn


def trial_mesh() -> SewnMesh:
    """A small half garment with a fold, a bone over the middle, one in a ring, elastic and two buttons."""
    flat = lattice((0.0, 120.0), (0.0, 80.0), 20.0)
    mesh = halved(sewn(flat, ply(), grain=30.0), on_middle=flat[0][:, 0] < 1e-6)
    row = np.flatnonzero(flat[0][:, 1] < 1e-6)
    row = row[np.argsort(flat[0][row, 0])]
    ends = mesh.triangles[7, :2]
    return replace(
        mesh,
        rods=(Rod(row, 4e-4, along=900.0), Rod(np.append(mesh.triangles[12], mesh.triangles[12, 0]), 3e-4, 700.0)),
        elastics=(ElasticThread(row, rest=90.0, pull=40.0),),
        folds=ends[None, :],
        tied=np.array([[0, mesh.count - 1]]),
    )


def ball() -> DistanceField:
    side = np.arange(-200.0, 200.1, 10.0)
    x, y, z = np.meshgrid(side, side, side, indexing="ij")
    return DistanceField(np.sqrt(x**2 + y**2 + (z + 150.0) ** 2) - 150.0, (-200.0, -200.0, RAISED - 200.0), 10.0)


RAISED = 66.0
"""mm: the top of the ball over the floor, on which the sheet's far corner lies."""


@pytest.fixture(scope="module")
def trial() -> tuple[Scene, Reals, Held]:
    """A crumpled sheet on a ball, some of it pulled, some pressed, with friction that holds and slides."""
    mesh = trial_mesh()
    sheet = sheet_of(mesh, np.zeros(mesh.count, dtype=bool), 400.0, 100.0)
    scene = scene_of(sheet, ball(), np.full(mesh.count, 1e-3))
    chance = np.random.default_rng(1)
    flat = np.column_stack([mesh.flat, np.zeros(mesh.count)]) * 1e-3
    flat[:, 2] = RAISED * 1e-3 - 3.3 * (flat[:, 0] ** 2 + flat[:, 1] ** 2)
    before = flat + chance.normal(size=flat.shape) * 3e-4
    held = held_by(sheet, state_at(scene, before).touch, before, np.zeros_like(before))
    after = before + chance.normal(size=flat.shape) * 3e-4
    return scene, after, held


def differences(scene: Scene, points: Reals, held: Held, step: float) -> Reals:
    """(3 count,) central differences of the energy."""
    found = np.zeros(points.size)
    for place in range(points.size):
        away = np.zeros(points.size)
        away[place] = step
        ahead, behind = (state_at(scene, points + sign * away.reshape(-1, 3), held).energy for sign in (1, -1))
        found[place] = (ahead - behind) / (2.0 * step)
    return found * scene.sheet.loose.ravel()


def test_the_trial_has_everything_in_it(trial: tuple[Scene, Reals, Held]) -> None:
    scene, points, held = trial
    state = state_at(scene, points, held)
    assert state.touch.on_form > 5
    assert len(state.touch.places) > state.touch.on_form  # the others lie on the floor
    assert len(held.places) > 5
    sticks = state.cling.rate == held.stiffness
    assert 0 < sticks.sum() < len(sticks)
    assert (state.stretch.long[0] < 1.0).any()
    assert (state.stretch.long[0] > 1.0).any()
    assert (state.taut.force > 0.0).any()
    assert (state.taut.force < 0.0).any()  # a bone is pushed


def test_forces_are_the_differences_of_the_energy(trial: tuple[Scene, Reals, Held]) -> None:
    scene, points, held = trial
    force = state_at(scene, points, held).force.ravel()
    found = differences(scene, points, held, 1e-8)
    assert np.abs(found - force).max() < 1e-6 * np.abs(force).max()


def test_the_true_second_derivative_is_the_difference_of_the_forces(trial: tuple[Scene, Reals, Held]) -> None:
    scene, points, held = trial
    pattern = scene.pattern
    stuck = replace(held, pressing=held.pressing * 1e3)  # sliding, the blocks are on purpose not the true ones
    dense = dense_matrix(scene, second_derivative(scene, state_at(scene, points, stuck), stuck, full=True))
    rows = np.random.default_rng(2).choice(3 * pattern.count, 60, replace=False)
    for row in rows:
        away = np.zeros(3 * pattern.count)
        away[row] = 1e-8 * scene.sheet.loose.ravel()[row]
        ahead, behind = (state_at(scene, points + s * away.reshape(-1, 3), stuck).force.ravel() for s in (1, -1))
        assert np.abs((ahead - behind) / 2e-8 - dense[:, row]).max() < 1e-6 * np.abs(dense).max()


def test_without_its_negative_parts_no_direction_leads_down(trial: tuple[Scene, Reals, Held]) -> None:
    scene, points, held = trial
    dense = dense_matrix(scene, second_derivative(scene, state_at(scene, points, held), held, full=False))
    assert np.linalg.eigvalsh(dense).min() > -1e-9 * np.abs(dense).max()


def dense_matrix(scene: Scene, blocks: Reals) -> Reals:
    """(3 count, 3 count), from the compressed columns that the factor is made of."""
    pattern = scene.pattern
    size = 3 * pattern.count
    ordered = np.zeros((size, size))
    columns = np.repeat(np.arange(size), np.diff(pattern.starts))
    ordered[pattern.rows, columns] = blocks.ravel()[pattern.scatter]
    place = (pattern.order[:, None] * 3 + np.arange(3)).ravel()
    found = np.zeros_like(ordered)
    found[np.ix_(place, place)] = ordered
    return found
