"""The interchange file, read back and audited by ezdxf, a general DXF library."""

from __future__ import annotations

import dataclasses
import io
import math
from typing import Any

import ezdxf
import ezdxf.bbox
import pytest

from drafting.costume.file import read_costume
from drafting.costume.make import Made, make
from drafting.draft.pattern import CutPiece
from drafting.draft.piece import EdgeKind
from drafting.export.dxf import DxfPiece, block_name, dxf_text
from drafting.export.dxf_layers import COLOURS, LayerNumber
from drafting.ground.dxf_versions import VERSIONS
from drafting.ground.shipped import demo_costume
from drafting.output.report import report
from drafting.output.sheets import interchange_files
from drafting.printing.wishes import PrintWishes
from tests.export import invented
from tests.published import named, several


@pytest.fixture(scope="module")
def made() -> Made:
    """The lamplighter's shirt alone."""
    whole = make(read_costume(demo_costume()))
    return dataclasses.replace(whole, garments=tuple(g for g in whole.garments if g.name == "shirt"))


def texts(made: Made, version: str) -> dict[str, str]:
    costume = dataclasses.replace(made.costume, prints=PrintWishes(dxf=version))
    return dict(interchange_files(dataclasses.replace(made, costume=costume)))


@pytest.fixture(scope="module", params=["R2000", "R12"])
def document(request: pytest.FixtureRequest, made: Made) -> Any:
    return ezdxf.read(io.StringIO(texts(made, request.param)["exchange/shirt.dxf"]))


def corners(entity: Any) -> list[complex]:
    if entity.dxftype() == "LWPOLYLINE":
        return [complex(x, y) for x, y in entity.get_points("xy")]
    return [complex(v.dxf.location.x, v.dxf.location.y) for v in entity.vertices]


def polylines(layout: Any, layer: str) -> list[Any]:
    kinds = ("LWPOLYLINE", "POLYLINE")
    return [e for e in layout if e.dxftype() in kinds and e.dxf.layer == layer]


def is_closed(entity: Any) -> bool:
    return bool(entity.closed if entity.dxftype() == "LWPOLYLINE" else entity.is_closed)


def run(points: list[complex], closed: bool = False) -> float:
    after = points[1:] + (points[:1] if closed else [])
    return math.fsum(abs(a - b) for a, b in zip(points, after, strict=False))


def test_the_file_has_no_faults_to_audit(document: Any) -> None:
    audit = document.audit()
    assert (audit.errors, audit.fixes) == ([], [])


def test_each_piece_is_one_block_whose_boundary_is_one_closed_polyline_of_its_size(
    document: Any, made: Made
) -> None:
    # ASTM D6673-10, from memory: layer 1 is the boundary; one block a piece.
    cuts = {c.piece.name: c for g in made.garments for c in g.pattern.pieces}
    for row in report(made)["pieces"]:
        block = document.blocks.get(f"{row['garment']}-{row['piece']}")
        (boundary,) = polylines(block, "1")
        assert is_closed(boundary)
        points = corners(boundary)
        area = (
            math.fsum((a.conjugate() * b).imag for a, b in zip(points, points[1:] + points[:1], strict=True)) / 2
        )
        assert area == pytest.approx(row["cut_area"], rel=2e-4)
        assert run(points, closed=True) == pytest.approx(cuts[row["piece"]].cut.length, abs=0.02)
    names = [b.name for b in document.blocks if not b.name.startswith(("*", "_", "$"))]
    assert len(names) == len(report(made)["pieces"])


def test_each_piece_is_placed_once_at_true_size_and_none_on_another(document: Any) -> None:
    placed = document.modelspace().query("INSERT")
    boxes = []
    for insert in placed:
        assert (insert.dxf.xscale, insert.dxf.yscale, insert.dxf.rotation) == (1, 1, 0)
        (boundary,) = polylines(document.blocks.get(insert.dxf.name), "1")
        x = [p.real + insert.dxf.insert.x for p in corners(boundary)]
        boxes.append((min(x), max(x)))
    assert len({insert.dxf.name for insert in placed}) == len(placed) > 5
    assert all(a[1] < b[0] for a, b in zip(sorted(boxes), sorted(boxes)[1:], strict=False))


def test_sew_lines_have_the_length_of_the_edges(document: Any, made: Made) -> None:
    # ASTM D6673-10, from memory: sew lines on 14; the fold of a half piece on 6, the mirror line.
    for garment in made.garments:
        for cut in garment.pattern.pieces:
            block = document.blocks.get(block_name(garment.name, cut.piece.name))
            sewn = [e.length for e in cut.piece.edges if e.kind is not EdgeKind.FOLD]
            fold = [e.length for e in cut.piece.edges if e.kind is EdgeKind.FOLD]
            for layer, wanted in (("14", sewn), ("6", fold)):
                read = [run(corners(e)) for e in polylines(block, layer)]
                assert read == pytest.approx(wanted, abs=0.02)


