"""What is told as a change is one that a reader can see: no length becomes itself."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drafting.body import Body
from drafting.costume.garment import draft_garment
from drafting.ground.findings import Finding, said_once
from drafting.ground.lengths import in_unit, told
from tests.drawn_bodies import drawn

NO_CHANGE = re.compile(r"(?<![0-9/.])([0-9][0-9 /.]*(?:cm|mm|in)) (?:to|[a-z ]{0,40}instead of) \1(?![0-9])")


@given(st.floats(100, 900), st.floats(-3, 3), st.sampled_from(["cm", "in", "mm"]))
def test_lengths_that_read_alike_are_told_as_one(mm: float, by: float, unit: str) -> None:
    """Plain arithmetic: two figures, or one where they are the same."""
    said = in_unit(f"from {told(mm)} to {told(mm + by)}", unit)
    one, other = in_unit(told(mm), unit), in_unit(told(mm + by), unit)
    assert said == (f"from {one}" if one == other else f"from {one} to {other}")


@pytest.mark.parametrize("unit", ["cm", "in"])
@pytest.mark.parametrize("body", drawn(3), ids=lambda body: body.title)
@pytest.mark.parametrize("block", ["shirt", "trousers", "coat"])
def test_no_finding_tells_a_length_that_became_itself(body: Body, block: str, unit: str) -> None:
    garment = draft_garment(body, None, block, {})
    for one in said_once(garment.findings, unit):
        assert not NO_CHANGE.search(one.sentence), one.sentence


def test_a_note_of_no_change_is_left_out_and_a_warning_is_not() -> None:
    text = f"The knee is {told(510.2)} round instead of {told(509.9)}."
    assert said_once([Finding("knee", "note", "knee", 510.2, 509.9, text)], "cm") == []
    assert len(said_once([Finding("knee", "warning", "knee", 510.2, 509.9, text)], "cm")) == 1


def test_what_a_maker_noted_at_a_fitting_is_answered_however_little_it_moves() -> None:
    text = f"{told(1.6)} in all: waist {told(970.0)} to {told(971.2)}"
    (said,) = said_once([Finding("fitting", "note", "waist_girth", 971.2, 970.0, text)], "in")
    assert said.sentence == "1/8 in in all: waist 38 1/4 in"
