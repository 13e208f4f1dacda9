"""How high nape, waist and crotch lie: what the measures say together, and which of them gives way."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pandas as pd
import pytest

from drafting.body import Body, wearer
from drafting.body.depths import SURVEYED, seat_depth, surveyed
from drafting.body.heights import (
    ALONG,
    FRONT_ANSWERS,
    MOST_CURVED,
    STRAIGHTEST,
    chest_forward,
    front_answer,
    heights,
    standing_rise,
    tapes_apart,
)
from tests.body.survey import survey_people
from tests.drawn_bodies import drawn
from tests.shared_data import survey

LEAST = {"height": 1700.0, "bust_girth": 920.0, "waist_girth": 760.0, "hip_girth": 980.0}
LEGS = {"outside_leg_length": 1050.0, "inside_leg_length": 800.0}


def without(body: Body, *names: str) -> Body:
    """The body as if `names` had not been measured."""
    kept = {n: m.mm for n, m in body.measures.items() if m.source == "measured" and n not in names}
    return wearer(kept, waist_level="navel")


def test_waist_and_crotch_stand_where_the_legs_were_measured() -> None:
    found = heights(wearer({**LEAST, **LEGS}))
    assert (found.waist, found.crotch) == (1050.0, 800.0)
    assert not found.said


def test_waist_to_crotch_is_the_rise_of_the_body_whatever_was_measured() -> None:
    """The levels once gave up to 56 mm more or less than the rise that trousers are drafted with."""
    for extra in ({}, LEGS, {"inside_leg_length": 800.0, "body_rise": 270.0}, {"body_rise": 270.0}):
        body = wearer({**LEAST, **extra})
        found = heights(body)
        assert found.waist - found.crotch == pytest.approx(standing_rise(body), abs=0.1), extra


def test_a_back_waist_length_spans_less_height_than_it_is_long() -> None:
    body = wearer({**LEAST, "back_waist_length": 413.0})
    found = heights(body)
    assert found.nape - found.waist == pytest.approx(413.0 / ALONG)


def test_how_much_longer_a_back_is_than_its_height_is_the_surveys() -> None:
    people = survey_people()
    spans = people.nape_height - people.outside_leg_length
    assert (people.back_waist_length / spans).mean() == pytest.approx(ALONG, abs=0.002)


def test_the_front_goes_with_the_height_between_nape_and_waist_as_the_survey_does() -> None:
    """ANSUR II took the front from the throat to the waist, which no rule reads: least squares over all."""
    raw = pd.read_csv(survey())
    back, high = raw.waistbacklength, raw.cervicaleheight - raw.waistheightomphalion
    forward = ALONG * high - back
    others = raw[["chestcircumference", "waistcircumference", "stature"]].to_numpy(float)
    throat = (raw.cervicaleheight - raw.suprasternaleheight).to_numpy(float)
    known = np.column_stack([forward, np.ones(len(raw)), raw.Gender == "Male", throat, others])
    slope = np.linalg.lstsq(known, raw.waistfrontlengthsitting - back, rcond=None)[0][0]
    assert slope == pytest.approx(1.0, abs=0.05)  # it follows the height, and the back's curve not at all
    known[:, 0] = ALONG * np.clip(high, back / MOST_CURVED, back / STRAIGHTEST) - back
    slope = np.linalg.lstsq(known, raw.waistfrontlengthsitting - back, rcond=None)[0][0]
    assert slope == pytest.approx(FRONT_ANSWERS, abs=0.05)


def test_a_straight_back_has_a_longer_front_and_a_round_one_a_shorter() -> None:
    taken = {**LEAST, "back_waist_length": 420.0, "outside_leg_length": 1040.0}
    usual, straight, round_ = (wearer({**taken, "nape_height": 1040.0 + up}) for up in (407.0, 417.0, 397.0))
    assert abs(front_answer(usual)) < 1.0
    assert front_answer(straight) > 6.0 > -6.0 > front_answer(round_)
    told = wearer({**taken, "nape_height": 1457.0, "front_waist_length": 430.0})
    assert front_answer(told) == 0.0
    assert chest_forward(told) == pytest.approx(chest_forward(straight), abs=15.0)


@pytest.mark.parametrize("left_out", ["nape_height", "outside_leg_length", "back_waist_length"])
def test_nobody_carries_the_chest_forward_of_whom_a_height_is_not_known(left_out: str) -> None:
    taken = {**LEAST, "back_waist_length": 420.0, "outside_leg_length": 1040.0, "nape_height": 1457.0}
    assert chest_forward(wearer({name: mm for name, mm in taken.items() if name != left_out})) == 0.0


def test_heights_that_no_back_spans_move_nothing_and_are_told_apart() -> None:
    taken = {**LEAST, "back_waist_length": 420.0, "outside_leg_length": 1040.0}
    for up in (340.0, 350.0, 464.0, 480.0):
        body = wearer({**taken, "nape_height": 1040.0 + up})
        assert front_answer(body) == 0.0
        assert (tapes_apart(body) > 0) == (up > 420.0)
    answers = [front_answer(wearer({**taken, "nape_height": 1040.0 + up})) for up in range(345, 470)]
    assert max(map(abs, answers)) < 0.04 * 420.0
    assert max(abs(a - b) for a, b in pairwise(answers)) < 1.5


@pytest.mark.parametrize(("measured", "kept"), [("waist_width", "waist breadth"), ("hip_depth", "hip depth")])
def test_breadths_and_depths_are_the_surveys(measured: str, kept: str) -> None:
    people = survey_people()
    guessed = np.array([surveyed(row, kept) for row in people.to_dict("records")])
    off = guessed - people[measured].to_numpy()
    assert abs(off.mean()) < 1.0
    assert off.std() < 11.0
    assert kept in SURVEYED


def test_a_crotch_length_that_nobody_measured_goes_round_the_seat() -> None:
    """Down the rise, round the seat's depth and up again: neither far shorter nor far longer than that."""
    stout = wearer({"height": 2100.0, "bust_girth": 990.0, "waist_girth": 1680.0, "hip_girth": 990.0})
    for body in (*drawn(60), stout):
        guessed = without(body, "total_crotch_length", "back_crotch_length")
        found = heights(guessed)
        round_seat = guessed["total_crotch_length"] - 2 * (found.waist - found.crotch)
        assert 0.44 < round_seat / seat_depth(guessed) < 1.31


def test_where_all_is_measured_the_waist_gives_way_to_the_crotch_length_and_says_so() -> None:
    body = wearer({**LEAST, **LEGS, "total_crotch_length": 780.0})
    found = heights(body)
    assert found.crotch == 800.0
    assert 1050.0 < found.waist <= 1050.0 + 0.02 * 1700
    assert [one.where for one in found.said] == ["outside_leg_length"]
    assert "crotch length" in found.said[0].message


def test_a_nape_that_no_back_reaches_gives_way() -> None:
    body = wearer({**LEAST, **LEGS, "nape_height": 1500.0, "back_waist_length": 380.0})
    found = heights(body)
    assert found.nape < 1440.0
    assert [one.where for one in found.said] == ["nape_height"]


def test_a_rounded_back_is_known_by_a_short_front_and_leaves_the_waist_where_it_is() -> None:
    round_, plain = (
        wearer({**LEAST, "back_waist_length": back, "front_waist_length": 425.0, "high_bust_girth": 900.0})
        for back in (430.0, 401.0)
    )
    assert heights(round_).waist == pytest.approx(heights(plain).waist, abs=1.0)
