"""Resolve a closed line that crosses itself into the ring around everything it winds about.

A line drawn beside an outline, with its loops, winds at least once about every point nearer to the
outline than its distance, and not about any other. So the ring wanted is made of those stretches
between crossings that have winding 1 or more on their left and 0 or less on their right.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from drafting.geometry.crossing import (
    Chords,
    Crossing,
    ends_moved,
    flattened_with_places,
    part_between,
    self_crossings,
)
from drafting.geometry.path import Path

HAIR = 1e-4
"""mm: how far beside a stretch its two winding numbers are taken."""


class _Cut(NamedTuple):
    """A place where the line is cut: on the curve, on the chords, and which crossing it is."""

    place: float
    flat: float
    crossing: int


def times_wound(flat: Chords, point: complex) -> int:
    """Return how often the closed chords wind about `point`, anticlockwise positive."""
    away = flat.points - point
    above = away.imag > 0
    side = (np.conj(away[:-1]) * np.diff(flat.points)).imag
    up = ~above[:-1] & above[1:] & (side > 0)
    down = above[:-1] & ~above[1:] & (side < 0)
    return int(up.sum() - down.sum())


def outer_rings(ring: Path) -> list[Path]:
    """Return the rings around what `ring` winds about, the largest first.

    A ring with a negative area is the edge of an enclosed gap. Returns [] where the stretches do
    not close up (lines that run on top of each other).
    """
    found = self_crossings(ring)
    if not found:
        return [ring]
    cuts = sorted(_Cut(*cut, k) for k, c in enumerate(found) for cut in ((c.on_a, c.chord_a), (c.on_b, c.chord_b)))
    rings = _chained(ring, found, cuts, _kept(ring, cuts))
    return sorted(rings, key=lambda r: -r.area)


def _kept(ring: Path, cuts: list[_Cut]) -> set[int]:
    """Return the numbers of the cuts after which the line is an outer boundary."""
    flat, total = flattened_with_places(ring), float(len(ring.segments))
    keep = set()
    for i, cut in enumerate(cuts):
        nxt = cuts[(i + 1) % len(cuts)].flat + (total if i == len(cuts) - 1 else 0.0)
        a, b = _middle(flat, cut.flat, nxt, total)
        left = 1j * (b - a) / abs(b - a) * HAIR if a != b else 0j
        middle = (a + b) / 2
        if times_wound(flat, middle + left) >= 1 and times_wound(flat, middle - left) <= 0:
            keep.add(i)
    return keep


def _middle(flat: Chords, start: float, end: float, total: float) -> tuple[complex, complex]:
    """Return the longest straight bit of the chords between two places."""
    places = np.concatenate([flat.places, flat.places[1:] + total])
    points = np.concatenate([flat.points, flat.points[1:]])
    inside = slice(places.searchsorted(start, "right"), places.searchsorted(end))
    first, last = flat.at(start), flat.at(end if end <= total else end - total)
    stops = np.array([first, *points[inside], last])
    longest = int(abs(np.diff(stops)).argmax())
    return complex(stops[longest]), complex(stops[longest + 1])


def _chained(ring: Path, found: list[Crossing], cuts: list[_Cut], keep: set[int]) -> list[Path]:
    rings, left = [], set(keep)
    while left:
        start = at = min(left)
        parts: list[Path] = []
        while True:
            left.discard(at)
            end = (at + 1) % len(cuts)
            parts.extend(_stretch(ring, found, cuts, at, end))
            twins = [i for i, c in enumerate(cuts) if c.crossing == cuts[end].crossing]
            if start in twins:
                break
            onward = [i for i in twins if i in left]
            if not onward:
                return []
            at = onward[0]
        if parts:
            rings.append(Path.joined(parts))
    return rings


def _stretch(ring: Path, found: list[Crossing], cuts: list[_Cut], at: int, end: int) -> list[Path]:
    a, b = cuts[at], cuts[end]
    if end > at:
        parts = [part_between(ring, a.place, b.place)]
    else:
        parts = [part_between(ring, a.place, len(ring.segments)), part_between(ring, 0.0, b.place)]
    solid = [part for part in parts if part is not None]
    if solid:
        solid[0] = ends_moved(solid[0], start=found[a.crossing].point)
        solid[-1] = ends_moved(solid[-1], end=found[b.crossing].point)
    return solid
