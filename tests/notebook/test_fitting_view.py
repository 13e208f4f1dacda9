"""The fitting page without a browser: what is typed is tried, written down, taken back, and followed."""

from __future__ import annotations

import shutil
import xml.etree.ElementTree as ET
from pathlib import Path

import pytest

from drafting.costume.file import read_costume
from drafting.fitting.file import read_fitting
from drafting.fitting.note import Verb
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.ground.shipped import shipped
from drafting.notebook.fitting.view import FittingView
from drafting.notebook.living.living import Living
from tests.notebook.pictures import read_picture, view_box

LETTERS = "{http://www.w3.org/2000/svg}"


@pytest.fixture
def costume(tmp_path: Path) -> Path:
    """The kite with her first fitting, in a folder of its own."""
    home = tmp_path / "measurements"
    shutil.copytree(shipped("measurements"), home)
    return home / "costumes" / "kite.toml"


def opened(costume: Path) -> FittingView:
    return FittingView(Living(read_costume(costume)))


def typed(view: FittingView, **values: str) -> None:
    for name, value in values.items():
        view.fields[name].value = value
    view.try_it()


def test_a_note_is_tried_before_it_is_written_down(costume: Path) -> None:
    view = opened(costume)
    top = next(one for one in view.fitted.before.garments if one.name == "top")
    moved = view.fitted.after["top"].draft.pieces != top.draft.pieces
    assert ("<table" in view.lengths.value) == moved  # where no line has moved there is no row to head
    before = view.place.read_bytes()
    typed(view, garment="trouser", kind="body", where="waist", verb="take in", amount="0.5")
    assert "0.5 cm pinched at each side: waist 69 cm to 67 cm" in view.echo.value
    assert view.place.read_bytes() == before
    assert view.living.asked.wearer["waist_girth"] == 690
    view.write_down()
    assert view.living.asked.wearer["waist_girth"] == pytest.approx(670)
    assert str(read_fitting(view.place).notes[-1].where) == "waist_girth"


def test_the_last_note_is_taken_back_to_the_letter(costume: Path) -> None:
    view = opened(costume)
    before = view.place.read_bytes()
    typed(view, garment="trouser", kind="body", where="waist", verb="take in", amount="0.5")
    view.write_down()
    view.take_last_back()
    assert view.place.read_bytes() == before
    assert view.living.asked.wearer["waist_girth"] == 690


@pytest.mark.parametrize("verb", list(Verb))
@pytest.mark.parametrize("kind", ["cloth", "accident"])
def test_whatever_is_said_of_the_cloth_or_of_an_accident_at_a_measure_is_kept(
    costume: Path, kind: str, verb: str
) -> None:
    view = opened(costume)
    typed(view, garment="trouser", kind=kind, where="thigh_girth", verb=verb, counted="total", amount="1")
    assert view.refused.value == ""
    view.write_down()
    assert str(read_fitting(view.place).notes[-1].verb) == verb


def test_no_note_is_called_written_and_not_written_at_once(costume: Path) -> None:
    view = opened(costume)
    typed(view, garment="trouser", kind="body", where="waist", verb="take in", amount="0.5")
    view.write_down()
    assert ("Written into" in view.saved.value, "Tried" in view.echo.value) == (True, False)
    typed(view, amount="0.4")
    assert ("Tried" in view.echo.value, view.saved.value) == (True, "")
    view.take_last_back()  # the pieces are those without the tried note
    assert ("again" in view.saved.value, "Tried" in view.echo.value) == (True, False)


def test_another_fitting_begins_a_file_that_the_costume_names(costume: Path) -> None:
    view = opened(costume)
    view.begin_another()
    typed(view, garment="trouser", kind="body", where="thigh", verb="let out", counted="total", amount="5 mm")
    view.write_down()
    held = read_costume(costume).fittings.held
    assert [Path(one.path).name for one in held] == ["kite-first.toml", "kite-fitting-1.toml"]
    assert read_costume(costume).wearer["thigh_girth"] == pytest.approx(545)
    assert "1.5 cm" in view.next.value


def test_what_cannot_be_noted_is_said_in_words(costume: Path) -> None:
    view = opened(costume)
    typed(view, kind="style", where="front.sied", verb="take in", amount="1 cm", garment="trouser")
    assert "side" in view.refused.value
    typed(view, where="thigh", kind="body", counted="total", verb="take in")
    assert "contradict" in view.refused.value
    typed(view, where="waist")
    assert view.refused.value == ""


