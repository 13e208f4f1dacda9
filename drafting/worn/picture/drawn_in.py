"""A wide skirt beneath a cape or a coat: drawn in to where what hangs over it leaves it room. A picture only.

Round the middle of the body, by direction and height, the outer cloth lies nowhere nearer than some radius; inner
cloth that hangs farther out is brought in, its folds with it. Where nothing hangs over it, it stays.
"""

from __future__ import annotations

import numpy as np
from scipy.ndimage import gaussian_filter, maximum_filter, minimum_filter

from drafting.worn.nouns import AtRest, Limb, Reals, Truth, Whole
from drafting.worn.picture.dressed import whole_cloth

AROUND, TALL = 72, 25.0
"""Directions round the body, and mm of height, of a cell: about as wide as the cloth's own triangles."""

INSIDE = 6.0
"""mm that inner cloth hangs inside the outer (ours: two thick cloths)."""

OUT = 0.8
"""mm out a mm down that cloth springs out below the hem that kept it in (by eye)."""

SMOOTH = 0.8
"""Cells over which the room is evened out, so that cloth is drawn in without steps (by eye)."""


_LIMBS = (Limb.ARM, Limb.LEG)
"""What goes round a limb leaves what hangs round the body no room of its own."""


def drawn_in(inner: AtRest, outer: AtRest, below: float, middle: Reals) -> Reals:
    """Return the inner garment's points (count, 3) mm, those that hang free lower than `below` brought in.

    `middle` (2,): x, y round which everything hangs.
    """
    hangs = _hanging(inner) & (inner.points[:, 2] < below)
    if not hangs.any():
        return inner.points
    room = _room(outer, below, middle)
    off = inner.points[:, :2] - middle
    side, level = _cells(inner.points, middle)
    level = np.minimum(level, len(room) - 1)
    wide = np.zeros_like(room)
    np.maximum.at(wide, (level[hangs], side[hangs]), np.hypot(*off[hangs].T))
    wide = maximum_filter(wide, size=(3, 7), mode=("nearest", "wrap"))
    shares = gaussian_filter(np.minimum(room / np.maximum(wide, 1.0), 1.0), SMOOTH, mode=("nearest", "wrap"))
    share = np.where(hangs, shares[level, side], 1.0)
    points = inner.points.copy()
    points[:, :2] = middle + off * share[:, None]
    return points


def _hanging(rest: AtRest) -> Truth:
    """Return (count,): which points belong to cloth of the trunk, or that hangs, and to no limb."""
    limbs = np.array([piece.limb in _LIMBS for piece in rest.mesh.pieces], bool)
    free = np.ones(rest.mesh.count, bool)
    free[rest.mesh.sewn[limbs[rest.mesh.piece]].ravel()] = False
    return free


def _room(outer: AtRest, below: float, middle: Reals) -> Reals:
    """Return (levels, directions) mm: how far out there is room; without end where no cloth hangs over it."""
    whole = whole_cloth(outer)
    limbs = np.array([piece.limb in _LIMBS for piece in outer.mesh.pieces], bool)[outer.mesh.piece][whole.own]
    corners = whole.points[whole.triangles[~limbs]]
    shares = np.array([[1, 0, 0], [0, 1, 0], [0, 0, 1], [1, 1, 1], [2, 2, 0], [0, 2, 2], [2, 0, 2]], float)
    points = np.einsum("sk,tkc->tsc", shares / shares.sum(axis=1, keepdims=True), corners).reshape(-1, 3)
    points = points[points[:, 2] < below + TALL]
    side, level = _cells(points, middle)
    room = np.full((int(below // TALL) + 2, AROUND), np.inf)
    np.minimum.at(room, (level, side), np.maximum(np.hypot(*(points[:, :2] - middle).T) - INSIDE, 0.0))
    over = np.isfinite(room)
    if not over.any():
        return room
    filled = np.where(over, room, room[over].max())
    near = minimum_filter(filled, size=3, mode=("nearest", "wrap"))
    even = gaussian_filter(near, SMOOTH, mode=("nearest", "wrap"))
    return _springs_out(np.where(over, np.minimum(even, filled), np.inf))


def _springs_out(room: Reals) -> Reals:
    """Return the room, below the outer hem as much wider a level as cloth set free may spring out."""
    found = room.copy()
    for level in range(len(room) - 2, -1, -1):
        found[level] = np.minimum(found[level], found[level + 1] + OUT * TALL)
    return found


def _cells(points: Reals, middle: Reals) -> tuple[Whole, Whole]:
    """Return (N,) twice: the direction of points round the middle, and their level."""
    off = points[:, :2] - middle
    side = np.floor((np.arctan2(off[:, 1], off[:, 0]) / (2 * np.pi) % 1.0) * AROUND).astype(np.int64) % AROUND
    return side, np.maximum(points[:, 2] // TALL, 0).astype(np.int64)
