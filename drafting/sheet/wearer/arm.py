"""An arm that hangs from the shoulder bone, seen from the front or the side."""

from __future__ import annotations

import cmath
import math
from dataclasses import dataclass

from drafting.body import Body
from drafting.body.body import Side
from drafting.worn.levels import FigureBuild

HAND = 0.105
"""Length of the hand / height (`Source.DRILLIS_CONTINI`)."""

# Where along the arm each girth lies: from the shoulder bone to the elbow, and on to the wrist.
UPPER, FOREARM, KNUCKLES = 0.42, 0.26, 0.52


@dataclass(frozen=True)
class Arm:
    """An arm drawn along its axis from `top` towards `down` (unit); outward is `down` turned left.

    `elbow`, `wrist`, `tip` are distances along the axis, mm; `widths` holds (distance, width) from
    the upper arm to the knuckles.
    """

    top: complex
    down: complex
    elbow: float
    wrist: float
    tip: float
    widths: tuple[tuple[float, float], ...]

    def at(self, along: float, out: float = 0.0) -> complex:
        """Return the point `along` the axis and `out` mm outward of it."""
        return self.top + self.down * along + self.down * 1j * out

    def width(self, name: str) -> tuple[float, float]:
        """Return where a girth lies along the axis, and the width there."""
        return self.widths[GIRTHS.index(name)]

    def outer(self) -> list[complex]:
        """Return points from under the shoulder down the outside to the finger tips."""
        (u, wu), (e, we), (f, wf), (w, ww), (k, wk) = self.widths
        return [
            self.at(0.22 * u, 0.40 * wu),
            self.at(0.55 * u, 0.50 * wu),
            self.at(u, 0.5 * wu),
            self.at(e, 0.5 * we),
            self.at(f, 0.52 * wf),
            self.at(w, 0.5 * ww),
            self.at(k, 0.5 * wk),
            self.at(self.tip - 0.12 * (self.tip - k), 0.30 * wk),
            self.at(self.tip),
        ]

    def inner(self) -> list[complex]:
        """Return points from the finger tips up the inside to below the armpit."""
        (u, wu), (e, we), (f, wf), (w, ww), (k, wk) = self.widths
        return [
            self.at(self.tip),
            self.at(self.tip - 0.12 * (self.tip - k), -0.30 * wk),
            self.at(k, -0.5 * wk),
            self.at(w, -0.5 * ww),
            self.at(f, -0.48 * wf),
            self.at(e, -0.5 * we),
            self.at(u + 0.25 * (e - u), -0.5 * wu),
        ]


GIRTHS = ("upper_arm_girth", "elbow_girth", "forearm_girth", "wrist_girth", "hand_girth")


def arm(body: Body, form: FigureBuild, side: Side, top: complex, tilt: float, deep: bool = False) -> Arm:
    """Return the arm that hangs from `top`, `tilt` degrees outward; `deep` for its depths.

    Upper arm and arm are as long along the axis as they were measured.
    """
    elbow, wrist = body.hand("upper_arm_length", side), body.hand("arm_length", side)
    elbow = min(max(elbow, 0.4 * wrist), 0.8 * wrist)
    tip = wrist + HAND * body["height"]
    along = (UPPER * elbow, elbow, elbow + FOREARM * (wrist - elbow), wrist, wrist + KNUCKLES * (tip - wrist))
    wide = [form.depth(name) if deep else form.sections[name].width for name in GIRTHS]
    if deep:
        wide[-1] = 0.40 * body["hand_girth"]  # the flat of the hand: ours, by eye
    down = cmath.exp(1j * math.radians(tilt - 90))
    return Arm(top, down, elbow, wrist, tip, tuple(zip(along, wide, strict=True)))
