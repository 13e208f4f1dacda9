"""Runs that are stopped or find no room, dolls, formulas and code in a costume: said in words, nothing is lost."""

from __future__ import annotations

import csv
import errno
import io
import os
from pathlib import Path
from typing import Any

import pytest

from drafting.commands.cli import REFUSED, STOPPED, main
from drafting.costume.file import read_costume
from drafting.ground.errors import DraftError
from drafting.making.shopping import harmless_cell
from tests.hostile import costume_in
from tests.test_hostile_files import refused


@pytest.fixture
def made_once(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> dict[str, Path]:
    """A costume of one small piece, and a folder that an earlier run made."""
    files = costume_in(tmp_path)
    out = tmp_path / "out"
    out.mkdir()
    (out / "report.json").write_text('{"schema": 1, "made_with": {}, "files": ["report.json"]}')
    return files | {"out": out}


@pytest.mark.parametrize(
    ("trouble", "code", "word"),
    [
        (KeyboardInterrupt(), STOPPED, "stopped"),
        (OSError(errno.EFBIG, os.strerror(errno.EFBIG)), REFUSED, "File too large"),
        (OSError(errno.ENOSPC, os.strerror(errno.ENOSPC)), REFUSED, "No space left"),
        (OSError(errno.EDQUOT, os.strerror(errno.EDQUOT)), REFUSED, "quota"),
        (MemoryError(), REFUSED, "memory"),
    ],
)
def test_a_run_that_is_stopped_or_finds_no_room_says_so_and_leaves_what_was_there(
    made_once: dict[str, Path],
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    trouble: BaseException,
    code: int,
    word: str,
) -> None:
    from drafting.output import write

    def fails(*_: Any) -> None:
        raise trouble

    monkeypatch.setattr(write, "printed_sheets", lambda made: ())
    monkeypatch.setattr(write, "piece_sheet", fails)
    before = (made_once["out"] / "report.json").read_bytes()
    assert main(["make", str(made_once["costume"]), "--out", str(made_once["out"])]) == code
    said = capsys.readouterr().err
    assert word in said
    assert "Traceback" not in said
    assert [path.name for path in made_once["out"].iterdir()] == ["report.json"]
    assert (made_once["out"] / "report.json").read_bytes() == before
    assert [path.name for path in made_once["out"].parent.iterdir() if path.name.startswith(".")] == []


def test_a_doll_of_10_cm_is_told_what_helps_and_it_does(tmp_path: Path) -> None:
    files = costume_in(tmp_path)
    measures = "height = 10\nbust_girth = 5\nwaist_girth = 4\nhip_girth = 5\n"
    files["wearer"].write_text(f'unit = "cm"\nfigure = "womens"\n[measures]\n{measures}', "utf-8")
    head = 'wearer = "../bodies/kite.toml"\n[fabrics]\nshell = "../fabrics/stretch-jersey.toml"\n'
    garment = '[garments.top]\nblock = "close-top"\n[garments.top.choices]\n'
    files["costume"].write_text(head + garment, "utf-8")
    with pytest.raises(DraftError, match='seam_allowance = "2 mm"'):
        laid(files["costume"])
    narrower = 'seam_allowance = "2 mm"\ncurve_allowance = "2 mm"\n'
    files["costume"].write_text(head + garment + narrower, "utf-8")
    assert laid(files["costume"])


def laid(path: Path) -> bool:
    from drafting.costume.lays import laid_out
    from drafting.costume.make import make

    return bool(laid_out(make(read_costume(path))).lays)


@pytest.mark.parametrize("start", ["=", "+", "-", "@", "\t", "\r", "\uff1d"])
def test_no_cell_is_a_formula(start: str) -> None:
    out = io.StringIO()
    csv.writer(out).writerow([harmless_cell(f"{start}cmd|' /c calc'!A0"), harmless_cell("6 buttons")])
    (row,) = csv.reader(io.StringIO(out.getvalue(), newline=""))
    assert row[0].startswith("'")
    assert row[1] == "6 buttons"


def test_a_costume_that_names_a_folder_of_code_runs_nothing(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    files = costume_in(tmp_path)
    folder, mark = tmp_path / "blocks", tmp_path / "ran"
    folder.mkdir()
    code = f"from pathlib import Path\nPath({str(mark)!r}).touch()\n"
    for name in ("evil.py", "puffed_top.py", "conftest.py", "sitecustomize.py", "__init__.py"):
        (folder / name).write_text(code)
        (tmp_path / "costumes" / name).write_text(code)
    monkeypatch.chdir(tmp_path / "costumes")
    text = files["costume"].read_text("utf-8")
    ways = [
        text.replace('title = "The kite"', f'title = "The kite"\nblocks = "{folder}"'),
        text.replace('"puffed-top"', '"../blocks/evil.py"'),
        text.replace('"puffed-top"', '"blocks.evil"'),
        text.replace('"puffed-top"', '"evil"'),
        text.replace("../bodies/kite.toml", "../blocks/evil.py"),
        text.replace("../workrooms/theatre-store.toml", "../blocks"),
        text + f'[print]\nblocks = "{folder}"\n',
    ]
    for way in ways:
        assert way != text
        files["costume"].write_text(way, "utf-8")
        refused(files, tmp_path / "out", capsys)
        assert not mark.exists()
