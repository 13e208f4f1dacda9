"""No-fit polygons on a whole-number grid: the one door to pyclipper.

The no-fit polygon of two outlines is where the second must not be put: the union of the second,
turned by half a turn, swept along the first, and one copy of each. Grid steps are a power of two,
so that going to the grid and back loses nothing.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

import numpy as np
import pyclipper
from numpy.typing import NDArray

from drafting.layout.packing.convolved import convolved
from drafting.layout.packing.model import Pose, Ring

Ints = NDArray[np.int64]
Paths = tuple[Ints, ...]
"""Closed lines on the grid, each of shape (corners, 2); outer ones anticlockwise, holes clockwise."""

MOST = 2.0**30 - 1
"""Grid places up to which the kernel needs no long arithmetic (its documented range)."""

MITRE = 2.0
"""Corners are drawn out to twice the distance, then squared (common practice)."""


def grid_scale(extent: float) -> float:
    """Return the grid steps a unit for layouts no larger than `extent`."""
    return float(2.0 ** math.floor(math.log2(MOST / (4 * max(extent, 1e-12)))))


def to_grid(ring: Ring, scale: float) -> Ints:
    """Return a ring on the grid."""
    both = np.array([(p.real, p.imag) for p in ring]) * scale
    return np.rint(both).astype(np.int64)


def path_in_pose(path: Ints, pose: Pose) -> Ints:
    """Return a path in a pose about 0, kept anticlockwise (holes clockwise)."""
    factor = pose.factor
    a, b = int(factor.real), int(factor.imag)
    x, y = path[:, 0], -path[:, 1] if pose.mirror else path[:, 1]
    out = np.empty_like(path)
    out[:, 0], out[:, 1] = a * x - b * y, b * x + a * y
    return out[::-1] if pose.mirror else out


def no_fit(first: Ints, second: Ints) -> Paths:
    """Return where the origin of `second` must not be while `first` lies as given."""
    return union(convolved(first, -second))


def union(paths: Iterable[Sequence[Sequence[int]]]) -> Paths:
    """Return the outline of everything that anticlockwise paths cover, without pinholes."""
    kernel = pyclipper.Pyclipper()
    kernel.AddPaths(list(paths), pyclipper.PT_SUBJECT, True)
    kept = kernel.Execute(pyclipper.CT_UNION, pyclipper.PFT_NONZERO, pyclipper.PFT_NONZERO)
    rings = [np.array(path, dtype=np.int64) for path in kept]
    if not rings:
        return ()
    least = 1e-9 * max(abs(_area(ring)) for ring in rings)
    return tuple(ring for ring in rings if _area(ring) > 0 or -_area(ring) > least)


def left_over(room: tuple[int, int, int, int], blockers: Sequence[Ints]) -> list[list[list[int]]]:
    """Return what is left of a box (x0, y0, x1, y1) outside all `blockers`: outer lines and holes."""
    x0, y0, x1, y1 = room
    box = [(x0, y0), (x1, y0), (x1, y1), (x0, y1)]
    if not blockers:
        return [[list(corner) for corner in box]]
    kernel = pyclipper.Pyclipper()
    kernel.AddPath(box, pyclipper.PT_SUBJECT, True)
    kernel.AddPaths([path.tolist() for path in blockers], pyclipper.PT_CLIP, True)
    found: list[list[list[int]]] = kernel.Execute(
        pyclipper.CT_DIFFERENCE, pyclipper.PFT_NONZERO, pyclipper.PFT_NONZERO
    )
    return found


def covered_part(paths: Iterable[Ints], room: tuple[int, int, int, int]) -> Paths:
    """Return what anticlockwise paths cover of a box, as one or more outlines."""
    x0, y0, x1, y1 = room
    kernel = pyclipper.Pyclipper()
    kernel.AddPaths([path.tolist() for path in paths], pyclipper.PT_SUBJECT, True)
    kernel.AddPath([(x0, y0), (x1, y0), (x1, y1), (x0, y1)], pyclipper.PT_CLIP, True)
    kept = kernel.Execute(pyclipper.CT_INTERSECTION, pyclipper.PFT_NONZERO, pyclipper.PFT_NONZERO)
    return tuple(np.array(path, dtype=np.int64) for path in kept)


def grown(path: Ints, by: float) -> Ints:
    """Return an outline with everything within `by` grid steps of it, corners mitred."""
    if by <= 0:
        return path
    pen = pyclipper.PyclipperOffset(MITRE)
    pen.AddPath(path.tolist(), pyclipper.JT_MITER, pyclipper.ET_CLOSEDPOLYGON)
    rings = [np.array(ring, dtype=np.int64) for ring in pen.Execute(math.ceil(by))]
    return max(rings, key=_area)


def _area(path: Ints) -> float:
    x, y = path[:, 0].astype(float), path[:, 1].astype(float)
    after_x, after_y = np.concatenate((x[1:], x[:1])), np.concatenate((y[1:], y[:1]))
    return float(np.dot(x, after_y) - np.dot(y, after_x)) / 2
