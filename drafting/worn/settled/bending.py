"""What bending costs: half x' Q x for each coordinate, with matrices that never change.

Over a triangle the second derivatives of a coordinate are those of the slopes along its rim, by Gauss's theorem:
H = sum over edges of L / 2A (slope beyond - own slope) n n', slopes taken across the edge. Slopes along a seam
do not enter, so gathers and unequal seams cost nothing. The plain hinge formula makes cloth three times too stiff.
"""

from __future__ import annotations

import numpy as np
from scipy import sparse

from drafting.worn.nouns import Reals, Truth
from drafting.worn.settled.edges import Edges, pair_keys, sheet_edges
from drafting.worn.settled.sheet import ClothSheet


def bending(sheet: ClothSheet) -> tuple[sparse.csr_matrix, sparse.csr_matrix]:
    """Q (count, count) for x, and for y and z, N/m: they differ where the sheet goes on mirrored in x = 0."""
    edges = sheet_edges(sheet)
    rigid = np.asarray(sheet.held[sheet.triangles].all(axis=1))
    share = _share_beyond(sheet, edges, rigid)
    middle = sheet.mesh.on_middle[edges.ends].all(axis=1) & ~edges.shared & sheet.mesh.halved
    return (
        _quadratic(sheet, edges, _jumps(sheet, edges, share, share), rigid),
        _quadratic(sheet, edges, _jumps(sheet, edges, share, share + 2.0 * middle), rigid),
    )


def _share_beyond(sheet: ClothSheet, edges: Edges, rigid: Truth) -> Reals:
    """(3T,): 1 over a plain edge, 0 on a rim or a fold, 2 against a clamped triangle, which keeps its slope."""
    folded = np.isin(pair_keys(edges.ends, sheet.count), pair_keys(sheet.mesh.folds, sheet.count))
    clamped = edges.shared & rigid[edges.own[edges.over]] & ~rigid[edges.own]
    return np.where(edges.shared & ~folded, np.where(clamped, 2.0, 1.0), 0.0)


def _jumps(sheet: ClothSheet, edges: Edges, beyond: Reals, own: Reals) -> sparse.csr_matrix:
    """(3T, count): how much the slope across an edge changes over it."""
    here = np.einsum("eia,ea->ei", sheet.slopes[edges.own], edges.normal)
    there_edge = np.where(edges.shared, edges.over, 0)
    there = -np.einsum("eia,ea->ei", sheet.slopes[edges.own[there_edge]], edges.normal[there_edge])
    rows = np.repeat(np.arange(len(beyond)), 3)
    values = np.concatenate([(-own[:, None] * here).ravel(), (beyond[:, None] * there).ravel()])
    columns = [sheet.triangles[edges.own].ravel(), sheet.triangles[edges.own[there_edge]].ravel()]
    where = (np.concatenate([rows, rows]), np.concatenate(columns))
    return sparse.csr_matrix((values, where), shape=(len(beyond), sheet.count))


def _quadratic(sheet: ClothSheet, edges: Edges, jumps: sparse.csr_matrix, rigid: Truth) -> sparse.csr_matrix:
    """Sum over triangles of area times rigidity times each second derivative squared."""
    weight = edges.length / (2.0 * sheet.areas[edges.own])
    along, across, twisted = sheet.bends.T
    normal = edges.normal
    parts = [(normal[:, 0] ** 2, along), (normal[:, 1] ** 2, across), (normal[:, 0] * normal[:, 1], 2.0 * twisted)]
    shape = (len(sheet.areas), len(edges.own))
    total = sparse.csr_matrix((sheet.count, sheet.count))
    for product, rigidity in parts:
        places = (edges.own, np.arange(len(edges.own)))
        second = sparse.csr_matrix((product * weight, places), shape=shape) @ jumps
        total = total + second.T @ sparse.diags(sheet.areas * rigidity * ~rigid) @ second
    return total.tocsr()
