"""Greedy placing: each outline in turn to the place nearest the start of the cloth."""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from drafting.layout.packing.clip import Ints, left_over
from drafting.layout.packing.job import Kit
from drafting.layout.packing.model import Pose, Spot

LATTICE_TRIES = 400
"""Repeats tried along the cloth before a piece is laid beyond everything else (ours)."""

REMEMBERED = 5000
"""Places that are remembered of one kit (ours: a search that is counted finds no more)."""


class Laid(NamedTuple):
    """A kind that lies: its pose, and its lower left corner on the grid."""

    kind: int
    pose: Pose
    x: int
    y: int


@dataclass(frozen=True)
class CornerRoom:
    """What one outline finds when it comes: the blockers for its lower left corner, and a box.

    `reach` is the x from which on nothing lies any more; `low` and `high` bound the corner's y.
    """

    blockers: tuple[Ints, ...]
    reach: int
    low: int
    high: int


def blocked_boxes(kit: Kit) -> list[Laid]:
    """Return the blocked boxes of the cloth as things that lie already."""
    first = len(kit.job.kinds)
    corners = (np.rint(np.array(box[:2]) * kit.scale) for box in kit.job.strip.blocked)
    return [Laid(first + n, Pose(), int(x), int(y)) for n, (x, y) in enumerate(corners)]


def best_spot(kit: Kit, lying: Sequence[Laid], kind: int, pose: Pose) -> tuple[int, int] | None:
    """Return the leftmost, then lowest free corner for a kind in a pose; None if it is too wide.

    A search comes back to one time in five: what was found last is remembered.
    """
    key = kind, pose, *lying
    if key not in kit.spots:
        rooms = [blocked_by(kit, lying, kind, pose, span) for span in kit.rooms(kind, pose)]
        kit.spots[key] = min([_spot_in(kit, room, kind, pose) for room in rooms], default=None)
        if len(kit.spots) > REMEMBERED:
            del kit.spots[next(iter(kit.spots))]
    return kit.spots[key]


def _spot_in(kit: Kit, room: CornerRoom, kind: int, pose: Pose) -> tuple[int, int]:
    if kit.job.strip.repeat:
        return _on_lattice(kit, room, kind, pose)
    if room.high == room.low:
        return _along(room.blockers, room.low, 0), room.low
    rest = left_over((0, room.low, room.reach + 1, room.high), room.blockers)
    if step := kit.step(kind, pose):
        return on_rows(rest, step, kit.line(kind, pose))
    x, y = min(min(path) for path in rest)
    return x, y


def blocked_by(
    kit: Kit, lying: Sequence[Laid], kind: int, pose: Pose, span: tuple[int, int] | None = None
) -> CornerRoom:
    """Return what keeps a kind in a pose off its places, in a stretch of y (none: wherever it may lie)."""
    low, high = span or kit.span(kind, pose)
    paths: list[Ints] = []
    by: list[tuple[int, int]] = []
    reach = 0
    for there in lying:
        barred, (_, y0, x1, y1) = kit.no_fit(there.kind, there.pose, kind, pose)
        reach = max(reach, there.x + x1)
        if there.y + y0 <= high and there.y + y1 >= low and there.x + x1 >= 0:
            paths += barred
            by += [(there.x, there.y)] * len(barred)
    return CornerRoom(_moved(paths, by), reach, low, high)


def _moved(paths: list[Ints], by: list[tuple[int, int]]) -> tuple[Ints, ...]:
    """Return each path moved by its own step: all corners at once."""
    if not paths:
        return ()
    counts = [len(path) for path in paths]
    corners = np.concatenate(paths) + np.repeat(np.array(by, dtype=np.int64), counts, axis=0)
    ends = itertools.accumulate(counts)
    return tuple(corners[end - count : end] for end, count in zip(ends, counts, strict=True))


def _along(blockers: Sequence[Ints], y: int, start: int) -> int:
    """Return the least x >= `start` on the line at height `y` that no blocker covers."""
    x = start
    for low, high in covered_stretches([path[:, ::-1] for path in blockers], y):
        if low >= x - 0.5 or high <= x + 0.5:
            continue
        x = int(np.ceil(high))
    return x


