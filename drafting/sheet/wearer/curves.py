"""Smooth lines through points, and stretches of them between two heights."""

from __future__ import annotations

import cmath
from collections.abc import Iterable, Sequence
from itertools import pairwise

import numpy as np

from drafting.geometry import Cubic, Path, smooth, unit

NEAR = 0.5
"""mm: a point this near the one before is left out (ours)."""

LOOKS = 160
"""Places along a line at which its height is looked up."""


def flowing(points: Iterable[complex], leave: complex = 0, arrive: complex = 0) -> Path:
    """Return the line through `points`, at each heading as the circle through its neighbours does.

    `leave` and `arrive` are the headings at the ends, where they matter. At least two points that
    lie apart are needed.
    """
    kept = _apart(points)
    if len(kept) == 2:
        heading = kept[1] - kept[0]
        return Path((smooth(kept[0], kept[1], leave or heading, arrive or heading),))
    inner = [_heading(*three) for three in zip(kept, kept[1:], kept[2:], strict=False)]
    first = leave or _mirrored(inner[0], kept[1] - kept[0])
    last = arrive or _mirrored(inner[-1], kept[-1] - kept[-2])
    headings = [first, *inner, last]
    pairs = zip(pairwise(kept), pairwise(headings), strict=True)
    return Path(tuple(smooth(a, b, u, v) for (a, b), (u, v) in pairs))


def ring(points: Sequence[complex]) -> Path:
    """Return the closed smooth line through `points`."""
    first = _heading(points[-1], points[0], points[1])
    return flowing([*points, points[0]], first, first)


def ellipse(middle: complex, across: complex, up: complex) -> tuple[Path, Path]:
    """Return the near half of a ring seen a little from above, and the far half.

    `across` reaches from the middle to the ring's side, `up` to its far edge.
    """
    left, right = middle - across, middle + across
    k = 0.5523  # handle of a quarter circle, from memory
    near, far = (
        Path.joined(
            (
                _quarter(left, middle + side, side, across, k),
                _quarter(right, middle + side, side, -across, k).reversed(),
            )
        )
        for side in (-up, up)
    )
    return near, far


def stretch_between(path: Path, high: float, low: float) -> Path:
    """Return the stretch of a line that mostly falls, from the height `high` to `low` (mm)."""
    heights = np.array([point.imag for point in path.evenly(LOOKS)])
    falling = np.minimum.accumulate(heights)[::-1] - 1e-9 * np.arange(LOOKS)[::-1]
    run = np.linspace(0.0, path.length, LOOKS)[::-1]
    start, end = (float(np.interp(y, falling, run)) for y in (high, low))
    return path.part(start, end) if end - start > NEAR else path


def _quarter(start: complex, end: complex, side: complex, across: complex, k: float) -> Path:
    return Path((Cubic(start, start + k * side, end - k * across, end),))


def _apart(points: Iterable[complex]) -> list[complex]:
    kept: list[complex] = []
    for point in points:
        if not kept or abs(point - kept[-1]) > NEAR:
            kept.append(point)
    return kept


def _heading(a: complex, b: complex, c: complex) -> complex:
    first, second = b - a, c - b
    way = first / abs(first) ** 2 + second / abs(second) ** 2
    return unit(way) if abs(way) > 1e-9 else unit(second)


def _mirrored(heading: complex, chord: complex) -> complex:
    """Return a heading at a chord's far end, so that the chord bends evenly."""
    return unit(chord) * cmath.exp(-1j * cmath.phase(heading / chord))
