"""A collar's steps name the parts that it has: a flat one meets the neck, a stand is turned in itself."""

from __future__ import annotations

import pytest

from drafting.costume.garment import draft_garment
from drafting.making.words import plan_sentence
from tests.blocks.figures import chart_woman
from tests.making.orders import WOVEN, costume_of, order_of


@pytest.mark.parametrize(
    ("block", "collar", "has", "lacks"),
    [
        ("shirt", "flat", "Make up the collar", "stand"),
        ("shirt", "turn-down", "edge of the stand in", "edge of the collar in"),
        ("shirt", "stand", "edge of the stand in", "edge of the collar in"),
        ("cape", "", "edge of the stand in", "edge of the collar in"),
    ],
)
def test_a_collars_steps_name_the_parts_that_it_has(block: str, collar: str, has: str, lacks: str) -> None:
    garment = draft_garment(chart_woman(), WOVEN, block, {"collar": collar} if collar else {})
    steps = [step for step in order_of(costume_of(garment, WOVEN)) if step.verb == "face"]
    made = [step for step in steps if any("collar" in piece or "stand" in piece for piece in step.pieces)]
    said = " ".join(plan_sentence(one) for step in made for one in step.say if one.key != "do.fold_back_stand")
    assert has in said
    assert lacks not in said
