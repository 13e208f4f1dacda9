"""Choices of a block, read from raw values by each choice's own unit."""

from __future__ import annotations

from dataclasses import dataclass

import pytest

from drafting.ground.choices import choice
from drafting.ground.errors import Fault, InputError
from drafting.ground.sources import ours
from drafting.reading import Given, Origin, read_choices

INVENTED = ours("invented for this test")


@dataclass(frozen=True)
class Choices:
    """Invented choices, one of each unit."""

    ease: float = choice(80.0, "mm", "ease", low=-100, high=400, scales=True, source=INVENTED)
    drop: float = choice(40.0, "mm", "drop", low=0, high=120, source=INVENTED)
    bend: float = choice(7.0, "deg", "bend", low=0, high=20, source=INVENTED)
    share: float = choice(40.0, "percent", "share of the stretch", low=0, high=100, source=INVENTED)
    ratio: float = choice(1.5, "ratio", "fullness", low=1, high=4, source=INVENTED)
    darts: int = choice(1, "count", "darts", low=0, high=3, source=INVENTED)
    opening: str = choice("none", "word", "opening", words=("front", "back", "none"), source=INVENTED)
    lined: bool = choice(False, "yes/no", "lining", source=INVENTED)
    length: float | None = choice(None, "mm", "length; from the body where nothing is said", source=INVENTED)


def read(unit: str | None = "cm", scale: float = 1.0, **raw: object) -> Choices:
    given = {name: Given(value, 10 + n) for n, (name, value) in enumerate(raw.items())}
    return read_choices(Choices, given, Origin("coat.toml", unit, "choices"), scale)[0]


def faults(**raw: object) -> dict[str, Fault]:
    with pytest.raises(InputError) as error:
        read(**raw)
    assert all(fault.file == "coat.toml" for fault in error.value.faults)
    return {fault.field.removeprefix("choices."): fault for fault in error.value.faults}


def test_each_choice_is_read_in_its_own_unit() -> None:
    got = read(
        ease="-1 1/2 in",
        drop=5,
        bend="12 deg",
        share="25 %",
        ratio="2,5",
        darts=2,
        opening="front",
        lined="yes",
        length="78 cm",
    )
    assert got == Choices(
        ease=pytest.approx(-38.1),
        drop=50.0,
        bend=12.0,
        share=25.0,
        ratio=2.5,
        darts=2,
        opening="front",
        lined=True,
        length=780.0,
    )


def test_the_source_of_each_value_is_told() -> None:
    _, sources = read_choices(Choices, {"drop": Given("3 cm", 4)}, Origin("coat.toml", "cm"))
    assert sources["drop"] == "file"
    assert {name for name, source in sources.items() if source == "default"} == {
        "ease",
        "bend",
        "share",
        "ratio",
        "darts",
        "opening",
        "lined",
        "length",
    }


def test_only_an_adults_default_shrinks_with_the_body_and_nothing_typed() -> None:
    small = read(scale=0.2)
    assert (small.ease, small.drop, small.length) == (16.0, 40.0, None)
    assert read(scale=0.2, ease=8).ease == 80.0


def test_all_faults_come_at_once_with_lines_and_ranges() -> None:
    found = faults(
        eese=3, drop=-1, bend=25, share="140 %", ratio=9, darts=1.5, opening="frnt", lined="maybe", ease="50 cm"
    )
    assert "did you mean ease" in found["eese"].right
    assert found["eese"].line == 10
    assert "0 cm to 12 cm" in found["drop"].right
    assert "0 deg to 20 deg" in found["bend"].right
    assert "0 percent to 100 percent" in found["share"].right
    assert "1 to 4" in found["ratio"].right
    assert "whole" in found["darts"].what
    assert found["opening"].right == "did you mean front? it is one of front, back, none"
    assert "-10 cm to 40 cm" in found["ease"].right
    assert found["ease"].what == "'50 cm' is out of range"
    assert found["bend"].what == "25 deg is out of range"
    assert found.keys() >= {"lined"}
    assert len(found) == 9


def test_a_bare_length_in_a_file_without_a_unit_asks() -> None:
    with pytest.raises(InputError, match="has no unit"):
        read(unit=None, ease=8)
    assert read(unit=None, ease="8 cm", bend=3).ease == 80.0
    assert "-3 7/8 in to 15 3/4 in" in str(faults_in_inches())


def faults_in_inches() -> InputError:
    with pytest.raises(InputError) as error:
        read(unit="in", ease=30)
    return error.value
