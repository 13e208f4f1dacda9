"""Which pieces of a draft are sewn into the mesh, what lies behind them, and on which hands.

A garment is halved where its two sides are one draft; a draft that names its hands is whole, and so is one all
of whose pieces are cut whole.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from drafting.draft.by_role import is_shell
from drafting.draft.draft import Draft, EdgeRef, Seam
from drafting.draft.piece import Piece
from drafting.draft.roles import PieceRole
from drafting.draft.two_sides import both_hands


@dataclass(frozen=True)
class SewnParts:
    """The pieces that are meshed, the others, and whether the mesh is the left half alone."""

    draft: Draft
    shell: tuple[Piece, ...]
    behind: tuple[Piece, ...]
    halved: bool

    @property
    def seams(self) -> list[Seam]:
        """The seams between pieces that are meshed; what a bearer carries hangs on the fall buttoned over it."""
        names = {piece.name for piece in self.shell}
        falls = {p.name: p.lines[0] for p in self.behind if p.role is PieceRole.BEARER and p.lines}

        def over(refs: tuple[EdgeRef, ...]) -> tuple[EdgeRef, ...]:
            return tuple((falls.get(piece, piece), edge) for piece, edge in refs)

        sewn = [replace(s, a=over(s.a), b=over(s.b)) for s in self.draft.seams if not self._within(falls, s)]
        return [s for s in sewn if {p for p, _ in (*s.a, *s.b)} <= names]

    @staticmethod
    def _within(falls: Mapping[str, str], seam: Seam) -> bool:
        """Return whether a seam is a bearer's own, as its darts are."""
        return {piece for piece, _ in (*seam.a, *seam.b)} <= set(falls)


def sewn_parts(draft: Draft) -> SewnParts:
    """Return what of a draft is sewn; a draft with a piece for one hand only is made whole."""
    shell = tuple(piece for piece in draft.pieces if is_shell(piece))
    if any(piece.hand for piece in shell) and any(piece.pair for piece in shell):
        left, right = (_of_hand(draft, hand) for hand in ("left", "right"))
        draft = both_hands(left, right)
        shell = tuple(piece for piece in draft.pieces if is_shell(piece))
    behind = tuple(piece for piece in draft.pieces if piece not in shell)
    halves = any(piece.pair or piece.fold_edge for piece in shell)
    return SewnParts(draft, shell, behind, halves and not any(piece.hand for piece in shell))


def _of_hand(draft: Draft, hand: str) -> Draft:
    """Return the draft as one hand has it."""
    pieces = tuple(p for p in draft.pieces if p.hand in ("", hand))
    names = {piece.name for piece in pieces}
    seams = tuple(s for s in draft.seams if {p for p, _ in (*s.a, *s.b)} <= names)
    return replace(draft, pieces=pieces, seams=seams)
