"""A child's neck: held against adults of one figure carried down, against paediatric figures, on its drafts."""

from __future__ import annotations

from itertools import pairwise

import pytest

from drafting.body import Body, wearer
from drafting.body.children import child_share
from drafting.body.estimates import ADULT_LOW
from drafting.body.figure_rules import MENS, WOMENS
from drafting.checks import check_draft
from drafting.costume.garment import draft_garment
from tests.blocks.sleeves import draft_of
from tests.bodies import ansur, bdims
from tests.drawn_bodies import drawn, far
from tests.published import span_mm

CHESTS = {1040.0: 570.0, 1160.0: 600.0, 1280.0: 640.0}
"""mm: the chest at a height, of children's size charts, from memory."""


def child(height: float) -> Body:
    chest = CHESTS[height]
    return wearer({"height": height, "bust_girth": chest, "waist_girth": chest - 40, "hip_girth": chest + 40})


def carried_down(height: float, chest: float) -> tuple[float, float]:
    """Return the neck base by women's and by men's rule of ANSUR II, made smaller with the body; their spread.

    Gordon et al. 2014, fitted on the adults of one figure each, so without what parts men from women.
    """
    small = height / ADULT_LOW
    rules = [next(r for r in own if r.name == "neck_base_girth") for own in (WOMENS, MENS)]
    necks = [small * rule.of({"bust_girth": chest / small}) for rule in rules]
    return sum(necks) / 2, max(rule.sd or 0.0 for rule in rules) * small


@pytest.mark.parametrize("height", CHESTS)
def test_a_childs_neck_base_is_that_of_adults_of_one_figure_carried_down(height: float) -> None:
    wanted, spread = carried_down(height, CHESTS[height])
    assert child(height)["neck_base_girth"] == pytest.approx(wanted, abs=spread)


def test_a_child_of_116_has_the_neck_of_a_six_year_old() -> None:
    low, high = span_mm("neck-of-six")
    assert low <= child(1160.0)["neck_girth"] <= high


def test_a_childs_chest_is_not_shaped_over_a_bust() -> None:
    # A child's chest is one girth (common practice).
    for height in CHESTS:
        body = child(height)
        assert body["high_bust_girth"] == pytest.approx(body["bust_girth"])


@pytest.mark.parametrize("block", ["shirt", "fitted-top", "tailcoat"])
@pytest.mark.parametrize("height", CHESTS)
def test_a_childs_draft_passes_every_check_on_its_estimated_neck(height: float, block: str) -> None:
    body = child(height)
    draft = draft_of(body, block)
    assert [f.message for f in check_draft(draft, body) if f.level == "error"] == []


def test_a_childs_neckline_lies_on_its_neck_base() -> None:
    body = child(1160.0)
    draft = draft_of(body, "shirt")
    assert draft.facts["neckline"] == pytest.approx(body["neck_base_girth"], abs=1.0)
    assert 10 <= draft.facts["collar_top"] - body["neck_girth"] <= 15


def test_no_adult_and_no_doll_is_taken_for_a_child() -> None:
    people = [*drawn(), *far(), *bdims()]
    assert [b.title for b in people if child_share({n: b[n] for n in ("height", "bust_girth")}) > 0] == []
    assert child_share({"height": 350.0, "bust_girth": 200.0}) == 0


@pytest.mark.population
def test_nobody_of_the_survey_is_taken_for_a_child() -> None:
    assert not any(child_share({n: b[n] for n in ("height", "bust_girth")}) for b in ansur())


def test_between_child_and_adult_a_neck_does_not_jump() -> None:
    def neck(at: float) -> float:
        grown = {"height": 1360 + 180 * at, "bust_girth": 670 + 100 * at, "waist_girth": 640.0, "hip_girth": 760.0}
        return wearer(grown)["neck_base_girth"]

    steps = [neck(i / 200) for i in range(201)]
    assert max(abs(b - a) for a, b in pairwise(steps)) < 1.0


def test_a_small_childs_arm_is_not_taken_for_its_leg() -> None:
    # One to two years old, from memory: arm and inside leg are both a little over a third of the height.
    girths = {"bust_girth": 480.0, "waist_girth": 470.0, "hip_girth": 490.0}
    for height in (780.0, 920.0):
        limbs = {"arm_length": 0.38 * height, "inside_leg_length": 0.365 * height}
        small = wearer({"height": height, **girths, **limbs})
        assert not any("swapped" in finding.sentence for finding in small.findings)


def test_an_adult_of_short_stature_does_not_grow_into_her_seams() -> None:
    """Common practice: a reserve to let down and out is a child's; 1.28 m with a chest of 92 is grown up."""
    short = wearer({"height": 1280, "bust_girth": 920, "waist_girth": 840, "hip_girth": 940})
    for body, grows in ((short, False), (child(1280), True)):
        for block in ("shirt", "trousers", "spencer"):
            choices = draft_garment(body, None, block, {}).choices
            assert [choices[name][0] > 0 for name in ("hem_growth", "let_out")] == [grows, grows]
