"""The live picture as text: read back by an XML reader and by svgelements, which measure its lines."""

from __future__ import annotations

import re
from functools import cache
from itertools import pairwise
from typing import Any
from xml.etree import ElementTree

import pytest

from drafting.costume.file import read_costume
from drafting.costume.make import Made
from drafting.draft.piece import Piece
from drafting.draft.roles import EdgeRole
from drafting.export.svg_writer import Pen, path_data
from drafting.geometry import line
from drafting.ground.names import safe_id
from drafting.ground.shipped import demo_costume
from drafting.notebook.bench import state as st
from drafting.notebook.picture import Preview, View, garment_svg
from drafting.sheet.overview import overview_sheet
from tests.notebook.pictures import SPACE, read_picture, root, view_box

BYTES = 150_000
"""What the picture of the ten-piece shirt may weigh (ours)."""


@cache
def made(garment: str = "shirt") -> Made:
    return st.begin_standing(read_costume(demo_costume()), garment).made


def edges(text: str) -> dict[str, ElementTree.Element]:
    found = [g for g in root(text).iter(f"{SPACE}g") if "edge" in g.get("class", "").split()]
    named = {str(g.get("data-edge")): g for g in found}
    assert len(named) == len(found)  # no edge twice
    return named


def seam_of(text: str, edge: str) -> ElementTree.Element:
    """Return the group of the edges that are sewn together with this one."""
    seams = [g for g in root(text).iter(f"{SPACE}g") if "seam" in g.get("class", "").split()]
    return next(g for g in seams for e in g if e.get("data-edge") == edge)


def said(group: ElementTree.Element) -> str:
    return next(str(t.text) for t in group if t.get("class") == "said")


def centimetres(text: str) -> list[float]:
    return [float(n) for n in re.findall(r"([\d.]+) cm", text)]


def length(page: dict[str, Any], edge: str) -> float:
    """Return what svgelements measures along a drawn stitching line, cm."""
    return float(page[f"shirt.{edge}"].length(error=1e-5)) / 10


def test_every_edge_that_is_drawn_tells_its_name_and_the_length_that_is_drawn() -> None:
    text = garment_svg(made(), "shirt")
    page = read_picture(text)
    found = edges(text)
    assert {f"{p.name}.{e.name}" for p in made().garments[0].draft.pieces for e in p.edges} == set(found)
    for edge, group in found.items():
        words = said(group)
        assert words.lower().startswith(edge.replace("_", " ").replace("-", " ").replace(".", " ", 1))
        assert centimetres(words)[0] == pytest.approx(length(page, edge), abs=0.06)


def test_the_armhole_names_the_sleeve_and_the_ease_between_them() -> None:
    """The cap eased into the armhole is cap less armhole (common practice), each half by itself."""
    text = garment_svg(made(), "shirt")
    page = read_picture(text)
    seam = seam_of(text, "front.armhole")
    together = [str(e.get("data-edge")) for e in seam if e.get("data-edge")]
    pieces = {edge.split(".")[0] for edge in together}
    assert pieces == {"front", "sleeve"}
    cap, armhole = (
        sum(length(page, e) for e in together if e.startswith(f"{piece}.")) for piece in ("sleeve", "front")
    )
    words = said(seam)
    assert sorted(centimetres(words)[:2]) == pytest.approx(sorted((armhole, cap)), abs=0.06)
    assert centimetres(words)[2] == pytest.approx(cap - armhole, abs=0.06)
    assert words.endswith("in the sleeve")


def test_a_gathered_edge_tells_both_its_lengths() -> None:
    """The shirt's sleeve is gathered to the cuff by the 1.8 of its file, times the cuff's length."""
    drawn_length, sewn = centimetres(said(edges(garment_svg(made(), "shirt"))["sleeve.hem"]))
    assert drawn_length / sewn == pytest.approx(1.8, abs=0.01)


def test_a_hem_and_a_fold_say_what_they_are() -> None:
    text = garment_svg(made(), "shirt")
    assert said(seam_of(text, "front.hem")) == "A hem"
    assert said(seam_of(text, "back.centre")) == "On the fold"


