"""Engine 2: the packing library in a child process, on-fold pieces joined to a comb.

The library knows no fold and cannot pin a piece. So the on-fold pieces, each at a chosen place on the
fold, become one rigid comb: a thin rail along the fold joins them, and a thin mast as high as the
cloth is wide keeps the comb from leaving it. The other pieces nest between its teeth. What the comb
freezes is the order and the gaps of the on-fold pieces, so several combs are tried.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cached_property
from typing import Any

import numpy as np

from drafting.layout.packing.clip import Ints, covered_part, grown, path_in_pose, union
from drafting.layout.packing.job import Kit
from drafting.layout.packing.model import AS_DRAWN, Copy, Packing, Pose, Spot, box_of

PLAY = 1e-4
"""Share of the width a comb may lift off the fold: the library takes nothing as high as the strip.
All pieces are grown by as much, so that the comb can be laid back on the fold."""

THIN = 2e-4
"""Share of the width that rail and mast are thick (ours)."""


@dataclass(frozen=True, slots=True)
class Item:
    """One outline for the library: the copies it stands for, its mirroring, the turns allowed."""

    ring: Ints
    copies: tuple[int, ...]
    mirror: bool
    turns: tuple[int, ...]


@dataclass(frozen=True, eq=False)
class Problem:
    """A job put to the library; `hands` is a layout whose mirrored outlines stay mirrored.

    `teeth` are the places of the on-fold copies (none: there are no such copies).
    """

    kit: Kit
    hands: Packing
    teeth: tuple[Spot, ...] = ()
    items: tuple[Item, ...] = field(init=False)

    def __post_init__(self) -> None:
        items = (self._comb(),) if self.teeth else ()
        object.__setattr__(self, "items", (*items, *self._loose()))

    @cached_property
    def play(self) -> float:
        """mm that outlines are grown by beyond the gap."""
        blocks = (self.kit.size(c.kind, p).height for c in self.kit.job.copies for p in c.poses)
        high = max(blocks) / self.kit.scale
        tight = bool(self.teeth) or high > self.kit.job.strip.width * (1 - 2 * PLAY)
        return PLAY * self._width if tight else 0.0

    @property
    def _width(self) -> float:
        strip = self.kit.job.strip
        return strip.width + strip.gap - strip.fold_gap

    @property
    def bottom(self) -> float:
        """How far the library's strip begins below y = 0: where no piece off the fold may reach.

        What the teeth of a comb have below that line is cut off.
        """
        strip = self.kit.job.strip
        return strip.gap / 2 + self.play - strip.fold_gap

    def asked(self, seconds: int, workers: int, seed: int) -> dict[str, Any]:
        """Return what the child process reads."""
        items = [
            {
                "points": (item.ring / self.kit.scale).tolist(),
                "demand": max(1, len(item.copies)),
                "turns": item.turns,
            }
            for item in self.items
        ]
        height = self._width + 2 * self.play
        return {
            "height": height,
            "items": items,
            "seconds": max(1, int(seconds)),
            "workers": workers,
            "seed": seed,
        }

    def packing(self, placed: list[list[float]]) -> Packing:
        """Return the library's layout as ours, the comb laid back on the fold."""
        waiting = [list(item.copies) for item in self.items]
        spots: list[Spot] = []
        for number, degrees, x, y in placed:
            item = self.items[int(number)]
            if self.teeth and int(number) == 0:
                spots += [Spot(s.copy, s.pose, s.x + x, 0.0) for s in self.teeth]
            else:
                copy = waiting[int(number)].pop()
                spots.append(self._spot(copy, item.mirror, degrees, x, y - self.bottom))
        return self.kit.job.packing(tuple(spots), "packing library")

    def _spot(self, copy: int, mirror: bool, degrees: float, x: float, y: float) -> Spot:
        kind = self.kit.job.kinds[self.kit.job.copies[copy].kind]
        pose = Pose(round(degrees / 90) * 90 % 360).after(Pose(0, mirror))  # 32-bit degrees
        x0, y0, _, y1 = box_of(tuple(pose.of(p) for p in kind.ring))
        strip = self.kit.job.strip
        low = strip.low(kind.fold)
        return Spot(copy, pose, x + x0, min(max(low, y + y0), max(low, strip.width - (y1 - y0))))

    def _loose(self) -> list[Item]:
        """Return an item for each kind, hand and set of turns among the copies off the fold."""
        poses = {spot.copy: spot.pose for spot in self.hands.spots}
        found: dict[tuple[int, bool, tuple[int, ...]], list[int]] = {}
        for n, copy in enumerate(self.kit.job.copies):
            if not self.kit.job.kinds[copy.kind].fold:
                mirror = poses.get(n, copy.poses[0]).mirror
                found.setdefault((copy.kind, mirror, _turns(copy, mirror)), []).append(n)
        return [
            Item(self._grown(kind, mirror), tuple(copies), mirror, turns)
            for (kind, mirror, turns), copies in found.items()
        ]

    def _grown(self, kind: int, mirror: bool) -> Ints:
        ring = path_in_pose(self.kit.block(kind), Pose(0, mirror))
        return grown(ring, self.play * self.kit.scale)

    def _comb(self) -> Item:
        scale = self.kit.scale
        parts = []
        for spot in self.teeth:
            kind = self.kit.job.copies[spot.copy].kind
            size = self.kit.size(kind, spot.pose)
            at = np.array([round(spot.x * scale) - size.x, -size.y], dtype=np.int64)
            parts.append(path_in_pose(self.kit.block(kind), spot.pose) + at)
        x0, x1 = (int(f(np.concatenate(parts)[:, 0])) for f in (np.min, np.max))
        low, thick = -round(self.bottom * scale), round(THIN * self._width * scale)
        high = low + round((self._width + 2 * self.play) * (1 - PLAY) * scale)
        top = low + round(self.play * scale) + thick
        parts += [_box(x0 - thick, low, x1, top), _box(x0 - thick, low, x0, high)]
        whole = max(union(part.tolist() for part in parts), key=lambda ring: abs(_area(ring)))
        far = (x0 - thick, low, x1 + 2 * thick + round(self._width * scale), high)
        clipped = covered_part([grown(whole, self.play * scale)], far)
        return Item(max(clipped, key=lambda ring: abs(_area(ring))), (), False, (0,))


def tight_teeth(kit: Kit, order: list[int], poses: dict[int, Pose]) -> tuple[Spot, ...]:
    """Return on-fold copies slid together along the fold in an order."""
    from drafting.layout.packing.place import Laid, as_spot, best_spot

    lying: list[Laid] = []
    spots = []
    for copy in order:
        kind = kit.job.copies[copy].kind
        pose = poses.get(copy, AS_DRAWN)
        found = best_spot(kit, lying, kind, pose)
        assert found is not None
        lying.append(Laid(kind, pose, *found))
        spots.append(as_spot(kit, copy, lying[-1]))
    return tuple(spots)


def _turns(copy: Copy, mirror: bool) -> tuple[int, ...]:
    """Return the turns the library may give an outline that is mirrored already (or not)."""
    return tuple(sorted(pose.turn for pose in copy.poses if pose.mirror == mirror))


def _box(x0: int, y0: int, x1: int, y1: int) -> Ints:
    return np.array([(x0, y0), (x1, y0), (x1, y1), (x0, y1)], dtype=np.int64)


def _area(path: Ints) -> float:
    x, y = path[:, 0].astype(float), path[:, 1].astype(float)
    return float(np.dot(x, np.roll(y, -1)) - np.dot(y, np.roll(x, -1))) / 2
