"""Writing beside the page: it says how far it is, stops when told, and leaves what lay there."""

from __future__ import annotations

import threading
from dataclasses import replace
from pathlib import Path

import pytest

from drafting.costume.file import CostumeFile, read_costume
from drafting.ground.errors import InputError
from drafting.ground.shipped import demo_costume
from drafting.notebook.bench.exporting import Errand, Stopped, write_costume
from drafting.notebook.bench.write_out import WriteOut


@pytest.fixture(scope="module")
def costume() -> CostumeFile:
    """The breeches alone, which take a second or two."""
    whole = read_costume(demo_costume())
    return replace(whole, garments=tuple(g for g in whole.garments if g.name == "breeches"))


@pytest.fixture
def out(tmp_path: Path) -> Path:
    """A folder as an earlier run left it."""
    (tmp_path / "out").mkdir()
    (tmp_path / "out" / "report.json").write_text('{"schema": 1, "made_with": {}}')
    return tmp_path / "out"


def files(folder: Path) -> dict[str, bytes]:
    return {str(p.relative_to(folder)): p.read_bytes() for p in folder.rglob("*") if p.is_file()}


def test_every_step_is_told_and_the_share_never_falls(costume: CostumeFile, tmp_path: Path) -> None:
    told: list[tuple[str, float]] = []
    write_costume(costume, tmp_path / "out", lambda words, share: told.append((words, share)))
    shares = [share for _, share in told]
    assert shares == sorted(shares)
    assert 0.0 <= shares[0] < 0.1
    assert 0.9 < shares[-1] <= 1.0
    words = " ".join(words for words, _ in told)
    assert all(step in words for step in ("Drafting", "Laying", "breeches-a4-or-letter.pdf", "plan"))


@pytest.mark.parametrize("step", ["Drafting", "Laying", "Drawing the pieces", "Writing the record"])
def test_stopped_at_any_step_the_folder_is_as_it_was(costume: CostumeFile, out: Path, step: str) -> None:
    before, stop = files(out), threading.Event()

    def tell(words: str, share: float) -> None:
        if words.startswith(step):
            stop.set()

    if step == "Writing the record":  # the last that can be stopped: nothing is asked after it
        with pytest.raises(Stopped):
            write_costume(costume, out, lambda *_: None, lambda: "report" in _made_beside(out))
    else:
        with pytest.raises(Stopped):
            write_costume(costume, out, tell, stop.is_set)
    assert files(out) == before
    assert [path.name for path in out.parent.iterdir()] == ["out"]


def _made_beside(out: Path) -> str:
    """Return "report" once the plan of a run stands beside `out`, which is just before the record."""
    return "report" if list(out.parent.glob(".out.new-*/plan.html")) else ""


def test_a_press_on_stop_is_heard_and_the_page_says_so(costume: CostumeFile, out: Path) -> None:
    before = files(out)
    writing = WriteOut(lambda: costume, out, lambda words: None)
    began = threading.Event()
    writing.bar.observe(lambda _: began.set(), names="value")
    writing.button.click()
    assert writing.button.disabled
    assert began.wait(30)
    writing.cancel.click()
    writing.errand.wait(30)
    assert "Stopped" in writing.words.value
    assert "lies there still" in writing.words.value
    assert files(out) == before
    assert not writing.button.disabled
    assert writing.cancel.disabled


def test_a_folder_that_may_not_be_replaced_is_said_before_the_long_work(
    costume: CostumeFile, tmp_path: Path
) -> None:
    (tmp_path / "out").mkdir()
    (tmp_path / "out" / "letters.txt").write_text("mine")
    told: list[str] = []
    with pytest.raises(InputError, match="did not make"):
        write_costume(costume, tmp_path / "out", lambda words, _: told.append(words))
    assert told == []


def test_one_errand_runs_at_a_time() -> None:
    errand, gate, runs = Errand(), threading.Event(), list[int]()

    def work() -> None:
        runs.append(1)
        gate.wait(10)

    errand.start(work)
    errand.start(work)
    assert errand.busy
    gate.set()
    errand.wait(10)
    assert runs == [1]
