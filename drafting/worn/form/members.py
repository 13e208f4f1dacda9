"""Neck, head, arms and feet of the form."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from scipy.interpolate import PchipInterpolator

from drafting.worn.form.dials import Dials, Stance
from drafting.worn.form.shapes import Bone, Cone, Egg, Stack, blended, ended, stacked
from drafting.worn.form.sizes import Sizes
from drafting.worn.form.trunk import ridge_at
from drafting.worn.nouns import Reals

HAND = 0.105
"""Length of the hand / height (`Source.DRILLIS_CONTINI`)."""
FOOT = 0.152
"""Length of the foot / height (`Source.DRILLIS_CONTINI`)."""
UPPER, FOREARM = 0.42, 0.26
"""Where along upper arm and forearm their girths lie."""


@dataclass(frozen=True, eq=False)
class Neck:
    """Ellipses of half breadth, half depth and middle y.

    `girth_at` (3,): the middle of the neck's girth; `lean`: how far the neck leans forward a mm of height.
    """

    stack: Stack
    girth_at: Reals
    lean: float

    def __call__(self, at: Reals) -> Reals:
        a, b, c = self.stack.at(at[2])
        u, v = at[0] / a, (at[1] - c) / b
        reach = np.sqrt(u * u + v * v) + 1e-9
        slope = np.sqrt((u / a) ** 2 + (v / b) ** 2) / reach + 1e-9
        return ended((reach - 1.0) / slope, self.stack.beyond(at[2]))


def neck(s: Sizes, k: Dials) -> Neck:
    lv, u = s.levels, s.unit
    deep = 0.5 * (s.nape - s.throat) * k.neck
    wide = s.side_neck[0] * k.neck
    middle = s.nape - deep
    thick = s.wanted["neck_girth"] * k.scales["neck_girth"] / 2 / np.pi
    base, skull = 0.5 * (lv.nape + lv.throat), lv.chin + 0.30 * (lv.crown - lv.chin)
    up, lean = skull - base, 0.40
    rows = np.array(
        [
            [base - 60 * u, 0.80 * wide, 0.62 * deep, middle + 2 * u],
            [base - 24 * u, 1.00 * wide, 0.93 * deep, middle + 2 * u],
            [base, 0.99 * wide, deep, middle + 1 * u],
            [base + 0.45 * up, 0.97 * thick, 1.02 * thick, middle - lean * 0.45 * up],
            [base + 0.75 * up, 0.95 * thick, 1.00 * thick, middle - lean * 0.72 * up],
            [base + 1.10 * up, 0.90 * thick, 0.90 * thick, middle - lean * 0.85 * up],
        ]
    )
    return Neck(stacked(rows, 8 * u), np.array([0.0, middle - lean * 0.45 * up, base + 0.45 * up]), lean)


@dataclass(frozen=True, eq=False)
class Head:
    """Skull, face and nose."""

    skull: Egg
    face: Egg
    nose: Egg
    unit: float

    def __call__(self, at: Reals) -> Reals:
        found = blended(self.skull(at), self.face(at), 60 * self.unit)
        return blended(found, self.nose(at), 14 * self.unit)


def round_head(s: Sizes, neck_: Neck) -> Head:
    lv, u = s.levels, s.unit
    wide, deep = s.build.half("head_girth"), s.build.depth("head_girth") / 2
    tall = lv.crown - lv.chin
    y = neck_.girth_at[1] - 0.30 * deep
    skull = Egg(np.array([0, y + 0.10 * deep, lv.crown - 0.39 * tall]), np.array([wide, 0.94 * deep, 0.39 * tall]))
    face = Egg(
        np.array([0, y - 0.30 * deep, lv.chin + 0.42 * tall]),
        np.array([0.76 * wide, 0.58 * deep, 0.425 * tall]),
        -0.10,
    )
    nose = Egg(
        np.array([0, y - 0.90 * deep, lv.chin + 0.43 * tall]),
        np.array([0.15 * wide, 0.14 * deep, 0.12 * tall]),
        -0.3,
    )
    return Head(skull, face, nose, u)


@dataclass(frozen=True, eq=False)
class LeftArm:
    """The left arm: joint, elbow, wrist (points), the flesh round its bones, and its `hand`."""

    joint: Reals
    elbow: Reals
    wrist: Reals
    bones: tuple[Bone, Bone]
    hand: tuple[Cone, ...]
    unit: float

    def __call__(self, at: Reals) -> Reals:
        found = self.bare(at)
        at = np.stack([np.abs(at[0]), at[1], at[2]])
        for rod in self.hand:
            found = blended(found, rod(at), 9 * self.unit)
        return found

    def bare(self, at: Reals) -> Reals:
        """The arm without its hand."""
        at = np.stack([np.abs(at[0]), at[1], at[2]])
        upper, lower = self.bones
        return blended(upper(at), lower(at), 4 * self.unit)

    @property
    def down(self) -> Reals:
        """Unit vector from the joint to the elbow."""
        way = self.elbow - self.joint
        return np.asarray(way / np.linalg.norm(way))

    @property
    def on(self) -> Reals:
        """Unit vector from the elbow to the wrist."""
        way = self.wrist - self.elbow
        return np.asarray(way / np.linalg.norm(way))


def pointing(out: float, forward: float) -> Reals:
    """The unit vector downwards, so many degrees out and forward."""
    x, y = np.sin(np.radians(out)), -np.sin(np.radians(forward))
    return np.array([x, y, -np.sqrt(1 - x * x - y * y)])


def left_arm(s: Sizes, k: Dials, pose: Stance) -> LeftArm:
    u, m = s.unit, s.wanted
    thick = {
        n: m[n] * k.scales[n] / 2 / np.pi
        for n in ("upper_arm_girth", "elbow_girth", "forearm_girth", "wrist_girth")
    }
    root = m["upper_arm_girth"] / 2 / np.pi
    down, on = pointing(pose.out + k.out, pose.forward), pointing(pose.out + k.out, pose.forward + pose.bends)
    x, z = s.shoulder[0] + k.shoulder_out, s.shoulder[1]
    joint = np.array([x - 0.20 * root - k.arm_in, ridge_at(s) + k.arm_back, z - (k.root + 0.06) * root])
    upper = m["upper_arm_length"] - 0.9 * root + 0.5 * k.arm_long
    lower = m["arm_length"] - m["upper_arm_length"] + 0.5 * k.arm_long
    elbow = joint + down * upper
    wrist = elbow + on * lower
    points = [
        (joint, k.root * root),
        (joint + down * UPPER * upper, thick["upper_arm_girth"]),
        (elbow, thick["elbow_girth"]),
        (elbow + on * FOREARM * lower, thick["forearm_girth"]),
        (wrist, thick["wrist_girth"]),
    ]
    return LeftArm(joint, elbow, wrist, _bones(points, 2), _hand(s, wrist, on, thick["wrist_girth"]), u)


def _bones(points: list[tuple[Reals, float]], elbow: int) -> tuple[Bone, Bone]:
    """Upper arm and forearm, whose thickness runs on smoothly through the given ones."""
    along = np.concatenate([[0.0], np.cumsum([np.linalg.norm(b - a) for (a, _), (b, _) in pairwise(points)])])
    thick = PchipInterpolator(along, [r for _, r in points])
    ends = (0, elbow), (elbow, len(points) - 1)
    upper, lower = (
        Bone(points[i][0], points[j][0], np.asarray(thick(np.linspace(along[i], along[j], 33)))) for i, j in ends
    )
    return upper, lower


def _rods(points: list[tuple[Reals, float]]) -> tuple[Cone, ...]:
    return tuple(Cone(a, b, (r, t)) for (a, r), (b, t) in pairwise(points))


def _hand(s: Sizes, wrist: Reals, on: Reals, thick: float) -> tuple[Cone, ...]:
    """Palm and fingers as two rods before one another, and a thumb before them."""
    long, wide = HAND * s.levels.crown, s.wanted["hand_girth"] / 2 / np.pi
    ahead = np.cross(np.cross(on, np.array([0.0, -1.0, 0.0])), on)
    ahead /= np.linalg.norm(ahead)
    flat = 0.46 * wide
    side = 0.55 * wide
    rods: list[Cone] = []
    for way in (1.0, -0.8):
        points = [
            (wrist + ahead * way * 0.3 * thick, 0.72 * thick),
            (wrist + on * 0.40 * long + ahead * way * side, flat),
            (wrist + on * 0.92 * long + ahead * way * 0.35 * wide, 0.72 * flat),
        ]
        rods += _rods(points)
    thumb = [
        (wrist + on * 0.15 * long + ahead * 0.5 * wide, 0.8 * flat),
        (wrist + on * 0.50 * long + ahead * 1.25 * wide, 0.75 * flat),
    ]
    return (*rods, *_rods(thumb))


@dataclass(frozen=True, eq=False)
class Foot:
    """The left foot."""

    rods: tuple[Cone, ...]
    unit: float

    def __call__(self, at: Reals) -> Reals:
        at = np.stack([np.abs(at[0]), at[1], at[2]])
        found = self.rods[0](at)
        for rod in self.rods[1:]:
            found = blended(found, rod(at), 26 * self.unit)
        return found


def foot(s: Sizes, legs: Stack) -> Foot:
    u, long = s.unit, FOOT * s.levels.crown
    x, _, y, deep = (float(v[0]) for v in legs.at(np.array([legs.low])))
    heel = y + 0.75 * deep
    front = heel - 0.90 * long
    points = [
        (np.array([x, heel - 0.06 * long, 24 * u]), 22 * u),
        (np.array([x + 5 * u, heel - 0.42 * long, 26 * u]), 26 * u),
        (np.array([x + 9 * u, heel - 0.68 * long, 20 * u]), 21 * u),
        (np.array([x + 10 * u, front, 14 * u]), 14 * u),
    ]
    little = [
        points[1],
        (np.array([x + 24 * u, heel - 0.66 * long, 16 * u]), 16 * u),
        (np.array([x + 24 * u, heel - 0.80 * long, 12 * u]), 11 * u),
    ]
    instep = [
        (np.array([x, y - 0.1 * deep, 70 * u]), 0.62 * deep),
        (np.array([x + 6 * u, heel - 0.55 * long, 30 * u]), 22 * u),
    ]
    return Foot((*_rods(points), *_rods(little), *_rods(instep)), u)


def whole_box(points: Reals, beyond: float) -> tuple[Reals, Reals]:
    """The corners of the box round points (m, 3), widened by `beyond`."""
    return points.min(axis=0) - beyond, points.max(axis=0) + beyond
