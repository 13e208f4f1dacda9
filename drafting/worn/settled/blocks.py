"""Which vertices act on each other, found once: the pattern of 3 x 3 blocks, their order, and the factor."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy import sparse
from scipy.sparse.linalg import SuperLU, splu

from drafting.worn.nouns import Reals, Whole
from drafting.worn.settled.sheet import ClothSheet

# N/m on what may not move: anything clearly above zero.
_FIXED = 1e3
_SYMMETRIC = {"SymmetricMode": True}


@dataclass(frozen=True, eq=False)
class BlockPattern:
    """B blocks of a symmetric matrix over `count` vertices.

    `of_corners` (B, 9T): sums the blocks of triangles' corners; `diagonal` (count,): each vertex's own block;
    `keys` (B,), rising, name their two vertices; `threads` four of (S,): blocks of a thread's ends with themselves
    and each other; `base` (B, 9): what never changes; `loose` (B, 9): 0 where a vertex may not move. The matrix
    is factored in `order`; `scatter` sends the blocks' entries to its compressed columns `rows`, `starts`.
    """

    count: int
    keys: Whole
    of_corners: sparse.csr_matrix
    diagonal: Whole
    threads: tuple[Whole, Whole, Whole, Whole]
    base: Reals
    loose: Reals
    fixed: Reals
    order: Whole
    scatter: Whole
    rows: Whole
    starts: Whole


def pattern_of(
    sheet: ClothSheet, steady: tuple[sparse.csr_matrix, sparse.csr_matrix], ends: Whole, met: Whole
) -> BlockPattern:
    """Of the sheet's triangles, the `steady` matrices for x and for y and z, threads' `ends` (S, 2).

    `met` (M, 2): vertices besides that act on each other where walls meet.
    """
    count, triangles = sheet.count, sheet.triangles
    fixed = [matrix.tocoo() for matrix in steady]
    own = np.arange(count)
    one, two = ends.T
    parts = [
        (np.repeat(triangles, 3, axis=1).ravel(), np.tile(triangles, (1, 3)).ravel()),
        (fixed[0].row, fixed[0].col),
        (fixed[1].row, fixed[1].col),
        (own, own),
        (one, one),
        (two, two),
        (one, two),
        (two, one),
        (met[:, 0], met[:, 1]),
        (met[:, 1], met[:, 0]),
    ]
    keys = [row.astype(np.int64) * count + column for row, column in parts]
    found, where = np.unique(np.concatenate(keys), return_inverse=True)
    places = np.split(where, np.cumsum([len(key) for key in keys])[:-1])
    first, second = found // count, found % count
    base = np.zeros((len(found), 9))
    base[:, 0] = np.bincount(places[1], weights=fixed[0].data, minlength=len(found))
    base[:, 4] = base[:, 8] = np.bincount(places[2], weights=fixed[1].data, minlength=len(found))
    ones = np.ones(len(places[0]))
    order = _order(first, second, count)
    scatter, rows, starts = _columns(first, second, order)
    return BlockPattern(
        count=count,
        keys=found,
        of_corners=sparse.csr_matrix((ones, (places[0], np.arange(len(ones)))), shape=(len(found), len(ones))),
        diagonal=places[3],
        threads=(places[4], places[5], places[6], places[7]),
        base=base,
        loose=(sheet.loose[first][:, :, None] * sheet.loose[second][:, None, :]).reshape(-1, 9),
        fixed=_FIXED * (1.0 - sheet.loose),
        order=order,
        scatter=scatter,
        rows=rows,
        starts=starts,
    )


def blocks_of(pattern: BlockPattern, pairs: Whole) -> tuple[Whole, Whole, Whole, Whole] | None:
    """Where pairs of vertices (K, 2) have their blocks, as `BlockPattern.threads`; None where one has none."""
    one, two = pairs.T
    keys = one * pattern.count + two, two * pattern.count + one
    mixed = [np.minimum(np.searchsorted(pattern.keys, key), len(pattern.keys) - 1) for key in keys]
    if any((pattern.keys[place] != key).any() for place, key in zip(mixed, keys, strict=True)):
        return None
    return pattern.diagonal[one], pattern.diagonal[two], mixed[0], mixed[1]


def _order(first: Whole, second: Whole, count: int) -> Whole:
    """Vertices by least fill: the order of the graph's own factor."""
    graph = sparse.csc_matrix((np.ones(len(first)), (first, second)), shape=(count, count))
    graph = (graph + sparse.identity(count) * 1e3).tocsc()
    factor = splu(graph, permc_spec="MMD_AT_PLUS_A", options=_SYMMETRIC, diag_pivot_thresh=0.0)
    return np.argsort(factor.perm_c)


def _columns(first: Whole, second: Whole, order: Whole) -> tuple[Whole, Whole, Whole]:
    """Where each of the blocks' 9 entries goes in the compressed columns of the ordered matrix."""
    count = len(order)
    place = np.empty(count, dtype=np.int64)
    place[order] = np.arange(count)
    sort = np.lexsort((place[second], place[first]))
    starts = np.searchsorted(place[first][sort], np.arange(count + 1)).astype(np.int32)
    entries = (sort[:, None] * 9 + np.arange(9)).reshape(-1, 3, 3)
    blocks = sparse.bsr_matrix(
        (entries.astype(float), place[second][sort].astype(np.int32), starts), shape=(3 * count, 3 * count)
    )
    rows = blocks.tocsr()  # symmetric: its rows are its columns
    return rows.data.astype(np.int64), rows.indices, rows.indptr


def factored(pattern: BlockPattern, blocks: Reals, shift: Reals) -> SuperLU:
    """L U of the blocks (B, 9) with `shift` (count,) N/m added to the diagonal."""
    entries = blocks.copy()
    entries[pattern.diagonal[:, None], [0, 4, 8]] += shift[:, None] + pattern.fixed
    size = 3 * pattern.count
    matrix = sparse.csc_matrix(
        (entries.ravel()[pattern.scatter], pattern.rows, pattern.starts), shape=(size, size)
    )
    return splu(matrix, permc_spec="NATURAL", options=_SYMMETRIC, diag_pivot_thresh=0.0)


def moved_by(pattern: BlockPattern, factor: SuperLU, force: Reals) -> Reals:
    """(count, 3) m: matrix^-1 force (count, 3)."""
    found = np.empty_like(force)
    found[pattern.order] = factor.solve(force[pattern.order].ravel()).reshape(-1, 3)
    return found


def downhill(pattern: BlockPattern, factor: SuperLU, force: Reals, most: int = 60) -> tuple[Reals, int] | None:
    """-|matrix|^-1 force with every negative pivot of L D L' turned positive, and how many there were.

    Exact: with w = L e and v = d A^-1 w of each negative pivot d, x = y - 2 sum v (w' y). None where there are
    more than `most`, or the factor had to change its order.
    """
    way = factor.solve(force[pattern.order].ravel())
    pivots = factor.U.diagonal()
    negative = np.flatnonzero(pivots <= 0.0)
    if len(negative) > most or (factor.perm_r != factor.perm_c).any():
        return None
    if len(negative):
        columns = factor.L[:, negative].toarray()[factor.perm_c]
        flipped = factor.solve(columns) * pivots[negative]
        way = way - 2.0 * flipped @ (columns.T @ way)
    found = np.empty_like(force)
    found[pattern.order] = -way.reshape(-1, 3)
    return found, len(negative)
