"""What is said to a wearer who sits of a garment drafted as for standing (common practice)."""

from __future__ import annotations

from dataclasses import replace

import pytest

from drafting.costume.garment import draft_garment
from drafting.costume.wearing.worn import form_words, worn
from drafting.worn.stands.words import worded
from tests.blocks.figures import chart_woman
from tests.making.orders import WOVEN, costume_of


@pytest.mark.parametrize(
    ("block", "told"), [("trousers", False), ("coat", True), ("skirt", True), ("cape", True), ("spats", False)]
)
def test_who_sits_is_told_what_is_drafted_as_for_standing(block: str, told: bool) -> None:
    body = chart_woman()
    for posture in ("standing", "seated"):
        found = draft_garment(replace(body, posture=posture), WOVEN, block, {}).findings
        said = [one for one in found if one.check == "drafted standing"]
        assert len(said) == (told and posture == "seated")
        assert ("seated" in {one.check for one in found}) is (block == "trousers" and posture == "seated")


def test_the_worn_view_says_that_its_form_stands() -> None:
    body = replace(chart_woman(), posture="seated")
    made = costume_of(draft_garment(body, WOVEN, "trousers", {}), WOVEN)
    made = replace(made, costume=replace(made.costume, wearer=body))
    said = [worded(one, "cm") for one in form_words(worn(made, mesh=60.0, treat=False))]
    assert any("this wearer sits" in one for one in said)
