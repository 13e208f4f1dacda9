"""Each costume is written into a folder of its own: nothing is lost, or mixed with another's."""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from pathlib import Path

import pytest

from drafting.costume.file import CostumeFile, read_costume
from drafting.ground.shipped import demo_costume
from drafting.notebook.bench.own_folder import own_folder
from drafting.notebook.bench.write_out import WriteOut


def costume_at(place: Path) -> Path:
    place.parent.mkdir(parents=True, exist_ok=True)
    place.write_text('title = "Invented"\n')
    return place


def test_two_costumes_have_two_folders_and_each_keeps_its_own(tmp_path: Path) -> None:
    root = tmp_path / "lab"
    root.mkdir()
    names = ("rosa/costume.toml", "bo/costume.toml", "shirt.toml", "bo/shirt.toml", "Two Words!.toml")
    files = [costume_at(tmp_path / name) for name in names]
    folders = [own_folder(file, root) for file in files]
    assert [folder.name for folder in folders] == [
        "out-rosa",
        "out-bo",
        "out-shirt",
        "out-shirt-2",
        "out-two-words",
    ]
    assert [own_folder(file, root) for file in reversed(files)] == folders[::-1]
    files[2].unlink()  # her file is gone: what was written for it stays hers
    assert own_folder(costume_at(tmp_path / "elsewhere" / "shirt.toml"), root).name == "out-shirt-3"


def test_a_folder_that_stands_there_and_is_nobodys_is_passed_by(tmp_path: Path) -> None:
    letters = tmp_path / "out-shirt" / "letters.txt"
    letters.parent.mkdir()
    letters.write_text("mine")
    (tmp_path / "out-shirt-2").write_text("a file")
    (tmp_path / "out-shirt-3").mkdir()
    assert own_folder(costume_at(tmp_path / "shirt.toml"), tmp_path).name == "out-shirt-3"
    assert letters.read_text() == "mine"


def test_pages_that_ask_at_once_share_no_folder(tmp_path: Path) -> None:
    files = [costume_at(tmp_path / str(n) / "shirt.toml") for n in range(12)]
    with ThreadPoolExecutor(12) as pool:
        folders = list(pool.map(lambda file: own_folder(file, tmp_path), files))
    assert len(set(folders)) == len(files)


def test_a_second_costume_leaves_what_was_written_of_the_first(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The same garment of two files, as two pages of one lab write them."""
    pages = tmp_path / "lab" / "notebooks"
    pages.mkdir(parents=True)
    monkeypatch.chdir(pages)
    whole = read_costume(demo_costume())
    breeches = replace(whole, garments=tuple(g for g in whole.garments if g.name == "breeches"))
    before = tmp_path / "lab" / "out" / "report.json"  # what an earlier kit wrote, all costumes in one place
    before.parent.mkdir()
    before.write_text('{"schema": 1, "made_with": {}, "files": ["report.json"]}')
    for name in ("one", "two"):
        write(replace(breeches, path=str(costume_at(tmp_path / name / "costume.toml"))))
    assert sorted(path.name for path in (tmp_path / "lab").glob("out*")) == ["out", "out-one", "out-two"]
    assert [path.name for path in before.parent.iterdir()] == ["report.json"]
    for name in ("one", "two"):
        assert (tmp_path / "lab" / f"out-{name}" / "plan.html").is_file()


def write(costume: CostumeFile) -> None:
    said: list[str] = []
    writing = WriteOut(lambda: costume, None, said.append)
    writing.button.click()
    writing.errand.wait(120)
    assert said == [""]
    assert "Done" in writing.words.value
