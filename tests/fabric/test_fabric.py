"""Cloth arithmetic against the standards' formulas, and fabric files as makers write them."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drafting.fabric import (
    Fabric,
    cut_for,
    cut_girth,
    dimensional_change,
    must_reach,
    needed_stretch,
    read_fabric,
    recovery_of,
    stretch_of,
)
from drafting.ground.errors import DraftError, InputError
from drafting.ground.shipped import shipped

FABRICS = shipped("measurements") / "fabrics"


def written(folder: Path, text: str) -> Path:
    path = folder / "cloth.toml"
    path.write_text('unit = "cm"\n' + text, "utf-8")
    return path


def refused(path: Path) -> str:
    with pytest.raises(InputError) as error:
        read_fabric(path)
    return str(error.value)


def test_dimensional_change_is_the_standards_formula() -> None:
    assert 100 * dimensional_change(350, 336) == pytest.approx(-4, abs=0.01)  # ISO 5077


def test_cutting_for_a_shrinkage_divides_and_does_not_multiply() -> None:
    assert cut_for(1000, -0.04) == pytest.approx(1041.67, abs=0.1)  # ISO 5077: divided
    assert cut_for(620, -0.05) == pytest.approx(652.6, abs=0.1)
    assert cut_for(500, -0.03) == pytest.approx(515.5, abs=0.1)


def test_stretch_is_the_shop_test() -> None:
    assert 100 * stretch_of(100, 140) == pytest.approx(40, abs=0.01)  # ASTM D2594, D3107
    assert 100 * stretch_of(4 * 25.4, 5 * 25.4) == pytest.approx(25, abs=0.01)


def test_a_cloth_cut_smallest_of_all_just_reaches_the_body() -> None:
    for stretch, share in ((0.25, 0.2), (0.5, 1 / 3), (1.0, 0.5)):  # 1 - 1 / (1 + s)
        assert cut_girth(960, stretch, 1.0) == pytest.approx(960 * (1 - share), abs=0.5)
    assert cut_girth(960, 0.5, 1.0) == pytest.approx(640, abs=0.1)  # hip 96 at 50 %


def test_a_share_of_the_stretch_gives_the_girth_to_cut() -> None:
    assert cut_girth(960, 0.5, 0.4) == pytest.approx(800, abs=0.1)  # body / (1 + u s)
    assert cut_girth(960, 0.5, 0) == 960
    with pytest.raises(DraftError, match="0 to 1"):
        cut_girth(960, 0.5, 1.2)


def test_negative_ease_without_stretch_is_refused_in_plain_words() -> None:
    assert needed_stretch(960, 864) == pytest.approx(0.1111, abs=0.0001)  # 96 / 86.4 - 1
    with pytest.raises(DraftError) as error:
        must_reach("hip", 960, 864, 0.0)
    assert "864 mm must stretch 11.1 %" in str(error.value)
    assert "the cloth gives 0 %" in str(error.value)
    with pytest.raises(DraftError, match="does not stretch"):
        must_reach("hip", 960, 960, 0.0)
    must_reach("hip", 960, 961, 0.0)
    must_reach("hip", 960, 864, 0.12)


@given(st.floats(500, 2000), st.floats(0.01, 1.5), st.floats(0, 1))
def test_a_girth_cut_by_a_share_is_never_out_of_reach(body: float, s: float, share: float) -> None:
    finished = cut_girth(body, s, share)
    assert finished >= body / (1 + s) - 1e-6
    must_reach("hip", body, finished + 1e-6, s)


def test_a_swatch_test_gives_the_stretch_exactly(tmp_path: Path) -> None:
    path = written(tmp_path, "stretch_across = {rest = 10, stretched = 14, released = 10.4}")
    cloth = read_fabric(path)
    assert cloth.stretch_across == pytest.approx(0.40, abs=1e-12)  # 10 pulled to 14
    assert cloth.recovery == pytest.approx(0.90, abs=1e-9)  # .4 of 4 stays out: ASTM D3107 growth
    assert recovery_of(10, 14, 10) == 1


def test_a_stretch_above_100_percent_asks_with_both_readings(tmp_path: Path) -> None:
    for value in ("140", '"140 %"'):
        said = refused(written(tmp_path, f"stretch_across = {value}"))
        assert "10 to 14 (40 %)" in said
        assert "10 to 24 (140 %)" in said
        assert "cloth.toml:2: stretch_across" in said


def test_a_bare_part_of_one_asks_as_well(tmp_path: Path) -> None:
    said = refused(written(tmp_path, "stretch_across = 0.4"))
    assert '"0.4 %"' in said
    assert '"40 %"' in said
    assert read_fabric(written(tmp_path, 'stretch_across = "0.4 %"')).stretch_across == 0.004


def test_shrinkage_is_what_is_lost_and_never_what_is_left(tmp_path: Path) -> None:
    path = written(tmp_path, "shrinkage_along = {before = 35, after = 33.6}\nshrinkage_across = 3")
    cloth = read_fabric(path)
    assert cloth.shrinkage_to_come == pytest.approx((0.04, 0.03))  # ISO 5077
    assert "what is lost" in refused(written(tmp_path, "shrinkage_along = 96"))
    washed = read_fabric(written(tmp_path, "shrinkage_along = 4\npretreated = true"))
    assert washed.shrinkage_to_come == (0.0, 0.0)


def test_the_selvedge_is_taken_off_and_an_assumed_one_is_said(tmp_path: Path) -> None:
    given_one = read_fabric(written(tmp_path, "width = 150\nselvedge = 1.5"))
    assert given_one.usable_width == 1470.0  # 150 less twice 1.5
    assert given_one.findings == ()
    assumed = read_fabric(written(tmp_path, "width = 150"))
    assert assumed.usable_width is not None
    assert 1460 <= assumed.usable_width <= 1480  # common practice: 1-2 cm a side
    assert "1.5 cm" in assumed.findings[0].said("cm")
    known = read_fabric(written(tmp_path, "usable_width = 140\nwidth = 150"))
    assert known.usable_width == 1400.0


def test_all_faults_of_a_fabric_file_come_at_once_with_their_lines(tmp_path: Path) -> None:
    text = "widht = 150\nthickness = 0.5\nweave = 'wovn'\none_way = 'maybe'\nthickness = 2\n"
    text += "recovery = 120\niron_dots = 4\nstretch_along = {rest = 14, stretched = 10}\n"
    text += "usable_width = 160\nwidth = 150"
    with pytest.raises(InputError) as error:
        read_fabric(written(tmp_path, text))
    faults = {fault.field: fault for fault in error.value.faults}
    assert "did you mean width" in faults["widht"].right
    assert "lines 3 and 6" in faults["thickness"].what
    assert "did you mean woven" in faults["weave"].right
    assert faults["iron_dots"].line == 8
    assert faults.keys() == {
        "widht",
        "thickness",
        "weave",
        "one_way",
        "recovery",
        "iron_dots",
        "stretch_along",
        "usable_width",
    }


def test_a_thickness_in_the_wrong_unit_is_refused(tmp_path: Path) -> None:
    assert "name the unit" in refused(written(tmp_path, "thickness = 24"))
    assert read_fabric(written(tmp_path, 'thickness = "0,24 mm"')).thickness == 0.24


@pytest.mark.parametrize("path", sorted(FABRICS.glob("*.toml")), ids=lambda path: path.stem)
def test_the_shipped_cloths_are_marked_invented_and_plausible(path: Path) -> None:
    cloth = read_fabric(path)
    assert "invented" in cloth.title.lower()
    assert cloth.usable_width is not None
    assert 880 <= cloth.usable_width <= 3000  # common practice: bolts of 90 to 300 cm
    assert max(cloth.shrinkage_along, cloth.shrinkage_across) <= 0.10  # a textile engineer's table
    assert cloth.weave == "knit" or cloth.greatest_stretch < 0.12  # ASTM D3107-07: stretch woven
    assert isinstance(cloth, Fabric)


@given(st.text(max_size=200))
def test_random_text_is_read_as_a_fabric_or_refused(tmp_path_factory: pytest.TempPathFactory, text: str) -> None:
    path = tmp_path_factory.mktemp("cloth") / "random.toml"
    path.write_bytes(text.encode("utf-8", errors="surrogatepass"))
    try:
        cloth = read_fabric(path)
    except InputError:
        return
    assert cloth.selvedge >= 0


@pytest.mark.parametrize(
    ("written", "seen"), [("plum", "#64405f"), ("Bottle green", "#27463a"), ("#AA3355", "#aa3355")]
)
def test_a_colour_is_a_plain_name_or_its_figures(tmp_path: Path, written: str, seen: str) -> None:
    file = tmp_path / "cloth.toml"
    file.write_text(f'title = "Cloth"\nunit = "cm"\nwidth = 140\ncolour = "{written}"\n')
    assert read_fabric(file).colour == seen


def test_a_colour_that_nobody_knows_is_answered_with_those_there_are(tmp_path: Path) -> None:
    file = tmp_path / "cloth.toml"
    file.write_text('title = "Cloth"\nunit = "cm"\nwidth = 140\ncolour = "zzzz"\n')
    with pytest.raises(InputError, match=r"cloth\.toml:4: colour: .*navy"):
        read_fabric(file)


def test_a_stretch_test_names_what_pulled_at_the_strip(tmp_path: Path) -> None:
    path = written(
        tmp_path,
        'stretch_across = {rest = 10, stretched = 12.4, load = "500 g", strip = "5 cm"}\nstretch_along = 2',
    )
    cloth = read_fabric(path)
    assert cloth.stretch_across == pytest.approx(0.24)
    assert cloth.load_across == pytest.approx(0.5 * 9.80665 / 0.05)  # standard gravity: 98 N on a metre
    assert cloth.load_along is None
    inches = read_fabric(
        written(tmp_path, 'stretch_bias = {rest = 4, stretched = 5, load = "1 lb", strip = "2 in"}')
    )
    assert inches.load_bias == pytest.approx(0.45359237 * 9.80665 / 0.0508)


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ('{rest = 10, stretched = 12, load = "500 g"}', "strip is missing"),
        ('{rest = 10, stretched = 12, strip = "5 cm"}', "load is missing"),
        (
            '{rest = 10, stretched = 12, load = 500, strip = "5 cm"}',
            'load 500 names no unit; write it like load = "500 g"',
        ),
        ('{rest = 10, stretched = 12, load = "500 g", strip = 0}', "strip is zero"),
        ('{rest = 10, stretched = 12, load = "heavy", strip = "5 cm"}', "load 'heavy' cannot be read as a weight"),
        ('{rest = 10, stretched = 12, load = "500 kg", strip = "5 cm"}', "hang 1 g to 20 kg"),
        ('{rest = 10, stretched = 12, load = "500 g", strip = "5 m"}', "0.5 cm to 50 cm"),
        ('{rest = 10, stretched = 12, weight = "500 g"}', "weight is not known here"),
        ("{rest = 10, stretched = 41}", "4.1 times rest"),
    ],
)
def test_a_pulled_strip_that_cannot_be_is_refused_with_its_line(tmp_path: Path, text: str, wanted: str) -> None:
    said = refused(written(tmp_path, f"mass = 150\nstretch_along = {text}"))
    assert "cloth.toml:3: stretch_along" in said
    assert wanted in said


def test_a_stretch_over_150_percent_is_doubted_and_over_300_refused(tmp_path: Path) -> None:
    assert read_fabric(written(tmp_path, "stretch_along = {rest = 10, stretched = 25}")).findings == ()
    doubted = read_fabric(written(tmp_path, "stretch_along = {rest = 10, stretched = 25.1}"))
    assert doubted.findings[0].level == "warning"
    assert "151 %" in doubted.findings[0].message
    read_fabric(written(tmp_path, "stretch_along = {rest = 10, stretched = 40}"))
    assert "4.01 times" in refused(written(tmp_path, "stretch_along = {rest = 10, stretched = 40.1}"))


def test_a_bending_length_is_given_or_slid_over_an_edge(tmp_path: Path) -> None:
    text = 'bending_length_along = {overhang = "11.2 cm", angle = 41.5}\nbending_length_across = {overhang = 8}\n'
    cloth = read_fabric(written(tmp_path, text + 'bending_length_bias = "19 mm"'))
    assert cloth.bending_length_along == pytest.approx(56.0, rel=0.001)  # ASTM D1388, from memory: half of it
    assert cloth.bending_length_across == pytest.approx(40.0, rel=0.001)
    assert cloth.bending_length_bias == 19.0


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ('{overhang = "11 cm", angle = 88}', "5 to 80 degrees"),
        ("{angle = 41.5}", "overhang is missing"),
        ('{overhang = "11 cm", angle = "steep"}', "angle 'steep' cannot be read"),
        ('{overhang = "11 cm", slope = 41.5}', "slope is not known here"),
        ('{overhang = "11 m"}', "0.1 cm to 30 cm"),
        ('"40 cm"', "0.1 cm to 30 cm"),
    ],
)
def test_an_overhang_that_tells_nothing_is_refused_with_its_line(tmp_path: Path, text: str, wanted: str) -> None:
    said = refused(written(tmp_path, f"bending_length_along = {text}"))
    assert "cloth.toml:2: bending_length_along" in said
    assert wanted in said


def test_a_strip_starched_or_fused_is_read_with_its_mass(tmp_path: Path) -> None:
    text = 'fused_medium = {overhang = "10 cm", angle = 41.5, mass = "210 g/m2"}\nstarched_light = 3'
    light, fused = read_fabric(written(tmp_path, text)).treated
    assert (light.treatment, light.bending_length, light.mass) == ("starched_light", 30.0, None)
    assert (fused.treatment, fused.mass) == ("fused_medium", 210.0)
    assert fused.bending_length == pytest.approx(50.0, rel=0.001)
    said = refused(written(tmp_path, "fused_medium = {overhang = 10, mass = 0.2}"))
    assert "cloth.toml:2: fused_medium" in said
