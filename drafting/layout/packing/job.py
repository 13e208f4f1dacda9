"""A job made ready for placing: outlines on the grid, and their no-fit polygons as they are needed.

Every piece is grown by half the gap, so that touching outlines keep the gap; whether it
lies inside the cloth is asked of the outline itself, so the selvedge needs no gap.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any, NamedTuple

import numpy as np

from drafting.layout.packing.clip import Ints, Paths, grid_scale, path_in_pose, to_grid
from drafting.layout.packing.model import HAIR, Job, Kind, Pose, Ring
from drafting.layout.packing.shapes import Shapes

COARSE, ROUGH = 0.1, 0.3
"""Share of the gap by which outlines may be simplified; they are grown by as much first (ours).
Five times as quick is ROUGH: it searches, and COARSE then closes up what was found."""

Grid = tuple[int, int, int, int]


class Size(NamedTuple):
    """An outline's box in one pose, grid steps: its lower left corner, its width and height."""

    x: int
    y: int
    width: int
    height: int


class NoFit(NamedTuple):
    """A no-fit polygon for lower left corners, relative to that of the piece that lies; its box."""

    paths: Paths
    box: Grid


def extent_of(job: Job) -> float:
    """Return what the grid of a job must have room for: all pieces in one row, and the cloth."""
    rings = [kind.ring for kind in job.kinds] + [_corners(box) for box in job.strip.blocked]
    sides = [max(map(abs, ring)) for ring in rings]
    total = sum(sides[copy.kind] for copy in job.copies) + sum(sides)
    far = max((box[2] for box in job.strip.blocked), default=0.0)
    return total + job.strip.width + far + (job.strip.repeat or 0.0)


