"""Notes followed from fitting to fitting, from costume to costume, and told where they move nothing."""

from __future__ import annotations

from pathlib import Path

import pytest

from drafting.costume.file import read_costume
from drafting.costume.make import make
from drafting.fitting.note import AtMeasure
from drafting.ground.errors import InputError
from tests.fitting.test_fitting_files import BODY, PINCHED, costume, read


@pytest.mark.parametrize(
    ("state", "amount", "waist"),
    [
        ("right", "1 cm", 760),
        ("on paper", "1 cm", 760),
        ("seen", "1 cm", 760),
        ("still wrong", "0.5 cm", 740),
        ("pinned", "0.5 cm", 740),
        ("too much", "0.5 cm", 780),
        ("too much", "1.5 cm", 820),
    ],
)
def test_a_note_is_followed_from_fitting_to_fitting_and_never_applied_twice(
    tmp_path: Path, state: str, amount: str, waist: float
) -> None:
    later = PINCHED.replace("1 cm", amount).replace('"pinned"', f'"{state}"')
    found = read(tmp_path, PINCHED, later)
    if waist < 750:
        assert found.wearer["waist_girth"] == 800  # 6 cm round: back to the tape
        assert "over 5 cm" in found.fittings.findings[0].said("cm")
    else:
        assert found.wearer["waist_girth"] == waist
    (thread,) = found.fittings.threads
    assert [note.spot.file.rpartition("/")[2] for note in thread.said] == ["own-0.toml", "own-1.toml"]
    assert thread.closed == (state == "right")


def test_fittings_with_days_are_followed_in_their_order(tmp_path: Path) -> None:
    path = costume(tmp_path, PINCHED.replace("1 cm", "0.3 cm").replace("pinned", "too much"), PINCHED)
    first = tmp_path / "own-0.toml"
    first.write_text(first.read_text("utf-8").replace("2026-11-09", "2026-11-16"), "utf-8")
    assert read_costume(path).wearer["waist_girth"] == 772


def test_the_same_fitting_of_costume_and_wearer_is_applied_once(tmp_path: Path) -> None:
    path = costume(tmp_path, PINCHED)
    body = tmp_path / "body.toml"
    body.write_text('fittings = ["./own-0.toml"]\n' + body.read_text("utf-8"), "utf-8")
    assert read_costume(path).wearer["waist_girth"] == 760


def test_notes_about_the_body_go_with_the_wearer_and_those_of_style_stay(tmp_path: Path) -> None:
    style = PINCHED.replace('"body"', '"style"\ngarment = "cape"').replace('"waist"', '"front.side"')
    found = read(tmp_path, hers=(PINCHED + style,))
    assert found.wearer["waist_girth"] == 760
    assert found.fittings.lines == ()
    assert [thread.note.where for thread in found.fittings.threads] == [AtMeasure("waist_girth")]


def test_on_another_wearer_the_notes_about_the_first_body_are_left_out(tmp_path: Path) -> None:
    path = costume(tmp_path, PINCHED)
    (tmp_path / "other.toml").write_text(BODY.replace("waist_girth = 80", "waist_girth = 70"), "utf-8")
    found = read_costume(path, tmp_path / "other.toml")
    assert found.wearer["waist_girth"] == 700
    assert "goes with her" in found.fittings.findings[0].said("cm")
    assert read_costume(path, tmp_path / "body.toml").wearer["waist_girth"] == 760


def test_a_tape_laid_after_the_fitting_holds_the_note_already(tmp_path: Path) -> None:
    found = read_costume(costume(tmp_path, PINCHED, top="on = 2026-11-01"))
    assert found.wearer["waist_girth"] == 800
    assert "laid again on 2026-11-02" in found.fittings.findings[0].said("cm")


@pytest.mark.parametrize("kind", ["cloth", "accident"])
def test_what_lies_with_the_cloth_or_the_shears_changes_no_draft(tmp_path: Path, kind: str) -> None:
    note = PINCHED.replace('"body"', f'"{kind}"\ngarment = "shirt"')
    (tmp_path / "plain").mkdir()
    plain, noted = make(read(tmp_path / "plain")), make(read(tmp_path, note))
    assert noted.garments[0].draft == plain.garments[0].draft
    assert any(kind in finding.message for finding in noted.findings if finding.check == "fitting")


def test_a_name_that_no_draft_has_is_refused_at_the_line_of_its_note(tmp_path: Path) -> None:
    note = PINCHED.replace('"waist"', '"front.sied"').replace('"body"', '"style"\ngarment = "shirt"')
    with pytest.raises(InputError) as refused:
        make(read(tmp_path, note))
    (fault,) = refused.value.faults
    assert (Path(fault.file).name, fault.line) == ("own-0.toml", 4)
    assert "side" in str(fault)
