"""Garments of many wearers: nothing lies deeper than 2 mm in the form, how far one leg reaches into the other.

People drawn from the published spread in every run; measured ones of ANSUR II (Gordon and others 2014) by hand.
"""

from __future__ import annotations

import numpy as np
import pytest

from drafting.body import Body
from drafting.ground.errors import DraftError
from drafting.worn.form import wearers_form
from drafting.worn.nouns import AtRest
from tests.bodies import ansur
from tests.drawn_bodies import drawn
from tests.worn.dressed import of_legs, on_form
from tests.worn.garments import drafted

DEEPEST = -2.0
BLOCKS = ("shirt", "fitted-top", "trousers", "breeches", "tailcoat", "puffed-top")


def deepest(body: Body, rest: AtRest) -> float:
    """Return the least distance of a vertex from the form, mm, below 0 inside."""
    return float(wearers_form(body).distance.distance(rest.points).min())


def across(rest: AtRest) -> float:
    """Return how far the cloth of a left leg reaches over the middle to the right, mm."""
    legs = of_legs(rest.mesh)
    return float(np.maximum(-rest.points[legs, 0], 0.0).max()) if len(legs) else 0.0


@pytest.mark.parametrize("number", range(3))
@pytest.mark.parametrize("block", ["shirt", "trousers"])
def test_no_cloth_lies_in_the_body_nor_one_leg_far_in_the_other(block: str, number: int) -> None:
    """Nothing presses one leg's cloth from the other's: loose inner legs that meet may share 3 mm each."""
    body = drawn(3)[number]
    rest = on_form(drafted(block, body), block, wearers_form(body))
    assert deepest(body, rest) >= DEEPEST
    assert across(rest) <= 3.0


@pytest.mark.population
@pytest.mark.timeout(0)
@pytest.mark.parametrize("block", BLOCKS)
def test_on_60_measured_people_neither(block: str) -> None:
    wrong, tried = [], 0
    for body in ansur(60):
        try:
            draft = drafted(block, body)
        except DraftError:  # a block that these measures do not go with says so elsewhere
            continue
        tried += 1
        rest = on_form(draft, block, wearers_form(body))
        deep, over = deepest(body, rest), across(rest)
        print(f"{block} {body.title}: {deep:+.1f} mm, over the middle {over:.1f}, at rest {rest.settled}")
        if deep < DEEPEST or over > -DEEPEST:
            wrong.append((body.title, deep, over))
    assert tried >= 55
    assert not wrong
