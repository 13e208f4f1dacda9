"""The distance from an upright post, on a grid: the form of the made-up garments."""

from __future__ import annotations

import numpy as np

from drafting.worn.contact import DistanceField

STEP, REACH = 10.0, 280.0


def post_field(radius: float, high: float = 1700.0) -> DistanceField:
    """Return the distance from a post of this radius round the z axis."""
    axis = np.arange(-REACH, REACH + STEP, STEP)
    x, y = np.meshgrid(axis, axis, indexing="ij")
    distance = np.hypot(x, y) - radius
    values = np.repeat(distance[:, :, None], int(high / STEP), axis=2)
    return DistanceField(values, (-REACH, -REACH, 0.0), STEP)
