"""Body files, TOML and CSV: what makers and spreadsheets write (common practice)."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from drafting.body import DIMENSIONS, read_bodies, read_body
from drafting.ground.errors import Fault, InputError
from drafting.ground.shipped import shipped

BODIES = shipped("measurements") / "bodies"
REST = "height = 168\nbust_girth = 92\nwaist_girth = 74\nhip_girth = 98\n"


def toml(folder: Path, measures: str, head: str = 'unit = "cm"\n') -> Path:
    path = folder / "wearer.toml"
    path.write_text(f"{head}[measures]\n{measures}", "utf-8")
    return path


def table(folder: Path, text: str | bytes) -> Path:
    path = folder / "wearer.csv"
    path.write_bytes(text if isinstance(text, bytes) else text.encode())
    return path


def faults(path: Path) -> dict[str, Fault]:
    with pytest.raises(InputError) as error:
        read_bodies(path)
    assert all(fault.file == str(path) for fault in error.value.faults)
    return {fault.field: fault for fault in error.value.faults}


def test_a_body_file_is_read_with_units_hands_layers_and_weight(tmp_path: Path) -> None:
    head = 'title = "Ada ✂ <b>"\nunit = "cm"\ntaken_over = "skin"\nwaist_level = "navel"\n'
    head += 'measured_on = 2026-11-02\nheel = 3\nposture = "seated"\nlayers = {chest_girth = 4}\n'
    more = 'shoulder_length = {left = 12.5, right = "11,5"}\nweight = "150 lb"\nneck = "14 1/2 in"\n'
    body = read_body(toml(tmp_path, REST + more, head))
    assert body.title == "Ada ✂ <b>"
    assert (body["height"], body["bust_girth"]) == (1680.0, 920.0)
    assert body["neck_girth"] == pytest.approx(368.3)
    assert body.hand("shoulder_length", "right") == 115.0
    assert body.weight == pytest.approx(68.04, abs=0.01)
    assert body.layer("bust_girth") == 40.0
    assert (body.heel, body.posture, body.waist_level) == (30.0, "seated", "navel")
    assert body.measured_on == "2026-11-02"


def test_what_the_file_leaves_open_is_assumed_aloud(tmp_path: Path) -> None:
    body = read_body(toml(tmp_path, REST))
    assert body.title == "wearer"
    assert {f.where for f in body.findings if f.check == "assumed"} == {"taken_over", "waist_level"}


def test_a_file_may_say_whose_charts_come_nearer_and_need_not(tmp_path: Path) -> None:
    plain = read_body(toml(tmp_path, REST))
    assert plain.figure == ""
    assert not [f for f in plain.findings if "figure" in f.where]
    told = read_body(toml(tmp_path, REST, 'unit = "cm"\nfigure = "womens"\n'))
    assert told.figure == "womens"
    spread, sharper = (b.measures["neck_base_girth"].sd or 0.0 for b in (plain, told))
    assert sharper < 15.0 < spread < 20.0  # least squares on ANSUR II: 95 % within 31.6 and 37.0
    rows = "wearer,unit,figure,height,bust,waist,hip\nAda,cm,mens,168,92,71,98\n"
    assert read_body(table(tmp_path, rows)).figure == "mens"


def test_a_figure_that_is_no_chart_is_refused_with_the_words(tmp_path: Path) -> None:
    found = faults(toml(tmp_path, REST, 'unit = "cm"\nfigure = "boy"\n'))
    assert "womens" in found["figure"].right
    assert "mens" in found["figure"].right


def test_decimal_commas_are_read_and_two_separators_refused(tmp_path: Path) -> None:
    rows = 'height = 168\nbust = "91,5"\nwaist = "71,0"\nhip = "{}"\n'  # decimal commas
    good = read_body(toml(tmp_path, rows.format("102,05")))
    assert (good["bust_girth"], good["waist_girth"], good["hip_girth"]) == (915.0, 710.0, 1020.5)
    found = faults(toml(tmp_path, rows.format("1.020,5")))
    assert found.keys() == {"hip"}
    assert "two separators" in found["hip"].what
    assert found["hip"].line == 6


def test_inches_under_centimetres_are_refused_at_their_line(tmp_path: Path) -> None:
    found = faults(toml(tmp_path, "height = 168\nbust = 36\nwaist = 28\nhip = 38\n"))  # inches
    fault = found["bust_girth, waist_girth, hip_girth"]
    assert fault.line == 4
    assert "91.4 cm (36 in) / 71.1 cm (28 in) / 96.5 cm (38 in)" in fault.right


def test_all_unusable_values_come_at_once(tmp_path: Path) -> None:
    found = faults(toml(tmp_path, 'height = 168\nbust = ""\nwaist = 0\nhip = -98\narm_length = nan\n'))
    assert found.keys() == {"bust", "waist", "hip", "arm_length"}
    assert [fault.line for fault in found.values()] == [4, 5, 6, 7]


def test_a_key_given_twice_is_named_with_both_lines_and_the_rest_is_still_judged(tmp_path: Path) -> None:
    found = faults(toml(tmp_path, REST + "hip_girth = 99\nnek_girth = 36\n"))
    assert "lines 6 and 7" in found["measures.hip_girth"].what
    assert "did you mean neck_girth" in found["nek_girth"].right


def test_an_old_and_a_new_name_of_one_measure_are_a_fault(tmp_path: Path) -> None:
    found = faults(toml(tmp_path, REST + "chest_girth = 92\n"))
    assert "line 4" in found["chest_girth"].what


def test_a_measure_outside_the_table_is_sent_there(tmp_path: Path) -> None:
    found = faults(toml(tmp_path, REST, 'unit = "cm"\nhip_girth = 98\nwaist_levl = "navel"\n'))
    assert "[measures]" in found["hip_girth"].right
    assert "did you mean waist_level" in found["waist_levl"].right


def test_a_value_without_quotes_is_answered_with_the_quotes_it_needs(tmp_path: Path) -> None:
    with pytest.raises(InputError) as error:
        read_body(toml(tmp_path, "bust_girth = 36 1/4 in\n"))
    (fault,) = (fault for fault in error.value.faults if fault.field == "bust_girth")
    assert fault.line == 3
    assert 'bust_girth = "36 1/4 in"' in fault.right
    assert any("height" in str(fault) for fault in error.value.faults)  # the rest of the file is judged too


def test_numbers_without_any_unit_ask(tmp_path: Path) -> None:
    found = faults(toml(tmp_path, 'height = "168 cm"\nbust = "36 1/2"\nwaist = 70\nhip = "98 cm"\n', ""))
    assert "36 1/2 in (92.7 cm)" in found["bust"].what
    assert "1 more length has none" in found["bust"].what  # the waist: asked once
    assert found.keys() == {"bust"}


def test_a_byte_order_mark_is_not_part_of_the_first_name(tmp_path: Path) -> None:
    text = "name,value,unit\nheight,168,cm\nbust,92,cm\nwaist,74,cm\nhip,98,cm\n"
    plain = read_body(table(tmp_path, text))
    marked = read_body(table(tmp_path, b"\xef\xbb\xbf" + text.encode()))  # as spreadsheets save it
    assert marked == plain
    assert plain["height"] == 1680.0
    assert read_body(table(tmp_path, text.encode("utf-16"))) == plain


def test_a_european_spreadsheet_reads_like_the_other_kind(tmp_path: Path) -> None:
    ours = read_body(table(tmp_path, "height,168,cm\nbust,91.5,cm\nwaist,71,cm\nhip,98,cm\n"))
    rows = "height;168;cm\r\nbust;91,5;cm\r\nwaist;71;cm\r\nhip;98;cm\r\n\r\n"  # a European spreadsheet
    theirs = read_body(table(tmp_path, rows))
    assert theirs == ours
    assert (theirs["bust_girth"], theirs["waist_girth"]) == (915.0, 710.0)


def test_a_decimal_comma_in_a_comma_file_is_told_from_a_column(tmp_path: Path) -> None:
    found = faults(table(tmp_path, "height,168,cm\nbust,91,5,cm\nwaist,71,cm\nhip,98,cm\n"))
    assert "semicolons" in found["bust"].right
    assert found["bust"].line == 2


def test_tailors_inches_are_read_in_a_table_too(tmp_path: Path) -> None:
    rows = 'unit,in\nheight,"66"\nbust,36 1/2\nwaist,"28.5"""\nhip,38 5/8 in\nneck,36 cm\n'
    body = read_body(table(tmp_path, rows))
    assert body["bust_girth"] == pytest.approx(927.1)
    assert body["waist_girth"] == pytest.approx(723.9)
    assert body["neck_girth"] == 360.0


