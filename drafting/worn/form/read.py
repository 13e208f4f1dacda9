"""Every measure of a wearer, read on the surface of the form as a tape takes it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from drafting.ground.frozen import freeze
from drafting.worn.form import tape
from drafting.worn.form.members import FOREARM, UPPER
from drafting.worn.form.skin import onto
from drafting.worn.form.solid import Solid
from drafting.worn.form.tape import Rays, rays
from drafting.worn.form.trunk import ridge_at
from drafting.worn.nouns import Reals

TRUNK_LEVELS = {
    "hip_girth": "hip",
    "waist_girth": "waist",
    "under_bust_girth": "under_bust",
    "bust_girth": "bust",
    "high_bust_girth": "armpit",
}
LEG_LEVELS = {
    "thigh_girth": "thigh",
    "lower_thigh_girth": "lower_thigh",
    "knee_girth": "knee",
    "calf_girth": "calf",
    "ankle_girth": "ankle",
}
ARM_PLACES = {
    "upper_arm_girth": (0, UPPER),
    "elbow_girth": (0, 0.985),
    "forearm_girth": (1, FOREARM),
    "wrist_girth": (1, 1.0),
}
"""On which bone of the arm, and how far along it, a girth is taken."""


@dataclass(frozen=True, eq=False)
class Readings:
    """`measures` in mm by name; `ring` (n, 3) of the neck's foot; `across` the half widths' lines."""

    measures: Mapping[str, float]
    ring: Reals
    side_neck: Reals
    shoulder: Reals

    def __post_init__(self) -> None:
        freeze(self, "measures")


def readings(body: Solid) -> Readings:
    """Return what a tape reads on the form."""
    found = _round_trunk(body) | _round_arm(body)
    ring, path = neck_ring(body), _arm_path(body)
    side = int(ring[:, 0].argmax())
    top = _shoulder_line(body, ring[side])
    found["neck_base_girth"] = 2 * tape.run(ring)
    found["arm_length"] = tape.run(path)
    found["shoulder_length"] = tape.run(top)
    found["shoulder_top"], found["side_neck_height"] = float(top[-1, 2]), float(top[0, 2])
    found["throat_at"], found["nape_at"] = float(ring[0, 2]), float(ring[-1, 2])
    crotch = crotch_line(body)
    found["total_crotch_length"] = tape.run(crotch)
    found["inside_leg_length"] = float(crotch[:, 2].min())
    found |= arm_folds(body)
    found["back_waist_length"] = _back(body, ring)
    return Readings(found, ring, top[0], top[-1])


def _round_trunk(body: Solid) -> dict[str, float]:
    """Girths of trunk, neck and legs."""
    lv = body.sizes.levels
    heights = {name: getattr(lv, level) for name, level in TRUNK_LEVELS.items()}
    asked = [tape.half_fan(tape.trunk_middle(body, z), 400 * body.sizes.unit) for z in heights.values()]
    asked.append(_round_neck(body))
    for level in LEG_LEVELS.values():
        middle = tape.leg_middle(body, getattr(lv, level))
        asked.append(tape.ring_about(middle, np.array([1.0, 0, 0]), np.array([0, 1.0, 0]), 260 * body.sizes.unit))
    found = tape.touched(body.bare, tuple(asked))
    halves = dict(zip(heights, found, strict=False))
    legs = dict(zip(LEG_LEVELS, found[len(heights) + 1 :], strict=True))
    neck = found[len(heights)] - body.neck.girth_at
    neck[:, 1] = np.copysign(np.hypot(neck[:, 1], neck[:, 2]), neck[:, 1])
    halves["neck_girth"] = neck
    girths = {name: tape.girth(tape.mirrored(half)) for name, half in halves.items()}
    return girths | {name: tape.girth(one_leg(ring)) for name, ring in legs.items()}


def _round_neck(body: Solid) -> Rays:
    """Rays across the neck, square to its own slope."""
    turn = np.linspace(-np.pi / 2, np.pi / 2, tape.RAYS)
    lean = body.neck.lean / np.hypot(1.0, body.neck.lean)
    level = np.sqrt(1 - lean * lean)
    way = np.stack([np.cos(turn), level * np.sin(turn), lean * np.sin(turn)], axis=1)
    return rays(body.neck.girth_at, way, 150 * body.sizes.unit)


def one_leg(ring: Reals) -> Reals:
    """A leg's section (n, 2), kept on its own side of the middle."""
    kept: Reals = np.stack([np.maximum(ring[:, 0], 0.0), ring[:, 1]], axis=1)
    return kept


