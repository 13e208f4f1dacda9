"""Pieces for cutting tables and other people's tools: DXF by the open layers for sewn products.

Layers by number as `Source.ASTM_D6673` has them (from memory; seen in abstract only): one block
a piece, drawn in mm, y up. Curves become corners no more than `GAP` off. Text says the unit too, as
R12 has no place for it.
"""

from __future__ import annotations

import cmath
import math
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from drafting.draft.pattern import CutPiece
from drafting.draft.piece import EdgeKind
from drafting.export.dxf_layers import COLOURS, MEANING, LayerNumber
from drafting.export.dxf_r12 import PlaceInDrawing, TextDrawing, TextLayout
from drafting.export.dxf_r2000 import LibraryDrawing, LibraryLayout
from drafting.finish import label_room
from drafting.geometry import Path
from drafting.ground.dxf_versions import VERSIONS
from drafting.ground.names import clean_text
from drafting.sheet.marks import dart_middles

GAP = 0.005
"""mm between a curve and its corners: the outline comes back within 0.02 mm of its length."""

APART = 60.0
"""mm between two pieces of the drawing."""

TURN = 5.0
"""degrees: a corner of the outline that turns by more is a turn point, a flatter one a curve point (ours)."""

TEXT = 6.0
"""mm: height of annotation."""


AUTHOR = "drafting kit"

MM = 4
"""The unit of a drawing, by its number in the format (DXF reference, from memory)."""

DxfLayout = TextLayout | LibraryLayout


@dataclass(frozen=True)
class DxfPiece:
    """A piece, the lines of text that go with it, and what its keyed texts say: the cloth and the size."""

    cut: CutPiece
    lines: tuple[str, ...]
    fabric: str = ""
    size: str = ""


def dxf_text(garment: str, pieces: Sequence[DxfPiece], version: str = VERSIONS[0]) -> str:
    """Return the DXF of a garment; `version` is R12, which every machine reads, or R2000."""
    if version not in VERSIONS:
        raise ValueError(f"DXF {version} is not written; {' or '.join(VERSIONS)} is")
    return _written(garment, pieces, TextDrawing(MM) if version == "R12" else LibraryDrawing(MM))


def block_name(garment: str, piece: str) -> str:
    """Return a block's name, `garment-piece`: letters, digits, `-` and `_` only.

    >>> block_name("shirt", "front")
    'shirt-front'
    """
    return re.sub(r"[^A-Za-z0-9_-]+", "-", f"{garment}-{piece}").strip("-")


def _written(garment: str, pieces: Sequence[DxfPiece], drawing: TextDrawing | LibraryDrawing) -> str:
    drawing.layers.update({str(number): COLOURS[number] for number in MEANING})
    drawing.layers["scale-check"] = 8
    x = _scale_square(drawing.space)
    _file_texts(drawing.space, garment)
    low, high = -(FILE_ROWS + 0.5) * 1.5 * TEXT, 100.0
    for piece in pieces:
        name = block_name(garment, piece.cut.piece.name)
        _piece(drawing.block(name), piece)
        x0, y0, x1, y1 = piece.cut.cut.bounds
        drawing.space.add_blockref(name, (x - x0, -y0), dxfattribs={"layer": "0"})
        x += x1 - x0 + APART
        high = max(high, y1 - y0)
    return drawing.text((0.0, low), (x - APART, high))


def _file_texts(space: DxfLayout, garment: str) -> None:
    """Write the keyed texts of the file under the square, as the interchange has them."""
    rows = (f"Style Name: {clean_text(garment)}", "Units: METRIC", f"Author: {AUTHOR}")
    _keyed(space, rows, complex(0, -1.5 * TEXT))


def _keyed(layout: DxfLayout, rows: Sequence[str], at: complex) -> None:
    for n, row in enumerate(rows):
        where = {"layer": str(LayerNumber.BOUNDARY), "insert": _xy(at - 1.5j * TEXT * n)}
        layout.add_text(row, height=TEXT, dxfattribs=where)


def _piece_texts(piece: DxfPiece) -> tuple[str, ...]:
    """Return the keyed texts of a piece, as the interchange has them (`Source.ASTM_D6673`, from memory)."""
    cut = piece.cut.piece
    return (
        f"Piece Name: {clean_text(cut.title) or cut.name}",
        f"Size: {clean_text(piece.size) or 'made to measure'}",
        f"Quantity: {cut.count}",
        f"Material: {cut.cut_from or clean_text(piece.fabric) or 'shell'}",
        f"Category: {cut.cut_from or 'shell'}",
    )


def _scale_square(space: DxfLayout) -> float:
    """Draw the labelled 100 mm square at 0, and return where the pieces begin."""
    where = {"layer": "scale-check"}
    corners = [(0.0, 0.0), (100.0, 0.0), (100.0, 100.0), (0.0, 100.0)]
    _polyline(space, corners, closed=True, layer="scale-check")
    for n, line in enumerate(("100 mm", "unit of this drawing: 1 mm")):
        space.add_text(line, height=TEXT, dxfattribs={**where, "insert": (4, 84 - 10 * n)})
    return 100 + APART


