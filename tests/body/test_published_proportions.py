"""Estimates of lengths against proportions that textbooks print; each by its own rule, not by ours.

Fractions of the height: Drillis and Contini 1966, as in Winter, Biomechanics and Motor Control of Human
Movement (from memory). Back waist length: German block drafting (from memory), and a German coat draft.
"""

from __future__ import annotations

from collections.abc import Callable

import pytest

from drafting.body import Body, wearer
from tests.published import single


def figure(height: float) -> Body:
    """Return a body of which only the height matters here."""
    return wearer({"height": height, "bust_girth": 960.0, "waist_girth": 800.0, "hip_girth": 980.0})


@pytest.mark.parametrize(
    ("row", "of_height"),
    [
        ("segment-upper-arm", lambda b: b["upper_arm_length"]),
        ("segment-forearm", lambda b: b["arm_length"] - b["upper_arm_length"]),
        ("segment-shoulder-height", lambda b: b["nape_height"] - 15.0 - b["shoulder_drop"]),
        ("segment-knee-height", lambda b: b["knee_height"]),
    ],
)
def test_a_segment_is_the_recalled_share_of_the_height(row: str, of_height: Callable[[Body], float]) -> None:
    # Drillis and Contini: 0.186, 0.146, 0.818 and 0.285 of the height, within 0.01 of it. The shoulder
    # point lies its drop below the side neck, which lies 15 mm below the nape (ours).
    body = figure(1700.0)
    assert of_height(body) / 1700.0 == pytest.approx(single(row), abs=0.01)


def test_an_arm_is_the_sum_of_its_recalled_segments() -> None:
    # 0.332 of 170 cm, within 3 cm.
    assert figure(1700.0)["arm_length"] == pytest.approx(10 * single("arm-of-170"), abs=30.0)


def test_back_waist_lengths_are_those_of_the_drafting_rules() -> None:
    # Women: height / 4 - 1 cm; men: height / 4 + 1 cm; within 2 cm of chart figures.
    woman = wearer({"height": 1680.0, "bust_girth": 880.0, "waist_girth": 700.0, "hip_girth": 960.0})
    man = wearer({"height": 1760.0, "bust_girth": 960.0, "waist_girth": 820.0, "hip_girth": 980.0})
    assert woman["back_waist_length"] == pytest.approx(10 * single("back-waist-woman"), abs=20.0)
    assert man["back_waist_length"] == pytest.approx(10 * single("back-waist-man"), abs=20.0)