def arm_place(body: Solid, bone: int, share: float) -> tuple[Reals, Reals]:
    """A point on the arm's axis, and the way of its bone."""
    arm = body.arm
    start, end = ((arm.joint, arm.elbow), (arm.elbow, arm.wrist))[bone]
    return start + (end - start) * share, (arm.down, arm.on)[bone]


def _round_arm(body: Solid) -> dict[str, float]:
    asked, frames = [], []
    for bone, share in ARM_PLACES.values():
        middle, way = arm_place(body, bone, share)
        out, back = tape.square_to(way)
        asked.append(tape.ring_about(middle, out, back, 130 * body.sizes.unit))
        frames.append((middle, out, back))
    found = tape.touched(body.arm.bare, tuple(asked))
    return {
        name: tape.girth(np.stack([(ring - m) @ out, (ring - m) @ back], axis=1))
        for name, ring, (m, out, back) in zip(ARM_PLACES, found, frames, strict=True)
    }


def neck_ring(body: Solid, count: int = 49) -> Reals:
    """Half the line round the foot of the neck (n, 3), throat to nape: where neck and trunk meet."""
    s = body.sizes
    turn = np.linspace(-np.pi / 2, np.pi / 2, count)
    low, high = s.levels.throat - 40 * s.unit, s.levels.nape + 30 * s.unit
    z = np.linspace(low, high, 40)[:, None] + 0 * turn
    a, b, c = body.neck.stack.at(z[:, 0])
    x, y = a[:, None] * np.cos(turn), c[:, None] + b[:, None] * np.sin(turn)
    above = body.trunk(np.stack([x, y, z]).reshape(3, -1)).reshape(z.shape)
    row = np.maximum((above > 0).argmax(axis=0), 1)
    each = np.arange(count)
    part = np.clip(above[row - 1, each] / (above[row - 1, each] - above[row, each]), 0.0, 1.0)
    points = [v[row - 1, each] + part * (v[row, each] - v[row - 1, each]) for v in (x, y, z)]
    return onto(np.stack(points, axis=1), body.bare, 12 * s.unit)


def _shoulder_line(body: Solid, start: Reals, count: int = 14) -> Reals:
    """The line on the surface from the side neck to the shoulder bone (n, 3)."""
    s, u = body.sizes, body.sizes.unit
    end = np.array([s.shoulder[0] + body.dials.shoulder_out, ridge_at(s), s.shoulder[1]])
    share = np.linspace(0, 1, count)[1:, None]
    below = start + share * (end - start) - np.array([0, 0, 55 * u])
    found = tape.touched(body, (rays(below, np.tile([0.0, 0.0, 1.0], (count - 1, 1)), 120 * u),))[0]
    return np.concatenate([start[None], found])


def _arm_path(body: Solid) -> Reals:
    """The line from the shoulder bone over elbow to wrist, on the outside of the arm."""
    s = body.sizes
    x = s.shoulder[0] + body.dials.shoulder_out
    up = Rays(
        np.array([[x, ridge_at(s), s.shoulder[1] - 45 * s.unit]]),
        np.array([[0.0, 0, 1]]),
        np.array([110 * s.unit]),
    )
    asked = [up]
    for bone, shares in ((0, np.linspace(0.12, 1.0, 10)), (1, np.linspace(0.1, 1.0, 8))):
        places = [arm_place(body, bone, float(t)) for t in shares]
        out, _ = tape.square_to(places[0][1])
        asked.append(rays(np.array([p for p, _ in places]), np.tile(out, (len(places), 1)), 130 * s.unit))
    return np.concatenate(tape.touched(body, tuple(asked)))


