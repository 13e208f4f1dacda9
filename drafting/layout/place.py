"""Greedy placing: each outline in turn to the place nearest the start of the cloth. Layer 4."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from drafting.layout.clip import Ints, left_over
from drafting.layout.kit import Kit
from drafting.layout.model import Pose, Spot

LATTICE_TRIES = 400
"""Repeats tried along the cloth before a piece is laid beyond everything else (ours)."""


class Laid(NamedTuple):
    """A kind that lies: its pose, and its lower left corner on the grid."""

    kind: int
    pose: Pose
    x: int
    y: int


@dataclass(frozen=True)
class Room:
    """What one outline finds when it comes: the blockers for its lower left corner, and a box.

    `reach` is the x from which on nothing lies any more; `high` the greatest y of the corner.
    """

    blockers: list[Ints]
    reach: int
    high: int


def faults(kit: Kit) -> list[Laid]:
    """Return the blocked boxes of the cloth as things that lie already."""
    first = len(kit.job.kinds)
    corners = (np.rint(np.array(box[:2]) * kit.scale) for box in kit.job.strip.blocked)
    return [Laid(first + n, Pose(), int(x), int(y)) for n, (x, y) in enumerate(corners)]


def best_spot(kit: Kit, lying: Sequence[Laid], kind: int, pose: Pose) -> tuple[int, int] | None:
    """Return the leftmost, then lowest free corner for a kind in a pose; None if it is too wide."""
    high = kit.width - kit.size(kind, pose).height
    if high < 0:
        return None
    on_fold = kit.kinds[kind].fold
    room = blocked_by(kit, lying, kind, pose, 0 if on_fold else high)
    if kit.job.strip.repeat:
        return _on_lattice(kit, room, kind, pose)
    if room.high == 0:
        return _along(room.blockers, 0, 0), 0
    rest = left_over((0, 0, room.reach + 1, room.high), room.blockers)
    corners = np.array([corner for path in rest for corner in path], dtype=np.int64)
    x, y = corners[np.lexsort((corners[:, 1], corners[:, 0]))[0]]
    return int(x), int(y)


def blocked_by(kit: Kit, lying: Sequence[Laid], kind: int, pose: Pose, high: int) -> Room:
    """Return what keeps a kind in a pose off its places; `high` is the greatest y of its corner."""
    blockers: list[Ints] = []
    reach = 0
    for there in lying:
        paths, (_, y0, x1, y1) = kit.no_fit(there.kind, there.pose, kind, pose)
        reach = max(reach, there.x + x1)
        if there.y + y0 <= high and there.y + y1 >= 0 and there.x + x1 >= 0:
            shift = np.array([there.x, there.y], dtype=np.int64)
            blockers += [path + shift for path in paths]
    return Room(blockers, reach, high)


def _along(blockers: Sequence[Ints], y: int, start: int) -> int:
    """Return the least x >= `start` on the line at height `y` that no blocker covers."""
    x = start
    for low, high in _covered([path[:, ::-1] for path in blockers], y):
        if low >= x - 0.5 or high <= x + 0.5:
            continue
        x = int(np.ceil(high))
    return x


def _on_lattice(kit: Kit, room: Room, kind: int, pose: Pose) -> tuple[int, int]:
    """Return the first free corner whose level lies on a repeat, as low as it goes there."""
    step = (kit.job.strip.repeat or 0.0) * kit.scale
    level = kit.level(kind, pose)
    first = int(np.ceil(level / step))
    for n in range(first, first + LATTICE_TRIES):
        x = round(n * step) - level
        if x >= room.reach:
            return x, 0
        y = 0
        for low, high in _covered(room.blockers, x):
            if low < y - 0.5 and high > y + 0.5:
                y = int(np.ceil(high))
        if y <= room.high:
            return x, y
    return round(np.ceil((room.reach + level) / step) * step) - level, 0


def _covered(paths: Sequence[Ints], at: int) -> list[tuple[float, float]]:
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
    x, y = path[:, 0], path[:, 1]
    nx, ny = np.roll(x, -1), np.roll(y, -1)
    over: NDArray[np.bool_] = (x < at) != (nx < at)
    cut = y[over] + (at - x[over]) * (ny[over] - y[over]) / (nx[over] - x[over])
    marks = np.sort(cut)
    return list(zip(marks[::2].tolist(), marks[1::2].tolist(), strict=True))


def as_spot(kit: Kit, copy: int, laid: Laid) -> Spot:
    """Return where a copy lies in the units of the job."""
    return Spot(copy, laid.pose, laid.x / kit.scale, laid.y / kit.scale)
