"""The sheet against what is known of cloth: the exact heavy elastica, a bent cylinder, a hung strip, a tight hoop.

The elastica is solved here by scipy's boundary value solver; the hung strip and the hoop have their formulas.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from scipy.integrate import solve_bvp

from drafting.fabric import Fabric
from drafting.worn.cloth import ply_of
from drafting.worn.contact import DistanceField
from drafting.worn.nouns import Reals, SewnMesh
from drafting.worn.settled.bending import bending
from drafting.worn.settled.sheet import sheet_of
from tests.worn.meshes import come_to_rest, hoop, lattice, ply, sewn, side_by_side, turned

CANTILEVER = 30.0
"""Bending length of the tried cloth, mm: rigidity is weight times its cube."""


def exact_angle(ratio: float) -> float:
    """Degrees below the horizontal of the chord of a strip clamped level, `ratio` bending lengths long."""

    def rates(s: Reals, y: Reals) -> Reals:
        return np.vstack([y[1], -(ratio**3) * (1.0 - s) * np.cos(y[0])])

    def ends(start: Reals, end: Reals) -> Reals:
        return np.array([start[0], end[1]])

    s = np.linspace(0.0, 1.0, 400)
    found = solve_bvp(rates, ends, s, np.vstack([1.2 * s * (2.0 - s), 2.4 * (1.0 - s)]), tol=1e-8, max_nodes=20000)
    fine = np.linspace(0.0, 1.0, 20001)
    angle = found.sol(fine)[0]
    return float(np.degrees(np.arctan2(np.trapezoid(np.sin(angle), fine), np.trapezoid(np.cos(angle), fine))))


@pytest.mark.parametrize(("ratio", "published"), [(1.5, 22.18), (2.0, 41.49), (3.0, 66.96), (4.0, 77.19)])
def test_the_exact_elastica_is_the_one_that_is_known(ratio: float, published: float) -> None:
    assert exact_angle(ratio) == pytest.approx(published, abs=0.01)


@pytest.mark.parametrize("edge", [6.0, 10.0])
@pytest.mark.parametrize("ratio", [1.5, 2.0, 3.0, 4.0])
def test_an_overhanging_strip_droops_as_the_heavy_elastica(ratio: float, edge: float) -> None:
    long = ratio * CANTILEVER
    points, triangles = side_by_side(
        lattice((-2.0 * edge, 0.0), (-20.0, 20.0), edge), lattice((0.0, long), (-20.0, 20.0), edge)
    )
    mesh = sewn((points, triangles), ply(bend=2.0 * (CANTILEVER * 1e-3) ** 3))
    flat = np.column_stack([points, np.zeros(len(points))])
    found, residual = come_to_rest(mesh, flat, held=points[:, 0] < 1e-6)
    tip = found[points[:, 0] > long - 1e-6].mean(axis=0)
    assert residual <= 0.05
    assert np.degrees(np.arctan2(-tip[2], tip[0])) == pytest.approx(exact_angle(ratio), abs=1.0)


VELVETEEN = (31.0, 27.0, 26.0)
LEVEL_THREADS = (30.0, 30.0, 25.0)
STIFF_ON_THE_BIAS = (30.0, 30.0, 33.0)


@pytest.mark.parametrize("ratio", [2.0, 3.0])
@pytest.mark.parametrize("lengths", [VELVETEEN, LEVEL_THREADS, STIFF_ON_THE_BIAS])
def test_a_strip_on_the_bias_droops_by_the_bias_length_that_was_measured(
    lengths: tuple[float, float, float], ratio: float
) -> None:
    """Bending lengths along, across and on the bias, mm, of a cloth whose strips were all slid over an edge."""
    along, across, bias = lengths
    tried = Fabric(
        "tried", mass=200.0, bending_length_along=along, bending_length_across=across, bending_length_bias=bias
    )
    cloth = ply_of(tried)
    long, edge = ratio * bias, 8.0
    points, triangles = side_by_side(
        lattice((-2.0 * edge, 0.0), (-20.0, 20.0), edge), lattice((0.0, long), (-20.0, 20.0), edge)
    )
    mesh = sewn((points, triangles), cloth, grain=45.0)
    flat = np.column_stack([points, np.zeros(len(points))])
    found, residual = come_to_rest(mesh, flat, held=points[:, 0] < 1e-6)
    tip = found[points[:, 0] > long - 1e-6].mean(axis=0)
    hangs = np.degrees(np.arctan2(-tip[2], tip[0]))
    assert residual <= 0.05
    assert hangs == pytest.approx(exact_angle(ratio), abs=1.5)
    threads_alone = ply_of(replace(tried, bending_length_bias=None))
    untested = 1000.0 * (
        (threads_alone.bends_along + threads_alone.bends_across) / 4 / cloth.weight
        + threads_alone.twisting / 2 / cloth.weight
    ) ** (1 / 3)
    assert abs(hangs - exact_angle(long / untested)) > 3.0


@pytest.mark.parametrize("angle", [0.0, 45.0, 90.0])
@pytest.mark.parametrize("edge", [6.0, 10.0])
def test_a_cylinder_costs_what_its_curvature_says(angle: float, edge: float) -> None:
    points, triangles = side_by_side(
        lattice((0.0, 140.0), (0.0, 300.0), edge), lattice((140.0, 300.0), (0.0, 300.0), edge)
    )
    mesh = sewn((points, triangles), ply(bend=1e-5), grain=20.0)
    sheet = sheet_of(mesh, np.zeros(mesh.count, dtype=bool), np.inf, np.inf)
    turn, radius = np.radians(angle), 0.25
    along = points @ [np.cos(turn), np.sin(turn)] * 1e-3
    across = points @ [-np.sin(turn), np.cos(turn)] * 1e-3
    bent = np.column_stack([radius * np.sin(along / radius), across, radius * np.cos(along / radius)])
    matrices = bending(sheet)
    energy = 0.5 * sum(float(bent[:, k] @ (matrices[min(k, 1)] @ bent[:, k])) for k in range(3))
    exact = 0.5 * 1e-5 * sheet.areas.sum() / radius**2
    assert 0.90 <= energy / exact <= 1.05


def hung(grain: float) -> tuple[Reals, Reals, float]:
    """A strip 20 cm wide and 75 cm long that hangs from its top edge: flat and hung points mm, residual."""
    points, triangles = turned(lattice((-750.0, 0.0), (0.0, 200.0), 20.0))
    mesh = sewn((points, triangles), ply(pull=1500.0, shear=60.0, bend=1e-5), grain=grain)
    start = np.column_stack([points[:, 0], np.zeros(len(points)), points[:, 1]])
    found, residual = come_to_rest(mesh, start, held=points[:, 1] > -1e-6)
    return points, found, residual


def test_a_hung_strip_lengthens_by_its_weight() -> None:
    points, found, residual = hung(grain=90.0)
    drop = -750.0 - found[points[:, 1] < -750.0 + 1e-6, 2].mean()
    assert residual <= 0.01
    assert drop == pytest.approx(2.0 * 0.75**2 / (2.0 * 1500.0) * 1e3, rel=0.02)  # w L^2 / 2k


def test_on_the_bias_it_drops_farther_and_grows_narrow() -> None:
    points, found, residual = hung(grain=45.0)
    drop = -750.0 - found[points[:, 1] < -750.0 + 1e-6, 2].mean()
    half_way = np.abs(points[:, 1] + 375.0) < 12.0
    free_edges = 2.0 * 0.75**2 / 2.0 * (0.5 / 1500.0 + 0.25 / 60.0) * 1e3  # no clamp holds the width
    assert residual <= 0.01
    assert 5.0 * 0.375 < drop < free_edges
    assert 0.3 < 200.0 - np.ptp(found[half_way, 0]) < 1.0


def waisted_pillar(radius: float) -> DistanceField:
    """A pillar a hair narrower at `WAISTED`, clear of the floor, so that nothing slides off it."""
    side = np.arange(-240.0, 240.1, 8.0)
    x, y, z = np.meshgrid(side, side, np.arange(-120.0, 120.1, 8.0), indexing="ij")
    return DistanceField(np.hypot(x, y) - radius - z**2 / 20000.0, (-240.0, -240.0, WAISTED - 120.0), 8.0)


WAISTED = 500.0
"""mm over the floor."""


def test_a_hoop_too_small_by_two_hundredths_is_strained_by_as_much() -> None:
    radius = 150.0
    cloth = ply(pull=400.0, shear=100.0, bend=1e-5, weight=1e-3)  # as stiff as a garment's cloth is taken
    mesh, angle = hoop(0.98 * 2.0 * np.pi * radius, 64.0, 8.0, cloth)
    height = np.zeros(mesh.count)
    height[mesh.merged] = mesh.flat[:, 1]
    start = np.column_stack([np.cos(angle) * (radius + 1), np.sin(angle) * (radius + 1), height + WAISTED])
    found, residual = come_to_rest(mesh, start, waisted_pillar(radius))
    assert residual <= 0.05
    assert 100.0 * round_strain(mesh, found) == pytest.approx(100.0 * (1.0 / 0.98 - 1.0), abs=0.1)


def round_strain(mesh: SewnMesh, found: Reals) -> float:
    """How much longer the hoop is than its cloth, as the polygon of its rows near half height."""
    rows = len(np.unique(np.round(mesh.flat[:, 0], 6))) - 1
    away = np.hypot(found[:, 0], found[:, 1])[np.abs(found[:, 2] - WAISTED) < 20.0].mean()
    return float(2.0 * rows * away * np.sin(np.pi / rows) / np.ptp(mesh.flat[:, 0]) - 1.0)
