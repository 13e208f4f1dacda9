"""Measured people: none is refused, and no check finds an error in what is drafted for them.

The bodies are 507 of `bdims` (Heinz et al. 2003; girths and height, all else estimated) and 300 of
ANSUR II (Gordon et al. 2014; taken evenly from the file). Tests skip where the data are absent.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

import pytest

from drafting.body import Body
from drafting.checks import check_draft
from drafting.chosen import Origin, block_named, choose
from drafting.draft import Draft
from drafting.errors import DraftError
from drafting.garment import draft_garment, drafted
from drafting.scale import body_scale
from drafting.walk import notched
from tests.bodies import ansur, bdims

PEOPLE = [pytest.param(bdims, 507, id="bdims"), pytest.param(ansur, 300, id="ansur")]

People = Callable[[int], Sequence[Body]]


def shirt(body: Body) -> Draft:
    """Return the shirt's draft without its finish, which takes most of the time."""
    block = block_named("shirt")
    chosen = choose(block, {}, body_scale(body), Origin())
    return notched(drafted(body, None, block, chosen))


def troubles(body: Body) -> list[str]:
    """Return every refusal and error finding for one body, its title in front."""
    try:
        draft = shirt(body)
    except DraftError as refusal:
        return [f"{body.title}: refused: {refusal}"]
    found = (*draft.findings, *check_draft(draft, body))
    return [f"{body.title}: {f.where}: {f.message}" for f in found if f.level == "error"]


@pytest.mark.parametrize(("people", "count"), PEOPLE)
def test_nobody_is_refused_and_no_draft_has_an_error(people: People, count: int) -> None:
    bodies = people(count)
    assert len(bodies) == count
    found = [trouble for body in bodies for trouble in troubles(body)]
    assert not found, f"{len(found)} troubles:\n" + "\n".join(found[:20])


@pytest.mark.parametrize(("people", "count"), PEOPLE)
def test_finished_patterns_of_some_of_them_have_no_error_either(people: People, count: int) -> None:
    for body in people(count)[::25]:
        made = draft_garment(body, None, "shirt")
        assert [f.message for f in made.findings if f.level == "error"] == [], body.title


def test_the_neckline_and_the_shoulder_are_the_bodys_own() -> None:
    # Straight from the measures: neck base girth + 10 chosen, within 1 mm; shoulder length, unless
    # a finding says that it was drafted shorter.
    for body in ansur(300)[::10]:
        draft = shirt(body)
        neck = 2 * (draft["front"]["neck"].length + draft["back"]["neck"].length)
        assert neck == pytest.approx(body["neck_base_girth"] + 10, abs=1), body.title
        if not any(f.check == "shoulder" for f in draft.findings):
            length = draft["front"]["shoulder"].length
            assert length == pytest.approx(body["shoulder_length"], abs=0.1), body.title


@pytest.mark.population
def test_every_surveyed_adult_can_be_drafted() -> None:
    found = [trouble for body in ansur() for trouble in troubles(body)]
    assert not found, f"{len(found)} troubles:\n" + "\n".join(found[:20])
