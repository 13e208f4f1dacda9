"""What is told where the two hands differ, and which way a row of buttons stands: one figure for one thing."""

from __future__ import annotations

import re

import pytest

from drafting.costume.garment import MadeGarment, draft_garment
from drafting.draft.draft import Draft
from drafting.making.settings import setting_said
from drafting.making.tables import places_said
from drafting.making.words import plan_sentence
from tests.making.figures import made
from tests.making.orders import WOVEN, costume_of, order_of, uneven


def garment(block: str, **choices: object) -> MadeGarment:
    return draft_garment(uneven(made("lamplighter").costume.wearer), WOVEN, block, choices)


def drawn_apart(draft: Draft) -> set[int]:
    """Return how far apart the buttons of each front are drawn, mm: heights read off the marks."""
    found = set()
    for piece in draft.pieces:
        heights = sorted({round(m.path.bounds[1], 2) for m in piece.placements if m.what == "button"})
        if piece.base == "front":
            found |= {round(b - a) for a, b in zip(heights, heights[1:], strict=False)}
    return found


@pytest.mark.parametrize("block", ["waistcoat", "shirt"])
def test_both_hands_tell_how_far_apart_the_buttons_are_drawn(block: str) -> None:
    """A right front's own row was told, though its buttons had gone level with the left's holes."""
    one = garment(block)
    told = {int(n) for f in one.findings for n in re.findall(r"(\d+) mm apart", f.said("mm"))}
    assert told == drawn_apart(one.draft)


def test_what_is_sewn_on_both_hands_is_not_pressed_onto_one() -> None:
    for block in ("shirt", "coat"):
        one = garment(block)
        for step in order_of(costume_of(one, WOVEN)):
            for said in setting_said(step.setting):
                assert not re.search(r"onto the [a-z ]+ (left|right)\b", plan_sentence(said)), step.key


def test_buttons_that_stand_beside_one_another_are_told_across() -> None:
    fall = draft_garment(made("lamplighter").costume.wearer, WOVEN, "trousers", {"fall_front": True})
    assert plan_sentence(places_said(fall, "bearer", "button")).endswith(", across")
    shirt = draft_garment(made("lamplighter").costume.wearer, WOVEN, "shirt", {})
    assert "across" not in plan_sentence(places_said(shirt, "front", "button"))
