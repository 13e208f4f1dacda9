"""A sentence of one garment is not said of another: tails, hems and slits are told where there are any."""

from __future__ import annotations

import re

import pytest

from drafting.body import Body, wearer
from drafting.costume.garment import draft_garment
from tests.making.orders import WOVEN

LARGE = {"height": 1650.0, "bust_girth": 1420.0, "waist_girth": 1390.0, "hip_girth": 1440.0}
FULL = {
    "height": 1640.0,
    "bust_girth": 1120.0,
    "high_bust_girth": 960.0,
    "waist_girth": 780.0,
    "hip_girth": 1060.0,
}
SMALL = {"height": 1180.0, "bust_girth": 600.0, "waist_girth": 560.0, "hip_girth": 640.0}
"""mm, invented."""


def told(block: str, measures: dict[str, float], **choices: object) -> str:
    body: Body = wearer(measures)
    return " ".join(finding.said("cm") for finding in draft_garment(body, WOVEN, block, choices).findings)


def test_a_spencer_hears_nothing_of_tails_and_a_tailcoat_does() -> None:
    assert "tails" not in told("spencer", LARGE)
    assert "lining hang before they are joined" in told("tailcoat", LARGE)


def test_a_capes_hem_is_called_a_capes() -> None:
    said = told("cape", SMALL)
    assert "The cape hem curves" in said
    assert "shirt hem" not in said


def test_a_slit_that_a_knee_band_asks_for_is_not_laid_on_the_heel() -> None:
    said = told("knee-breeches", LARGE)
    assert "of the side seam stay open." in said
    assert "heel" not in said
    for hem, heel in re.findall(
        r"hem of ([0-9.]+) cm does not pass the heel \(([0-9.]+) cm", told("trousers", LARGE)
    ):
        assert float(hem) < float(heel)


@pytest.mark.parametrize("block", ["bishop-top", "shirt", "waistcoat"])
def test_no_change_is_warned_of_that_a_tape_could_not_read(block: str) -> None:
    for measures in (SMALL, LARGE):
        found = draft_garment(wearer(measures), WOVEN, block).findings
        for finding in found:
            if finding.check == "shoulder" and finding.level == "warning":
                assert abs(float(str(finding.value)) - float(str(finding.wanted))) >= 0.5


def test_what_hangs_on_the_bias_is_named_in_words_and_has_a_hem() -> None:
    said = told("cape", FULL)
    assert "What hangs on the bias" in said
    assert "cape-" not in said
    assert "hangs on the bias" not in told("knee-breeches", LARGE)
