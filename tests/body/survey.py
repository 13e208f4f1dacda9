"""The survey ANSUR II (Gordon et al. 2014) under our names, in mm, the measures kept out included."""

from __future__ import annotations

from typing import Any

import pandas as pd

from drafting.body.rules import FLEXED
from tests.shared_data import survey

SIDE_NECK = 15.0
"""mm: the side neck point below the nape (ours)."""

COLUMNS = {
    "height": "stature",
    "nape_height": "cervicaleheight",
    "bust_girth": "chestcircumference",
    "waist_girth": "waistcircumference",
    "hip_girth": "buttockcircumference",
    "neck_girth": "neckcircumference",
    "neck_base_girth": "neckcircumferencebase",
    "back_waist_length": "waistbacklength",
    "shoulder_length": "shoulderlength",
    "across_back_width": "interscyei",
    "across_back_low_width": "interscyeii",
    "arm_length": "sleeveoutseam",
    "upper_arm_length": "acromionradialelength",
    "forearm_girth": "forearmcircumferenceflexed",
    "wrist_girth": "wristcircumference",
    "hand_girth": "handcircumference",
    "spine_to_wrist": "sleevelengthspinewrist",
    "outside_leg_length": "waistheightomphalion",
    "inside_leg_length": "crotchheight",
    "total_crotch_length": "crotchlengthomphalion",
    "back_crotch_length": "crotchlengthposterioromphalion",
    "thigh_girth": "thighcircumference",
    "lower_thigh_girth": "lowerthighcircumference",
    "calf_girth": "calfcircumference",
    "ankle_girth": "anklecircumference",
    "heel_girth": "heelanklecircumference",
    "knee_height": "kneeheightmidpatella",
    "waist_width": "waistbreadth",
    "waist_depth": "waistdepth",
    "hip_width": "hipbreadth",
    "hip_depth": "buttockdepth",
}
"""What the survey measured as it stands; its waist is at the navel."""


def survey_people() -> Any:
    """Return one row a person: what a maker measures, and what was kept out of every rule."""
    raw = pd.read_csv(survey(), dtype={"body": str}).set_index("body")
    along = raw.waistbacklength / (raw.cervicaleheight - raw.waistheightomphalion)
    return pd.DataFrame(
        {
            **{name: raw[column].astype(float) for name, column in COLUMNS.items()},
            "shoulder_drop": raw.cervicaleheight - raw.acromialheight - SIDE_NECK,
            "upper_arm_girth": raw.bicepscircumferenceflexed / FLEXED,
            "axilla_depth": along * (raw.cervicaleheight - raw.axillaheight),
            "bust_level": along * (raw.cervicaleheight - raw.chestheight),
            "waist_to_hip": raw.waistheightomphalion - raw.buttockheight,
            "figure": raw.Gender.map({"Female": "womens", "Male": "mens"}),
        }
    )


def as_taken(people: Any) -> Any:
    """Return the people with no shoulder that rises and no hip on the waist, as a tape takes them."""
    drop, to_hip = people.shoulder_drop.clip(lower=12.0), people.waist_to_hip.clip(lower=60.0)
    return people.assign(shoulder_drop=drop, waist_to_hip=to_hip)


def by_figure(people: Any, figure: str) -> Any:
    """Return the women or the men among them."""
    return people[people.figure == figure]
