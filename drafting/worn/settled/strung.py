"""What lies along lines of the sheet: bones, elastic, and what buttons hold together."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy import sparse

from drafting.worn.nouns import ElasticThread, Reals, Rod, Truth, Whole
from drafting.worn.settled.edges import pair_keys
from drafting.worn.settled.sheet import ClothSheet

# N/m between two vertices that are buttoned together: a tenth of a millimetre under a whole garment's weight.
_BUTTONED = 2e4
# Strain over which a thread of elastic comes from slack to taut, so that its stiffness does not jump.
_SOFT = 0.002


@dataclass(frozen=True, eq=False)
class Threads:
    """S stretches of elastic or bone between `ends` (S, 2): `rest` (S,) m, `pull` (S,) N a unit strain.

    Elastic pulls and does not push; a bone does both (`pushes` (S,)).
    """

    ends: Whole
    rest: Reals
    pull: Reals
    pushes: Truth


@dataclass(frozen=True, eq=False)
class Taut:
    """Threads at one place: `energy` J; `force` (S,) N; `way` (S, 3) unit; `long` (S,) m; `stiffness` (S,) N/m."""

    energy: float
    force: Reals
    way: Reals
    long: Reals
    stiffness: Reals


def threads_of(sheet: ClothSheet) -> Threads:
    """Elastic, and what keeps a bone as long as it is: one that only bends crumples the cloth along it for a
    shorter way round."""
    parts = [_thread(sheet, thread) for thread in sheet.mesh.elastics]
    bones = [_stretches(sheet, rod.vertices) for rod in sheet.mesh.rods if rod.along]
    if not parts and not bones:
        return Threads(np.zeros((0, 2), dtype=np.int64), np.zeros(0), np.zeros(0), np.zeros(0, bool))
    along = [rod.along for rod in sheet.mesh.rods if rod.along]
    parts += [(ends, long, np.full(len(ends), pull)) for (ends, long), pull in zip(bones, along, strict=True)]
    ends, rest, pull = (np.concatenate(column) for column in zip(*parts, strict=True))
    elastic = sum(len(thread.vertices) - 1 for thread in sheet.mesh.elastics)
    return Threads(ends, rest, pull, np.arange(len(ends)) >= elastic)


def _thread(sheet: ClothSheet, thread: ElasticThread) -> tuple[Whole, Reals, Reals]:
    """Sewn on stretched: each stretch of cloth takes its share of the thread."""
    ends, long = _stretches(sheet, thread.vertices)
    return ends, long * (thread.rest * 1e-3 / long.sum()), np.full(len(ends), thread.pull)


def _stretches(sheet: ClothSheet, chain: Whole) -> tuple[Whole, Reals]:
    """The stretches of a chain of vertices, and how long each is as cut, m."""
    ends = np.stack([chain[:-1], chain[1:]], axis=1)
    return ends, flat_lengths(sheet, ends)


def flat_lengths(sheet: ClothSheet, pairs: Whole) -> Reals:
    """(K,) m: length of edges (K, 2) as cut; of a seam, the mean of its two sides."""
    ends = np.concatenate([sheet.triangles[:, [1, 2]], sheet.triangles[:, [2, 0]], sheet.triangles[:, [0, 1]]])
    run = np.concatenate([sheet.corners[:, [1, 2]], sheet.corners[:, [2, 0]], sheet.corners[:, [0, 1]]])
    long = np.linalg.norm(run[:, 1] - run[:, 0], axis=1)
    keys, place = np.unique(pair_keys(ends, sheet.count), return_inverse=True)
    mean = np.bincount(place, weights=long) / np.bincount(place)
    wanted = pair_keys(pairs, sheet.count)
    found = np.minimum(np.searchsorted(keys, wanted), len(keys) - 1)
    if (keys[found] != wanted).any():
        lost = pairs[keys[found] != wanted][0].tolist()
        raise ValueError(f"a line of the sheet runs along edges of triangles; vertices {lost} share none")
    return np.asarray(mean[found])


def pulling(threads: Threads, points: Reals) -> Taut:
    """In proportion to the strain; where nothing pushes, from slack on."""
    run = points[threads.ends[:, 0]] - points[threads.ends[:, 1]]
    long = np.sqrt((run * run).sum(axis=1))
    strain = long / threads.rest - 1.0
    rising = np.clip((strain + _SOFT) / (2.0 * _SOFT), 0.0, 1.0)
    above = np.maximum(strain - _SOFT, 0.0)
    share = _SOFT * rising**2 + above
    energy = 2.0 / 3.0 * _SOFT**2 * rising**3 + above * (_SOFT + 0.5 * above)
    share = np.where(threads.pushes, strain, share)
    energy = np.where(threads.pushes, 0.5 * strain**2, energy)
    rising = np.where(threads.pushes, 1.0, rising)
    return Taut(
        energy=float((threads.pull * threads.rest * energy).sum()),
        force=threads.pull * share,
        way=run / long[:, None],
        long=long,
        stiffness=threads.pull / threads.rest * rising,
    )


def thread_blocks(held: Taut, full: bool) -> Reals:
    """(S, 3, 3) N/m: second derivative by one end; minus it between the two ends. Only if `full` with what a
    pushed bone gives way sideways."""
    along = held.way[:, :, None] * held.way[:, None, :]
    across = np.eye(3) - along
    force = held.force if full else np.maximum(held.force, 0.0)
    return held.stiffness[:, None, None] * along + (force / held.long)[:, None, None] * across


def boned(sheet: ClothSheet) -> tuple[sparse.csr_matrix, sparse.csr_matrix]:
    """Q for x and for y, z of rods and of what is tied: half x' Q x, N/m."""
    empty = sparse.csr_matrix((sheet.count, sheet.count))
    sideways, other = empty, empty
    for rod in sheet.mesh.rods:
        for_x, for_others = _rod(sheet, rod)
        sideways, other = sideways + for_x, other + for_others
    tied = sheet.mesh.tied
    if len(tied):
        rows = np.repeat(np.arange(len(tied)), 2)
        apart = sparse.csr_matrix(
            (np.tile([1.0, -1.0], len(tied)), (rows, tied.ravel())), shape=(len(tied), sheet.count)
        )
        sideways, other = sideways + _BUTTONED * apart.T @ apart, other + _BUTTONED * apart.T @ apart
    return sideways, other


