"""Lines through points: their length, parts of them, and lines beside them.

Points are complex arrays, mm, y up; a ring has each of its points once.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

import numpy as np

from drafting.geometry.curve import Numbers, Points

SHORT = 1e-9
"""mm: a step that is shorter is none."""


def polyline_length(points: Points) -> float:
    """Return the length of an open line.

    >>> polyline_length(np.array([0j, 3 + 4j]))
    5.0
    """
    return float(np.abs(np.diff(points)).sum())


def distances_along(points: Points) -> Numbers:
    """Return how far along the line each of its points lies."""
    return np.concatenate([[0.0], np.cumsum(np.abs(np.diff(points)))])


def points_along(points: Points, at: Sequence[float] | Numbers) -> Points:
    """Return the points at these distances along an open line; beyond its ends, the ends."""
    passed = distances_along(points)
    return np.asarray(np.interp(at, passed, points.real) + 1j * np.interp(at, passed, points.imag))


def point_along(points: Points, at: float) -> complex:
    return complex(points_along(points, [at])[0])


def part_along(points: Points, low: float, high: float) -> Points:
    """Return the stretch of an open line between two distances along it."""
    passed = distances_along(points)
    inside = points[(passed > low + SHORT) & (passed < high - SHORT)]
    return np.concatenate([points_along(points, [low]), inside, points_along(points, [high])])


def left_of(points: Points, by: float) -> Points:
    """Return the line `by` mm to the left of an open one; corners are mitred, at most twofold."""
    steps = np.diff(points)
    points = points[np.concatenate([[True], np.abs(steps) > SHORT])]
    steps = np.diff(points)
    if not len(steps):
        return points
    normals = 1j * steps / np.abs(steps)
    middles = normals[:-1] + normals[1:]
    middles = middles / np.maximum(np.abs(middles), SHORT)
    reach = np.maximum((middles * np.conj(normals[:-1])).real, 0.5)
    return np.asarray(points + by * np.concatenate([normals[:1], middles / reach, normals[-1:]]))


def direction_at(points: Points, at: float, span: float = 3.0) -> complex:
    """Return the way (a unit step) in which an open line runs at a distance along it."""
    low, high = max(at - span, 0.0), min(at + span, polyline_length(points))
    one, two = points_along(points, [low, high])
    return complex((two - one) / abs(two - one)) if abs(two - one) > SHORT else 1 + 0j


def stepped(points: Points, step: float) -> Points:
    """Return an open line with points added, so that none of its steps is longer than `step`."""
    bits = [points[:1]]
    for one, two in pairwise(points.tolist()):
        count = max(1, int(abs(two - one) / step))
        bits.append(one + (two - one) * np.arange(1, count + 1) / count)
    return np.concatenate(bits)


def stepped_ring(ring: Points, step: float) -> Points:
    """Return a ring with points added, so that none of its steps is longer than `step`."""
    return stepped(np.concatenate([ring, ring[:1]]), step)[:-1]


def signed_area(ring: Points) -> float:
    """Return the area of a ring, mm2: positive where it runs anticlockwise.

    >>> signed_area(np.array([0j, 2 + 0j, 2 + 1j, 1j]))
    2.0
    """
    after = np.roll(ring, -1)
    return float(np.sum(ring.real * after.imag - ring.imag * after.real) / 2)


def kept_left(ring: Points, through: complex, way: complex) -> Points:
    """Return what of a ring lies to the left of the straight line `through` a point along `way`.

    Parts that the line separates stay joined along it (the method of Sutherland and Hodgman, from
    memory): filled, they look and measure as they are. Empty where nothing lies there.
    """
    away = ((ring - through) * np.conj(way)).imag
    after, next_away = np.roll(ring, -1), np.roll(away, -1)
    kept, cut = away >= 0, (away >= 0) != (next_away >= 0)
    crossing = ring + (after - ring) * away / np.where(cut, away - next_away, 1.0)
    found = np.column_stack([ring, crossing])[
        np.column_stack([kept, cut])
    ]  # each corner, then the crossing after it
    return np.asarray(found, dtype=np.complex128)


def within_box(ring: Points, box: tuple[float, float, float, float]) -> Points:
    """Return what of a ring lies in a box (least x, least y, greatest x, greatest y); see `kept_left`."""
    low, high = complex(box[0], box[1]), complex(box[2], box[3])
    for corner, way in ((low, 1 + 0j), (high, -1 + 0j), (low, -1j), (high, 1j)):
        if len(ring):
            ring = kept_left(ring, corner, way)
    return ring


def line_crossings(ring: Points, through: complex, way: complex) -> Points:
    """Return where a straight line crosses a ring, in the order in which it does."""
    away = ((ring - through) * np.conj(way)).imag
    after, next_away = np.roll(ring, -1), np.roll(away, -1)
    cut = (away >= 0) != (next_away >= 0)
    at = ring[cut] + (after[cut] - ring[cut]) * (away[cut] / (away[cut] - next_away[cut]))
    return np.asarray(at[np.argsort((at * np.conj(way)).real)])


def fewer_points(points: Points, gap: float) -> Points:
    """Return a line without points that lie within `gap` of the chord between their neighbours.

    No two neighbours go at once; four rounds leave a sixteenth of a straight run.
    """
    for _ in range(4):
        if len(points) < 3:
            break
        chords = points[2:] - points[:-2]
        off = np.abs(((points[1:-1] - points[:-2]) * np.conj(chords)).imag)
        flat = off <= gap * np.maximum(np.abs(chords), SHORT)
        kept = np.ones(len(points), bool)
        kept[1:-1:2] = ~flat[::2]
        points = points[kept]
    return points


def evenly_spaced(points: Points, step: float) -> Points:
    """Return an open line at even steps, so that no tiny back step is blown up by a line beside it."""
    whole = polyline_length(points)
    return points_along(points, np.linspace(0.0, whole, max(2, int(whole / step) + 1)))
