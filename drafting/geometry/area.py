"""The one door to shapely: polygons, overlap, distance, and room inside a shape.

Paths are flattened at `tolerances.FLAT`, areas mm2, distances mm; of what is drawn only `rough_ring` is made.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

import numpy as np
import shapely
from numpy.typing import NDArray

from drafting.geometry.curve import Points
from drafting.geometry.path import Path, line
from drafting.ground import tolerances as tol


def polygon(path: Path) -> Any:
    """Return the shapely polygon of `path` closed by its chord (it may be invalid)."""
    return shapely.Polygon(_xy(path))


def _sound(path: Path) -> Any:
    """Return the polygon of a path that may cross itself, as parts that GEOS can cut."""
    return _parted(polygon(path))


def room_ahead(path: Path, places: Sequence[complex], ways: Sequence[complex], most: float) -> list[float]:
    """Return how far each place lies from where its way (a unit step) leaves a closed path, mm, at `most`.

    A place outside has less than nothing: how far outside.
    """
    solid, found = _sound(path), []
    for place, way in zip(places, ways, strict=True):
        ends = [(p.real, p.imag) for p in (place, place + most * way)]
        at, hit = shapely.Point(ends[0]), shapely.LineString(ends).intersection(solid.boundary)
        off = -solid.distance(at)
        found.append(float(off if off < 0 else most if hit.is_empty else hit.distance(at)))
    return found


def is_simple(path: Path) -> bool:
    """Say whether the closed path, its end a reckoning's rest off its start at most, never meets itself."""
    xy = _xy(path)
    closed = len(xy) > 3 and math.dist(xy[0], xy[-1]) <= tol.CLOSED
    return bool(shapely.LinearRing(xy[:-1] if closed else xy).is_simple)


def ring_is_simple(ring: Sequence[complex]) -> bool:
    """Say whether the closed ring through these points neither crosses nor touches itself."""
    return bool(shapely.LinearRing([(p.real, p.imag) for p in ring]).is_simple)


def simplified(ring: Sequence[complex], by: float) -> tuple[list[complex], float]:
    """Return a ring with fewer points, and how far one of those given lies from it at most.

    That is no farther than `by`.
    """
    points = [(p.real, p.imag) for p in ring]
    solid = shapely.orient_polygons(shapely.Polygon(points).simplify(by))
    off = shapely.distance(shapely.points(points), solid.exterior)
    return [complex(*xy) for xy in solid.exterior.coords][:-1], float(off.max())


def overlaps(rings: Sequence[Sequence[complex]]) -> list[tuple[int, int, float]]:
    """Return every pair of closed rings that share area, with the area they share."""
    solids = [shapely.Polygon([(p.real, p.imag) for p in ring]) for ring in rings]
    if len(solids) < 2:
        return []
    tree = shapely.STRtree(solids)
    near = sorted((int(a), int(b)) for a, b in tree.query(solids, "intersects").T if a < b)
    shared = [(a, b, _shared(solids[a], solids[b])) for a, b in near]
    return [found for found in shared if found[2] > 0]


def _shared(a: Any, b: Any) -> float:
    """Return the area that two polygons share; what is found is measured once more on a fine grid.

    Where long edges run on top of each other GEOS 3.14 may give a whole polygon for no overlap.
    """
    if a.intersection(b).area <= 0:
        return 0.0
    return float(shapely.intersection(a, b, grid_size=1e-6).area)


def least_gap(rings: Sequence[Sequence[complex]], most: float) -> float:
    """Return the least distance between two of the closed rings, or `most` where none is nearer."""
    solids = [shapely.Polygon([(p.real, p.imag) for p in ring]) for ring in rings]
    if len(solids) < 2:
        return most
    pairs = shapely.STRtree(solids).query(solids, "dwithin", most).T
    return min((float(solids[a].distance(solids[b])) for a, b in pairs if a < b), default=most)


def difference(a: Path, b: Path) -> float:
    """Return the area that lies in one of two closed paths but not in both."""
    return float(_sound(a).symmetric_difference(_sound(b)).area)


def outside(inner: Path, outer: Path) -> float:
    """Return the area of `inner` that sticks out of `outer`: 0 where it is contained."""
    one, other = _sound(inner), _sound(outer)
    return 0.0 if other.covers(one) else float(one.difference(other).area)


def distances(path: Path, other: Path, every: float = 2.0) -> NDArray[np.float64]:
    """Return how far points of `path`, no more than `every` mm apart, lie from `other`."""
    points = shapely.LineString(_xy(path)).segmentize(every)
    found = shapely.distance(shapely.points(shapely.get_coordinates(points)), _target(other))
    return np.asarray(found, dtype=np.float64)


