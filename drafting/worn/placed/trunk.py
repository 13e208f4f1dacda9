"""Round the trunk: sections of the form drawn taut, as tables of height and way round."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np
from scipy.spatial import ConvexHull

from drafting.worn.form.form import Form
from drafting.worn.nouns import Reals

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
        """Return points at height z, `way` round (0 front, 1 back) on each hand."""
        flat = np.zeros((len(z), 2))
        for side, table in self.widening.items():
            here = hand == side
            flat[here] = _read(table, self.heights, z[here], way[here]) * [side, 1.0]
        return np.column_stack([flat, z])

    def hanging(self, top: Reals, down: Reals, way: Reals, hand: Reals) -> Reals:
        """Return points `down` mm below the height `top` along cloth that hangs out a little."""
        z = top - down * np.sqrt(1 - FLARE**2)
        points = self.around(z, way, hand)
        centre = np.array([0.0, float(self.widening[1.0][:, :, 1].mean())])
        out = points[:, :2] - centre
        out /= np.maximum(np.linalg.norm(out, axis=1), 1e-9)[:, None]
        points[:, :2] += out * (down * FLARE)[:, None]
        return points


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
