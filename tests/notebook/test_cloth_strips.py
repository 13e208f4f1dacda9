"""The overhang and the loaded strip on the screen: figures, words, and the cloth's file they are saved to."""

from __future__ import annotations

import io
import re
import shutil
from pathlib import Path
from typing import Any

import pytest
from svgelements import SVG, Shape

from drafting.fabric import read_fabric
from drafting.ground.errors import DraftError, InputError
from drafting.ground.shipped import shipped
from drafting.notebook import LoadedStrip, OverhangTest, cloth_holds, cloth_numbers
from drafting.notebook.cloth import state
from drafting.notebook.cloth.inch_slider import InchSlider
from drafting.reading.rewriting import rewritten

FABRICS = shipped("measurements") / "fabrics"


@pytest.fixture
def cloth(tmp_path: Path) -> Path:
    return Path(shutil.copy(FABRICS / "striped-shirting.toml", tmp_path / "my-shirting.toml"))


def remarks(text: str) -> list[str]:
    return [line.partition("#")[2] for line in text.splitlines() if "#" in line]


def drawn(picture: str, name: str) -> str:
    found = re.search(rf'data-{name}="([^"]+)"', picture)
    assert found is not None
    return found[1]


def test_the_page_begins_with_what_the_cloths_file_says(cloth: Path) -> None:
    test = OverhangTest(cloth)
    assert test.test.length == pytest.approx(46.0)  # twice the file's 2.3 cm
    assert test.test.bending_length == pytest.approx(23.0, rel=1e-3)
    assert LoadedStrip(cloth).test.stretched == pytest.approx(102.0)  # 10 to 10.2


def test_a_slider_moves_the_strip_and_its_bending_length_at_once(cloth: Path) -> None:
    test = OverhangTest(cloth)
    test.controls["length"].value = 112.0
    assert float(drawn(test.picture.value, "bending-length")) == pytest.approx(56.0, rel=1e-3)  # ASTM D1388
    assert "56 mm" in test.said.value
    before = test.picture.value
    test.controls["angle"].value = 30.0
    assert test.picture.value != before
    assert test.test.bending_length == pytest.approx(112 / 1.7009, rel=1e-3)  # solved apart from this kit


def test_another_strip_begins_with_what_the_file_knows_of_it(cloth: Path) -> None:
    over, load = OverhangTest(cloth), LoadedStrip(cloth)
    over.controls["strip"].value = "bending_length_across"
    assert over.test.length == over.controls["length"].value == pytest.approx(40.0)  # the file's 2.0 cm
    over.controls["strip"].value = "fused_light"
    assert over.test.length == pytest.approx(40.0)  # nothing known: as it stood
    load.controls["way"].value = "stretch_bias"
    assert load.test.stretched == load.controls["stretched"].value == pytest.approx(112.0)
    load.controls["way"].value = "stretch_along"
    assert load.test.stretched == load.controls["stretched"].value == pytest.approx(101.0)
    assert load.refused.value == LoadedStrip(cloth).refused.value


@pytest.mark.parametrize(("length", "angle"), [(10.0, 41.5), (45.0, 20.0), (112.0, 41.5), (250.0, 80.0)])
def test_the_drawn_tip_lies_on_the_drawn_slope(cloth: Path, length: float, angle: float) -> None:
    test = OverhangTest(cloth)
    test.ask("length", length)
    test.ask("angle", angle)
    text = test.picture.value.replace("<svg", '<svg xmlns="http://www.w3.org/2000/svg"')
    shapes = SVG.parse(io.StringIO(text)).elements(lambda element: isinstance(element, Shape))
    named: dict[str, Any] = {shape.values.get("class"): shape for shape in shapes}
    tip, (start, end) = named["tip"], (complex(p.x, p.y) for p in map(named["mark slope"].point, (0, 1)))
    off = (complex(tip.cx, tip.cy) - start) / (end - start)
    assert 0 < off.real < 1
    assert abs(off.imag) * abs(end - start) < 0.5
    assert tip.cx < 360
    assert tip.cy < 230


def test_an_overhang_is_saved_with_every_remark_kept(cloth: Path) -> None:
    before = cloth.read_text("utf-8")
    test = OverhangTest(cloth)
    test.ask("strip", "fused_medium")
    test.ask("length", 100.0)
    test.save()
    after = cloth.read_text("utf-8")
    assert remarks(after) == remarks(before)
    assert after.startswith(before.rstrip("\n"))
    (strip,) = read_fabric(cloth).treated
    assert strip.bending_length == pytest.approx(50.0, rel=1e-3)
    test.ask("strip", "bending_length_along")
    test.ask("length", 90.0)
    test.save()
    assert read_fabric(cloth).bending_length_along == pytest.approx(45.0, rel=1e-3)
    assert "Saved to my-shirting.toml" in test.done.value