@lru_cache(maxsize=32)
def _target(path: Path) -> Any:
    """Return the line through a flattened path, ready to be asked for distances again and again."""
    line = shapely.LineString(_xy(path))
    shapely.prepare(line)
    return line


def off_ring(points: Points, ring: Points) -> NDArray[np.float64]:
    """Return how far each point lies from the line through the points of a closed ring."""
    target = shapely.LinearRing(np.stack([ring.real, ring.imag], 1))
    found = shapely.distance(shapely.points(points.real, points.imag), target)
    return np.asarray(found, dtype=np.float64)


@lru_cache(maxsize=16)
def inset(path: Path, margin: float) -> Any:
    """Return the region inside the closed path, `margin` mm from it, give or take a 40th (maybe empty)."""
    solid = polygon(path).simplify(margin / 40, preserve_topology=False)
    return (solid if solid.is_valid else polygon(path).buffer(0)).buffer(-margin)


def without(region: Any, paths: Sequence[Path], margin: float) -> Any:
    """Return `region` less everything within `margin` mm of the open `paths`."""
    lines = [shapely.LineString(_xy(path)) for path in paths]
    return region.difference(shapely.union_all(lines).buffer(margin)) if lines else region


def longest_chords(region: Any, through: Points, direction: complex) -> tuple[Points, Points]:
    """Return both ends of the longest straight stretch in `region` of the line through each point.

    The lines run in the unit `direction`; where one misses the region its two ends are alike.
    """
    starts, ends = through.copy(), through.copy()
    rings = shapely.get_rings(shapely.get_parts(region))
    xy = [shapely.get_coordinates(ring).view(np.complex128)[:, 0] / direction for ring in rings]
    a, b = (np.concatenate([ring[part] for ring in xy]) for part in (slice(-1), slice(1, None)))
    level = (through / direction).imag
    lines, edges = np.nonzero((a.imag <= level[:, None]) != (b.imag <= level[:, None]))
    a, b, level = a[edges], b[edges], level[lines]
    x = a.real + (level - a.imag) / (b.imag - a.imag) * (b.real - a.real)
    order = np.lexsort((x, lines))  # along each line the way leads in and out by turns
    inward, outward = (((x + 1j * level) * direction)[order[i::2]] for i in (0, 1))
    line, number = lines[order[::2]], np.arange(len(inward))
    last = np.lexsort((-number, abs(outward - inward), line))  # the longest of a line is written last
    starts[line[last]], ends[line[last]] = inward[last], outward[last]
    return starts, ends


def deepest(region: Any) -> complex:
    """Return the point of `region` that lies farthest from its boundary, or 2 mm less far at most."""
    largest = max(shapely.get_parts(region), key=lambda part: part.area)
    pole = shapely.maximum_inscribed_circle(largest, tolerance=2.0)
    return complex(*pole.coords[0])


def mask(region: Any, xs: NDArray[np.float64], ys: NDArray[np.float64]) -> NDArray[np.bool_]:
    """Return which points of the grid `ys` x `xs` lie in `region`."""
    grid_x, grid_y = np.meshgrid(xs, ys)
    shapely.prepare(region)
    return np.asarray(shapely.contains_xy(region, grid_x, grid_y), dtype=bool)


def rough_ring(parts: Sequence[Path]) -> Path:
    """Return the outer ring of the union of closed `parts` as straight lines, anticlockwise."""
    union = shapely.union_all([shapely.make_valid(polygon(part)) for part in parts])
    solid = [p for p in shapely.get_parts(union.buffer(0)) if p.geom_type == "Polygon"]
    ring = shapely.Polygon(max(solid, key=lambda p: p.area).exterior).simplify(tol.FLAT)
    points = [complex(*xy) for xy in shapely.orient_polygons(ring).exterior.coords]
    return Path.polygon(*points[:-1])


def clipped_to(path: Path, ring: Path) -> list[Path]:
    """Return the parts of an open path that lie within the closed `ring`, as straight lines."""
    found = shapely.line_merge(shapely.LineString(_xy(path)).intersection(polygon(ring)))
    runs = [shapely.get_coordinates(part) for part in shapely.get_parts(found)]
    return [line(*(complex(x, y) for x, y in run)) for run in runs if len(run) > 1]


