"""The page of style lines without a browser: a yoke and pleats by clicks, seen, done, taken back to the letter."""

from __future__ import annotations

import tomllib
import xml.etree.ElementTree as ET
from pathlib import Path

import pytest

from drafting.costume.file import read_costume
from drafting.draft.piece import InnerDart, Piece
from drafting.ground.shipped import shipped
from drafting.notebook.living.living import Living
from drafting.notebook.style.view import StyleView

COSTUME = """title = "A plain top"  # mine
unit = "cm"
wearer = "bodies/lamplighter.toml"
[fabrics]
shell = "fabrics/striped-shirting.toml"
[garments.top]
block = "sleeveless-top"
"""


@pytest.fixture
def costume(tmp_path: Path) -> Path:
    for name in ("bodies/lamplighter.toml", "fabrics/striped-shirting.toml"):
        place = tmp_path / name
        place.parent.mkdir()
        place.write_bytes((shipped("measurements") / name).read_bytes())
    path = tmp_path / "top.toml"
    path.write_text(COSTUME, "utf-8")
    return path


def click(view: StyleView, edge: str, share: float) -> None:
    view.clicks.place = {"edge": edge, "share": share, "n": view.clicks.place.get("n", 0) + 1}


def classes(svg: str) -> list[str]:
    return [part.get("class") or "" for part in ET.fromstring(svg).iter()]


def yoked(view: StyleView) -> None:
    view.fields["name"].value = "front-yoke"
    view.fields["holds"].value = "neck"
    click(view, "front.armhole", 0.5)
    click(view, "front.centre", 0.2)
    view.try_it()
    assert view.refused.value == ""


def test_a_cut_is_seen_before_it_is_made_and_then_stands_in_the_file(costume: Path) -> None:
    view = StyleView(Living(read_costume(costume)))
    before = costume.read_bytes()
    yoked(view)
    assert "to-cut" in classes(view.picture.value)
    assert classes(view.picture.value).count("chosen") == 2
    assert "Front yoke" in view.after.value
    assert costume.read_bytes() == before
    view.do_it()
    assert "front-yoke" in view.made["top"].draft
    text = costume.read_text("utf-8")
    assert text.startswith(COSTUME)
    (step,) = tomllib.loads(text)["garments"]["top"]["style"]
    assert step["do"] == "cut"
    assert "front-yoke" in [piece.name for piece in view.made["top"].draft.pieces]


def test_pleats_go_into_the_new_edge_and_each_step_is_taken_back_to_the_letter(costume: Path) -> None:
    view = StyleView(Living(read_costume(costume)))
    plain = view.made["top"].draft
    yoked(view)
    view.do_it()
    once, drafted = costume.read_bytes(), view.made["top"].draft
    view.fields["do"].value = "pleat"
    click(view, "front.style_line", 0.75)
    click(view, "front.hem", 0.15)
    view.fields["depth"].value = "1.5"
    view.try_it()
    assert view.refused.value == ""
    assert "to-cut" in classes(view.picture.value)
    view.do_it()
    assert "pleat_1_in" in view.made["top"].draft["front"]
    twice = costume.read_bytes()
    view.take_back()
    assert costume.read_bytes() == once
    assert view.made["top"].draft.pieces == drafted.pieces
    view.do_again()
    assert costume.read_bytes() == twice
    view.take_back()
    view.take_back()
    assert costume.read_text("utf-8") == COSTUME
    assert view.made["top"].draft.pieces == plain.pieces
    assert view.undo.disabled


def test_what_cannot_be_cut_is_said_with_names_that_would_be_right(costume: Path) -> None:
    view = StyleView(Living(read_costume(costume)))
    view.fields["piece"].value = "front"
    view.fields["from"].value, view.fields["to"].value = "armhol 50 %", "centre 20 %"
    view.fields["name"].value = "yoke"
    view.try_it()
    assert "armhole" in view.refused.value
    view.fields["from"].value = "half-way"
    view.try_it()
    assert "names no place" in view.refused.value
    view.fields["from"].value = "armhole 50 %"
    view.try_it()
    assert view.refused.value == ""


