"""One piece as a flat mesh: a lattice of even triangles turned to the grain inside the given vertices.

The vertices of outline, inner darts and guides (roll lines, bones) are given and stay; those inside are
spread evenly, and more are put in where a triangle would be too sharp.
"""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from scipy.sparse import coo_matrix
from scipy.spatial import Delaunay

from drafting.geometry.area import Region
from drafting.geometry.curve import Points
from drafting.worn.nouns import Reals, Whole
from drafting.worn.sewn.rings import xy

CLEAR = 0.55
"""Of a mesh: how far vertices inside keep from given ones (ours)."""

SMOOTHED, REPAIRED = 4, 16
"""Rounds of spreading evenly, and of mending sharp triangles (ours)."""

SHARP = 24.0
"""degrees: a sharper triangle is mended where that can be done (ours)."""


ROOM = 0.45
"""Of a sharp triangle's circle: how near to the rim a vertex may be put into it (ours)."""


@dataclass(frozen=True, eq=False)
class FlatMesh:
    """`points` (n, 2): the given ones first, in their order; `triangles` (m, 3), anticlockwise.

    `open` (k, 2): neighbours of the outline that no triangle joins: the outline has to be finer there.
    """

    points: Reals
    triangles: Whole
    open: Whole


def meshed(ring: Points, holes: Sequence[Points], guides: Sequence[Points], mesh: float, grain: float) -> FlatMesh:
    """Return a piece's mesh: `ring` and `holes` closed, `guides` open, mm; `grain` in degrees."""
    region = Region.of(ring, holes)
    rim = [guide for guide in guides if len(guide) > 1]
    given = xy(np.concatenate([ring, *holes, *guides]))
    inside = _lattice(region, mesh, grain)
    inside = inside[region.holds(inside)]
    inside = inside[region.clearance(inside, rim) > CLEAR * mesh]
    points, count = np.vstack([given, xy(inside)]), len(given)
    triangles = _triangles(points, region)
    for _ in range(SMOOTHED):
        points = _spread(points, triangles, count)
        triangles = _triangles(points, region)
    points, triangles = _mended(points, triangles, count, region, rim)
    return FlatMesh(points, triangles, _missing(triangles, [len(ring), *map(len, holes)]))


def _lattice(region: Region, mesh: float, grain: float) -> Points:
    """Return the corners of even triangles that cover a piece, one row of them along the grain."""
    left, low, right, high = region.box
    reach = np.hypot(right - left, high - low) / 2 + mesh
    rows = np.arange(-reach, reach, mesh * np.sqrt(3) / 2)
    steps = np.arange(-reach, reach, mesh)
    along = steps[None, :] + np.where(np.arange(len(rows)) % 2, mesh / 2, 0.0)[:, None]
    lattice = (along + 1j * rows[:, None]).ravel()
    turned: Points = lattice * np.exp(1j * np.radians(grain)) + (left + right + 1j * (low + high)) / 2
    return turned


def _triangles(points: Reals, region: Region) -> Whole:
    """Return the Delaunay triangles inside a piece, anticlockwise, without those that are flat."""
    found = Delaunay(points).simplices.astype(np.int64)
    middle = points[found].mean(axis=1)
    found = found[region.holds(middle[:, 0] + 1j * middle[:, 1])]
    areas = signed_areas(points, found)
    found[areas < 0] = found[areas < 0][:, [0, 2, 1]]
    kept: Whole = found[np.abs(areas) > FLAT * np.median(np.abs(areas))]
    return kept


FLAT = 1e-4
"""Of the middle triangle: what is smaller lies between three vertices on one line."""


def signed_areas(points: Reals, triangles: Whole) -> Reals:
    """Return the area of each flat triangle, mm2, above 0 where anticlockwise."""
    a, b, c = (points[triangles[:, i]] for i in range(3))
    areas: Reals = ((b[:, 0] - a[:, 0]) * (c[:, 1] - a[:, 1]) - (b[:, 1] - a[:, 1]) * (c[:, 0] - a[:, 0])) / 2
    return areas


def least_angles(points: Reals, triangles: Whole) -> Reals:
    """Return the least angle of each triangle, degrees; points in the plane or in space."""
    found = np.full(len(triangles), 180.0)
    for i in range(3):
        here, one, two = (points[triangles[:, (i + k) % 3]] for k in range(3))
        u, v = one - here, two - here
        cosine = (u * v).sum(axis=1) / np.maximum(np.linalg.norm(u, axis=1) * np.linalg.norm(v, axis=1), 1e-300)
        found = np.minimum(found, np.degrees(np.arccos(np.clip(cosine, -1.0, 1.0))))
    return found


