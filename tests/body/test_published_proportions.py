"""Estimates of lengths against proportions that textbooks print; each by its own rule, not by ours.

Fractions of the height: Drillis and Contini 1966, as in Winter, Biomechanics and Motor Control of Human
Movement (from memory). Back waist length: German block drafting (from memory), and a German coat draft.
"""

from __future__ import annotations

from collections.abc import Callable

import pytest

from drafting.body import Body, wearer
from drafting.body.figure_rules import Figure
from tests.published import figure, published, single


def of_height(height: float) -> Body:
    """Return a body of which only the height matters here."""
    return wearer({"height": height, "bust_girth": 960.0, "waist_girth": 800.0, "hip_girth": 980.0})


@pytest.mark.parametrize(
    ("row", "segment"),
    [
        ("segment-upper-arm", lambda b: b["upper_arm_length"]),
        ("segment-forearm", lambda b: b["arm_length"] - b["upper_arm_length"]),
        ("segment-shoulder-height", lambda b: b["nape_height"] - 15.0 - b["shoulder_drop"]),
        ("segment-knee-height", lambda b: b["knee_height"]),
    ],
)
def test_a_segment_is_the_recalled_share_of_the_height(row: str, segment: Callable[[Body], float]) -> None:
    # Drillis and Contini: 0.186, 0.146, 0.818 and 0.285 of the height, within 0.01 of it. The shoulder
    # point lies its drop below the side neck, which lies 15 mm below the nape (ours).
    body = of_height(1700.0)
    row_tolerance = published(row).tolerance
    assert row_tolerance is not None
    assert segment(body) / 1700.0 == pytest.approx(single(row), abs=row_tolerance)


def test_an_arm_is_the_sum_of_its_recalled_segments() -> None:
    # 0.332 of 170 cm, within 3 cm.
    theirs, within = figure(("arm-of-170", ""))
    assert of_height(1700.0)["arm_length"] == pytest.approx(theirs, abs=within)


WOMAN = {"height": 1680.0, "bust_girth": 880.0, "waist_girth": 700.0, "hip_girth": 960.0}
MAN = {"height": 1760.0, "bust_girth": 960.0, "waist_girth": 820.0, "hip_girth": 980.0}


@pytest.mark.parametrize(
    ("row", "measures", "charts"),
    [
        ("back-waist-woman", WOMAN, ""),
        ("back-waist-woman", WOMAN, "womens"),
        ("back-waist-man", MAN, ""),
        ("back-waist-man", MAN, "mens"),
    ],
)
def test_back_waist_lengths_are_those_of_the_drafting_rules(
    row: str, measures: dict[str, float], charts: Figure
) -> None:
    # Women: height / 4 - 1 cm; men: height / 4 + 1 cm; within 2 cm of chart figures.
    theirs, within = figure((row, ""))
    assert wearer(measures, figure=charts)["back_waist_length"] == pytest.approx(theirs, abs=within)