@dataclass
class Kit:
    """The outlines of a `Job` on the grid, with everything that was worked out about them kept.

    `coarse` is the share of the gap by which outlines are simplified; `shared` are the shapes of
    another kit with the same gap, on a grid that has room for this job too. `spots` holds the places that
    were found last, by what is placed and what lies.
    """

    job: Job
    coarse: float = COARSE
    shared: Shapes | None = None
    kinds: tuple[Kind, ...] = ()
    spots: dict[tuple[Any, ...], tuple[int, int] | None] = field(default_factory=dict)
    _sizes: dict[tuple[int, Pose], Size] = field(default_factory=dict)
    _no_fits: dict[tuple[int, Pose, int, Pose], NoFit] = field(default_factory=dict)
    _rooms: dict[tuple[int, Pose], list[tuple[int, int]]] = field(default_factory=dict)

    def __post_init__(self) -> None:
        faults = (Kind(f"fault {n}", _corners(box)) for n, box in enumerate(self.job.strip.blocked))
        self.kinds = (*self.job.kinds, *faults)

    @cached_property
    def shapes(self) -> Shapes:
        scale = grid_scale(extent_of(self.job))
        return self.shared or Shapes(scale, self.job.strip.gap, self.coarse)

    @property
    def scale(self) -> float:
        """Grid steps a unit."""
        return self.shapes.scale

    def like(self, job: Job) -> bool:
        """Say whether a job differs from this one in nothing but copies and the strip's width."""
        return job.kinds == self.job.kinds and job.strip.blocked == self.job.strip.blocked

    def resized(self, job: Job) -> Kit:
        """Return the kit of a job that differs in copies and the strip's width only, nothing worked out anew."""
        other = Kit(job, shared=self.shapes, kinds=self.kinds, _sizes=self._sizes, _no_fits=self._no_fits)
        other.__dict__["numbers"] = self.numbers
        return other

    @cached_property
    def width(self) -> int:
        return int(np.floor(self.job.strip.width * (1 + HAIR) * self.scale))

    @cached_property
    def numbers(self) -> tuple[int, ...]:
        """The number of each kind's outline among the shapes."""
        return tuple(self.shapes.number(kind.ring) for kind in self.kinds)

    def block(self, kind: int) -> Ints:
        """Return what a kind keeps others out of: its outline grown by half the gap."""
        return self.shapes.blocks[self.numbers[kind]]

    def size(self, kind: int, pose: Pose) -> Size:
        """Return the box of a kind's own outline in a pose."""
        key = kind, pose
        if key not in self._sizes:
            ring = to_grid(self.kinds[kind].ring, self.scale)
            low, high = (f(path_in_pose(ring, pose), axis=0) for f in (np.min, np.max))
            corner, across = (int(low[0]), int(low[1])), high - low
            self._sizes[key] = Size(*corner, int(across[0]), int(across[1]))
        return self._sizes[key]

    def level(self, kind: int, pose: Pose) -> int:
        """Return how far a kind's level line lies from its lower left corner, along the cloth."""
        at = self.kinds[kind].level
        if at is None:
            return 0
        return round(pose.of(complex(at, 0)).real * self.scale) - self.size(kind, pose).x

    def line(self, kind: int, pose: Pose) -> int:
        """Return how far a kind's grainline lies from its lower left corner, across the cloth, less what the first
        stripe lies from y = 0: where both are even the corner lies on whole repeats."""
        at, first = self.kinds[kind].line, round(self.job.strip.stripe * self.scale)
        if at is None:
            return -first
        return round(pose.of(complex(0, at)).imag * self.scale) - self.size(kind, pose).y - first

    def span(self, kind: int, pose: Pose) -> tuple[int, int]:
        """Return the least and greatest y of a kind's corner; the second is less where it is too wide."""
        on_fold = self.kinds[kind].fold
        low = math.ceil(self.job.strip.low(on_fold) * self.scale)
        high = self.width - self.size(kind, pose).height
        if self.job.strip.meet is not None:
            return (high, high) if on_fold and pose.over else (low, low) if on_fold else (low, high - low)
        return (low, min(low, high)) if on_fold else (low, high)

    def rooms(self, kind: int, pose: Pose) -> list[tuple[int, int]]:
        """Return the stretches of y in which a kind's corner may lie: one, or one on each side of `meet`."""
        if (kind, pose) not in self._rooms:
            self._rooms[kind, pose] = self._rooms_of(kind, pose)
        return self._rooms[kind, pose]

    def _rooms_of(self, kind: int, pose: Pose) -> list[tuple[int, int]]:
        low, high = self.span(kind, pose)
        if self.job.strip.meet is None:
            return [(low, high)] if low <= high else []
        meet = math.floor(self.job.strip.meet * self.scale)
        below, above = meet - self.size(kind, pose).height, meet + 1
        parts = ((low, min(high, below)), (max(low, above), high))
        return [part for part in parts if part[0] <= part[1]]

    def step(self, kind: int, pose: Pose) -> float:
        """Return the repeat across that a kind keeps to, grid steps; 0 where it keeps to none."""
        if not self.job.strip.repeat_across:
            return 0.0
        low, high = self.span(kind, pose)
        step = self.job.strip.repeat_across * self.scale
        return step if high - low >= step else 0.0

    def fits(self, kind: int, pose: Pose) -> bool:
        """Say whether a kind is no wider than the cloth."""
        return bool(self.rooms(kind, pose))

    def no_fit(self, lying: int, u: Pose, coming: int, v: Pose) -> NoFit:
        """Return where kind `coming` in pose `v` must not be while `lying` lies in pose `u` at 0."""
        key = lying, u, coming, v
        if key not in self._no_fits:
            a, b = self.size(lying, u), self.size(coming, v)
            shift = np.array([b.x - a.x, b.y - a.y], dtype=np.int64)
            shape = self.shapes.no_fit(self.numbers[lying], self.numbers[coming], u.undone().after(v))
            paths = tuple([path_in_pose(path, u) + shift for path in shape])
            whole = paths[0] if len(paths) == 1 else np.concatenate(paths)
            (x0, y0), (x1, y1) = whole.min(axis=0).tolist(), whole.max(axis=0).tolist()
            self._no_fits[key] = NoFit(paths, (x0, y0, x1, y1))
        return self._no_fits[key]


def _corners(box: tuple[float, float, float, float]) -> Ring:
    x0, y0, x1, y1 = box
    return (0j, complex(x1 - x0, 0), complex(x1 - x0, y1 - y0), complex(0, y1 - y0))
