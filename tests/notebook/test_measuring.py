"""The measuring guide without a browser: what the fields give is what a file would give."""

from __future__ import annotations

import re
import shutil
import tomllib
from pathlib import Path
from xml.etree import ElementTree

import pytest

from drafting.body import DIMENSIONS, read_body
from drafting.checks.words import plain
from drafting.costume.next_measure import next_measures
from drafting.ground.errors import DraftError, InputError
from drafting.ground.shipped import shipped
from drafting.notebook import MeasuringGuide
from drafting.notebook.measuring.looks import style, tape_class
from drafting.notebook.measuring.order import BOTH_HANDS, CAN_DIFFER, ORDER

LAMPLIGHTER = shipped("measurements") / "bodies" / "lamplighter.toml"


@pytest.fixture
def file(tmp_path: Path) -> Path:
    return Path(shutil.copy(LAMPLIGHTER, tmp_path))


@pytest.fixture
def guide(file: Path) -> MeasuringGuide:
    return MeasuringGuide(file)


def blank(tmp_path: Path, measures: str = "") -> MeasuringGuide:
    path = tmp_path / "new.toml"
    path.write_text(f'unit = "cm"\ntaken_over = "skin"\nwaist_level = "natural"\n[measures]\n{measures}')
    return MeasuringGuide(path)


def said(guide: MeasuringGuide, name: str) -> str:
    return str(guide.fields[name].said.value)


def write(guide: MeasuringGuide, name: str, *texts: str) -> None:
    """Set the text boxes as the page does."""
    for box, text in zip(guide.fields[name].boxes, texts, strict=False):
        box.value = text


def asks(guide: MeasuringGuide) -> bool:
    return guide.asked.layout.display != "none"


def test_every_dimension_and_the_weight_have_one_field_in_the_order_of_taking() -> None:
    assert len(ORDER) == len(set(ORDER))
    assert set(ORDER) == {*DIMENSIONS, "weight"}
    assert set(BOTH_HANDS) < CAN_DIFFER < set(DIMENSIONS)


def test_a_page_opened_and_left_alone_says_what_the_file_says(guide: MeasuringGuide) -> None:
    from_file = read_body(LAMPLIGHTER)
    assert guide.body is not None
    assert guide.body.measures == from_file.measures
    assert guide.body.layers == from_file.layers
    assert guide.body.weight == 68


def test_a_text_is_read_as_the_file_reader_reads_it(guide: MeasuringGuide, file: Path) -> None:
    write(guide, "waist_girth", "30 1/2 in")
    assert guide.body is not None
    assert guide.body["waist_girth"] == pytest.approx(774.7)  # 30.5 x 25.4
    write(guide, "waist_girth", "71,0")  # a decimal comma
    assert guide.body["waist_girth"] == 710.0
    write(guide, "hip_girth", "1.020,5")
    assert "two separators" in said(guide, "hip_girth")
    assert guide.body["hip_girth"] == 970.0  # the last that could be read
    assert "could last be read" in guide.message.value


def test_a_measure_out_of_place_is_doubted_beside_its_own_field(guide: MeasuringGuide) -> None:
    write(guide, "high_bust_girth", "99")
    doubt = said(guide, "high_bust_girth")
    assert "swapped" in doubt
    assert 'class="said doubt"' in doubt
    assert "high_bust" not in doubt
    assert said(guide, "arm_length") == ""
    write(guide, "high_bust_girth", "89")
    assert said(guide, "high_bust_girth") == ""


def test_girths_in_inches_are_asked_about_and_never_turned_silently(tmp_path: Path) -> None:
    """Inches typed as cm: height 168; bust 36, waist 28, hip 38, all under unit cm."""
    guide = blank(tmp_path, "height = 168\nbust_girth = 36\nwaist_girth = 28\nhip_girth = 38\n")
    assert guide.body is None
    assert asks(guide)
    for figure in ("91.4", "71.1", "96.5"):
        assert figure in guide.ask_text.value
    guide.yes.click()
    assert guide.body is not None
    got = [guide.body[n] for n in ("bust_girth", "waist_girth", "hip_girth")]
    assert got == pytest.approx([914.4, 711.2, 965.2])
    assert guide.fields["bust_girth"].boxes[0].value == "36 in"
    assert not asks(guide)


