"""The one door to shapely: polygons, overlap, distance, and room inside a shape. Layer 1.

Paths are flattened at `tolerances.FLAT` first; every area is mm2 and every distance mm. Nothing that
is drawn is made here, but where a cut line cannot be resolved on its curves (`rough_ring`).
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import numpy as np
import shapely
from numpy.typing import NDArray

from drafting import tolerances as tol
from drafting.geometry.path import Path, line


def polygon(path: Path) -> Any:
    """Return the shapely polygon of `path` closed by its chord (it may be invalid)."""
    return shapely.Polygon(_pairs(path))


def is_simple(path: Path) -> bool:
    """Say whether the closed path neither crosses nor touches itself."""
    return bool(shapely.LinearRing(_pairs(path)).is_simple)


def overlap(a: Path, b: Path) -> float:
    """Return the area that two closed paths share."""
    return float(polygon(a).intersection(polygon(b)).area)


def difference(a: Path, b: Path) -> float:
    """Return the area that lies in one of two closed paths but not in both."""
    return float(polygon(a).symmetric_difference(polygon(b)).area)


def outside(inner: Path, outer: Path) -> float:
    """Return the area of `inner` that sticks out of `outer`: 0 where it is contained."""
    return float(polygon(inner).difference(polygon(outer)).area)


def distances(path: Path, other: Path, every: float = 2.0) -> NDArray[np.float64]:
    """Return how far points of `path`, no more than `every` mm apart, lie from `other`."""
    points = shapely.LineString(_pairs(path)).segmentize(every)
    target = shapely.LineString(_pairs(other))
    found = shapely.distance(shapely.points(shapely.get_coordinates(points)), target)
    return np.asarray(found, dtype=np.float64)


def greatest_distance(a: Path, b: Path, every: float = 2.0) -> float:
    """Return the greatest distance from a point of either path to the other (Hausdorff, sampled)."""
    return float(max(distances(a, b, every).max(), distances(b, a, every).max()))


def widened(path: Path, distance: float, limit: float = 2.0) -> float:
    """Return the area of the closed path grown by `distance` with mitres: a cross-check only."""
    grown = polygon(path).buffer(distance, join_style="mitre", mitre_limit=limit, quad_segs=64)
    return float(grown.area)


def inset(path: Path, margin: float) -> Any:
    """Return the region inside the closed path, at least `margin` mm from it (maybe empty)."""
    return polygon(path).buffer(0).buffer(-margin)


def without(region: Any, paths: Sequence[Path], margin: float) -> Any:
    """Return `region` less everything within `margin` mm of the open `paths`."""
    lines = [shapely.LineString(_pairs(path)) for path in paths]
    return region.difference(shapely.union_all(lines).buffer(margin)) if lines else region


def chord(region: Any, through: complex, direction: complex) -> Path | None:
    """Return the longest straight stretch in `region` of the line through a point, or None."""
    x0, y0, x1, y1 = region.bounds
    far = abs(complex(x1 - x0, y1 - y0)) + abs(through - complex(x0, y0))
    ends = [through - far * direction, through + far * direction]
    cut = region.intersection(shapely.LineString([(p.real, p.imag) for p in ends]))
    parts = [p for p in shapely.get_parts(cut) if p.geom_type == "LineString" and p.length > 0]
    if not parts:
        return None
    a, b = sorted(
        (complex(*xy) for xy in max(parts, key=lambda p: p.length).coords),
        key=lambda p: (p * direction.conjugate()).real,
    )
    return line(a, b)


def deepest(region: Any) -> complex:
    """Return the point of `region` that lies farthest from its boundary."""
    largest = max(shapely.get_parts(region), key=lambda part: part.area)
    pole = shapely.maximum_inscribed_circle(largest, tolerance=1.0)
    return complex(*pole.coords[0])


def mask(region: Any, xs: NDArray[np.float64], ys: NDArray[np.float64]) -> NDArray[np.bool_]:
    """Return which points of the grid `ys` x `xs` lie in `region`."""
    grid_x, grid_y = np.meshgrid(xs, ys)
    return np.asarray(shapely.contains_xy(region, grid_x, grid_y), dtype=bool)


def rough_ring(parts: Sequence[Path]) -> Path:
    """Return the outer ring of the union of closed `parts` as straight lines, anticlockwise."""
    union = shapely.union_all([shapely.make_valid(polygon(part)) for part in parts])
    solid = [p for p in shapely.get_parts(union.buffer(0)) if p.geom_type == "Polygon"]
    ring = shapely.Polygon(max(solid, key=lambda p: p.area).exterior).simplify(tol.FLAT)
    points = [complex(*xy) for xy in shapely.orient_polygons(ring).exterior.coords]
    return Path.polygon(*points[:-1])


def _pairs(path: Path) -> list[tuple[float, float]]:
    return [(p.real, p.imag) for p in path.flattened(tol.FLAT)]
