"""`drafting new`: four files that can be made as they stand, on whom they were written for, and nothing lost."""

from __future__ import annotations

import shlex
import tomllib
from pathlib import Path

import pytest

from drafting.body import read_bodies, read_body
from drafting.commands.cli import main
from drafting.costume.make import make
from drafting.costume.new import new_files
from drafting.costume.whole import read_whole_costume
from drafting.costume.workroom import read_workroom
from drafting.fabric import read_fabric
from drafting.ground.errors import InputError
from drafting.ground.shipped import shipped

UNITS = ("cm", "mm", "in")

CAST = """wearer,height,bust_girth,high_bust_girth,waist_girth,hip_girth,shoulder_length.left,shoulder_length.right
unit,in,in,in,in,in,in,in
Anna "Ann" \\ Bo,64 1/2,36,35,29,39,4 3/4,4 7/8
Ben,70,40,39.5,34,40,5.5,5.5
"""


@pytest.mark.parametrize("unit", UNITS)
def test_what_is_written_can_be_made_at_once(tmp_path: Path, unit: str) -> None:
    assert main(["new", str(tmp_path / "mine"), "--unit", unit]) == 0
    made = make(read_whole_costume(tmp_path / "mine" / "costume.toml"))
    assert [garment.name for garment in made.garments] == ["shirt"]
    assert not [finding for finding in made.findings if finding.level == "error"]
    assert read_workroom(tmp_path / "mine" / "workroom.toml").stitches == ("301", "304")


def test_the_invented_figure_says_that_it_is_invented() -> None:
    for unit in UNITS:
        texts = new_files(None, unit)
        for name in ("wearer.toml", "cloth.toml"):
            assert "invented" in tomllib.loads(texts[name])["title"]
            assert "nvented" in texts[name].splitlines()[0] + texts[name].splitlines()[1]


@pytest.mark.parametrize("unit", UNITS)
@pytest.mark.parametrize("name", ["lamplighter", "kite"])
def test_a_wearer_is_taken_over_whole(tmp_path: Path, name: str, unit: str) -> None:
    """Every measured value within 0.01 mm, every estimate still an estimate, all that was said of her kept."""
    given = read_body(shipped("measurements") / "bodies" / f"{name}.toml")
    (tmp_path / "b.toml").write_text(new_files(given, unit)["wearer.toml"], "utf-8")
    again = read_body(tmp_path / "b.toml")
    for measure in given.measures:
        assert given.measured(measure) == again.measured(measure)
        for side in ("left", "right"):
            assert again.hand(measure, side) == pytest.approx(given.hand(measure, side), abs=0.01)
    assert again.layers == pytest.approx(dict(given.layers), abs=0.01)
    for fact in ("title", "taken_over", "waist_level", "posture", "measured_on", "figure", "weight"):
        assert getattr(again, fact) == getattr(given, fact), fact
    assert again.heel == pytest.approx(given.heel, abs=0.01)


def test_one_wearer_of_a_table_by_her_name(tmp_path: Path) -> None:
    table = tmp_path / "cast.csv"
    table.write_text(CAST, "utf-8")
    anna, ben = read_bodies(table)
    assert main(["new", str(tmp_path / "ben"), "--wearer", f"{table}#ben", "--unit", "in"]) == 0
    assert read_body(tmp_path / "ben" / "wearer.toml")["bust_girth"] == pytest.approx(40 * 25.4)
    assert main(["new", str(tmp_path / "anna"), "--wearer", f"{table}#{anna.title}"]) == 0
    written = read_body(tmp_path / "anna" / "wearer.toml")
    assert written.title == anna.title
    assert written.hand("shoulder_length", "right") == pytest.approx(4.875 * 25.4, abs=0.01)
    costume = tmp_path / "ben" / "costume.toml"
    assert read_whole_costume(costume, f"{table}#{anna.title}").wearer.title == anna.title
    assert ben["height"] == pytest.approx(70 * 25.4)


