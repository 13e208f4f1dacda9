"""The distance to a form on a regular grid: exact near the surface, coarser far from it."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
from scipy.ndimage import zoom

from drafting.worn.nouns import Reals

CELL = 10.0
"""mm between the nodes of a grown wearer's grid."""
_COARSE = 4
_BAND = 70.0
"""mm from the surface within which each node is asked for by itself."""


def gridded(
    solid: Callable[[Reals], Reals], low: Reals, high: Reals, cell: float = CELL, *, mirror: bool = False
) -> Reals:
    """Return values (nx, ny, nz) in mm every `cell` mm from the corner `low` to beyond `high`.

    `mirror` says that `low` lies on the middle of an even body.
    """
    count = np.ceil((high - low) / (cell * _COARSE)).astype(int) * _COARSE + 1
    rough = _asked(solid, low, (count - 1) // _COARSE + 1, cell * _COARSE)
    values = zoom(rough, count / np.array(rough.shape), order=1)
    near = np.argwhere(np.abs(values) < _BAND + cell * _COARSE)
    values[tuple(near.T)] = solid(np.ascontiguousarray((low + cell * near).T))
    if mirror:
        return _evened(np.concatenate([values[2:0:-1], values]), cell)[2:]
    return _evened(values, cell)


def _asked(solid: Callable[[Reals], Reals], low: Reals, count: Reals, step: float) -> Reals:
    axes = [low[i] + step * np.arange(int(count[i])) for i in range(3)]
    at = np.stack(np.meshgrid(*axes, indexing="ij")).reshape(3, -1)
    found: Reals = solid(at).reshape(tuple(len(a) for a in axes))
    return found


def _evened(values: Reals, cell: float) -> Reals:
    """Values divided by the length of their slope near the surface: a distance to the first order."""
    slope = np.gradient(values, cell)
    length = np.sqrt(slope[0] ** 2 + slope[1] ** 2 + slope[2] ** 2)
    near = np.abs(values) < _BAND
    found: Reals = np.clip(np.where(near, values / np.clip(length, 0.5, 3.0), values), -120.0, 200.0)
    return found