def test_the_edge_looked_at_is_marked_with_its_partner_and_said_to_a_screen_reader() -> None:
    text = garment_svg(made(), "shirt", view=View(edge="front.armhole"))
    looked = [g for g in root(text).iter(f"{SPACE}g") if "looked" in g.get("class", "").split()]
    assert [g.get("class") for g in looked] == ["seam looked", "edge looked"]
    assert looked[1].get("data-edge") == "front.armhole"
    label = str(root(text).get("aria-label"))
    assert said(looked[0]) in label
    assert said(looked[1]) in label


@pytest.mark.parametrize(("unit", "fine"), [("cm", {10.0, 50.0, 100.0}), ("in", {25.4, 127, 254})])
def test_grid_and_scale_bar_are_as_far_apart_as_they_say(unit: Any, fine: set[float]) -> None:
    """1 in = 25.4 mm, by definition."""
    one = {"cm": 10.0, "in": 25.4}[unit]
    for view in (View(), View(piece="sleeve"), View(zoom=3.0)):
        text = garment_svg(made(), "shirt", view=view, unit=unit)
        paths = {p.get("class"): str(p.get("d")) for p in root(text).iter(f"{SPACE}path")}
        lines = paths["fine"] + paths["strong"]
        upright = sorted(float(x) for x in re.findall(r"M(-?[\d.]+) [-\d.]+V", lines))
        gap = min(b - a for a, b in pairwise(upright))
        words = " ".join(str(t.text) for t in root(text).iter(f"{SPACE}text"))
        squares = re.search(rf"Squares (\d+) {unit}, heavy lines (\d+) {unit}", words)
        assert squares
        assert gap == pytest.approx(float(squares[1]) * one, abs=0.011)
        assert min(abs(gap - wanted) for wanted in fine) < 0.011
        bar = read_picture(text)["scale-bar"].bbox()
        told = re.search(rf"(?<=\s)(\d+) {unit}(?= Squares)", f" {words}")
        assert told
        assert float(bar[2] - bar[0]) == pytest.approx(float(told[1]) * one, abs=0.02)


def test_closer_shows_less_about_the_edge_looked_at_and_never_in_another_shape() -> None:
    whole = view_box(garment_svg(made(), "shirt"))
    near = View(edge="sleeve.hem").closer().closer()
    text = garment_svg(made(), "shirt", view=near)
    x, y, width, height = view_box(text)
    assert width == pytest.approx(whole[2] / near.zoom, abs=0.02)
    assert width / height == pytest.approx(whole[2] / whole[3], abs=1e-3)
    x0, y0, x1, y1 = read_picture(text)["shirt.sleeve.hem"].bbox()
    assert x < x0 < x1 < x + width
    assert y < y0 <= y1 < y + height
    assert near.farther().farther().farther() == View(edge="sleeve.hem")


def test_one_piece_fills_the_picture() -> None:
    text = garment_svg(made(), "shirt", view=View(piece="sleeve"))
    x, y, width, height = view_box(text)
    x0, y0, x1, y1 = read_picture(text)["shirt.sleeve.cut-line"].bbox()
    assert x < x0 < x1 < x + width
    assert y < y0 < y1 < y + height
    assert max((x1 - x0) / width, (y1 - y0) / height) > 0.8


def test_one_view_draws_the_same_lines_as_another() -> None:
    near = lines(garment_svg(made(), "shirt", view=View(zoom=2.0, piece="front")))
    whole = lines(garment_svg(made(), "shirt"))
    assert near["shirt.front.cut-line"] == whole["shirt.front.cut-line"]


def test_one_piece_is_shown_alone_and_the_shell_without_what_lies_behind_it() -> None:
    assert pieces(garment_svg(made("coat"), "coat", view=View(piece="front"))) == {"front"}
    shell = pieces(garment_svg(made("coat"), "coat", view=View(piece="/Shell only")))
    cloth = {p.name: p.material for p in made("coat").garments[0].draft.pieces}
    assert set(cloth.values()) > {""}
    assert shell == {name for name, material in cloth.items() if not material}
    sleeves = pieces(garment_svg(made("coat"), "coat", view=View(piece="/Sleeves")))
    assert {"top-sleeve", "under-sleeve"} < sleeves
    assert not sleeves & {"front", "back", "tail-1"}


def lines(text: str) -> dict[str, str]:
    """Return the path of every line that has an id, as written."""
    return {str(p.get("id")): str(p.get("d")) for p in root(text).iter(f"{SPACE}path") if p.get("id")}


