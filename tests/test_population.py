"""People of every build: none is refused, and no check finds an error in what is drafted for them.

Every run drafts in three settings the 507 adults of `bdims` (Heinz et al. 2003; girths and height,
all else estimated), 200 people drawn from the spread of ANSUR II (Gordon et al. 2014) and 40 from
its ends (tests/drawn_bodies.py), and in each other setting a few of them, other ones each day.
`-m population` drafts the 507 and all 3,034 measured people of ANSUR II in every setting; it skips
where their data are absent.
"""

from __future__ import annotations

import datetime
import os
from collections.abc import Callable, Sequence

import pytest

from drafting.body import Body
from drafting.costume.garment import draft_garment
from tests.bodies import ansur, bdims
from tests.drawn_bodies import drawn, far
from tests.population import PROPERTY, SETTINGS, outcomes, plain

Record = Callable[[str, object], None]

ALL = {"bdims": 507, "ansur": 3034}
CHUNK = 100
"""Bodies a test, so that two workers share them evenly."""

ALWAYS = ("waist, side", "hip, shoulder-princess", "close top")
STEADY = {"bdims": 507, "drawn": 200, "far": 40}
FINISHED = "hip, side"
"""The setting that is finished on every body; the others are on every twentieth."""

DAY = int(os.environ.get("DRAFTING_ROTATION", datetime.date.today().toordinal()))
"""Turns the sample of the other settings; set the variable to draft a day's people again."""

OTHERS = 24
"""People a day in each other setting."""


def people(source: str, count: int) -> Sequence[Body]:
    """Return all of `bdims` or of the far bodies, `count` drawn ones, or everyone of ANSUR II."""
    of = {"bdims": bdims, "far": far, "ansur": ansur, "drawn": lambda: drawn(count)}
    return of[source]()


def chunks(counts: dict[str, int]) -> list[tuple[str, int, int]]:
    """Return (source, how many of it, first body) for every hundred bodies."""
    return [(s, n, first) for s, n in counts.items() for first in range(0, n, CHUNK)]


def judged(bodies: Sequence[Body], setting: str, record: Record, every: int = 20) -> None:
    """Draft the bodies, finish one in `every` too, and fail with each refusal and error."""
    found = [
        one for i in range(len(bodies)) for one in outcomes(bodies[i : i + 1], setting, finished=i % every == 0)
    ]
    record(PROPERTY, plain(found))
    wrong = [trouble for one in found for trouble in one.troubles]
    assert not wrong, f"{len(wrong)} troubles:\n" + "\n".join(wrong)


@pytest.mark.parametrize("setting", ALWAYS)
@pytest.mark.parametrize(("source", "count", "first"), chunks(STEADY))
def test_nobody_is_refused_and_no_draft_has_an_error(
    setting: str, source: str, count: int, first: int, record_property: Record
) -> None:
    judged(people(source, count)[first : first + CHUNK], setting, record_property)


@pytest.mark.parametrize("setting", [name for name in SETTINGS if name not in ALWAYS])
def test_other_people_each_day_are_drafted_in_the_other_settings(setting: str, record_property: Record) -> None:
    everybody = (*drawn(), *far(), *bdims())
    turn = DAY * OTHERS + 7 * list(SETTINGS).index(setting)
    step = len(everybody) // OTHERS
    chosen = [everybody[(turn + i * step) % len(everybody)] for i in range(OTHERS)]
    judged(chosen, setting, record_property, every=6)


def test_a_shirt_of_some_of_them_is_made_whole_without_an_error() -> None:
    for body in (*bdims(507)[::40], *drawn(6), *far()[::7]):
        made = draft_garment(body, None, "shirt")
        assert [f.message for f in made.findings if f.level == "error"] == [], body.title


def test_the_neckline_and_the_shoulder_are_the_bodys_own() -> None:
    # Straight from the measures: neck base girth + 10 chosen, within 1 mm; shoulder length, unless
    # a finding says that it was drafted shorter.
    for body in (*drawn(16), *far()[::3]):
        draft = draft_garment(body, None, "bodice").draft
        neck = 2 * (draft["front"]["neck"].length + draft["back"]["neck"].length)
        assert neck == pytest.approx(body["neck_base_girth"] + 10, abs=1), body.title
        if not any(f.check == "shoulder" for f in draft.findings):
            length = draft["front"]["shoulder"].length
            assert length == pytest.approx(body["shoulder_length"], abs=0.1), body.title


@pytest.mark.population
@pytest.mark.timeout(0)
@pytest.mark.parametrize("setting", SETTINGS)
@pytest.mark.parametrize(("source", "count", "first"), chunks(ALL))
def test_every_measured_adult_is_drafted_in_every_setting(
    setting: str, source: str, count: int, first: int, record_property: Record
) -> None:
    bodies = people(source, count)[first : first + CHUNK]
    judged(bodies, setting, record_property, every=1 if setting == FINISHED else 20)
