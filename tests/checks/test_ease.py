"""Least ease in cloth that does not give: bust 38, waist 19, hip 51 (published), arm 50 mm (practice)."""

from __future__ import annotations

from typing import Any

import pytest

from drafting.body import wearer
from drafting.costume.garment import draft_garment
from tests.making.orders import KNIT, WOVEN

TAKEN: dict[str, Any] = {"height": 1700.0, "bust_girth": 900.0, "waist_girth": 720.0, "hip_girth": 970.0}
AT_HIP = {"bust_ease": 80.0, "waist_ease": 60.0, "hip_ease": 60.0, "arm_ease": 60.0, "length": "hip"}


def found(block: str, fabric: Any, choices: dict[str, Any], **layers: float) -> list[tuple[str, str]]:
    body = wearer(TAKEN, layers=layers)
    made = draft_garment(body, fabric, block, choices)
    return [(f.where, f.level) for f in made.findings if f.check == "least ease"]


@pytest.mark.parametrize(
    ("choice", "level", "least"), [("bust", "bust", 38), ("waist", "waist", 19), ("hip", "hip", 51)]
)
def test_a_girth_under_the_least_is_a_warning_and_none_at_all_an_error(
    choice: str, level: str, least: int
) -> None:
    asked = f"{choice}_ease"
    assert found("bodice", WOVEN, {**AT_HIP, asked: float(least)}) == []
    assert found("bodice", WOVEN, {**AT_HIP, asked: least - 1.0}) == [(level, "warning")]
    assert found("bodice", WOVEN, {**AT_HIP, asked: 0.0}) == [(level, "error")]


@pytest.mark.parametrize(("ease", "level"), [(50.0, None), (49.0, "warning"), (0.0, "error")])
def test_so_is_an_arm(ease: float, level: str | None) -> None:
    wanted = [] if level is None else [("upper_arm", level)]
    assert found("shirt", WOVEN, {"arm_ease": ease}) == wanted


def test_nothing_is_asked_of_cloth_that_gives() -> None:
    assert found("bodice", KNIT, {**AT_HIP, "bust_ease": 10.0}) == []


def test_what_the_layers_beneath_take_up_is_no_ease() -> None:
    assert found("bodice", WOVEN, {**AT_HIP, "bust_ease": 20.0}, bust_girth=40.0) == [("bust", "warning")]


def test_a_shirt_of_no_ease_at_all_is_an_error_all_round() -> None:
    none = {"bust_ease": 0.0, "waist_ease": 0.0, "hip_ease": 0.0, "arm_ease": 0.0}
    levels = {level for _, level in found("shirt", WOVEN, none)}
    assert levels == {"error"}
