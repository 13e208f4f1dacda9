"""What is turned until the tape reads on the form what it read on the wearer."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from drafting.ground.frozen import freeze

GIRTHS = (
    "hip_girth",
    "waist_girth",
    "under_bust_girth",
    "bust_girth",
    "high_bust_girth",
    "thigh_girth",
    "lower_thigh_girth",
    "knee_girth",
    "calf_girth",
    "ankle_girth",
    "neck_girth",
    "upper_arm_girth",
    "elbow_girth",
    "forearm_girth",
    "wrist_girth",
)
"""The girths that are read on the surface, each with a scale of its own section."""


@dataclass(frozen=True)
class Stance:
    """How the arms are held: degrees `out` from the side, `forward`, and what the elbow `bends` further."""

    out: float = 30.0
    forward: float = 5.0
    bends: float = 10.0


STANDING = Stance()
HANGING = Stance(out=12.0)

RAISING = (Stance(50.0, 3.0, 6.0), Stance(70.0, 1.0, 3.0), Stance(90.0, 0.0, 0.0))
"""From a little out to level with the shoulders, in steps that cloth follows; the last is `RAISED`."""

RAISED = RAISING[-1]


@dataclass(frozen=True)
class Dials:
    """`scales` of the sections by girth; `neck` and `root` factors, `out` degrees, the rest mm.

    `neck`: of the neck's foot; `across`: half breadth of the trunk half-way down the armhole; `arm_back`,
    `arm_in`: the arm's root to the back and inward; `root`: its thickness / the upper arm's; `out`: the arm
    held further out; `arm_long`: the arm along its axis; `shoulder_out`: the shoulder point along the ridge;
    `lift_out`, `lift_in`, `lift_back`, `lift_front`: the ridge at the shoulder bone, the side neck, the nape
    and the throat; `breasts`: how far they stand out; `square`: how square the crotch; `crotch_up`: where it
    closes; `rounded`: the upper back to the rear.
    """

    scales: Mapping[str, float] = field(default_factory=lambda: dict.fromkeys(GIRTHS, 1.0))
    neck: float = 0.96
    across: float = 0.0
    arm_back: float = 0.0
    arm_in: float = 0.0
    arm_long: float = 0.0
    root: float = 0.95
    out: float = 0.0
    shoulder_out: float = 0.0
    lift_out: float = 0.0
    lift_in: float = 0.0
    lift_back: float = 0.0
    lift_front: float = 0.0
    breasts: float = 0.0
    square: float = 2.2
    crotch_up: float = 0.0
    rounded: float = 0.0

    def __post_init__(self) -> None:
        freeze(self, "scales")
