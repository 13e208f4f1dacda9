"""What the pointer finds: each edge's name, lengths and partner, ready in the picture.

An edge is a wide unseen line over the one that is drawn, with its words beside it in one group;
the edges of a seam share a group. So the style sheet alone, by `:hover`, shows the words of the edge
under the pointer and lights every edge of its seam. The edge looked at (`View.edge`) is marked
the same way by a class.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from drafting.checks.words import capital, chain_words, edge_words
from drafting.costume.garment import MadeGarment
from drafting.draft.draft import Draft, EdgeRef, Seam
from drafting.draft.pattern import CutPiece
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.export.svg_writer import (
    FONT,
    Pen,
    Svg,
    attribute,
    caption,
    group,
    move_by,
    number,
    path_data,
    path_element,
)
from drafting.ground.frozen import freeze
from drafting.ground.remembered import remembered
from drafting.ground.units import LengthUnit, show_length
from drafting.notebook.picture.view import Frame
from drafting.sheet.overview import Overview
from drafting.sheet.shown_piece import KEPT

KINDS = {
    EdgeKind.FOLD: "on the fold",
    EdgeKind.HEM: "a hem",
    EdgeKind.OPENING: "an opening",
    EdgeKind.FREE: "not sewn to another edge",
}

BELOW = attribute("y", "1.3em")

HIT = Pen(places=1, short=False)
"""A tenth of a mm is enough for a pointer."""

FLAT = 0.05
"""mm: a smaller ease is none; the eye reads a tenth of a mm at best (ours)."""


def edge_lines(draft: Draft, ref: EdgeRef, unit: LengthUnit) -> tuple[str, ...]:
    """Return what is to be said of an edge: its name and lengths, then its seam or its kind."""
    edges = edges_of(draft)
    seam = next((s for s in draft.seams if ref in s.a or ref in s.b), None)
    edge = edges[ref]
    second = seam_line(edges, seam, unit) if seam else capital(KINDS.get(edge.kind, "not sewn"))
    return edge_line(edge, ref, unit), second


def edges_of(draft: Draft) -> dict[EdgeRef, Edge]:
    """Return every edge of a draft by its name."""
    return {(piece.name, edge.name): edge for piece in draft.pieces for edge in piece.edges}


def edge_line(edge: Edge, ref: EdgeRef, unit: LengthUnit) -> str:
    """Return `Front armhole: 24.3 cm long, sewn length 24.3 cm`."""
    long, sewn = show_length(edge.length, unit), show_length(edge.sewn_length, unit)
    return f"{capital(edge_words(ref))}: {long} long, sewn length {sewn}"


def seam_line(edges: Mapping[EdgeRef, Edge], seam: Seam, unit: LengthUnit) -> str:
    """Return both chains of a seam with their sewn lengths, and the ease between them."""
    a_sewn, b_sewn = (sum(edges[ref].sewn_length for ref in side) for side in (seam.a, seam.b))
    if seam.a == seam.b:
        return f"Sewn to the same edge of the other hand: {show_length(a_sewn, unit)}, no ease"
    a, b = chain_words(seam.a, seam.b), chain_words(seam.b, seam.a)
    ease = a_sewn - b_sewn
    said = f"{show_length(abs(ease), unit)} ease, in the {a if ease > 0 else b}"
    return f"Sewn: {a} {show_length(a_sewn, unit)} to {b} {show_length(b_sewn, unit)}; " + (
        "no ease" if abs(ease) < FLAT else said
    )


@dataclass(frozen=True)
class _Page:
    """The line and the words of each edge, and the edge looked at."""

    edges: Mapping[EdgeRef, Edge]
    unit: LengthUnit
    hits: Mapping[EdgeRef, Svg]
    said: Mapping[EdgeRef, tuple[Svg, str]]
    looked: EdgeRef

    def __post_init__(self) -> None:
        freeze(self, "edges", "hits", "said")

    def edge(self, ref: EdgeRef) -> Svg:
        said, name = self.said[ref]
        return group("edge looked" if ref == self.looked else "edge", (self.hits[ref], said), name)


def seam_groups(garment: MadeGarment, page: Overview, frame: Frame, unit: LengthUnit, edge: str) -> Svg:
    """Return the groups of every seam, and of every edge that is in none; `edge` is looked at.

    The whole is moved to where the words stand; each edge is moved back to its own place.
    """
    draft = garment.draft
    x = frame.box[0] + 0.8 * frame.em
    y = page.height - frame.box[1] - frame.foot + 1.3 * frame.em
    hits: dict[EdgeRef, Svg] = {}
    for item in page.laid:
        move = attribute("transform", move_by(item.by - complex(x, -y), page.height))
        for ref, data in _hits(item.cut_piece).items():
            hits[ref] = path_element("hit", data, move)
    said = {ref: row for piece in draft.pieces for ref, row in _said(piece, unit).items()}
    piece, _, name = edge.partition(".")
    drawn = _Page(edges_of(draft), unit, hits, said, (piece, name))
    place = attribute("transform", move_by(complex(x, -y)))
    looks = attribute("font-family", FONT) + attribute("font-size", number(frame.em, 2))
    return group("seams", _groups(drawn, draft.seams), looks + place)


@remembered(KEPT)
def _hits(cut_piece: CutPiece) -> dict[EdgeRef, str]:
    """Return the path commands of every edge, as drafted."""
    piece = cut_piece.piece
    return {(piece.name, edge.name): path_data(edge.path, HIT) for edge in piece.edges}


@remembered(KEPT)
def _said(piece: Piece, unit: LengthUnit) -> dict[EdgeRef, tuple[Svg, str]]:
    """Return the words of every edge, and its name as an attribute."""
    found = {}
    for edge in piece.edges:
        ref = (piece.name, edge.name)
        said = caption("said", edge_line(edge, ref, unit))
        found[ref] = said, attribute("data-edge", ".".join(ref))
    return found


def _groups(page: _Page, seams: Iterable[Seam]) -> Iterator[Svg]:
    left = dict.fromkeys(page.hits)
    for seam in seams:
        refs = [ref for ref in dict.fromkeys((*seam.a, *seam.b)) if ref in left]
        if refs:
            yield _group(page, refs, seam_line(page.edges, seam, page.unit))
            for ref in refs:
                del left[ref]
    for ref in left:
        yield _group(page, [ref], capital(KINDS.get(page.edges[ref].kind, "not sewn")))


def _group(page: _Page, refs: list[EdgeRef], said: str) -> Svg:
    below = caption("said", said, BELOW)
    kind = "seam looked" if page.looked in refs else "seam"
    return group(kind, (*map(page.edge, refs), below))
