"""A scene as a picture: what is seen in each pixel, lit from the upper left, with its lines.

Drawn `FINER` times as fine each way and averaged, so that outlines and lines run smoothly.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray
from scipy.ndimage import gaussian_filter, zoom

from drafting.ground.palette import Colour
from drafting.worn.nouns import Reals, Truth, Whole
from drafting.worn.picture.raster import NOWHERE, Seen, Small, seen_triangles, weights_at
from drafting.worn.picture.scene import LIES_ON, PictureScene, Trace, channels, corner_normals
from drafting.worn.picture.view import Eye, PictureFrame

Image = NDArray[np.uint8]
"""(H, W, 3)."""

FINER = 2
SKY, LAMP, GRAZE = 0.52, 0.44, 0.14
"""How much light comes from all around, from the lamp, and along the eye (by eye)."""
INSIDE = 0.66
"""Light left on the inside of a garment (by eye)."""
HOLLOW, HOLLOW_REACH, DEEPEST = 0.010, 14.0, 0.34
"""Darkening for each mm behind its surroundings, mm around that count, and the most (by eye)."""
THREAD_GAP, THREAD_SHARE = 9.0, 0.07
"""mm between two drawn threads of the warp (of real ones none would be seen), and how dark they are (ours)."""
LINE_SHARE = 0.72
"""How much of a line's own ink is seen (by eye)."""


def drawn(scene: PictureScene, view: Eye, frame: PictureFrame) -> Image:
    """Return the picture of a scene, `frame` large."""
    fine = frame.larger(FINER)
    heap = _Heap(scene)
    places = fine.seen(heap.points, view)
    places[:, 2] += heap.behind
    corners = places[heap.triangles]
    outside = _outside(corners)
    nearer = heap.nearer + np.where(outside & heap.over, LIES_ON, 0.0)
    seen = seen_triangles(corners, nearer, fine.width, fine.height)
    rows, columns = np.nonzero(seen.triangle >= 0)
    face = seen.triangle[rows, columns].astype(np.int64)
    weights = weights_at(corners[face], columns, rows)
    light = _light(heap, face, weights, outside, view) * _hollows(seen, fine)[rows, columns]
    image = np.empty((fine.height, fine.width, 3), np.float32)
    image[:] = channels(Colour.PAPER)
    image[rows, columns] = np.clip(heap.colours(face, weights) * light[:, None], 0, 1)
    for ink in {trace.ink for trace in scene.traces if len(trace.points) > 1}:
        lines = (t for t in scene.traces if t.ink == ink and len(t.points) > 1)
        inked = np.unique(np.concatenate([_seen_line(seen.depth, trace, fine, view) for trace in lines]))
        flat = image.reshape(-1, 3)
        flat[inked] = (1 - LINE_SHARE) * flat[inked] + LINE_SHARE * np.asarray(ink, np.float32)
    parts = [image[i::FINER, j::FINER] for i in range(FINER) for j in range(FINER)]
    mean = np.add.reduce(parts) * np.float32(255 / len(parts))
    picture: Image = (mean + np.float32(0.5)).astype(np.uint8)
    return picture


def _outside(corners: Reals) -> Truth:
    """Return (T,): which triangles are seen from outside; what is turned over there is taken to lie nearer."""
    one, two = corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0]
    return np.asarray(one[:, 0] * two[:, 1] - one[:, 1] * two[:, 0] < 0)


class _Heap:
    """All covers of a scene put together, their triangles counted through."""

    def __init__(self, scene: PictureScene) -> None:
        covers = scene.covers
        starts = np.cumsum([0, *(len(c.points) for c in covers)])
        self.points = np.concatenate([c.points for c in covers])
        self.normals = np.concatenate([corner_normals(c.points, c.triangles) for c in covers]).astype(np.float32)
        self.triangles = np.concatenate([c.triangles + s for c, s in zip(covers, starts[:-1], strict=True)])
        counts = [len(c.triangles) for c in covers]
        self.nearer = np.repeat([c.nearer for c in covers], counts)
        self.closed = np.repeat([c.closed for c in covers], counts)
        flat = [np.zeros(n, bool) if c.over is None else c.over for c, n in zip(covers, counts, strict=True)]
        self.over = np.concatenate(flat)
        self.behind = np.concatenate([np.zeros(len(c.points)) if c.behind is None else c.behind for c in covers])
        self.tints = np.concatenate([_by_corner(c.tints, c.triangles) for c in covers]).astype(np.float32)
        bare = [c.across if c.across is not None else np.full(c.triangles.shape, np.nan) for c in covers]
        self.across = np.concatenate(bare).astype(np.float32)

    def colours(self, face: Whole, weights: Small) -> Small:
        """Return (N, 3): the colour at each pixel, the warp's threads drawn where there are any."""
        tints = np.einsum("nk,nkc->nc", weights, self.tints[face])
        across = np.einsum("nk,nk->n", weights, self.across[face])
        wave = np.cos(across * np.float32(2 * np.pi / THREAD_GAP)) ** 4
        found: Small = tints * (1 - THREAD_SHARE * np.nan_to_num(wave))[:, None]
        return found


