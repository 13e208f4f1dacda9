"""An SVG file is true to scale: read back by svgelements, a general SVG library."""

from __future__ import annotations

import io
import math
import re

import pytest
from shapely import Polygon, box
from svgelements import SVG

from drafting.draft.pattern import CutPiece
from drafting.draft.piece import EdgeKind
from drafting.export.svg import svg_text
from drafting.geometry import Cubic
from drafting.sheet.overview import overview_sheet
from drafting.sheet.piece import piece_sheet
from tests.export import invented
from tests.export.reading import check, corners, length, page, point, shapes
from tests.published import named, single

ALL = [invented.front, invented.sleeve, invented.cuff]


@pytest.fixture(params=ALL, ids=lambda make: make.__name__)
def cut_piece(request: pytest.FixtureRequest) -> CutPiece:
    made: CutPiece = request.param()
    return made


@pytest.fixture
def text(cut_piece: CutPiece) -> str:
    return svg_text(piece_sheet(cut_piece, invented.KITE))


def test_one_user_unit_is_one_millimetre(text: str, cut_piece: CutPiece) -> None:
    # SVG 1.1: width and height in mm with a viewBox of the same figures.
    sheet = piece_sheet(cut_piece, invented.KITE)
    assert f'width="{sheet.width:g}mm"' in text
    assert f'height="{sheet.height:g}mm"' in text
    assert f'viewBox="0 0 {sheet.width:g} {sheet.height:g}"' in text
    unit = single("svg-user-unit")
    drawn = page(text).width / unit, page(text).height / unit
    assert drawn == pytest.approx((sheet.width, sheet.height))
    assert "transform" not in text


def test_the_squares_are_100_mm_and_4_in_each_its_own_closed_shape(text: str) -> None:
    squares = shapes(text, "scale-check")
    for name, side in (("scale-check.100mm", 100.0), ("scale-check.4in", 4 * 25.4)):
        x0, y0, x1, y1 = squares[name].bbox()
        assert (round(x1 - x0, 3), round(y1 - y0, 3)) == (side, side)
        assert [type(s).__name__ for s in squares[name]] == ["Move", "Line", "Line", "Line", "Close"]
        assert length(squares[name]) == pytest.approx(4 * side, abs=1e-3)


def test_the_square_measures_377_953_pixels_where_a_reader_counts_96_to_the_inch(text: str) -> None:
    # 96 px to the inch; a reader that takes the file's own width cannot come out at 93.75 or 75 mm.
    px = SVG.parse(io.StringIO(text), ppi=named("css-lengths")["inch"])
    square = next(e for e in px.elements() if getattr(e, "id", "") == "scale-check.100mm")
    x0, _, x1, _ = square.bbox()
    assert x1 - x0 == pytest.approx(named("test-square")["px"], abs=0.01)


def test_no_square_touches_the_cut_line_or_leaves_the_page(text: str, cut_piece: CutPiece) -> None:
    (cut,) = shapes(text, "cut-line").values()
    outline = Polygon([(p.x, p.y) for p in (cut.point(i / 2000) for i in range(2000))])
    boxes = [box(*square.bbox()) for square in shapes(text, "scale-check").values()]
    width, height = page(text).width, page(text).height
    assert len(boxes) == 2
    assert not boxes[0].intersects(boxes[1])
    for square in boxes:
        assert square.distance(outline) > 10
        assert box(0, 0, width, height).buffer(-5).contains(square)


def test_every_named_edge_is_one_open_stitch_line_of_its_drafted_length(text: str, cut_piece: CutPiece) -> None:
    read = shapes(text, "stitch-line")
    name = cut_piece.piece.name
    assert list(read) == [f"{name}.{edge.name}" for edge in cut_piece.piece.edges]
    for edge in cut_piece.piece.edges:
        path = read[f"{name}.{edge.name}"]
        assert length(path) == pytest.approx(edge.length, abs=0.01)
        assert "Close" not in [type(s).__name__ for s in path]


def test_the_stitch_lines_chain_into_a_ring_of_the_drafted_area(text: str, cut_piece: CutPiece) -> None:
    # Logic: the area of the exported outline is that of the drafted one (0.05 cm2 is 5 mm2).
    read = list(shapes(text, "stitch-line").values())
    points: list[complex] = []
    for path, after in zip(read, [*read[1:], read[0]], strict=True):
        assert abs(point(path, 1) - point(after, 0)) <= 1e-4
        points += [point(path, i / 400) for i in range(400)]
    ring = zip(points, [*points[1:], points[0]], strict=True)
    area = -math.fsum((a.conjugate() * b).imag for a, b in ring) / 2  # y runs down in the file
    assert area == pytest.approx(cut_piece.piece.area, rel=2e-4)