def test_a_loaded_strip_is_saved_and_what_it_does_not_say_stays(cloth: Path) -> None:
    test = LoadedStrip(cloth)
    test.ask("stretched", 112.0)
    test.ask("released", 101.0)
    test.save()
    found = read_fabric(cloth)
    assert found.stretch_across == pytest.approx(0.12)
    assert found.load_across == pytest.approx(0.5 * 9.80665 / 0.05)
    assert found.recovery == pytest.approx(11 / 12)
    assert found.stretch_bias == pytest.approx(0.12)


def test_a_loaded_strip_says_how_hard_it_pulls_back(cloth: Path) -> None:
    test = LoadedStrip(cloth)
    test.ask("stretched", 110.0)
    assert "98 N on a metre" in test.said.value  # 0.5 kg of standard gravity on 5 cm
    assert "981 N on a metre" in test.said.value
    test.controls["released"].value = 115.0
    assert "cannot be longer" in test.refused.value
    assert test.test.released < 110
    test.ask("released", 100.0)
    test.ask("stretched", 100.0)
    assert "less than a ruler tells" in test.said.value


def test_a_test_that_another_hand_changed_is_not_written_over(cloth: Path) -> None:
    test = OverhangTest(cloth)
    elsewhere = cloth.read_text("utf-8") + "\n# by another hand\n"
    cloth.write_text(elsewhere, "utf-8")
    test.save()
    assert "# by another hand" in cloth.read_text("utf-8")
    other = OverhangTest(cloth)
    test.ask("length", 80.0)
    test.save()
    with pytest.raises(DraftError, match=r"bending_length_along of my-shirting\.toml has changed"):
        other.save()
    assert read_fabric(cloth).bending_length_along == pytest.approx(40.0, rel=1e-3)


def test_a_file_of_the_kit_is_never_changed(cloth: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(state, "INSTALLED", cloth.parent.resolve())
    before = cloth.read_bytes()
    with pytest.raises(DraftError, match="belongs to the kit"):
        OverhangTest(cloth).save()
    assert cloth.read_bytes() == before


def test_a_test_that_the_file_could_not_be_read_with_is_not_written(cloth: Path) -> None:
    before = cloth.read_bytes()
    with pytest.raises(InputError, match="shorter than rest"):
        state.with_test(state.begin_cloth(cloth), "stretch_across", {"rest": "10 cm", "stretched": "9 cm"})
    assert cloth.read_bytes() == before


def test_the_card_is_written_where_it_is_asked_for(cloth: Path, tmp_path: Path) -> None:
    test = OverhangTest(cloth, cards=tmp_path / "cards")
    test.write_card()
    assert (tmp_path / "cards" / "overhang-card.pdf").read_bytes().startswith(b"%PDF")
    assert "<svg" in (tmp_path / "cards" / "overhang-card.svg").read_text("utf-8")
    assert "overhang-card.pdf" in test.done.value


def test_a_table_on_one_line_is_written_in_place_of_a_number() -> None:
    text = "mass = 118  # g\nbending_length_along = 2.3  # by hand\n"
    new = rewritten(text, {("bending_length_along",): {"overhang": "4.6 cm", "angle": 41.5}})
    assert new == 'mass = 118  # g\nbending_length_along = {overhang = "4.6 cm", angle = 41.5}  # by hand\n'


def test_the_cloths_numbers_are_told_measured_or_guessed(cloth: Path) -> None:
    told = cloth_numbers(cloth)
    assert any("rigidity along the warp" in line and "measured" in line for line in told)
    assert any("stiffness along the warp" in line and "guess" in line for line in told)
    test = LoadedStrip(cloth)
    test.ask("way", "stretch_along")
    test.save()
    assert any("stiffness along the warp" in line and "measured" in line for line in cloth_numbers(cloth))


def test_what_a_cloth_holds_is_told_for_each_treatment(cloth: Path) -> None:
    told = "\n".join(cloth_holds(cloth))
    for words in ("Plain: 8 cm", "medium fusible", "fused band", "puff stands off", "give or take half"):
        assert words in told
    assert "your own strip" not in told
    test = OverhangTest(cloth)
    test.ask("strip", "fused_light")
    test.save()
    assert "With light fusible (your own strip)" in "\n".join(cloth_holds(cloth))


def test_a_treatment_that_the_cloth_does_not_take_is_not_told() -> None:
    velveteen = "\n".join(cloth_holds(FABRICS / "velveteen.toml"))  # takes_starch = false
    assert "Starched" not in velveteen
    assert "With medium fusible" in velveteen
    lining = "\n".join(cloth_holds(FABRICS / "lining.toml"))  # takes neither
    assert "fusible" not in lining.partition("Factors")[0]
    assert "Plain: 8 cm" in lining


@pytest.mark.parametrize("kind", [OverhangTest, LoadedStrip])
def test_each_step_of_a_slider_in_inches_is_a_line_of_the_ruler(kind: type[Any], cloth: Path) -> None:
    test = kind(cloth, unit="in")
    ruled = [one.slider for one in test.controls.values() if isinstance(one, InchSlider)]
    assert len(ruled) >= 1
    for control in ruled:
        ends = [16 * control.min, 16 * control.max, 16 * control.step]
        assert [end % 1 for end in ends] == [0, 0, 0], (control.description, ends)
