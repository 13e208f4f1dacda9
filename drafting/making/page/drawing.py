"""Small drawings for the plan: pieces side by side, the edges that are sewn now drawn heavy.

Every piece and every edge that is lit anywhere is defined once; the steps only refer to it.
"""

from __future__ import annotations

import html
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from drafting.costume.garment import MadeGarment
from drafting.costume.make import Made
from drafting.draft.draft import EdgeRef, Seam
from drafting.draft.piece import Piece
from drafting.export.svg import path_data
from drafting.finish.label import piece_title
from drafting.ground.names import safe_id

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
    """A piece as it is drawn: its name in the page, its piece, where its box starts."""

    name: str
    piece: Piece

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
        return path_data(path.moved(-self.corner), self.size[1], closed=not edge)


def drawn_pieces(made: Made) -> dict[str, DrawnPiece]:
    """Return every piece of a costume by `garment.piece`."""
    return {
        f"{garment.name}.{piece.name}": DrawnPiece(f"{garment.name}.{piece.name}", piece)
        for garment in made.garments
        for piece in garment.draft.pieces
    }


def definitions(pieces: Mapping[str, DrawnPiece], lit: Iterable[tuple[str, str]]) -> str:
    """Return the hidden drawing that defines the outlines, and the edges that some step lights."""
    shapes = "".join(
        f'<path id="{_id(d.name)}" d="{d.data()}" vector-effect="non-scaling-stroke"/>' for d in pieces.values()
    )
    edges = "".join(
        f'<path id="{_id(name, edge)}" d="{pieces[name].data(edge)}" vector-effect="non-scaling-stroke"/>'
        for name, edge in sorted(set(lit))
    )
    return f'<svg width="0" height="0" aria-hidden="true"><defs>{shapes}{edges}</defs></svg>'


def lit_edges(garment: MadeGarment, seams: Iterable[str]) -> Iterator[tuple[str, str]]:
    """Yield the edges of these seams, as names of the page's pieces and edges."""
    wanted = set(seams)
    for seam in garment.draft.seams:
        if seam.name in wanted:
            yield from ((f"{garment.name}.{piece}", edge) for piece, edge in _refs(seam))


def _refs(seam: Seam) -> tuple[EdgeRef, ...]:
    return (*seam.a, *seam.b)


def step_drawing(pieces: list[DrawnPiece], lit: Iterable[tuple[str, str]]) -> str:
    """Return one drawing of these pieces in rows, with what is sewn now lit and each piece named."""
    lit_of: dict[str, list[str]] = {}
    for name, edge in lit:
        lit_of.setdefault(name, []).append(edge)
    shown = pieces[:MOST]
    _, wide, high = _rows(shown, 0.0)
    body, wide, high = _rows(shown, max(LEAST_TEXT, max(wide, high) / TEXT))
    title = ", ".join(piece_title(p.piece) for p in pieces[:MOST])
    size = max(LEAST_TEXT, max(wide, high) / TEXT)
    placed = "".join(_placed(p, x, y, lit_of.get(p.name, []), size) for p, x, y in body)
    box = f"{-GAP / 2:g} {-GAP / 2:g} {wide:.0f} {high + GAP / 2 + 1.6 * size:.0f}"
    head = f'<svg class="pieces" role="img" viewBox="{box}"><title>{html.escape(title)}</title>'
    return f"{head}{placed}</svg>"


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


def _placed(drawn: DrawnPiece, x: float, y: float, edges: list[str], size: float) -> str:
    at = f'x="{x:.1f}" y="{y:.1f}"'
    lit = "".join(f'<use class="lit" href="#{_id(drawn.name, edge)}" {at}/>' for edge in edges)
    w, h = drawn.size
    name = html.escape(piece_title(drawn.piece))
    words = f'<text x="{x + w / 2:.1f}" y="{y + h + 1.1 * size:.1f}" font-size="{size:.0f}">{name}</text>'
    return f'<use class="piece" href="#{_id(drawn.name)}" {at}/>{lit}{words}'


def _id(name: str, edge: str = "") -> str:
    return safe_id(f"piece.{name}" + (f".{edge}" if edge else ""))