TWO = (
    COSTUME
    + """[garments.legs]
block = "trousers"
fabric = "shell"
[garments.bad]
block = "trousers"
fabric = "shell"
[garments.bad.choices]
hip_ease = -30
thigh_ease = -20
"""
)


def test_another_garment_is_brought_onto_the_table_and_gets_its_own_step(costume: Path) -> None:
    costume.write_text(TWO, "utf-8")
    view = StyleView(Living(read_costume(costume)))
    click(view, "front.armhole", 0.5)
    view.fields["garment"].value = "legs"
    assert view.refused.value == ""
    assert (view.fields["piece"].value, view.fields["from"].value) == ("", "")
    assert "waistband" in view.fields["piece"].options
    assert "sleeve" not in view.fields["piece"].options
    click(view, "front.side", 0.5)
    click(view, "front.inseam", 0.5)
    view.do_it()
    assert view.refused.value == ""
    assert [len(one.style) for one in read_costume(costume).garments] == [0, 1, 0]
    assert not view.undo.disabled
    view.fields["garment"].value = "top"
    assert view.undo.disabled


def test_an_edge_that_is_no_dart_s_is_told_where_a_dart_is_wanted(costume: Path) -> None:
    view = StyleView(Living(read_costume(costume)))
    view.fields["do"].value = "gather dart"
    click(view, "front.armhole", 0.5)
    assert "no leg of a dart" in view.refused.value


def test_a_garment_that_cannot_be_drafted_is_told_and_the_one_before_stays(costume: Path) -> None:
    costume.write_text(TWO, "utf-8")
    view = StyleView(Living(read_costume(costume)))
    view.fields["garment"].value = "bad"
    assert "Finished hip" in view.refused.value
    assert view.garment == "top"


def test_a_costume_of_the_kit_is_never_written_to() -> None:
    view = StyleView(Living(read_costume(shipped("measurements") / "costumes" / "kite.toml")))
    view.safely(view.take_back)
    assert view.refused.value


def test_on_a_body_whose_sides_differ_a_click_names_what_both_hands_have(costume: Path) -> None:
    body = costume.parent / "bodies" / "lamplighter.toml"
    text = body.read_text("utf-8")
    lines = [line for line in text.splitlines() if not line.startswith("shoulder_length")]
    body.write_text("\n".join([*lines, "shoulder_length = { left = 12.0, right = 13.2 }"]) + "\n", "utf-8")
    view = StyleView(Living(read_costume(costume)))
    back = next(piece for piece in view.made["top"].draft.pieces if piece.base == "back")
    view.fields["name"].value = "back-yoke"
    click(view, f"{back.name}.armhole", 0.5)
    click(view, f"{back.name}.centre", 0.75)
    view.try_it()
    assert view.refused.value == ""
    assert view.fields["piece"].value == "back"
    assert "to-cut" in classes(view.picture.value)
    view.do_it()
    assert {"back-yoke-left", "back-yoke-right"} <= {piece.name for piece in view.made["top"].draft.pieces}


def test_a_yoked_and_pleated_front_gets_its_pocket_by_clicks_alone_and_each_step_goes_back(costume: Path) -> None:
    view = StyleView(Living(read_costume(costume)))
    click(view, "front.armhole", 0.5)
    click(view, "front.centre", 0.25)
    view.try_it()
    assert view.refused.value == ""
    view.do_it()
    view.fields["do"].value = "pleat"
    click(view, "front.style_line", 0.75)
    click(view, "front.hem", 0.25)
    view.do_it()
    view.fields["do"].value = "pocket"
    assert "Done" in view.said.value
    click(view, "front.centre", 0.5)
    view.try_it()
    assert view.refused.value == ""
    assert "to-cut" in classes(view.picture.value)
    view.do_it()
    pieces = [piece.name for piece in view.made["top"].draft.pieces]
    assert {"front-part", "patch-1"} <= set(pieces)
    for _ in range(3):
        view.take_back()
    assert costume.read_text("utf-8") == COSTUME


