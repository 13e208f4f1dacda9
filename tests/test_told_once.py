"""What is said is said once, of both hands, and of five files at once."""

from __future__ import annotations

from pathlib import Path

import pytest

from drafting.costume.whole import read_whole_costume
from drafting.ground.errors import InputError
from drafting.ground.findings import Finding, said_once

FILES = {
    "costume.toml": 'wearer = "body.toml"\nworkroom = "room.toml"\n[fabrics]\nshell = "shell.toml"\n'
    'lining = "lining.toml"\n[garments.shirt]\nblock = "shrit"\nfabric = "shell"\n',
    "body.toml": 'unit = "in"\n[measures]\nheight = 66\nbust_girth = 36\nwaist_girth = 29\nhip_girth = "£38"\n',
    "shell.toml": 'unit = "in"\nwidth = 60\nweave = "wovn"\n',
    "lining.toml": 'unit = "in"\nwidth = 55\nprice = "lots"\n',
    "room.toml": '[prices]\nthread = "£12"\nbuton = 1\n',
}


def test_five_faulty_files_are_told_at_once(tmp_path: Path) -> None:
    for name, text in FILES.items():
        (tmp_path / name).write_text(text, "utf-8")
    with pytest.raises(InputError) as refused:
        read_whole_costume(tmp_path / "costume.toml")
    assert {Path(fault.file).name: fault.line for fault in refused.value.faults} == {
        "costume.toml": 7,
        "body.toml": 6,
        "shell.toml": 3,
        "lining.toml": 3,
        "room.toml": 3,
    }


SHIRT = (
    'wearer = "body.toml"\n[fabrics]\nshell = "shell.toml"\n[garments.shirt]\nblock = "shirt"\nfabric = "shell"\n'
)


@pytest.mark.parametrize("written", ["£12", '"£12', "\u201c£12\u201d", '"£12"'])
def test_a_value_that_is_none_in_any_quotes_is_told_once(written: str, tmp_path: Path) -> None:
    (tmp_path / "costume.toml").write_text(f"{SHIRT}[garments.shirt.choices]\ncuff_depth = {written}\n", "utf-8")
    with pytest.raises(InputError) as refused:
        read_whole_costume(tmp_path / "costume.toml")
    (fault,) = (one for one in refused.value.faults if one.line == 8)
    assert "'£12' cannot be read as a length" in fault.what
    assert ("straight quotes" in fault.right) == (written != '"£12"')


def test_of_a_value_that_is_right_its_quotes_are_told(tmp_path: Path) -> None:
    (tmp_path / "costume.toml").write_text(f"{SHIRT}[garments.shirt.choices]\ncuff_depth = 7 cm\n", "utf-8")
    with pytest.raises(InputError) as refused:
        read_whole_costume(tmp_path / "costume.toml")
    (fault,) = (one for one in refused.value.faults if one.line == 8)
    assert fault.right == 'put quotes round the value: cuff_depth = "7 cm"'


def test_hands_that_differ_are_told_apart_and_the_worst_first() -> None:
    found = [
        Finding("cap", "note", "sleeve left", 1, None, "the same", hand="left"),
        Finding("cap", "note", "sleeve right", 1, None, "the same", hand="right"),
        Finding("neck", "note", "collar left", 1, None, "narrow", hand="left"),
        Finding("neck", "note", "collar right", 1, None, "wide", hand="right"),
        Finding("walk", "error", "side", 1, None, "too long"),
        Finding("area", "ok", "front", 1, None, "holds"),
    ]
    assert [(one.where, one.sentence) for one in said_once(found, "cm")] == [
        ("side", "too long"),
        ("sleeve left and right", "the same"),
        ("collar left", "narrow"),
        ("collar right", "wide"),
    ]


def test_a_sentence_that_begins_with_its_place_does_not_say_it_twice() -> None:
    wide = "coat.tail-1 needs 160 cm across the cloth, and there are 140 cm"
    found = [
        Finding("fits the cloth", "error", "coat.tail-1", 1600, 1400, wide),
        Finding("side", "note", "side", 1, None, "sides differ"),
    ]
    assert [(one.where, one.sentence) for one in said_once(found, "cm")] == [
        ("coat.tail-1", "Needs 160 cm across the cloth, and there are 140 cm"),
        ("side", "sides differ"),
    ]
