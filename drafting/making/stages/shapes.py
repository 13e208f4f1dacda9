"""Pieces and seams as a drawing needs them: coarse lines of outline, cut line and edges, and what meets what.

A half piece is opened out whole. Outlines run anticlockwise, right side up, as they are drafted.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import pairwise

import numpy as np

from drafting.costume.garment import MadeGarment
from drafting.draft.draft import EdgeRef, Seam, SeamNotch
from drafting.draft.pattern import CutPiece
from drafting.draft.piece import Edge, Piece
from drafting.finish.label import piece_title
from drafting.geometry.curve import Numbers, Points
from drafting.geometry.moves import Motion, mirrored_in
from drafting.geometry.polylines import direction_at, points_along, polyline_length, signed_area
from drafting.ground.frozen import freeze
from drafting.making.stages.bent import Bent

CHORD = 0.8
"""mm of cloth that a drawn line may leave its curve by: 0.07 mm on paper at 1 : 12 (ours)."""

EACH_SPAN = 8
"""Points compared between one notch and the next."""

LaidAs = Motion | Bent
"""LaidPieces a piece lies: as it is, or bent to an edge."""

LaidPieces = Mapping[str, LaidAs]
"""LaidPieces each of some pieces lies."""


@dataclass(frozen=True, eq=False)
class Shape:
    """A piece as it is drawn; `axis` holds the ends of its fold, about which it was opened out."""

    piece: Piece
    number: int
    outline: Points
    cut: Points
    edges: Mapping[str, Points]
    allowances: Mapping[str, float]
    axis: tuple[complex, complex] | None = None

    def __post_init__(self) -> None:
        freeze(self, "edges", "allowances")

    @property
    def name(self) -> str:
        return self.piece.name

    @property
    def title(self) -> str:
        return piece_title(self.piece)

    @property
    def area(self) -> float:
        return abs(signed_area(self.outline))


@dataclass(frozen=True, eq=False)
class Goods:
    """The pieces of a garment as they are by now, and its seams."""

    garment: MadeGarment
    shapes: Mapping[str, Shape] = field(default_factory=dict)
    seams: Mapping[str, Seam] = field(default_factory=dict)

    def __post_init__(self) -> None:
        freeze(self, "shapes", "seams")

    def edge(self, ref: EdgeRef) -> Points:
        return self.shapes[ref[0]].edges[ref[1]]

    def drafted(self, ref: EdgeRef) -> Edge:
        return self.shapes[ref[0]].piece[ref[1]]

    def size(self, pieces: Sequence[str]) -> float:
        """Return the area of these pieces together, mm2."""
        return sum(self.shapes[name].area for name in pieces)


def goods_of(garment: MadeGarment) -> Goods:
    """Return a garment's pieces before anything is sewn."""
    shapes = {cut.piece.name: piece_shape(cut) for cut in garment.as_sewn.pieces}
    return Goods(garment, shapes, {seam.name: seam for seam in garment.draft.seams})


def piece_shape(cut: CutPiece) -> Shape:
    """Return a finished piece as it is drawn, opened out where it is half."""
    piece = cut.piece
    edges = {edge.name: edge.path.points(CHORD) for edge in piece.edges}
    fold = piece.fold_edge
    ring, around = np.concatenate([line[:-1] for line in edges.values()]), cut.cut.points(CHORD)[:-1]
    axis = None
    if fold is not None:
        axis = (fold.path.start, fold.path.end)
        at = piece.index(fold.name)
        order = [*piece.edges[at + 1 :], *piece.edges[:at]]
        half = np.concatenate([*(edges[edge.name][:-1] for edge in order), [axis[0]]])
        over = mirrored_in(*axis)
        ring = np.concatenate([half, over(half[::-1])[1:-1]])
        around = _opened_out(around, *axis)
    deep = {name: wide - piece[name].drops for name, wide in cut.allowances.items()}
    return Shape(piece=piece, number=cut.number, outline=ring, cut=around, edges=edges, allowances=deep, axis=axis)


