"""The sewn mesh as a sheet to compute with: metres, newtons, and each triangle's directions of thread."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from drafting.worn.nouns import Reals, SewnMesh, Truth, Whole

# The strain at which a thread direction gives way when pressed together, at least and at most.
_YIELDS = (2e-4, 0.02)


@dataclass(frozen=True, eq=False)
class ClothSheet:
    """T triangles on `count` sewn vertices.

    `corners` (T, 3, 2): the two thread directions' coordinates of each triangle's corners, m; `slopes`
    (T, 3, 2): derivatives of the corners' weights by them, per m; `areas` (T,) m2; `pulls` (T, 3): stiffness
    along, across and in shear times area, N m; `yields` (T, 2): strain at which pressing along, across gives
    way; `bends` (T, 3): rigidity along, across, twisted, N m; `weight` (count,) N; `share` (count,): area that
    belongs to a vertex, m2; `loose` (count, 3): 1 where a vertex may move that way, else 0.
    """

    mesh: SewnMesh
    triangles: Whole
    corners: Reals
    slopes: Reals
    areas: Reals
    pulls: Reals
    yields: Reals
    bends: Reals
    weight: Reals
    share: Reals
    loose: Reals
    held: Truth

    @property
    def count(self) -> int:
        return self.mesh.count


def sheet_of(mesh: SewnMesh, held: Truth, stiffest: float, stiffest_shear: float) -> ClothSheet:
    """`held` (count,): vertices that stay; a cloth stiffer than `stiffest` N/m is taken as that stiff.

    The inextensible sheet is what makes the search for rest long; at 1000 N/m a hem hangs w L^2 / 2k lower,
    under 1 mm. At 400 a loose garment of cotton was stretched by 0.7 % where it only hangs.
    """
    corners = _along_threads(mesh)
    first, second = corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0]
    areas = 0.5 * np.abs(first[:, 0] * second[:, 1] - first[:, 1] * second[:, 0])
    inverse = np.linalg.inv(np.stack([first, second], axis=2))
    slopes = np.stack([-inverse[:, 0] - inverse[:, 1], inverse[:, 0], inverse[:, 1]], axis=1)
    pulled = np.array([[ply.along, ply.across, ply.shear] for ply in mesh.plies])[mesh.ply]
    bends = np.array([[ply.bends_along, ply.bends_across, ply.twisting] for ply in mesh.plies])[mesh.ply]
    weight = areas * np.array([ply.weight for ply in mesh.plies])[mesh.ply]
    pulls = np.minimum(pulled, [stiffest, stiffest, stiffest_shear])
    triangles = mesh.sewn
    loose = np.ones((mesh.count, 3))
    loose[mesh.on_middle, 0] = 0.0
    loose[mesh.hung, 2] = 0.0
    loose[held] = 0.0
    return ClothSheet(
        mesh=mesh,
        triangles=triangles,
        corners=corners,
        slopes=slopes,
        areas=areas,
        pulls=pulls * areas[:, None],
        yields=_yields(bends, areas, pulls),
        bends=bends,
        weight=_spread(triangles, weight, mesh.count) + mesh.added,
        share=_spread(triangles, areas, mesh.count),
        loose=loose,
        held=held,
    )


def starched(sheet: ClothSheet, times: float) -> ClothSheet:
    """The sheet `times` as stiff in bending, and as firm against being pressed together as that makes it."""
    bends = sheet.bends * times
    yields = _yields(bends, sheet.areas, sheet.pulls / sheet.areas[:, None])
    return replace(sheet, bends=bends, yields=yields)


def _yields(bends: Reals, areas: Reals, pulls: Reals) -> Reals:
    """(T, 2): strain at which a thread direction gives way when pressed; `pulls` (T, 3) N/m."""
    return np.clip(_wrinkle_load(bends[:, :2], areas) / pulls[:, :2], *_YIELDS)


def _along_threads(mesh: SewnMesh) -> Reals:
    """(T, 3, 2) m: flat corners turned so that the first coordinate runs along the grain."""
    turn = np.radians([piece.grain for piece in mesh.pieces])[mesh.piece]
    flat = mesh.flat[mesh.triangles] * 1e-3
    cos, sin = np.cos(turn)[:, None], np.sin(turn)[:, None]
    return np.stack([cos * flat[..., 0] + sin * flat[..., 1], cos * flat[..., 1] - sin * flat[..., 0]], axis=-1)


def _wrinkle_load(bends: Reals, areas: Reals) -> Reals:
    """N/m that cloth bears pressed before it wrinkles within one triangle: Euler's load, half a wave an edge."""
    edge = np.sqrt(4.0 * areas / np.sqrt(3.0))
    load: Reals = bends * (np.pi / edge[:, None]) ** 2
    return load


def _spread(triangles: Whole, of_triangle: Reals, count: int) -> Reals:
    """(count,): what a triangle has, a third to each corner."""
    each = np.repeat(of_triangle / 3.0, 3)
    return np.bincount(triangles.ravel(), weights=each, minlength=count).astype(np.float64)
