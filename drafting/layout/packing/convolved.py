"""The line whose inside is the Minkowski sum of two outlines: far shorter than every edge swept along every other.

An edge of one outline is kept at a corner of the other only where its direction lies in the turn of that
corner; at a hollow corner it runs backwards. The closed lines that are left wind about a point as often as
the one outline, brought there, meets the other in separate parts (Guibas, Ramshaw and Stolfi 1983, from
memory), so that what they wind about at all is the sum.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray


def convolved(first: NDArray[np.int64], second: NDArray[np.int64]) -> list[list[tuple[int, int]]]:
    """Return closed lines on the grid: what they wind about is the sum of two anticlockwise outlines."""
    n, m = len(first), len(second)
    a, b = _directions(first), _directions(second)
    ranks = np.empty(n + m, dtype=np.int64)
    ranks[np.argsort(np.concatenate([a, b]), kind="stable")] = np.arange(n + m)
    along = _turned_over(ranks[:n], b, ranks[n:])  # edge i of the first at corner j of the second
    across = _turned_over(ranks[n:], a, ranks[:n]).T  # edge j of the second at corner i of the first
    nodes = np.arange(n * m).reshape(n, m)
    below, beside = np.concatenate((nodes[1:], nodes[:1])), np.concatenate((nodes[:, 1:], nodes[:, :1]), axis=1)
    steps = [(nodes, below, along), (nodes, beside, across)]
    out: dict[int, list[int]] = {}
    for here, there, kept in steps:
        for start, end, way in ((here, there, kept > 0), (there, here, kept < 0)):
            for u, v in zip(start[way].tolist(), end[way].tolist(), strict=True):
                out.setdefault(u, []).append(v)
    corners = (first[:, None, :] + second[None, :, :]).reshape(-1, 2)
    return [list(map(tuple, corners[ring].tolist())) for ring in _rings(out)]


def _directions(ring: NDArray[np.int64]) -> NDArray[np.float64]:
    """Return the direction of each edge, radians; edge i begins at corner i."""
    x, y = (np.concatenate((ring[1:], ring[:1])) - ring).T
    return np.asarray(np.arctan2(y.astype(float), x.astype(float)))


def _turned_over(
    edges: NDArray[np.int64], directions: NDArray[np.float64], ranks: NDArray[np.int64]
) -> NDArray[np.int64]:
    """Return how each of the `edges` (rows, by rank) is kept at each corner: 1 forwards, -1 backwards, 0 not."""
    whole = len(edges) + len(ranks)
    turn = directions - np.concatenate((directions[-1:], directions[:-1]))
    turn = (turn + np.pi) % (2 * np.pi) - np.pi
    before, after = np.concatenate((ranks[-1:], ranks[:-1])), ranks
    left = (turn > 0) & ((edges[:, None] - before) % whole < (after - before) % whole)
    right = (turn < 0) & ((before - edges[:, None]) % whole < (before - after) % whole)
    return left.astype(np.int64) - right.astype(np.int64)


def _rings(out: dict[int, list[int]]) -> list[list[int]]:
    """Return the closed walks that use every step once."""
    found: list[list[int]] = []
    for start, ends in out.items():
        while ends:
            ring, at = [], start
            while out[at]:
                ring.append(at)
                at = out[at].pop()
            found.append(ring)
    return found
