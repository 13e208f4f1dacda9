"""Prices are read strictly: what could be meant in two ways, or is no price, is refused in words."""

from __future__ import annotations

from pathlib import Path

import pytest

from drafting.costume.workroom import read_workroom
from drafting.fabric.reader import read_fabric
from drafting.ground.errors import InputError
from drafting.ground.prices import parse_price
from drafting.ground.units import BadValue

YARD = 0.9144
"""metres (the international yard, by law since 1959)."""

REFUSED = (
    "1.250,00",
    "1,250.00",
    "£1,250.00",
    "1.250",
    "2 m for 15 EUR",
    "3 for 2",
    "15 EUR / 2 m",
    "-3",
    "€ -3",
    "3-",
)


@pytest.mark.parametrize("text", REFUSED)
def test_what_is_no_price_or_two_is_refused_and_told_how_to_write_it(text: str) -> None:
    with pytest.raises(BadValue) as refused:
        parse_price(text)
    assert text.strip("£€ ") in str(refused.value)


@pytest.mark.parametrize(
    ("text", "a_metre"),
    [
        ("8.90 per yard", 8.90 / YARD),
        ("8,90 EUR / yd", 8.90 / YARD),
        ("8.90 a metre", 8.90),
        ("8.90", 8.90),
        ("$1.250 a metre", 1.25),
        (3, 3.0),
    ],
)
def test_a_price_says_what_it_is_of(text: object, a_metre: float) -> None:
    assert parse_price(text) == pytest.approx(a_metre)


@pytest.mark.parametrize("number", [-3, -0.01, float("nan"), float("inf"), True])
def test_a_number_that_is_no_price_is_refused(number: object) -> None:
    with pytest.raises(BadValue):
        parse_price(number)


@pytest.mark.parametrize("text", REFUSED)
def test_a_workroom_and_a_cloth_are_refused_by_file_and_line(text: str, tmp_path: Path) -> None:
    room = tmp_path / "room.toml"
    room.write_text(f'title = "Room"\nstitches = [301]\n\n[prices]\nelastic = "{text}"\n', encoding="utf-8")
    with pytest.raises(InputError) as refused:
        read_workroom(room)
    assert "room.toml" in str(refused.value)
    assert "5" in str(refused.value)
    cloth = tmp_path / "cloth.toml"
    cloth.write_text(f'title = "Cloth"\nunit = "cm"\nwidth = 150\nprice = "{text}"\n', encoding="utf-8")
    with pytest.raises(InputError) as refused:
        read_fabric(cloth)
    assert "cloth.toml" in str(refused.value)
