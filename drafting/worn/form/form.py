"""The wearer's form: one smooth closed surface on which the tape reads what it read on the wearer."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, fields, replace
from functools import cached_property

import numpy as np

from drafting.body import Body
from drafting.body.body import SIDES
from drafting.body.children import GROWN_HEIGHT
from drafting.body.heights import heights
from drafting.body.sides import differing_measures, one_side
from drafting.ground.findings import Finding
from drafting.ground.frozen import freeze
from drafting.ground.remembered import remembered
from drafting.worn.contact import DistanceField
from drafting.worn.form import tape
from drafting.worn.form.dials import STANDING, Stance
from drafting.worn.form.grid import CELL, gridded
from drafting.worn.form.read import Readings, armpit, crotch_line
from drafting.worn.form.sizes import sizes
from drafting.worn.form.skin import skin
from drafting.worn.form.solid import Solid
from drafting.worn.form.solved import one_middle, solved
from drafting.worn.nouns import Limb, Point, Reals, Surface

ROOM = 90.0
"""mm of grid beyond the body on every side."""
SEAM = 45.0
"""mm to either side of the middle over which the halves of an uneven body run into one another."""


@dataclass(frozen=True, slots=True)
class FormMeasure:
    """One measure of the wearer: what was `wanted`, and what a tape on the form `got`, mm."""

    name: str
    wanted: float
    got: float


@dataclass(frozen=True, eq=False)
class Form:
    """A wearer's body as a solid. x to the wearer's left, y to the back, z up from the floor, mm.

    `levels` are heights by name; `points` landmarks of the left side (of an uneven body "right ..." too).
    `arm` (3, 3) is the left arm's axis at shoulder joint, elbow and wrist, `leg` (3, 3) the left leg's at
    hip, knee and ankle. `even` says that the right side mirrors the left. `report` tells each measure, `said`
    which measures gave way where several speak of one height.
    """

    left: Solid
    right: Solid
    even: bool
    levels: Mapping[str, float]
    points: Mapping[str, Point]
    report: tuple[FormMeasure, ...]
    said: tuple[Finding, ...] = ()

    def __post_init__(self) -> None:
        freeze(self, "levels", "points")

    def __call__(self, at: Reals) -> Reals:
        """Signed distance (n,) of points (3, n), mm: right to the first order near the surface."""
        return self.left(at) if self.even else _run_together(self.left, self.right, at)

    @property
    def arm(self) -> Reals:
        """(3, 3) mm: joint, elbow and wrist of the left arm."""
        return self.arm_of("left")

    def arm_of(self, hand: str) -> Reals:
        """Return (3, 3) mm: joint, elbow and wrist of an arm, the right one's mirrored to the left."""
        arm = (self.right if hand == "right" else self.left).arm
        return np.array([arm.joint, arm.elbow, arm.wrist])

    @property
    def leg(self) -> Reals:
        lv = self.left.sizes.levels
        return np.array([tape.leg_middle(self.left, z) for z in (lv.hip, lv.knee, lv.ankle)])

    @property
    def fineness(self) -> float:
        """What a grown wearer's meshes and grids are taken times here: 1, less on whoever is not grown.

        A child's arm is 5 cells of a grown wearer's mesh round, and cloth started on its wrong side.
        """
        return min(1.0, self.levels["crown"] / GROWN_HEIGHT)

    @cached_property
    def distance(self) -> DistanceField:
        """The signed distance on a grid of 10 mm (less on a child), the half x >= 0 of an even body."""
        cell = CELL * self.fineness
        low, high = _corners(self.left, self.right, cell)
        if self.even:
            low[0] = 0.0
        values = gridded(self, low, high, cell, mirror=self.even)
        return DistanceField(values, (float(low[0]), float(low[1]), float(low[2])), cell, self.even)

    @cached_property
    def surface(self) -> Surface:
        """The skin as triangles of some 10 mm."""
        field = self.distance
        return skin(field.whole, field.corner, field.step, self)

    def contour(self, height: float, limb: Limb = Limb.TRUNK, count: int = 144) -> Reals:
        """Return the closed level section (`count`, 2) at a height, mm: of the trunk (without arms), the left
        leg, or the left arm. A tape lies taut round it."""
        if limb is Limb.ARM:
            return self._level_ring(self._on_arm(height), self.left.arm.bare, count)
        if limb is Limb.LEG:
            return self._level_ring(tape.leg_middle(self.left, height), self.left.bare, count)
        half = count // 2 + 1
        middle = tape.trunk_middle(self.left, height)
        sides = [
            tape.touched(one.bare, (tape.half_fan(middle, 450.0, half),))[0] for one in (self.left, self.right)
        ]
        return np.concatenate([sides[0][:, :2], sides[1][-2:0:-1, :2] * [-1.0, 1.0]])

    def _level_ring(self, middle: Reals, solid: Callable[[Reals], Reals], count: int) -> Reals:
        fan = tape.ring_about(middle, np.array([1.0, 0, 0]), np.array([0, 1.0, 0]), 300.0, count + 1)
        found = tape.touched(solid, (fan,))[0]
        found[:, 0] = np.maximum(found[:, 0], 0.0)
        return found[:, :2]

    def _on_arm(self, height: float) -> Reals:
        joint, elbow, wrist = self.arm
        start, end = (joint, elbow) if height >= elbow[2] else (elbow, wrist)
        return np.asarray(start + (end - start) * (height - start[2]) / (end[2] - start[2]))