def arm_folds(body: Solid) -> dict[str, float]:
    """The depth of the armpit below the nape, and the widths between the arm folds."""
    return {
        "across_back_width": 2 * _across(body, 1.0),
        "across_front_width": 2 * _across(body, -1.0),
        "axilla_depth": body.sizes.levels.nape - armpit(body),
    }


def crotch_line(body: Solid, count: int = 97) -> Reals:
    """The line in the middle from the front waist between the legs to the back waist (n, 3)."""
    s = body.sizes
    middle = tape.trunk_middle(body, s.levels.waist)
    turn = np.linspace(np.pi, 2 * np.pi, count)
    way = np.stack([0 * turn, np.cos(turn), np.sin(turn)], axis=1)
    return tape.touched(body.bare, (rays(middle, way, 620 * s.unit),))[0]


def _back(body: Solid, ring: Reals) -> float:
    """From the nape down the back to the waist as a tape lies, mm."""
    s = body.sizes
    nape = ring[-1]
    z = np.linspace(nape[2] - 6 * s.unit, s.levels.waist, 25)
    start = np.array([tape.trunk_middle(body, float(h)) for h in z])
    down = tape.touched(body.bare, (rays(start, np.tile([0.0, 1.0, 0.0], (len(z), 1)), 330 * s.unit),))[0]
    return taut(np.concatenate([nape[None], down])[:, 1:])


def taut(line: Reals) -> float:
    """The length of a tape over the outside of a line (n, 2) of y and z, mm."""
    ends = np.array([[line[:, 0].min() - 900.0, line[0, 1]], [line[:, 0].min() - 900.0, line[-1, 1]]])
    every = np.concatenate([line, ends])
    hull = np.sort(tape.hull(every))
    return tape.run(line[hull[hull < len(line)]])


def armpit(body: Solid) -> float:
    """The height of the armpit: the highest air between trunk and arm in the plane of the arm's root.

    Where there is none far down, it is taken to lie lower by twice what the two lie in one another.
    """
    s, arm = body.sizes, body.arm
    u = s.unit
    z = np.linspace(s.levels.armpit - 75 * u, s.shoulder[1] - 40 * u, 60)
    along = (z - arm.joint[2]) / arm.down[2]
    axis = arm.joint[0] + along * arm.down[0]
    part = np.linspace(0.0, 1.0, 36)[:, None]
    x = 0.5 * s.shoulder[0] + part * (axis - 0.5 * s.shoulder[0])
    at = np.stack([x, 0 * x + arm.joint[1], 0 * x + z]).reshape(3, -1)
    air = body(at).reshape(x.shape).max(axis=0)
    open_ = np.nonzero(air > 0)[0]
    if not len(open_):
        return float(z[0] + 2.0 * air[0])
    if open_[-1] == len(z) - 1:
        return float(z[-1])
    i = open_[-1]
    return float(z[i] + (z[i + 1] - z[i]) * air[i] / (air[i] - air[i + 1]))


def _across(body: Solid, way: float) -> float:
    """Half the width on the surface between the arm folds half-way down the armhole, at the back (1) or front."""
    s, arm = body.sizes, body.arm
    z = (s.levels.armpit + s.shoulder[1]) / 2
    x = np.linspace(0.0, s.shoulder[0] + 60 * s.unit, 50)
    start = np.stack([x, 0 * x + arm.joint[1], 0 * x + z], axis=1)
    line = tape.touched(body, (rays(start, np.tile([0.0, way, 0.0], (len(x), 1)), 240 * s.unit),))[0]
    at = line.T.copy()
    apart = body.bare(at) - arm(at)
    over = np.nonzero((apart[:-1] <= 0) & (apart[1:] > 0) & (x[1:] > 0.4 * s.shoulder[0]))[0]
    if not len(over):
        return tape.run(line)
    i = over[0]
    part = apart[i] / (apart[i] - apart[i + 1])
    fold = line[i] + part * (line[i + 1] - line[i])
    return tape.run(np.concatenate([line[: i + 1], fold[None]])[:, :2])
