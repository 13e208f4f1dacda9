"""One living costume: benches that never fight, a journal that survives, views that know they are stale."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest

from drafting.costume.file import read_costume
from drafting.ground.errors import InputError
from drafting.notebook import Bench
from drafting.notebook.living import living as lv
from drafting.notebook.living.bar import standing_words
from drafting.notebook.living.journal import JournalLine, apart, changed_words, laid_over, line_of, moves_in
from drafting.notebook.living.kept import journal_place, keep, kept_moves
from drafting.notebook.living.living import Living, living_costume
from drafting.notebook.page.view import Following
from drafting.reading.given import Given
from tests.notebook.lab import ROOT
from tests.notebook.trials import trial_costumes

CHOICES = ("bust_ease", "waist_ease", "sleeve_length")


@pytest.fixture
def file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setattr(lv, "_OPEN", {})
    return trial_costumes(tmp_path)["no-coat"]


def value(costume: object, name: str, garment: str = "shirt") -> object:
    worn = next(g for g in costume.garments if g.name == garment)  # type: ignore[attr-defined]
    return worn.choices[name].value if name in worn.choices else None


def as_after_a_restart(file: Path) -> Living:
    """Read the costume and what is kept beside it, as a new kernel does."""
    return Living(read_costume(file), journal_place(file))


def test_two_benches_of_one_costume_save_both_their_choices(file: Path) -> None:
    living = living_costume(file)
    one, two = Bench(living, "shirt", CHOICES), Bench(living_costume(file), "shirt", CHOICES)
    one.ask("bust_ease", 120.0)
    two.ask("waist_ease", 60.0)
    one.save()
    two.save()
    saved = read_costume(file)
    assert (value(saved, "bust_ease"), value(saved, "waist_ease")) == (12, "6 cm")
    assert "# hers" in file.read_text()


def test_a_bench_knows_that_another_has_moved_and_follows_on_a_word(file: Path) -> None:
    living = living_costume(file)
    one, two = Bench(living, "shirt", CHOICES), Bench(living, "shirt", CHOICES)
    before = two.picture.value
    one.ask("bust_ease", 140.0)
    assert two.stale == ("shirt: bust ease",)
    assert "shirt: bust ease" in two.widgets.bar.stale
    assert two.picture.value == before
    two.widgets.bar.follows += 1
    assert two.stale == ()
    assert two.widgets.bar.stale == ""
    assert two.made.garments[0].draft == one.made.garments[0].draft


def test_a_stale_bench_that_is_moved_takes_nothing_back(file: Path) -> None:
    living = living_costume(file)
    one, two = Bench(living, "shirt", CHOICES), Bench(living, "shirt", CHOICES)
    one.ask("bust_ease", 140.0)
    two.ask("waist_ease", 70.0)
    assert value(living.asked, "bust_ease") == "140.0 mm"
    assert value(living.asked, "waist_ease") == "70.0 mm"
    two.undo()
    assert value(living.asked, "bust_ease") == "140.0 mm"
    assert value(living.asked, "waist_ease") is None


def test_a_bench_of_another_garment_is_not_disturbed(file: Path) -> None:
    living = living_costume(file)
    shirt, legs = Bench(living, "shirt", CHOICES), Bench(living, "legs", ("hip_ease",))
    shirt.ask("bust_ease", 140.0)
    assert legs.stale == ()
    legs.ask("hip_ease", 70.0)
    assert set(living.unsaved) == {("shirt", "bust_ease"), ("legs", "hip_ease")}


def test_a_view_that_is_made_once_says_that_it_is_stale_and_is_made_anew(file: Path) -> None:
    living = living_costume(file)
    seen: list[object] = []

    class Shown:
        def __init__(self, costume: Living) -> None:
            seen.append(value(costume.asked, "bust_ease"))
            self.view = Bench(living, "shirt", CHOICES).view

    view, bench = Following(living, Shown), Bench(living, "shirt", CHOICES)
    bench.ask("bust_ease", 140.0)
    assert "bust ease" in view.bar.stale
    view.follow()
    assert view.bar.stale == ""
    assert seen == [11, "140.0 mm"]


def test_what_is_chosen_stands_again_after_a_restart_and_is_not_in_the_file(file: Path) -> None:
    before = file.read_bytes()
    bench = Bench(living_costume(file), "shirt", CHOICES)
    bench.ask("bust_ease", 140.0)
    bench.ask("sleeve_length", 610.0)
    bench.reset("bust_ease")
    bench.ask("waist_ease", 55.0)
    again = as_after_a_restart(file)
    assert changed_words(bench.living.asked, again.asked) == ()
    assert value(again.asked, "bust_ease") == 11
    assert set(again.unsaved) == {("shirt", "sleeve_length"), ("shirt", "waist_ease")}
    assert "2 choices are kept in costume.journal" in standing_words(again)
    assert file.read_bytes() == before


def test_a_save_empties_the_journal_and_undo_after_it_counts(file: Path) -> None:
    bench = Bench(living_costume(file), "shirt", CHOICES)
    bench.ask("bust_ease", 140.0)
    bench.save()
    assert not journal_place(file).exists()
    assert as_after_a_restart(file).unsaved == ()
    bench.undo()
    again = as_after_a_restart(file)
    assert value(again.asked, "bust_ease") == 11
    assert value(again.file, "bust_ease") == 14


def test_a_kill_between_file_and_journal_changes_nothing(file: Path) -> None:
    bench = Bench(living_costume(file), "shirt", CHOICES)
    bench.ask("bust_ease", 140.0)
    kept = journal_place(file).read_bytes()
    bench.save()
    journal_place(file).write_bytes(kept)  # as if the kernel had died before it was emptied
    again = as_after_a_restart(file)
    assert again.unsaved == ()
    assert changed_words(bench.living.asked, again.asked) == ()


KILLED = """
import sys
from drafting.notebook import Bench
from drafting.notebook.living.living import living_costume
bench = Bench(living_costume(sys.argv[1]), "shirt", ["bust_ease"])
for step in range(10_000):
    bench.ask("bust_ease", 60.0 + step % 90)
    print(60.0 + step % 90, flush=True)