def test_one_wearer_a_row_gives_them_all_with_a_line_of_units(tmp_path: Path) -> None:
    rows = "wearer;height;bust;waist;hip;shoulder_length.left;shoulder_length.right;weight\n"
    rows += ";cm;in;cm;mm;cm;cm;kg\nAda;168;36 1/2;71,5;980;12,5;11,5;62\n\nBo;182;40;88;1010;;;\n"
    ada, bo = read_bodies(table(tmp_path, rows))
    assert (ada.title, bo.title) == ("Ada", "Bo")
    assert ada["bust_girth"] == pytest.approx(927.1)
    assert (ada["waist_girth"], ada["hip_girth"], ada.weight) == (715.0, 980.0, 62.0)
    assert ada.hand("shoulder_length", "left") == 125.0
    assert not bo.measured("shoulder_length")


def test_faults_of_all_wearers_come_at_once_with_name_and_line(tmp_path: Path) -> None:
    rows = "wearer,unit,height,bust,waist,hip\nAda,cm,168,0,71,98\nBo,cm,182,100,88,x\n"
    found = faults(table(tmp_path, rows))
    assert {name: fault.line for name, fault in found.items()} == {"Ada, bust": 2, "Bo, hip": 3}


def test_one_wearer_is_not_picked_from_several(tmp_path: Path) -> None:
    rows = "wearer,unit,height,bust,waist,hip\nAda,cm,168,92,71,98\nBo,cm,182,100,88,101\n"
    with pytest.raises(InputError, match=r"2 wearers \(Ada, Bo\)"):
        read_body(table(tmp_path, rows))


