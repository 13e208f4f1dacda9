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
    return shapely.Polygon(_xy(path))


def is_simple(path: Path) -> bool:
    """Say whether the closed path neither crosses nor touches itself."""
    return bool(shapely.LinearRing(_xy(path)).is_simple)


def ring_is_simple(ring: Sequence[complex]) -> bool:
    """Say whether the closed ring through these points neither crosses nor touches itself."""
    return bool(shapely.LinearRing([(p.real, p.imag) for p in ring]).is_simple)


def simplified(ring: Sequence[complex], by: float) -> list[complex]:
    """Return a ring with fewer points, nowhere farther than `by` from the one given."""
    solid = shapely.Polygon([(p.real, p.imag) for p in ring]).simplify(by)
    return [complex(*xy) for xy in shapely.orient_polygons(solid).exterior.coords][:-1]


def overlaps(rings: Sequence[Sequence[complex]]) -> list[tuple[int, int, float]]:
    """Return every pair of closed rings that share area, with the area they share."""
    solids = [shapely.Polygon([(p.real, p.imag) for p in ring]) for ring in rings]
    tree = shapely.STRtree(solids)
    near = sorted((int(a), int(b)) for a, b in tree.query(solids, "intersects").T if a < b)
    shared = [(a, b, float(solids[a].intersection(solids[b]).area)) for a, b in near]
    return [found for found in shared if found[2] > 0]


def least_gap(rings: Sequence[Sequence[complex]], most: float) -> float:
    """Return the least distance between two of the closed rings, or `most` where none is nearer."""
    solids = [shapely.Polygon([(p.real, p.imag) for p in ring]) for ring in rings]
    pairs = shapely.STRtree(solids).query(solids, "dwithin", most).T
    return min((float(solids[a].distance(solids[b])) for a, b in pairs if a < b), default=most)


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
    points = shapely.LineString(_xy(path)).segmentize(every)
    target = shapely.LineString(_xy(other))
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
    lines = [shapely.LineString(_xy(path)) for path in paths]
    return region.difference(shapely.union_all(lines).buffer(margin)) if lines else region


def chords(region: Any, through: Sequence[complex], direction: complex) -> list[Path | None]:
    """Return the longest straight stretch in `region` of the line through each point, or None."""
    x0, y0, x1, y1 = region.bounds
    size, corner = abs(complex(x1 - x0, y1 - y0)), complex(x0, y0)
    reach = [(size + abs(p - corner)) * direction for p in through]
    ends = np.array([(p - far, p + far) for p, far in zip(through, reach, strict=True)])
    lines = shapely.linestrings(np.stack([ends.real, ends.imag], axis=-1))
    parts, owner = shapely.get_parts(shapely.intersection(region, lines), return_index=True)
    lengths = shapely.length(parts)
    longest: dict[int, int] = {}
    for i, line_number in enumerate(owner):
        if lengths[i] > lengths[longest.get(line_number, i)] or line_number not in longest:
            longest[line_number] = i
    return [
        _stretch(parts[longest[i]], direction) if i in longest and lengths[longest[i]] > 0 else None
        for i in range(len(through))
    ]


def _stretch(part: Any, direction: complex) -> Path:
    """Return a straight shapely line as a path that runs in `direction`."""
    ends = (complex(*xy) for xy in shapely.get_coordinates(part))
    return line(*sorted(ends, key=lambda p: (p * direction.conjugate()).real))


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


def _xy(path: Path) -> NDArray[np.float64]:
    """Return the flattened path as rows of x and y."""
    return path.points(tol.FLAT).view(np.float64).reshape(-1, 2)