def test_notches_and_grain_lie_on_their_layers(document: Any, made: Made) -> None:
    for garment in made.garments:
        for cut in garment.pattern.pieces:
            block = document.blocks.get(block_name(garment.name, cut.piece.name))
            points = [e for e in block if e.dxftype() == "POINT" and e.dxf.layer == "4"]
            assert len(points) == sum(len(mark.strokes) for mark in cut.notches)
            grains = [e for e in block if e.dxftype() == "LINE" and e.dxf.layer == "7"]
            if cut.grainline:
                (grain,) = grains
                assert (grain.dxf.end - grain.dxf.start).magnitude == pytest.approx(cut.grainline.length)


def test_layers_have_the_numbers_of_the_interchange() -> None:
    # ASTM D6673, from memory.
    main = [
        LayerNumber.BOUNDARY,
        LayerNumber.NOTCHES,
        LayerNumber.GRAIN,
        LayerNumber.INTERNAL,
        LayerNumber.CUT_OUT,
        LayerNumber.DRILL,
        LayerNumber.SEW,
    ]
    more = [
        LayerNumber.TURN_POINTS,
        LayerNumber.CURVE_POINTS,
        LayerNumber.GRADE,
        LayerNumber.MIRROR,
        LayerNumber.STRIPE,
        LayerNumber.PLAID,
        LayerNumber.ANNOTATION,
    ]
    notches = [LayerNumber.T_NOTCH, LayerNumber.CASTLE_NOTCH, LayerNumber.CHECK_NOTCH, LayerNumber.U_NOTCH]
    for name, ours in (("dxf-layers", main), ("dxf-more-layers", more), ("dxf-notches", notches)):
        assert [int(str(n)) for n in ours] == several(name)


def test_only_layers_of_the_interchange_and_our_square_are_used(document: Any) -> None:
    known = {str(number) for number in LayerNumber} | {"0", "scale-check"}
    used = {e.dxf.layer for block in document.blocks for e in block if e.dxf.hasattr("layer")}
    assert used <= known
    assert {"1", "4", "7", "8", "14", "15"} <= used


def test_the_unit_is_in_the_header_and_a_labelled_square_in_the_drawing(document: Any) -> None:
    # DXF reference, from memory: 4 is millimetres.
    assert document.header["$INSUNITS"] == named("dxf-units")["millimetres"]
    space = document.modelspace()
    (square,) = polylines(space, "scale-check")
    points = corners(square)
    assert is_closed(square)
    assert [abs(a - b) for a, b in zip(points, points[1:] + points[:1], strict=True)] == pytest.approx([100] * 4)
    words = [e.dxf.text for e in space if e.dxftype() == "TEXT"]
    assert "100 mm" in words
    assert any("1 mm" in word for word in words)


def test_annotation_says_what_the_piece_is_in_any_script(made: Made) -> None:
    cut: CutPiece = invented.front()
    text = dxf_text("bodice", [DxfPiece(cut, ("Плащ", "凧"))])
    block = ezdxf.read(io.StringIO(text)).blocks.get("bodice-front")
    words = [e.dxf.text for e in block if e.dxftype() == "TEXT" and e.dxf.layer == "15"]
    assert words == ["Плащ", "凧"] or [w.encode().decode("unicode_escape") for w in words]


def test_a_garment_has_less_than_20_000_points_and_2_mb(document: Any, made: Made) -> None:
    # Arithmetic: a chord 0.1 mm off its arc, as for a faceted or too large file.
    points = sum(len(corners(e)) for b in document.blocks for n in LayerNumber for e in polylines(b, str(n)))
    assert 500 < points < 20_000
    assert len(texts(made, "R12")["exchange/shirt.dxf"].encode()) < 2_000_000


@pytest.mark.parametrize("version", ["R2000", "R12"])
def test_the_same_pieces_give_the_same_bytes(made: Made, version: str) -> None:
    assert texts(made, version) == texts(made, version)


def test_the_switch_that_holds_back_the_clock_is_left_as_it_was() -> None:
    before = ezdxf.options.write_fixed_meta_data_for_testing
    dxf_text("bodice", [DxfPiece(invented.cuff(), ())])
    assert ezdxf.options.write_fixed_meta_data_for_testing == before


def test_r12_is_written_where_nothing_is_asked_for(made: Made) -> None:
    (text,) = dict(interchange_files(made)).values()
    assert ezdxf.read(io.StringIO(text)).dxfversion == "AC1009"  # DXF reference: the release's own name


def keyed(layout: Any) -> dict[str, str]:
    rows = [e.dxf.text for e in layout if e.dxftype() == "TEXT" and e.dxf.layer == "1"]
    return dict(row.split(": ", 1) for row in rows)


