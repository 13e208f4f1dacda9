"""The survey ANSUR II (Gordon et al. 2014) under our names, in mm, the measures kept out included."""

from __future__ import annotations

from typing import Any

import pandas as pd

from drafting.body.rules import FLEXED
from tests.shared_data import survey

SIDE_NECK = 15.0
"""mm: the side neck point below the nape (ours)."""


def survey_people() -> Any:
    """Return one row a person: what a maker measures, and what was kept out of every rule."""
    raw = pd.read_csv(survey())
    along = raw.waistbacklength / (raw.cervicaleheight - raw.waistheightomphalion)
    return pd.DataFrame(
        {
            "height": raw.stature,
            "bust_girth": raw.chestcircumference,
            "waist_girth": raw.waistcircumference,
            "hip_girth": raw.buttockcircumference,
            "neck_girth": raw.neckcircumference,
            "neck_base_girth": raw.neckcircumferencebase,
            "back_waist_length": raw.waistbacklength,
            "shoulder_length": raw.shoulderlength,
            "shoulder_drop": (raw.cervicaleheight - raw.acromialheight - SIDE_NECK).clip(lower=12.0),
            "across_back_width": raw.interscyei,
            "across_back_low_width": raw.interscyeii,
            "arm_length": raw.sleeveoutseam,
            "upper_arm_girth": raw.bicepscircumferenceflexed / FLEXED,
            "upper_arm_length": raw.acromionradialelength,
            "wrist_girth": raw.wristcircumference,
            "hand_girth": raw.handcircumference,
            "forearm_girth": raw.forearmcircumferenceflexed,
            "axilla_depth": along * (raw.cervicaleheight - raw.axillaheight),
            "bust_level": along * (raw.cervicaleheight - raw.chestheight),
            "waist_to_hip": (raw.waistheightomphalion - raw.buttockheight).clip(lower=60.0),
            "spine_to_wrist": raw.sleevelengthspinewrist,
            "group": raw.Gender,
        }
    )


def by_figure(people: Any, figure: str) -> Any:
    """Return the survey's women or men."""
    return people[people.group.str.startswith("F" if figure == "womens" else "M")]
