"""The place of a note, found in a draft: what an alteration asks to know whether it is meant."""

from __future__ import annotations

from dataclasses import dataclass

from drafting.draft.draft import Draft, EdgeRef, Seam
from drafting.draft.piece import Edge, Piece
from drafting.draft.roles import Half, LevelKind
from drafting.fitting.lines.places import BEHIND, PARTS, height, lies_behind, part_pieces
from drafting.fitting.note import AtEdge, AtLevel, AtMeasure, AtPiece, FromEnd, Note


@dataclass(frozen=True)
class Found:
    """Where a note lies in a draft.

    `part` is "trunk", "sleeve", "leg", "skirt" or "" for any other piece; `edge` is None where the note names a
    piece, a `level` or a `measure`.
    """

    draft: Draft
    part: str
    piece: Piece | None = None
    edge: Edge | None = None
    level: str = ""
    measure: str = ""
    at: FromEnd | None = None

    @property
    def ref(self) -> EdgeRef:
        assert self.piece is not None
        assert self.edge is not None
        return self.piece.name, self.edge.name

    @property
    def behind(self) -> bool:
        """Return whether it lies on the back."""
        if self.piece is not None and self.edge is not None:
            return lies_behind(self.piece, self.edge)
        return self.piece is not None and self.piece.role in BEHIND

    @property
    def half(self) -> Half:
        """Return on which half of the body its edge lies."""
        return Half.NONE if self.edge is None else self.edge.half

    def seam(self) -> Seam | None:
        """Return the seam in which the edge lies, or None."""
        return next((s for s in self.draft.seams if self.ref in (*s.a, *s.b)), None)

    def height(self, kind: LevelKind) -> float | None:
        """Return the height at which the note lies: its own place on the edge, else that of a level."""
        if self.at is None or self.edge is None or self.piece is None:
            return height(part_pieces(self.draft, self.part or "trunk"), kind)
        before = self.piece.edges[self.piece.index(self.edge.name) - 1].name
        along = self.at.mm if self.at.end == before else self.edge.length - self.at.mm
        return self.edge.path.at(min(max(along, 0.0), self.edge.length)).imag


def places_of(draft: Draft, note: Note) -> tuple[Found, ...]:
    """Return every part of the garment in which a note has its place: none where the draft has none yet."""
    where = note.where
    if isinstance(where, AtEdge | AtPiece):
        if where.piece not in draft:
            return ()
        piece = draft[where.piece]
        if isinstance(where, AtPiece):
            return (Found(draft, part_of(draft, piece), piece),)
        return (
            (Found(draft, part_of(draft, piece), piece, piece[where.edge], at=note.at),)
            if where.edge in piece
            else ()
        )
    parts = [(part, part_pieces(draft, part)) for part in PARTS]
    if isinstance(where, AtLevel):
        return tuple(
            Found(draft, part, level=where.level)
            for part, pieces in parts
            if any(level.kind == where.level for p in pieces for level in p.levels)
        )
    assert isinstance(where, AtMeasure)
    return tuple(Found(draft, part, measure=where.measure) for part, pieces in parts if pieces)


def part_of(draft: Draft, piece: Piece) -> str:
    """Return of what part of a garment a piece is."""
    return next((part for part in PARTS if piece in part_pieces(draft, part)), "")
