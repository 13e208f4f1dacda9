"""Where places of a flat piece lie on the cloth of a garment at rest."""

from __future__ import annotations

import numpy as np
from scipy.spatial import cKDTree

from drafting.geometry.curve import Points
from drafting.worn.nouns import Reals, SewnMesh, Whole

NEAREST = 6
"""Triangles whose middles are nearest, among which the nearest place is looked for."""


def spots_worn(points: Reals, mesh: SewnMesh, faces: Whole, spots: Points) -> tuple[Reals, Reals]:
    """Return (N, 3) where places (N,) of a flat piece lie, and (N,) how far beyond the piece each is, mm.

    The piece's triangles are `faces` (T, 3); a place beyond it lies where the next one of it does.
    """
    if not len(spots):
        return np.zeros((0, 3)), np.zeros(0)
    corners, flat = mesh.flat[faces], np.column_stack((spots.real, spots.imag))
    _, near = cKDTree(corners.mean(axis=1)).query(flat, k=min(NEAREST, len(faces)))
    near = near.reshape(len(flat), -1)
    found = shares(corners[near], flat)
    places = np.einsum("nkb,nkbc->nkc", found, corners[near])
    gaps = np.linalg.norm(flat[:, None] - places, axis=2)
    best, row = gaps.argmin(axis=1), np.arange(len(flat))
    worn: Reals = np.einsum("nb,nbc->nc", found[row, best], points[mesh.merged[faces[near[row, best]]]])
    return worn, gaps[row, best]


def shares(corners: Reals, points: Reals) -> Reals:
    """Return (N, K, 3): shares of the corners (N, K, 3, D) in the place next to each point (N, D), 0 or more."""
    start = corners[:, :, 0]
    one, two, off = corners[:, :, 1] - start, corners[:, :, 2] - start, points[:, None] - start
    aa, ab, bb = ((p * q).sum(-1) for p, q in ((one, one), (one, two), (two, two)))
    a, b = (off * one).sum(-1), (off * two).sum(-1)
    whole = np.maximum(aa * bb - ab**2, 1e-9)
    u, v = (bb * a - ab * b) / whole, (aa * b - ab * a) / whole
    shares = np.clip(np.stack((1 - u - v, u, v), axis=-1), 0, None)
    found: Reals = shares / shares.sum(-1, keepdims=True)
    return found
