"""A file whose every number is in another unit than it says: asked about once, in both directions."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import pytest

from drafting.body import read_body
from drafting.ground.errors import InputError
from drafting.notebook.measuring.state import begin_measuring
from drafting.notebook.measuring.words import answered, question

WOMAN = {"height": 1680.0, "bust_girth": 920.0, "waist_girth": 740.0, "hip_girth": 980.0, "shoulder_length": 125.0}
MM = {"mm": 1.0, "cm": 10.0, "in": 25.4}
GREATER = (("in", "cm"), ("cm", "mm"), ("in", "mm"))
"""(what the file says, what the numbers are in) where she would be taller than anybody."""


def file_of(folder: Path, says: str, numbers: str, own: Mapping[str, str] | None = None) -> Path:
    file = folder / "wearer.toml"
    texts = {name: f"{mm / MM[numbers]:.5g}" for name, mm in WOMAN.items()} | dict(own or {})
    about = f'title = "One"\ntaken_over = "skin"\nwaist_level = "natural"\nunit = "{says}"\n[measures]\n'
    file.write_text(about + "".join(f"{name} = {text}\n" for name, text in texts.items()), "utf-8")
    return file


@pytest.mark.parametrize(("says", "numbers"), GREATER)
def test_a_file_that_makes_her_taller_than_anybody_is_asked_about_once(
    says: str, numbers: str, tmp_path: Path
) -> None:
    with pytest.raises(InputError) as refused:
        read_body(file_of(tmp_path, says, numbers))
    (fault,) = refused.value.faults
    assert (fault.field, fault.line) == ("unit", 4)
    assert f'write unit = "{numbers}"' in fault.right


@pytest.mark.parametrize(("numbers", "says"), GREATER)
def test_a_file_that_makes_her_a_doll_is_doubted_once(numbers: str, says: str, tmp_path: Path) -> None:
    found = read_body(file_of(tmp_path, says, numbers)).findings
    (asked,) = (one for one in found if one.level == "warning")
    assert f'write unit = "{numbers}" at the top of the file, else height = "' in asked.said(says)
    assert not any("if it is in" in one.said(says) for one in found)


def test_a_height_that_says_its_unit_is_believed(tmp_path: Path) -> None:
    giant = read_body(file_of(tmp_path, "in", "cm", {"height": '"168 in"'}))
    assert giant["height"] == pytest.approx(168 * 25.4)
    doll = read_body(file_of(tmp_path, "cm", "in", {"height": '"66 cm"'}))
    assert [one for one in doll.findings if one.level == "warning"] == []


def test_a_slip_of_point_and_unit_at_once_has_its_suggestion(tmp_path: Path) -> None:
    with pytest.raises(InputError) as refused:
        read_body(file_of(tmp_path, "cm", "cm", {"hip_girth": "3.8"}))
    assert 'hip_girth = "38 in"' in str(refused.value)
    with pytest.raises(InputError) as refused:
        read_body(file_of(tmp_path, "cm", "cm", {"hip_girth": "2"}))
    assert "between 63.8 cm and 193.2 cm goes with that height" in str(refused.value)  # .38 and 1.15 of 168


@pytest.mark.parametrize(("says", "numbers"), [*GREATER, ("cm", "in")])
def test_the_guide_asks_it_in_one_question_and_takes_a_yes(says: str, numbers: str, tmp_path: Path) -> None:
    begun = begin_measuring(file_of(tmp_path, says, numbers))
    asked = question(begun)
    assert asked is not None
    assert (set(asked.measures), asked.unit) == (set(WOMAN), numbers)
    after = answered(begun, asked, yes=True)
    assert question(after) is None
    assert after.body is not None
    assert after.body["hip_girth"] == pytest.approx(980, rel=1e-3)
    assert question(answered(begun, asked, yes=False)) is None
