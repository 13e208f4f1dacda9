"""A closed triangle mesh round the inside of a grid of distances: one vertex in each cell that the surface
crosses, one pair of triangles across each edge that it cuts (surface nets), drawn onto the surface itself."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from drafting.worn.nouns import Reals, Surface, Whole

_CORNERS = np.array([(i, j, k) for i in (0, 1) for j in (0, 1) for k in (0, 1)])
_EDGES = [(a, b) for a in range(8) for b in range(a + 1, 8) if np.abs(_CORNERS[a] - _CORNERS[b]).sum() == 1]


def skin(values: Reals, origin: Reals, step: float, solid: Callable[[Reals], Reals] | None = None) -> Surface:
    """Return the surface on which a grid (nx, ny, nz) of distances, node 0 at `origin`, is 0; mm.

    With `solid` (points (3, n) to distances) the vertices are moved onto it.
    """
    inside = values < 0
    numbers, cells = _crossed(inside)
    points = origin + step * _vertices(values, cells)
    if solid is not None:
        points = onto(points, solid, step)
    faces = np.concatenate([_faces(inside, numbers, axis) for axis in range(3)])
    return Surface(points, faces)


def onto(points: Reals, solid: Callable[[Reals], Reals], most: float) -> Reals:
    """Return points (n, 3) moved along the slope onto the surface, at most `most` mm."""
    start = points
    for _ in range(3):
        value, slope = valued(points, solid)
        square = np.maximum((slope * slope).sum(axis=1), 0.05)
        points = points - (value / square)[:, None] * slope
    gone = np.linalg.norm(points - start, axis=1)
    far = gone > most
    points[far] = start[far]
    return points


def valued(points: Reals, solid: Callable[[Reals], Reals], by: float = 0.5) -> tuple[Reals, Reals]:
    """The distance (n,) at points (n, 3), and its slope (n, 3) by differences over `by` mm."""
    steps = np.concatenate([np.zeros((1, 3)), by * np.eye(3), -by * np.eye(3)])
    asked = (points[None] + steps[:, None]).reshape(-1, 3)
    found = solid(np.ascontiguousarray(asked.T)).reshape(7, -1)
    return found[0], ((found[1:4] - found[4:7]) / (2 * by)).T


def _crossed(inside: np.ndarray) -> tuple[Whole, Whole]:
    """The number of each cell that the surface crosses (-1 elsewhere), and those cells (m, 3)."""
    shape = tuple(n - 1 for n in inside.shape)
    count = np.zeros(shape, dtype=np.int8)
    for i, j, k in _CORNERS:
        count += inside[i : i + shape[0], j : j + shape[1], k : k + shape[2]]
    cells = np.argwhere((count > 0) & (count < 8))
    numbers = np.full(shape, -1, dtype=np.int64)
    numbers[tuple(cells.T)] = np.arange(len(cells))
    return numbers, cells


def _vertices(values: Reals, cells: Whole) -> Reals:
    """The mean of the crossings on each cell's edges, in cells."""
    corner = [values[tuple((cells + c).T)] for c in _CORNERS]
    total, count = np.zeros((len(cells), 3)), np.zeros(len(cells))
    for a, b in _EDGES:
        cut = (corner[a] < 0) != (corner[b] < 0)
        part = corner[a][cut] / (corner[a][cut] - corner[b][cut])
        total[cut] += _CORNERS[a] + part[:, None] * (_CORNERS[b] - _CORNERS[a])
        count[cut] += 1
    found: Reals = cells + total / count[:, None]
    return found


def _faces(inside: np.ndarray, numbers: Whole, axis: int) -> Whole:
    """Two triangles across each grid edge along `axis` whose ends lie apart, seen from outside anticlockwise."""
    first = np.moveaxis(inside, axis, 0)
    number = np.moveaxis(numbers, axis, 0)
    here, there = first[:-1, 1:-1, 1:-1], first[1:, 1:-1, 1:-1]
    i, j, k = np.nonzero(here != there)
    four = np.stack([number[i, j, k], number[i, j + 1, k], number[i, j + 1, k + 1], number[i, j, k + 1]], axis=1)
    turned = here[i, j, k]
    if axis == 1:
        turned = ~turned
    four[~turned] = four[~turned][:, ::-1]
    return np.concatenate([four[:, [0, 1, 2]], four[:, [0, 2, 3]]])
