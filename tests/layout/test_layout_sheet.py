"""The drawn lay, read back by a general SVG library: cloth, fold, one closed outline a copy."""

from __future__ import annotations

import io
import xml.etree.ElementTree as ET
from itertools import pairwise
from pathlib import Path

import pytest
from svgelements import SVG
from svgelements import Path as SvgPath

from drafting.export.svg import svg_text
from drafting.ground.palette import Colour
from drafting.layout import Lay, Part, lay_out
from drafting.sheet.lay import layout_sheet
from tests.export.reading import check
from tests.layout.figures import COAT, box, cloth, part

PARTS = (*COAT, part("apron", box(300, 400), garment="skirt", number=1))
FOLDED = lay_out(PARTS, cloth(), count=150, table=False)
OPEN = lay_out(PARTS, cloth(lay="open", one_way=True), count=150, table=False)
LAYS = pytest.mark.parametrize("lay", [FOLDED, OPEN], ids=["folded", "open"])


def read(lay: Lay) -> SVG:
    text = svg_text(layout_sheet(lay, "The kite"))
    check(text)
    return SVG.parse(io.StringIO(text), ppi=25.4)


def paths(svg: SVG, kind: str) -> dict[str, SvgPath]:
    found = (e for e in svg.elements() if isinstance(e, SvgPath))
    return {str(e.id): e for e in found if e.values.get("class") == kind}


def area(path: SvgPath) -> float:
    points = [path.point(i / 4000) for i in range(4001)]
    pairs = pairwise(points)
    return abs(sum(a.x * b.y - b.x * a.y for a, b in pairs)) / 2


@LAYS
def test_one_unit_is_one_millimetre_and_nothing_is_transformed(lay: Lay) -> None:
    text = svg_text(layout_sheet(lay, "The kite"))
    root = ET.fromstring(text)
    _, _, width, height = map(float, root.attrib["viewBox"].split())
    assert root.attrib["width"] == f"{width:g}mm"
    assert root.attrib["height"] == f"{height:g}mm"
    assert "transform" not in text


@LAYS
def test_the_cloth_is_one_rectangle_as_wide_as_a_layer_and_as_long_as_the_lay(lay: Lay) -> None:
    (whole,) = paths(read(lay), "cloth").values()
    x0, y0, x1, y1 = whole.bbox()
    assert y1 - y0 == pytest.approx(lay.cloth.layer_width(lay.lay), abs=1e-3)
    assert x1 - x0 == pytest.approx(lay.length, abs=1e-3)


@LAYS
def test_outlines_on_the_sheet_add_up_to_what_is_cut(lay: Lay) -> None:
    # Contract of the layout: an outline of hand `both` counts 2, any other 1.
    drawn = paths(read(lay), "cut-line")
    count = {p.name: 0 for p in PARTS}
    for name in drawn:
        garment, piece, hand, _ = name.split(".")
        count[f"{garment}.{piece}"] += 2 if hand == "both" else 1
    assert count == {p.name: p.cut.piece.count for p in PARTS}


@LAYS
def test_every_outline_is_one_closed_path_of_its_piece_inside_the_cloth(lay: Lay) -> None:
    svg = read(lay)
    (whole,) = paths(svg, "cloth").values()
    x0, y0, x1, y1 = whole.bbox()
    by_name = {p.name: p for p in PARTS}
    for name, path in paths(svg, "cut-line").items():
        assert str(path.d()).count("M") == str(path.d()).count("Z") == 1
        part_: Part = by_name[".".join(name.split(".")[:2])]
        whole_piece = part_.cut.piece.fold_edge is not None and lay.lay == "open"
        assert area(path) == pytest.approx(part_.cut.cut.area * (2 if whole_piece else 1), rel=1e-3)
        a0, b0, a1, b1 = path.bbox()
        assert a0 > x0 - 1e-3
        assert b0 > y0 - 1e-3
        assert a1 < x1 + 1e-3
        assert b1 < y1 + 1e-3


def test_the_fold_is_drawn_where_the_fold_edges_lie() -> None:
    svg = read(FOLDED)
    (fold,) = paths(svg, "fold-line").values()
    y = fold.bbox()[1]
    back = paths(svg, "cut-line")["coat.back.single.1"]
    assert back.bbox()[3] == pytest.approx(y, abs=0.1)
    assert paths(read(OPEN), "fold-line") == {}


def test_every_grainline_lies_along_the_selvedge_and_points_one_way_on_one_way_cloth() -> None:
    grained = tuple(Part(p.garment, _with_grainline(p)) for p in PARTS)
    lay = lay_out(grained, cloth(lay="open", one_way=True), count=60, table=False)
    lines = paths(read(lay), "grainline")
    shafts = [path for name, path in lines.items() if not name.endswith("heads")]
    assert len(shafts) == len(lay.packing.spots)
    for path in shafts:
        assert path.bbox()[1] == pytest.approx(path.bbox()[3], abs=0.3)


def _with_grainline(one: Part) -> object:
    from dataclasses import replace

    from drafting.geometry import line

    return replace(one.cut, grainline=line(60 + 30j, 60 + 85j))


def test_each_garment_has_its_face_and_the_key_shows_the_same() -> None:
    drawn = read(FOLDED)
    fills = {n.split(".")[0]: p.values["fill"] for n, p in paths(drawn, "cut-line").items()}
    key = {n.split(".")[1]: p.values["fill"] for n, p in paths(drawn, "placement").items() if n.startswith("key.")}
    assert len(set(fills.values())) == 2
    assert key == fills
    assert set(fills.values()) <= {str(colour) for colour in Colour}


def test_names_hands_and_what_is_left_out_stand_on_the_sheet() -> None:
    lay = lay_out((*PARTS, part("cape", box(2000, 500))), cloth(), count=60, table=False)
    words = " ".join(line for text in layout_sheet(lay, "The kite").texts for line in text.lines)
    for wanted in ("The kite", "2 front", "left + right", "on fold", "fold", "selvedge", "buy"):
        assert wanted in words
    assert "NOT LAID, wider than the cloth: coat cape" in words


def test_a_pair_that_lies_at_the_fold_is_not_taken_for_a_piece_on_it() -> None:
    parts = (part("panel", box(735, 400), pair=True, number=1), part("half", box(60, 90), number=2))
    lay = lay_out(parts, cloth(1480.0, "folded"), count=20, table=False)
    (panel,) = (s for s in lay.packing.spots if lay.id(s) == "coat.panel.both.1")
    said = [t.lines[-1] for t in layout_sheet(lay).texts if t.lines[0] == "1 panel"]
    assert panel.y >= 2.5 - 1e-4  # half the gap on each layer, once it is opened
    assert said == ["left + right"]


def test_the_same_lay_gives_the_same_bytes(tmp_path: Path) -> None:
    again = lay_out(PARTS, cloth(), count=150, table=False)
    assert svg_text(layout_sheet(again)) == svg_text(layout_sheet(FOLDED))
