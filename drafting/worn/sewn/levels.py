"""The drafted girths as lines on the mesh, so that worn they can be measured."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

import numpy as np
from scipy.sparse.csgraph import dijkstra

from drafting.draft.draft import Girth
from drafting.draft.frame import BodyFrame, Limb
from drafting.geometry.area import Region
from drafting.geometry.curve import Points
from drafting.worn.nouns import MeshLevel, Reals, Whole
from drafting.worn.sewn.chosen import SewnParts
from drafting.worn.sewn.folds import REACH
from drafting.worn.sewn.joined import Merged
from drafting.worn.sewn.rings import PieceRing, at, fine, run_length
from drafting.worn.sewn.rods import edge_lengths

STEP = 7.0
"""mm between the places of a level (ours: a third of a mesh)."""


@dataclass(frozen=True, eq=False)
class LevelRun:
    """A level's run over one piece: triangles and weights in order, and the sewn vertex nearest to each end."""

    triangles: Whole
    weights: Reals
    ends: tuple[int, int]

    def reversed(self) -> LevelRun:
        return LevelRun(self.triangles[::-1], self.weights[::-1], self.ends[::-1])


def mesh_levels(
    pieces: SewnParts, rings: Mapping[str, PieceRing], said: Mapping[str, BodyFrame], whole: Merged, front: Whole
) -> tuple[MeshLevel, ...]:
    """Return each girth that was drafted, in order round the garment; on a half from the front to the back."""
    found = []
    for girth in pieces.draft.girths:
        for hand in _hands(pieces, girth):
            runs = list(_runs(pieces, rings, whole, girth, hand))
            if girth.width or not runs:
                continue
            names = [p.name for p in pieces.shell if any(v.name == girth.level for v in p.levels)]
            limb = said[names[0]].limb or Limb.TRUNK
            limb = Limb.TRUNK if limb is Limb.LEG and not girth.limb else limb
            ordered = _in_order(whole, runs, front)
            found.append(
                MeshLevel(
                    name=f"{girth.level} {hand}" if hand else girth.level,
                    limb=limb,
                    triangles=np.concatenate([run.triangles for run in ordered]),
                    weights=np.vstack([run.weights for run in ordered]),
                    drafted=girth.body + girth.settled_ease,
                )
            )
    return tuple(found)


def _hands(pieces: SewnParts, girth: Girth) -> tuple[str, ...]:
    """Return for which hands a girth stands: a whole garment's limbs are measured each."""
    if pieces.halved or not girth.limb:
        return ("",)
    return (girth.side,) if girth.side else ("left", "right")


def _runs(
    pieces: SewnParts, rings: Mapping[str, PieceRing], whole: Merged, girth: Girth, hand: str
) -> Iterator[LevelRun]:
    for index, (name, ring) in enumerate(rings.items()):
        piece = pieces.draft[name]
        if hand and piece.hand != hand:
            continue
        region = Region.of(ring.outline)
        for level in piece.levels:
            if level.name == girth.level:
                for path in level.paths:
                    line = fine(path)
                    spots = at(line, np.linspace(0.0, run_length(line), max(3, int(run_length(line) / STEP) + 1)))
                    kept = spots[region.holds(spots) | (region.clearance(spots) < REACH)]
                    if len(kept) > 1:
                        yield _run(whole, index, kept)


def _run(whole: Merged, index: int, spots: Points) -> LevelRun:
    """Return places on a flat piece as places in its triangles."""
    own = np.flatnonzero(whole.piece == index)
    corners = whole.flat[whole.triangles[own]]
    a, b, c = (corners[:, i, 0] + 1j * corners[:, i, 1] for i in range(3))
    twice = ((b - a) * np.conj(c - a)).imag
    second = ((spots[:, None] - a) * np.conj(c - a)).imag / twice
    third = ((b - a) * np.conj(spots[:, None] - a)).imag / twice
    weights = np.stack([1 - second - third, second, third], axis=2)
    best = weights.min(axis=2).argmax(axis=1)
    shares = np.clip(weights[np.arange(len(spots)), best], 0.0, 1.0)
    shares /= shares.sum(axis=1)[:, None]
    triangles = own[best]
    ends = [int(whole.merged[whole.triangles[triangles[i]]][shares[i].argmax()]) for i in (0, -1)]
    return LevelRun(triangles, shares, (ends[0], ends[1]))


def _in_order(whole: Merged, runs: list[LevelRun], front: Whole) -> list[LevelRun]:
    """Return the runs one after another round the body, begun where the cloth is nearest to the front."""
    ends = np.array([run.ends for run in runs]).ravel()
    gaps = np.atleast_2d(dijkstra(edge_lengths(whole), indices=ends))
    starts = gaps[:, front].min(axis=1) if len(front) else np.zeros(len(ends))
    left = list(range(len(runs)))
    at_end = int(starts.argmin())
    found = []
    while True:
        run = at_end // 2
        found.append(runs[run] if at_end % 2 == 0 else runs[run].reversed())
        left.remove(run)
        if not left:
            return found
        leaving = at_end + 1 if at_end % 2 == 0 else at_end - 1
        choices = [end for other in left for end in (2 * other, 2 * other + 1)]
        at_end = min(choices, key=lambda end: gaps[leaving, ends[end]])
