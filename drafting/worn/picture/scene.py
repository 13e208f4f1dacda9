"""What stands in a picture: surfaces with their faces, and lines upon them."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from drafting.worn.nouns import Reals, Truth, Whole

Rgb = tuple[float, float, float]
"""Red, green, blue, 0 to 1."""


LIES_ON = 5.0
"""mm that what is turned over is taken to lie nearer to the eye than what it lies on: more than a line does."""


@dataclass(frozen=True, eq=False)
class Cover:
    """A surface: `points` (V, 3) mm, `triangles` (T, 3), `tints` (V, 3) or (T, 3, 3) by corner, 0 to 1.

    `across` (T, 3): mm across the warp at each corner, NaN where no threads are shown. `nearer`: mm that it
    is taken to lie nearer to the eye; `behind` (V,): mm that each point is taken to lie farther off, under what
    laps over it. `over` (T,): what is turned over and lies on the rest, as a lapel does. `closed`: its inside is
    never seen.
    """

    points: Reals
    triangles: Whole
    tints: Reals
    across: Reals | None = None
    nearer: float = 0.0
    behind: Reals | None = None
    over: Truth | None = None
    closed: bool = False


@dataclass(frozen=True, eq=False)
class Trace:
    """A line on a surface: `points` (N, 3) mm, drawn `wide` pixels in `ink` where it is not hidden.

    `nearer` and `behind` as for a cover's points.
    """

    points: Reals
    ink: Rgb
    wide: float = 1.0
    nearer: float = 4.0
    behind: Reals | None = None


@dataclass(frozen=True, eq=False)
class PictureScene:
    """Everything in a picture."""

    covers: tuple[Cover, ...]
    traces: tuple[Trace, ...] = ()


def channels(colour: str) -> Rgb:
    """Return a colour written #rrggbb as shares.

    >>> from drafting.ground.palette import Colour
    >>> channels(Colour.PAPER)
    (1.0, 1.0, 1.0)
    """
    r, g, b = (int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5))
    return r, g, b


SMOOTH = 0.5
"""Cosine by which a surface is taken to be smooth at a corner: 60 degrees (by eye)."""


def smooth_normals(points: Reals, triangles: Whole) -> Reals:
    """Return (V, 3): the unit normal at each vertex, the faces round it weighed by their area."""
    one, two, three = (points[triangles[:, k]] for k in range(3))
    faces = np.cross(two - one, three - one)
    whole = np.column_stack(
        [np.bincount(triangles.ravel(), np.repeat(faces[:, k], 3), len(points)) for k in range(3)]
    )
    found: Reals = whole / np.maximum(np.linalg.norm(whole, axis=1, keepdims=True), 1e-12)
    return found


def corner_normals(points: Reals, triangles: Whole) -> Reals:
    """Return (T, 3, 3): the normal at each corner of each triangle, its own where the smoothed one bends too far.

    A sharp fold is an edge: smoothed over it, both its walls would be lit as if they looked along it.
    """
    smooth = smooth_normals(points, triangles)[triangles]
    one, two, three = (points[triangles[:, k]] for k in range(3))
    own = np.cross(two - one, three - one)
    own /= np.maximum(np.linalg.norm(own, axis=1, keepdims=True), 1e-12)
    near = np.einsum("tkc,tc->tk", smooth, own) > SMOOTH
    return np.where(near[:, :, None], smooth, own[:, None])