def pieces(text: str) -> set[str]:
    return {name.split(".")[1] for name in lines(text) if name.endswith(".cut-line")}


@pytest.mark.parametrize(
    ("choice", "value", "piece", "beside"),
    [
        ("bust_dart", "shoulder", "front", EdgeRole.STAND_NECK),
        ("bust_dart", "neck", "front", EdgeRole.STAND_NECK),
        ("bust_dart", "shoulder-princess", "front", EdgeRole.STAND_NECK),
        ("bust_ease", 240.0, "back", EdgeRole.CENTRE),
    ],
)
def test_the_shape_from_before_stays_at_the_neck_in_the_middle(
    choice: str, value: Any, piece: str, beside: EdgeRole
) -> None:
    """The neck at the centre is one point of the body, wherever a cut line is begun."""
    before = made()
    now = st.asked_for(st.begin_standing(before.costume, "shirt"), "shirt", choice, value).made
    cut = f"shirt.{piece}.cut-line"
    ghost = lines(garment_svg(now, "shirt", before))[f"{cut}.before"]
    shift = start_of(ghost) - start_of(lines(garment_svg(before, "shirt"))[cut])
    here, there = (neck_corner(m.garments[0].pattern[piece].piece, beside) for m in (now, before))
    assert abs(shift.conjugate() - (here - there)) < 0.02


def neck_corner(piece: Piece, beside: EdgeRole) -> complex:
    """Return where the neckline meets the middle."""
    necks, middles = (
        {end for e in piece.edges if e.role is role for end in (e.path.start, e.path.end)}
        for role in (EdgeRole.NECK, beside)
    )
    gaps = {abs(a - b): a for a in necks for b in middles}
    assert min(gaps) < 0.01
    return gaps[min(gaps)]


def start_of(data: str) -> complex:
    found = re.match(r"M\s*(-?[\d.]+)[ ,](-?[\d.]+)", data)
    assert found
    return complex(float(found[1]), float(found[2]))


def test_the_picture_shows_the_lines_of_the_sheet_that_is_exported() -> None:
    sheet = overview_sheet([made().garments[0].pattern], made().costume.title, bar=False)
    page = read_picture(garment_svg(made(), "shirt"))
    for stroke in sheet.strokes:
        x0, y0, x1, y1 = stroke.bounds
        box = page[safe_id(stroke.id)].bbox()
        assert (box[0], box[2]) == pytest.approx((x0, x1), abs=0.02)
        assert (box[1], box[3]) == pytest.approx((sheet.height - y1, sheet.height - y0), abs=0.02)


def test_the_picture_of_a_shirt_is_light_enough_to_be_sent_at_every_key() -> None:
    assert len(made().garments[0].pattern.pieces) == 10
    assert len(garment_svg(made(), "shirt").encode()) < BYTES


def test_a_line_to_nowhere_is_refused() -> None:
    with pytest.raises(ValueError, match="no place on paper"):
        path_data(line(0j, complex(float("nan"), 1)), Pen())


def test_the_controls_of_the_view_move_the_picture_and_draft_nothing() -> None:
    preview = Preview()
    preview.show(made(), "shirt")
    whole = view_box(preview.html.value)
    preview.buttons["Closer"].click()
    assert view_box(preview.html.value)[2] == pytest.approx(whole[2] / 1.5, abs=0.02)
    preview.buttons["Fit"].click()
    assert view_box(preview.html.value) == whole
    preview.piece.value = "sleeve"
    assert {words.split(":")[0] for words, name in preview.edge.options if name} == {"sleeve"}
    preview.edge.value = "sleeve.hem"
    assert "Sleeve hem" in str(root(preview.html.value).get("aria-label"))
    preview.piece.value = "front"
    assert preview.edge.value == ""
    assert preview.view.edge == ""


def test_another_garment_is_shown_whole_with_its_own_pieces() -> None:
    preview = Preview()
    preview.show(made(), "shirt")
    preview.piece.value = "sleeve"
    preview.buttons["Closer"].click()
    preview.show(made("breeches"), "breeches")
    assert preview.view.zoom == 1.0
    assert preview.piece.value == ""
    assert [name for _, name in preview.piece.options if "/" not in name] == ["", "front", "back"]
