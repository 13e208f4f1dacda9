"""A save changes the text and nothing else of a maker's file: link, mode, encoding, line ends stay."""

from __future__ import annotations

import os
import stat
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from drafting.costume.file import read_costume
from drafting.ground.errors import DraftError
from drafting.notebook import whole_files
from drafting.notebook.cloth.state import begin_cloth, with_test
from drafting.notebook.living.saving import kept, save
from drafting.notebook.measuring.state import begin_measuring, saved, typed
from drafting.notebook.whole_files import decoded, put_whole
from drafting.reading.given import Given
from tests.hostile import costume_in

REMARK = "# Åse's own remark\n"


def save_measure(path: Path) -> None:
    saved(typed(begin_measuring(path), "hip_girth", ("90 cm",)))


def save_test(path: Path) -> None:
    with_test(begin_cloth(path), "bending_length_along", {"overhang": "5 cm", "angle": 41.5})


def save_choice(path: Path) -> None:
    costume = read_costume(path)
    top = costume.garments[0]
    moved = replace(top, choices={**top.choices, "puff_width": Given(12)})
    save(replace(costume, garments=(moved, *costume.garments[1:])), costume, kept(costume))


SAVES: dict[str, tuple[Callable[[Path], None], str]] = {
    "wearer": (save_measure, "hip_girth = 90"),
    "cloth": (save_test, 'bending_length_along = {overhang = "5 cm", angle = 41.5}'),
    "costume": (save_choice, "puff_width = 12"),
}
"""What saves each kind of file, and the line that is then in it."""

WRITINGS = {
    "UTF-8": lambda text: text.encode(),
    "mark": lambda text: b"\xef\xbb\xbf" + text.encode(),
    "CRLF": lambda text: text.replace("\n", "\r\n").encode(),
    "CR": lambda text: text.replace("\n", "\r").encode(),
    "UTF-16 little": lambda text: b"\xff\xfe" + text.encode("utf-16-le"),
    "UTF-16 big, CRLF": lambda text: b"\xfe\xff" + text.replace("\n", "\r\n").encode("utf-16-be"),
}


@pytest.mark.parametrize("how", WRITINGS)
@pytest.mark.parametrize("kind", SAVES)
def test_encoding_mark_and_line_ends_stay(kind: str, how: str, tmp_path: Path) -> None:
    path = costume_in(tmp_path)[kind]
    text = REMARK + path.read_text("utf-8")
    write, (save_it, line) = WRITINGS[how], SAVES[kind]
    path.write_bytes(write(text))
    save_it(path)
    new = decoded(path.read_bytes())[0].replace("\r\n", "\n")
    assert path.read_bytes() == write(new)
    assert line in new.splitlines()
    lost = set(text.splitlines()) - set(new.splitlines())
    assert all(row.partition(" =")[0] == line.partition(" =")[0] for row in lost)


@pytest.mark.parametrize("kind", SAVES)
def test_a_link_stays_a_link_and_a_mode_a_mode(kind: str, tmp_path: Path) -> None:
    path = costume_in(tmp_path)[kind]
    real = path.with_name("real.toml")
    path.rename(real)
    path.symlink_to("real.toml")
    real.chmod(0o640)
    save_it, line = SAVES[kind]
    save_it(path)
    assert os.readlink(path) == "real.toml"
    assert stat.S_IMODE(real.stat().st_mode) == 0o640
    assert line in real.read_text("utf-8").splitlines()
    assert sorted(found.name for found in path.parent.iterdir() if found.name.startswith(".")) == []


@pytest.mark.parametrize("kind", SAVES)
def test_a_read_only_file_is_refused_and_stays(kind: str, tmp_path: Path) -> None:
    path = costume_in(tmp_path)[kind]
    path.chmod(0o444)
    before = path.read_bytes()
    with pytest.raises((DraftError, OSError), match="read-only"):
        SAVES[kind][0](path)
    assert path.read_bytes() == before
    assert stat.S_IMODE(path.stat().st_mode) == 0o444


def test_a_private_file_is_never_open_to_others_on_the_way(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    place = tmp_path / "measures.toml"
    place.write_text("old")
    place.chmod(0o600)
    seen: list[int] = []
    real = os.fsync

    def looks(handle: int) -> None:
        seen.append(stat.S_IMODE(os.fstat(handle).st_mode))
        real(handle)

    monkeypatch.setattr(whole_files.os, "fsync", looks)
    put_whole(place, b"new")
    assert seen[0] == 0o600, "the file beside it"
    assert len(seen) == 2, "the file and its folder reach the disk"
    assert (place.read_bytes(), stat.S_IMODE(place.stat().st_mode)) == (b"new", 0o600)


def test_a_new_file_takes_the_rights_that_any_new_file_would(tmp_path: Path) -> None:
    old = os.umask(0o077)
    try:
        put_whole(tmp_path / "new.journal", b"a")
    finally:
        os.umask(old)
    assert stat.S_IMODE((tmp_path / "new.journal").stat().st_mode) == 0o600


def test_a_write_that_fails_or_was_killed_leaves_nothing_beside(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    place = tmp_path / f"{'å' * 120}.toml"
    place.write_text("old")
    killed = tmp_path / f".{place.name[:40]}.{'0f' * 8}.new"
    killed.write_text("half")
    os.utime(killed, (0, 0))
    mine = tmp_path / f".{place.name[:40]}.mine.new"
    mine.write_text("hers")

    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(whole_files.os, "fsync", full)
    with pytest.raises(OSError, match="No space"):
        put_whole(place, b"new")
    assert place.read_text() == "old"
    assert sorted(path.name for path in tmp_path.iterdir()) == sorted([place.name, mine.name])