def test_what_is_wrong_with_another_row_of_the_table_is_a_note(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    table = tmp_path / "cast.csv"
    table.write_text(CAST.replace("Ben,70,40", "Ben,70,forty"), "utf-8")
    assert main(["new", str(tmp_path / "anna"), "--wearer", f'{table}#Anna "Ann" \\ Bo']) == 0
    (note,) = [
        found for found in read_body(f'{table}#Anna "Ann" \\ Bo').findings if found.check == "other wearers"
    ]
    assert (note.level, note.where) == ("note", "Ben")
    assert "cast.csv:4" in note.sentence
    assert "bust_girth" in note.sentence
    assert "bust_girth" in capsys.readouterr().out
    with pytest.raises(InputError, match="forty"):
        read_body(f"{table}#Ben")  # her own faults refuse her
    with pytest.raises(InputError, match="forty"):
        read_bodies(table)  # where all are wanted, all must be right
    assert main(["make", str(tmp_path / "anna" / "costume.toml"), "--wearer", f"{table}#Ben", "--out", "x"]) == 2
    table.write_text(CAST.replace("bust_girth,high_bust_girth", "bust_girth,bust_girth"), "utf-8")
    with pytest.raises(InputError, match="two columns"):
        read_body(f"{table}#Ben")  # what is wrong with the table is wrong with everybody in it


def test_a_costume_is_called_after_its_folder_and_the_next_commands_can_be_typed_as_they_are_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    folder = tmp_path / "rosa's new-coat"
    assert main(["new", str(folder)]) == 0
    assert tomllib.loads((folder / "costume.toml").read_text("utf-8"))["title"] == "Rosa's new coat"
    (told,) = [row for row in capsys.readouterr().out.splitlines() if row.startswith("  drafting body")]
    assert main(shlex.split(told)[1:]) == 0


def test_a_line_that_is_a_remark_is_right_once_the_mark_is_taken_away(tmp_path: Path) -> None:
    for unit in UNITS:
        texts = new_files(None, unit)
        hint = next(row for row in texts["wearer.toml"].splitlines() if "{ left" in row)
        (tmp_path / "b.toml").write_text(f"{texts['wearer.toml']}\n{hint.partition(': ')[2]}\n", "utf-8")
        body = read_body(tmp_path / "b.toml")
        assert body.hand("shoulder_length", "left") > body.hand("shoulder_length", "right") - 8
        assert 110 < body["shoulder_length"] < 130
        cloth = "\n".join(
            row.removeprefix("# ") if " = " in row else row for row in texts["cloth.toml"].splitlines()
        )
        (tmp_path / "c.toml").write_text(cloth, "utf-8")
        read = read_fabric(tmp_path / "c.toml")
        assert read.price is not None
        assert 0.01 < read.stretch_across < 0.05


def test_a_name_that_is_not_in_the_table_is_answered_with_the_nearest(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    table = tmp_path / "cast.csv"
    table.write_text(CAST, "utf-8")
    assert main(["new", str(tmp_path / "x"), "--wearer", f"{table}#Benn"]) == 2
    assert "did you mean Ben?" in capsys.readouterr().err
    assert not (tmp_path / "x").exists()
    with pytest.raises(InputError, match="name one behind a #"):
        read_body(table)


def test_nothing_that_exists_is_touched(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    place = tmp_path / "mine"
    place.mkdir()
    assert main(["new", str(place)]) == 0  # empty: hers to fill
    own = 'title = "mine now"\n'
    (place / "cloth.toml").write_text(own, "utf-8")
    before = {file.name: file.read_bytes() for file in place.iterdir()}
    assert main(["new", str(place)]) == 2
    assert "nothing was touched" in capsys.readouterr().err
    assert {file.name: file.read_bytes() for file in place.iterdir()} == before
    assert main(["new", str(place / "cloth.toml")]) == 2
    assert (place / "cloth.toml").read_text("utf-8") == own


def test_a_folder_that_make_wrote_is_not_replaced(tmp_path: Path) -> None:
    made = tmp_path / "out"
    made.mkdir()
    (made / "report.json").write_text('{"schema": 1, "made_with": "x"}', "utf-8")
    assert main(["new", str(made)]) == 2
    assert [file.name for file in made.iterdir()] == ["report.json"]


def test_a_wearer_who_sits_and_a_cloth_with_a_repeat_find_their_lines(tmp_path: Path) -> None:
    """Each line that only waits for its # to go is read as it stands."""
    for unit in UNITS:
        for name, text in new_files(None, unit).items():
            ready = text.replace("# posture", "posture").replace("# repeat_along", "repeat_along")
            (tmp_path / name).write_text(ready)
        costume = read_whole_costume(tmp_path / "costume.toml")
        assert costume.wearer.posture == "seated"
        assert 150.0 < (costume.fabrics["shell"].repeat_along or 0.0) < 170.0


def test_a_count_is_listed_as_a_whole_number(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["blocks", "skirt"]) == 0
    said = capsys.readouterr().out
    assert "gores = 8   (4..12 count)" in said
    assert "gore_hem = 1.7 " in said
