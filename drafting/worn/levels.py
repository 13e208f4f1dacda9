"""Where each level of the body lies above the floor, and its section there.

The trunk hangs from the nape, the leg stands on the floor. Every length that was measured (or
estimated) is used as it is, straight down; `body.heights` settles what contradicts. The hip level keeps at
least 2 % of the height above the crotch.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, fields
from itertools import pairwise

from drafting.body import Body, bust_level
from drafting.body.depths import surveyed
from drafting.body.estimates import estimate_scale
from drafting.body.heights import heights
from drafting.body.rules import NAPE_TO_SIDE_NECK
from drafting.ground.frozen import freeze
from drafting.worn.section import LIMB, Section, section, section_deep, section_like

ADULT = 1710.0
"""mm: the height at which the drawing's own millimetres hold; other figures are drawn in proportion."""

# Width of limbs, neck and head as a share of girth: ours, by eye. The trunk's are `_trunk`'s.
SHARES = {
    "head_girth": (0.272, LIMB),
    "neck_girth": (0.315, LIMB),
    "neck_base_girth": (0.34, LIMB),
    "thigh_girth": (0.285, LIMB),
    "lower_thigh_girth": (0.295, LIMB),
    "knee_girth": (0.298, LIMB),
    "calf_girth": (0.300, LIMB),
    "ankle_girth": (0.300, LIMB),
    "heel_girth": (0.200, LIMB),
    "upper_arm_girth": (0.300, LIMB),
    "elbow_girth": (0.285, LIMB),
    "forearm_girth": (0.300, LIMB),
    "wrist_girth": (0.290, LIMB),
    "hand_girth": (0.250, LIMB),
}

CHEST_DEPTH = {"high_bust_girth": 0.236, "under_bust_girth": 0.245}
"""Depth / girth above and below the breasts (ours, on the chest depths of `Source.ANSUR_II`)."""

HEAD_GIRTH = 0.328
"""Head girth / height of an adult where it was not measured, from memory (56 cm on 171 cm)."""

HEAD_SHRINKS = 0.35
"""Power of the height by which a head that was not measured grows (ours: heads vary little)."""


BUST_BELOW = 0.022
"""Of the height: how far the fullest bust lies below the armpits at least (ours)."""


@dataclass(frozen=True, slots=True)
class Levels:
    """Heights above the floor, mm, from the crown down."""

    crown: float
    chin: float
    nape: float
    side_neck: float
    throat: float
    armpit: float
    scye: float
    bust: float
    under_bust: float
    waist: float
    hip: float
    crotch: float
    thigh: float
    lower_thigh: float
    knee: float
    calf: float
    ankle: float

    def falling(self) -> bool:
        """Return whether the levels that bound the parts lie in order."""
        order = [getattr(self, f.name) for f in fields(self) if f.name not in ("chin", "scye")]
        return all(a > b for a, b in pairwise(order))


@dataclass(frozen=True)
class FigureBuild:
    """What the drawing is made from: the levels and a section for each girth; `unit` is 1 on an adult."""

    levels: Levels
    sections: Mapping[str, Section]
    unit: float

    def __post_init__(self) -> None:
        freeze(self, "sections")

    def half(self, name: str) -> float:
        """Half the width of a section, mm."""
        return self.sections[name].width / 2

    def depth(self, name: str) -> float:
        return self.sections[name].depth


def figure_build(body: Body) -> FigureBuild:
    """Return the levels and sections of `body` (mm)."""
    unit = body["height"] / ADULT
    girths = {name: body[name] for name in SHARES if name in body}
    girths.setdefault("head_girth", HEAD_GIRTH * ADULT * unit**HEAD_SHRINKS)
    sections = {name: section(g, *SHARES[name]) for name, g in girths.items()}
    return FigureBuild(_levels(body, girths["head_girth"], unit), sections | _trunk(body), unit)


def _trunk(body: Body) -> dict[str, Section]:
    """The trunk's sections: as deep as the survey leads one to expect, and as far round as was measured."""
    scale = estimate_scale(body["height"])
    found = {name: section_deep(body[name], share * body[name]) for name, share in CHEST_DEPTH.items()}
    bust, high = body["bust_girth"], found["high_bust_girth"].depth
    found["bust_girth"] = section_deep(bust, min(max(surveyed(body, "chest depth", scale), high), 0.33 * bust))
    for place in ("waist", "hip"):
        wide, deep = (surveyed(body, f"{place} {way}", scale) for way in ("breadth", "depth"))
        found[f"{place}_girth"] = section_like(body[f"{place}_girth"], wide, deep)
    return found


def _levels(body: Body, head_girth: float, unit: float) -> Levels:
    height, settled = body["height"], heights(body)
    nape, waist = settled.nape, settled.waist
    crotch = settled.crotch
    hip = max(waist - body["waist_to_hip"], crotch + 0.02 * height)
    armpit = nape - body["axilla_depth"]
    bust = min(nape - bust_level(body), armpit - BUST_BELOW * height)
    knee = min(body["knee_height"], 0.85 * crotch)
    return Levels(
        crown=height,
        chin=max(height - 0.385 * head_girth, nape + 12 * unit),
        nape=nape,
        side_neck=nape - NAPE_TO_SIDE_NECK * unit,
        throat=nape - 66 * unit,
        armpit=armpit,
        scye=nape - body["scye_depth"],
        bust=bust,
        under_bust=max(bust - 98 * unit, waist + 0.35 * (bust - waist)),
        waist=waist,
        hip=hip,
        crotch=crotch,
        thigh=crotch - 22 * unit,
        lower_thigh=knee + 0.30 * (crotch - knee),
        knee=knee,
        calf=0.71 * knee,
        ankle=0.21 * knee,
    )
