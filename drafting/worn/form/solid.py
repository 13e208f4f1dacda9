"""The body as one smooth solid: trunk with legs, neck, head, arms and feet blended."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from drafting.worn.form.dials import Dials, Stance
from drafting.worn.form.members import Foot, Head, LeftArm, Neck, foot, left_arm, neck, round_head, whole_box
from drafting.worn.form.shapes import blended
from drafting.worn.form.sizes import Sizes
from drafting.worn.form.trunk import Trunk, trunk
from drafting.worn.nouns import Reals

NEAR = 110.0
"""mm round a member's points within which it is asked for."""


@dataclass(frozen=True, eq=False)
class Solid:
    """An even body, left half and its mirror image. Points are (3, n) mm, distances (n,), negative inside."""

    sizes: Sizes
    dials: Dials
    trunk: Trunk
    neck: Neck
    head: Head
    arm: LeftArm
    foot: Foot

    def bare(self, at: Reals) -> Reals:
        """Distance to trunk, legs and neck: what a tape round the trunk touches."""
        s = self.sizes
        found = self.trunk(at)
        here = at[2] > s.levels.armpit
        if here.any():
            found[here] = blended(found[here], self.neck(at[:, here]), 22 * s.unit)
        return found

    def __call__(self, at: Reals) -> Reals:
        """Distance to the whole body."""
        u, lv = self.sizes.unit, self.sizes.levels
        found = self.bare(at)
        self._arms(found, at)
        high = (at[2] > lv.nape - 20 * u, 20 * u)
        low = (at[2] < 190 * u, 30 * u)
        for shape, (here, over) in ((self.head, high), (self.foot, low)):
            if here.any():
                found[here] = blended(found[here], shape(at[:, here]), over)
        return found

    def _arms(self, found: Reals, at: Reals) -> None:
        """Join the arms: in a wide round over the shoulder, in a narrow one under the arm."""
        box, s = self._arm_box(), self.sizes
        x = np.abs(at[0])
        here = (x > box[0][0]) & (x < box[1][0]) & (at[1] > box[0][1]) & (at[1] < box[1][1])
        here &= (at[2] > box[0][2]) & (at[2] < box[1][2])
        if here.any():
            up = np.clip((at[2][here] - s.levels.armpit) / (s.shoulder[1] - s.levels.armpit), 0.0, 1.0)
            over = s.unit * (16.0 + 64.0 * up * up)
            found[here] = blended(found[here], self.arm(at[:, here]), over)

    def reach(self) -> tuple[Reals, Reals]:
        """The corners of a box that holds the body."""
        ends = [rod.end for rod in (*self.arm.hand, *self.foot.rods)]
        tall = [
            np.array([0.0, y, self.sizes.levels.crown])
            for y in (self.head.nose.middle[1], self.head.skull.middle[1])
        ]
        _, front, back, _ = self.trunk.stack.table
        deep = [np.array([0.0, front.min() - self.dials.breasts, 0.0]), np.array([0.0, back.max(), 0.0])]
        return whole_box(np.array([*ends, *tall, *deep]), 0.0)

    def _arm_box(self) -> tuple[Reals, Reals]:
        ends = [rod.end for rod in self.arm.hand]
        return whole_box(np.array([self.arm.joint, self.arm.elbow, self.arm.wrist, *ends]), NEAR)


def solid(s: Sizes, k: Dials, pose: Stance) -> Solid:
    """The body as the knobs stand."""
    body, throat = trunk(s, k), neck(s, k)
    return Solid(
        sizes=s,
        dials=k,
        trunk=body,
        neck=throat,
        head=round_head(s, throat),
        arm=left_arm(s, k, pose),
        foot=foot(s, body.legs),
    )
