"""The rules for hip and leg measures, against least squares on the surveys they were fitted to.

People drawn with the survey's means and correlations (tests/drawn_bodies.py) stand in for its
people, as least squares sees no more; `-m population` refits on the measured ones.
"""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from drafting.body import wearer
from tests.body.people import DRAWN, MEASURED, fitted

LEAST = ("height", "bust_girth", "waist_girth", "hip_girth")

# What is estimated, and what was taken beside the four least measures.
FITTED = [
    ("inside_leg_length", ()),
    ("body_rise", ()),
    ("body_rise", ("outside_leg_length", "nape_height")),
    ("total_crotch_length", ("outside_leg_length", "inside_leg_length")),
    ("back_crotch_length", ("total_crotch_length",)),
    ("thigh_girth", ()),
    ("thigh_girth", ("calf_girth",)),
    ("calf_girth", ()),
    ("lower_thigh_girth", ("thigh_girth", "calf_girth")),
    ("ankle_girth", ("calf_girth",)),
    ("heel_girth", ("ankle_girth",)),
    ("knee_height", ("inside_leg_length",)),
]


@pytest.fixture(scope="module", params=[DRAWN, MEASURED])
def people(request: pytest.FixtureRequest) -> Any:
    """Many people under our names, in mm; their waist is at the navel."""
    found = request.param()
    return found.assign(body_rise=found.outside_leg_length - found.inside_leg_length)


@pytest.mark.parametrize(("name", "taken"), FITTED)
def test_a_leg_is_the_least_squares_fit_of_the_survey_on_all_that_was_taken(
    people: Any, name: str, taken: tuple[str, ...]
) -> None:
    some = people[people.height.between(1400, 2000)].iloc[::10]
    best = fitted(people, some, people[name], (*LEAST, *taken))
    rows = some[[*LEAST, *taken]].to_dict("records")
    ours = np.array([wearer(row, waist_level="navel")[name] for row in rows])
    assert np.abs(ours - best).mean() < 0.3
    assert np.quantile(np.abs(ours - best), 0.98) < 1.5
    assert (some[name] - ours).std() <= 1.01 * (some[name] - best).std()


def test_a_natural_waist_makes_rise_and_crotch_longer_by_what_is_recalled() -> None:
    # From memory: .026 height higher; the crotch length grows by 2.05 times that.
    least = {"height": 1700.0, "bust_girth": 900.0, "waist_girth": 750.0, "hip_girth": 1000.0}
    step = 0.026 * 1700
    navel = {**least, "outside_leg_length": 1020.0, "inside_leg_length": 790.0}
    lower = wearer(navel, waist_level="navel")
    natural = wearer({**navel, "outside_leg_length": 1020.0 + step})
    assert natural["body_rise"] - lower["body_rise"] == pytest.approx(step, abs=0.01)
    with_girth = wearer({**least, "waist_girth": 790.0})  # a natural waist's girth says nothing of a navel's
    assert with_girth["total_crotch_length"] == wearer(least)["total_crotch_length"]


def test_outside_leg_inside_leg_and_rise_always_agree() -> None:
    # Common practice: outside leg - inside leg = body rise, whichever two were taken.
    least = {"height": 1700.0, "bust_girth": 900.0, "waist_girth": 750.0, "hip_girth": 1000.0}
    given = {"outside_leg_length": 1060.0, "inside_leg_length": 790.0, "body_rise": 270.0}
    for left_out in given:
        body = wearer({**least, **{k: v for k, v in given.items() if k != left_out}})
        assert body[left_out] == pytest.approx(given[left_out]), left_out


def test_a_rise_taken_sitting_does_not_lengthen_the_estimated_crotch() -> None:
    # Common practice: sitting adds 25-30 mm, here a fiftieth of the hip.
    least = {"height": 1700.0, "bust_girth": 900.0, "waist_girth": 750.0, "hip_girth": 1000.0}
    estimated = wearer(least)
    sitting = wearer({**least, "body_rise": estimated["body_rise"] + 20.0})
    assert sitting["total_crotch_length"] == pytest.approx(estimated["total_crotch_length"], abs=0.1)
