"""Choices as widgets: what a notebook's author may do with any widget of ipywidgets, by ipywidgets itself."""

from __future__ import annotations

from typing import Any

import ipywidgets as widgets
import pytest

from drafting.costume.file import read_costume
from drafting.ground.errors import InputError
from drafting.ground.shipped import demo_costume
from drafting.notebook import Bench
from drafting.notebook.bench import state as st


@pytest.fixture
def bench() -> Bench:
    return Bench(read_costume(demo_costume()), ["shirt", "breeches"])


def asked(bench: Bench, name: str) -> Any:
    return st.asked_values(bench.standing)[name]


def test_a_value_that_is_set_moves_the_bench_and_a_move_is_heard(bench: Bench) -> None:
    ease, heard = bench.choice("bust_ease"), []
    assert ease.value == asked(bench, "bust_ease")
    ease.observe(lambda change: heard.append(change["new"]), names="value")
    before = bench.picture.value
    ease.value = 137.0
    assert asked(bench, "bust_ease") == 137.0
    assert bench.picture.value != before
    bench.ask("bust_ease", 141.0)
    assert ease.value == 141.0
    bench.undo()
    assert heard == [137.0, 141.0, 137.0]
    assert bench.choice("bust_ease") is ease


def test_a_choice_is_linked_and_interacted_with_like_any_widget(bench: Bench) -> None:
    other, ran = widgets.FloatText(), []
    widgets.link((bench.choice("waist_ease"), "value"), (other, "value"))
    assert other.value == asked(bench, "waist_ease")
    other.value = 77.0
    assert asked(bench, "waist_ease") == 77.0
    panel = widgets.interactive(lambda ease: ran.append(ease), ease=bench.choice("waist_ease"))
    panel.update()
    bench.ask("waist_ease", 82.0)
    assert ran[-1] == 82.0


def test_words_counts_and_ticks_have_controls_of_their_kind(bench: Bench) -> None:
    dart = bench.choice("bust_dart")
    dart.value = "shoulder"
    assert asked(bench, "bust_dart") == "shoulder"
    with pytest.raises(InputError, match="bust_eese"):
        bench.choice("bust_eese")


def test_a_choice_of_a_garment_that_is_not_shown_brings_it_to_the_bench(bench: Bench) -> None:
    ease = bench.choice("bust_ease")
    bench.show_garment("breeches")
    ease.value = 122.0
    assert bench.garment == "shirt"
    assert asked(bench, "bust_ease") == 122.0


def test_what_cannot_be_drafted_is_told_at_its_control_and_the_widget_stays(bench: Bench) -> None:
    ease = bench.choice("bust_ease")
    ease.value = 9000.0
    assert ease.value == 9000.0
    assert "out of range" in bench.knobs.states["bust_ease"]["refusal"]
