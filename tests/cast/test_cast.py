"""`drafting cast`, run as a head of workshop runs it: a folder each, and what stands over all of them."""

from __future__ import annotations

import csv
import json
import os
import re
import signal
import subprocess
import sys
import time
from multiprocessing import active_children
from pathlib import Path
from typing import NamedTuple

import pytest

from drafting.body.reader import read_body
from drafting.commands.cli import main
from drafting.costume.cast import costume_for, read_cast
from drafting.output.cast.engines import engine_of
from drafting.output.cast.job import WearerJob, done
from drafting.output.cast.key import key_of
from drafting.output.cast.place import cast_folder
from tests.cast.troupe import CAST, TABLE, contents, is_whole, troupe_in

ROOT = Path(__file__).resolve().parent.parent.parent
MADE = ("ada", "bo", "ida")


class Run(NamedTuple):
    """A cast that was made: its folder, its exit code, what was said."""

    out: Path
    code: int
    said: str
    refused: str


@pytest.fixture(scope="module")
def cast(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return troupe_in(tmp_path_factory.mktemp("cast"))


@pytest.fixture(scope="module")
def run(cast: Path) -> Run:
    """The cast made once, in one process."""
    capture = subprocess.run(
        [sys.executable, "-m", "drafting", "cast", str(cast), "--out", str(cast.parent / "out"), "--jobs", "1"],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )
    return Run(cast.parent / "out", capture.returncode, capture.stdout, capture.stderr)


@pytest.fixture(scope="module")
def record(run: Run) -> dict[str, dict[str, object]]:
    """What `cast.json` says of each wearer."""
    whole = json.loads((run.out / "cast.json").read_text("utf-8"))
    assert whole["schema"] == 1
    return {one["wearer"]: one for one in whole["wearers"]}


def test_who_cannot_be_drafted_is_named_with_file_and_line_and_stops_nobody(
    run: Run, record: dict[str, dict[str, object]]
) -> None:
    assert run.code == 1, run.refused
    assert "3 of 4 wearers drafted" in run.said
    assert re.search(r"^not drafted: cy: \S+cy\.toml:3: waist_girth: is missing; ", run.refused, re.MULTILINE)
    assert {name: one["status"] for name, one in record.items()} == {
        "Ada": "made",
        "Bo": "made",
        "Ida": "made",
        "cy": "refused",
    }
    assert all(is_whole(run.out / name) for name in MADE)
    assert not (run.out / "cy").exists()
    assert "Not drafted: cy" in (run.out / "cast.html").read_text("utf-8")


def test_her_folder_is_what_make_writes_with_her(run: Run, cast: Path) -> None:
    alone = cast.parent / "alone"
    table, costume = cast.with_name("table.csv"), cast.with_name("top.toml")
    assert main(["make", str(costume), "--wearer", f"{table}#Ada", "--out", str(alone)]) == 0
    assert contents(alone) == contents(run.out / "ada")


def test_what_differs_for_one_wearer_is_drafted_and_told(run: Run, record: dict[str, dict[str, object]]) -> None:
    choices = json.loads((run.out / "bo" / "report.json").read_text("utf-8"))["choices"]["top"]
    assert choices["let_out"] == {"value": 20.0, "source": "file"}
    assert record["Ida"]["compared_with"] == "ada"
    # By hand: 170 - 168, 96 - 93.5, 101.5 (taken again) - 99 cm; the waist, 30 1/2 - 30 in, is 1.3 cm.
    assert record["Ida"]["differs"] == pytest.approx({"height": 20.0, "bust_girth": 25.0, "hip_girth": 25.0})
    assert record["Ada"]["differs"] == {}
    sheet = (run.out / "call-sheets" / "ida.html").read_text("utf-8")
    assert "understudy of Ada" in sheet
    assert "hip girth +2.5 cm" in sheet
    assert not (run.out / "call-sheets" / "cy.html").exists()


def test_one_list_buys_what_the_single_lists_buy_and_the_cloth_of_the_lay_for_all(run: Run) -> None:
    def rows(file: Path) -> list[dict[str, str]]:
        return list(csv.DictReader(file.open(encoding="utf-8", newline="")))

    whole = rows(run.out / "shopping.csv")
    single = [row for name in MADE for row in rows(run.out / name / "shopping.csv")]
    for what in {row["what"] for row in single} - {"jersey"}:
        ours = sum(float(row["amount"]) for row in whole if row["what"] == what)
        theirs = [float(row["amount"]) for row in single if row["what"] == what]
        assert ours == pytest.approx(sum(theirs), abs=0.005 * len(theirs))  # each was rounded to 1 cm
    (cloth,) = [row for row in whole if row["what"] == "jersey"]
    (lay,) = json.loads((run.out / "cast.json").read_text("utf-8"))["layout"]
    assert float(cloth["amount"]) == pytest.approx(lay["buy_length"] / 1000)
    assert cloth["for"] == "all"


def test_the_lay_for_all_holds_every_piece_of_everybody_once(run: Run) -> None:
    (lay,) = json.loads((run.out / "cast.json").read_text("utf-8"))["layout"]
    assert lay["cloth_length"] < lay["one_by_one"]
    for name in MADE:
        report = json.loads((run.out / name / "report.json").read_text("utf-8"))
        wanted = {one["piece"]: one["count"] for one in report["pieces"]}
        laid = dict.fromkeys(wanted, 0)
        for one in lay["placed"]:
            if one["garment"] == f"{name}-top":
                laid[one["piece"]] += 2 if one["hand"] == "both" else 1
        assert laid == wanted
    drawing = (run.out / "layout" / "jersey.svg").read_text("utf-8")
    assert all(name in drawing for name in ("Ada", "Bo", "Ida"))


def test_a_second_run_makes_only_who_has_changed(run: Run, cast: Path, capsys: pytest.CaptureFixture[str]) -> None:
    table, again = cast.with_name("table.csv"), ["cast", str(cast), "--out", str(run.out), "--jobs", "1"]
    stood = contents(run.out)
    assert main(again) == 1
    assert "0 now, 3 as they stood" in capsys.readouterr().out
    assert contents(run.out) == stood
    (run.out / "ida" / "overview.png").unlink()  # half gone: made again, to the same bytes
    assert main(again) == 1
    assert "1 now, 2 as they stood" in capsys.readouterr().out
    assert contents(run.out) == stood
    table.write_text(TABLE.replace("Bo;Second;181", "Bo;Second;182"), "utf-8")
    try:
        assert main(again) == 1
        assert "1 now, 2 as they stood" in capsys.readouterr().out
        assert json.loads((run.out / "bo" / "report.json").read_bytes())["body"]["height"]["mm"] == 1820
    finally:
        table.write_text(TABLE, "utf-8")
        assert main(again) == 1
    assert contents(run.out) == stood


def test_a_file_of_the_makers_own_is_refused_before_anything_is_written(
    run: Run, cast: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    note = run.out / "bo" / "my-notes.txt"
    note.write_text("hers")
    assert main(["cast", str(cast), "--out", str(run.out)]) == 2
    assert "my-notes.txt, which no run made" in capsys.readouterr().err
    note.unlink()
    assert main(["make", str(cast.with_name("top.toml")), "--out", str(run.out)]) == 2
    assert "holds what `drafting cast` made" in capsys.readouterr().err


@pytest.mark.slow
def test_two_processes_of_which_one_is_killed_make_the_same_bytes(run: Run, cast: Path, tmp_path: Path) -> None:
    whole = read_cast(cast)
    place = cast_folder(tmp_path / "out", whole)
    able = [one for one in whole.wearers if one.body]
    jobs = [WearerJob(one.folder, costume_for(whole, one), key_of(costume_for(whole, one))) for one in able]
    outcomes = engine_of(2, None)(iter(jobs), place)
    made = [next(outcomes).folder]
    victim = active_children()[0].pid
    assert victim is not None
    os.kill(victim, signal.SIGKILL)
    made += [outcome.folder for outcome in outcomes]
    assert sorted(made) == list(MADE)
    assert not active_children()
    for name in MADE:
        assert contents(place / name) == contents(run.out / name)


HEARING = "import signal, sys; signal.signal(signal.SIGINT, signal.default_int_handler); "
"""A process that was begun in the background hears no Ctrl-C unless it says so."""


@pytest.mark.slow
@pytest.mark.parametrize(("how", "code"), [(signal.SIGKILL, -signal.SIGKILL), (signal.SIGINT, 130)])
def test_a_run_that_is_stopped_leaves_whole_folders_and_is_taken_up_again(
    cast: Path, tmp_path: Path, how: signal.Signals, code: int
) -> None:
    out = tmp_path / "out"
    ours = f"{HEARING}from drafting.commands.cli import main; sys.exit(main())"
    command = [sys.executable, "-c", ours, "cast", str(cast), "--out", str(out), "--jobs", "1"]
    started = subprocess.Popen(command, cwd=ROOT, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    until = time.monotonic() + 240
    while not (out / "records" / "ada.json").exists() and time.monotonic() < until:
        time.sleep(0.02)
    started.send_signal(how)
    assert started.wait(60) == code
    assert not list(out.glob(".*")) or how is signal.SIGKILL
    assert is_whole(out / "ada")
    assert all(is_whole(out / name) for name in MADE if (out / name).exists())
    assert not (out / "cast.html").exists()
    again = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)
    assert again.returncode == 1
    assert not re.search(r"3 now", again.stdout)
    assert all(is_whole(out / name) for name in MADE)
    assert not [path for path in out.iterdir() if path.name.startswith(".")]


def test_a_fault_of_the_kit_at_one_wearer_is_told_and_stops_nobody(
    cast: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def broken(*_: object) -> None:
        raise ZeroDivisionError("a slip of ours")

    monkeypatch.setattr("drafting.output.cast.job.make", broken)
    whole = read_cast(cast)
    outcome = done(WearerJob("ada", costume_for(whole, whole.wearers[0]), "key"), tmp_path)
    assert outcome.record["status"] == "refused"
    assert (
        "a fault of the kit, please report it: ZeroDivisionError: a slip of ours" in outcome.record["reasons"][0]
    )
    assert not (tmp_path / "ada").exists()


WRONG = {
    'costume = "top.toml"': ('costume = "tpo.toml"', r"cast\.toml:3: costume: .*tpo\.toml: there is no such file"),
    '"cy.toml"': ('"cyy.toml"', r"cast\.toml:4: wearers: there is no cyy\.toml"),
    '"jersey"': ('"jersy"', r"cast\.toml:6: lay_together: jersy is no cloth of the costume; did you mean jersey"),
    'understudies = "Ada"': ('understudies = "Eda"', r"Ida understudies Eda, who is no other wearer"),
    "[wearer.Bo]": ("[wearer.Beau]", r"wearer\.Beau: no wearer of this cast is called Beau"),
    "let_out": ("let_oot", r"cast\.toml:13: wearer\.Bo\.let_oot: is not known here; did you mean let_out"),
    '"2 cm"': ('"2 m"', r"cast\.toml:13: wearer\.Bo\.choices\.top\.let_out: "),
    "hip_girth": ("hipp_girth", r"cast\.toml:11: hipp_girth: is no body dimension; did you mean hip_girth"),
    "= 101.5": ("= 1015", r"cast\.toml:11: .*hip_girth: 1015 cm is beyond any figure"),
}


@pytest.mark.parametrize("good", WRONG)
def test_what_is_wrong_in_the_cast_file_is_told_with_its_line(good: str, tmp_path: Path) -> None:
    bad, wanted = WRONG[good]
    cast = troupe_in(tmp_path)
    cast.write_text(CAST.replace(good, bad, 1), "utf-8")
    with pytest.raises(Exception, match=wanted):
        read_cast(cast)


def test_all_that_is_wrong_is_told_at_once(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    cast = troupe_in(tmp_path)
    cast.write_text(CAST.replace('"jersey"', '"jersy"').replace("[wearer.Bo]", "[wearer.Beau]"), "utf-8")
    (tmp_path / "table.csv").write_text(TABLE.replace(";93,5;", ";x;"), "utf-8")
    assert main(["cast", str(cast), "--out", str(tmp_path / "out")]) == 2
    said = capsys.readouterr().err
    for words in ("jersy is no cloth", "wearer.Beau", "table.csv:3: Ada, bust: 'x'", "cy.toml:3: waist_girth"):
        assert words in said
    assert not (tmp_path / "out").exists()


def test_of_a_table_that_cannot_be_read_nobody_is_said_to_be_missing(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A heading was wrong, and everybody whom the cast file named was told to be no wearer of it."""
    cast = troupe_in(tmp_path)
    (tmp_path / "table.csv").write_text(TABLE.replace(";Bust;", ";Bustle girth;"), "utf-8")
    assert main(["cast", str(cast), "--out", str(tmp_path / "out")]) == 2
    said = capsys.readouterr().err
    assert "table.csv:1: Bustle girth: heads a column" in said
    assert "no wearer" not in said
    assert "no other wearer" not in said


def test_the_wearers_may_be_a_folder_of_body_files(tmp_path: Path) -> None:
    cast = troupe_in(tmp_path)
    (tmp_path / "bodies").mkdir()
    for name in ("lamplighter.toml", "cy.toml"):
        (tmp_path / name).rename(tmp_path / "bodies" / name)
    cast.write_text('title = "x"\ncostume = "top.toml"\nwearers = "bodies"\n', "utf-8")
    found = read_cast(cast).wearers
    assert [(one.folder, one.body is not None) for one in found] == [("cy", False), ("lamplighter", True)]


def test_the_shipped_cast_is_read_and_its_changes_are_those_it_states() -> None:
    cast = read_cast(ROOT / "measurements" / "casts" / "lanterns.toml")
    by_name = {one.name: one for one in cast.wearers}
    assert len(by_name) == 5
    assert all(one.body for one in cast.wearers)
    coat = costume_for(cast, by_name["Bo Lindqvist"]).garments[0]
    assert coat.choices["tail_length"].value == "84 cm"
    cleo = by_name["Cleo Marsh"].body
    assert cleo is not None
    assert cleo["waist_girth"] == 700
    assert cleo.hand("shoulder_length", "right") == 126
    table = ROOT / "measurements" / "casts" / "lanterns.csv"
    assert read_body(f"{table}#Cleo Marsh")["waist_girth"] == pytest.approx(27.25 * 25.4)