@remembered(4)
def wearers_form(body: Body, pose: Stance = STANDING) -> Form:
    """Return the form of `body` as it stands in `pose`.

    Raises `DraftError` for measures that make no figure.
    """
    if not differing_measures(body):
        solid, found = solved(sizes(body), pose)
        return replace(_form(solid, solid, (found, found), even=True), said=heights(body).said)
    left, right = (solved(sizes(one_side(body, side)), pose)[0] for side in SIDES)
    (left, on_left), (right, on_right) = one_middle(left, right, pose), one_middle(right, left, pose)
    return replace(_form(left, right, (on_left, on_right), even=False), said=heights(body).said)


def _form(left: Solid, right: Solid, found: tuple[Readings, Readings], even: bool) -> Form:
    points = _points(left, found[0])
    if not even:
        points |= {f"right {name}": (-x, y, z) for name, (x, y, z) in _points(right, found[1]).items()}
    levels = {f.name: getattr(left.sizes.levels, f.name) for f in fields(left.sizes.levels)}
    return Form(
        left=left, right=right, even=even, levels=levels, points=points, report=_report(left, right, found)
    )


def _report(left: Solid, right: Solid, found: tuple[Readings, Readings]) -> tuple[FormMeasure, ...]:
    def mean(a: float, b: float) -> float:
        return (a + b) / 2

    wanted, other = left.sizes.wanted, right.sizes.wanted
    return tuple(
        FormMeasure(name, mean(wanted[name], other[name]), mean(got, found[1].measures[name]))
        for name, got in found[0].measures.items()
        if name in wanted
    )


def _points(solid: Solid, found: Readings) -> dict[str, Point]:
    s, arm = solid.sizes, solid.arm
    lv, apart = s.levels, s.wanted["bust_point_width"] / 2
    low = crotch_line(solid)
    front = np.array([0.0, -1.0, 0.0])
    bust = tape.touched(solid.bare, (tape.rays(np.array([apart, 0.0, lv.bust]), front[None], 400.0),))[0][0]
    height = armpit(solid)
    along = (height - arm.joint[2]) / arm.down[2]
    inner = solid.trunk.stack.at(np.array([height]))[0]
    pit = np.array([(float(inner[0]) + arm.joint[0] + along * arm.down[0]) / 2, arm.joint[1], height])
    places = {
        "nape": found.ring[-1],
        "throat": found.ring[0],
        "side neck": found.side_neck,
        "shoulder": found.shoulder,
        "armpit": pit,
        "bust point": bust,
        "elbow": arm.elbow,
        "wrist": arm.wrist,
        "crotch": low[low[:, 2].argmin()],
        "front waist": low[0],
        "back waist": low[-1],
    }
    return {name: (float(p[0]), float(p[1]), float(p[2])) for name, p in places.items()}


def _corners(left: Solid, right: Solid, cell: float) -> tuple[Reals, Reals]:
    """The corners of the box that holds the body, the first on whole cells."""
    low, high = np.full(3, np.inf), np.full(3, -np.inf)
    for one in (left, right):
        a, b = one.reach()
        low, high = np.minimum(low, a), np.maximum(high, b)
    wide = max(high[0], -low[0])
    low, high = np.array([-wide, low[1], 0.0]) - ROOM, np.array([wide, high[1], high[2]]) + ROOM
    return np.floor(low / cell) * cell, high


def _run_together(left: Solid, right: Solid, at: Reals) -> Reals:
    """The left half of one body and the right half of another, run together over the middle."""
    share = np.clip(0.5 + at[0] / (2 * SEAM), 0.0, 1.0)
    share = share * share * (3.0 - 2.0 * share)
    found = np.zeros(at.shape[1])
    for one, part in ((left, share), (right, 1.0 - share)):
        here = part > 0
        if here.any():
            found[here] += part[here] * one(at[:, here])
    return found
