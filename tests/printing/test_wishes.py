"""The table `[print]` of a costume file: papers, pieces, a paper model, the interchange version."""

from __future__ import annotations

from pathlib import Path

import pytest

from drafting.costume.file import CostumeFile, read_costume
from drafting.ground.errors import InputError
from drafting.ground.shipped import demo_costume

WANTED = """
[print]
papers = ["A3", "roll 61 cm"]
pieces = ["shirt.front"]
model = "1:5"
dxf = "R12"
"""


def costume(folder: Path, table: str) -> CostumeFile:
    shipped = demo_costume()
    text = shipped.read_text("utf-8").replace("../", f"{shipped.parent.parent.as_posix()}/")
    path = folder / "mine.toml"
    path.write_text(text + table, "utf-8")
    return read_costume(path)


@pytest.mark.parametrize("table", ["", '\n[print]\nmodel = "1:4"\n'])
def test_where_no_paper_is_asked_for_one_file_is_true_on_a4_and_on_letter(tmp_path: Path, table: str) -> None:
    wishes = costume(tmp_path, table).prints
    (paper,) = wishes.papers
    assert paper.width <= 210.0  # ISO 216: A4 is 210 mm wide
    assert paper.height is not None
    assert paper.height <= 279.4  # ASME Y14.1: Letter is 11 in high
    assert wishes.wants("shirt", ["back"])


def test_papers_asked_for_replace_the_usual_one_and_pieces_are_only_those_named(tmp_path: Path) -> None:
    wishes = costume(tmp_path, WANTED).prints
    assert [paper.name for paper in wishes.papers] == ["a3", "roll-610"]
    assert (wishes.model, wishes.dxf) == (5, "R12")
    assert wishes.wants("shirt", ["front"])
    assert not wishes.wants("shirt", ["back"])


@pytest.mark.parametrize(
    ("line", "field"),
    [
        ('papers = ["foolscap"]', "print.papers"),
        ('papers = "a3"', "print.papers"),
        ('pieces = ["cloak.front"]', "print.pieces"),
        ('model = "1:7"', "print.model"),
        ('dxf = "R99"', "print.dxf"),
        ('paper = ["a3"]', "print.paper"),
    ],
)
def test_what_cannot_be_printed_is_refused_at_its_line(tmp_path: Path, line: str, field: str) -> None:
    with pytest.raises(InputError) as refused:
        costume(tmp_path, f"\n[print]\n{line}\n")
    (fault,) = refused.value.faults
    assert fault.field == field
    assert fault.right
    assert fault.line == len((tmp_path / "mine.toml").read_text("utf-8").splitlines())