def _by_corner(tints: Reals, triangles: Whole) -> Reals:
    return tints if tints.ndim == 3 else tints[triangles]


def _light(heap: _Heap, face: Whole, weights: Small, outside: Truth, view: Eye) -> Small:
    """Return the light on each pixel; a surface seen from inside is turned to the eye and darker.

    Which side is seen is the triangle's own: along a sharp fold the smoothed way out looks away from the eye.
    """
    right, up, away = (axis.astype(np.float32) for axis in view.axes)
    lamp = -0.48 * right + 0.62 * up - 0.62 * away
    normals = np.einsum("nk,nkc->nc", weights, heap.normals[face], dtype=np.float32)
    normals /= np.maximum(np.linalg.norm(normals, axis=1, keepdims=True), 1e-6)
    facing = -normals @ away
    turned = ~outside[face] & ~heap.closed[face]
    sign = np.where(turned, -1.0, 1.0).astype(np.float32)
    half = 0.5 + 0.5 * sign * (normals @ lamp)
    lit = SKY * (0.8 + 0.2 * sign * normals[:, 2]) + LAMP * half**1.5 + GRAZE * np.abs(facing)
    found: Small = np.where(turned, INSIDE, 1.0) * lit
    return found


def _hollows(seen: Seen, frame: PictureFrame) -> Small:
    """Return (H, W): the light left where a place lies behind what is round it, as in folds and under arms."""
    coarse = 2 * FINER
    there = seen.depth < NOWHERE
    few, deep = there[::coarse, ::coarse], seen.depth[::coarse, ::coarse]
    sigma = HOLLOW_REACH * frame.scale / coarse
    share = gaussian_filter(few.astype(np.float32), sigma)
    around = gaussian_filter(np.where(few, deep, 0), sigma) / np.maximum(share, 1e-3)
    near = zoom(around, coarse, order=1, grid_mode=True, mode="nearest")[: frame.height, : frame.width]
    dark = np.clip(HOLLOW * (seen.depth - near), 0, DEEPEST)
    found: Small = np.where(there, 1 - dark, 1).astype(np.float32)
    return found


def _seen_line(depth: Small, trace: Trace, frame: PictureFrame, view: Eye) -> Whole:
    """Return the pixels, counted through, of a line wherever nothing lies before it."""
    seen = frame.seen(trace.points, view)
    seen[:, 2] += 0.0 if trace.behind is None else trace.behind
    steps = np.maximum(1, np.ceil(np.abs(np.diff(seen[:, :2], axis=0)).max(axis=1) * 1.5)).astype(np.int64)
    which = np.repeat(np.arange(len(steps)), steps)
    share = (np.arange(len(which)) - np.repeat(np.cumsum(steps) - steps, steps)) / steps[which]
    at = seen[which] + share[:, None] * (seen[which + 1] - seen[which])
    offsets = _disc(trace.wide * FINER)
    columns = np.floor(at[:, None, 0] + offsets[:, 0]).astype(np.int64).ravel()
    rows = np.floor(at[:, None, 1] + offsets[:, 1]).astype(np.int64).ravel()
    near = np.repeat(at[:, 2] - trace.nearer, len(offsets))
    on = (columns >= 0) & (rows >= 0) & (columns < depth.shape[1]) & (rows < depth.shape[0])
    columns, rows, near = columns[on], rows[on], near[on]
    clear = near < depth[rows, columns]
    return np.asarray(rows[clear] * depth.shape[1] + columns[clear])


def _disc(wide: float) -> Reals:
    """Return (M, 2): the pixels of a pen so many pixels wide, about its middle."""
    reach = np.arange(-int(wide), int(wide) + 1) * 1.0
    x, y = np.meshgrid(reach, reach)
    inside = np.hypot(x, y) <= wide / 2
    return np.column_stack((x[inside], y[inside]))
