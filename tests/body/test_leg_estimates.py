"""The rules for hip and leg measures, against least squares on the surveys they were fitted to.

People drawn with the survey's means and correlations (tests/drawn_bodies.py) stand in for its
people, as least squares sees no more; `-m population` refits on the measured ones.
"""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from drafting.body import wearer
from tests.body.people import DRAWN, MEASURED

LEAST = ("height", "bust_girth", "waist_girth", "hip_girth")

# What each rule estimates, from what, and the residual sd (mm) out of sample.
FITTED = [
    ("inside_leg_length", ("height", "hip_girth"), (), 24.0),
    ("body_rise", ("height", "hip_girth"), (), 19.8),
    ("total_crotch_length", ("body_rise", "hip_girth"), ("outside_leg_length", "inside_leg_length"), 25.2),
    ("thigh_girth", ("hip_girth",), (), 19.9),
    ("thigh_girth", ("hip_girth", "waist_girth", "calf_girth"), ("calf_girth",), 18.4),
    ("calf_girth", ("hip_girth", "height"), (), 19.8),
    ("lower_thigh_girth", ("thigh_girth", "calf_girth"), ("thigh_girth", "calf_girth"), 14.4),
    ("ankle_girth", ("calf_girth", "height"), ("calf_girth",), 8.5),
    ("heel_girth", ("height", "ankle_girth"), ("ankle_girth",), 10.3),
    ("knee_height", ("inside_leg_length",), ("inside_leg_length",), 11.3),
]


@pytest.fixture(scope="module", params=[DRAWN, MEASURED])
def people(request: pytest.FixtureRequest) -> Any:
    """Many people under our names, in mm; their waist is at the navel."""
    found = request.param()
    return found.assign(body_rise=found.outside_leg_length - found.inside_leg_length)


@pytest.mark.parametrize(("name", "parents", "taken", "sd"), FITTED)
def test_a_leg_rule_is_the_least_squares_fit_of_the_survey(
    people: Any, name: str, parents: tuple[str, ...], taken: tuple[str, ...], sd: float
) -> None:
    some = people[people.height.between(1400, 2000)].iloc[::10]
    table = np.column_stack([np.ones(len(people)), people[list(parents)]])
    best, *_ = np.linalg.lstsq(table, people[name], rcond=None)
    fitted = np.column_stack([np.ones(len(some)), some[list(parents)]]) @ best
    rows = some[[*LEAST, *taken]].to_dict("records")
    ours = np.array([wearer(row, waist_level="navel")[name] for row in rows])
    assert np.abs(ours - fitted).mean() < 0.8
    assert np.abs(ours - fitted).max() < 3.0
    assert (some[name] - ours).std() == pytest.approx(sd, rel=0.15)


def test_a_natural_waist_makes_rise_and_crotch_longer_by_what_is_recalled() -> None:
    # From memory: .026 height higher; the crotch length grows by 2.05 times that.
    least = {"height": 1700.0, "bust_girth": 900.0, "waist_girth": 750.0, "hip_girth": 1000.0}
    natural, navel = wearer(least), wearer(least, waist_level="navel")
    step = 0.026 * 1700
    assert natural["body_rise"] - navel["body_rise"] == pytest.approx(step, abs=0.01)
    more = natural["total_crotch_length"] - navel["total_crotch_length"]
    assert more == pytest.approx(2.05 * step, abs=0.1)


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
