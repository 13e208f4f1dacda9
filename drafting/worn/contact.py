"""How far points lie from the wearer's form: a smooth distance, read off a grid, with its slope and curvature.

A grid read by straight lines between its nodes has a kinked slope, and a search for rest then never ends:
each step moves some vertex over a kink. A cubic B-spline has a curvature without jumps.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

import numpy as np
from scipy.ndimage import gaussian_filter, spline_filter

from drafting.worn.nouns import Point, Reals, Whole

# Standard deviation of the smoothing, in cells: the kinks go that a blend's crease leaves in the grid.
_SMOOTHING = 0.7
# Cells that a point beside its node may be nearer than the node is.
_REACH = 1.5


class Near(NamedTuple):
    """The points that lie near: their places in what was asked, and what the field says there.

    `places` (k,); `distance` (k,) mm, positive outside; `gradient` (k, 3); `hessian` (k, 3, 3) per mm,
    of length 0 where it was not asked for.
    """

    places: Whole
    distance: Reals
    gradient: Reals
    hessian: Reals


@dataclass(frozen=True, eq=False)
class DistanceField:
    """Signed distance on a regular grid: `values` (nx, ny, nz) mm, positive outside, node 0 at `origin`.

    `step` between nodes, mm. With `mirror`, `values` is the half x >= 0 of an even body and `origin[0]` is 0.
    """

    values: Reals
    origin: Point
    step: float
    mirror: bool = False

    def __post_init__(self) -> None:
        if self.mirror and self.origin[0] != 0.0:
            raise ValueError(f"a half grid starts at x = 0, not at {self.origin[0]}")
        if min(self.values.shape) < 4:
            raise ValueError(f"a cubic spline needs 4 nodes each way, not {self.values.shape}")

    @cached_property
    def whole(self) -> Reals:
        """(mx, ny, nz): both halves of the grid."""
        return np.concatenate([self.values[:0:-1], self.values]) if self.mirror else self.values

    @cached_property
    def corner(self) -> Reals:
        """Where the first node of `whole` lies, mm."""
        x = -(len(self.values) - 1) * self.step if self.mirror else self.origin[0]
        return np.array([x, *self.origin[1:]])

    @cached_property
    def _coefficients(self) -> Reals:
        """Of the cubic B-spline through the smoothed grid.

        Smoothing alone draws a round surface in, by half its variance times the curvature: 0.5 mm on an
        arm. What it took is put back: 2 S - S S keeps the second order.
        """
        once = gaussian_filter(self.whole, _SMOOTHING, mode="nearest")
        kept: Reals = spline_filter(2.0 * once - gaussian_filter(once, _SMOOTHING, mode="nearest"), mode="mirror")
        return kept

    def near(self, points: Reals, within: float, *, curved: bool = True) -> Near:
        """The points (n, 3) mm that lie less than `within` mm outside the surface, or inside it.

        A point beyond the grid lies near nothing. `curved` asks for the Hessian.
        """
        index = self._candidates(points, within)
        distance, gradient, hessian = self._read(points[index], curved)
        close = distance < within
        return Near(index[close], distance[close], gradient[close], hessian[close] if curved else hessian)

    def distance(self, points: Reals) -> Reals:
        """(n,) mm of points (n, 3); beyond the grid as at its rim."""
        return self._read(points, curved=False)[0]

    def _candidates(self, points: Reals, within: float) -> Whole:
        """Whom the nearest node does not rule out."""
        place = (points - self.corner) / self.step
        held = ((place > 1.0) & (place < np.array(self.whole.shape) - 2.0)).all(axis=1)
        node = np.clip(np.rint(place), 0, np.array(self.whole.shape) - 1).astype(np.int64)
        value = self.whole[node[:, 0], node[:, 1], node[:, 2]]
        return np.flatnonzero(held & (value < within + _REACH * self.step))

    def _read(self, points: Reals, curved: bool) -> tuple[Reals, Reals, Reals]:
        """Value (k,), gradient (k, 3) and Hessian (k, 3, 3) of the spline."""
        shape = np.array(self.whole.shape)
        place = np.clip((points - self.corner) / self.step, 1.0, shape - 2.001)
        cell = place.astype(np.int64)
        x, y, z = (_weights(place[:, axis] - cell[:, axis], self.step) for axis in range(3))
        block = self._coefficients.ravel()[_around(cell, shape)]
        along_z = [np.einsum("kabc,kc->kab", block, w) for w in (z if curved else z[:2])]

        def over(dx: int, dy: int, dz: int) -> Reals:
            found: Reals = np.einsum("ka,ka->k", np.einsum("kab,kb->ka", along_z[dz], y[dy]), x[dx])
            return found

        gradient = np.stack([over(1, 0, 0), over(0, 1, 0), over(0, 0, 1)], axis=1)
        if not curved:
            return over(0, 0, 0), gradient, np.zeros((0, 3, 3))
        xy, xz, yz = over(1, 1, 0), over(1, 0, 1), over(0, 1, 1)
        rows = [over(2, 0, 0), xy, xz, xy, over(0, 2, 0), yz, xz, yz, over(0, 0, 2)]
        return over(0, 0, 0), gradient, np.stack(rows, axis=1).reshape(-1, 3, 3)


def _weights(part: Reals, step: float) -> tuple[Reals, Reals, Reals]:
    """Cubic B-spline weights (k, 4) of the four nodes around, and their first and second derivative per mm."""
    t, s = part, 1.0 - part
    value = np.stack([s**3, 3 * t**3 - 6 * t**2 + 4, 3 * s**3 - 6 * s**2 + 4, t**3], axis=1) / 6.0
    slope = np.stack([-(s**2), 3 * t**2 - 4 * t, 4 * s - 3 * s**2, t**2], axis=1) / (2.0 * step)
    bend = np.stack([s, 3 * t - 2, 3 * s - 2, t], axis=1) / step**2
    return value, slope, bend


def _around(cell: Whole, shape: Whole) -> Whole:
    """(k, 4, 4, 4): the places in the flat grid of the nodes around each cell."""
    four = np.arange(-1, 3)
    i, j, k = (cell[:, axis, None] + four for axis in range(3))
    found: Whole = (i[:, :, None, None] * shape[1] + j[:, None, :, None]) * shape[2] + k[:, None, None, :]
    return found
