"""The bench without a browser: traits are set as the page sets them, and what it shows is read back."""

from __future__ import annotations

import io
import re
from pathlib import Path
from typing import Any

import pytest
from svgelements import SVG

from drafting.cli import main
from drafting.costume_file import read_costume
from drafting.errors import DraftError, InputError
from drafting.notebook import Bench, costume_path, standing
from drafting.shipped import demo_costume, shipped

SIX = ("bust_ease", "waist_ease", "armhole_drop", "cap_ease", "arm_ease", "length_ease")


@pytest.fixture
def bench(tmp_path: Path) -> Bench:
    return Bench(read_costume(demo_costume()), "shirt", SIX, out=tmp_path / "out")


def slide(bench: Bench, name: str, *cm: float) -> None:
    for value in cm:
        bench.controls[name].widget.value = value


def drawn(bench: Bench) -> dict[str, Any]:
    text = bench.picture.value
    width, height = text.split('viewBox="0 0 ')[1].split('"')[0].split()
    text = text.replace("height:auto;", "").replace(
        'width="100%"', f'width="{width}mm" height="{height}mm"'
    )
    page = SVG.parse(io.StringIO(text), ppi=25.4)
    return {element.id: element for element in page.elements() if element.id}


def size(bench: Bench, name: str) -> tuple[float, float]:
    """Return width and height of a drawn path, mm."""
    x0, y0, x1, y1 = drawn(bench)[name].bbox()
    return round(float(x1 - x0), 2), round(float(y1 - y0), 2)


def garment_girth(bench: Bench, level: str) -> float:
    row = re.search(rf">{level}</th>(.*?)</tr>", bench.girths.value)
    assert row
    return float(re.findall(r"<td>([\d.]+)</td>", row[1])[-1])


def test_a_moved_slider_moves_the_girth_by_as_much(bench: Bench) -> None:
    before = garment_girth(bench, "Waist")
    slide(bench, "waist_ease", 12.0)
    assert garment_girth(bench, "Waist") == pytest.approx(
        before + 3.0, abs=0.11
    )  # the file has 9 cm
    assert "checks hold" in bench.findings.value


def test_after_a_stroke_the_last_value_wins(bench: Bench, tmp_path: Path) -> None:
    """Trouble NB1: the bust dragged from 8.8 to 9.6 in one stroke."""
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
    height = bench.picture.layout.height
    assert height.endswith("px")


def test_a_refusal_is_told_and_the_last_picture_stays_until_it_is_mended(bench: Bench) -> None:
    slide(bench, "arm_ease", 6.5)
    good = bench.picture.value, bench.findings.value, bench.girths.value
    slide(bench, "arm_ease", 40.0)
    assert "Not possible" in bench.said.value
    assert "sleeve cap" in bench.said.value
    assert (bench.picture.value, bench.findings.value, bench.girths.value) == good
    with pytest.raises(DraftError, match="nothing was written"):
        bench.export()
    assert not bench.out.exists()
    slide(bench, "waist_ease", 8.0)
    assert "Not possible" in bench.said.value
    slide(bench, "arm_ease", 6.5)
    assert "Not possible" not in bench.said.value
    assert garment_girth(bench, "Waist") == pytest.approx(85.5, abs=0.11)  # 77.5 and 8


def test_a_fault_of_ours_is_told_and_goes_on_to_the_log(
    bench: Bench, monkeypatch: pytest.MonkeyPatch
) -> None:
    def broken(_: Any) -> Any:
        raise KeyError("a bug <1>")

    monkeypatch.setattr(standing, "make", broken)
    good = bench.picture.value
    with pytest.raises(KeyError):
        slide(bench, "bust_ease", 11.0)
    assert "a fault of the kit" in bench.said.value
    assert "&lt;1&gt;" in bench.said.value
    assert bench.picture.value == good


def test_the_button_writes_the_same_files_as_the_command_does(bench: Bench, tmp_path: Path) -> None:
    slide(bench, "cap_ease", 0.4)
    bench.button.click()
    text = demo_costume().read_text("utf-8").replace('cap_ease = "1/2 in"', "cap_ease = 0.4")
    text = text.replace('"../', f'"{shipped("measurements").as_posix()}/')
    (tmp_path / "mine.toml").write_text(text)
    assert main(["make", str(tmp_path / "mine.toml"), "--out", str(tmp_path / "typed")]) == 0
    ours = {p.name: p.read_bytes() for p in bench.out.rglob("*.*") if p.suffix != ".json"}
    typed = {p.name: p.read_bytes() for p in (tmp_path / "typed").rglob("*.*") if p.name in ours}
    assert {
        "overview.png",
        "shirt.front.svg",
        "shirt.sleeve.svg",
        "shirt.collar.svg",
    } <= ours.keys()
    assert ours == typed
    links = re.findall(r">([^<>]+)</a>", bench.files.outputs[0]["data"]["text/html"])
    assert sorted(links) == sorted([*ours, "report.json"])


def test_a_folder_that_cannot_be_written_is_told(bench: Bench, tmp_path: Path) -> None:
    bench.out = tmp_path / "nowhere" / "out"
    bench.button.click()
    assert "there is no folder" in bench.said.value.lower()
    assert not bench.button.disabled


@pytest.mark.parametrize(
    ("garment", "choice", "hint"),
    [("shirt", "bust_eas", "did you mean bust_ease"), ("shrit", "bust_ease", "did you mean shirt")],
)
def test_a_misspelt_name_is_refused_with_the_nearest(garment: str, choice: str, hint: str) -> None:
    costume = read_costume(demo_costume())
    begun = standing.begin(costume, "shirt")
    with pytest.raises(InputError, match=hint):
        standing.asked_for(begun, garment, choice, 80.0)
    assert begun == standing.begin(costume, "shirt")


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
