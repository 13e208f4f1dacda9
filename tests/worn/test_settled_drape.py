"""The drape of a disc of cloth, 30 cm on a support of 18 cm, by the share of the ring that its shadow covers.

Bands: from F. E. Cusick's regression on bending length and shear angle (1965, from memory, at 10 degrees of
shear), up to what a sheet clamped at the rim of the support gave elsewhere (ours).
"""

from __future__ import annotations

import numpy as np
import pytest
from scipy.spatial import Delaunay
from shapely import Point, Polygon

from drafting.worn.nouns import Reals
from tests.published import pairs, published, several, single
from tests.worn.meshes import Flat, come_to_rest, ply, sewn, without_slivers

DISC, SUPPORT, EDGE = 150.0, 90.0, 9.0


def ring() -> Flat:
    """The free ring and one row of cloth inside the support, in rings of points set between each other."""
    rows = [SUPPORT - 0.87 * EDGE, *np.linspace(SUPPORT, DISC, 9)]
    count = round(2.0 * np.pi * 0.5 * (SUPPORT + DISC) / EDGE)
    angles = [2.0 * np.pi * (np.arange(count) + 0.5 * (row % 2)) / count for row in range(len(rows))]
    points = np.concatenate(
        [np.stack([r * np.cos(a), r * np.sin(a)], axis=1) for r, a in zip(rows, angles, strict=True)]
    )
    triangles = Delaunay(points).simplices.astype(np.int64)
    beyond = np.linalg.norm(points[triangles].mean(axis=1), axis=1) > rows[0]
    return points, without_slivers(points, triangles[beyond])


def drape_coefficient(bending_length: float) -> float:
    """Per cent, of a cloth of this bending length in mm, alike both ways; started with five faint waves."""
    points, triangles = ring()
    away = np.linalg.norm(points, axis=1)
    wave = np.cos(5.0 * np.arctan2(points[:, 1], points[:, 0]) + 0.3)
    free = np.clip((away - SUPPORT) / (DISC - SUPPORT), 0.0, None)
    mesh = sewn((points, triangles), ply(shear=60.0, bend=2.0 * (bending_length * 1e-3) ** 3))
    start = np.column_stack([points, 4.0 * free * wave])
    found, residual = come_to_rest(mesh, start, held=away < SUPPORT + 1e-6)
    assert residual <= 0.05
    return shadow(found[away > DISC - 1e-6])


def shadow(rim: Reals) -> float:
    order = np.argsort(np.arctan2(rim[:, 1], rim[:, 0]))
    area = Polygon(rim[order, :2]).buffer(0).union(Point(0, 0).buffer(SUPPORT, 64)).area
    support = np.pi * SUPPORT**2
    return float(100.0 * (area - support) / (np.pi * DISC**2 - support))


BANDS = {15.0: (41.0, 51.0), 20.0: (53.0, 65.0), 25.0: (62.0, 83.0), 30.0: (70.0, 89.0), 40.0: (80.0, 96.0)}
"""Least and most, by bending length in mm."""


@pytest.fixture(scope="module")
def coefficients() -> dict[float, float]:
    return {length: drape_coefficient(length) for length in BANDS}


def test_a_stiffer_cloth_drapes_less(coefficients: dict[float, float]) -> None:
    found = [coefficients[length] for length in sorted(coefficients)]
    assert found == sorted(found)


@pytest.mark.parametrize("length", sorted(BANDS))
def test_the_shadow_is_as_wide_as_such_cloth_throws(length: float, coefficients: dict[float, float]) -> None:
    least, most = BANDS[length]
    assert least <= coefficients[length] <= most


def rim(radius: float) -> Reals:
    """A level circle of points, mm."""
    turn = np.linspace(0.0, 2.0 * np.pi, 4000, endpoint=False)
    return np.column_stack([radius * np.cos(turn), radius * np.sin(turn), np.zeros(len(turn))])


def test_the_discs_are_those_of_the_standard_test() -> None:
    support, disc = np.pi * SUPPORT**2 / 100, np.pi * DISC**2 / 100
    assert [support, disc, disc - support] == pytest.approx(
        several("drape-discs"), abs=published("drape-discs").tolerance
    )
    points, triangles = ring()
    free = np.linalg.norm(points[triangles].mean(axis=1), axis=1) > SUPPORT
    a, b, c = (points[triangles[free, corner]] for corner in range(3))
    u, v = b - a, c - a
    meshed = 0.5 * np.abs(u[:, 0] * v[:, 1] - u[:, 1] * v[:, 0]).sum() / 100
    assert meshed == pytest.approx(several("drape-discs")[2], rel=0.01)


def test_the_shadows_paper_weighs_its_share_of_the_rings() -> None:
    within = published("drape-paper").tolerance
    part = np.sqrt(SUPPORT**2 + 0.7 * (DISC**2 - SUPPORT**2))
    assert 3.0 * shadow(rim(part)) / 100 == pytest.approx(single("drape-paper"), abs=within)
    assert shadow(rim(SUPPORT)) == pytest.approx(0.0, abs=0.01)
    assert shadow(rim(DISC)) == pytest.approx(100.0, abs=0.01)


@pytest.mark.parametrize(("kind", "length"), [(0, 15.0), (1, 20.0), (2, 40.0)])
def test_fluid_medium_and_stiff_cloth_drapes_as_such_cloth_does(
    kind: int, length: float, coefficients: dict[float, float]
) -> None:
    """Chiffon, shirting and denim by the middle of the bending lengths that such cloth has."""
    least, most = pairs("drape-by-kind")[kind]
    within = published("drape-by-kind").tolerance
    assert within is not None
    assert least - within <= coefficients[length] <= most + within
