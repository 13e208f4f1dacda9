"""What the sliders of page 02 were told is kept as it is told: no reload, restart or crash loses a reading."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest

from drafting.body import wearer
from drafting.fabric import read_fabric
from drafting.ground.shipped import shipped
from drafting.notebook import LoadedStrip, OverhangTest, SwatchTest
from drafting.notebook.cloth import readings

BODY = wearer({"height": 1700, "bust_girth": 900, "waist_girth": 720, "hip_girth": 970})


@pytest.fixture
def cloth(tmp_path: Path) -> Path:
    own = shipped("measurements") / "fabrics" / "striped-shirting.toml"
    return Path(shutil.copy(own, tmp_path / "my-shirting.toml"))


@pytest.mark.parametrize("unit", ["cm", "in"])
def test_readings_stand_again_each_with_its_strip(cloth: Path, unit: str) -> None:
    before = cloth.read_bytes()
    over, load = OverhangTest(cloth, unit=unit), LoadedStrip(cloth, unit=unit)
    assert not cloth.with_suffix(".readings").exists()
    for strip, length in (("bending_length_along", 60.0), ("fused_light", 112.0)):
        over.controls["strip"].value = strip
        over.controls["length"].value = over.ruled.read(over.ruled.nearest(length))
    over.controls["angle"].value = 30.0
    load.controls["way"].value = "stretch_bias"
    load.controls["load"].value = 750.0
    load.controls["stretched"].value = load.ruled.read(load.ruled.even(120.0))
    assert cloth.read_bytes() == before

    again, hung = OverhangTest(cloth, unit=unit), LoadedStrip(cloth, unit=unit)  # after a restart or a crash
    assert (again.test.strip, again.test.angle) == ("fused_light", 30.0)
    assert again.test.length == pytest.approx(112.0, abs=0.8)  # half a line of a ruler in inches
    assert again.controls["length"].value == pytest.approx(again.ruled.read(again.test.length), abs=1e-9)
    assert "Not saved yet, kept in my-shirting.readings" in again.done.value
    again.controls["strip"].value = "bending_length_along"
    assert again.test.length == pytest.approx(60.0, abs=0.8)
    assert "Not saved yet" in again.done.value
    again.controls["strip"].value = "bending_length_across"  # of that the file tells, and no hand did
    assert "Not saved yet" not in again.done.value
    assert (hung.test.way, hung.test.load) == ("stretch_bias", 750.0)
    assert hung.test.stretched == pytest.approx(120.0, abs=0.5)


def test_a_save_empties_what_was_kept_of_its_strip(cloth: Path) -> None:
    over, load = OverhangTest(cloth), LoadedStrip(cloth)
    over.controls["length"].value = 60.0
    load.controls["stretched"].value = 104.0
    OverhangTest(cloth).save()
    assert read_fabric(cloth).bending_length_along == pytest.approx(30.0, rel=1e-3)  # half of it: ASTM D1388
    kept = json.loads(cloth.with_suffix(".readings").read_text("utf-8"))
    assert list(kept) == ["loaded"]
    again = LoadedStrip(cloth)
    again.save()
    assert not cloth.with_suffix(".readings").exists()


def test_what_is_moved_back_to_what_the_file_says_is_kept_no_longer(cloth: Path) -> None:
    over = OverhangTest(cloth)
    stood = over.controls["length"].value
    over.controls["length"].value = 60.0
    assert cloth.with_suffix(".readings").exists()
    over.controls["length"].value = stood
    assert not cloth.with_suffix(".readings").exists()
    over.controls["strip"].value = "fused_heavy"  # nothing is known of it, and nothing was told
    assert not cloth.with_suffix(".readings").exists()


def test_the_stretched_strip_is_kept_beside_the_costume(tmp_path: Path) -> None:
    costume = tmp_path / "my-costume.toml"
    test = SwatchTest(BODY, at=costume)
    test.controls["stretched"].value = 150.0
    test.controls["washed"].value = 480.0
    again = SwatchTest(BODY, at=costume)
    assert (again.swatch.stretched, again.swatch.washed) == (150.0, 480.0)
    assert again.controls["stretched"].value == 150.0
    assert "Kept in my-costume.readings" in again.done.value
    assert not SwatchTest(BODY).keeps
    begins = "of no cloth of yours"  # until a ruler has said something, or what it said stands again
    assert begins in SwatchTest(BODY).said.value
    assert begins not in again.said.value
    assert begins not in test.said.value


TORN = (
    "",
    "[1, 2",
    "\x00",
    "[" * 100_000,
    '{"overhang": 3}',
    '{"overhang": {"hem": {}}}',
    '{"overhang": {"bending_length_along": {"length": NaN, "angle": 41.5}}}',
    '{"overhang": {"bending_length_along": {"length": 9e9, "angle": 41.5}}}',
    '{"overhang": {"bending_length_along": {"length": "60", "angle": 41.5}}, "loaded": null}',
)


@pytest.mark.parametrize("torn", TORN)
def test_what_is_torn_or_strange_is_passed_over(cloth: Path, torn: str) -> None:
    cloth.with_suffix(".readings").write_text(torn)
    over = OverhangTest(cloth)
    assert over.test.length == pytest.approx(46.0)  # twice the file's 2.3 cm
    over.controls["length"].value = 60.0
    assert OverhangTest(cloth).test.length == 60.0


def test_what_belongs_to_the_kit_gets_no_file_beside_it(cloth: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(readings, "INSTALLED", cloth.parent)
    over = OverhangTest(cloth)
    over.controls["length"].value = 60.0
    assert over.test.length == 60.0
    assert not over.keeps
    assert not cloth.with_suffix(".readings").exists()


@pytest.mark.parametrize("unit", ["cm", "in"])
def test_a_slider_that_goes_to_its_nearest_step_by_itself_has_told_nothing(cloth: Path, unit: str) -> None:
    """Opened in inches, the page wrote its own beginnings beside the costume: the browser moves them to a line."""
    cloth.write_text(
        cloth.read_text("utf-8").replace("bending_length_along = 2.3", "bending_length_along = 2.315"), "utf-8"
    )
    costume = cloth.with_name("my-costume.toml")
    trials = [
        SwatchTest(BODY, unit=unit, at=costume),
        OverhangTest(cloth, unit=unit),
        LoadedStrip(cloth, unit=unit),
    ]
    for trial in trials:
        for control in trial.controls.values():
            if hasattr(control, "value") and not hasattr(control, "options"):
                step = getattr(control, "slider", control).step
                control.value = step * round(control.value / step)
    assert not list(cloth.parent.glob("*.readings"))
    trials[0].controls["stretched"].value += 2.0
    assert costume.with_suffix(".readings").exists()