def _on_lattice(kit: Kit, room: CornerRoom, kind: int, pose: Pose) -> tuple[int, int]:
    """Return the first free corner whose level lies on a repeat, as low as it goes there."""
    step = (kit.job.strip.repeat or 0.0) * kit.scale
    level = kit.level(kind, pose)
    across, line = kit.step(kind, pose), kit.line(kind, pose)
    bottom = _up(room.low, across, line)
    first = int(np.ceil(level / step))
    for n in range(first, first + LATTICE_TRIES):
        x = round(n * step) - level
        if x >= room.reach:
            return x, bottom
        y = bottom
        for low, high in covered_stretches(room.blockers, x):
            if low < y - 0.5 and high > y + 0.5:
                y = _up(int(np.ceil(high)), across, line)
        if y <= room.high:
            return x, y
    return round(np.ceil((room.reach + level) / step) * step) - level, bottom


def _up(y: int, step: float, line: int) -> int:
    """Return the least corner from `y` up whose grainline lies on a repeat (`step` 0: on any)."""
    return round(np.ceil((y + line) / step) * step) - line if step else y


def on_rows(rest: Sequence[Sequence[Sequence[int]]], step: float, line: int) -> tuple[int, int]:
    """Return the leftmost corner of what is left whose grainline lies on a repeat across the cloth.

    It lies on an edge of what is left: there on the repeat that is nearest to the edge's left end.
    """
    a = np.concatenate([np.array(path, dtype=float) for path in rest])
    b = np.concatenate([np.roll(np.array(path, dtype=float), -1, axis=0) for path in rest])
    left = np.where((a[:, 0] <= b[:, 0])[:, None], a, b)
    other = np.where((a[:, 0] <= b[:, 0])[:, None], b, a)
    rise = other[:, 1] - left[:, 1]
    up = rise >= 0
    rows = np.where(up, np.ceil((left[:, 1] + line) / step), np.floor((left[:, 1] + line) / step))
    y = np.rint(rows * step) - line
    share = np.where(rise == 0, 0.0, (y - left[:, 1]) / np.where(rise == 0, 1.0, rise))
    met = np.where(rise == 0, y == left[:, 1], (share >= 0) & (share <= 1))
    x = np.ceil(left[:, 0] + share * (other[:, 0] - left[:, 0]))[met]
    y = y[met]
    best = np.lexsort((y, x))[0]
    return int(x[best]), int(y[best])


def covered_stretches(paths: Sequence[Ints], at: int) -> list[tuple[float, float]]:
    """Return the stretches of the line x = `at` that lie inside anticlockwise paths, by their start.

    Inside means on both sides of the line: what only touches it is not covered.
    """
    near = [sorted(_inside(path, at + side)) for path in paths for side in (-0.5, 0.5)]
    found = []
    for before, after in zip(near[::2], near[1::2], strict=True):
        for a, b in before:
            both = [(max(a, c), min(b, d)) for c, d in after if max(a, c) < min(b, d)]
            found += both
    return sorted(found)


def _inside(path: Ints, at: float) -> list[tuple[float, float]]:
    """Return the stretches of the line x = `at` between an outline's crossings, pair by pair."""
    marks = heights_crossed(path, at)
    return list(zip(marks[::2], marks[1::2], strict=True))


def heights_crossed(path: Ints, at: float) -> list[float]:
    """Return the y at which an outline crosses the line x = `at`, in order."""
    x, y = path[:, 0], path[:, 1]
    before: NDArray[np.bool_] = x < at
    over = np.flatnonzero(before != np.concatenate((before[1:], before[:1])))
    after = (over + 1) % len(path)
    cut = y[over] + (at - x[over]) * (y[after] - y[over]) / (x[after] - x[over])
    found: list[float] = np.sort(cut).tolist()
    return found


def as_spot(kit: Kit, copy: int, laid: Laid) -> Spot:
    """Return where a copy lies in the units of the job."""
    return Spot(copy, laid.pose, laid.x / kit.scale, laid.y / kit.scale)