def test_each_block_says_name_size_quantity_material_and_category(document: Any, made: Made) -> None:
    # ASTM D6673-10, from memory: keyed texts a piece on layer 1, and those of the file outside the blocks.
    rows = {row["piece"]: row for row in report(made)["pieces"]}
    for garment in made.garments:
        for cut in garment.pattern.pieces:
            said = keyed(document.blocks.get(block_name(garment.name, cut.piece.name)))
            assert list(said) == ["Piece Name", "Size", "Quantity", "Material", "Category"]
            assert int(said["Quantity"]) == rows[cut.piece.name]["count"]
            assert said["Material"]
    assert keyed(document.modelspace()) == {"Style Name": "shirt", "Units": "METRIC", "Author": "drafting kit"}


def test_the_head_says_how_far_the_drawing_reaches(document: Any) -> None:
    # ezdxf's own reckoning of the extents judges it, but for words, which it measures by a face of its own.
    space = document.modelspace()
    drawn = [e for insert in space.query("INSERT") for e in insert.virtual_entities()]
    found = ezdxf.bbox.extents(e for e in (*space, *drawn) if e.dxftype() not in ("TEXT", "INSERT"))
    least, most = document.header["$EXTMIN"], document.header["$EXTMAX"]
    assert most[0] == pytest.approx(found.extmax.x, abs=0.01)
    assert most[1] == pytest.approx(found.extmax.y, abs=0.01)
    assert least[0] == pytest.approx(found.extmin.x, abs=0.01)
    lowest = min(e.dxf.insert.y for e in document.modelspace().query("TEXT"))
    assert lowest - 6 <= least[1] <= lowest


def test_every_layer_has_a_colour_and_what_lies_on_it_takes_that(document: Any) -> None:
    for number, colour in COLOURS.items():
        assert document.layers.get(str(number)).color == colour
    near = [(a, b) for a in (1, 4, 6, 7, 8, 13, 14) for b in (1, 4, 6, 7, 8, 13, 14) if a < b]
    colours = {number: document.layers.get(str(number)).color for number in (1, 4, 6, 7, 8, 13, 14)}
    assert all(colours[a] != colours[b] for a, b in near)
    drawn = [e for block in document.blocks for e in block if e.dxf.layer in {str(n) for n in COLOURS}]
    assert {e.dxf.color for e in drawn} == {256}  # DXF reference: by layer


def test_tips_of_darts_and_buttons_are_drilled(document: Any, made: Made) -> None:
    count = 0
    for garment in made.garments:
        for cut in garment.pattern.pieces:
            block = document.blocks.get(block_name(garment.name, cut.piece.name))
            holes = [e.dxf.location for e in block if e.dxftype() == "POINT" and e.dxf.layer == "13"]
            buttons = [mark for mark in cut.piece.placements if mark.what == "button"]
            assert len(holes) >= len(buttons)
            for mark in buttons:
                middle = sum(mark.path.points(0.1)) / len(mark.path.points(0.1))
                assert min(abs(complex(p.x, p.y) - middle) for p in holes) < 0.5
            count += len(holes)
    assert count > 5


def test_a_second_library_reads_outlines_layers_and_texts_alike(made: Made, tmp_path: Any) -> None:
    """GDAL's own reader of DXF judges, block by block: it shares no code with the library that wrote it."""
    gdal = pytest.importorskip("pyogrio", reason="the test lock brings it")
    shapely = pytest.importorskip("shapely")
    (text,) = dict(interchange_files(made)).values()
    file = tmp_path / "shirt.dxf"
    file.write_text(text, encoding="utf-8")
    gdal.set_gdal_config_options({"DXF_MERGE_BLOCK_GEOMETRIES": False})
    meta, _, shapes, fields = gdal.raw.read(file, layer="entities")
    column = dict(zip(meta["fields"], fields, strict=True))
    lines = shapely.from_wkb(shapes)
    cuts = [cut for garment in made.garments for cut in garment.pattern.pieces]
    found = []
    for layer, shape in zip(column["Layer"], lines, strict=True):
        parts = [part for part in shapely.get_parts(shape) if part.geom_type != "Point"]
        if layer == "1":
            found += [part for part in parts if part.length > 0]
    assert len(found) == len(cuts)
    read = sorted(float(part.length) for part in found)
    assert read == pytest.approx(sorted(cut.cut.length for cut in cuts), abs=0.05)
    assert {"1", "2", "3", "4", "6", "7", "8", "13", "14", "15"} <= set(column["Layer"])
    said = {text for text in column["Text"] if text}
    assert sum(text.startswith("Piece Name: ") for text in said) > 3
    assert "Units: METRIC" in said


def test_nothing_is_said_on_the_terminal_while_a_drawing_is_written(caplog: pytest.LogCaptureFixture) -> None:
    for version in VERSIONS:
        dxf_text("bodice", [DxfPiece(invented.front(), ("a line",))], version)
    assert caplog.records == []