def band_round(paths: Sequence[Path], by: float) -> Path:
    """Return the outer ring, anticlockwise, of everything within `by` mm of open paths that lie together."""
    lines = shapely.union_all([shapely.LineString(_xy(path)) for path in paths])
    band = lines.buffer(by, quad_segs=6)
    band = band if band.geom_type == "Polygon" else band.convex_hull
    ring = shapely.orient_polygons(shapely.Polygon(band.exterior)).exterior.simplify(0.2)
    return Path.polygon(*(complex(x, y) for x, y in ring.coords[:-1]))


def ring_around(path: Path, boxes: Sequence[tuple[float, float, float, float]], by: float) -> list[complex]:
    """Return one rough ring, anticlockwise, round a closed path and boxes beside it.

    It keeps off them by `by` mm, give or take a quarter, and joins what lies less than twice as far apart.
    """
    parts = [polygon(path), *(shapely.box(*box) for box in boxes)]
    whole = shapely.union_all(parts).buffer(by, quad_segs=2)
    if whole.geom_type != "Polygon":
        whole = whole.convex_hull
    ring = shapely.simplify(shapely.orient_polygons(shapely.Polygon(whole.exterior)), by / 4)
    return [complex(x, y) for x, y in ring.exterior.coords[:-1]]


def _xy(path: Path) -> NDArray[np.float64]:
    """Return the flattened path as rows of x and y."""
    return path.points(tol.FLAT).view(np.float64).reshape(-1, 2)


@dataclass(frozen=True, eq=False)
class Region:
    """A flat part of cloth, maybe in several parts or with holes; points are complex, mm."""

    solid: Any

    @staticmethod
    def of(ring: Points, holes: Sequence[Points] = ()) -> Region:
        """Return what lies inside a closed ring (each point once) and outside the holes."""
        solid = shapely.Polygon(_pairs(ring), [_pairs(hole) for hole in holes])
        shapely.prepare(solid)
        return Region(solid)

    @property
    def area(self) -> float:
        return float(self.solid.area)

    @property
    def box(self) -> tuple[float, float, float, float]:
        """Least x, least y, greatest x, greatest y."""
        return tuple(self.solid.bounds)

    def holds(self, points: Points) -> NDArray[np.bool_]:
        """Say of each point whether it lies inside."""
        inside: NDArray[np.bool_] = shapely.contains_xy(self.solid, points.real, points.imag)
        return inside

    def clearance(self, points: Points, lines: Sequence[Points] = ()) -> NDArray[np.float64]:
        """Return how far each point lies from the rim, and from further open lines of two points or more."""
        rim = shapely.union_all([self.solid.boundary, *(shapely.LineString(_pairs(line)) for line in lines)])
        shapely.prepare(rim)
        gaps: NDArray[np.float64] = shapely.distance(rim, shapely.points(_pairs(points)))
        return gaps

    def across(self, drawn: Points, reach: float) -> Points | None:
        """Return the longest stretch of an open line inside, its ends moved onto the rim.

        None where it does not come within `reach` of the rim at both ends, or hardly enters.
        """
        inside = shapely.get_parts(shapely.intersection(self.solid, shapely.LineString(_pairs(drawn))))
        stretches = [part for part in inside if part.geom_type == "LineString" and not part.is_empty]
        if not stretches:
            return None
        found = shapely.get_coordinates(max(stretches, key=lambda part: part.length))
        for end in (0, -1):
            nearest = shapely.shortest_line(self.solid.exterior, shapely.Point(found[end]))
            if nearest.length > reach:
                return None
            found[end] = shapely.get_coordinates(nearest)[0]
        points: Points = found @ [1.0, 1j]
        return points if np.abs(np.diff(points)).sum() > 2 * reach else None

    def common(self, other: Region) -> Region:
        """Return what both hold; a rim that crosses itself is parted there, for this and for `less`."""
        return Region(shapely.intersection(_parted(self.solid), _parted(other.solid)))

    def less(self, other: Region) -> Region:
        """Return what the other does not hold."""
        return Region(shapely.difference(_parted(self.solid), _parted(other.solid)))

    def folded(self, one: complex, two: complex) -> Region:
        """Return the region turned over about the straight line through two points."""
        way = (two - one) / abs(two - one)

        def over(pairs: NDArray[np.float64]) -> NDArray[np.float64]:
            return _pairs(one + way * np.conj((pairs[:, 0] + 1j * pairs[:, 1] - one) / way))

        return Region(shapely.transform(self.solid, over))


def _parted(solid: Any) -> Any:
    return solid if solid.is_valid else shapely.make_valid(solid)


def _pairs(points: Points) -> NDArray[np.float64]:
    return np.column_stack([points.real, points.imag])
