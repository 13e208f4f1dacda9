"""Bands, cuffs, collars and lapels: placed from what they are sewn to, and turned over their roll lines."""

from __future__ import annotations

import numpy as np
from scipy.spatial import cKDTree

from drafting.draft.frame import Limb
from drafting.draft.roles import COLLARS, PieceRole
from drafting.worn.nouns import Reals, SewnMesh, Whole
from drafting.worn.rolls import laid_back, turned_from

OFF = 8.0
"""mm: how far a part that is turned over starts outside what it lies on (ours)."""

LEANS = 0.2
"""Of its height: how far a stand or a fall leans outwards at the start (ours)."""


def carried(mesh: SewnMesh, index: int, points: Reals, known: np.ndarray, down_arm: Reals) -> Reals | None:
    """Return where the flat vertices of a piece start that is carried by placed ones; None where none is placed.

    A band goes on up or down, away from what carries it; a cuff down the arm, or back up outside it over its roll
    line; a stand up from the neck, and what
    lies over its roll line, a fall and a flat collar down outside.
    """
    piece = mesh.pieces[index]
    flat = np.unique(mesh.triangles[mesh.piece == index])
    base = flat[known[mesh.merged[flat]]]
    if not len(base):
        return None
    foot, gap, way = _feet(mesh, flat, base)
    start: Reals = np.einsum("ij,ijk->ik", way, points[mesh.merged[foot]])
    centre = points[mesh.merged[base]].mean(axis=0)
    out = (start - centre) * [1.0, 1.0, 0.0]
    if piece.limb is Limb.TRUNK and (mesh.halved or piece.hand):  # half of what goes round the middle
        out[:, 0] += centre[0]
    out /= np.maximum(np.linalg.norm(out, axis=1), 1e-9)[:, None]
    if piece.limb is Limb.ARM and not piece.rolls:
        start += gap[:, None] * down_arm
        return start
    if piece.limb is Limb.ARM:  # turned back over what it is sewn to
        start -= gap[:, None] * down_arm
        start += np.minimum(gap / 3, OFF)[:, None] * out
        return start
    up = np.array([0.0, 0.0, 1.0])
    if piece.role not in COLLARS:
        start += gap[:, None] * up * _upwards(mesh, index, base, points, known)
        return start
    stand, fall = _stand_and_fall(mesh, index, flat, foot, way, gap)
    start += (stand - 0.9 * fall)[:, None] * up + (LEANS * (stand + fall) + OFF * (fall > 0))[:, None] * out
    return start


def _feet(mesh: SewnMesh, flat: Whole, base: Whole) -> tuple[Whole, Reals, Reals]:
    """Return for each flat vertex the two placed ones it stands over, its distance, and the share of each."""
    count = min(2, len(base))
    gaps, near = cKDTree(mesh.flat[base]).query(mesh.flat[flat], k=count)
    gaps, near = gaps.reshape(len(flat), count), near.reshape(len(flat), count)
    one, two = base[near[:, 0]], base[near[:, -1]]
    a, b = mesh.flat[one], mesh.flat[two]
    step = b - a
    long = np.maximum((step * step).sum(axis=1), 1e-9)
    share = np.clip(((mesh.flat[flat] - a) * step).sum(axis=1) / long, 0.0, 1.0)
    gap = np.linalg.norm(mesh.flat[flat] - a - share[:, None] * step, axis=1)
    return np.column_stack([one, two]), gap, np.column_stack([1 - share, share])


def _upwards(mesh: SewnMesh, index: int, base: Whole, points: Reals, known: np.ndarray) -> float:
    """Return 1 where a band lies over what carries it, else -1."""
    merged = np.unique(mesh.merged[base])
    carriers = np.unique(mesh.piece[np.isin(mesh.sewn, merged).any(axis=1)])
    others = np.unique(mesh.sewn[np.isin(mesh.piece, carriers[carriers != index])])
    below = points[others[known[others]], 2].mean() <= points[merged, 2].mean()
    return 1.0 if below else -1.0


def _stand_and_fall(
    mesh: SewnMesh, index: int, flat: Whole, foot: Whole, way: Reals, gap: Reals
) -> tuple[Reals, Reals]:
    """Return how far each vertex of a collar stands up from its foot, and falls from there."""
    piece = mesh.pieces[index]
    if piece.rolls:
        feet = np.einsum("ij,ij->i", way, mesh.places(foot))
        stand = np.minimum(gap, np.maximum(-turned_from(piece.rolls, feet), 0.0))
        return stand, gap - stand
    falls = piece.role is PieceRole.COLLAR
    return (0 * gap, gap) if falls else (gap, 0 * gap)


def lapel_turned(mesh: SewnMesh, index: int, points: Reals) -> tuple[Whole, Reals]:
    """Return the flat vertices beyond a piece's roll line, and where they start, turned over it outside."""
    piece = mesh.pieces[index]
    flat = np.unique(mesh.triangles[mesh.piece == index])
    at = mesh.places(flat)
    past = turned_from(piece.rolls, at)
    beyond = past > 1.0
    over = laid_back(piece.rolls, at[beyond])
    lies = flat[~beyond]
    gaps, near = cKDTree(mesh.flat[lies]).query(np.column_stack([over.real, over.imag]), k=3)
    weights = 1 / np.maximum(gaps, 1e-6)
    weights /= weights.sum(axis=1)[:, None]
    start = np.einsum("ij,ijk->ik", weights, points[mesh.merged[lies[near]]])
    out = np.array([0.0, -1.0, 0.0])
    return flat[beyond], start + np.minimum(past[beyond] / 3, OFF)[:, None] * out
