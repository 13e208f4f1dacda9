"""What a maker keeps in an output folder, or reads from it: named, refused, never deleted."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from drafting.ground.errors import InputError
from drafting.output.folder import check_out, swap_in
from tests.output.test_folder import OURS, filled_with, refusal, word_in


@pytest.mark.parametrize("name", ["mine.toml", "pieces/notes.txt", "pieces/link", "sheets/a/b.pdf"])
def test_what_a_maker_put_into_our_folder_is_named_and_never_deleted(tmp_path: Path, name: str) -> None:
    out = tmp_path / "out"
    swap_in(out, filled_with("first"))
    (out / name).parent.mkdir(parents=True, exist_ok=True)
    if name.endswith("link"):
        (out / name).symlink_to(tmp_path)
    else:
        (out / name).write_text("hers")
    said = refusal(out)
    assert f"holds {name}, which no run made" in said
    assert "nothing was touched" in said
    assert (out / name).exists()
    assert word_in(out) == "first"


def test_many_strange_files_are_told_in_one_line(tmp_path: Path) -> None:
    out = tmp_path / "out"
    swap_in(out, filled_with("first"))
    for number in range(300):
        (out / f"fitting-{number:03}\x1b[31m.jpg").touch()
    said = refusal(out)
    assert "and 297 more" in said
    assert said.isprintable()


def test_a_folder_whose_record_lists_no_files_is_kept(tmp_path: Path) -> None:
    out = tmp_path / "out"
    swap_in(out, filled_with("first"))
    (out / "report.json").write_text(json.dumps(OURS))
    assert "pieces/front.svg" in refusal(out)


@pytest.mark.parametrize("way", ["plain", "deep", "by a link to the folder"])
def test_a_folder_that_holds_an_input_is_refused(tmp_path: Path, way: str) -> None:
    out = tmp_path / "out"
    swap_in(out, filled_with("first"))
    report = out / "report.json"
    inputs = {
        "plain": report,
        "deep": out / "pieces" / "front.svg",
        "by a link to the folder": tmp_path / "link" / "report.json",
    }
    (tmp_path / "link").symlink_to(out)
    with pytest.raises(InputError, match="which is read for it"):
        check_out(out, inputs=(None, inputs[way]))
    assert check_out(out, inputs=(tmp_path / "outer.toml", None)) == out
