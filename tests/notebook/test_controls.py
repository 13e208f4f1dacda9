"""Sliders from choices: what is shown is in cm, what is kept is in mm to the last digit."""

from __future__ import annotations

import itertools
from typing import Any

import ipywidgets as widgets
import pytest
from hypothesis import given
from hypothesis import strategies as some

from drafting.blocks import all_blocks
from drafting.choices import Choice
from drafting.chosen import garment_choices
from drafting.notebook.controls import control, reach, shown, taken

EVERY = {c.name: c for block in all_blocks().values() for c in garment_choices(block)}
LENGTH = EVERY["bust_ease"]


def quiet(_: Any) -> None:
    raise AssertionError("nobody moved this control")


@pytest.mark.parametrize("choice", EVERY.values(), ids=EVERY)
def test_every_choice_has_a_control_with_its_name_its_meaning_and_its_default(
    choice: Choice,
) -> None:
    made = control(choice, choice.default, choice.default, quiet)
    assert choice.name.split("_")[0] in made.widget.description.lower()
    assert choice.meaning[1:30] in made.row.children[1].value.replace("&#x27;", "'")
    per_cm = 10 if choice.unit == "mm" else 1  # SI: 1 cm = 10 mm
    if isinstance(made.widget, (widgets.FloatSlider, widgets.IntSlider)):
        assert made.widget.value * per_cm == pytest.approx(choice.default, abs=1e-9)
        assert made.widget.step * per_cm == pytest.approx(choice.step, abs=1e-9)
        assert [made.widget.min * per_cm, made.widget.max * per_cm] == pytest.approx(
            [choice.low, choice.high]
        )
    else:
        assert made.widget.value == choice.default


@pytest.mark.parametrize(("value", "low", "high"), [(450.0, 0, 450.0), (-20.0, -20.0, 400)])
def test_a_range_grows_to_hold_a_real_value(value: float, low: float, high: float) -> None:
    assert reach(LENGTH, value) == (low, high)
    assert control(LENGTH, value, 100.0, quiet).widget.value == value / 10


def test_a_moved_control_hands_its_value_on_in_the_choices_own_unit() -> None:
    got: list[Any] = []
    slider = control(LENGTH, 100.0, 100.0, got.append).widget
    slider.value = 9.6
    slider.value = 8.8
    word = control(EVERY["bust_dart"], "side", "side", got.append).widget
    word.value = "shoulder"
    tick = control(EVERY["stretch_arrow"], False, False, got.append).widget
    tick.value = True
    assert got == [96.0, 88.0, "shoulder", True]


@given(some.floats(0, 400), some.integers(1, 10))
def test_opening_and_closing_a_readout_again_and_again_changes_nothing(
    value: float, times: int
) -> None:
    """Trouble NB6: only what is shown is rounded, never what is kept."""
    got: list[Any] = []
    slider = control(LENGTH, value, 100.0, got.append).widget
    for _, digits in itertools.product(range(times), (1, 6)):
        slider.value = round(slider.value, digits)
    assert got == []


@given(some.integers(0, 4000))
def test_a_length_typed_in_tenths_of_a_millimetre_comes_back_exactly(tenths: int) -> None:
    mm = float(f"{tenths / 10:.1f}")
    assert taken(LENGTH, shown(LENGTH, mm), -1.0) == mm
