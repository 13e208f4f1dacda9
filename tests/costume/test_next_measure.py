"""The measures worth taking next: those that move the drafted shirt most."""

from __future__ import annotations

import time
from pathlib import Path

import pytest

from drafting.body import read_body, wearer
from drafting.commands.cli import main
from drafting.costume.garment import draft_garment
from drafting.costume.next_measure import next_measures
from drafting.ground.shipped import shipped
from tests.blocks.figures import FULL, full_bust

LEAST = {"height": 1650.0, "bust_girth": 900.0, "waist_girth": 740.0, "hip_girth": 980.0}


def test_five_measures_are_named_the_greatest_gain_first() -> None:
    body = wearer(LEAST)
    found = next_measures(body)
    assert len(found) == 5
    assert [g.moved for g in found] == sorted((g.moved for g in found), reverse=True)
    assert all(body.measures[g.measure].source == "estimated" for g in found)
    assert len(next_measures(body, 3)) == 3


def test_the_gain_is_what_the_shirt_itself_moves_by() -> None:
    # The upper arm is drafted as measured plus ease: its level moves by the very spread.
    body = wearer(LEAST)
    gain = next(g for g in next_measures(body, 9) if g.measure == "upper_arm_girth")
    assert gain.step == body.measures["upper_arm_girth"].sd
    assert (gain.most, gain.by) == ("sleeve at the upper arm", pytest.approx(gain.step, abs=0.01))
    thicker = body.changed(upper_arm_girth=body["upper_arm_girth"] + gain.step)
    wide, wider = (
        next(v.length for v in draft_garment(b, None, "shirt").draft["sleeve"].levels) for b in (body, thicker)
    )
    assert wider - wide == pytest.approx(gain.by, abs=0.01)


def test_a_measure_once_taken_is_not_asked_for_again() -> None:
    body = wearer(LEAST)
    first = next_measures(body)[0].measure
    after = next_measures(body.changed(**{first: body[first]}), 20)
    assert first not in {gain.measure for gain in after}


def test_a_fully_measured_wearer_hears_of_what_is_left_only() -> None:
    left = {gain.measure for gain in next_measures(full_bust(1050.0), 20)}
    assert left
    assert not left & {*FULL, "bust_girth", "high_bust_girth"}


def test_the_answer_takes_less_than_a_second() -> None:
    body = wearer(LEAST)
    next_measures(body)
    start = time.process_time()
    next_measures(body)
    assert time.process_time() - start < 1.0


def test_the_command_prints_them_with_numbers(capsys: pytest.CaptureFixture[str]) -> None:
    kite = shipped("measurements") / "bodies" / "kite.toml"
    assert main(["body", str(kite)]) == 0
    said = capsys.readouterr().out
    table = said[
        said.index("Measure next to gain most") : said.index(
            "doubtful" if "Nothing doubtful" in said else "Doubtful"
        )
    ]
    for gain in next_measures(read_body(kite)):
        assert gain.measure in table
        assert f"{gain.moved:.0f} in all" in table


def test_a_table_of_wearers_is_printed_without_them(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    table = tmp_path / "people.csv"
    table.write_text("wearer,unit,height,bust,waist,hip\nAda,cm,168,92,71,98\nBo,cm,182,100,88,101\n")
    assert main(["body", str(table)]) == 0
    said = capsys.readouterr().out
    assert said.count("How the estimates are made") == 2
    assert "Measure next" not in said
