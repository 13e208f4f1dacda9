"""Undo and redo over plain states: any number of steps there and back is where it began."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some

from drafting.costume.file import read_costume
from drafting.ground.shipped import demo_costume
from drafting.notebook.bench import state as st
from drafting.notebook.bench.history import STEPS, History

COSTUME = read_costume(demo_costume())
BEGUN = st.begin_standing(COSTUME, "shirt")


def asking(history: History, mm: float, stroke: int, choice: str = "waist_ease") -> History:
    """Return a step that need not be drafted to be kept."""
    asked = st.with_choice(history.now.asked, "shirt", choice, mm)
    return history.moved(replace(history.now, asked=asked, moving=("shirt", choice, stroke)))


def asked(history: History) -> Any:
    return st.garment_of(history.now.asked, "shirt").choices["waist_ease"].value


def test_a_whole_drag_is_one_step() -> None:
    history = History(BEGUN)
    for mm in range(60, 90):
        history = asking(history, mm, stroke=1)
    assert asked(history) == "89.0 mm"
    assert asked(history.undone()) == "9 cm"  # as the file has it
    assert not history.undone().past


def test_two_strokes_on_one_control_are_two_steps() -> None:
    history = asking(asking(History(BEGUN), 60, stroke=1), 70, stroke=2)
    assert asked(history.undone()) == "60.0 mm"


@settings(max_examples=40, deadline=None)
@given(some.lists(some.integers(0, 300), min_size=1, max_size=12), some.data())
def test_undo_and_redo_walk_the_same_states_both_ways(values: list[int], data: Any) -> None:
    history = History(BEGUN)
    for stroke, mm in enumerate(values, 1):
        history = asking(history, mm, stroke)
    steps = data.draw(some.integers(0, len(values) + 2))
    back = history
    for _ in range(steps):
        back = back.undone()
    forth = back
    for _ in range(steps):
        forth = forth.redone()
    assert forth.now.asked == history.now.asked
    there = max(0, len(values) - steps)
    assert asked(back) == (f"{values[there - 1]}.0 mm" if there else "9 cm")


def test_a_new_step_after_an_undo_drops_what_was_undone() -> None:
    history = asking(asking(History(BEGUN), 60, stroke=1), 70, stroke=2).undone()
    history = asking(history, 80, stroke=3)
    assert history.redone() is history
    assert asked(history.undone()) == "60.0 mm"


def test_the_states_kept_are_bounded() -> None:
    history = History(BEGUN)
    for stroke in range(3 * STEPS):
        history = asking(history, stroke, stroke)
    assert len(history.past) == STEPS
    for _ in range(2 * STEPS):
        history = history.undone()
    assert len(history.coming) == STEPS


def test_what_stood_before_an_undo_is_its_pale_outline() -> None:
    moved = History(BEGUN).moved(st.asked_for(BEGUN, "shirt", "waist_ease", 120.0, 1))
    assert moved.undone().now.before == moved.now.made


@pytest.mark.parametrize("garment", ["coat", "breeches"])
def test_an_undo_across_garments_shows_no_outline_of_another(garment: str) -> None:
    moved = History(BEGUN).moved(st.asked_for(BEGUN, "shirt", "waist_ease", 120.0, 1))
    other = moved.turned(st.showing_garment(moved.now, garment))
    assert other.undone().now.before is None
    assert other.undone().now.garment == "shirt"
