"""The costume file after a save, read back by the kit's reader and line by line."""

from __future__ import annotations

import os
import shutil
from decimal import Decimal
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as some

from drafting.costume.file import read_costume
from drafting.costume.make import make
from drafting.ground.errors import DraftError, InputError
from drafting.ground.shipped import shipped
from drafting.ground.units import parse_length
from drafting.notebook import Bench, whole_files
from drafting.notebook.living import saving
from drafting.notebook.living.saving import length_as_written

SIX = ("bust_ease", "waist_ease", "arm_ease", "cap_ease", "length_ease")


@pytest.fixture
def file(tmp_path: Path) -> Path:
    """A maker's own copy of the lamplighter, a comment of theirs beside one choice."""
    shutil.copytree(shipped("measurements"), tmp_path / "measurements")
    path = tmp_path / "measurements" / "costumes" / "lamplighter.toml"
    text = path.read_text("utf-8").replace('"9 cm"', '"9 cm"  # she eats well')
    path.write_bytes(text.replace("\n", "\r\n").encode())
    (tmp_path / "notebooks").mkdir()
    return path


@pytest.fixture
def bench(file: Path, monkeypatch: pytest.MonkeyPatch) -> Bench:
    monkeypatch.chdir(file.parents[2] / "notebooks")
    return Bench(read_costume(file), "shirt", SIX)


def test_only_the_lines_of_what_was_moved_are_changed(bench: Bench, file: Path) -> None:
    before = file.read_bytes().split(b"\r\n")
    bench.ask("waist_ease", 85.0)
    bench.ask("cap_ease", 15.875)
    bench.ask("bust_ease", 110.0)
    bench.ask("length_ease", 12.0)
    bench.save()
    after = file.read_bytes().split(b"\r\n")
    gone = [line for line in before if line not in after]
    new = [line for line in after if line not in before]
    assert gone == [b"bust_ease = 10", b'waist_ease = "9 cm"  # she eats well', b'cap_ease = "1/2 in"']
    assert new == [
        b"bust_ease = 11",
        b'waist_ease = "8.5 cm"  # she eats well',
        b'cap_ease = "5/8 in"',
        b'length_ease = "1.2 cm"',
    ]
    assert after.index(b'length_ease = "1.2 cm"') == after.index(b"overhang = 4") + 1
    made = make(read_costume(file)).garments[1]
    assert made.choices["waist_ease"] == (85.0, "file")
    assert made.choices["cap_ease"] == (15.875, "file")
    assert made.draft == bench.made.garments[0].draft


def test_what_is_undone_after_a_save_is_saved_back(bench: Bench, file: Path) -> None:
    before = file.read_bytes()
    bench.ask("waist_ease", 85.0, 1)
    bench.ask("length_ease", 12.0, 2)
    bench.save()
    assert bench.widgets.reset.disabled  # nothing is apart from the file
    bench.undo()
    bench.undo()
    bench.save()
    assert file.read_bytes() == before


def test_what_somebody_else_wrote_meanwhile_stays_beside_her_own(bench: Bench, file: Path) -> None:
    bench.ask("waist_ease", 85.0)
    theirs = file.read_bytes().replace(b"bust_ease = 10", b"bust_ease = 12") + b"# a word of theirs\r\n"
    file.write_bytes(theirs)
    bench.save()
    assert file.read_bytes() == theirs.replace(b'"9 cm"', b'"8.5 cm"', 1)
    assert sorted(os.listdir(file.parent)) == [
        "bell-ringer.toml",
        "clock-mender.toml",
        "ferrywoman.toml",
        "kite.toml",
        "lamplighter.toml",
        "toll-keeper.toml",
    ]


def test_a_choice_that_somebody_else_changed_too_is_asked_about_once(bench: Bench, file: Path) -> None:
    bench.ask("waist_ease", 85.0)
    theirs = file.read_bytes().replace(b'"9 cm"', b'"7 cm"')
    file.write_bytes(theirs)
    with pytest.raises(InputError, match="waist ease of shirt was changed in the file"):
        bench.save()
    assert file.read_bytes() == theirs
    bench.save()
    assert b'waist_ease = "8.5 cm"' in file.read_bytes()


def test_a_clash_that_was_read_before_the_save_is_asked_about_all_the_same(bench: Bench, file: Path) -> None:
    bench.ask("waist_ease", 85.0)
    theirs = file.read_bytes().replace(b'"9 cm"', b'"7 cm"')
    file.write_bytes(theirs)
    bench.living.look()  # as the pages do by themselves, every second
    with pytest.raises(InputError, match="waist ease of shirt was changed in the file"):
        bench.save()
    assert file.read_bytes() == theirs
    bench.ask("waist_ease", 70.0)  # what the file says: nothing is left to ask about
    bench.save()
    assert file.read_bytes() == theirs


def test_a_file_changed_before_the_bench_was_begun_keeps_its_change(file: Path) -> None:
    costume = read_costume(file)
    file.write_bytes(file.read_bytes().replace(b"bust_ease = 10", b"bust_ease = 12"))
    bench = Bench(costume, "shirt", SIX)
    bench.ask("waist_ease", 85.0)
    bench.save()
    assert b"bust_ease = 12" in file.read_bytes()
    assert b'waist_ease = "8.5 cm"' in file.read_bytes()


def test_a_file_of_the_kit_is_not_changed_and_a_copy_works(
    bench: Bench, file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(saving, "INSTALLED", file.parents[1])
    before = file.read_bytes()
    bench.ask("waist_ease", 85.0)
    bench.widgets.save.click()
    said = bench.widgets.said.value
    copy = file.parent / "lamplighter-2.toml"
    assert "belongs to the kit" in said
    assert str(copy) in said
    assert bench.widgets.copy.layout.display is None
    bench.widgets.copy.click()
    assert str(copy) in bench.widgets.saved.value
    assert file.read_bytes() == before
    assert make(read_costume(copy)).garments[1].choices["waist_ease"] == (85.0, "file")


def test_a_copy_in_another_folder_still_finds_body_and_cloth(bench: Bench, file: Path) -> None:
    bench.ask("waist_ease", 85.0)
    elsewhere = file.parents[2] / "kept" / "safe" / "mine.toml"
    bench.save(elsewhere)
    copy = read_costume(elsewhere)
    assert copy.wearer == bench.costume.wearer
    assert copy.fabrics == bench.costume.fabrics
    with pytest.raises(InputError, match="stands there already"):
        bench.save(elsewhere)


def test_a_folder_that_cannot_be_written_is_told(
    bench: Bench, file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(*_: object, **__: object) -> None:
        raise OSError(28, "No space left on device")

    before = file.read_bytes()
    monkeypatch.setattr(whole_files.os, "open", full)
    bench.ask("waist_ease", 85.0)
    with pytest.raises(InputError, match="No space left on device"):
        bench.save()
    assert file.read_bytes() == before


def test_what_cannot_be_drafted_is_not_saved(bench: Bench, file: Path) -> None:
    before = file.read_bytes()
    bench.ask("arm_ease", 400.0)
    with pytest.raises(DraftError, match="nothing was saved"):
        bench.save()
    assert file.read_bytes() == before


@given(
    some.decimals(-5000, 5000, places=4),
    some.sampled_from(["9 cm", 9, "3 1/4 in", '3"', "90 mm", "1 ft", None, "0.5 yd"]),
    some.sampled_from(["cm", "mm", "in", None]),
)
def test_every_length_reads_back_to_the_last_digit(exact: Decimal, old: object, unit: str | None) -> None:
    written = length_as_written(exact, old, unit)
    assert parse_length(written, unit, sign="any") == float(exact)
