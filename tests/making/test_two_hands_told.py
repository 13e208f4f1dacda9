"""What is told where the two hands differ, and which way a row of buttons stands: one figure for one thing."""

from __future__ import annotations

import re
from itertools import pairwise

import pytest

from drafting.body import Body
from drafting.costume.garment import MadeGarment, draft_garment
from drafting.draft.draft import Draft
from drafting.draft.roles import LevelKind, PieceRole
from drafting.ground.scale import body_scale
from drafting.making.settings import setting_said
from drafting.making.tables import places_said
from drafting.making.words import plan_sentence
from tests.drawn_bodies import drawn
from tests.making.figures import made
from tests.making.orders import WOVEN, costume_of, order_of, uneven
from tests.making.test_plans_read import keys


def garment(block: str, **choices: object) -> MadeGarment:
    return draft_garment(uneven(made("lamplighter").costume.wearer), WOVEN, block, choices)


def drawn_apart(draft: Draft) -> set[int]:
    """Return how far apart the buttons of each front are drawn, mm: heights read off the marks."""
    found = set()
    for piece in draft.pieces:
        heights = sorted({round(m.path.bounds[1], 2) for m in piece.placements if m.what == "button"})
        if piece.base == "front":
            found |= {round(b - a) for a, b in pairwise(heights)}
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


def test_a_gathered_cuff_is_closed_inside_on_either_hand() -> None:
    """The left one was joined on and left open: only the last of both was told to be turned in."""
    one = garment("shirt", hem_fullness=1.5)
    own = (piece for piece in one.draft.pieces if piece.role is PieceRole.CUFF and not piece.material)
    cuffs = {f"{one.name}.{piece.name}" for piece in own}
    closed = [
        cuffs & set(step.pieces)
        for step in order_of(costume_of(one, WOVEN))
        if "inside" in keys(step) and cuffs & set(step.pieces)
    ]
    assert len(cuffs) == 2
    assert set().union(*closed) == cuffs


def test_buttons_that_stand_beside_one_another_are_told_across() -> None:
    fall = draft_garment(made("lamplighter").costume.wearer, WOVEN, "trousers", {"fall_front": True})
    assert plan_sentence(places_said(fall, "bearer", "button")).endswith(", across")
    shirt = draft_garment(made("lamplighter").costume.wearer, WOVEN, "shirt", {})
    assert "across" not in plan_sentence(places_said(shirt, "front", "button"))


@pytest.mark.parametrize("tails", ["none", "shaped"])
@pytest.mark.parametrize("body", [*drawn(6), made("lamplighter").costume.wearer], ids=lambda body: body.title)
def test_a_shirts_buttons_stand_eight_to_ten_centimetres_apart_whatever_its_length(body: Body, tails: str) -> None:
    """Common practice: 8 to 10 cm, one on the bust line; six of them stood 12 apart down a long front."""
    draft = draft_garment(body, WOVEN, "shirt", {"tails": tails}).draft
    scale = body_scale(body)
    (front,) = [piece for piece in draft.pieces if piece.name == "front"]
    marks = [m.path.bounds for m in front.placements if m.what == "button"]
    heights = sorted(((box[1] + box[3]) / 2 for box in marks), reverse=True)
    gaps = [a - b for a, b in pairwise(heights)]
    assert all(79.9 <= gap / scale <= 100.1 for gap in gaps), gaps
    (bust,) = [level.paths[0].start.imag for level in front.levels if level.kind is LevelKind.BUST]
    assert min(abs(height - bust) for height in heights) < 0.5
    assert heights[-1] - front.outline.bounds[1] < (90.0 + 100.0) * scale  # the hem is not left to gape


def test_a_number_of_buttons_that_is_asked_for_is_kept_to() -> None:
    draft = draft_garment(made("lamplighter").costume.wearer, WOVEN, "shirt", {"button_count": 4.0}).draft
    heights = sorted(m.path.bounds[1] for m in draft["front"].placements if m.what == "button")
    assert 4 <= len(heights) <= 5  # one is added where there is room below
    assert min(b - a for a, b in pairwise(heights)) > 105


def test_hands_of_which_one_front_is_longer_have_as_many_buttons_as_holes() -> None:
    """Whatever one hand has beyond the other would meet nothing."""
    body = made("lamplighter").costume.wearer
    for by in (6.0, 14.0, 22.0):
        one = draft_garment(uneven(body, by), WOVEN, "shirt", {"tails": "shaped"})
        fronts = [piece for piece in one.draft.pieces if piece.base == "front"]
        marks = [(m.what, m.name.rpartition("_")[2]) for piece in fronts for m in piece.placements]
        buttons = sorted(number for what, number in marks if what == "button")
        assert buttons == sorted(number for what, number in marks if what == "buttonhole")
        bought = (n.count for n in one.draft.notions if n.what == "button" and n.piece.startswith("front"))
        assert sum(bought) == len(buttons)


@pytest.mark.parametrize(("closing", "under"), [("left over right", "right"), ("right over left", "left")])
@pytest.mark.parametrize(
    ("block", "more"), [("waistcoat", {}), ("coat", {"lapel_style": "none"})], ids=["waistcoat", "coat"]
)
def test_the_hook_of_a_double_front_is_listed_with_the_hand_that_lies_beneath(
    block: str, more: dict[str, str], closing: str, under: str
) -> None:
    draft = garment(block, breasted="double", closing=closing, **more).draft
    (hook,) = [n for n in draft.notions if n.what == "hook and eye" and n.piece.startswith("front")]
    assert (hook.where, hook.piece, hook.count) == (f"front {under}", f"front-{under}", 1)
    assert f"the {under} front, which lies beneath" in hook.note
