"""The closing at a centre that opens: where it lies, what to buy for it, and how it is sewn."""

from __future__ import annotations

import itertools
import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drafting.body import wearer
from drafting.checks.girths import finished_girth
from drafting.costume.garment import MadeGarment, draft_garment
from drafting.draft.draft import Notion
from drafting.draft.piece import EdgeKind
from drafting.draft.roles import EdgeRole
from drafting.draft.walk import walk
from drafting.making.rules.soundness import unsound
from drafting.making.shopping import shopping
from drafting.making.words import plan_sentence
from drafting.shaping.details.fastener_rows import CORD_END, OPENED, cord_length, evenly
from drafting.shaping.details.zips import sold_zip
from tests.making.orders import WOVEN, costume_of, order_of

BODY = {"height": 1700.0, "bust_girth": 900.0, "waist_girth": 720.0, "hip_girth": 970.0}
FASTENINGS = ("zip", "buttons", "hooks", "laced")
EVERY = list(itertools.product(("front", "back"), ("waist", "hip"), FASTENINGS))


def top(block: str = "fitted-top", **choices: Any) -> MadeGarment:
    return draft_garment(wearer(BODY), WOVEN, block, choices)


def bought(made: MadeGarment, what: str) -> list[Notion]:
    return [notion for notion in made.draft.notions if notion.what == what]


@pytest.mark.parametrize("block", ["fitted-top", "sleeveless-top"])
@pytest.mark.parametrize(("opening", "length", "fastening"), EVERY)
def test_every_closing_is_drafted_checked_and_sewn_in_a_sound_order(
    block: str, opening: str, length: str, fastening: str
) -> None:
    made = top(block, opening=opening, length=length, fastening=fastening)
    assert [f.message for f in made.findings if f.level == "error"] == []
    costume = costume_of(made, WOVEN)
    assert unsound(costume, order_of(costume)) == ()


@pytest.mark.parametrize(("opening", "length", "fastening"), EVERY)
def test_no_closing_changes_a_girth(opening: str, length: str, fastening: str) -> None:
    eases = {"bust_ease": 70.0, "waist_ease": 45.0, "hip_ease": 60.0}
    plain = top("bodice", opening=opening, length=length, **eases)
    made = top(opening=opening, length=length, fastening=fastening)
    for girth in plain.draft.girths:
        whole = finished_girth(plain.draft, girth.level)
        assert whole is not None
        assert finished_girth(made.draft, girth.level) == pytest.approx(whole, abs=0.01)


@pytest.mark.parametrize("opening", ["front", "back"])
@pytest.mark.parametrize("kind", ["invisible", "lapped"])
def test_a_zip_lies_in_the_centre_and_the_seam_goes_on_below_it(opening: str, kind: str) -> None:
    made = top(opening=opening, zip_kind=kind, zip_above_hem=80.0)
    centre = top("bodice", opening=opening, length="hip", bust_ease=70.0, waist_ease=45.0).draft[opening]["centre"]
    piece = made.draft[opening]
    upper, lower = piece["centre"], piece["centre_seam"]
    assert (upper.kind, lower.kind) == (EdgeKind.OPENING, EdgeKind.SEAM)
    assert upper.length + lower.length == pytest.approx(centre.length, abs=0.01)
    assert lower.length == pytest.approx(80.0, abs=0.01)
    assert {upper.path.start.real, upper.path.end.real, lower.path.end.real} == {0.0}
    assert made.pattern[opening].allowances["centre"] == made.pattern[opening].allowances["centre_seam"] == 20.0
    (stop,) = [notch for notch in upper.notches if notch.name == "zip_stop"]
    meet = lower.path.start if opening == "front" else lower.path.end
    assert min(abs(upper.path.at(stop.at) - p) for p in (lower.path.start, lower.path.end)) < 0.01
    assert abs(meet.imag) < abs(lower.path.start.imag + lower.path.end.imag)
    (seam,) = [s for s in made.draft.seams if s.name == f"centre {opening}"]
    assert walk(made.draft, seam).difference == 0.0
    assert bool([m for m in piece.placements if m.what == "stitching"]) == (kind == "lapped")


def test_the_zip_to_buy_is_the_next_that_is_sold_and_the_shopping_list_has_it() -> None:
    made = top()
    (zip_,) = bought(made, "zip")
    need = made.draft.facts["zip"]
    assert zip_.cut_length is not None
    assert need <= zip_.cut_length < need + 50
    assert zip_.cut_length % 50 == 0
    row = next(row for row in shopping(costume_of(made, WOVEN), {}) if row.what == "zip")
    assert (row.amount, row.unit) == (1, "piece")
    assert plan_sentence(row.detail, "cm") == f"invisible zip, {zip_.cut_length / 10:g} cm"
    assert plan_sentence(row.detail, "in") == f"invisible zip, {math.ceil(zip_.cut_length / 25.4 - 0.1)} in"


