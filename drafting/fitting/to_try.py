"""From a sign to a note: which signs a garment can show, and what is tried for each cause on its own draft."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from drafting.draft.by_role import edges_as, is_shell, pieces_as
from drafting.draft.draft import Draft
from drafting.draft.roles import SLEEVES
from drafting.fitting.bands import GarmentSort, sort_of_garment
from drafting.fitting.note import AtEdge, AtLevel, AtMeasure, AtPiece, Note, NoteSide, NoteState, NoteWhere
from drafting.fitting.signs import FitSign, ToTry
from drafting.fitting.signs_above import SIGNS_ABOVE
from drafting.fitting.signs_below import SIGNS_BELOW

SIGNS: tuple[FitSign, ...] = (*SIGNS_ABOVE, *SIGNS_BELOW)


def signs_of(draft: Draft) -> Iterator[FitSign]:
    """Yield the signs that a garment can show, in the order in which it is looked at.

    >>> [sign.name for sign in signs_of(Draft())][:2]
    ['neck to armpit', 'below the neck']
    """
    sort, sleeved = sort_of_garment(draft), bool(pieces_as(draft, *SLEEVES))
    for sign in SIGNS:
        if sort in sign.sorts and (sleeved or not sign.sleeved):
            above = sort is not GarmentSort.WAISTED
            yield replace(sign, causes=tuple(cause for cause in sign.causes if above or not cause.above))


def note_to_try(attempt: ToTry, draft: Draft, garment: str, side: NoteSide = NoteSide.BOTH) -> Note | None:
    """Return what is tried as a note on this garment, or None where it has no such place."""
    where = _where(attempt, draft)
    if where is None:
        return None
    return Note(
        garment=garment,
        side=side,
        where=where,
        verb=attempt.verb,
        amount=attempt.mm,
        counted=attempt.counted,
        kind=attempt.kind,
        state=NoteState.SEEN,
    )


def _where(attempt: ToTry, draft: Draft) -> NoteWhere | None:
    if attempt.measure:
        return AtMeasure(attempt.measure)
    every = [piece for piece in draft.pieces if is_shell(piece)]
    shell = [piece for piece in every if attempt.piece in (None, piece.role)]
    if attempt.level is not None:
        drawn = any(level.kind is attempt.level for piece in draft.pieces for level in piece.levels)
        return AtLevel(attempt.level.value) if drawn else None
    if attempt.edges:
        found = ((piece, edge) for piece in (*shell, *every) for edge in edges_as(piece, *attempt.edges))
        return next((AtEdge(piece.base or piece.name, edge.base or edge.name) for piece, edge in found), None)
    return next((AtPiece(piece.base or piece.name) for piece in shell), None)
