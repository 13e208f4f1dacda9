"""Seams between chains of edges, and the `Draft` that holds pieces and seams."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from typing import Literal

from drafting.draft.piece import Edge, Piece
from drafting.draft.roles import NotchKind, SeamKind
from drafting.ground.findings import Finding
from drafting.ground.frozen import freeze

EdgeRef = tuple[str, str]
"""(piece, edge)."""

Corner = Literal["smooth", "square"] | None
"""What two joined corners must make: 180 together, 90 on one piece alone, or nothing."""


@dataclass(frozen=True)
class Seam:
    """Chain `a` is sewn to chain `b`.

    `a` lists whole edges in the order they run; `b` likewise in the order that meets `a` walked
    backwards: the first edge of `b` meets the first of `a`, and each of them runs against it, as
    both outlines are anticlockwise. `ease` (mm) is a minus b on the stitching line. `start` and
    `end` say what the corners at the two ends of `a` must make. `eased` is the part of `a`
    (from, to, in mm from its start) that holds the ease. `kind` says what seam it is.
    """

    name: str
    a: tuple[EdgeRef, ...]
    b: tuple[EdgeRef, ...]
    ease: float = 0.0
    start: Corner = "smooth"
    end: Corner = "smooth"
    eased: tuple[float, float] | None = None
    notches: tuple[SeamNotch, ...] = ()
    kind: SeamKind = SeamKind.PLAIN


@dataclass(frozen=True, slots=True)
class SeamNotch:
    """A pair of facing notches: `a` and `b` mm from the seam's start along each chain."""

    name: str
    a: float
    b: float
    count: int = 1
    kind: NotchKind = NotchKind.PLAIN


@dataclass(frozen=True, slots=True)
class Girth:
    """One level's account, mm: body, what was asked for (layers + ease), what was settled.

    `limb` says that it goes round one arm or leg: pieces cut as a pair then serve both; `width` that
    it is measured across, not round. `inside` is how much of what its measure goes between it leaves bare on
    purpose, mm, both ends together: an armhole that is cut in.
    """

    level: str
    body: float
    asked_ease: float
    settled_ease: float
    side: str = ""
    stretch_used: float = 0.0
    limb: bool = False
    width: bool = False
    inside: float = 0.0


@dataclass(frozen=True, slots=True)
class Notion:
    """Something to buy and cut besides cloth: elastic, buttons, boning, thread.

    `where` names the piece and edge it goes to, `cut_length` is in mm (None where it is counted).
    `kind` is the sort to ask for (a flat button, spiral boning), `size` its diameter or width, mm.
    `piece` and `edges` are what it is sewn to, where that is a piece, or edges, of the draft; `loop` is
    the length of an elastic once joined, slack, or of a bone joined to a ring, mm. `mark` is the named mark of the
    piece that it is sewn on at; `hand` the wearer's one side that it is sewn to, where no mark says so.
    """

    what: str
    where: str
    count: int
    cut_length: float | None = None
    note: str = ""
    kind: str = ""
    size: float | None = None
    piece: str = ""
    edges: tuple[EdgeRef, ...] = ()
    loop: float | None = None
    mark: str = ""
    hand: str = ""


@dataclass(frozen=True)
class Draft:
    """Pieces on their stitching lines, the seams between them, and what was settled on the way.

    `facts` are measured results (mm, degrees) that travel with the draft; `findings` what a named
    rule settled; `chains` names stretches of outline that later blocks fit onto (`front_armhole`),
    each as edges in the order they run; `uneven` says that each hand was drafted to its own measures.
    """

    pieces: tuple[Piece, ...] = ()
    seams: tuple[Seam, ...] = ()
    girths: tuple[Girth, ...] = ()
    findings: tuple[Finding, ...] = ()
    facts: Mapping[str, float] = field(default_factory=dict)
    chains: Mapping[str, tuple[EdgeRef, ...]] = field(default_factory=dict)
    notions: tuple[Notion, ...] = ()
    uneven: bool = False

    def __post_init__(self) -> None:
        freeze(self, "facts", "chains")

    def __add__(self, other: Draft) -> Draft:
        """Put two drafts together."""
        return Draft(
            self.pieces + other.pieces,
            self.seams + other.seams,
            girths=self.girths + other.girths,
            findings=self.findings + other.findings,
            facts={**self.facts, **other.facts},
            chains={**self.chains, **other.chains},
            notions=self.notions + other.notions,
            uneven=self.uneven or other.uneven,
        )

    def __getitem__(self, name: str) -> Piece:
        for piece in self.pieces:
            if piece.name == name:
                return piece
        raise KeyError(f"no piece {name!r}; there are {[p.name for p in self.pieces]}")

    def __contains__(self, name: str) -> bool:
        return any(piece.name == name for piece in self.pieces)

    def edge(self, ref: EdgeRef) -> Edge:
        return self[ref[0]][ref[1]]

    def with_pieces(self, pieces: Iterable[Piece]) -> Draft:
        """Return the draft with the pieces of these names replaced."""
        new = {piece.name: piece for piece in pieces}
        return replace(self, pieces=tuple(new.get(p.name, p) for p in self.pieces))


def elastic_in(draft: Draft, ref: EdgeRef) -> Notion | None:
    """Return the elastic that an edge is turned over, or None."""
    return next((one for one in draft.notions if one.what == "elastic" and ref in one.edges), None)