def test_the_cut_line_is_one_closed_path(text: str, cut_piece: CutPiece) -> None:
    (cut,) = shapes(text, "cut-line").values()
    kinds = [type(s).__name__ for s in cut]
    assert (kinds.count("Move"), kinds.count("Close"), kinds[-1]) == (1, 1, "Close")
    assert length(cut) == pytest.approx(cut_piece.cut.length, abs=0.01)


def test_levels_are_one_path_of_subpaths_that_add_up(text: str, cut_piece: CutPiece) -> None:
    read = shapes(text, "level")
    for level in cut_piece.piece.levels:
        path = read[f"{cut_piece.piece.name}.level.{level.name}"]
        assert sum(type(s).__name__ == "Move" for s in path) == len(level.paths)
        assert length(path) == pytest.approx(level.length, abs=0.01)
    assert len(read) == len(cut_piece.piece.levels)


def test_a_fold_edge_is_drawn_as_fold_and_as_stitch_line_and_says_so() -> None:
    # Common practice: the cut line lies on the fold, where 'place on fold' is printed.
    cut_piece = invented.front()
    text = svg_text(piece_sheet(cut_piece, invented.KITE))
    fold, stitched = shapes(text, "fold-line"), shapes(text, "stitch-line")
    edge = next(e for e in cut_piece.piece.edges if e.kind is EdgeKind.FOLD)
    assert length(fold[f"front.fold.{edge.name}"]) == pytest.approx(edge.length, abs=1e-3)
    (cut,) = shapes(text, "cut-line").values()
    assert cut.bbox()[0] == pytest.approx(stitched["front.centre_front"].bbox()[0], abs=1e-3)
    assert ">place<" in text
    assert ">on fold<" in text


def test_curves_are_written_as_the_drafted_cubics(text: str, cut_piece: CutPiece) -> None:
    # No facets; what is left is the rounding of the file, and the reader's own inch (6 digits).
    sheet = piece_sheet(cut_piece, invented.KITE)
    drawn = {s.id: s.paths[0] for s in sheet.strokes}

    def up(p: complex) -> complex:
        return complex(p.real, sheet.height - p.imag)

    for name, path in shapes(text, "stitch-line").items():
        ours = [s for s in drawn[name].segments if isinstance(s, Cubic)]
        theirs = [s for s in path if type(s).__name__ == "CubicBezier"]
        assert len(ours) == len(theirs)
        for a, b in zip(ours, theirs, strict=True):
            far = [abs(a.point(t / 9) - up(point(b, t / 9))) for t in range(10)]
            assert max(far) < 1e-3


def test_a_whole_garment_stays_far_under_two_megabytes() -> None:
    # Our own bound: 2 MB and 20 000 points for a whole garment.
    text = svg_text(overview_sheet(invented.patterns(), "The kite"))
    assert len(text.encode()) < 2_000_000
    assert (
        sum(len(shape) for kind in ("cut-line", "stitch-line") for shape in shapes(text, kind).values()) < 20_000
    )


def test_the_file_is_the_same_byte_for_byte(cut_piece: CutPiece, text: str) -> None:
    assert svg_text(piece_sheet(cut_piece, invented.KITE)) == text


def test_the_top_of_the_piece_is_at_the_top_of_the_page() -> None:
    read = shapes(svg_text(piece_sheet(invented.front(), invented.KITE)), "stitch-line")
    assert corners(read["front.shoulder"])[0].imag < corners(read["front.waist_a"])[0].imag


def test_the_mirror_image_has_the_same_area_and_readable_text() -> None:
    # Logic; labels stay readable on a mirrored piece (common practice).
    cut_piece = invented.sleeve()
    other = cut_piece.mirrored()
    one, two = (svg_text(piece_sheet(c, invented.KITE)) for c in (cut_piece, other))
    for edge in cut_piece.piece.edges:
        a, b = (shapes(t, "stitch-line")[f"sleeve.{edge.name}"] for t in (one, two))
        assert length(a) == pytest.approx(length(b), abs=1e-3)
    assert "transform" not in two
    assert ">2 Sleeve<" in two


def test_a_validator_accepts_every_element_and_attribute(text: str) -> None:
    check(text)


@pytest.mark.parametrize("wrong", ['stroke-width="wide"', 'colour="red"', 'd="M 1"'])
def test_the_validator_refuses_what_is_no_svg(text: str, wrong: str) -> None:
    with pytest.raises((TypeError, ValueError)):
        check(
            text.replace("<path ", f"<path {wrong} ", 1)
            if "d=" not in wrong
            else re.sub('d="M [^"]*"', wrong, text, count=1)
        )


def test_a_fitted_drawing_keeps_the_viewbox_and_takes_the_width_it_is_given() -> None:
    sheet = piece_sheet(invented.cuff(), invented.KITE)
    text = svg_text(sheet, fit=True)
    assert text.startswith("<svg ")
    assert 'width="100%"' in text
    assert f'viewBox="0 0 {sheet.width:g} {sheet.height:g}"' in text
    assert " height=" in svg_text(sheet)
    assert " height=" not in text