def test_a_measure_twice_in_a_table_names_both_lines(tmp_path: Path) -> None:
    found = faults(table(tmp_path, "unit,cm\nheight,168\nbust,92\nbust,93\nwaist,71\nhip,98\n"))
    assert "lines 3 and 4" in found["bust"].what


@pytest.mark.parametrize("name", ["lost.toml", "lost.csv", "."])
def test_a_file_that_cannot_be_opened_is_named(tmp_path: Path, name: str) -> None:
    with pytest.raises(InputError, match=str(tmp_path)):
        read_bodies(tmp_path / name)


def test_a_picture_is_no_body_file(tmp_path: Path) -> None:
    path = tmp_path / "photo.toml"
    path.write_bytes(b"\x89PNG\r\n\x1a\n\x00\x00\xff\xfe")
    with pytest.raises(InputError, match="is a picture, and a body file is wanted here"):
        read_body(path)


@pytest.mark.parametrize("path", sorted(BODIES.glob("*.toml")), ids=lambda path: path.stem)
def test_the_shipped_wearers_are_invented_and_give_no_cause_for_doubt(path: Path) -> None:
    body = read_body(path)
    assert "invented" in body.title
    assert [f for f in body.findings if f.level == "warning"] == []


def test_the_guide_names_every_dimension() -> None:
    guide = (shipped("measurements") / "README.md").read_text("utf-8")
    assert [name for name in DIMENSIONS if f"`{name}`" not in guide] == []


PIECES = st.sampled_from(
    [
        "unit",
        "=",
        '"cm"',
        "\n",
        "[measures]",
        "height",
        "168",
        "bust",
        '"36 1/2"',
        "{left=1",
        "}",
        "waist",
        "hip",
        "nan",
        "-1",
        ",",
        ";",
        "wearer",
        "[[a]]",
        '"""',
        "'",
        "#",
        "1e999",
        "\r",
        "\0",
    ]
)


@given(st.text(max_size=150) | st.lists(PIECES, max_size=40).map(" ".join), st.sampled_from(["toml", "csv"]))
@settings(max_examples=300, deadline=None)
def test_random_text_is_a_body_or_is_refused_and_nothing_else(
    tmp_path_factory: pytest.TempPathFactory, text: str, kind: str
) -> None:
    path = tmp_path_factory.getbasetemp() / f"random.{kind}"
    path.write_bytes(text.encode("utf-8", errors="surrogatepass"))
    try:
        bodies = read_bodies(path)
    except InputError:
        return
    assert all(body["height"] > 0 for body in bodies)


@given(st.binary(max_size=200), st.sampled_from(["toml", "csv"]))
@settings(max_examples=200, deadline=None)
def test_random_bytes_are_refused_and_nothing_else(
    tmp_path_factory: pytest.TempPathFactory, raw: bytes, kind: str
) -> None:
    path = tmp_path_factory.getbasetemp() / f"bytes.{kind}"
    path.write_bytes(raw)
    with pytest.raises(InputError):
        read_bodies(path)


@given(st.dictionaries(st.sampled_from(list(DIMENSIONS)), st.floats(0.01, 400), min_size=1))
@settings(max_examples=200, deadline=None)
def test_any_set_of_numbers_is_a_complete_body_or_is_refused(
    tmp_path_factory: pytest.TempPathFactory, centimetres: dict[str, float]
) -> None:
    path = tmp_path_factory.getbasetemp() / "numbers.toml"
    rows = "\n".join(f"{name} = {cm!r}" for name, cm in centimetres.items())
    path.write_text(
        f'unit = "cm"\n[measures]\n{REST}{rows}'
        if "height" not in centimetres
        else f'unit = "cm"\n[measures]\n{rows}',
        "utf-8",
    )
    try:
        body = read_body(path)
    except InputError:
        return
    assert body["scye_depth"] > 0
    assert body.findings
