"""Small drawings for the plan: pieces side by side, the edges that are sewn now drawn heavy.

Every piece and every edge that is lit anywhere is defined once; the steps only refer to it.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from drafting.costume.garment import MadeGarment
from drafting.costume.make import Made
from drafting.draft.draft import EdgeRef, Seam
from drafting.draft.piece import Piece
from drafting.export.svg_writer import STEADY, Pen, Svg, element, number, path_data, svg_joined, words
from drafting.finish.label import piece_title
from drafting.ground.names import safe_id
from drafting.ground.palette import Colour
from drafting.sheet.faces import face

GAP = 60.0
"""mm between two pieces (ours)."""

ROW = 1500.0
"""mm of cloth in a row of a drawing (ours)."""

TEXT, LEAST_TEXT = 22.0, 16.0
"""Parts of a drawing's greater side that a name's letters take, and mm at least (ours)."""

LETTER = 0.62
"""Width of a letter as a share of its size, on the wide side."""

MOST = 24
"""Pieces in one drawing; a whole costume's docket is drawn elsewhere (ours)."""


@dataclass(frozen=True)
class DrawnPiece:
    """A piece as it is drawn: its name in the page, its piece, its face."""

    name: str
    piece: Piece
    face: Colour

    @property
    def corner(self) -> complex:
        x0, y0, _, _ = self.piece.outline.bounds
        return complex(x0, y0)

    @property
    def size(self) -> tuple[float, float]:
        x0, y0, x1, y1 = self.piece.outline.bounds
        return x1 - x0, y1 - y0

    def data(self, edge: str = "") -> str:
        """Return the path commands of the outline, or of one edge, y down from the box's top."""
        path = self.piece[edge].path if edge else self.piece.outline
        return path_data(path.moved(-self.corner), Pen(height=self.size[1]), closed=not edge)


def drawn_pieces(made: Made) -> dict[str, DrawnPiece]:
    """Return every piece of a costume by `garment.piece`."""
    found = [
        DrawnPiece(f"{garment.name}.{piece.name}", piece, face(piece.material, place))
        for place, garment in enumerate(made.garments)
        for piece in garment.draft.pieces
    ]
    return {drawn.name: drawn for drawn in found}


def definitions(pieces: Mapping[str, DrawnPiece], lit: Iterable[tuple[str, str]]) -> Svg:
    """Return the hidden drawing that defines the outlines, and the edges that some step lights."""
    shapes = [_defined(piece) for piece in pieces.values()]
    edges = [_defined(pieces[name], edge) for name, edge in sorted(set(lit))]
    known = element("defs", *shapes, *edges)
    return element("svg", known, width="0", height="0", aria_hidden="true")


def _defined(drawn: DrawnPiece, edge: str = "") -> Svg:
    return element("path", id=_id(drawn.name, edge), d=drawn.data(edge), vector_effect=STEADY)


def lit_edges(garment: MadeGarment, seams: Iterable[str]) -> Iterator[tuple[str, str]]:
    """Yield the edges of these seams, as names of the page's pieces and edges."""
    wanted = set(seams)
    for seam in garment.draft.seams:
        if seam.name in wanted:
            yield from ((f"{garment.name}.{piece}", edge) for piece, edge in _refs(seam))


def _refs(seam: Seam) -> tuple[EdgeRef, ...]:
    return (*seam.a, *seam.b)


def step_drawing(pieces: list[DrawnPiece], lit: Iterable[tuple[str, str]]) -> Svg:
    """Return one drawing of these pieces in rows, with what is sewn now lit and each piece named."""
    lit_of: dict[str, list[str]] = {}
    for name, edge in lit:
        lit_of.setdefault(name, []).append(edge)
    shown = pieces[:MOST]
    _, wide, high = _rows(shown, 0.0)
    body, wide, high = _rows(shown, max(LEAST_TEXT, max(wide, high) / TEXT))
    title = ", ".join(piece_title(p.piece) for p in pieces[:MOST])
    size = max(LEAST_TEXT, max(wide, high) / TEXT)
    placed = svg_joined(_placed(p, x, y, lit_of.get(p.name, []), size) for p, x, y in body)
    box = f"{-GAP / 2:g} {-GAP / 2:g} {wide:.0f} {high + GAP / 2 + 1.6 * size:.0f}"
    return element("svg", words("title", title), placed, class_="pieces", role="img", viewBox=box)


def _rows(pieces: list[DrawnPiece], size: float) -> tuple[list[tuple[DrawnPiece, float, float]], float, float]:
    """Return where each piece stands, in a cell as wide as its name, and the drawing's width and height."""
    body: list[tuple[DrawnPiece, float, float]] = []
    x = top = low = wide = 0.0
    for piece in pieces:
        w, h = piece.size
        cell = max(w, LETTER * size * len(piece_title(piece.piece)))
        if x and x + cell > ROW:
            x, top = 0.0, low + 2 * GAP
        body.append((piece, x + (cell - w) / 2, top))
        x, low = x + cell + GAP, max(low, top + h)
        wide = max(wide, x)
    return body, wide, low


def _placed(drawn: DrawnPiece, x: float, y: float, edges: list[str], size: float) -> Svg:
    w, h = drawn.size
    at = {"x": number(x, 1), "y": number(y, 1)}
    shape = element("use", class_="piece", href=f"#{_id(drawn.name)}", fill=drawn.face, **at)
    lit = [element("use", class_="lit", href=f"#{_id(drawn.name, edge)}", **at) for edge in edges]
    name = words(
        "text",
        piece_title(drawn.piece),
        x=number(x + w / 2, 1),
        y=number(y + h + 1.1 * size, 1),
        font_size=number(size, 0),
    )
    return svg_joined([shape, *lit, name])


def _id(name: str, edge: str = "") -> str:
    return safe_id(f"piece.{name}" + (f".{edge}" if edge else ""))
