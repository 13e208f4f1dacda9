"""The edges of a sewn sheet: which triangles meet over them, and where cloth bends free."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from drafting.worn.nouns import Reals, Truth, Whole
from drafting.worn.settled.sheet import ClothSheet


@dataclass(frozen=True, eq=False)
class Edges:
    """The 3 T edges of triangles, each triangle's own three apart: first all opposite corner 0, then 1, then 2.

    `ends` (3T, 2) vertices; `own` (3T,) triangle; `over` (3T,): the edge of the triangle beyond, -1 where there
    is none; `normal` (3T, 2): outward, in the triangle's thread directions; `length` (3T,) m.
    """

    ends: Whole
    own: Whole
    over: Whole
    normal: Reals
    length: Reals

    @property
    def shared(self) -> Truth:
        return self.over >= 0


def sheet_edges(sheet: ClothSheet) -> Edges:
    triangles, corners = sheet.triangles, sheet.corners
    ends = np.concatenate([triangles[:, [1, 2]], triangles[:, [2, 0]], triangles[:, [0, 1]]])
    start = np.concatenate([corners[:, 1], corners[:, 2], corners[:, 0]])
    run = np.concatenate([corners[:, 2], corners[:, 0], corners[:, 1]]) - start
    length = np.linalg.norm(run, axis=1)
    normal = np.stack([run[:, 1], -run[:, 0]], axis=1) / length[:, None]
    opposite = np.concatenate([corners[:, 0], corners[:, 1], corners[:, 2]])
    normal *= np.sign(((start - opposite) * normal).sum(axis=1))[:, None]
    own = np.tile(np.arange(len(triangles)), 3)
    return Edges(ends=ends, own=own, over=_across(pair_keys(ends, sheet.count)), normal=normal, length=length)


def pair_keys(pairs: Whole, count: int) -> Whole:
    """(K,): one number for each pair of vertices (K, 2), whichever is named first."""
    low, high = np.sort(pairs, axis=1).T
    keys: Whole = low * count + high
    return keys


def _across(keys: Whole) -> Whole:
    """The other edge of the same two vertices; -1 on a rim and where more than two triangles meet (a pleat)."""
    order = np.argsort(keys, kind="stable")
    _, first, times = np.unique(keys[order], return_index=True, return_counts=True)
    over = np.full(len(keys), -1)
    one, other = order[first[times == 2]], order[first[times == 2] + 1]
    over[one], over[other] = other, one
    return over
