"""A rough form for tests: ovals for the trunk, cones for neck, arms and legs. Not the kit's own form."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

import numpy as np

from drafting.body import Body
from drafting.draft.frame import Limb
from drafting.worn.contact import DistanceField
from drafting.worn.nouns import Point, Reals

GRID = 10.0


@dataclass(frozen=True, eq=False)
class RoughForm:
    """Ovals at the levels of an even body; everything in mm."""

    body: Body

    @cached_property
    def levels(self) -> dict[str, float]:
        body = self.body
        nape = body["nape_height"] if "nape_height" in body else 0.86 * body["height"]
        waist = nape - body["back_waist_length"]
        hip = waist - body["waist_to_hip"]
        crotch = min(body["inside_leg_length"], hip - 40.0)
        return {
            "nape": nape,
            "side_neck": nape + 22.0,
            "armpit": nape - 185.0,
            "bust": nape - body["scye_depth"] - 10.0,
            "waist": waist,
            "hip": hip,
            "crotch": crotch,
            "knee": body["knee_height"],
        }

    @property
    def shoulder_drop(self) -> float:
        return 45.0

    @cached_property
    def arm(self) -> tuple[Point, Point, Point]:
        half = self.body["across_back_width"] / 2
        top = self.levels["nape"] - self.shoulder_drop
        return (half - 5.0, 15.0, top - 20.0), (half + 70.0, 20.0, top - 300.0), (half + 110.0, -20.0, top - 530.0)

    @cached_property
    def leg(self) -> tuple[Point, Point, Point]:
        x = self.body["hip_girth"] / 2 / np.pi * 0.56
        return (x, 5.0, self.levels["hip"]), (x * 0.98, 5.0, self.levels["knee"]), (x * 0.95, 25.0, 80.0)

    @cached_property
    def _ovals(self) -> Reals:
        """Rows: height, half breadth, half depth."""
        body, lv = self.body, self.levels
        rows = [
            (lv["crotch"] + 5.0, body["hip_girth"] * 0.9),
            (lv["hip"], body["hip_girth"]),
            (lv["waist"], body["waist_girth"]),
            (lv["bust"], body["bust_girth"]),
            (lv["armpit"], body["bust_girth"] * 0.96),
        ]
        ovals = [(z, 1.18 * g / 2 / np.pi, 0.8 * g / 2 / np.pi) for z, g in rows]
        half = body["across_back_width"] / 2
        ovals += [
            (lv["nape"] - 55.0, half - 20.0, 75.0),
            (lv["nape"] - 10.0, 85.0, 62.0),
            (lv["nape"] + 15.0, 60.0, 60.0),
        ]
        ovals += [(lv["nape"] + 140.0, 58.0, 58.0)]
        return np.array(ovals)

    def contour(self, height: float, limb: Limb = Limb.TRUNK) -> Reals:
        rows = self._ovals
        a, b = (np.interp(height, rows[:, 0], rows[:, i]) for i in (1, 2))
        turn = np.linspace(0.0, 2 * np.pi, 97)[:-1]
        return np.column_stack([a * np.cos(turn), b * np.sin(turn)])

    @cached_property
    def distance(self) -> DistanceField:
        low, high = np.array([0.0, -400.0, 0.0]), np.array([520.0, 400.0, self.levels["nape"] + 200.0])
        counts = np.ceil((high - low) / GRID).astype(int) + 1
        x, y, z = np.meshgrid(*(low[i] + GRID * np.arange(counts[i]) for i in range(3)), indexing="ij")
        values = np.minimum(
            self._trunk(x, y, z),
            np.minimum(
                self._cones(x, y, z, self.arm, (52.0, 42.0, 28.0)),
                self._cones(x, y, z, self.leg, (85.0, 58.0, 38.0)),
            ),
        )
        return DistanceField(values, (0.0, -400.0, 0.0), GRID, mirror=True)

    def _trunk(self, x: Reals, y: Reals, z: Reals) -> Reals:
        rows = self._ovals
        a, b = (np.interp(z, rows[:, 0], rows[:, i]) for i in (1, 2))
        reach = np.hypot(x / a, y / b)
        flat = (reach - 1.0) * np.minimum(a, b)
        over = np.maximum(rows[0, 0] - z, z - rows[-1, 0])
        return np.where(over > 0, np.hypot(np.maximum(flat, 0.0), over), flat)

    def _cones(self, x: Reals, y: Reals, z: Reals, axis: tuple[Point, ...], radii: tuple[float, ...]) -> Reals:
        found = np.full(x.shape, 1e9)
        for (p, q), (r, s) in zip(pairwise(axis), pairwise(radii), strict=True):
            p_, step = np.array(p), np.array(q) - np.array(p)
            share = ((x - p[0]) * step[0] + (y - p[1]) * step[1] + (z - p[2]) * step[2]) / (step @ step)
            share = np.clip(share, 0.0, 1.0)
            gap = np.sqrt(sum((c - p_[i] - share * step[i]) ** 2 for i, c in enumerate((x, y, z))))
            found = np.minimum(found, gap - (r + share * (s - r)))
        return found
