"""The output folder is swapped in whole: whatever happens, the old one or the new one is there."""

from __future__ import annotations

import json
import os
import shutil
import signal
import subprocess
import sys
import textwrap
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

import pytest

from drafting.ground.errors import InputError
from drafting.output import folder
from drafting.output.folder import check_out, swap_in

OURS = {"schema": 1, "made_with": {}}


def filled_with(word: str) -> Callable[[Path], Mapping[str, Any]]:
    def fill(into: Path) -> Mapping[str, Any]:
        (into / "pieces").mkdir()
        (into / "pieces" / "front.svg").write_text(word)
        return OURS

    return fill


def word_in(out: Path) -> str:
    return (out / "pieces" / "front.svg").read_text()


def names(parent: Path) -> list[str]:
    return sorted(path.name for path in parent.iterdir())


@pytest.fixture(params=["exchange of names", "two renames"])
def either_way(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> str:
    """Both ways to swap: the system's exchange, and the fallback where there is none."""
    if request.param == "two renames":
        monkeypatch.setattr(folder, "_exchange", lambda one, other: False)
    return str(request.param)


def test_this_system_exchanges_names_so_that_both_ways_are_tested(tmp_path: Path) -> None:
    one, other = tmp_path / "one", tmp_path / "other"
    one.mkdir()
    other.mkdir()
    (one / "mark").touch()
    if sys.platform != "linux":
        pytest.skip("exchange of names is asked of Linux only")
    assert folder._exchange(one, other)
    assert (other / "mark").exists()
    assert not (one / "mark").exists()


@pytest.mark.usefixtures("either_way")
def test_a_folder_is_made_then_replaced_whole_and_nothing_is_left_beside_it(tmp_path: Path) -> None:
    out = tmp_path / "out"
    swap_in(out, filled_with("first"))
    assert json.loads((out / "report.json").read_text())["files"] == ["pieces/front.svg", "report.json"]
    (out / "pieces" / ".DS_Store").touch()
    swap_in(out, filled_with("second"))
    assert word_in(out) == "second"
    assert names(out) == ["pieces", "report.json"]
    assert names(tmp_path) == ["out"]


@pytest.mark.usefixtures("either_way")
@pytest.mark.parametrize("fault", [ValueError("a bug"), KeyboardInterrupt()])
def test_a_run_that_fails_leaves_what_was_there(tmp_path: Path, fault: BaseException) -> None:
    out = tmp_path / "out"
    swap_in(out, filled_with("first"))

    def fails(into: Path) -> Mapping[str, Any]:
        filled_with("half")(into)
        raise fault

    with pytest.raises(type(fault)):
        swap_in(out, fails)
    assert word_in(out) == "first"
    assert names(tmp_path) == ["out"]


def test_an_empty_folder_is_filled(tmp_path: Path) -> None:
    out = tmp_path / "out"
    out.mkdir()
    swap_in(out, filled_with("first"))
    assert word_in(out) == "first"


def test_the_new_folder_can_be_read_by_those_who_could_read_any_new_folder(tmp_path: Path) -> None:
    swap_in(tmp_path / "out", filled_with("first"))
    (tmp_path / "plain").mkdir()
    assert (tmp_path / "out").stat().st_mode == (tmp_path / "plain").stat().st_mode


def test_a_link_is_followed_and_stays_a_link(tmp_path: Path) -> None:
    (tmp_path / "disk").mkdir()
    out = tmp_path / "out"
    out.symlink_to(tmp_path / "disk" / "real")
    swap_in(out, filled_with("first"))
    swap_in(out, filled_with("second"))
    assert out.is_symlink()
    assert word_in(tmp_path / "disk" / "real") == "second"


def refusal(out: Path) -> str:
    called: list[Path] = []

    def fill(into: Path) -> Mapping[str, Any]:
        called.append(into)
        return OURS

    with pytest.raises(InputError) as caught:
        swap_in(out, fill)
    assert called == []
    return str(caught.value)


@pytest.mark.parametrize("report", [None, "not json", "[]", '{"schema": 1}', '{"title": "mine"}'])
def test_a_folder_that_holds_other_files_is_refused_and_kept(tmp_path: Path, report: str | None) -> None:
    out = tmp_path / "photos"
    out.mkdir()
    (out / "first-fitting.jpg").touch()
    if report is not None:
        (out / "report.json").write_text(report)
    said = refusal(out)
    assert said.startswith(f"{out}: ")
    assert "did not make" in said
    assert "new or empty folder" in said
    assert (out / "first-fitting.jpg").exists()
    assert names(tmp_path) == ["photos"]


def test_a_file_in_the_way_is_refused(tmp_path: Path) -> None:
    (tmp_path / "out").write_text("a letter")
    assert "is a file" in refusal(tmp_path / "out")
    assert (tmp_path / "out").read_text() == "a letter"


def test_a_missing_parent_is_refused_by_name(tmp_path: Path) -> None:
    assert f"there is no folder {tmp_path / 'lost'}" in refusal(tmp_path / "lost" / "out")
    assert names(tmp_path) == []


def test_the_current_folder_and_those_above_it_are_refused(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    for out in (Path("."), Path(""), Path(".."), tmp_path):
        assert "the folder you stand in" in refusal(out)


def test_a_link_to_itself_is_refused(tmp_path: Path) -> None:
    (tmp_path / "out").symlink_to(tmp_path / "out")
    assert "leads back to itself" in refusal(tmp_path / "out")


def test_a_parent_that_cannot_be_written_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(os, "access", lambda *_: False)  # root may write anywhere
    assert f"{tmp_path} cannot be written to" in refusal(tmp_path / "out")


def test_a_disk_that_takes_no_folder_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def full(*_: object, **__: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(Path, "mkdir", full)
    assert "No space left" in refusal(tmp_path / "out")


KILLED = """
    import os, shutil, sys
    from pathlib import Path
    from drafting.output import folder
    sys.path.insert(0, {tests!r})
    from test_folder import filled_with

    def dies(*_, **__):
        os.kill(os.getpid(), 9)

    real_rename, seen = os.rename, []
    def rename(one, other):
        real_rename(one, other)
        seen.append(one)
        if len(seen) == {renames}:
            dies()

    os.rename = rename
    if not {exchange}:
        folder._exchange = lambda one, other: False
    if {at!r} == "while filling":
        folder._to_disk = dies
    if {at!r} == "before clearing":
        shutil.rmtree = dies
    if {at!r} == "half cleared":
        def half(gone, **_):
            (gone / "report.json").unlink()
            dies()
        shutil.rmtree = half
    folder.swap_in(Path({out!r}), filled_with("second"))
"""

# where the run is killed, by which way it swaps, after which rename; and what the next run finds
POINTS = [
    ("while filling", True, 0, "first"),
    ("complete, not swapped", True, 1, "first"),
    ("before clearing", True, 0, "second"),
    ("complete, not swapped", False, 1, "first"),
    ("between two renames", False, 2, None),
    ("both renames done", False, 3, "second"),
    ("before clearing", False, 0, "second"),
    ("half cleared", True, 0, "second"),
    ("half cleared", False, 0, "second"),
]


@pytest.mark.parametrize(("at", "exchange", "renames", "there"), POINTS)
def test_a_killed_run_leaves_a_whole_folder_and_the_next_run_clears_up(
    tmp_path: Path, at: str, exchange: bool, renames: int, there: str | None
) -> None:
    out = tmp_path / "out"
    swap_in(out, filled_with("first"))
    code = textwrap.dedent(KILLED).format(
        tests=str(Path(__file__).parent), at=at, exchange=exchange, renames=renames, out=str(out)
    )
    killed = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True)
    assert killed.returncode == -signal.SIGKILL, killed.stderr
    assert len(names(tmp_path)) > 1, "it was killed too late to matter"
    assert (word_in(out) if out.exists() else None) == there

    def fails(_: Path) -> Mapping[str, Any]:
        raise ValueError("even if the next run fails")

    with pytest.raises(ValueError, match="even if"):
        swap_in(out, fails)
    assert word_in(out) == (there or "second"), "the cut-off swap is finished"
    assert names(tmp_path) == ["out"]
    swap_in(out, filled_with("third"))
    assert word_in(out) == "third"


@pytest.mark.usefixtures("either_way")
def test_a_folder_that_is_half_deleted_is_never_taken_for_a_whole_one(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    out = tmp_path / "out"
    swap_in(out, filled_with("first"))

    def half(gone: Path, **_: object) -> None:
        (gone / "pieces" / "front.svg").unlink(missing_ok=True)

    with monkeypatch.context() as killed:
        killed.setattr(folder.shutil, "rmtree", half)
        swap_in(out, filled_with("second"))
    assert [name for name in names(tmp_path) if ".gone-" in name] != []
    shutil.rmtree(out)

    def fails(_: Path) -> Mapping[str, Any]:
        raise ValueError("the next run fails")

    with pytest.raises(ValueError, match="next run"):
        swap_in(out, fails)
    assert names(tmp_path) == []


def test_a_run_still_going_is_not_cleared_away_by_another(tmp_path: Path) -> None:
    out = tmp_path / "out"

    def slow(into: Path) -> Mapping[str, Any]:
        swap_in(out, filled_with("quick"))
        assert into.is_dir()
        return filled_with("slow")(into)

    swap_in(out, slow)
    assert word_in(out) == "slow"
    assert names(tmp_path) == ["out"]


def test_a_name_that_only_begins_alike_is_left_alone(tmp_path: Path) -> None:
    for name in (".out-2.new-12345678", ".outer.old-1", "out.new-1"):
        (tmp_path / name).mkdir()
    swap_in(tmp_path / "out", filled_with("first"))
    assert names(tmp_path) == [".out-2.new-12345678", ".outer.old-1", "out", "out.new-1"]


def test_check_out_accepts_what_swap_in_made(tmp_path: Path) -> None:
    swap_in(tmp_path / "out", filled_with("first"))
    assert check_out(tmp_path / "out") == (tmp_path / "out").resolve()