def _piece(block: DxfLayout, piece: DxfPiece) -> None:
    cut = piece.cut
    _polyline(block, _corners(cut.cut)[:-1], closed=True, layer=LayerNumber.BOUNDARY)
    for point, number in _points(cut.cut):
        block.add_point(_xy(point), dxfattribs={"layer": str(number)})
    for edge in cut.piece.edges:
        kind = LayerNumber.MIRROR if edge.kind is EdgeKind.FOLD else LayerNumber.SEW
        _polyline(block, _corners(edge.path), closed=False, layer=kind)
    for mark in cut.notches:
        for stroke in mark.strokes:
            block.add_point(_xy(stroke.start), dxfattribs={"layer": str(LayerNumber.NOTCHES)})
            _polyline(block, _corners(stroke), closed=False, layer=LayerNumber.NOTCHES)
    if cut.grainline:
        ends = _xy(cut.grainline.start), _xy(cut.grainline.end)
        block.add_line(*ends, dxfattribs={"layer": str(LayerNumber.GRAIN)})
    if cut.stretch_arrow:
        _stretch_arrow(block, cut.stretch_arrow)
    for path in _internal(cut):
        _polyline(block, _corners(path), closed=False, layer=LayerNumber.INTERNAL)
    for point in _drills(cut):
        block.add_point(_xy(point), dxfattribs={"layer": str(LayerNumber.DRILL)})
    keyed = _piece_texts(piece)
    _keyed(block, keyed, _label_corner(cut, len(piece.lines)) + 1.5j * TEXT * len(keyed))
    for n, line in enumerate(piece.lines):
        at = _label_corner(cut, len(piece.lines)) - 1.5j * TEXT * n
        where = {"layer": str(LayerNumber.ANNOTATION), "insert": _xy(at)}
        block.add_text(clean_text(line), height=TEXT, dxfattribs=where)


def _stretch_arrow(block: DxfLayout, arrow: Path) -> None:
    """A line with a head at both ends along the greatest stretch, and its name beside it."""
    head, way = min(HEAD, arrow.length / 6), arrow.leave
    _polyline(block, _corners(arrow), closed=False, layer=LayerNumber.INTERNAL)
    for tip, inward in ((arrow.start, way), (arrow.end, -way)):
        barbs = [tip + head * inward * side for side in (1 + 0.4j, 1 - 0.4j)]
        corners = [_xy(barbs[0]), _xy(tip), _xy(barbs[1])]
        _polyline(block, corners, closed=False, layer=LayerNumber.INTERNAL)
    at = arrow.at(arrow.length / 2) + 0.4j * TEXT
    block.add_text("stretch", height=TEXT, dxfattribs={"layer": str(LayerNumber.ANNOTATION), "insert": _xy(at)})


def _internal(cut: CutPiece) -> Iterator[Path]:
    """Yield what is drawn within the piece and not cut: darts' creases, levels, placements."""
    for _, middle in dart_middles(cut.piece):
        yield middle
    for dart in cut.piece.darts:
        yield from (dart.leg_a, dart.leg_b)
    for level in cut.piece.levels:
        yield from level.paths
    for placement in cut.piece.placements:
        yield placement.path


def _drills(cut: CutPiece) -> Iterator[complex]:
    """Yield what is marked by a hole through all layers: the tips of darts, the middles of buttons."""
    for _, middle in dart_middles(cut.piece):
        yield middle.start
    for placement in cut.piece.placements:
        if placement.what == BUTTON:
            x0, y0, x1, y1 = placement.path.bounds
            yield complex(x0 + x1, y0 + y1) / 2


def _points(outline: Path) -> Iterator[tuple[complex, LayerNumber]]:
    """Yield the joints of an outline: turn points where it turns, curve points where it runs on."""
    segments = outline.segments
    for before, after in zip((segments[-1], *segments[:-1]), segments, strict=True):
        leave = after.point(1e-4) - after.point(0.0)
        arrive = before.point(1.0) - before.point(1 - 1e-4)
        turn = abs(math.degrees(cmath.phase(leave / arrive))) if arrive and leave else 0.0
        yield after.point(0.0), LayerNumber.TURN_POINTS if turn > TURN else LayerNumber.CURVE_POINTS


def _label_corner(cut: CutPiece, lines: int) -> complex:
    middle, _ = label_room(cut)
    return middle + complex(-4 * TEXT, 0.75 * TEXT * lines)


def _polyline(layout: DxfLayout, points: Sequence[PlaceInDrawing], *, closed: bool, layer: str) -> None:
    layout.add_polyline2d(points, close=closed, dxfattribs={"layer": str(layer)})


def _corners(path: Path) -> list[tuple[float, float]]:
    return [_xy(point) for point in path.flattened(GAP)]


def _xy(point: complex) -> tuple[float, float]:
    return round(point.real, 6), round(point.imag, 6)


FILE_ROWS = 3
"""Keyed texts of the file, under the square."""

BUTTON = "button"
"""The kind of a placement that is drilled."""

HEAD = 8.0
"""mm: length of the stretch arrow's heads (ours)."""