def _opened_out(ring: Points, start: complex, end: complex) -> Points:
    """Return a half piece's cut line with its other half."""
    beyond = ((ring - start) * np.conj(end - start)).imag / abs(end - start) > 0.5
    first = next((i for i in range(len(ring)) if beyond[i] and not beyond[i - 1]), 0)
    run = np.roll(ring, -first)[: int(beyond.sum())]
    return np.concatenate([run, mirrored_in(start, end)(run[::-1])])


# ------------------------------------------------------------------------------- what meets what


def pieces_along(chain: Sequence[EdgeRef]) -> list[str]:
    """Return the pieces of a chain, each once, in its order."""
    return list(dict.fromkeys(piece for piece, _ in chain))


def matching(goods: Goods, seam: Seam, where_a: LaidPieces, where_b: LaidPieces) -> tuple[Points, Points]:
    """Return points of both chains that come to lie on each other, as far as their pieces are laid."""
    lengths = [[polyline_length(goods.edge(ref)) for ref in chain] for chain in (seam.a, seam.b)]
    whole_a, whole_b = sum(lengths[0]), sum(lengths[1])
    at_a = [0.0, *(min(notch.a, whole_a) for notch in seam.notches), whole_a]
    at_b = [0.0, *(min(notch.b, whole_b) for notch in seam.notches), whole_b]
    along = np.unique(np.concatenate([np.linspace(low, high, EACH_SPAN) for low, high in pairwise(at_a)]))
    opposite = np.interp(along, at_a, at_b)
    a, known_a = _placed(goods, seam.a, lengths[0], along, where_a, against=False)
    b, known_b = _placed(goods, seam.b, lengths[1], opposite, where_b, against=True)
    both = known_a & known_b
    return a[both], b[both]


def _placed(
    goods: Goods,
    chain: Sequence[EdgeRef],
    lengths: Sequence[float],
    at: Numbers,
    where: LaidPieces,
    *,
    against: bool,
) -> tuple[Points, np.ndarray]:
    """Return where the points at these distances along a chain lie, and which of them are known."""
    points, known, passed = np.zeros(len(at), complex), np.zeros(len(at), bool), 0.0
    for i, ((piece, edge), length) in enumerate(zip(chain, lengths, strict=True)):
        if piece in where and (piece, edge) not in chain[:i]:  # a second time it is the other hand
            here = (at >= passed - 1e-6) & (at <= passed + length + 1e-6)
            own = at[here] - passed
            line = goods.shapes[piece].edges[edge]
            points[here] = where[piece](points_along(line, length - own if against else own))
            known |= here
        passed += length
    return points, known


@dataclass(frozen=True, slots=True)
class LaidNotch:
    """A notch where it lies: its place and the way out of its piece."""

    notch: SeamNotch
    at: complex
    out: complex


def laid_notches(goods: Goods, seam: Seam, where: LaidPieces, *, on_a: bool) -> Iterator[LaidNotch]:
    """Yield the seam's notches on one of its chains, as far as its pieces are laid."""
    for notch in seam.notches:
        passed, at = 0.0, notch.a if on_a else notch.b
        for piece, edge in seam.a if on_a else seam.b:
            line = goods.shapes[piece].edges[edge]
            length = polyline_length(line)
            if at <= passed + length + 1e-6:
                if piece in where:
                    own = at - passed if on_a else length - (at - passed)
                    yield LaidNotch(notch, *_outward(line, own, where[piece]))
                break
            passed += length


def _outward(line: Points, at: float, placing: LaidAs) -> tuple[complex, complex]:
    laid = placing(points_along(line, [at - 3.0, at, at + 3.0]))
    way = complex(laid[2] - laid[0])
    return complex(laid[1]), (1j if placing.over else -1j) * way / (abs(way) or 1.0)


def outward_at(line: Points, at: float, *, over: bool) -> complex:
    """Return the way out of its piece at a distance along a laid edge."""
    return (1j if over else -1j) * direction_at(line, at)


def laid_edges(goods: Goods, chain: Sequence[EdgeRef], where: LaidPieces) -> list[Points]:
    """Return the edges of a chain where their pieces lie."""
    return [
        where[piece](goods.shapes[piece].edges[edge]) for piece, edge in dict.fromkeys(chain) if piece in where
    ]
