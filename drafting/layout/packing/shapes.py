"""Outlines on one grid, and the no-fit polygons of their pairs, kept for every lay that asks.

No-fit polygons depend on neither the cloth's width nor the way it is spread: the lay and the table
of other widths share what was worked out once.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from drafting.geometry.area import simplified
from drafting.layout.packing.clip import Ints, Paths, grown, no_fit, path_in_pose, to_grid
from drafting.layout.packing.model import Pose, Ring

FINE, MANY = 0.05, 60
"""mm by which an outline of more than so many corners is simplified where no gap is asked (ours)."""


@dataclass
class Shapes:
    """A grid of `scale` steps a unit, a `gap`, and the share of it by which outlines are simplified.

    Outlines are known by a number; the same ring has the same number.
    """

    scale: float
    gap: float
    coarse: float
    blocks: list[Ints] = field(default_factory=list)
    _numbers: dict[Ring, int] = field(default_factory=dict)
    _kept: dict[tuple[int, int, Pose], Paths] = field(default_factory=dict)

    def number(self, ring: Ring) -> int:
        """Return the number of an outline; one not seen before gets the next."""
        if ring not in self._numbers:
            self._numbers[ring] = len(self.blocks)
            self.blocks.append(self._block(ring))
        return self._numbers[ring]

    def no_fit(self, lying: int, coming: int, pose: Pose) -> Paths:
        """Return the no-fit polygon of two outlines about their origins, `coming` in a pose.

        The other way round it is the same, turned by half a turn and taken back by the pose.
        """
        key, twin = (lying, coming, pose), (coming, lying, pose.undone())
        if key not in self._kept:
            if twin in self._kept:
                back = Pose(180).after(pose)
                self._kept[key] = tuple(path_in_pose(path, back) for path in self._kept[twin])
            else:
                self._kept[key] = no_fit(self.blocks[lying], path_in_pose(self.blocks[coming], pose))
        return self._kept[key]

    def _block(self, ring: Ring) -> Ints:
        """Return what an outline keeps others out of: itself, grown by half the gap."""
        coarse = self.coarse * self.gap or (FINE if len(ring) > MANY else 0.0)
        points, off = simplified(ring, coarse) if coarse else (ring, 0.0)
        by = (self.gap / 2 + off) * self.scale
        return grown(to_grid(tuple(points), self.scale), by + 1 if by else 0.0)
