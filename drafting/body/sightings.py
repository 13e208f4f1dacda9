"""What a measure that was taken tells of the survey's measures: its landmarks are not always ours.

The survey's waist is at the navel. A natural waist lies higher: its lengths are moved to the navel's
before they are compared, and its girth, which the survey has nothing like, is not.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from drafting.body.leg_rules import CROTCH_NATURAL, SITTING
from drafting.body.rules import FLEXED, NATURAL_BACK, NATURAL_RISE, TAPE_UNDER_AXILLA

OBSERVER = 1.0
"""mm: what a tape is at least unsure by (ours: sets that contradict each other by less stay solvable)."""

TAPED_SCYE = 2.5
"""mm: ours, half of the 45-50 mm that a tape under the arm lies below the armpit fold."""

FROM_HIGH_BUST = 35.0
"""mm: how far a bust may be off that was guessed from a high bust (the rule's own sd)."""

SEATED_RISE = 8.0
"""mm: ours, how far the flesh of who sits may be off the fiftieth of the hip that is taken for it."""

AS_TAKEN = """
    height nape_height neck_girth neck_base_girth bust_girth hip_girth shoulder_length shoulder_drop
    across_back_width across_back_low_width axilla_depth forearm_girth wrist_girth hand_girth arm_length
    upper_arm_length inside_leg_length thigh_girth lower_thigh_girth calf_girth ankle_girth heel_girth
    knee_height
"""
"""Measures that survey and maker take alike."""


@dataclass(frozen=True)
class Sighting:
    """`factor` x a taken measure + `share` x another is, but for `sd` mm, the sum of survey `terms`."""

    name: str
    terms: tuple[tuple[float, str], ...]
    factor: float = 1.0
    other: tuple[tuple[float, str], ...] = ()
    less: float = 0.0
    sd: float = OBSERVER

    def of(self, known: Mapping[str, float]) -> float:
        """Return the value in mm from the taken measures in `known`."""
        beside = sum(share * known[measure] for share, measure in self.other)
        return self.factor * known[self.name] + beside - self.less


def sightings(measured: frozenset[str], natural: bool) -> tuple[Sighting, ...]:
    """Return what the `measured` names tell, in a fixed order; what the survey does not know tells nothing."""
    step = NATURAL_RISE * natural
    found = [Sighting(name, ((1.0, name),)) for name in AS_TAKEN.split() if name in measured]
    if "bust_girth" not in measured:
        found.append(Sighting("bust_girth", ((1.0, "bust_girth"),), sd=FROM_HIGH_BUST))
    if not natural:
        found.append(Sighting("waist_girth", ((1.0, "waist_girth"),)))
    found += [_moved(name, up * step) for name, up in RAISED.items() if name in measured]
    if "back_waist_length" in measured:
        back = 1 / (1 - NATURAL_BACK * natural)
        straight = ((-back, "rounding"),)
        found.append(Sighting("back_waist_length", ((1.0, "back_waist_length"),), back, straight))
    if "upper_arm_girth" in measured:
        found.append(Sighting("upper_arm_girth", ((1.0, "flexed_arm"),), FLEXED))
    if "scye_depth" in measured and "axilla_depth" not in measured:
        found.append(Sighting("scye_depth", ((1.0, "axilla_depth"),), less=TAPE_UNDER_AXILLA, sd=TAPED_SCYE))
    if "body_rise" in measured and not measured.issuperset(LEG):
        rise = ((1.0, "outside_leg_length"), (-1.0, "inside_leg_length"))
        found.append(
            Sighting("body_rise", rise, other=((-step, "height"), (-SITTING, "hip_girth")), sd=SEATED_RISE)
        )
    return tuple(found)


LEG = ("outside_leg_length", "inside_leg_length")

RAISED = {
    "waist_to_hip": 1.0,
    "outside_leg_length": 1.0,
    "total_crotch_length": CROTCH_NATURAL,
    "back_crotch_length": CROTCH_NATURAL / 2,
}
"""By how many times the step from navel to natural waist each is longer (the crotch's from memory, half
of it behind)."""


def _moved(name: str, share: float) -> Sighting:
    return Sighting(name, ((1.0, name),), other=((-share, "height"),) if share else ())
