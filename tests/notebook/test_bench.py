"""The bench without a browser: traits are set as the page sets them, and what it shows is read back."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest

from drafting.commands.cli import main
from drafting.costume.file import read_costume
from drafting.ground.errors import DraftError, InputError
from drafting.ground.shipped import demo_costume, shipped
from drafting.notebook import Bench, costume_path
from drafting.notebook.bench import ahead
from drafting.notebook.bench import state as standing
from tests.notebook.pictures import read_picture

SIX = ("bust_ease", "waist_ease", "armhole_drop", "cap_ease", "arm_ease", "length_ease")


@pytest.fixture
def bench(tmp_path: Path) -> Bench:
    return Bench(read_costume(demo_costume()), "shirt", SIX, out=tmp_path / "out")


def hand(bench: Bench, name: str, stroke: int, **what: Any) -> None:
    """Do what the page does with a move of the hand."""
    moves = dict(bench.knobs.moves)
    n = max((move["n"] for move in moves.values()), default=0) + 1
    bench.knobs.moves = moves | {name: {"n": n, "stroke": stroke, **what}}


def slide(bench: Bench, name: str, *cm: float) -> None:
    """Drag a knob over these values in one stroke."""
    stroke = 1 + max((move["stroke"] for move in bench.knobs.moves.values()), default=0)
    for value in cm:
        hand(bench, name, stroke, value=round(10 * value, 6))  # SI: 1 cm = 10 mm


def write(bench: Bench, name: str, text: str) -> None:
    stroke = 1 + max((move["stroke"] for move in bench.knobs.moves.values()), default=0)
    hand(bench, name, stroke, text=text)


def refusal(bench: Bench, name: str) -> str:
    """Return what is said beside a control."""
    return str(bench.knobs.states[name]["refusal"])


def refusals(bench: Bench) -> list[str]:
    return [name for name in bench.controls if refusal(bench, name)]


def drawn(bench: Bench) -> dict[str, Any]:
    return read_picture(bench.picture.value)


def size(bench: Bench, name: str) -> tuple[float, float]:
    """Return width and height of a drawn path, mm."""
    x0, y0, x1, y1 = drawn(bench)[name].bbox()
    return round(float(x1 - x0), 2), round(float(y1 - y0), 2)


def garment_girth(bench: Bench, level: str) -> float:
    row = re.search(rf">{level}</th>(.*?)</tr>", bench.widgets.girths.value)
    assert row
    return float(re.findall(r"<td>([\d.]+)</td>", row[1])[-1])


def test_a_moved_slider_moves_the_girth_by_as_much(bench: Bench) -> None:
    before = garment_girth(bench, "Waist")
    slide(bench, "waist_ease", 12.0)
    assert garment_girth(bench, "Waist") == pytest.approx(before + 3.0, abs=0.11)  # the file has 9 cm
    assert "checks hold" in bench.widgets.findings.value


def test_after_a_stroke_the_last_value_wins(bench: Bench, tmp_path: Path) -> None:
    """The bust dragged from 8.8 to 9.6 in one stroke."""
    slide(bench, "bust_ease", *(8.8 + step / 10 for step in range(9)))
    fresh = Bench(read_costume(demo_costume()), "shirt", SIX)
    slide(fresh, "bust_ease", 9.6)
    assert bench.made == fresh.made
    fresh_size = size(fresh, "shirt.front.cut-line")
    assert size(bench, "shirt.front.cut-line") == pytest.approx(fresh_size, abs=0.02)


def test_the_pale_outline_is_the_shape_before_the_whole_stroke(bench: Bench) -> None:
    first = size(bench, "shirt.sleeve.cut-line")
    assert "shirt.sleeve.cut-line.before" not in drawn(bench)
    slide(bench, "arm_ease", 7.0, 8.0, 9.0)
    assert size(bench, "shirt.sleeve.cut-line.before") == pytest.approx(first, abs=0.02)
    slide(bench, "length_ease", 1.0, 2.0)
    second = size(bench, "shirt.sleeve.cut-line")
    slide(bench, "arm_ease", 9.5)
    assert size(bench, "shirt.sleeve.cut-line.before") == pytest.approx(second, abs=0.02)
    assert second[0] > first[0] + 10  # 30 mm more at the upper arm


def test_the_page_of_the_picture_never_shrinks_while_a_slider_is_moved(bench: Bench) -> None:
    slide(bench, "bust_ease", 20.0)
    wide = re.search(r'viewBox="[^"]*"', bench.picture.value)
    slide(bench, "bust_ease", 2.0)
    narrow = re.search(r'viewBox="[^"]*"', bench.picture.value)
    assert wide
    assert narrow
    assert wide[0] == narrow[0]


def test_a_refusal_is_told_and_the_last_picture_stays_until_it_is_mended(bench: Bench) -> None:
    slide(bench, "arm_ease", 6.5)
    good = bench.picture.value, bench.widgets.findings.value, bench.widgets.girths.value
    slide(bench, "arm_ease", 40.0)
    assert refusals(bench) == ["arm_ease"]
    assert "sleeve cap" in refusal(bench, "arm_ease")
    assert (bench.picture.value, bench.widgets.findings.value, bench.widgets.girths.value) == good
    with pytest.raises(DraftError, match="nothing was written"):
        bench.wanted()
    assert not bench.out.exists()
    slide(bench, "waist_ease", 8.0)
    assert refusals(bench) == ["arm_ease"]  # beside what has to be mended, not what moved last
    slide(bench, "arm_ease", 6.5)
    assert refusals(bench) == []
    assert garment_girth(bench, "Waist") == pytest.approx(85.5, abs=0.11)  # 77.5 and 8


def test_a_fault_of_ours_is_told_and_goes_on_to_the_log(bench: Bench, monkeypatch: pytest.MonkeyPatch) -> None:
    def broken(_: Any) -> Any:
        raise KeyError("a bug <1>")

    monkeypatch.setattr(ahead, "finished", broken)
    good = bench.picture.value
    with pytest.raises(KeyError):
        slide(bench, "bust_ease", 11.0)
    assert "a fault of the kit" in bench.widgets.said.value
    assert "&lt;1&gt;" in bench.widgets.said.value
    assert bench.picture.value == good


def test_the_button_writes_the_same_files_as_the_command_does(bench: Bench, tmp_path: Path) -> None:
    slide(bench, "cap_ease", 0.4)
    bench.widgets.writing.button.click()
    bench.widgets.writing.errand.wait(120)
    text = demo_costume().read_text("utf-8").replace('cap_ease = "1/2 in"', "cap_ease = 0.4")
    text = text.replace('"../', f'"{shipped("measurements").as_posix()}/')
    (tmp_path / "mine.toml").write_text(text)
    assert main(["make", str(tmp_path / "mine.toml"), "--out", str(tmp_path / "typed")]) == 0
    ours = {p.name: p.read_bytes() for p in bench.out.rglob("*.*") if p.suffix != ".json"}
    typed = {p.name: p.read_bytes() for p in (tmp_path / "typed").rglob("*.*") if p.name in ours}
    assert {"overview.png", "shirt.front.svg", "shirt.sleeve.svg", "shirt.collar.svg"} <= ours.keys()
    assert ours == typed
    links = re.findall(r">([^<>]+)</a>", bench.widgets.writing.files.outputs[0]["data"]["text/html"])
    assert set(links) == {*ours, "report.json"}


def test_a_folder_that_cannot_be_written_is_told(bench: Bench, tmp_path: Path) -> None:
    writing = bench.widgets.writing
    writing.out = tmp_path / "nowhere" / "out"
    writing.button.click()
    writing.errand.wait(60)
    assert "there is no folder" in bench.widgets.said.value.lower()
    assert not writing.button.disabled


def test_a_value_set_by_hand_says_so_in_the_record(bench: Bench) -> None:
    slide(bench, "cap_ease", 1.0)
    made = bench.made["shirt"].choices
    assert made["cap_ease"] == (10.0, "notebook")
    assert made["waist_ease"] == (90.0, "file")
    assert made["seam_allowance"][1] == "default"
    bench.reset("cap_ease")
    assert bench.made["shirt"].choices["cap_ease"] == (12.7, "file")


def test_a_typed_value_takes_its_unit_and_none_is_cut_off_at_the_end_of_the_range(bench: Bench) -> None:
    """28.575 mm is 1 1/8 in (1 in = 25.4 mm, the definition of 1959)."""
    write(bench, "cap_ease", "1 1/8 in")
    assert standing.values_of(bench.made, "shirt")["cap_ease"] == pytest.approx(28.575)
    write(bench, "waist_ease", "9,5")
    assert standing.values_of(bench.made, "shirt")["waist_ease"] == 95.0
    write(bench, "bust_ease", "90 cm")
    state = bench.knobs.states["bust_ease"]
    assert "out of range" in state["refusal"]
    assert state["text"] == "90 cm"
    assert state["high"] >= 900.0 == state["value"]
    assert standing.values_of(bench.made, "shirt")["bust_ease"] == 100.0
    write(bench, "bust_ease", "11 cm")
    assert refusals(bench) == []
    assert bench.knobs.states["bust_ease"]["high"] == 400.0  # the block's own range again


def test_a_text_that_says_nothing_is_refused_beside_its_control_and_kept_to_be_mended(bench: Bench) -> None:
    write(bench, "bust_ease", "roomy")
    state = bench.knobs.states["bust_ease"]
    assert (state["text"], state["value"]) == ("roomy", 100.0)
    assert "cannot be read" in state["refusal"]
    assert not bench.history.past
    hand(bench, "bust_ease", 99, back=True)
    assert bench.knobs.states["bust_ease"]["text"] == "10 cm"
    assert refusals(bench) == []


def test_ten_switches_between_cm_and_inches_change_no_value(bench: Bench) -> None:
    """What is kept is never rounded, whatever is shown."""
    slide(bench, "arm_ease", 6.37)
    before = bench.standing
    for unit in ("in", "cm") * 5:
        bench.widgets.unit.value = unit
        for name, state in bench.knobs.states.items():
            write(bench, name, state["text"])  # opened and closed
        shown = bench.knobs.states["bust_ease"]["text"]
        assert shown == {"cm": "10 cm", "in": "3 15/16 in"}[unit]
    assert bench.standing == before
    assert len(bench.history.past) == 1


def test_what_changed_is_told_in_numbers_the_largest_first(bench: Bench) -> None:
    slide(bench, "bust_ease", 13.0)
    rows = re.findall(r'row">(.*?)</th>.*?([+-][\d.]+)</td></tr>', bench.widgets.changes.value)
    assert rows[0] == ("Bust, girth", "+3.0")
    sizes = [abs(float(by)) for _, by in rows]
    assert sizes == sorted(sizes, reverse=True)
    assert len(rows) > 3


def test_every_garment_has_a_bench_and_what_was_chosen_for_each_stays(tmp_path: Path) -> None:
    bench = Bench(read_costume(demo_costume()), out=tmp_path / "out")
    assert [name for _, name in bench.widgets.dress.options] == ["coat", "shirt", "breeches"]
    assert len(bench.controls) > 40
    bench.ask("waist_ease", 66.0)
    bench.widgets.dress.value = "shirt"
    assert {g.name for g in bench.made.garments} == {"shirt"}
    bench.ask("waist_ease", 95.0)
    eases = {g.name: g.choices.get("waist_ease") for g in bench.standing.asked.garments}
    assert eases["coat"].value == "66.0 mm"
    assert eases["shirt"].value == "95.0 mm"
    bench.undo()
    bench.undo()
    assert (bench.garment, bench.widgets.dress.value) == ("coat", "coat")
    assert bench.standing.asked == bench.costume
    groups = [group["heading"] for group in bench.knobs.groups]
    assert groups[0] == "Coat body"
    assert groups[-1] == "Seam allowances and marks"
    assert [group["open"] for group in bench.knobs.groups][:2] == [True, False]


def test_a_garment_that_cannot_be_drafted_is_said_and_the_one_shown_stays(tmp_path: Path) -> None:
    costume = read_costume(demo_costume())
    broken = standing.with_choice(costume, "shirt", "arm_ease", 400.0)
    bench = Bench(broken, out=tmp_path / "out")
    bench.widgets.dress.value = "shirt"
    assert "sleeve cap" in bench.widgets.said.value
    assert (bench.garment, bench.widgets.dress.value) == ("coat", "coat")


def test_a_move_made_before_another_garment_was_shown_moves_nothing_of_it(tmp_path: Path) -> None:
    bench = Bench(read_costume(demo_costume()), out=tmp_path / "out")
    bench.widgets.dress.value = "shirt"
    hand(bench, "waist_ease", 1, value=200.0, garment="coat")
    assert bench.standing.asked == bench.costume


@pytest.mark.parametrize(
    ("garment", "choice", "hint"),
    [("shirt", "bust_eas", "did you mean bust_ease"), ("shrit", "bust_ease", "did you mean shirt")],
)
def test_a_misspelt_name_is_refused_with_the_nearest(garment: str, choice: str, hint: str) -> None:
    costume = read_costume(demo_costume())
    begun = standing.begin_standing(costume, "shirt")
    with pytest.raises(InputError, match=hint):
        standing.asked_for(begun, garment, choice, 80.0)
    assert begun == standing.begin_standing(costume, "shirt")


def test_the_makers_own_files_beside_the_notebooks_come_first(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "notebooks").mkdir()
    monkeypatch.chdir(tmp_path / "notebooks")
    assert costume_path("lamplighter") == demo_costume()
    own = tmp_path / "measurements" / "costumes" / "lamplighter.toml"
    own.parent.mkdir(parents=True)
    own.touch()
    assert costume_path("lamplighter") == own
