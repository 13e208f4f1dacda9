"""Which pieces of a garment are shown: all, its shell, one of its parts, or one piece alone."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from drafting.checks.words import capital, plain
from drafting.draft.pattern import Pattern
from drafting.draft.piece import Piece
from drafting.draft.roles import COLLARS, FACINGS, SLEEVES, PieceRole

ALL, SHELL = "All pieces", "Shell only"

PART = "/"
"""Before the name of a part: no piece is called so, as its name is a file's name too."""

PARTS: dict[str, frozenset[PieceRole]] = {
    "Fronts and backs": frozenset(
        {PieceRole.FRONT, PieceRole.BACK, PieceRole.SIDE_FRONT, PieceRole.SIDE_BODY, PieceRole.PLAIN}
    ),
    "Sleeves": SLEEVES | {PieceRole.CUFF},
    "Collar": COLLARS | {PieceRole.LAPEL},
    "Tails": frozenset({PieceRole.TAIL, PieceRole.GODET}),
    "Facings and bands": FACINGS
    | {
        PieceRole.WAISTBAND,
        PieceRole.BAND,
        PieceRole.KNEE_BAND,
        PieceRole.PLACKET,
        PieceRole.CASING,
        PieceRole.FLY_SHIELD,
    },
}
"""What a part of a garment is called, and the roles of its pieces; a lining goes with what it lines."""


def shown_in(pattern: Pattern, what: str) -> Pattern:
    """Return the pattern with the pieces of a part ("/Sleeves"), with one piece, or ("") with all."""
    kept = tuple(cut for cut in pattern.pieces if _is_shown(cut.piece, what))
    return replace(pattern, pieces=kept) if what else pattern


def offered(pieces: Iterable[Piece]) -> dict[str, str]:
    """Return what can be shown: its words, by what `shown_in` is asked for; parts only where they are some."""
    pieces = list(pieces)
    parts = [SHELL, *PARTS]
    counts = {part: sum(_is_shown(piece, PART + part) for piece in pieces) for part in parts}
    some = {PART + part: part for part, count in counts.items() if 0 < count < len(pieces)}
    return {"": ALL, **some, **{piece.name: capital(plain(piece.name)) for piece in pieces}}


def _is_shown(piece: Piece, what: str) -> bool:
    if not what.startswith(PART):
        return what in ("", piece.name)
    part = what.removeprefix(PART)
    return not piece.material if part == SHELL else piece.role in PARTS.get(part, ())