def test_what_ends_at_the_waist_opens_all_the_way_with_a_zip_that_comes_apart() -> None:
    made = top(length="waist")
    assert bought(made, "zip")[0].kind == "open-ended zip"
    assert [e.name for e in made.draft["back"].edges if e.role is EdgeRole.CENTRE] == ["centre"]


@pytest.mark.parametrize("opening", ["front", "back"])
@pytest.mark.parametrize("closing", ["left over right", "right over left"])
def test_closed_each_hook_comes_to_lie_on_its_eye(opening: str, closing: str) -> None:
    piece = top(opening=opening, fastening="hooks", closing=closing).draft[opening]
    over, under = closing.split()[0], closing.split()[-1]
    marks = {mark.name: mark for mark in piece.placements if mark.what == "hook"}
    hooks = [n for n in marks if n.startswith(f"hook_{over}_")]
    assert len(hooks) == bought(top(opening=opening, fastening="hooks"), "hook and eye")[0].count > 10
    for name in hooks:
        eye = marks[name.replace(f"hook_{over}", f"eye_{under}")]
        across = marks[name].path.mirrored()  # the other hand is the mirror image, and the centres meet
        assert {across.start, across.end} == {eye.path.start, eye.path.end}
        assert (marks[name].hand, eye.hand) == (over, under)


@pytest.mark.parametrize(("fastening", "what"), [("buttons", "button"), ("hooks", "hook"), ("laced", "eyelet")])
def test_fasteners_asked_for_a_hair_apart_stand_side_by_side(fastening: str, what: str) -> None:
    # A space of 0.02 mm once made 33,000 hooks, in 6 s.
    piece = top(opening="back", fastening=fastening, fastening_space=0.02).draft["back"]
    rows: dict[str, list[tuple[float, float, float, float]]] = {}
    for mark in piece.placements:
        if mark.what == what:
            rows.setdefault(mark.name.rstrip("_0123456789"), []).append(mark.path.bounds)
    marks = next(iter(rows.values()))
    tops = sorted(y1 for _, _, _, y1 in marks)
    high = max(y1 - y0 for _, y0, _, y1 in marks)
    assert 10 < len(tops) < 200
    assert min(b - a for a, b in itertools.pairwise(tops)) >= high


@pytest.mark.parametrize("opening", ["front", "back"])
def test_buttons_stand_on_the_centre_and_the_edge_reaches_past_them(opening: str) -> None:
    made = top(opening=opening, fastening="buttons", button_diameter=15.0)
    piece = made.draft[opening]
    buttons = [mark.path.bounds for mark in piece.placements if mark.what == "button"]
    middles = [(x0 + x1) / 2 for x0, _, x1, _ in buttons]
    assert middles == pytest.approx([0.0] * len(middles), abs=0.01)
    assert len(middles) == bought(made, "button")[0].count
    (fold,) = [mark.path for mark in piece.placements if mark.what == "fold"]
    assert abs(fold.start.real) == pytest.approx(15.0)
    away = 1 if opening == "front" else -1
    assert fold.start.real * away < 0
    holes = [mark.path for mark in piece.placements if mark.what == "buttonhole"]
    assert all(path.length == pytest.approx(15.0 + 2.5) for path in holes)  # diameter and thickness


def test_a_lacing_has_two_eyelets_a_pair_and_cord_for_every_crossing() -> None:
    """It reached to lace the edges shut, not to let them apart to dress."""
    made = top(fastening="laced")
    piece = made.draft["back"]
    eyelets = [mark.path.bounds for mark in piece.placements if mark.what == "eyelet"]
    assert bought(made, "eyelet")[0].count == 2 * len(eyelets)
    places = sorted((y0 + y1) / 2 for _, y0, _, y1 in eyelets)
    inside = abs(sum(eyelets[0][::2]) / 2)
    left = [complex(-inside - OPENED / 2, y) for y in places]
    right = [complex(inside + OPENED / 2, y) for y in places]
    ways = [[(left, right)[(i + way) % 2][i] for i in range(len(places))] for way in (0, 1)]
    crossed = sum(abs(b - a) for way in ways for a, b in itertools.pairwise(way))
    cord = bought(made, "cord")[0].cut_length
    assert cord == pytest.approx(crossed + 2 * inside + OPENED + 2 * CORD_END, abs=0.1)


@pytest.mark.parametrize("pairs", [12, 13, 14])
def test_a_bodice_of_a_dozen_eyelets_takes_the_lace_that_is_sold_for_it(pairs: int) -> None:
    """From memory: laces of 4.5 to 5.5 m for 12 to 14 pairs, 25 mm apart."""
    assert 4400.0 < cord_length([25.0 * number for number in range(pairs)], 12.0, OPENED) < 5700.0


