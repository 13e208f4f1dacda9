"""Lengths as makers write them. Exact arithmetic."""

from __future__ import annotations

import math
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drafting.ground.units import BadValue, parse_angle, parse_length, parse_percent, parse_weight, show_length


# The same four writings, in cm: 92.71, 60.01 (60.0075), 92.71, 92.0.
@pytest.mark.parametrize(
    ("text", "unit", "mm"),
    [
        ("36 1/2", "in", 927.1),
        ("23 5/8 in", "cm", 600.075),
        ('36.5"', "cm", 927.1),
        ("92 cm", "in", 920.0),
        ("36-1/2 in", None, 927.1),
        ("36½″", None, 927.1),
        ("36\u00a0½ in", None, 927.1),
        ("3/4 in", None, 19.05),
        ("92,5", "cm", 925.0),
        ("92.71 cm", None, 927.1),
        ("5' 4\"", None, 1625.6),
        ("5 ft 4 1/2 in", None, 1638.3),
        (92.71, "cm", 927.1),
        (920, "mm", 920.0),
        ("1.2 m", None, 1200.0),
        (".5", "in", 12.7),
    ],
)
def test_a_length_is_read_exactly(text: object, unit: str | None, mm: float) -> None:
    assert parse_length(text, unit) == mm


def test_two_separators_are_refused_and_never_guessed_at() -> None:
    with pytest.raises(BadValue, match="two separators"):
        parse_length("1.020,5", "cm")
    with pytest.raises(BadValue, match="two separators"):
        parse_length("1,020.5", "cm")


def test_a_bare_fraction_without_any_unit_asks_with_both_readings() -> None:
    with pytest.raises(BadValue) as asked:
        parse_length("36 1/2")
    assert "36 1/2 in (92.7 cm)" in asked.value.what
    assert "36 1/2 cm" in asked.value.what
    assert asked.value.right


@pytest.mark.parametrize(
    ("value", "said"),
    [
        ("", "empty"),
        ("   ", "empty"),
        (0, "zero"),
        ("0", "zero"),
        (-98, "negative"),
        ("-98 cm", "negative"),
        (math.nan, "not a number"),
        ("NaN", "not a number"),
        (math.inf, "not a number"),
        ("3/0", "divides by zero"),
        ("36 5/4", "not less than one"),
        ("ninety", "cannot be read"),
        ("92 ells", "not a unit"),
        (True, "not a length"),
        (None, "not a length"),
        ([92], "not a length"),
        ("1,020", "could be 1020 mm"),
        ("9" * 5000, "too long"),
        (1e300, "beyond"),
        (10**400, "beyond"),
        ("92 cm cm", "not a unit"),
    ],
)
def test_what_is_no_length_is_refused_in_plain_words(value: object, said: str) -> None:
    unit = "mm" if value == "1,020" else "cm"
    with pytest.raises(BadValue, match=said):
        parse_length(value, unit)


def test_ease_may_be_negative_or_zero_where_that_is_allowed() -> None:
    assert parse_length("-1/4 in", sign="any") == pytest.approx(-6.35, abs=1e-12)
    assert parse_length("−2,5", "cm", sign="any") == -25.0
    assert parse_length(0, "cm", sign="not negative") == 0.0
    with pytest.raises(BadValue, match="negative"):
        parse_length(-1, "cm", sign="not negative")


def test_weight_angle_and_percent_have_their_own_units() -> None:
    assert parse_weight("68 kg") == 68.0
    assert parse_weight("150 lb") == pytest.approx(68.0389, abs=1e-4)  # 0.45359237 kg, exact
    assert parse_angle("24°") == parse_angle("24 deg") == parse_angle(24) == 24.0
    assert parse_percent("4 %") == parse_percent("4%") == parse_percent(4) == 4.0
    with pytest.raises(BadValue, match="unit of weight"):
        parse_weight("68 cm")


@given(st.integers(1, 12000))
def test_every_eighth_of_an_inch_is_shown_and_read_back(eighths: int) -> None:
    mm = float(Fraction(eighths, 8) * Fraction(254, 10))
    assert parse_length(show_length(mm, "in")) == mm


@given(st.floats(0.1, 1e6), st.sampled_from(["mm", "cm", "in"]))
def test_what_is_shown_reads_back_within_half_of_the_last_place(mm: float, unit: str) -> None:
    half = {"mm": 0.05, "cm": 0.5, "in": 25.4 / 16}[unit]
    back = parse_length(show_length(mm, unit), sign="not negative")
    assert abs(back - mm) <= half + 1e-6


def test_a_shown_length_is_short() -> None:
    assert show_length(920) == "92 cm"
    assert show_length(0) == "0 cm"
    assert show_length(-0.2) == "0 cm"
    assert show_length(-3.175, "in") == "-1/8 in"


@given(st.text() | st.text("0123456789 /.,-'\"½″cmin", max_size=12), st.sampled_from([None, "cm", "in"]))
def test_any_text_gives_a_finite_length_or_is_refused(text: str, unit: str | None) -> None:
    try:
        mm = parse_length(text, unit)
    except BadValue:
        return
    assert 0 < mm <= 1e7


@given(st.one_of(st.none(), st.booleans(), st.integers(), st.floats(), st.lists(st.text())))
def test_any_value_gives_a_finite_length_or_is_refused(value: object) -> None:
    try:
        mm = parse_length(value, "cm")
    except BadValue:
        return
    assert 0 < mm <= 1e7


def test_no_angle_is_called_a_angle() -> None:
    for value in ([360], "three"):
        with pytest.raises(BadValue, match="an angle"):
            parse_angle(value)
