"""A measure in the wrong unit is asked about in both directions, with what it would be."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path

import pytest

from drafting.body import read_body
from drafting.body.dimensions import DIMENSIONS
from drafting.ground.errors import InputError
from drafting.ground.units import ShownUnit, show_length
from drafting.notebook.measuring.state import begin_measuring, typed
from drafting.notebook.measuring.words import answered, question, said_beside

INCHES = 'unit = "in"\n[measures]\nheight = 66\nhigh_bust_girth = 34\n'


def refused(folder: Path, text: str) -> str:
    file = folder / "wearer.toml"
    file.write_text(text, "utf-8")
    with pytest.raises(InputError) as error:
        read_body(file)
    return str(error.value)


def test_centimetres_under_inches_are_refused_with_both_units(tmp_path: Path) -> None:
    said = refused(tmp_path, INCHES + "bust_girth = 90\nwaist_girth = 75\nhip_girth = 99\n")
    assert "90 in (228.6 cm) / 75 in (190.5 cm) / 99 in (251.5 cm)" in said  # 2.54 cm to the inch
    assert "35 3/8 in (90 cm) / 29 1/2 in (75 cm) / 39 in (99 cm)" in said
    assert 'bust_girth = "90 cm", else "90 in"' in said


def test_inches_that_their_maker_wrote_out_are_believed_with_a_doubt(tmp_path: Path) -> None:
    file = tmp_path / "wearer.toml"
    file.write_text(INCHES + 'bust_girth = "80 in"\nwaist_girth = 70\nhip_girth = "80 in"\n', "utf-8")
    doubts = [f.said("in") for f in read_body(file).findings if f.check == "girth and height"]
    assert any("if it is in centimetres, it is 31 1/2 in" in said for said in doubts)


def test_a_slipped_point_in_inches_is_answered_in_inches(tmp_path: Path) -> None:
    said = refused(tmp_path, INCHES + "bust_girth = 36\nwaist_girth = 29\nhip_girth = 3.8\n")
    assert "9.652" not in said
    assert 'hip_girth = "38 in"' in said


def test_a_height_in_centimetres_under_inches_is_the_height_s_own_fault(tmp_path: Path) -> None:
    said = refused(tmp_path, INCHES.replace("66", "168") + "bust_girth = 36\nwaist_girth = 29\nhip_girth = 38\n")
    assert 'height = "168 cm"' in said
    assert "bust_girth" not in said


MM = {"cm": 10.0, "in": 25.4, "mm": 1.0}
BESIDE = 'figure = "womens"\ntaken_over = "skin"\nwaist_level = "natural"\n'


@pytest.fixture(scope="module")
def everything(tmp_path_factory: pytest.TempPathFactory) -> dict[str, float]:
    """Return every measure of a woman, mm, most of them as the rules expect them."""
    file = tmp_path_factory.mktemp("body") / "whole.toml"
    main = "height = 168\nbust_girth = 92\nwaist_girth = 74\nhip_girth = 98\n"
    file.write_text(f'unit = "cm"\n{BESIDE}[measures]\n{main}', "utf-8")
    return {name: one.mm for name, one in read_body(file).measures.items() if name in DIMENSIONS}


def in_a_file(measures: Mapping[str, str], unit: str) -> str:
    lines = "\n".join(f"{name} = {value}" for name, value in measures.items())
    return f'unit = "{unit}"\n{BESIDE}[measures]\n{lines}\n'


def written(mm: float, unit: str) -> str:
    return f"{mm / MM[unit]:.5g}"


def slips(everything: Mapping[str, float], unit: str) -> Iterator[tuple[str, str, str]]:
    """Yield a measure, its number written in another unit or with another decimal, and which it is."""
    for name, mm in everything.items():
        yield from ((name, written(mm, other), other) for other in MM if other != unit)
        yield name, written(mm / 10, unit), "a tenth"
        if unit == "in":  # ten times as many cm are mm
            yield name, written(10 * mm, unit), "ten times"


def said_of(file: Path, unit: ShownUnit) -> list[str]:
    try:
        return [f"{one.where} {one.said(unit)}" for one in read_body(file).findings]
    except InputError as error:
        return [str(one) for one in error.faults]


@pytest.mark.parametrize("unit", ["cm", "in"])
def test_each_measure_in_another_unit_is_asked_about_with_what_it_would_be(
    everything: dict[str, float], unit: ShownUnit, tmp_path: Path
) -> None:
    file = tmp_path / "wearer.toml"
    right = {name: written(mm, unit) for name, mm in everything.items()}
    file.write_text(in_a_file(right, unit), "utf-8")
    clean, unasked = said_of(file, unit), []
    for name, number, slip in slips(everything, unit):
        file.write_text(in_a_file({**right, name: number}, unit), "utf-8")
        new = [said for said in said_of(file, unit) if said not in clean and name in said]
        meant = show_length(everything[name], unit)[:3], f'"{number} '
        if not any(meant[0] in said or meant[1] in said for said in new):
            unasked.append((name, number, slip))
    assert len(everything) > 35
    assert unasked == []


@pytest.mark.parametrize("unit", ["cm", "in"])
def test_the_page_asks_the_same_of_each_field_and_takes_a_yes(
    everything: dict[str, float], unit: ShownUnit, tmp_path: Path
) -> None:
    file = tmp_path / "wearer.toml"
    file.write_text(in_a_file({name: written(mm, unit) for name, mm in everything.items()}, unit), "utf-8")
    begun = begin_measuring(file)
    assert question(begun) is None
    for name, number, slip in slips(everything, unit):
        taking = typed(begun, name, (number,))
        asked = question(taking)
        if slip not in MM:  # no unit explains it: it is said beside the field
            assert said_beside(taking)[name] != said_beside(begun).get(name, []), (name, number)
            continue
        assert asked is not None, (name, number)
        assert (asked.measures, asked.unit) == ((name,), slip)
        after = answered(taking, asked, yes=True)
        assert question(after) is None
        assert after.faults == ()
        assert after.body is not None
        assert abs(after.body.measures[name].mm / everything[name] - 1) < 0.001


SLIPPED = {
    "one hand in inches": ("cm", "shoulder_length = {left = 12.5, right = 4.9}", "is one of them in inches?"),
    "one hand in cm": ("in", "shoulder_length = {left = 5, right = 12.5}", "is one of them in centimetres?"),
    "one hand in mm": ("cm", "shoulder_length = {left = 12.5, right = 125}", "is one of them millimetres?"),
    "a waist in cm among inches": ("in", "waist_girth = 74", "if it is in centimetres, it is 29 1/8 in"),
    "mm among inches": ("in", "hip_girth = 980", "if it is in millimetres, it is 38 5/8 in"),
    "a height in inches": ("cm", "height = 66", 'height = "66 in"'),
    "a height with its point too far left": ("in", "height = 6.6", 'height = "66 in"'),
    "a girth with its point too far right": ("in", "bust_girth = 362", 'bust_girth = "36.2 in"'),
}


@pytest.mark.parametrize(("unit", "line", "asked"), SLIPPED.values(), ids=SLIPPED)
def test_slips_of_a_hand_of_a_unit_and_of_a_point_are_asked_about(
    unit: ShownUnit, line: str, asked: str, tmp_path: Path
) -> None:
    main = {"height": 1680.0, "bust_girth": 920.0, "waist_girth": 740.0, "hip_girth": 980.0}
    main.pop(line.split(" = ")[0], None)
    file = tmp_path / "wearer.toml"
    file.write_text(in_a_file({n: written(mm, unit) for n, mm in main.items()}, unit) + line + "\n", "utf-8")
    assert any(asked in said for said in said_of(file, unit)), said_of(file, unit)


def test_a_laced_waist_is_not_taken_for_another_unit(tmp_path: Path) -> None:
    file = tmp_path / "wearer.toml"
    measures = {"height": "168", "bust_girth": "92", "waist_girth": "51", "hip_girth": "98"}
    file.write_text(in_a_file(measures, "cm"), "utf-8")
    assert not any("inches" in said for said in said_of(file, "cm"))


def test_a_slender_youth_is_asked_to_measure_again_and_of_no_unit_that_would_not_answer(tmp_path: Path) -> None:
    # Invented; the survey's least is 0.472 of the height, and no other unit goes with 0.46 of it.
    file = tmp_path / "wearer.toml"
    file.write_text(
        'unit = "cm"\n[measures]\nheight = 192\nbust_girth = 88\nwaist_girth = 71\nhip_girth = 89\n', "utf-8"
    )
    (doubt,) = [f for f in read_body(file).findings if f.check == "girth and height"]
    assert doubt.level == "note"
    assert "measure both again" in doubt.said("cm")
    assert "unit" not in doubt.said("cm")
