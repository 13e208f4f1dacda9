"""What controls say and take: shown in cm or inches, kept in mm to the last digit."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as some

from drafting.blocks import all_blocks
from drafting.costume.choices import garment_choices
from drafting.ground.choices import Choice
from drafting.ground.errors import InputError
from drafting.ground.lengths import in_unit
from drafting.ground.units import LengthUnit
from drafting.notebook.bench.controls import key_step, knob, names_by_part, slider_ends, typed_value, value_shown

EVERY = {c.name: c for block in all_blocks().values() for c in garment_choices(block)}
LENGTH = EVERY["bust_ease"]
UNITS = some.sampled_from(["cm", "in"])
INCH = 25.4  # mm, the definition of 1959


@pytest.mark.parametrize("choice", EVERY.values(), ids=EVERY)
def test_every_choice_has_a_control_with_its_name_its_meaning_and_its_usual_value(choice: Choice) -> None:
    shown = knob(choice, choice.default)
    assert choice.name.split("_")[0] in shown["label"].lower()
    assert in_unit(choice.meaning, "cm")[1:] in shown["meaning"]
    assert f"sually {value_shown(choice, choice.default)}." in shown["meaning"]
    kinds = {"word": "word", "yes/no": "tick"}
    assert shown["kind"] == kinds.get(choice.unit, "number")
    assert [word for word, _ in shown["words"]] == list(choice.words)


@pytest.mark.parametrize("name", all_blocks())
def test_every_choice_of_a_garment_stands_under_one_heading(name: str) -> None:
    names = tuple(dict.fromkeys(c.name for c in garment_choices(all_blocks()[name])))
    found = [choice for group in names_by_part(name, names).values() for choice in group]
    assert sorted(found) == sorted(names)


@pytest.mark.parametrize(("value", "low", "high"), [(450.0, 0, 450.0), (-20.0, -20.0, 400)])
def test_a_range_grows_to_hold_a_real_value(value: float, low: float, high: float) -> None:
    assert slider_ends(LENGTH, value) == (low, high)


@given(some.floats(-400, 400), UNITS)
def test_a_value_that_was_only_looked_at_comes_back_to_the_last_digit(value: float, unit: LengthUnit) -> None:
    """Only what is shown is rounded, never what is kept."""
    assert typed_value(LENGTH, value_shown(LENGTH, value, unit), value, unit) == value


@given(some.floats(-400, 400), UNITS)
def test_what_is_shown_is_no_further_off_than_its_last_figure(value: float, unit: LengthUnit) -> None:
    """1 mm in cm, 1/16 in on a tape; half of that is the most that rounding may take."""
    read = typed_value(LENGTH, value_shown(LENGTH, value, unit), -1e6, unit)
    assert abs(read - value) <= {"cm": 0.5, "in": INCH / 32}[unit] + 1e-9


@pytest.mark.parametrize(
    ("text", "unit", "mm"),
    [
        ("92 cm", "in", 920.0),
        ("3 1/4 in", "cm", 3.25 * INCH),
        ("6", "cm", 60.0),
        ("6", "in", 6 * INCH),
        ("9,5", "cm", 95.0),
        ("-1/2 in", "cm", -INCH / 2),
        ("70 mm", "cm", 70.0),
    ],
)
def test_a_typed_length_takes_its_own_unit_or_the_one_shown(text: str, unit: LengthUnit, mm: float) -> None:
    assert typed_value(LENGTH, text, 0.0, unit) == pytest.approx(mm, abs=1e-9)


@pytest.mark.parametrize("text", ["", "wide", "4 kg", "1/0", "nan"])
def test_what_cannot_be_read_is_refused_in_words(text: str) -> None:
    with pytest.raises(InputError, match=r"\w+ \w+"):
        typed_value(LENGTH, text, 0.0)


@pytest.mark.parametrize("choice", [c for c in EVERY.values() if c.unit == "mm"], ids=lambda c: c.name)
def test_a_key_moves_a_round_part_of_an_inch_where_inches_are_shown(choice: Choice) -> None:
    sixteenths: Any = key_step(choice, "in") / (INCH / 16)
    assert sixteenths == pytest.approx(round(sixteenths))
    assert 0.4 * choice.step <= key_step(choice, "in") <= max(INCH / 16, 2.6 * choice.step)
