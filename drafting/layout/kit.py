"""A job made ready for placing: outlines on the grid, and their no-fit polygons as they are needed.

Layer 4. Every piece is grown by half the gap, so that touching outlines keep the gap; whether it
lies inside the cloth is asked of the outline itself, so selvedge and fold need no gap.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cached_property
from typing import NamedTuple

import numpy as np

from drafting.geometry.area import simplified
from drafting.layout.clip import Ints, Paths, grid_scale, grown, no_fit, posed, to_grid
from drafting.layout.model import HAIR, Job, Kind, Pose, Ring

COARSE, ROUGH = 0.1, 0.3
"""Share of the gap by which outlines may be simplified; they are grown by as much first (ours).
ROUGH is for lays that only tell what another width needs: five times as quick, half a percent long."""

FINE, MANY = 0.05, 60
"""mm by which an outline of more than so many corners is simplified where no gap is asked (ours)."""

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


@dataclass
class Kit:
    """The outlines of a `Job` on the grid, with everything that was worked out about them kept.

    `widest` keeps room on the grid for wider strips, so that one kit can be `resized` to them;
    `coarse` is the share of the gap by which outlines are simplified.
    """

    job: Job
    widest: float = 0.0
    coarse: float = COARSE
    kinds: tuple[Kind, ...] = ()
    _sizes: dict[tuple[int, Pose], Size] = field(default_factory=dict)
    _shapes: dict[tuple[int, int, Pose], Paths] = field(default_factory=dict)
    _no_fits: dict[tuple[int, Pose, int, Pose], NoFit] = field(default_factory=dict)

    def __post_init__(self) -> None:
        faults = (Kind(f"fault {n}", _corners(box)) for n, box in enumerate(self.job.strip.blocked))
        self.kinds = (*self.job.kinds, *faults)

    @cached_property
    def scale(self) -> float:
        """Grid steps a unit: the longest layout there can be, all pieces in one row, has room."""
        sides = [max(map(abs, kind.ring)) for kind in self.kinds]
        total = sum(sides[copy.kind] for copy in self.job.copies) + sum(sides)
        far = max((box[2] for box in self.job.strip.blocked), default=0.0)
        wide = max(self.job.strip.width, self.widest)
        return grid_scale(total + wide + far + (self.job.strip.repeat or 0.0))

    def resized(self, job: Job) -> Kit:
        """Return the kit of a job that differs in the strip's width only, nothing worked out anew."""
        other = Kit(
            job, self.widest, _sizes=self._sizes, _shapes=self._shapes, _no_fits=self._no_fits
        )
        other.__dict__.update(scale=self.scale, blocks=self.blocks)
        return other

    @cached_property
    def width(self) -> int:
        return int(np.floor(self.job.strip.width * (1 + HAIR) * self.scale))

    @cached_property
    def blocks(self) -> tuple[Ints, ...]:
        """What each kind keeps others out of: its outline grown by half the gap."""
        return tuple(self._block(kind.ring) for kind in self.kinds)

    def _block(self, ring: Ring) -> Ints:
        gap = self.job.strip.gap
        coarse = self.coarse * gap or (FINE if len(ring) > MANY else 0.0)
        points, off = simplified(ring, coarse) if coarse else (ring, 0.0)
        by = (gap / 2 + off) * self.scale
        return grown(to_grid(tuple(points), self.scale), by + 1 if by else 0.0)

    def size(self, kind: int, pose: Pose) -> Size:
        """Return the box of a kind's own outline in a pose."""
        key = kind, pose
        if key not in self._sizes:
            ring = to_grid(self.kinds[kind].ring, self.scale)
            low, high = (f(posed(ring, pose), axis=0) for f in (np.min, np.max))
            corner, across = (int(low[0]), int(low[1])), high - low
            self._sizes[key] = Size(*corner, int(across[0]), int(across[1]))
        return self._sizes[key]

    def level(self, kind: int, pose: Pose) -> int:
        """Return how far a kind's level line lies from its lower left corner, along the cloth."""
        at = self.kinds[kind].level
        if at is None:
            return 0
        return round(pose.of(complex(at, 0)).real * self.scale) - self.size(kind, pose).x

    def fits(self, kind: int, pose: Pose) -> bool:
        """Say whether a kind is no wider than the cloth."""
        return self.size(kind, pose).height <= self.width

    def no_fit(self, lying: int, u: Pose, coming: int, v: Pose) -> NoFit:
        """Return where kind `coming` in pose `v` must not be while `lying` lies in pose `u` at 0."""
        key = lying, u, coming, v
        if key not in self._no_fits:
            a, b = self.size(lying, u), self.size(coming, v)
            shift = np.array([b.x - a.x, b.y - a.y], dtype=np.int64)
            shape = self._shape(lying, coming, u.undone().after(v))
            paths = tuple(posed(path, u) + shift for path in shape)
            low = np.min([path.min(axis=0) for path in paths], axis=0)
            high = np.max([path.max(axis=0) for path in paths], axis=0)
            box = (int(low[0]), int(low[1]), int(high[0]), int(high[1]))
            self._no_fits[key] = NoFit(paths, box)
        return self._no_fits[key]

    def _shape(self, lying: int, coming: int, pose: Pose) -> Paths:
        """Return the no-fit polygon of two kinds about their origins, `coming` in a pose.

        The other way round it is the same, turned by half a turn and taken back by the pose.
        """
        key, twin = (lying, coming, pose), (coming, lying, pose.undone())
        if key not in self._shapes:
            if twin in self._shapes:
                back = Pose(180).after(pose)
                self._shapes[key] = tuple(posed(path, back) for path in self._shapes[twin])
            else:
                other = posed(self.blocks[coming], pose)
                self._shapes[key] = no_fit(self.blocks[lying], other)
        return self._shapes[key]


def _corners(box: tuple[float, float, float, float]) -> Ring:
    x0, y0, x1, y1 = box
    return (0j, complex(x1 - x0, 0), complex(x1 - x0, y1 - y0), complex(0, y1 - y0))