def test_an_edge_that_is_clicked_stands_in_the_field(costume: Path) -> None:
    view = opened(costume)
    view.fields["garment"].value = "trouser"
    view.clicks.place = {"edge": "front.side", "share": 0.5, "n": 1}
    assert view.fields["where"].value == "front.side"
    assert 'data-edge="front.side"' in view.picture.value


def test_the_pieces_fill_the_place_that_the_page_has_for_them(costume: Path) -> None:
    view = opened(costume)
    view.fields["garment"].value = "top"
    view.preview.place.size = [950.0, 640.0]
    across, up = view_box(view.picture.value)[2:]
    assert across / up == pytest.approx(950 / 640, rel=1e-3)
    boxes = [one.bbox() for name, one in read_picture(view.picture.value).items() if name.endswith(".cut-line")]
    wide = max(box[2] for box in boxes) - min(box[0] for box in boxes)
    high = max(box[3] for box in boxes) - min(box[1] for box in boxes)
    assert max(wide / across, high / up) > 0.7
    view.preview.piece.value = "front"  # one piece alone, as on the bench
    assert view_box(view.picture.value)[2] < 0.9 * across


def test_the_picture_shows_each_piece_before_and_after_with_lengths_at_its_arrows(costume: Path) -> None:
    view = opened(costume)
    typed(view, garment="trouser", kind="body", where="waist", verb="take in", amount="1")
    drawing = ET.fromstring(view.pairs.value)
    assert drawing.get("role") == "img"
    assert "Before in grey" in (drawing.get("aria-label") or "")
    pairs = [part for part in drawing if part.get("class") == "pair"]
    assert len(pairs) == 2
    for pair in pairs:
        kinds = [part.get("class") for part in pair]
        assert kinds.count("was") == kinds.count("now") == kinds.count("anchor") == 1
        texts = [part.text or "" for part in pair.iter(f"{LETTERS}text")]
        assert any(text.startswith("laid where") for text in texts)
    assert "shift" in {part.get("class") for part in drawing.iter()}


def test_lengths_stand_in_her_unit(costume: Path) -> None:
    costume.write_text(costume.read_text("utf-8").replace('unit = "cm"', 'unit = "in"'), "utf-8")
    view = opened(costume)
    typed(view, garment="trouser", kind="body", where="waist", verb="take in", amount="1/4")
    assert "waist 27 1/8 in to 26 1/8 in" in view.echo.value
    assert " in</td>" in view.lengths.value
    assert " cm" not in view.lengths.value


def test_hints_and_refusals_stand_in_her_unit(costume: Path) -> None:
    costume.write_text(costume.read_text("utf-8").replace('unit = "cm"', 'unit = "in"'), "utf-8")
    view = opened(costume)
    assert "1 1/2 in" in view.fields["at"].placeholder
    typed(view, garment="trouser", kind="style", where="front.side", verb="take in", amount="1/2", at="2 in")
    assert "1 1/2 in from hem" in view.refused.value
    assert " cm" not in view.refused.value

    def refuse() -> None:
        raise DraftError("it is too short", reach=told(101.6))

    view.safely(refuse)
    assert "4 in" in view.refused.value
    assert " cm" not in view.refused.value


def test_a_note_taken_back_is_written_down_again_to_the_letter(costume: Path) -> None:
    view = opened(costume)
    assert view.redo.disabled
    typed(view, garment="trouser", kind="body", where="waist", verb="take in", amount="0.5")
    view.write_down()
    written = view.place.read_bytes()
    view.take_last_back()
    assert not view.redo.disabled
    view.write_again()
    assert view.place.read_bytes() == written
    assert view.living.asked.wearer["waist_girth"] == pytest.approx(670)
    assert view.redo.disabled


def test_fit_chart_and_signs_follow_the_garment_and_the_note(costume: Path) -> None:
    view = opened(costume)
    view.fields["garment"].value = "trouser"
    view.try_it()
    legs, signs = view.chart.value, view.signs.value
    assert "Waist" in legs
    assert "Sit" in legs
    drawn = ET.fromstring(f"<all>{signs}</all>".replace("&nbsp;", " "))
    figures = list(drawn.iter("figure"))
    assert len(figures) >= 5
    assert all(figure.find(f"{LETTERS}svg") is not None for figure in figures)
    assert all(2 <= len(list(figure.iter("li"))) <= 3 for figure in figures)
    typed(view, kind="body", where="waist", verb="take in", amount="0.5")
    assert view.chart.value != legs, "the chart is of the trousers as noted"
    view.fields["garment"].value = "top"
    typed(view, where="", amount="")
    assert view.signs.value != signs


