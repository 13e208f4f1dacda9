"""The numbers that a form is begun from: levels, the breadth and depth of each section, where it lies.

Breadth and depth come from the survey, in proportion to the girth; the girth itself is read off the
finished surface and made right there (`solved`).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np

from drafting.body import Body
from drafting.body.dimensions import DIMENSIONS
from drafting.ground.frozen import freeze
from drafting.worn.levels import CHEST_DEPTH, FigureBuild, Levels, figure_build
from drafting.worn.section import Section, section_deep


@dataclass(frozen=True)
class Slice:
    """A section of the trunk: half `breadth`, `front` (y, negative) and `back`, all mm; `power` how square."""

    breadth: float
    front: float
    back: float
    power: float

    @property
    def middle(self) -> float:
        return (self.front + self.back) / 2

    def moved(self, back: float) -> Slice:
        """The section moved to the back, mm."""
        return replace(self, front=self.front + back, back=self.back + back)


@dataclass(frozen=True)
class Sizes:
    """What the form of an even body is made to: `wanted` measures in mm, `levels`, and the sections begun from.

    `unit` is 1 on an adult. `neck_half` is half the breadth of the neck's foot; `side_neck` and `shoulder`
    (x, z); `nape`, `throat`, `neck_side` the y of those points; `full` says how far the bust is breasts
    (1) or a chest (0); `legs` rows of height, middle and half breadth from the thigh down.
    """

    wanted: Mapping[str, float]
    levels: Levels
    unit: float
    build: FigureBuild
    slices: Mapping[str, Slice]
    side_neck: tuple[float, float]
    shoulder: tuple[float, float]
    nape: float
    throat: float
    neck_side: float
    full: float
    legs: tuple[tuple[float, float, float], ...]

    def __post_init__(self) -> None:
        freeze(self, "wanted", "slices")


def sizes(body: Body) -> Sizes:
    """Return the numbers for `body`, both hands alike. Raises `DraftError` where levels are out of order."""
    build = figure_build(body)
    lv, u = build.levels, build.unit
    wanted = {name: body[name] for name in DIMENSIONS if name in body}
    full = _full(body)
    if not body.measured("under_bust_girth"):
        wanted["under_bust_girth"] = _under(wanted, lv, full)
    if not body.measured("inside_leg_length"):
        wanted["inside_leg_length"] = lv.crotch
    slices = _slices(build, wanted["under_bust_girth"])
    foot = build.sections["neck_base_girth"]
    nape = slices["high_bust_girth"].back - 44 * u
    xn = foot.width / 2
    length, drop = wanted["shoulder_length"], min(wanted["shoulder_drop"], 0.9 * wanted["shoulder_length"])
    return Sizes(
        wanted=wanted,
        levels=lv,
        unit=u,
        build=build,
        slices=slices,
        side_neck=(xn, lv.side_neck),
        shoulder=(xn + float(np.sqrt(length**2 - drop**2)), lv.side_neck - drop),
        nape=nape,
        throat=nape - 0.95 * foot.depth,
        neck_side=nape - 0.46 * foot.depth,
        full=full,
        legs=_legs(build, slices["hip_girth"]),
    )


def _full(body: Body) -> float:
    """How far a bust is breasts: from -1 to 5 % of the high bust over it; 0 by men's charts.

    A high bust that nobody measured is a guess: where the waist nears the hip (0.85 to 0.95 of it), or
    on a child, the fullness is taken for a chest. All ours.
    """
    if body.figure == "mens":
        return 0.0
    over = body["bust_girth"] / body["high_bust_girth"] - 1.0
    found = _eased((over + 0.01) / 0.06)
    if body.measured("high_bust_girth") or body.figure:
        return found
    grown = _eased((body["height"] - 1350.0) / 100.0)
    return found * grown * (1.0 - _eased((body["waist_girth"] / body["hip_girth"] - 0.85) / 0.10))


def _eased(t: float) -> float:
    t = float(np.clip(t, 0.0, 1.0))
    return t * t * (3.0 - 2.0 * t)


def _under(wanted: Mapping[str, float], lv: Levels, full: float) -> float:
    """The girth under a chest, mm: without breasts the trunk runs on evenly from chest to waist (ours)."""
    share = (lv.bust - lv.under_bust) / (lv.bust - lv.waist)
    even = wanted["bust_girth"] + share * (wanted["waist_girth"] - wanted["bust_girth"])
    return full * wanted["under_bust_girth"] + (1.0 - full) * even


def _slices(build: FigureBuild, under: float) -> dict[str, Slice]:
    u = build.unit
    of = {name: build.sections[name] for name in ("high_bust_girth", "waist_girth", "hip_girth")}
    of["under_bust_girth"] = section_deep(under, CHEST_DEPTH["under_bust_girth"] * under)
    high, waist, hip = (of[name].depth for name in ("high_bust_girth", "waist_girth", "hip_girth"))
    blades = 0.5 * high + 6 * u
    hollow = blades - 26 * u
    backs = {
        "high_bust_girth": blades,
        "under_bust_girth": blades - 13 * u,
        "waist_girth": hollow,
        "hip_girth": hollow + 10 * u + 0.62 * max(hip - waist, 0.0),
    }
    return {name: _slice(of[name], backs[name]) for name in backs}


def _slice(one: Section, back: float) -> Slice:
    return Slice(one.width / 2, back - one.depth, back, one.power)


def _legs(build: FigureBuild, hip: Slice) -> tuple[tuple[float, float, float], ...]:
    """Return (height, middle, half breadth) at thigh, lower thigh, knee, calf and ankle."""
    lv, u = build.levels, build.unit
    gap = 7 * u
    thigh = min(build.half("thigh_girth"), (0.985 * hip.breadth - gap) / 2)
    top = gap + thigh
    foot = min(0.80 * top, 52 * u + 0.33 * thigh)
    knee = max(build.half("knee_girth") + gap, 0.55 * top + 0.45 * foot)
    rows = [(lv.thigh, top, thigh)]
    low = build.half("lower_thigh_girth")
    rows.append((lv.lower_thigh, max(top + 0.72 * (knee - top), low + gap), low))
    rows.append((lv.knee, knee, build.half("knee_girth")))
    calf = build.half("calf_girth")
    rows.append((lv.calf, max(foot + 0.5 * (knee - foot), calf + gap), calf))
    rows.append((lv.ankle, foot, build.half("ankle_girth")))
    return tuple(rows)
