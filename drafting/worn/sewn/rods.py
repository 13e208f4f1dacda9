"""Bones, and a stiff braid, along the lines they are drawn on: each its chain of vertices, and how stiff it is."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

import numpy as np
from scipy.sparse import coo_matrix, csr_matrix
from scipy.sparse.csgraph import dijkstra

from drafting.draft.draft import Notion
from drafting.shaping.coat.bone import BONING
from drafting.shaping.coat.hem_braid import HEM_BRAID
from drafting.worn.cloth.rods import ALONG, BRAID, OPEN, bone_bends
from drafting.worn.nouns import Rod, Whole
from drafting.worn.sewn.chosen import SewnParts
from drafting.worn.sewn.guides import BONE as BONE_MARK
from drafting.worn.sewn.joined import Merged
from drafting.worn.sewn.rings import PieceRing

MarkRef = tuple[str, str]
"""A mark by the names of its piece and its own."""


def drafted_rods(pieces: SewnParts, rings: Mapping[str, PieceRing], whole: Merged) -> tuple[Rod, ...]:
    """Return the bones of a garment, and the braid along its hem as a rod along its upper edge."""
    notions = pieces.draft.notions
    found = [rod for marks, bends in _bones(rings, notions) for rod in _rods(whole, marks, bends, ALONG)]
    widths = [notion.size or 0.0 for notion in notions if notion.what == HEM_BRAID]
    if widths:
        found += _rods(whole, _drawn(rings, HEM_BRAID), max(widths) * BRAID, 0.0)
    return tuple(found)


def _drawn(rings: Mapping[str, PieceRing], what: str) -> list[MarkRef]:
    """Return the marks of a kind that bones, or a stiff braid, lie along."""
    return [
        (name, mark.name) for name, ring in rings.items() for mark in ring.piece.placements if mark.what == what
    ]


def _bones(rings: Mapping[str, PieceRing], notions: Sequence[Notion]) -> Iterator[tuple[list[MarkRef], float]]:
    """Yield the marks that are boned alike, as one bone where it goes through several pieces, with its stiffness.

    A bone that its notion gives to one piece ends with it. What no notion names is a spiral one.
    """
    drawn = _drawn(rings, BONE_MARK)
    bones = {(notion.piece, notion.mark): notion for notion in notions if notion.what == BONING}
    for mark in dict.fromkeys(name for _, name in drawn):
        through = [(piece, name) for piece, name in drawn if name == mark]
        own = [ref for ref in through if ref in bones]
        for ref in own:
            yield [ref], _bends(bones[ref])
        rest = [ref for ref in through if ref not in own]
        if rest:
            yield rest, _bends(bones.get(("", mark)))


def _bends(bone: Notion | None) -> float:
    return bone_bends(bone.kind, bone.size) if bone is not None and bone.size else OPEN


def _rods(whole: Merged, marks: Sequence[MarkRef], bends: float, along: float) -> Iterator[Rod]:
    """Yield the rods along marks, each from piece to piece as far as they meet."""
    chains = [chain for piece, line in marks if len(chain := whole.inner(piece, line)) > 1]
    near = edge_lengths(whole)
    while chains:
        chain = end_to_end(chains)
        held = set(chain.tolist())
        chains = [one for one in chains if not set(one.tolist()) <= held]
        yield Rod(vertices=_followed(near, chain), stiffness=bends, along=along)


def end_to_end(chains: Sequence[Whole]) -> Whole:
    """Return chains of vertices that meet at their ends as one, begun at an end that no other shares."""
    left = [chain for chain in chains if len(chain) > 1]
    if not left:
        return np.zeros(0, dtype=np.int64)
    ends = [end for chain in left for end in (chain[0], chain[-1])]
    lone = [end for end in ends if ends.count(end) == 1]
    at = lone[0] if lone else left[0][0]
    found = [np.array([at], dtype=np.int64)]
    while True:
        following = next((i for i, chain in enumerate(left) if at in (chain[0], chain[-1])), None)
        if following is None:
            return np.concatenate(found)
        chain = left.pop(following)
        run = chain if chain[0] == at else chain[::-1]
        found.append(run[1:])
        at = run[-1]


def edge_lengths(whole: Merged) -> csr_matrix:
    """Return the lengths of the mesh's edges between sewn vertices."""
    ends = whole.triangles[:, [0, 1, 1, 2, 2, 0]].reshape(-1, 2)
    long = np.linalg.norm(whole.flat[ends[:, 0]] - whole.flat[ends[:, 1]], axis=1)
    rows, columns = whole.merged[np.concatenate([ends, ends[:, ::-1]])].T
    keys, first = np.unique(rows * whole.count + columns, return_index=True)
    lengths = np.concatenate([long, long])[first]
    return coo_matrix((lengths, (keys // whole.count, keys % whole.count)), shape=(whole.count,) * 2).tocsr()


def _followed(near: csr_matrix, chain: Whole) -> Whole:
    """Return a chain that follows edges of the mesh: where two vertices share none, the shortest way."""
    found = [int(chain[0])]
    for vertex in chain[1:].tolist():
        if near[found[-1], vertex] == 0.0:
            _, before = dijkstra(near, indices=found[-1], return_predecessors=True)
            way = [vertex]
            while way[-1] != found[-1]:
                way.append(int(before[way[-1]]))
            found += way[-2:0:-1]
        found.append(vertex)
    return np.array(found, dtype=np.int64)