def test_a_note_about_the_cloth_goes_to_the_cloth_and_moves_no_line(costume: Path) -> None:
    view = opened(costume)
    cloth = costume.parent.parent / "fabrics" / "stretch-jersey.toml"
    before, drafted = cloth.read_text("utf-8"), view.fitted.after["top"].draft.pieces
    typed(view, garment="top", kind="cloth", where="waist", verb="take in", counted="pinch", amount="1")
    view.write_down()
    assert "stretch-jersey.toml" in view.saved.value
    after = cloth.read_text("utf-8")
    assert all(row in after for row in before.splitlines()), "remarks and values stay"
    noted = read_costume(costume).fabrics["jersey"]
    assert noted.noted == ("top: take in waist, both, 1 cm (pinch)",)
    assert any("noted at a fitting" in one.sentence for one in noted.findings)
    assert view.fitted.after["top"].draft.pieces == drafted


TIDE = """title = "The tide clock keeper, invented"
unit = "in"
taken_over = "skin"
waist_level = "natural"

[measures]
height = "63 1/2"
bust_girth = "45 1/4"
waist_girth = 38
hip_girth = "48 3/4"
shoulder_drop = { left = "1 1/4", right = "1 7/8" }
"""


@pytest.fixture
def tide(tmp_path: Path) -> Path:
    """An invented keeper of a tide clock, in inches; one of her shoulders is lower, so each hand is drafted."""
    (tmp_path / "keeper.toml").write_text(TIDE, "utf-8")
    cotton = shipped("measurements") / "fabrics" / "striped-shirting.toml"
    costume = tmp_path / "tide.toml"
    costume.write_text(
        'title = "The tide clock keeper"\nunit = "in"\nwearer = "keeper.toml"\n\n'
        f'[fabrics]\ncotton = \'{cotton}\'\n\n[garments.blouse]\nblock = "shirt"\nfabric = "cotton"\n',
        "utf-8",
    )
    return costume


def clicked(view: FittingView, edge: str) -> tuple[str, str]:
    view.clicks.place = {"edge": edge, "share": 0.5, "n": view.clicks.place.get("n", 0) + 1}
    return view.fields["where"].value, view.fields["side"].value


def test_an_edge_of_a_back_that_each_hand_has_for_itself_is_noted_by_its_own_name(tide: Path) -> None:
    view = opened(tide)
    assert clicked(view, "back.side_left") == ("back.side", "left")
    assert clicked(view, "back.shoulder_right") == ("back.shoulder", "right")
    assert clicked(view, "front-left.armhole") == ("front.armhole", "left")
    assert clicked(view, "collar.outer_right") == ("collar.outer", "right")
    typed(view, where="back.side", side="left", verb="take in", amount="3/8")
    assert view.refused.value == ""
    assert "3/8 in pinched at the left side at back side" in view.echo.value


def test_each_of_several_notes_is_told_by_the_girth_that_it_moved(tide: Path) -> None:
    view = opened(tide)
    typed(view, where="front.side_lower", side="left", verb="take in", amount="3/8")
    first = view.echo.value
    assert "waist 41 1/8 in to 40 3/8 in" in first  # 3/8 in pinched is 3/4 in of cloth
    assert "hip" not in first  # moved by less than is read
    view.write_down()
    typed(view, where="waist", side="both", verb="take in", amount="1/4")
    assert "1/4 in pinched at each side at waist: waist 40 3/8 in to 39 3/8 in" in view.echo.value


def test_an_arrow_stands_where_a_seam_moved_most(tide: Path) -> None:
    view = opened(tide)
    typed(view, where="front.side_lower", side="left", verb="take in", amount="3/8")
    drawn = ET.fromstring(view.pairs.value)
    lengths = [one.text for one in drawn.iter(f"{LETTERS}text") if (one.text or "").endswith(" in")]
    assert lengths.count("3/8 in") == 2  # the back and the front beside it
    assert "0 in" not in lengths
