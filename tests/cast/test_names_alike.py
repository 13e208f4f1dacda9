"""Wearers of one name, rows that are nobody's, and tables that hold no wearer: told by their lines."""

from __future__ import annotations

from pathlib import Path

import pytest

from drafting.body.reader import read_body
from drafting.costume.cast import read_cast
from drafting.ground.errors import InputError
from tests.cast.troupe import CAST, TABLE, troupe_in


def test_two_of_one_name_are_named_with_both_lines_and_stop_nobody(tmp_path: Path) -> None:
    cast = troupe_in(tmp_path, hopeless=False)
    cast.write_text(CAST.replace(', "cy.toml"]', "]"), "utf-8")
    (tmp_path / "table.csv").write_text(TABLE.replace("Ida;", "ada;") + "Ida;;170;96;30;100;\n", "utf-8")
    read = {(one.name, one.folder): one for one in read_cast(cast).wearers}
    dressed = [name for (name, _), one in read.items() if one.body]
    assert dressed == ["Bo", "Ida"]
    lost = [one for one in read.values() if one.body is None]
    assert [one.faults[0].line for one in lost] == [3, 5]
    assert ["line 5" in str(lost[0].faults[0]), "line 3" in str(lost[1].faults[0])] == [True, True]
    assert len({one.folder for one in read.values()}) == len(read)


def test_two_of_one_name_are_told_apart_by_a_column_id(tmp_path: Path) -> None:
    cast = troupe_in(tmp_path, hopeless=False)
    cast.write_text(CAST.replace(', "cy.toml"]', "]").replace('"Ada"', '"Ada (7)"'), "utf-8")
    rows = ["ID", "", "7", "", "", "9"]
    table = [f"{row};{own}" for row, own in zip(TABLE.splitlines(), rows, strict=False)]
    (tmp_path / "table.csv").write_text("\n".join([*table, "Ada;;172;95;31;101;;9", "#Old;;1;2;3;4;;"]), "utf-8")
    found = {one.name: one for one in read_cast(cast).wearers}
    assert list(found) == ["Ada (7)", "Bo", "Ida", "Ada (9)"]
    assert [one.body and one.body["height"] for one in found.values()] == [1680.0, 1810.0, 1700.0, 1720.0]
    assert read_body(found["Ada (7)"].source)["height"] == 1680.0  # as `make --wearer` names her


@pytest.mark.parametrize(
    ("table", "told"),
    [
        ("", "Name, Height, Bust, Waist, Hip, and below it one wearer a row"),
        ("\n;;;\n", "holds no rows; write a row of headings, as Name"),
        ("Bust;Waist\n90;70\n", "heads no column with the wearers' names"),
        ("The band in spring\n", "heads no column with the wearers' names"),
        ("Name;Height;Bust\n", "holds no wearer; write one row for each"),
        ("Name;Height (cm)\nTotal;845\n", "adds up the others"),
    ],
)
def test_a_table_that_holds_no_wearer_is_told_how_one_looks(tmp_path: Path, table: str, told: str) -> None:
    cast = troupe_in(tmp_path, hopeless=False)
    cast.write_text(CAST.split("lay_together")[0].replace(', "cy.toml"]', "]"), "utf-8")
    (tmp_path / "table.csv").write_text(table, "utf-8")
    with pytest.raises(InputError) as refused:
        read_cast(cast)
    assert len(refused.value.faults) == 1
    assert told in str(refused.value)