def test_a_no_leaves_the_fields_and_the_refusal(tmp_path: Path) -> None:
    guide = blank(tmp_path, "height = 168\nbust_girth = 36\nwaist_girth = 28\nhip_girth = 38\n")
    guide.no.click()
    assert not asks(guide)
    assert guide.fields["bust_girth"].boxes[0].value == "36 cm"
    assert "looks like inches" in said(guide, "bust_girth")
    write(guide, "bust_girth", "37")  # a new value is asked about anew
    assert asks(guide)


def test_one_small_measure_in_inches_is_asked_about_too(guide: MeasuringGuide) -> None:
    write(guide, "wrist_girth", "6 1/2")
    assert asks(guide)
    assert "16.5" in guide.ask_text.value
    guide.yes.click()
    assert guide.body is not None
    assert guide.body["wrist_girth"] == pytest.approx(165.1)
    assert guide.fields["wrist_girth"].boxes[0].value == "6 1/2 in"


def test_an_empty_field_shows_the_estimate_and_its_spread(guide: MeasuringGuide) -> None:
    assert guide.body is not None
    shown = guide.fields["nape_height"].boxes[0].placeholder
    found = re.fullmatch(r"about ([\d.]+) cm ± ([\d.]+) cm", shown)
    assert found
    assert float(found[1]) == pytest.approx(guide.body["nape_height"] / 10, abs=0.05)
    sd = guide.body.measures["nape_height"].sd
    assert sd is not None
    assert float(found[2]) == pytest.approx(2 * sd / 10, abs=0.05)
    assert float(found[2]) < 2.26  # twice the 11.3 mm that the height alone leaves
    assert guide.fields["waist_girth"].boxes[0].placeholder == ""


def test_a_new_wearer_is_told_what_is_needed_and_sees_a_figure_meanwhile(tmp_path: Path) -> None:
    guide = blank(tmp_path)
    assert guide.body is None
    assert "Needed" in said(guide, "height")
    assert "Needed" in said(guide, "waist_girth")
    assert "until height, bust, waist and hip are there" in guide.picture.value
    for name, text in (("height", "165"), ("bust_girth", "90"), ("waist_girth", "74")):
        write(guide, name, text)
    assert guide.body is None
    write(guide, "hip_girth", "98")
    assert guide.body is not None
    assert said(guide, "height") == ""


def test_the_picture_is_drawn_from_what_was_typed(guide: MeasuringGuide) -> None:
    before = guide.picture.value
    write(guide, "waist_girth", "95")
    assert guide.picture.value != before
    root = ElementTree.fromstring(guide.picture.value)
    shapes = [e for e in root.iter() if e.get("class") == "shape"]
    assert len(shapes) == 7  # front and back: body and head; side: body, head, arm
    assert "Waist girth: 95 cm" in guide.picture.value


def test_there_is_a_rule_that_shows_each_tape_and_a_tape_for_each_rule(guide: MeasuringGuide) -> None:
    root = ElementTree.fromstring(guide.picture.value)
    drawn = {e.get("id") for e in root.iter() if e.get("class") == "tape"}
    rules = dict(re.findall(r"\.(field-[a-z-]+) input:focus\) \[id=\"(.*?)\"\]", style(ORDER)))
    assert rules == {tape_class(name): f"tape.{name}" for name in ORDER}
    assert set(rules.values()) == drawn


