"""The middle of a garment whose hands were altered apart: both hands give half, by an alteration of their own.

A note for one hand may make its middle longer than the other's, where the two are sewn together. Each hand then
takes half of the difference as a cutter would: a leg at the centre of its waist, a body by a wedge at its waist.
So levels, seams and bands of both follow, and nothing else is moved.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping

from drafting.draft.centres import middle_said, middles
from drafting.draft.draft import Draft, EdgeRef
from drafting.draft.piece import Piece
from drafting.draft.roles import EdgeRole
from drafting.fitting.note import AmountAs, AtEdge, Note, NoteKind, NoteSide, NoteState, Verb
from drafting.ground.findings import Finding

MET = 0.01
"""mm: middles that differ by no more meet."""

NEARLY = 0.1
"""mm: middles that differ by more after all rounds were not made to meet (half of what a seam may be out)."""

ROUNDS = 4
"""How often both hands are drafted again until their middles meet (ours: two do on most)."""

CROTCH = frozenset({EdgeRole.CROTCH, EdgeRole.FLY})
CENTRES = frozenset({EdgeRole.CENTRE, EdgeRole.CENTRE_SEAM})

Shared = Mapping[EdgeRef, float]
"""By how much (mm) the left hand is made shorter at a place, and the right longer, for their middles to meet."""


def middles_apart(left: Draft, right: Draft) -> dict[EdgeRef, float]:
    """Return by how much (mm) the left hand's middle is longer than the right's, by the edge that gives."""
    found: dict[EdgeRef, float] = {}
    for name, edge in middles(left):
        place = _taken_at(left[name], edge)
        if place is not None and name in right and edge in right[name]:
            more = _long(left[name], edge) - _long(right[name], edge)
            if abs(more) > MET:
                found[name, place] = more
    return found


def _taken_at(piece: Piece, edge: str) -> str | None:
    """Return the edge at which a note gives length to a middle of the garment's own cloth, or None."""
    if piece.material:
        return None
    if piece[edge].role in CROTCH:
        return next((one.name for one in piece.edges if one.role is EdgeRole.WAIST), None)
    role = piece[edge].role
    takes = role is EdgeRole.CENTRE_SEAM or any(one.role is EdgeRole.WAIST for one in piece.edges)
    return edge if role in CENTRES and takes else None


def _long(piece: Piece, edge: str) -> float:
    """Return how long a middle is, mm: a crotch with the fly in which it runs on."""
    own = CROTCH if piece[edge].role in CROTCH else frozenset()
    return math.fsum(one.length for one in piece.edges if one.name == edge or one.role in own)


def meeting(given: Shared, garment: str) -> tuple[tuple[Note, ...], tuple[Note, ...]]:
    """Return the notes of the left hand and of the right that make their middles meet."""
    left = tuple(_note(garment, ref, -by) for ref, by in given.items())
    right = tuple(_note(garment, ref, by) for ref, by in given.items())
    return left, right


def _note(garment: str, ref: EdgeRef, longer: float) -> Note:
    return Note(
        garment=garment,
        side=NoteSide.BOTH,
        where=AtEdge(*ref),
        verb=Verb.LENGTHEN if longer > 0 else Verb.SHORTEN,
        amount=abs(longer),
        counted=AmountAs.TOTAL,
        kind=NoteKind.STYLE,
        state=NoteState.PINNED,
    )


def told_middles(left: Draft, right: Draft, given: Shared) -> Iterator[Finding]:
    """Yield what is to be said of middles that were made to meet, with the lengths that came out first."""
    for name, edge in middles(left):
        if _taken_at(left[name], edge) is not None and (name, _taken_at(left[name], edge)) in given:
            yield middle_said(name, edge, _long(left[name], edge), _long(right[name], edge))