STEPS = {
    "godet": (("front.side_lower", 0.9),),
    "hem facing": (("front.hem", 0.5), ("back.hem", 0.5)),
    "binding": (("front.hem", 0.5), ("back.hem", 0.5)),
    "band": (("front.hem", 0.5),),
    "cuff": (("front.hem", 0.5), ("back.hem", 0.5)),
    "move dart": (("front.bust_dart_in", 0.5), ("front.shoulder", 0.5)),
    "gather dart": (("front.bust_dart_in", 0.5),),
    "move edge": (("front.hem", 0.5),),
}


@pytest.mark.parametrize("deed", sorted(STEPS))
def test_each_step_is_whole_by_clicks_and_drawn_before_it_is_done(deed: str, costume: Path) -> None:
    view = StyleView(Living(read_costume(costume)))
    view.fields["do"].value = deed
    assert "Still wanted" in view.said.value
    if deed == "godet":
        view.fields["height"].value, view.fields["width"].value = "8", "10"
    if deed == "move edge":
        view.fields["start"].value, view.fields["end"].value = "2", ""
    for edge, share in STEPS[deed]:
        click(view, edge, share)
    view.try_it()
    assert view.refused.value == ""
    assert "to-cut" in classes(view.picture.value)
    assert view.after.value
    view.do_it()


def test_hints_and_first_lengths_stand_in_inches_in_an_inch_costume(costume: Path) -> None:
    costume.write_text(COSTUME.replace('unit = "cm"', 'unit = "in"'), "utf-8")
    view = StyleView(Living(read_costume(costume)))
    view.fields["do"].value = "pleat"
    # 15 mm are 0.59 in (ISO 80000-3: the inch is 25.4 mm exactly), 5/8 in to the nearest eighth.
    assert view.fields["depth"].value == "5/8 in"
    hints = " ".join(field.placeholder for field in view.fields.values() if hasattr(field, "placeholder"))
    assert " cm" not in hints
    assert " mm" not in hints
    view.fields["do"].value, view.fields["piece"].value = "cut", "front"
    view.fields["to"].value, view.fields["name"].value = "centre 50 %", "yoke"
    view.fields["from"].value = "armhole, half"
    view.safely(view.do_it)
    assert "centre 4 3/8 in from neck" in view.refused.value


def test_a_name_stands_clear_of_its_pieces_darts(costume: Path) -> None:
    view = StyleView(Living(read_costume(costume)))
    back = view.made["top"].draft["back"]
    (dart,) = back.darts
    x0, _, x1, _ = back.outline.bounds
    left, right = (leg.bounds for leg in (dart.leg_a, dart.leg_b))
    text = next(part for part in ET.fromstring(view.picture.value).iter() if part.text == "Back")
    cloth = next(part for part in ET.fromstring(view.picture.value).iter() if part.get("class") == "cloth")
    first = [float(n) for n in cloth.get("d", "").replace("M", " ").replace(",", " ").split()[:2]]
    shift = first[0] - back.outline.start.real
    low = float(text.get("x", "0")) - shift
    beside = low < min(left[0], right[0]) - 20 or low > max(left[2], right[2]) + 20
    assert x0 < low < x1
    assert beside or _beyond(text, dart, first, back)


def _beyond(text: ET.Element, dart: InnerDart, first: list[float], back: Piece) -> bool:
    """Return whether a name stands above or below a dart; the page's y runs down."""
    y = back.outline.start.imag - (float(text.get("y", "0")) - first[1])
    ends = sorted((dart.leg_a.start.imag, dart.leg_a.end.imag))
    return y + 22 < ends[0] or y > ends[1]
