"""What a misspelt name is answered with: the few that were most likely meant."""

from __future__ import annotations

import time

import pytest

from drafting.blocks import all_blocks
from drafting.body import DIMENSIONS
from drafting.ground.nearest import MOST, meant, nearest
from drafting.ground.units import BadValue
from drafting.reading.given import one_of

CHOICES = sorted({c.name for block in all_blocks().values() for c in block.choices})
EDGES = ("waist", "waist_side", "side_upper", "side_lower", "hem", "left", "right", "shoulder")


@pytest.mark.parametrize(
    ("typed", "known", "first"),
    [
        ("girth_bust", DIMENSIONS, "bust_girth"),  # words the other way round
        ("waist-girth", DIMENSIONS, "waist_girth"),
        ("Waist Girth", DIMENSIONS, "waist_girth"),
        ("waistgirth", DIMENSIONS, "waist_girth"),
        ("shoulders_length", DIMENSIONS, "shoulder_length"),  # one and many
        ("nek_girth", DIMENSIONS, "neck_girth"),  # a letter lost, doubled, moved
        ("hipp_girth", DIMENSIONS, "hip_girth"),
        ("hegiht", DIMENSIONS, "height"),
        ("ease_bust", CHOICES, "bust_ease"),
        ("bust-eese", CHOICES, "bust_ease"),
        ("hem_alowance", (*CHOICES, "hem_allowance"), "hem_allowance"),
        ("shrit", all_blocks(), "shirt"),
        ("tail_coat", all_blocks(), "tailcoat"),
        ("upper-side", EDGES, "side_upper"),
        ("sholder", EDGES, "shoulder"),
        ("front-rihgt", ("front-left", "front-right", "back"), "front-right"),
        ("side-left", ("side-right", "front-left", "back"), "side-right"),
    ],
)
def test_the_name_that_was_meant_comes_first(typed: str, known: tuple[str, ...], first: str) -> None:
    assert nearest(typed, known)[0] == first


@pytest.mark.parametrize("typed", ["", "xyzzy", "42", "__", "…", "frog"])
def test_what_is_like_nothing_is_not_guessed(typed: str) -> None:
    assert nearest(typed, DIMENSIONS) == ()
    assert meant(typed, DIMENSIONS, "`drafting blocks` lists them") == "`drafting blocks` lists them"


def test_never_more_than_five_are_offered_and_none_twice() -> None:
    for typed in (*DIMENSIONS, *CHOICES):
        near = nearest(f"{typed}x", (*DIMENSIONS, *CHOICES))
        assert 0 < len(near) <= MOST
        assert len(set(near)) == len(near)
        assert typed in near


def test_one_letter_wrong_in_any_name_still_finds_it() -> None:
    for name in DIMENSIONS:
        for place in range(len(name)):
            if len(name) > 5:
                assert name in nearest(name[:place] + name[place + 1 :], DIMENSIONS)


def test_many_and_long_names_are_compared_in_no_time() -> None:
    began = time.process_time()
    for number in range(100):
        nearest(f"{number}" + "x_" * 3000, CHOICES)
    assert time.process_time() - began < 3


def test_every_word_that_may_be_written_is_named() -> None:
    """Of ten sorts of cloth five were named "and others": what a maker may write must not be guessed."""
    words = ("plain", "pile", "napped", "satin", "sheer", "coated", "sequinned", "lace", "felted", "foiled")
    for wrong in ("velvety", "pyle"):
        with pytest.raises(BadValue) as refused:
            one_of(wrong, words)
        assert all(word in refused.value.right for word in words)
    assert meant("xyzzy", map(str, range(99))).endswith("19 and 79 more")
