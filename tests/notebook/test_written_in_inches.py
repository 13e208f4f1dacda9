"""Every file that the pages write for a maker in inches says inches as a tape has them, and reads back the same.

A tape in inches has halves, quarters, eighths, sixteenths (common practice); 1 in = 25.4 mm (ISO 80000-3).
"""

from __future__ import annotations

import json
import re
import tomllib
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as some

from drafting.costume.file import read_costume
from drafting.fabric import read_fabric
from drafting.fitting.file import read_fitting
from drafting.ground.units import parse_length
from drafting.ground.written_lengths import NEAR, written_length
from drafting.notebook import Bench, LoadedStrip, OverhangTest
from drafting.notebook.fitting.kept import keep_note
from drafting.notebook.fitting.state import Typed, note_of
from drafting.notebook.living.living import living_costume
from drafting.notebook.living.saving import kept, save
from tests.notebook.trials import trial_costumes

ON_A_TAPE = re.compile(r"-?(\d+|(\d+ )?\d+/(2|4|8|16|32|64)) in")


@pytest.fixture
def costume(tmp_path: Path) -> Path:
    return trial_costumes(tmp_path)["inches"]


@given(some.integers(-64 * 200, 64 * 200))
def test_every_line_of_a_tape_is_written_as_that_line(lines: int) -> None:
    mm = 25.4 * lines / 64
    text = written_length(mm, "in")
    assert ON_A_TAPE.fullmatch(text), text
    assert parse_length(text, sign="any") == pytest.approx(mm, abs=NEAR)


@given(some.decimals(-5000, 5000, places=4), some.sampled_from(["cm", "mm", "in", "inches", None]))
def test_whatever_is_written_is_read_back(exact: Decimal, unit: str | None) -> None:
    text = written_length(exact, unit)
    assert abs(parse_length(text, sign="any") - float(exact)) <= NEAR
    assert re.fullmatch(r"-?[\d ./]+ (in|cm|mm)", text)


def test_a_cloth_says_what_the_ruler_said(costume: Path) -> None:
    cloth = costume.with_name("cloth.toml")
    over, load = OverhangTest(cloth, unit="in"), LoadedStrip(cloth, unit="in")
    assert all(16 * load.controls[name].value % 1 == 0 for name in ("stretched", "released", "strip"))
    over.controls["length"].value = 4.5625
    load.controls["stretched"].value = 4.4375
    over.save()
    load = LoadedStrip(cloth, unit="in")  # the file has changed since
    load.controls["stretched"].value = 4.4375
    load.save()
    written = tomllib.loads(cloth.read_text("utf-8"))
    assert written["bending_length_along"]["overhang"] == "4 9/16 in"
    found = {name: written["stretch_across"][name] for name in ("rest", "stretched", "released", "strip")}
    assert found == {"rest": "4 in", "stretched": "4 7/16 in", "released": "4 in", "strip": "2 in"}
    assert read_fabric(cloth).stretch_across == pytest.approx(7 / 64)
    assert OverhangTest(cloth, unit="in").test.length == pytest.approx(4.5625 * 25.4, abs=0.05)


def test_a_cloth_that_says_nothing_begins_on_a_line_of_her_ruler(costume: Path) -> None:
    cloth = costume.with_name("cloth.toml")
    OverhangTest(cloth, unit="in").save()
    assert tomllib.loads(cloth.read_text("utf-8"))["bending_length_along"]["overhang"] == "1 3/4 in"


@pytest.mark.parametrize(
    ("typed", "said"), [("3 9/16", "3 9/16 in"), ("4.3", "4.3 in"), ("3 1/64 in", "3 1/64 in")]
)
def test_a_choice_stands_in_journal_and_costume_as_she_reads_it(costume: Path, typed: str, said: str) -> None:
    living = living_costume(costume)
    bench = Bench(living, "shirt")
    name = "bust_ease"
    bench.take({name: {"n": 1, "stroke": 1, "garment": "shirt", "text": typed}})
    mm = parse_length(typed, "in")
    lines = [json.loads(line) for line in costume.with_suffix(".journal").read_text("utf-8").splitlines()]
    assert [line["value"] for line in lines] == [said]
    assert bench.made["shirt"].choices[name][0] == pytest.approx(mm, abs=NEAR)
    bench.save()
    assert tomllib.loads(costume.read_text("utf-8"))["garments"]["shirt"]["choices"][name] == said
    assert Bench(read_costume(costume), "shirt").made["shirt"].choices[name][0] == pytest.approx(mm, abs=NEAR)


def test_a_choice_from_a_slider_is_saved_as_a_line_of_the_tape(costume: Path) -> None:
    file = read_costume(costume)
    bench = Bench(file, "shirt", ["bust_ease"])
    bench.ask("bust_ease", 25.4 * 73 / 16 + 1e-13)  # as a page reckons it
    written, _ = save(bench.standing.asked, file, kept(file))
    assert written.garments[0].choices["bust_ease"].value == "4 9/16 in"


NOTE: dict[str, Any] = {
    "garment": "shirt",
    "side": "both",
    "where": "front.side",
    "at": "2 3/8 in from hem",
    "verb": "take in",
    "counted": "seam",
    "kind": "style",
    "state": "pinned",
}


@pytest.mark.parametrize(("typed", "said"), [("5/16", "5/16 in"), ("0.3", "0.3 in"), ("0.5 in", "1/2 in")])
def test_a_note_of_a_fitting_is_written_as_she_reads_it(tmp_path: Path, typed: str, said: str) -> None:
    note = note_of(Typed(**NOTE, amount=typed), "in", ["shirt"])
    file = tmp_path / "fitting.toml"
    keep_note(file, note, "in")
    (row,) = tomllib.loads(file.read_text("utf-8"))["notes"]
    assert (row["amount"], row["at"]) == (said, "2 3/8 in from hem")
    assert read_fitting(file, ["shirt"]).notes == (note,)


def test_a_figure_on_a_ruler_in_inches_is_shown_and_typed_as_a_tape_has_it(costume: Path) -> None:
    over = OverhangTest(costume.with_name("cloth.toml"), unit="in")
    length = over.controls["length"]
    assert length.field.value == "1 3/4 in"
    length.field.value = "4 9/16"
    assert (length.value, over.test.length) == pytest.approx((4.5625, 4.5625 * 25.4))
    assert length.field.value == "4 9/16 in"
    assert "4 9/16 in" in over.picture.value
    length.slider.value = 2.0625  # as a hand or a key moves it
    assert (length.field.value, length.value) == ("2 1/16 in", 2.0625)
    for wrong, why in (("four", "cannot be read"), ("40", "beyond this ruler"), ("-1", "negative")):
        length.field.value = wrong
        assert why in over.refused.value, wrong
        assert length.field.value == "2 1/16 in"
        assert over.test.length == pytest.approx(2.0625 * 25.4)
    length.field.value = "5 cm"
    assert over.test.length == pytest.approx(50.0)
