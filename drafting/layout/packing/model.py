"""The nouns of the cutting layout: poses, kinds, copies, the strip of cloth, and a packing.

x runs along the selvedge from the start of the lay, y across the cloth from the fold (or from one
selvedge) at y = 0. Lengths in mm, though nothing here minds another unit; points are complex.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from functools import cached_property
from typing import NamedTuple

from drafting.geometry.path import Box

HAIR = 1e-7
"""Share of a width by which a piece may be wider and still fits: the last digits of a turn."""

Ring = tuple[complex, ...]
"""The corners of a closed outline, anticlockwise, the first not repeated."""


class Pose(NamedTuple):
    """How an outline lies: mirrored across the selvedge's direction first, then turned.

    `turn` is 0 or 180 degrees on cloth (anticlockwise); quarter turns serve other materials.
    """

    turn: int = 0
    mirror: bool = False

    def of(self, p: complex) -> complex:
        return (p.conjugate() if self.mirror else p) * self.factor

    @property
    def factor(self) -> complex:
        """The exact complex number that turns by a quarter turn or several."""
        return (1, 1j, -1, -1j)[self.turn // 90 % 4]

    @property
    def over(self) -> bool:
        """Whether what was low lies high: a fold edge then lies on the second of two folds."""
        return self.mirror != (self.turn == 180)

    def after(self, first: Pose) -> Pose:
        """Return the pose that is `first`, then this one."""
        turned = -first.turn if self.mirror else first.turn
        return Pose((self.turn + turned) % 360, self.mirror != first.mirror)

    def undone(self) -> Pose:
        """Return the pose that takes this one back."""
        return self if self.mirror else Pose(-self.turn % 360)


AS_DRAWN = Pose()


@dataclass(frozen=True)
class Kind:
    """One outline to be laid, warp along x.

    Of a `fold` kind the fold edge lies on y = 0 and the cloth above it. `level` is the x of the
    line that a repeat along the cloth is matched on (None: the kind's own least x), `line` the y of
    the one for a repeat across it (None: the kind's own least y).
    """

    name: str
    ring: Ring
    fold: bool = False
    level: float | None = None
    line: float | None = None

    @cached_property
    def area(self) -> float:
        return ring_area(self.ring)

    @cached_property
    def box(self) -> Box:
        """The box round the outline."""
        return box_of(self.ring)

    def box_in(self, pose: Pose) -> Box:
        """Return the box round the outline in a pose: that of two corners of its own box, to the last digit."""
        x0, y0, x1, y1 = self.box
        return box_of((pose.of(complex(x0, y0)), pose.of(complex(x1, y1))))


@dataclass(frozen=True, slots=True)
class Copy:
    """One outline that has to find its place: of which kind, the poses allowed, the hand it gives."""

    kind: int
    poses: tuple[Pose, ...]
    hand: str = "single"
    n: int = 1


@dataclass(frozen=True)
class Strip:
    """The cloth to lay on: its `width`, the `gap` between pieces, boxes that may not be cut into.

    `repeat` is the length of a repeat along the cloth that all levels keep to, None without one;
    `repeat_across` the width of one that all lines keep to, counted from y = `stripe`. Pieces off the
    fold keep `fold_gap` from y = 0: a pair lying flush on the fold could not be cut apart.

    `meet` is where the selvedges meet on cloth with two folds, at y = 0 and at y = `width` (None: it
    has not): nothing lies across that line.
    """

    width: float
    gap: float = 0.0
    blocked: tuple[Box, ...] = ()
    repeat: float | None = None
    repeat_across: float | None = None
    stripe: float = 0.0
    fold_gap: float = 0.0
    meet: float | None = None

    def low(self, fold: bool) -> float:
        """Return the least y of a piece that lies on the fold, or of any other."""
        return 0.0 if fold else self.fold_gap

    def holds(self, wide: float, fold: bool) -> bool:
        """Say whether a piece that is `wide` across has room on the cloth."""
        if self.meet is not None:
            return wide < self.room - self.low(fold) - HAIR * self.width
        return wide <= (self.room - self.low(fold)) * (1 + HAIR)

    @property
    def room(self) -> float:
        """What a piece may take across at most: of cloth with two folds the wider part."""
        return self.width if self.meet is None else max(self.meet, self.width - self.meet)

    def lined_up(self, wide: float, fold: bool) -> bool:
        """Say whether such a piece can be shifted by a whole repeat across, and so be matched."""
        return self.repeat_across is not None and (self.width - self.low(fold) - wide >= self.repeat_across)


@dataclass(frozen=True, slots=True)
class Spot:
    """Where one copy lies: its number, its pose, and the lower left corner of its box."""

    copy: int
    pose: Pose
    x: float
    y: float


@dataclass(frozen=True)
class Packing:
    """A layout: `length` from the first to the last point, the spots, who found it."""

    length: float
    spots: tuple[Spot, ...]
    engine: str = ""


@dataclass(frozen=True)
class Job:
    """Everything an engine needs: the kinds, the copies of them, and the strip."""

    kinds: tuple[Kind, ...]
    copies: tuple[Copy, ...]
    strip: Strip

    def posed(self, spot: Spot) -> Ring:
        """Return the outline of a spot where it lies."""
        kind, pose = self.kinds[self.copies[spot.copy].kind], spot.pose
        x0, y0, _, _ = kind.box_in(pose)
        shift = complex(spot.x - x0, spot.y - y0)
        return tuple([pose.of(p) + shift for p in kind.ring])

    def box(self, spot: Spot) -> Box:
        """Return the box round the outline of a spot where it lies."""
        x0, y0, x1, y1 = self.kinds[self.copies[spot.copy].kind].box_in(spot.pose)
        right, up = spot.x - x0, spot.y - y0
        return x0 + right, y0 + up, x1 + right, y1 + up

    @property
    def area(self) -> float:
        """The area of all outlines, as laid."""
        return math.fsum(self.kinds[copy.kind].area for copy in self.copies)

    def packing(self, spots: tuple[Spot, ...], engine: str) -> Packing:
        """Return the packing of these spots, moved so that its first point lies at x = 0.

        Nothing is moved where faults in the cloth fix the places.
        """
        ordered = sorted(spots, key=lambda s: s.copy)
        boxes = [self.box(spot) for spot in ordered]
        first = min((box[0] for box in boxes), default=0.0)
        last = max((box[2] for box in boxes), default=0.0)
        if self.strip.blocked:
            return Packing(last - first, tuple(ordered), engine)
        moved = tuple(replace(spot, x=spot.x - first) for spot in ordered)
        return Packing(last - first, moved, engine)


def ring_area(ring: Ring) -> float:
    """Return the signed area of a ring; anticlockwise is positive."""
    after = (*ring[1:], *ring[:1])
    return math.fsum((a.conjugate() * b).imag for a, b in zip(ring, after, strict=True)) / 2


def box_of(ring: Ring) -> Box:
    """Return the box round a ring."""
    xs, ys = [p.real for p in ring], [p.imag for p in ring]
    return min(xs), min(ys), max(xs), max(ys)
