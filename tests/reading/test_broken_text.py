"""Files that were saved or copied wrong: what is wrong with them, where, and what would be right."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from drafting.body.reader import read_bodies
from drafting.ground.errors import InputError
from drafting.printing.paper import paper_named
from drafting.reading.table import parse_table

BODY = 'unit = "cm"\n[measures]\nheight = 168\nbust_girth = 92\nwaist_girth = 74\nhip_girth = 98\n'


def refusal(file: Path) -> str:
    with pytest.raises(InputError) as refused:
        read_bodies(file)
    (fault,) = refused.value.faults
    return str(fault)


@pytest.mark.parametrize("coding", ["utf-16-be", "utf-16-le", "utf-32"])
def test_a_text_in_a_coding_that_nothing_names_is_no_puzzle_of_signs(tmp_path: Path, coding: str) -> None:
    file = tmp_path / "ann.toml"
    file.write_bytes(BODY.encode(coding))
    assert "save it as text, encoding UTF-8" in refusal(file)
    file.write_text(BODY.replace("height", "hei\0ght"), "utf-8")
    assert refusal(file).startswith(f"{file}:3: is not plain text")


def test_a_link_in_a_circle_and_a_file_in_a_folders_place_are_named(tmp_path: Path) -> None:
    (tmp_path / "a.toml").symlink_to("b.toml")
    os.symlink("a.toml", tmp_path / "b.toml")
    assert "leads round to itself" in refusal(tmp_path / "a.toml")
    (tmp_path / "c.toml").write_text(BODY, "utf-8")
    assert "c.toml is a file and no folder" in refusal(tmp_path / "c.toml" / "ann.toml")
    assert "too long for the name of a file" in refusal(tmp_path / ("x" * 400 + ".toml"))


def test_a_quote_that_nothing_closes_is_told_where_it_begins() -> None:
    rows = 'Name;Height\nBo;170\n"Ann;168\nCy;171\n'
    with pytest.raises(InputError, match=r"x\.csv:3: a quote is opened here and never closed"):
        parse_table(rows, "x.csv")
    assert len(parse_table('Name;Note\nBo;"two\nlines"\nAnn;"the last;\nof two"')) == 3
    for gap in ("", "\n", ";\n;\n"):  # inches, also below a row that is blank
        assert len(parse_table(f'Name;Waist\nBo;30"\n{gap}Ann;31"\n')) == 3
    with pytest.raises(InputError, match=r"x\.csv:3: a quote is opened here"):
        parse_table('Name;Note\n\nBo;"open\nAnn;31', "x.csv")


def test_a_paper_that_is_none_is_told_in_its_own_unit() -> None:
    with pytest.raises(InputError, match="a side of 1 cm is no paper's; it lies between 14 cm and 508 cm"):
        paper_named("1 x 1 cm")
    with pytest.raises(InputError, match="between 5 1/2 in and 200 in"):
        paper_named("roll 300 in")
