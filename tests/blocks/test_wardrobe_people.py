"""Every newer garment and choice on many people: none is refused, no check and no rule of a block finds an error.

Every run drafts each on two of those who are hardest to fit, other ones each day, and asks for a sound order of
work. `-m population` drafts, finishes and checks it on 300 people of the survey (Gordon et al. 2014), on 30 of
bdims and on all that were made up.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

import pytest

from drafting.body import Body
from drafting.costume.file import read_costume
from drafting.costume.make import make
from drafting.draft.roles import LevelKind
from drafting.making.rules import unsound
from tests.blocks.figures import chart_woman
from tests.blocks.wardrobe import WAYS, amiss, asked, made_up
from tests.bodies import ansur, bdims
from tests.making.figures import ROOT
from tests.making.orders import WOVEN, costume_of, order_of
from tests.test_population import DAY

A_DAY = 2
"""Of the made-up ones, so many a run for each way."""


@pytest.mark.parametrize("way", WAYS)
def test_some_of_the_hardest_to_fit_have_it_without_an_error_and_its_order_is_sound(way: str) -> None:
    people, turn = made_up(), DAY * A_DAY + 5 * list(WAYS).index(way)
    some = [people[(turn + i * (len(people) // A_DAY)) % len(people)] for i in range(A_DAY)]
    assert [said for body in some for said in amiss(way, body)] == []
    costume = costume_of(asked(way, chart_woman()), WOVEN)
    assert unsound(costume, order_of(costume)) == ()


@pytest.mark.population
@pytest.mark.timeout(0)
@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("who", ["ansur", "bdims", "made up"])
def test_three_hundred_people_of_the_survey_have_it_without_an_error(way: str, who: str) -> None:
    of: dict[str, Callable[[], Sequence[Body]]]
    of = {"ansur": lambda: ansur(300), "bdims": lambda: bdims(30), "made up": made_up}
    people = of[who]()
    assert [said for body in people for said in amiss(way, body)] == []


def test_the_clock_mender_is_made_without_a_warning_and_his_order_of_work_is_sound() -> None:
    # He wears what is newest together: coat of two rows, waistcoat of two rows, wings, a fall front and spats.
    costume = make(read_costume(ROOT / "measurements" / "costumes" / "clock-mender.toml"))
    assert [f.message for f in costume.findings if f.level in ("error", "warning")] == []
    steps = order_of(costume)
    assert unsound(costume, steps) == ()
    assert {step.garment for step in steps} >= {"coat", "waistcoat", "shirt", "breeches", "spats"}


def test_the_clock_menders_flaps_hang_below_his_waist_clear_of_the_buttons() -> None:
    # Common practice: a coat's hip pocket lies a hand below the waist, its front end clear of the buttons.
    coat = make(read_costume(ROOT / "measurements" / "costumes" / "clock-mender.toml")).garments[0].draft
    front = coat["front"]
    (flap,) = [mark.path for mark in front.placements if mark.what == "pocket"]
    buttons = [m.path.bounds for m in front.placements if m.what == "button"]
    waist = next(level.paths[0].start.imag for level in front.levels if level.kind is LevelKind.WAIST)
    assert 40.0 <= waist - flap.bounds[3] <= 140.0
    assert all(low[1] - flap.bounds[3] > 10.0 for low in buttons)
