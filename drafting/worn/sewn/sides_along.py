"""Triangles that follow the lines drawn inside a piece: cloth turns over along a side, never across one."""

from __future__ import annotations

import itertools
from collections.abc import Iterable
from dataclasses import replace

import numpy as np

from drafting.worn.nouns import Reals, Whole
from drafting.worn.sewn.sheet import FlatMesh, least_angles, signed_areas

THINNEST = 13.0
"""degrees: a triangle with a sharper corner is a sliver, which bends as no cloth does (ours)."""


def sides_along(sheet: FlatMesh, chains: Iterable[Whole]) -> FlatMesh:
    """Return a mesh in which each two neighbours of a chain of vertices are joined by a side.

    Where one side crosses between them, the two triangles along it are parted the other way; where more cross, or
    where that would turn a triangle over or make it a sliver, it is left.
    """
    triangles = sheet.triangles
    for chain in chains:
        for a, b in itertools.pairwise(chain.tolist()):
            triangles = _joined(sheet.points, triangles, a, b)
    return replace(sheet, triangles=triangles)


def _joined(points: Reals, triangles: Whole, a: int, b: int) -> Whole:
    """Return the triangles with a side between two vertices, where one other crosses there."""
    at_a, at_b = (np.flatnonzero((triangles == end).any(axis=1)) for end in (a, b))
    if len(np.intersect1d(at_a, at_b)):
        return triangles
    for one in at_a:
        for two in at_b:
            shared = np.intersect1d(triangles[one], triangles[two])
            if len(shared) == 2:
                left, right = shared
                parted = np.array([(a, right, b), (a, b, left)])
                areas = signed_areas(points, parted)
                if areas.prod() > 0.0 and least_angles(points, parted).min() > THINNEST:
                    found = triangles.copy()
                    found[[one, two]] = parted if areas[0] > 0.0 else parted[:, [0, 2, 1]]
                    return found
    return triangles