def test_the_measure_that_would_help_most_is_offered_next(guide: MeasuringGuide) -> None:
    assert guide.gain is not None
    assert guide.body is not None
    first = guide.gain.measure
    assert first == next_measures(guide.body, 1)[0].measure
    assert guide.next.description == f"Take next: {plain(first)}"
    write(guide, first, f"{guide.body[first] / 10:.1f}")
    assert guide.gain is not None
    assert guide.gain.measure != first


def test_saving_keeps_every_remark_and_line_that_was_not_changed(guide: MeasuringGuide, file: Path) -> None:
    before = file.read_text("utf-8").splitlines()
    write(guide, "hip_girth", "98.5")
    write(guide, "scye_depth", "8 1/2 in")
    guide.save_button.click()
    after = file.read_text("utf-8").splitlines()
    data = tomllib.loads(file.read_text("utf-8"))
    assert data["measures"]["hip_girth"] == 98.5
    assert data["measures"]["scye_depth"] == "8 1/2 in"
    assert data["measures"]["bust_girth"] == "36 1/4 in"
    assert [line for line in before if line not in after] == ["hip_girth = 97"]
    assert "hip girth" in guide.message.value
    assert "scye depth" in guide.message.value
    saved = read_body(file)
    assert guide.body is not None
    assert saved.measures == guide.body.measures


def test_one_number_may_become_two_hands_and_two_one(guide: MeasuringGuide, file: Path) -> None:
    write(guide, "arm_length", "59", "58")
    write(guide, "shoulder_drop", "4.6", "")
    guide.save()
    measures = tomllib.loads(file.read_text("utf-8"))["measures"]
    assert measures["arm_length"] == {"left": 59, "right": 58}
    assert measures["shoulder_drop"] == 4.6
    body = read_body(file)
    assert (body.hand("arm_length", "left"), body.hand("arm_length", "right")) == (590.0, 580.0)


def test_clearing_a_field_takes_its_line_out(guide: MeasuringGuide, file: Path) -> None:
    write(guide, "wrist_girth", "")
    guide.save()
    assert "wrist_girth" not in tomllib.loads(file.read_text("utf-8"))["measures"]
    assert guide.body is not None
    assert not guide.body.measured("wrist_girth")


def test_nothing_is_saved_that_cannot_be_read(guide: MeasuringGuide, file: Path) -> None:
    before = file.read_bytes()
    write(guide, "hip_girth", "abc")
    with pytest.raises(DraftError, match="nothing was written"):
        guide.save()
    guide.save_button.click()
    assert "othing was written" in guide.message.value
    assert file.read_bytes() == before


def test_a_file_changed_elsewhere_is_not_written_over(guide: MeasuringGuide, file: Path) -> None:
    file.write_text(file.read_text("utf-8") + "# a remark made meanwhile\n", "utf-8")
    write(guide, "hip_girth", "98")
    with pytest.raises(DraftError, match="has changed since"):
        guide.save()
    assert "made meanwhile" in file.read_text("utf-8")


def test_saving_without_a_change_changes_no_byte(guide: MeasuringGuide, file: Path) -> None:
    before = file.read_bytes()
    guide.save()
    assert file.read_bytes() == before
    assert "nothing had changed" in guide.message.value


def test_shoulders_are_asked_on_both_hands_and_the_rest_where_wished(guide: MeasuringGuide) -> None:
    def shown(name: str) -> bool:
        return guide.fields[name].boxes[1].layout.display != "none"

    assert shown("shoulder_length")
    assert shown("shoulder_drop")
    assert not shown("arm_length")
    guide.apart.value = True
    assert shown("arm_length")


def test_a_file_that_is_no_body_file_is_refused_in_words(tmp_path: Path) -> None:
    bad = tmp_path / "bad.toml"
    bad.write_text("measures = 3\n")
    with pytest.raises(InputError, match="must be a table"):
        MeasuringGuide(bad)
    with pytest.raises(InputError, match="no TOML file"):
        MeasuringGuide(tmp_path / "wearers.csv")
    with pytest.raises(InputError, match="no such file"):
        MeasuringGuide(tmp_path / "nobody.toml")
