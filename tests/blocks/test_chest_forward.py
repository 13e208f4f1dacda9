"""One back waist length, three postures: who stands straight has a longer front, taken in more below the bust.

A tailor's common practice for the erect and the stooping figure; how much is read from ANSUR II in
`tests/body/test_heights.py`.
"""

from __future__ import annotations

import pytest

from drafting.body import Body, wearer
from drafting.checks.levels import width
from drafting.costume.garment import MadeGarment, draft_garment
from drafting.draft.roles import LevelKind

BACK, WAIST = 420.0, 1040.0
TAKEN = {
    "height": 1700.0,
    "bust_girth": 920.0,
    "waist_girth": 740.0,
    "hip_girth": 980.0,
    "back_waist_length": BACK,
    "outside_leg_length": WAIST,
}
USUAL, STRAIGHT, ROUND = BACK / 1.032, BACK / 1.010, BACK / 1.055
"""mm between nape and waist: the survey's mean, and near its ends."""


def posed(height: float, **more: float) -> Body:
    return wearer({**TAKEN, "nape_height": WAIST + height, **more})


def bodice(body: Body) -> MadeGarment:
    return draft_garment(body, None, "bodice", {})


def at_waist(garment: MadeGarment, piece: str) -> float:
    return sum(width(garment.draft[piece], lv) for lv in garment.draft[piece].levels if lv.kind is LevelKind.WAIST)


def test_the_front_is_longer_for_a_straight_back_and_shorter_for_a_round_one() -> None:
    usual, straight, round_ = (bodice(posed(h)).draft.facts for h in (USUAL, STRAIGHT, ROUND))
    assert straight["front_waist_length"] > usual["front_waist_length"] + 8
    assert round_["front_waist_length"] < usual["front_waist_length"] - 8
    assert {one["back_waist_length"] for one in (usual, straight, round_)} == {usual["back_waist_length"]}


def test_a_straight_back_has_more_of_the_waist_behind_and_the_girth_stays() -> None:
    made = {name: bodice(posed(h)) for name, h in (("usual", USUAL), ("straight", STRAIGHT), ("round", ROUND))}
    wide = {name: (at_waist(one, "back"), at_waist(one, "front")) for name, one in made.items()}
    assert wide["straight"][0] > wide["usual"][0] + 4 > wide["round"][0] + 8
    for back, front in wide.values():
        assert 2 * (back + front) == pytest.approx(2 * sum(wide["usual"]), abs=0.05)
    for one in made.values():
        assert not [found for found in one.findings if found.level == "error"]


def test_it_is_told_and_a_measured_front_stands_before_it() -> None:
    (said,) = [found for found in bodice(posed(STRAIGHT)).findings if found.check == "front length"]
    assert "longer" in said.said("cm")
    assert "straight back" in said.said("cm")
    (said,) = [found for found in bodice(posed(ROUND)).findings if found.check == "front length"]
    assert "shorter" in said.said("in")
    (said,) = [found for found in bodice(posed(USUAL + 60)).findings if found.check == "front length"]
    assert said.level == "warning"
    assert "again" in said.said("cm")
    front = {"front_waist_length": 430.0}
    for body in (posed(USUAL), posed(STRAIGHT, **front), posed(USUAL + 60, **front)):
        assert "front length" not in {found.check for found in bodice(body).findings}
