"""Pieces made by hand for the tests of layouts (every figure invented), and a check of a lay that
reads its report rows and shares no code with it."""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from typing import Any

import shapely
from shapely import affinity
from shapely.geometry import Polygon
from shapely.ops import unary_union

from drafting.draft.pattern import CutPiece
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.geometry import Path, line
from drafting.layout import Cloth, Lay, LayWishes, Part, lay_row

Points = Sequence[tuple[float, float]]


def cut_piece(
    name: str, points: Points, *, fold: int | None = None, number: int = 1, allowance: float = 10.0, **more: Any
) -> CutPiece:
    """Return a piece whose cut line is this polygon; side `fold` of it lies on the fold."""
    ring = [complex(*p) for p in points]
    edges = tuple(
        Edge(f"e{i}", line(a, b), EdgeKind.FOLD if i == fold else EdgeKind.SEAM)
        for i, (a, b) in enumerate(zip(ring, [*ring[1:], ring[0]], strict=True))
    )
    widths = {edge.name: 0.0 if edge.kind is EdgeKind.FOLD else allowance for edge in edges}
    return CutPiece(Piece(name, edges, **more), number, Path.polygon(*ring), widths)


def part(name: str, points: Points, garment: str = "coat", **more: Any) -> Part:
    return Part(garment, cut_piece(name, points, **more))


def box(width: float, height: float) -> Points:
    """Return an upright rectangle: `width` across the cloth and `height` along it at grain 90."""
    return [(0, 0), (width, 0), (width, height), (0, height)]


def half(width: float, height: float) -> Points:
    """Return a half piece with its last side, the fold, upright on the left of it."""
    return [(0, 0), (width, 0), (width, 0.8 * height), (0.4 * width, height), (0, height)]


def cloth(usable: float = 1480.0, lay: str = "auto", gap: float = 5.0, **more: Any) -> Cloth:
    return Cloth("shell", "Velveteen, plum", usable, 10.0, wishes=LayWishes(lay=lay, gap=gap), **more)


SLEEVE: Points = [(0, 0), (240, 0), (330, 420), (250, 560), (120, 590), (-60, 430)]
FRONT: Points = [(0, 0), (260, 10), (270, 380), (210, 430), (190, 620), (90, 640), (0, 520)]

COAT: tuple[Part, ...] = (
    part("back", half(220, 640), fold=4),
    part("front", FRONT, pair=True, number=2),
    part("sleeve", SLEEVE, pair=True, number=3),
    part("collar", box(420, 90), number=4, copies=2),
    part("cuff", box(230, 110), number=5, pair=True),
)


def drawn(part: Part, row: dict[str, Any]) -> Polygon:
    """Return the piece where its report row puts it, worked out with shapely from the cut line."""
    cut, piece = part.cut, part.cut.piece
    flat = Polygon([(p.real, p.imag) for p in cut.cut.flattened(0.02)])
    if row["opened"]:
        assert piece.fold_edge
        flat = unary_union([flat, _mirrored(flat, piece.fold_edge.path)])
        flat = flat.buffer(1e-4, join_style="mitre").buffer(-1e-4, join_style="mitre")
    lies = affinity.rotate(flat, -piece.grain, origin=(0, 0))
    if row["mirrored"]:
        lies = affinity.scale(lies, 1, -1, origin=(0, 0))
    lies = affinity.rotate(lies, row["rotation_deg"], origin=(0, 0))
    x0, y0, _, _ = lies.bounds
    return affinity.translate(lies, row["x"] - x0, row["y"] - y0)


def _mirrored(shape: Polygon, fold: Path) -> Polygon:
    along = fold.end - fold.start
    unit = along / abs(along)
    points = [complex(*xy) for xy in shape.exterior.coords]
    flipped = [fold.start + unit * ((p - fold.start) / unit).conjugate() for p in points]
    return Polygon([(p.real, p.imag) for p in flipped])


def breaks(lay: Lay, parts: Sequence[Part]) -> list[str]:
    """Return every rule of the cloth that a lay's report row breaks."""
    row, by_name = lay_row(lay), {(p.garment, p.cut.piece.name): p for p in parts}
    placed = [(r, drawn(by_name[r["garment"], r["piece"]], r)) for r in row["placed"]]
    said = [*_counts(row, parts), *_allowed(lay, row, by_name)]
    mean = sum(shape.area for _, shape in placed) / max(1, len(placed))
    for (r, a), (s, b) in itertools.combinations(placed, 2):
        shared = shapely.intersection(a, b, grid_size=1e-6).area  # without a grid GEOS may err
        if shared > 1e-6 * mean:
            said.append(f"{r['piece']} overlaps {s['piece']} by {shared}")
        if a.distance(b) < lay.cloth.wishes.gap - 0.01:
            said.append(f"{r['piece']} is {a.distance(b)} from {s['piece']}")
    first = min((shape.bounds[0] for _, shape in placed), default=0.0)
    for r, shape in placed:
        x0, y0, x1, y1 = shape.bounds
        if x1 - first > row["length"] + 0.01:
            said.append(f"{r['piece']} lies beyond the length")
        if x0 < -0.01 or y0 < -0.01 or y1 > row["layer_width"] + 0.01:
            said.append(f"{r['piece']} leaves the cloth: {shape.bounds}")
        high = row["lay"] == "double" and y0 > 0.1 and r["on_fold"]  # on the second of two folds
        off = row["layer_width"] - y1 if high else y0
        if r["on_fold"] and abs(off) > 0.1:
            said.append(f"{r['piece']} lies {y0} off the fold")
    return said


def _counts(row: dict[str, Any], parts: Sequence[Part]) -> list[str]:
    """Compare what lies there, a `both` counting 2, with what is to be cut; hands in equal number."""
    said = []
    lost = {(o["garment"], o["piece"]): o["count"] for o in row["left_out"]}
    for one in parts:
        name = (one.garment, one.cut.piece.name)
        hands = [r["hand"] for r in row["placed"] if (r["garment"], r["piece"]) == name]
        count = sum(2 if hand == "both" else 1 for hand in hands) + lost.get(name, 0)
        if count != one.cut.piece.count:
            said.append(f"{name}: {count} of {one.cut.piece.count}")
        if one.cut.piece.pair and hands.count("left") != hands.count("right"):
            said.append(f"{name}: {hands}")
    return said


def _allowed(lay: Lay, row: dict[str, Any], by_name: dict[tuple[str, str], Part]) -> list[str]:
    said = []
    turns = {0} if lay.cloth.one_way else {0, 180}
    for r in row["placed"]:
        piece = by_name[r["garment"], r["piece"]].cut.piece
        if r["rotation_deg"] not in turns:
            said.append(f"{r['piece']} is turned by {r['rotation_deg']}")
        one_face = row["lay"] == "open" and not lay.cloth.faces_alike and not r["opened"]
        if one_face and r["mirrored"] != (r["hand"] == "right" and piece.pair):
            said.append(f"{r['piece']} {r['hand']} lies face down")
        if r["on_fold"] != (piece.fold_edge is not None and row["lay"] in ("folded", "double")):
            said.append(f"{r['piece']} on the fold: {r['on_fold']}")
    return said