def _spread(points: Reals, triangles: Whole, given: int) -> Reals:
    """Return the points with each inner one moved to the mean of its neighbours."""
    edges = triangles[:, [0, 1, 1, 2, 2, 0]].reshape(-1, 2)
    count = len(points)
    both = np.concatenate([edges, edges[:, ::-1]])
    near = coo_matrix((np.ones(len(both)), both.T), shape=(count, count)).tocsr()
    near.data[:] = 1.0
    sums = np.asarray(near.sum(axis=1)).ravel()
    means = (near @ points) / np.maximum(sums, 1.0)[:, None]
    loose = (np.arange(count) >= given) & (sums > 0)
    spread: Reals = np.where(loose[:, None], means, points)
    return spread


def _mended(
    points: Reals, triangles: Whole, given: int, region: Region, rim: Sequence[Points]
) -> tuple[Reals, Whole]:
    """Return points and triangles after more points were put into sharp triangles, while that helps."""
    best, least = (points, triangles), _worst(points, triangles)
    for _ in range(REPAIRED):
        if least >= SHARP:
            break
        more = _mending(points, triangles, region, rim)
        if not len(more):
            break
        points = np.vstack([points, more])
        triangles = _triangles(points, region)
        evened = _spread(points, triangles, given)
        even_triangles = _triangles(evened, region)
        if _worst(evened, even_triangles) > _worst(points, triangles):
            points, triangles = evened, even_triangles
        if _worst(points, triangles) > least:
            best, least = (points, triangles), _worst(points, triangles)
    return best


def _worst(points: Reals, triangles: Whole) -> float:
    return float(least_angles(points, triangles).min())


def _mending(points: Reals, triangles: Whole, region: Region, rim: Sequence[Points]) -> Reals:
    """Return where a vertex over the short side of each sharp triangle makes a better one, where one may stand.

    That is towards the middle of the circle round the triangle, no farther than a triangle needs that is
    not sharp ("off-centres", from memory).
    """
    angles = least_angles(points, triangles)
    bad = triangles[angles < SHARP][np.argsort(angles[angles < SHARP])]
    middles, _ = _circles(points, bad)
    corners = points[bad]
    sides = corners[:, [1, 2, 0]] - corners
    lengths = np.linalg.norm(sides, axis=2)
    which = lengths.argmin(axis=1)
    rows = np.arange(len(bad))
    short, feet = lengths[rows, which], corners[rows, which] + sides[rows, which] / 2
    ways = middles - feet
    reach = np.linalg.norm(ways, axis=1)
    reach, ways = np.minimum(reach, OFF_CENTRE * short), ways / np.maximum(reach, 1e-9)[:, None]
    spots = feet + reach[:, None] * ways
    places = spots[:, 0] + 1j * spots[:, 1]
    fits = region.holds(places)
    fits[fits] = region.clearance(places[fits], rim) > ROOM * reach[fits]
    found: list[Reals] = []
    for spot, radius in zip(spots[fits], reach[fits], strict=True):
        if all(np.hypot(*(spot - old)) > ROOM * radius for old in found):
            found.append(spot)
    return np.array(found).reshape(-1, 2)


OFF_CENTRE = 1.6
"""How high over its short side, times that side, a triangle stands whose angles suffice: 35 degrees at its tip."""


def _circles(points: Reals, triangles: Whole) -> tuple[Reals, Reals]:
    """Return middle and radius of the circle through the corners of each triangle."""
    a, b, c = (points[triangles[:, i]] for i in range(3))
    u, v = b - a, c - a
    twice = 2 * (u[:, 0] * v[:, 1] - u[:, 1] * v[:, 0])
    uu, vv = (u * u).sum(axis=1), (v * v).sum(axis=1)
    x = (v[:, 1] * uu - u[:, 1] * vv) / twice
    y = (u[:, 0] * vv - v[:, 0] * uu) / twice
    return a + np.column_stack([x, y]), np.hypot(x, y)


def _missing(triangles: Whole, loops: Sequence[int]) -> Whole:
    """Return the neighbours on closed loops of vertices that no triangle joins."""
    ends = list(itertools.accumulate(loops, initial=0))
    first = np.concatenate([np.arange(a, b) for a, b in itertools.pairwise(ends)])
    after = np.concatenate([np.r_[a + 1 : b, a] for a, b in itertools.pairwise(ends)])
    count = int(triangles.max()) + 1
    held = set((triangles[:, [0, 1, 2]] * count + triangles[:, [1, 2, 0]]).ravel().tolist())
    lost = [
        (i, j)
        for i, j in zip(first.tolist(), after.tolist(), strict=True)
        if i * count + j not in held and j * count + i not in held
    ]
    return np.array(lost, dtype=np.int64).reshape(-1, 2)