@given(st.floats(20, 2000))
def test_a_zip_is_never_shorter_than_its_opening_nor_a_step_too_long(length: float) -> None:
    sold = sold_zip(length)
    assert sold >= length - 1e-6
    assert sold - length < 100.0 or sold == sold_zip(0.0)
    assert sold % 50 == 0


@given(st.floats(0, 50), st.floats(60, 800), st.floats(5, 200))
def test_fasteners_stand_evenly_from_first_to_last(first: float, last: float, widest: float) -> None:
    places = evenly(first, last, widest)
    steps = [b - a for a, b in itertools.pairwise(places)]
    assert (places[0], places[-1]) == (pytest.approx(first), pytest.approx(last))
    assert max(steps) <= widest + 1e-6
    assert max(steps) - min(steps) < 1e-6
    assert math.isfinite(cord_length(places, 10.0, OPENED))


def test_a_centre_that_does_not_open_is_left_as_it_is_and_said() -> None:
    made = top(opening="none")
    assert [f.level for f in made.findings if f.check == "closing"] == ["warning"]
    assert bought(made, "zip") == []


@pytest.mark.parametrize(("kind", "first"), [("invisible", True), ("lapped", False)])
def test_a_hidden_zip_goes_in_before_the_seam_below_it_and_a_lapped_one_after(kind: str, first: bool) -> None:
    steps = order_of(costume_of(top(zip_kind=kind), WOVEN))
    zipped = next(s.n for s in steps if any("zip:" in notion for notion in s.notions))
    seamed = next(s.n for s in steps if "centre back" in s.seams)
    faced = next(s.n for s in steps if "back neck facing" in s.seams)
    assert (zipped < seamed) == first
    assert max(zipped, seamed) < faced


@pytest.mark.parametrize(("fastening", "word"), [("zip", "zip"), ("hooks", "hook"), ("laced", "eyelets")])
def test_the_plan_says_how_the_closing_is_sewn(fastening: str, word: str) -> None:
    steps = order_of(costume_of(top(fastening=fastening), WOVEN))
    assert any(word in plan_sentence(one) for step in steps for one in step.say)


UNEVEN = {
    "height": 1664.0,
    "bust_girth": 1003.0,
    "high_bust_girth": 921.0,
    "under_bust_girth": 838.0,
    "waist_girth": 832.0,
    "hip_girth": 1092.0,
    "neck_base_girth": 400.0,
    "shoulder_length": (114.0, 127.0),
    "shoulder_drop": (57.0, 38.0),
    "back_waist_length": 413.0,
    "front_waist_length": 451.0,
    "bust_point_depth": 279.0,
    "bust_point_width": 197.0,
    "waist_to_hip": 203.0,
    "upper_arm_girth": (318.0, 349.0),
    "forearm_girth": (254.0, 273.0),
    "wrist_girth": (165.0, 171.0),
    "arm_length": (572.0, 591.0),
    "upper_arm_length": (330.0, 337.0),
    "waist_to_floor": 1041.0,
}
"""Invented: a wearer one of whose shoulders lies 19 mm lower."""


@pytest.mark.parametrize(
    ("block", "choices"),
    [
        (
            "mutton-top",
            {"length": "hip", "bust_dart": "shoulder-princess", "fastening": "buttons", "opening": "front"},
        ),
        ("shirt", {}),
        ("shirt", {"button_count": 9.0}),
    ],
)
def test_buttons_of_one_hand_meet_the_holes_of_the_other(block: str, choices: dict[str, Any]) -> None:
    """She closes it button on hole, however her shoulders lie: 11 holes met 10 buttons."""
    garment, rows = (
        draft_garment(wearer(UNEVEN, waist_level="natural", figure="womens"), WOVEN, block, choices),
        [],
    )
    for hand, kind in (("left", "buttonhole"), ("right", "button")):
        marks = [
            m.path for m in garment.draft[f"front-{hand}"].placements if m.what == kind and m.hand in ("", hand)
        ]
        levels = sorted(sum(path.bounds[1::2]) / 2 for path in marks)
        rows.append([high - low for low, high in itertools.pairwise(levels)])
    assert len(rows[0]) == len(rows[1]) > 3
    assert rows[0] == pytest.approx(rows[1], abs=0.1)


def test_a_button_stands_as_far_below_the_neck_as_it_is_asked_to_and_no_bust_line_is_told() -> None:
    garment = draft_garment(wearer(BODY), WOVEN, "shirt", {"button_level": 200.0, "first_button": 60.0})
    front = garment.draft["front"]
    top = next(mark.path for mark in front.placements if mark.what == "centre").start.imag
    levels = [sum(m.path.bounds[1::2]) / 2 for m in front.placements if m.name.startswith("button_right")]
    assert min(abs(top - level - 200.0) for level in levels) < 0.1
    (said,) = [finding.message for finding in garment.draft.findings if finding.check == "closing"]
    assert "bust line" not in said
