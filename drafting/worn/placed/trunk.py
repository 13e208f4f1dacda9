"""Round the trunk: sections of the form drawn taut, as tables of height and way round."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np
from scipy.spatial import ConvexHull

from drafting.draft.frame import Limb
from drafting.worn.form.form import Form
from drafting.worn.nouns import Reals
from drafting.worn.placed.outside import MARGIN

STEP = 20.0
"""mm between the heights at which sections are taken (ours)."""

ROUND = 61
"""Places round a half section (ours)."""

GROWN = 22.0
"""mm: how far outside the form a garment starts (ours, from trials: nothing starts caught)."""

FLARE = 0.14
"""Sine of the angle at which hanging cloth starts to lean out (ours: 8 degrees)."""


@dataclass(frozen=True)
class Wraps:
    """The wearer's trunk, taut, `grown` mm outside: one table for each hand."""

    form: Form
    grown: float = GROWN

    @cached_property
    def heights(self) -> Reals:
        """Heights of the sections, mm, rising: from just over the crotch to the side of the neck."""
        low, high = self.form.levels["crotch"] + STEP, self.form.levels["side_neck"]
        return np.linspace(low, high, max(3, int((high - low) / STEP)))

    @cached_property
    def widening(self) -> dict[float, Reals]:
        """For each hand (1 left, -1 right): (heights, ROUND, 2) points from the front middle to the back.

        Below the waist nothing goes in again: cloth hangs from what stands out most.
        """
        contours = [self.form.contour(float(z)) for z in self.heights]
        waist = self.form.levels["waist"]
        over: list[Reals] = []
        for at, z in enumerate(self.heights):
            above = [c for c, h in zip(contours[at:], self.heights[at:], strict=True) if h <= waist + STEP]
            over.append(np.vstack([contours[at], *above]) if z < waist else contours[at])
        return {hand: np.stack([half_round(c * [hand, 1.0], self.grown) for c in over]) for hand in (1.0, -1.0)}

    def around(self, z: Reals, way: Reals, hand: Reals) -> Reals:
        """Return points at height z, `way` round (0 front, 1 back) on each hand; below the floor, out on it."""
        flat = np.zeros((len(z), 2))
        for side, table in self.widening.items():
            here = hand == side
            flat[here] = _read(table, self.heights, z[here], way[here]) * [side, 1.0]
        under = np.maximum(MARGIN - z, 0.0)
        flat += (under / np.maximum(np.linalg.norm(flat, axis=1), 1.0))[:, None] * flat
        return np.column_stack([flat, np.maximum(z, MARGIN)])

    def hanging(self, top: float, down: Reals, way: Reals, hand: Reals) -> Reals:
        """Return points `down` mm below the height `top` along cloth that hangs over the body, a little out."""
        found = np.zeros((len(down), 3))
        drops = np.arange(0.0, float(down.max(initial=0.0)) + 2 * STEP, STEP)
        for side in (1.0, -1.0):
            here = hand == side
            if here.any():
                run = self._falls(top - drops, side)
                along = np.concatenate(
                    [np.zeros((1, ROUND)), np.cumsum(np.linalg.norm(np.diff(run, axis=0), axis=2), axis=0)]
                )
                found[here] = _down(run, along, down[here], way[here]) * [side, 1.0, 1.0]
        return found

    def _falls(self, heights: Reals, side: float) -> Reals:
        """Return the lines down which cloth falls from the first height, never going in: (heights, ROUND, 3).

        What falls from above the shoulder joint falls over the arms. What is longer than to the floor lies on it,
        outwards.
        """
        low, (joint, _, wrist) = float(self.heights[0]), self.form.arm
        over_arms = heights[0] > joint[2]
        seen: list[Reals] = []
        rows = []
        for z in heights:
            if z > low or not seen:
                seen.append(self.form.contour(max(float(z), low)) * [side, 1.0])
            if over_arms and wrist[2] < z < joint[2]:
                seen.append(self.form.contour(float(z), Limb.ARM))
            over = max(float(z), MARGIN)
            out = self.grown + FLARE * (float(heights[0]) - over) + (over - float(z))
            ring = half_round(np.vstack(seen), out)
            rows.append(np.column_stack([ring, np.full(ROUND, over)]))
        return np.stack(rows)


def _down(run: Reals, along: Reals, down: Reals, way: Reals) -> Reals:
    """Return the points so far down the falling lines on whose way round they lie."""
    col = np.clip(way, 0.0, 1.0) * (ROUND - 1.000001)
    j = col.astype(int)
    found = np.zeros((len(down), 3))
    for beside, share in ((j, 1 - (col - j)), (j + 1, col - j)):
        for line in np.unique(beside):
            at = beside == line
            for axis in range(3):
                found[at, axis] += share[at] * np.interp(down[at], along[:, line], run[:, line, axis])
    return found


def half_round(contour: Reals, grown: float) -> Reals:
    """Return a section drawn taut and grown, its half x >= 0 from the front middle to the back: (ROUND, 2)."""
    hull = contour[ConvexHull(contour).vertices]
    middle = np.array([0.0, (hull[:, 1].min() + hull[:, 1].max()) / 2])
    out = hull - middle
    hull = middle + out * (1 + grown / np.linalg.norm(out, axis=1))[:, None]
    angles = np.arctan2(hull[:, 0], -(hull[:, 1] - middle[1]))  # 0 in front, pi behind, on x >= 0
    kept = hull[(hull[:, 0] > 0)]
    kept = kept[np.argsort(angles[hull[:, 0] > 0])]
    ends = np.array([[0.0, hull[:, 1].min()], [0.0, hull[:, 1].max()]])
    line = np.vstack([ends[:1], kept, ends[1:]])
    along = np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.diff(line, axis=0), axis=1))])
    wanted = np.linspace(0.0, along[-1], ROUND)
    return np.column_stack([np.interp(wanted, along, line[:, i]) for i in (0, 1)])


def _read(table: Reals, heights: Reals, z: Reals, way: Reals) -> Reals:
    """Return points read from a table between its heights and places round."""
    row = np.clip((z - heights[0]) / (heights[1] - heights[0]), 0.0, len(heights) - 1.000001)
    col = np.clip(way, 0.0, 1.0) * (ROUND - 1.000001)
    i, j = row.astype(int), col.astype(int)
    u, v = (row - i)[:, None], (col - j)[:, None]
    low = table[i, j] * (1 - v) + table[i, j + 1] * v
    high = table[i + 1, j] * (1 - v) + table[i + 1, j + 1] * v
    found: Reals = low * (1 - u) + high * u
    return found
