"""The free places of a piece that keep to the repeat of the cloth: for moving it by hand."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

import numpy as np
from numpy.typing import NDArray

from drafting.layout.packing.job import Kit
from drafting.layout.packing.model import Spot
from drafting.layout.packing.place import heights_crossed

NEAR = 4
"""Repeats tried to either side of where a piece was let go (ours)."""

Rest = Sequence[Sequence[Sequence[int]]]
"""What is left of the cloth for a piece's corner: closed lines on the grid."""


def nearest_on_repeat(kit: Kit, rest: Rest, others: Sequence[Spot], spot: Spot, at: complex) -> complex | None:
    """Return the free corner nearest to `at` (grid steps) that keeps to the repeats; None without one.

    Along the cloth a piece keeps to the level of those that lie already, across to whole repeats
    from the first stripe.
    """
    kind = kit.job.copies[spot.copy].kind
    along = (kit.job.strip.repeat or 0.0) * kit.scale
    across = kit.step(kind, spot.pose)
    paths = [np.array(path, dtype=np.int64) for path in rest]
    turned = [path[:, ::-1] for path in paths]
    low, high = kit.span(kind, spot.pose)
    line = kit.line(kind, spot.pose)
    if along:
        shift = kit.level(kind, spot.pose) - _level(kit, others)
        found = [
            complex(x, y)
            for x in _places(at.real, along, shift)
            for y in _on_line(paths, x, at.imag, across, line)
            if x >= 0 and low <= y <= max(low, high)
        ]
    else:
        found = [
            complex(x, y)
            for y in _places(at.imag, across, line)
            for x in _on_line(turned, y, at.real, 0.0, 0)
            if x >= 0 and low <= y <= high
        ]
    return min(found, key=lambda p: abs(p - at), default=None)


def _level(kit: Kit, others: Sequence[Spot]) -> int:
    """Return the x of the level of something that lies already, grid steps; 0 where nothing does."""
    if not others:
        return 0
    first = others[0]
    return round(first.x * kit.scale) + kit.level(kit.job.copies[first.copy].kind, first.pose)


def _places(wanted: float, step: float, shift: int) -> list[int]:
    """Return the places near `wanted` that lie `shift` short of a whole number of steps."""
    middle = round((wanted + shift) / step)
    return [round(n * step) - shift for n in range(middle - NEAR, middle + NEAR + 1)]


def _on_line(paths: Sequence[NDArray[np.int64]], at: int, wanted: float, step: float, shift: int) -> Iterator[int]:
    """Yield on the line x = `at` the free y nearest to `wanted` in each stretch of what is left."""
    for side in (-0.5, 0.5):
        marks = sorted(y for path in paths for y in heights_crossed(path, at + side))
        for low, high in zip(marks[::2], marks[1::2], strict=True):
            tries = _places(wanted, step, shift) if step else [round(wanted)]
            kept = [y for y in tries if low <= y <= high]
            yield from kept
            if not step and not kept:
                yield math.ceil(low) if wanted < low else math.floor(high)
