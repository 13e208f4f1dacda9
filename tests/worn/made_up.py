"""Made-up forms and garments, worked out by hand: a cylinder, and tubes of cloth round it."""

from __future__ import annotations

import math

import numpy as np

from drafting.worn.nouns import AtRest, Limb, MeshLevel, Ply, SewnMesh, SewnPiece, Surface

PLAIN = Ply(along=400.0, across=400.0, shear=100.0, bends_along=1e-5, bends_across=1e-5, weight=1.5, thickness=0.4)


def post(radius: float, height: float, around: int = 96, rows: int = 60) -> Surface:
    """Return a closed upright cylinder on the floor."""
    angles = np.linspace(0, 2 * math.pi, around, endpoint=False)
    levels = np.linspace(0, height, rows + 1)
    ring = np.column_stack((np.cos(angles), np.sin(angles)))
    sides = [np.column_stack((radius * ring, np.full(around, z))) for z in levels]
    points = np.concatenate((*sides, [[0, 0, 0], [0, 0, height]]))
    i, j = np.meshgrid(np.arange(around), np.arange(rows))
    a, b = (j * around + i).ravel(), (j * around + (i + 1) % around).ravel()
    c, d = a + around, b + around
    foot, top = len(points) - 2, len(points) - 1
    n = np.arange(around)
    m = (n + 1) % around
    low = np.column_stack((m, n, np.full(around, foot)))
    high = np.column_stack((n + rows * around, m + rows * around, np.full(around, top)))
    walls = np.concatenate((np.column_stack((a, b, d)), np.column_stack((a, d, c))))
    return Surface(points, np.concatenate((walls, low, high)))


def tube(
    radius: float, low: float, high: float, wave: float = 0.0, stretched: float = 0.0, step: float = 20.0
) -> AtRest:
    """Return half a tube of cloth round the z axis, drafted `stretched` smaller than it is worn.

    `wave` mm of three folds grow from nothing at the top to all at the hem.
    """
    around, rows = round(math.pi * radius / step), round((high - low) / step)
    i, j = np.meshgrid(np.arange(around + 1), np.arange(rows + 1))
    turn, share = (math.pi * i / around).ravel(), (j / rows).ravel()
    out = radius + wave * (1 - share) * np.cos(6 * turn)
    points = np.column_stack((out * np.sin(turn), -out * np.cos(turn), low + share * (high - low)))
    points[np.isclose(np.abs(np.sin(turn)), 0), 0] = 0.0
    flat = np.column_stack((radius * turn / (1 + stretched), share * (high - low)))
    i, j = np.meshgrid(np.arange(around), np.arange(rows))
    a = (j * (around + 1) + i).ravel()
    b, c, d = a + 1, a + around + 1, a + around + 2
    triangles = np.concatenate((np.column_stack((a, b, d)), np.column_stack((a, d, c))))
    columns = np.arange(around + 1)
    hem, top = columns, rows * (around + 1) + columns
    mesh = SewnMesh(
        garment="tube",
        halved=True,
        pieces=(SewnPiece("body", Limb.TRUNK, 90.0),),
        plies=(PLAIN,),
        flat=flat,
        triangles=triangles,
        merged=np.arange(len(points)),
        piece=np.zeros(len(triangles), np.int64),
        ply=np.zeros(len(triangles), np.int64),
        count=len(points),
        on_middle=points[:, 0] == 0.0,
        added=np.zeros(len(points)),
        folds=np.zeros((0, 2), np.int64),
        tied=np.zeros((0, 2), np.int64),
        edges={("body", "hem"): hem, ("body", "top"): top},
        levels=(_level(rows // 2, around, rows, 2 * math.pi * radius / (1 + stretched)),),
    )
    return AtRest(
        mesh=mesh, points=points, slip=np.zeros_like(points), residual=0.02, settled=True, steps=10, seconds=0.1
    )


def _level(row: int, around: int, rows: int, drafted: float) -> MeshLevel:
    """Return a level along a row of mesh points, from the front middle to the back middle."""
    n = np.arange(around)
    triangles = np.append(row * around + n, row * around + around - 1)
    weights = np.zeros((around + 1, 3))
    weights[:-1, 0], weights[-1, 1] = 1.0, 1.0
    return MeshLevel("waist", Limb.TRUNK, triangles, weights, drafted)
