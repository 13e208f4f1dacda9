"""Notes that are saved are there, whenever the process that saves them is killed."""

from __future__ import annotations

import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from drafting.fitting.file import read_fitting
from drafting.fitting.note import AmountAs, AtEdge, FromEnd, Note, NoteKind, NoteSide, NoteState, Verb
from drafting.ground.errors import InputError
from drafting.notebook.fitting.kept import keep_note, take_back
from tests.notebook.lab import ROOT

NOTE = Note(
    garment="shirt",
    side=NoteSide.LEFT,
    where=AtEdge("front", "side"),
    verb=Verb.TAKE_IN,
    amount=6.35,
    counted=AmountAs.PINCH,
    kind=NoteKind.STYLE,
    state=NoteState.SEEN,
    at=FromEnd(40.0, "hem"),
)

SAVING = """
import sys
from dataclasses import replace
from pathlib import Path
from drafting.ground.errors import InputError
from drafting.notebook.fitting.kept import keep_note
from tests.fitting.test_saving_notes import NOTE
place = Path(sys.argv[1])
for number in range(3, 100000):
    keep_note(place, replace(NOTE, amount=float(number)), "mm")
    print(number, flush=True)
"""

KILLS = 3


@pytest.mark.parametrize("unit", ["mm", "cm", "in"])
def test_a_note_is_read_back_as_it_was_saved(tmp_path: Path, unit: str) -> None:
    place = tmp_path / "first.toml"
    keep_note(place, NOTE, unit)  # type: ignore[arg-type]
    (found,) = read_fitting(place).notes
    assert found.amount == pytest.approx(NOTE.amount, abs=1e-6)
    assert found.at is not None
    assert found.at.mm == pytest.approx(40.0, abs=1e-6)
    assert (found.where, found.side, found.verb, found.kind) == (NOTE.where, NOTE.side, NOTE.verb, NOTE.kind)
    assert (found.counted, found.state) == (NOTE.counted, NOTE.state)


def test_the_last_note_is_taken_back_and_remarks_stay(tmp_path: Path) -> None:
    place = tmp_path / "first.toml"
    keep_note(place, NOTE, "cm")
    text = "# mine\n" + place.read_text("utf-8")
    place.write_text(text, "utf-8")
    keep_note(place, NOTE, "cm")
    take_back(place)
    assert place.read_text("utf-8") == text


def test_a_kill_at_any_moment_loses_no_note_that_was_saved(tmp_path: Path) -> None:
    for kill in range(KILLS):
        place = tmp_path / f"{kill}.toml"
        asked = [sys.executable, "-c", SAVING, str(place)]
        running = subprocess.Popen(asked, stdout=subprocess.PIPE, text=True, cwd=ROOT)
        assert running.stdout is not None
        first = running.stdout.readline()
        time.sleep(0.005 + 0.013 * kill)
        running.send_signal(signal.SIGKILL)
        saved = [int(row) for row in (first, *running.stdout) if row.endswith("\n")]
        running.wait()
        running.stdout.close()
        notes = [int(note.amount) for note in read_fitting(place).notes]
        assert notes[: len(saved)] == saved
        assert len(notes) - len(saved) in (0, 1)  # one may have been saved and not told yet


def test_a_last_note_that_another_hand_began_otherwise_is_the_only_one_taken_back(tmp_path: Path) -> None:
    """Two notes were taken out, as the second's line had blanks in it."""
    place = tmp_path / "own.toml"
    keep_note(place, NOTE, "mm")
    one = place.read_text("utf-8")
    second = one[one.index("[[notes]]") :].replace("[[notes]]", '[[ "notes" ]]  # by hand')
    place.write_text(one + second, "utf-8")
    assert len(read_fitting(place).notes) == 2
    take_back(place)
    assert len(read_fitting(place).notes) == 1


def test_notes_in_one_line_are_left_as_they_are_and_it_is_said_how_to_write_them(tmp_path: Path) -> None:
    """A note was put behind them, and the file could not be read any more."""
    place = tmp_path / "own.toml"
    held = 'unit = "cm"\nnotes = [{ where = "waist", verb = "leave", kind = "body" }]\n'
    place.write_text(held, "utf-8")
    for change in (lambda: keep_note(place, NOTE, "mm"), lambda: take_back(place)):
        with pytest.raises(InputError, match=r"a line \[\[notes\]\]"):
            change()
        assert place.read_text("utf-8") == held
