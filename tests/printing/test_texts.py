"""Whatever a maker writes in a title, the file stays a drawing and its name stays a name."""

from __future__ import annotations

import string
import unicodedata
import xml.etree.ElementTree as ElementTree
from dataclasses import replace

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from shapely import Polygon, box
from shapely.geometry.base import BaseGeometry

from drafting.draft.pattern import CutPiece
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.export.svg import svg_text
from drafting.finish.label import Label, label_lines
from drafting.geometry import Path, line
from drafting.ground.names import clean_text, safe_id
from drafting.sheet import Layer
from drafting.sheet.piece import piece_sheet
from tests.export import invented

KINDS = {"svg", "title", "desc", "defs", "g", "path", "text"}
SCRIPT = '<script>alert("x")</script>'
NASTY = (SCRIPT, "a]]>&amp;\x00\x0b\ud800", "../../etc/passwd", "'\"/>", "...")
ANY_TEXT = st.text(max_size=80) | st.sampled_from(NASTY)


def local(tag: str) -> str:
    return tag.rpartition("}")[2]


@settings(max_examples=60, deadline=None)
@given(costume=ANY_TEXT, wearer=ANY_TEXT, name=ANY_TEXT)
@example(SCRIPT, NASTY[1], NASTY[3])
def test_any_text_gives_well_formed_xml_without_a_foreign_element(costume: str, wearer: str, name: str) -> None:
    cut_piece = invented.cuff()
    cut_piece = replace(cut_piece, piece=replace(cut_piece.piece, name=name, title=costume))
    sheet = piece_sheet(cut_piece, replace(invented.KITE, costume=costume, wearer=wearer))
    root = ElementTree.fromstring(svg_text(sheet).encode())
    assert {local(e.tag) for e in root.iter()} <= KINDS
    assert not [k for e in root.iter() for k in e.attrib if k.startswith("on") or "href" in k]


@given(ANY_TEXT)
def test_a_cleaned_text_has_no_control_or_direction_characters(text: str) -> None:
    clean = clean_text(text)
    assert not [c for c in clean if unicodedata.category(c) in ("Cc", "Cs", "Cn", "Co")]
    assert not set(clean) & set("\u202a\u202b\u202d\u202e\u2066\u2067\u2068\ufeff")
    assert clean == clean_text(clean)


@pytest.mark.parametrize("title", ["Der Laternenanzünder", "Ο λυχνοκαύστης", "点灯夫", "حامل المصباح"])
def test_letters_of_any_script_stay_in_titles(title: str) -> None:
    sheet = piece_sheet(invented.cuff(), replace(invented.KITE, costume=title))
    root = ElementTree.fromstring(svg_text(sheet).encode())
    assert title in (root.findtext("{http://www.w3.org/2000/svg}title") or "")


@given(ANY_TEXT)
def test_an_id_is_plain(text: str) -> None:
    assert safe_id(text)[0].isalpha()
    assert set(safe_id(text)) <= set(string.ascii_letters + string.digits + "._-")


def words(make: str, label: Label = invented.KITE) -> str:
    lines = label_lines(getattr(invented, make)(), label)
    return "\n".join((*lines.head, *lines.body, *lines.foot))


def test_a_label_says_what_the_contract_asks_for() -> None:
    # The contract for labels: costume, garment, piece name and number, how many of which fabric,
    # hand, grain, allowance widths, wearer, date of the measures; a mock-up is common practice.
    said = words("front")
    said = said.replace("\n", " ")
    names = ("The kite", "bodice", "1 Front", "Kite, invented", "2026-11-02", "neck base")
    cutting = ("cut 1 on fold, Velveteen, plum", "grain: upright", "mock-up first")
    widths = ("12 mm; 8 mm at neck", "none on the fold")
    for wanted in (*names, *cutting, *widths):
        assert wanted in said
    assert "cut 1 pair" in words("sleeve")
    assert "one left, one right" in words("sleeve")
    assert "30 mm at hem" in words("sleeve")


def test_a_label_is_silent_about_what_was_measured() -> None:
    assert "estimated" not in words("front", replace(invented.KITE, estimated=()))


def test_a_label_says_how_far_off_an_estimate_may_be() -> None:
    told = replace(invented.KITE, off=(50.0, 48.4, None, 40.0))
    said = words("front", told).replace("\n", " ")
    assert "neck base +/- 50 mm, across back +/- 48 mm, shoulder drop, bust point depth +/- 40 mm" in said


def test_many_estimates_are_counted_rather_than_listed() -> None:
    many = tuple(f"measure_{n}" for n in range(30))
    assert "and 22 more" in words("front", replace(invented.KITE, estimated=many)).replace("\n", " ")


def test_a_label_stands_in_its_piece_or_beside_it_and_on_no_other_text() -> None:
    for make in (invented.front, invented.sleeve, invented.cuff):
        sheet = piece_sheet(make(), invented.KITE)
        boxes: list[BaseGeometry] = [box(*text.bounds) for text in sheet.texts]
        for i, one in enumerate(boxes):
            assert not [other for other in boxes[:i] if one.intersects(other)]
        cut = next(s for s in sheet.strokes if s.id.endswith("cut-line")).paths[0]
        outline = Polygon([(p.real, p.imag) for p in cut.flattened(0.1)])
        assert not [one for one in boxes if one.intersects(outline.boundary)]
        assert box(0, 0, sheet.width, sheet.height).contains(box(*sheet.texts[0].bounds))


def test_a_narrow_piece_has_place_on_fold_beside_it() -> None:
    # Common practice wants the words on the sheet; a strip 14 mm wide has no room for them.
    corners, names = (0j, 14 + 0j, 14 + 90j, 90j), ("hem", "side", "top", "fold")
    kinds = (EdgeKind.HEM, EdgeKind.SEAM, EdgeKind.SEAM, EdgeKind.FOLD)
    sides = zip(names, corners, (*corners[1:], corners[0]), kinds, strict=True)
    edges = tuple(Edge(name, line(a, b), kind) for name, a, b, kind in sides)
    cut = Path.polygon(-10j, 24 - 10j, 24 + 100j, 100j)
    strip = CutPiece(Piece("strip", edges), 1, cut, dict.fromkeys(names, 10.0))
    sheet = piece_sheet(strip, invented.KITE)
    (words,) = [text for text in sheet.texts if text.layer is Layer.FOLD]
    fold = next(s for s in sheet.strokes if s.layer is Layer.FOLD).bounds
    assert words.bounds[2] < fold[0]
    assert words.bounds[0] > 5


def test_on_one_way_cloth_the_grainline_has_one_head_and_it_points_up_on_either_hand() -> None:
    # Common practice: not flipped top to bottom on the mirrored piece.
    label = replace(invented.KITE, one_way=True)
    for cut_piece in (invented.sleeve(), invented.sleeve().mirrored()):
        sheet = piece_sheet(cut_piece, label)
        grain = {s.id: s for s in sheet.on(Layer.GRAIN)}
        (head,) = grain["sleeve.grainline.heads"].paths
        tip = head.segments[0].end
        (shaft,) = grain["sleeve.grainline"].paths
        top = max(shaft.start, shaft.end, key=lambda p: p.imag)
        assert tip == pytest.approx(top)
        both = piece_sheet(cut_piece, invented.KITE)
        heads = {s.id: s for s in both.on(Layer.GRAIN)}["sleeve.grainline.heads"]
        assert len(heads.paths) == 2
