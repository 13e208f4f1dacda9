"""Room for a level box inside a flat shape that others cover in part: where a name can stand."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np
import shapely
from numpy.typing import NDArray

from drafting.geometry.curve import Points
from drafting.geometry.path import Box


def free_part(ring: Points, covers: Iterable[Points], taken: Iterable[Box]) -> shapely.Geometry:
    """Return what of a ring lies neither under the rings that `covers` holds nor on the boxes that are `taken`."""
    free = _solid(ring)
    for other in covers:
        free = free.difference(_solid(other))
    x0, y0, x1, y1 = free.bounds
    near = [box for box in taken if box[0] < x1 and box[2] > x0 and box[1] < y1 and box[3] > y0]
    return free.difference(shapely.union_all(shapely.box(*np.array(near).T))) if near else free


def room_for_box(free: shapely.Geometry, size: tuple[float, float]) -> complex | None:
    """Return the middle of the roomiest place for a box of `size` in what is free, or None where it has none."""
    wide, high = size
    parts = [part for part in shapely.get_parts(free) if part.geom_type == "Polygon" and _may_hold(part, size)]
    if not parts:
        return None

    def squared(pairs: NDArray[np.float64]) -> NDArray[np.float64]:
        return np.asarray(pairs * np.array([1.0, wide / high]))

    flat = max((shapely.transform(part, squared) for part in parts), key=lambda part: part.area)
    pole = shapely.maximum_inscribed_circle(flat, tolerance=4.0)
    x, y = pole.coords[0][0], pole.coords[0][1] * high / wide
    held = free.covers(shapely.box(x - wide / 2, y - high / 2, x + wide / 2, y + high / 2))
    return complex(x, y) if held else None


def _may_hold(part: shapely.Polygon, size: tuple[float, float]) -> bool:
    """Say whether a box of `size` is neither larger nor longer than a shape."""
    x0, y0, x1, y1 = part.bounds
    return bool(x1 - x0 >= size[0] and y1 - y0 >= size[1] and part.area > size[0] * size[1])


def shared_area(one: Points, other: Points) -> float:
    """Return the area that two rings share, mm2, however they cross themselves."""
    return float(_solid(one).intersection(_solid(other)).area)


def _solid(ring: Points) -> shapely.Geometry:
    """Return a ring as something solid, even where it crosses itself."""
    if len(ring) < 3:
        return shapely.Polygon()
    solid = shapely.Polygon(np.column_stack([ring.real, ring.imag]))
    return solid if solid.is_valid else solid.buffer(0)
