"""Signed distances to the simple shapes that a body is put together from, and the smooth joints between.

Points are (3, n) mm. A distance is exact near the surface to the first order, negative inside.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy.interpolate import PchipInterpolator
from scipy.ndimage import gaussian_filter1d

from drafting.worn.nouns import Reals

STEP = 4.0
"""mm between the heights at which a stack keeps its sections."""
_TINY = 1e-9


def blended(a: Reals, b: Reals, over: Reals | float) -> Reals:
    """The union of two shapes, rounded where they meet over some `over` mm (no jump in the curvature)."""
    near = np.maximum(over - np.abs(a - b), 0.0) / over
    found: Reals = np.minimum(a, b) - near**3 * (over / 6.0)
    return found


def cut(a: Reals, b: Reals, over: float) -> Reals:
    """What two shapes have in common, its edge rounded over `over` mm."""
    return -blended(-a, -b, over)


@dataclass(frozen=True, eq=False)
class Cone:
    """A rod with round ends, of radius `thick[0]` at `start` and `thick[1]` at `end`."""

    start: Reals
    end: Reals
    thick: tuple[float, float]

    def __call__(self, at: Reals) -> Reals:
        way = self.end - self.start
        off = at - self.start[:, None]
        share = np.clip(way @ off / (way @ way), 0.0, 1.0)
        off -= way[:, None] * share
        found: Reals = np.sqrt((off * off).sum(axis=0)) - (self.thick[0] + share * (self.thick[1] - self.thick[0]))
        return found


@dataclass(frozen=True, eq=False)
class Bone:
    """Flesh round a straight bone: `thick` (m,) are its radii at even places from `start` to `end`."""

    start: Reals
    end: Reals
    thick: Reals

    def __call__(self, at: Reals) -> Reals:
        way = self.end - self.start
        off = at - self.start[:, None]
        share = np.clip(way @ off / (way @ way), 0.0, 1.0)
        off -= way[:, None] * share
        place = share * (len(self.thick) - 1.001)
        row = place.astype(np.int64)
        thick = self.thick[row] + (place - row) * (self.thick[row + 1] - self.thick[row])
        found: Reals = np.sqrt((off * off).sum(axis=0)) - thick
        return found


@dataclass(frozen=True, eq=False)
class Egg:
    """An ellipsoid about `middle` with half axes `half`, turned by `nod` radians about the x axis."""

    middle: Reals
    half: Reals
    nod: float = 0.0

    def __call__(self, at: Reals) -> Reals:
        off = at - self.middle[:, None]
        if self.nod:
            c, s = np.cos(self.nod), np.sin(self.nod)
            off = np.stack([off[0], c * off[1] + s * off[2], c * off[2] - s * off[1]])
        off /= self.half[:, None]
        reach = np.sqrt((off * off).sum(axis=0)) + _TINY
        slope = np.sqrt(((off / self.half[:, None]) ** 2).sum(axis=0)) + _TINY**2
        found: Reals = reach * (reach - 1.0) / slope
        return found


@dataclass(frozen=True, eq=False)
class Stack:
    """Values that change with the height: `table` (k, m) at heights `low` + STEP i."""

    low: float
    table: Reals

    @property
    def high(self) -> float:
        return self.low + STEP * float(self.table.shape[1] - 1)

    def at(self, z: Reals) -> Reals:
        """(k, n): the values at heights (n,), held beyond the ends."""
        place = np.clip((z - self.low) / STEP, 0.0, self.table.shape[1] - 1.001)
        row = place.astype(np.int64)
        part = place - row
        found: Reals = self.table[:, row] * (1.0 - part) + self.table[:, row + 1] * part
        return found

    def beyond(self, z: Reals) -> Reals:
        """(n,): how far a height lies above or below the stack, mm; 0 within."""
        found: Reals = np.maximum(np.maximum(self.low - z, z - self.high), 0.0)
        return found


def stacked(rows: Reals, softened: float) -> Stack:
    """The stack through `rows` (m, 1 + k) of height and values, corners softened by a bell `softened` mm wide."""
    rows = rows[np.argsort(rows[:, 0], kind="stable")]
    heights = np.arange(rows[0, 0], rows[-1, 0] + STEP, STEP)
    through = PchipInterpolator(rows[:, 0], rows[:, 1:])(np.minimum(heights, rows[-1, 0]))
    return Stack(float(rows[0, 0]), gaussian_filter1d(through, softened / STEP, axis=0, mode="nearest").T)


def oval(x: Reals, y: Reals, half: tuple[Reals, Reals], power: Reals | float) -> Reals:
    """Distance in the plane to |x / a|^n + |y / b|^n = 1 for x, y >= 0, `half` a and b."""
    u, v = x / half[0] + _TINY, y / half[1] + _TINY
    reach = (u**power + v**power) ** (1.0 / power)
    across, along = (u / reach) ** (power - 1.0) / half[0], (v / reach) ** (power - 1.0) / half[1]
    found: Reals = (reach - 1.0) / np.sqrt(across * across + along * along)
    return found


def ended(flat: Reals, beyond: Reals) -> Reals:
    """The distance to a stack from that to its section and how far beyond its ends a point lies."""
    past = beyond > 0
    if past.any():
        flat = flat.copy()
        flat[past] = np.sqrt(np.maximum(flat[past], 0.0) ** 2 + beyond[past] ** 2)
    return flat
