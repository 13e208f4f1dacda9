"""A file in another's place is named as what it is, with what it is for: never by what it lacks."""

from __future__ import annotations

from pathlib import Path

import pytest

from drafting.body.reader import read_body
from drafting.costume.cast import read_cast
from drafting.costume.whole import read_whole_costume
from drafting.fabric import read_fabric
from drafting.ground.errors import InputError
from drafting.ground.shipped import shipped

OURS = shipped("measurements")
FILES = {
    "body": OURS / "bodies" / "kite.toml",
    "cloth": OURS / "fabrics" / "drill.toml",
    "costume": OURS / "costumes" / "kite.toml",
    "cast": OURS / "casts" / "lanterns.toml",
    "fitting": OURS / "fittings" / "kite-first.toml",
    "workroom": OURS / "workrooms" / "attic-room.toml",
}
READERS = {"body": read_body, "cloth": read_fabric, "costume": read_whole_costume, "cast": read_cast}


@pytest.mark.parametrize("wanted", READERS)
@pytest.mark.parametrize("given", FILES)
def test_one_kind_of_file_in_anothers_place_is_named_once(wanted: str, given: str) -> None:
    if wanted == given:
        READERS[wanted](FILES[given])
        return
    with pytest.raises(InputError) as refused:
        READERS[wanted](FILES[given])
    (fault,) = refused.value.faults
    assert given in fault.what
    assert f"{wanted}" in fault.what.partition(", and ")[2]
    assert fault.right


@pytest.mark.parametrize(
    ("name", "held", "told"),
    [
        # By the signatures that the standard of each format states (PNG, JFIF, PDF, ZIP).
        ("x.toml", b"\x89PNG\r\n\x1a\n\x00\x00", "a picture"),
        ("x.toml", b"\xff\xd8\xff\xe0\x00\x10JFIF", "a picture"),
        ("x.toml", b"%PDF-1.7\n%\xe2\xe3", "a PDF"),
        ("x.toml", b"PK\x03\x04\x14\x00", "the whole file of a spreadsheet"),
        ("x.toml", b"<!doctype html><title>x</title>", "a page or a drawing"),
        ("x.toml", b'{"a": 1}', "data of another program"),
        ("x.csv", b"Name;Height\nAnn;168\n", "a table"),
    ],
)
def test_what_no_maker_wrote_is_named_by_what_it_is(tmp_path: Path, name: str, held: bytes, told: str) -> None:
    file = tmp_path / name
    file.write_bytes(held)
    with pytest.raises(InputError) as refused:
        read_whole_costume(file)
    (fault,) = refused.value.faults
    assert f"is {told}, and a costume file is wanted here" in fault.what


def test_of_a_folder_the_files_in_it_are_offered(tmp_path: Path) -> None:
    (tmp_path / "kite.toml").write_text('[garments.top]\nblock = "shirt"\n', "utf-8")
    (tmp_path / "body.toml").write_text("[measures]\nheight = 168\n", "utf-8")
    with pytest.raises(
        InputError, match="is a folder, and a costume file is wanted here; name a file in it, as kite"
    ):
        read_whole_costume(tmp_path)


@pytest.mark.parametrize("name", ["kite.pdf", "kite.xlsx", "kite.json", "kite.svg", "kite.toml"])
def test_a_file_that_is_not_there_is_told_as_that_whatever_its_name_ends_in(tmp_path: Path, name: str) -> None:
    with pytest.raises(InputError, match="there is no such file"):
        read_whole_costume(tmp_path / name)


def test_a_line_of_notes_makes_no_body_file_a_fitting(tmp_path: Path) -> None:
    file = tmp_path / "ann.toml"
    file.write_text('unit = "cm"\nnotes = "asked twice"\nheight = 168\n', "utf-8")
    with pytest.raises(InputError) as refused:
        read_body(file)
    assert not any("fitting" in fault.what for fault in refused.value.faults)
    assert "height" in str(refused.value)
