"""What the pointer finds: each edge's name, lengths and partner, ready in the picture.

An edge is a wide unseen line over the one that is drawn, with its words beside it in one group;
the edges of a seam share a group. So the style sheet alone, by `:hover`, shows the words of the edge
under the pointer and lights every edge of its seam. The edge looked at (`View.edge`) is marked
the same way by a class.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from html import escape

from drafting.checks.words import capital, chain_words, edge_words
from drafting.costume.garment import MadeGarment
from drafting.draft.draft import Draft, EdgeRef, Seam
from drafting.draft.pattern import CutPiece
from drafting.draft.piece import Edge, EdgeKind
from drafting.export.screen import move_attribute, screen_path
from drafting.export.svg import FONT
from drafting.ground.frozen import freeze
from drafting.ground.remembered import remembered
from drafting.ground.units import LengthUnit, show_length
from drafting.notebook.picture.view import Frame
from drafting.sheet.overview import KEPT, Overview

KINDS = {
    EdgeKind.FOLD: "on the fold",
    EdgeKind.HEM: "a hem",
    EdgeKind.OPENING: "an opening",
    EdgeKind.FREE: "not sewn to another edge",
}

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
    """Where the words go, and the path of each edge with how far it is moved on the page."""

    edges: Mapping[EdgeRef, Edge]
    unit: LengthUnit
    at: tuple[float, float]
    em: float
    paths: Mapping[EdgeRef, str]
    looked: EdgeRef

    def __post_init__(self) -> None:
        freeze(self, "edges", "paths")

    def words(self, line: int, text: str) -> str:
        x, y = self.at
        return f'<text class="said" x="{x:.1f}" y="{y + 1.3 * line * self.em:.1f}">{escape(text)}</text>'

    def edge(self, ref: EdgeRef) -> str:
        looked = " looked" if ref == self.looked else ""
        said = self.words(0, edge_line(self.edges[ref], ref, self.unit))
        name = ".".join(ref)
        return f'<g class="edge{looked}" data-edge="{name}"><path class="hit" {self.paths[ref]}/>{said}</g>'


def seam_groups(garment: MadeGarment, page: Overview, frame: Frame, unit: LengthUnit, edge: str) -> str:
    """Return the groups of every seam, and of every edge that is in none; `edge` is looked at."""
    draft = garment.draft
    paths = {
        (item.cut_piece.piece.name, name): f'd="{path}" {move_attribute(item.by, page.height)}'
        for item in page.laid
        for name, path in _hits(item.cut_piece).items()
    }
    piece, _, name = edge.partition(".")
    x = frame.box[0] + 0.8 * frame.em
    y = page.height - frame.box[1] - frame.foot + 1.3 * frame.em
    drawn = _Page(edges_of(draft), unit, (x, y), frame.em, paths, (piece, name))
    head = f'<g class="seams" font-family="{FONT}" font-size="{frame.em:.2f}">'
    return f"{head}{''.join(_groups(drawn, draft.seams))}</g>"


@remembered(KEPT)
def _hits(cut_piece: CutPiece) -> dict[str, str]:
    """Return the path of every edge by name, as drafted; a tenth of a mm is enough for a pointer."""
    return {edge.name: screen_path(edge.path, places=1) for edge in cut_piece.piece.edges}


def _groups(page: _Page, seams: Iterable[Seam]) -> Iterator[str]:
    left = dict.fromkeys(page.paths)
    for seam in seams:
        refs = [ref for ref in dict.fromkeys((*seam.a, *seam.b)) if ref in left]
        if refs:
            said = page.words(1, seam_line(page.edges, seam, page.unit))
            yield _group(page, refs, said)
            for ref in refs:
                del left[ref]
    for ref in left:
        said = capital(KINDS.get(page.edges[ref].kind, "not sewn"))
        yield _group(page, [ref], page.words(1, said))


def _group(page: _Page, refs: list[EdgeRef], said: str) -> str:
    looked = " looked" if page.looked in refs else ""
    return f'<g class="seam{looked}">{"".join(map(page.edge, refs))}{said}</g>'