def _rod(sheet: ClothSheet, rod: Rod) -> tuple[sparse.csr_matrix, sparse.csr_matrix]:
    """Straight at rest; over the middle it goes on into its own mirror image."""
    chain = rod.vertices
    _, long = _stretches(sheet, chain)
    if chain[0] == chain[-1]:  # a ring's ends lap and are bound: it bends there as elsewhere
        chain, long = np.append(chain, chain[1]), np.append(long, long[0])
    before, after = long[:-1], long[1:]
    rows = np.repeat(np.arange(len(chain) - 2), 3)
    columns = np.stack([chain[:-2], chain[1:-1], chain[2:]], axis=1).ravel()
    values = np.stack([1.0 / before, -(1.0 / before + 1.0 / after), 1.0 / after], axis=1).ravel()
    turns = sparse.csr_matrix((values, (rows, columns)), shape=(len(chain) - 2, sheet.count))
    inside = turns.T @ sparse.diags(rod.stiffness / (0.5 * (before + after))) @ turns
    ends = [(chain[0], chain[1], long[0]), (chain[-1], chain[-2], long[-1])]
    mirrored = [end for end in ends if sheet.mesh.halved and sheet.mesh.on_middle[end[0]]]
    if not mirrored:
        return inside, inside
    rows = np.repeat(np.arange(len(mirrored)), 2)
    columns = np.array([[end[0], end[1]] for end in mirrored]).ravel()
    values = np.array([[-2.0 / end[2], 2.0 / end[2]] for end in mirrored]).ravel()
    over = sparse.csr_matrix((values, (rows, columns)), shape=(len(mirrored), sheet.count))
    # half of the turn over the middle belongs to this side
    weights = sparse.diags([0.5 * rod.stiffness / end[2] for end in mirrored])
    return inside, inside + over.T @ weights @ over
