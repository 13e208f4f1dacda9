"""Which triangle is seen in each pixel: a depth buffer in numpy, by spans of pixel rows.

Triangles are cut into rows and rows into pixels, all at once; the nearest at each pixel stays.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from drafting.worn.nouns import Reals, Whole

Small = NDArray[np.float32]

NOWHERE = np.float32(1e9)
"""Depth (mm) of a pixel in which nothing is seen."""

THIN = 1e-6
"""Pixels squared: a triangle seen on its edge covers nothing."""


@dataclass(frozen=True, eq=False)
class Seen:
    """`depth` (H, W) mm from the frame's middle; `triangle` (H, W), -1 where nothing is."""

    depth: Small
    triangle: NDArray[np.int32]


def seen_triangles(corners: Reals, nearer: Reals, width: int, height: int) -> Seen:
    """Return what is seen of triangles whose `corners` (T, 3, 3) are pixels right, down, and depth.

    `nearer` (T,): mm by which a triangle is taken to lie nearer to the eye than it does.
    """
    depth = np.full(width * height, NOWHERE, np.float32)
    owner = np.full(width * height, -1, np.int32)
    kept, slopes = _planes(corners, nearer)
    which, rows = _rows(corners[kept], height)
    which, rows, first, count = _spans(corners[kept], which, rows, width)
    span, step = _counted(count)
    along = slopes[which, 0]
    start = along * (first + 0.5) + slopes[which, 1] * (rows + 0.5) + slopes[which, 2]
    z = (start[span] + along[span] * step).astype(np.float32)
    places = (rows * width + first)[span] + step
    np.minimum.at(depth, places, z)
    front = z <= depth[places]
    owner[places[front]] = kept[which[span[front]]]
    return Seen(depth.reshape(height, width), owner.reshape(height, width))


def _planes(corners: Reals, nearer: Reals) -> tuple[Whole, Reals]:
    """Return the triangles not seen on edge, and depth = a x + b y + c on each (K, 3)."""
    one, two = corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0]
    twice = one[:, 0] * two[:, 1] - one[:, 1] * two[:, 0]
    kept = np.flatnonzero(np.abs(twice) > THIN)
    one, two, twice = one[kept], two[kept], twice[kept]
    a = (one[:, 2] * two[:, 1] - two[:, 2] * one[:, 1]) / twice
    b = (two[:, 2] * one[:, 0] - one[:, 2] * two[:, 0]) / twice
    start = corners[kept, 0]
    c = start[:, 2] - nearer[kept] - a * start[:, 0] - b * start[:, 1]
    return kept, np.column_stack((a, b, c))


def _rows(corners: Reals, height: int) -> tuple[Whole, Whole]:
    """Return each pair of a triangle and a pixel row whose middle it crosses."""
    top = np.maximum(0, np.ceil(corners[:, :, 1].min(axis=1) - 0.5)).astype(np.int64)
    foot = np.minimum(height - 1, np.floor(corners[:, :, 1].max(axis=1) - 0.5)).astype(np.int64)
    which, step = _counted(np.maximum(0, foot - top + 1))
    return which, top[which] + step


def _spans(corners: Reals, which: Whole, rows: Whole, width: int) -> tuple[Whole, Whole, Whole, Whole]:
    """Return for each triangle's row: triangle, row, its first pixel, and how many it has."""
    middle = rows + 0.5
    left, right = np.full(len(rows), np.inf), np.full(len(rows), -np.inf)
    for i, j in ((0, 1), (1, 2), (2, 0)):
        xi, yi, xj, yj = (ends[which] for ends in (*corners[:, i, :2].T, *corners[:, j, :2].T))
        crossed = ((yi <= middle) != (yj <= middle)) | (yi == middle)
        level = yj == yi
        share = (middle - yi) / np.where(level, 1, yj - yi)
        x = np.where(crossed & ~level, xi + share * (xj - xi), np.nan)
        left, right = np.fmin(left, x), np.fmax(right, x)
    met = np.isfinite(left)
    which, rows, left, right = which[met], rows[met], left[met], right[met]
    first = np.maximum(0, np.ceil(left - 0.5)).astype(np.int64)
    last = np.minimum(width - 1, np.floor(right - 0.5)).astype(np.int64)
    return which, rows, first, np.maximum(0, last - first + 1)


def _counted(count: Whole) -> tuple[Whole, Whole]:
    """Return each index as often as it counts, and beside it 0, 1, ... up to that count."""
    which = np.repeat(np.arange(len(count)), count)
    return which, np.arange(len(which)) - np.repeat(np.cumsum(count) - count, count)


def weights_at(corners: Reals, columns: Whole, rows: Whole) -> Small:
    """Return (N, 3): the weight of each corner of (N, 3, 3) at the middle of a pixel, inside at least."""
    x, y = columns + 0.5, rows + 0.5
    (ax, bx, cx), (ay, by, cy) = corners[:, :, 0].T, corners[:, :, 1].T
    whole = (by - cy) * (ax - cx) + (cx - bx) * (ay - cy)
    a = ((by - cy) * (x - cx) + (cx - bx) * (y - cy)) / whole
    b = ((cy - ay) * (x - cx) + (ax - cx) * (y - cy)) / whole
    found = np.clip(np.column_stack((a, b, 1 - a - b)), 0, None)
    shares: Small = (found / found.sum(axis=1, keepdims=True)).astype(np.float32)
    return shares
