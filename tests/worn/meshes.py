"""Small sewn meshes to try the sheet on: strips and hoops, with lattices whose rows lie where they are asked."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
from scipy.spatial import Delaunay

from drafting.worn.contact import DistanceField
from drafting.worn.nouns import Limb, Ply, Reals, SewnMesh, SewnPiece, Truth, Whole
from drafting.worn.settled.balance import scene_of
from drafting.worn.settled.search import Limits, residual_of, searched
from drafting.worn.settled.sheet import sheet_of
from drafting.worn.settled.touch import unheld

Flat = tuple[Reals, Whole]
"""Points (V, 2) mm and triangles (T, 3)."""


def ply(pull: float = 1500.0, shear: float = 200.0, bend: float = 5.4e-5, weight: float = 2.0) -> Ply:
    """A cloth alike along and across: N/m, N m, N/m2."""
    return Ply(
        along=pull, across=pull, shear=shear, bends_along=bend, bends_across=bend, weight=weight, thickness=0.5
    )


def lattice(x: tuple[float, float], y: tuple[float, float], edge: float) -> Flat:
    """A rectangle of near equilateral triangles whose rows run along y; both ends in x are rows, and alike."""
    rows = 2 * int(np.ceil((x[1] - x[0]) / (edge * np.sqrt(3.0)) - 1e-9))
    count = max(1, round((y[1] - y[0]) / edge))
    plain = np.linspace(*y, count + 1)
    between = np.concatenate([[y[0]], 0.5 * (plain[1:] + plain[:-1]), [y[1]]])
    places = np.linspace(*x, rows + 1)
    points = np.concatenate(
        [
            np.stack([np.full(len(r), at), r], 1)
            for at, r in zip(places, _alternating(plain, between, rows), strict=True)
        ]
    )
    return points, without_slivers(points, Delaunay(points).simplices.astype(np.int64))


def _alternating(plain: Reals, between: Reals, rows: int) -> list[Reals]:
    return [between if row % 2 else plain for row in range(rows + 1)]


def without_slivers(points: Reals, triangles: Whole) -> Whole:
    """Triangles that have an area, anticlockwise."""
    a, b, c = (points[triangles[:, corner]] for corner in range(3))
    area = (b[:, 0] - a[:, 0]) * (c[:, 1] - a[:, 1]) - (b[:, 1] - a[:, 1]) * (c[:, 0] - a[:, 0])
    kept = triangles[np.abs(area) > 1e-6]
    return np.where((area[np.abs(area) > 1e-6] > 0)[:, None], kept, kept[:, ::-1])


def side_by_side(*parts: Flat) -> Flat:
    """Parts that touch, with the points they share made one: their common line is a row of the mesh."""
    points = np.concatenate([part[0] for part in parts])
    before = np.cumsum([0, *(len(part[0]) for part in parts[:-1])])
    triangles = np.concatenate([part[1] + start for part, start in zip(parts, before, strict=True)])
    _, first, place = np.unique(np.round(points, 6), axis=0, return_index=True, return_inverse=True)
    return points[first], place.ravel()[triangles]


def sewn(flat: Flat, cloth: Ply, grain: float = 0.0, merged: Whole | None = None) -> SewnMesh:
    """One piece; `merged` gives the sewn vertex of each flat one where it is sewn to itself."""
    points, triangles = flat
    place = np.arange(len(points)) if merged is None else merged
    count = int(place.max()) + 1
    none = np.zeros((0, 2), dtype=np.int64)
    return SewnMesh(
        garment="trial",
        halved=False,
        pieces=(SewnPiece("piece", Limb.TRUNK, grain),),
        plies=(cloth,),
        flat=points,
        triangles=triangles,
        merged=place,
        piece=np.zeros(len(triangles), dtype=np.int64),
        ply=np.zeros(len(triangles), dtype=np.int64),
        count=count,
        on_middle=np.zeros(count, dtype=bool),
        added=np.zeros(count),
        folds=none,
        tied=none,
    )


def hoop(girth: float, height: float, edge: float, cloth: Ply) -> tuple[SewnMesh, Reals]:
    """A band sewn to itself, `girth` mm round, and the angle (count,) at which each vertex lies on it."""
    points, triangles = lattice((0.0, girth), (-height / 2.0, height / 2.0), edge)
    key = np.round(np.stack([points[:, 0] % girth, points[:, 1]], axis=1), 6)
    key[:, 0] %= girth
    found, place = np.unique(key, axis=0, return_inverse=True)
    return sewn((points, triangles), cloth, merged=place.ravel()), found[:, 0] / girth * 2.0 * np.pi


def turned(flat: Flat) -> Flat:
    """The same with x and y changed: rows run along x."""
    points = flat[0][:, ::-1].copy()
    return points, without_slivers(points, flat[1])


def halved(mesh: SewnMesh, on_middle: Truth) -> SewnMesh:
    return replace(mesh, halved=True, on_middle=on_middle)


def come_to_rest(
    mesh: SewnMesh, points: Reals, field: DistanceField | None = None, held: Truth | None = None
) -> tuple[Reals, float]:
    """Points (count, 3) mm at rest and the residual: the cloth as stiff as it is, no friction, thin as paper."""
    stays = np.zeros(mesh.count, dtype=bool) if held is None else held
    scene = scene_of(sheet_of(mesh, stays, np.inf, np.inf), field, np.zeros(mesh.count))
    found = searched(scene, points * 1e-3, unheld(), Limits(residual=0.01))
    return found.state.points * 1e3, residual_of(scene, found.state)