"""


def test_a_kernel_killed_while_a_slider_moves_loses_nothing_that_it_had_shown(file: Path) -> None:
    """The operating system's own kill, which no program hears."""
    env = os.environ | {"PYTHONPATH": str(ROOT)}
    with subprocess.Popen([sys.executable, "-c", KILLED, str(file)], stdout=subprocess.PIPE, env=env) as run:
        assert run.stdout is not None
        shown = [float(run.stdout.readline()) for _ in range(9)]
        run.send_signal(signal.SIGKILL)
    now = as_after_a_restart(file)
    kept = float(str(value(now.asked, "bust_ease")).removesuffix(" mm"))
    assert kept >= shown[-1]
    assert len(kept_moves(journal_place(file))) >= len(shown)


def test_a_line_that_was_torn_off_spoils_no_other(file: Path) -> None:
    journal = journal_place(file)
    line = JournalLine("shirt", "bust_ease", Given("90 mm", source="notebook"))
    journal.write_text(line_of(line) + '{"garment": "shirt", "choi')
    assert kept_moves(journal) == (line,)
    more = JournalLine("shirt", "waist_ease", None, "usual")
    keep(journal, [more])
    assert kept_moves(journal) == (line, more)
    assert moves_in("nonsense\n[1]\n{}\n") == ()


def test_a_journal_of_what_is_gone_is_passed_over(file: Path) -> None:
    costume = read_costume(file)
    gone = [JournalLine("cloak", "bust_ease", Given(3)), JournalLine("shirt", "no_such_choice", Given(3))]
    assert laid_over(costume, gone) == costume


def test_pages_in_two_kernels_meet_in_the_journal(file: Path) -> None:
    here, there = Living(read_costume(file), journal_place(file)), as_after_a_restart(file)
    bench = Bench(here, "shirt", CHOICES)
    Bench(there, "shirt", CHOICES).ask("bust_ease", 140.0)
    here.look()
    assert bench.stale == ("shirt: bust ease",)
    bench.ask("waist_ease", 70.0)
    there.look()
    assert {name for _, name in there.unsaved} == {"bust_ease", "waist_ease"}
    there.save()
    here.look()
    assert here.unsaved == ()
    assert bench.stale == ()


def test_a_measure_saved_on_another_page_marks_the_bench_stale(file: Path) -> None:
    living = living_costume(file)
    bench = Bench(living, "shirt", CHOICES)
    bench.ask("bust_ease", 140.0)
    body = file.parent / "wearer.toml"
    body.write_text(body.read_text().replace("waist_girth = 80", "waist_girth = 84"))
    living.look()
    assert bench.stale == ("the wearer's measures",)
    bench.follow()
    assert bench.made.costume.wearer["waist_girth"] == 840
    assert value(living.asked, "bust_ease") == "140.0 mm"


def test_a_file_that_is_being_written_is_waited_for_in_words(file: Path) -> None:
    living = living_costume(file)
    bench = Bench(living, "shirt", CHOICES)
    whole = file.read_text()
    file.write_text(whole + "\nbust = 'oh")
    living.look()
    assert "cannot be read" in living.trouble
    bench.ask("bust_ease", 140.0)
    with pytest.raises(InputError, match="cannot be read"):
        bench.save()
    file.write_text(whole)
    living.look()
    assert living.trouble == ""
    bench.save()
    assert value(read_costume(file), "bust_ease") == 14


def test_where_nothing_can_be_kept_it_is_said_and_the_choices_still_hold(
    file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    bench = Bench(living_costume(file), "shirt", CHOICES)
    monkeypatch.setattr(lv, "keep", full)
    bench.ask("bust_ease", 140.0)
    assert "No space left on device" in bench.widgets.bar.words
    bench.living.look()
    assert value(bench.living.asked, "bust_ease") == "140.0 mm"


def test_a_choice_refused_before_a_restart_is_refused_after_it_and_the_file_is_drawn(file: Path) -> None:
    bench = Bench(living_costume(file), "shirt", (*CHOICES, "arm_ease"))
    bench.ask("arm_ease", 400.0)
    assert bench.standing.refusal
    again = Bench(as_after_a_restart(file), "shirt", (*CHOICES, "arm_ease"))
    assert again.standing.refusal
    assert again.standing.made.garments


def test_the_same_length_from_a_slider_and_from_a_file_is_no_difference(file: Path) -> None:
    costume = read_costume(file)
    line = JournalLine("shirt", "bust_ease", Given("110.0 mm", source="notebook"))
    assert apart(laid_over(costume, [line]), costume) == ()
    assert changed_words(costume, replace(costume, worn_on=None)) == ()


def test_a_save_holds_though_nothing_can_be_kept_beside_the_costume(file: Path) -> None:
    """A folder stood where choices are kept: the file was written, and the page said that it was not possible."""
    journal_place(file).mkdir()
    bench = Bench(living_costume(file), "shirt", ["bust_ease"])
    bench.ask("bust_ease", 123.0)
    assert "cannot be kept" in bench.living.unkept
    assert bench.living.save() == file
    assert "The choices are saved" in bench.living.unkept
    assert value(read_costume(file), "bust_ease") is not None
    assert bench.living.unsaved == ()
