"""Amounts that are too small to be pinned truly, and amounts that are no matter of a seam any more."""

from __future__ import annotations

from drafting.fitting.measures import ADDS, measure_change
from drafting.fitting.note import AmountAs, AtMeasure, Note, Verb
from drafting.ground.lengths import told

LEAST = 3.0
"""mm: what is less is lost in the sewing (common practice)."""

MOST_AT_A_SEAM = 25.0
MOST_ROUND = 50.0
"""mm: beyond this the tape was wrong, not the seam (common practice)."""

WIDTHS = (Verb.TAKE_IN, Verb.LET_OUT)
UNMEASURED = (Verb.LEAVE, Verb.CLIP)


def not_carried_out(note: Note) -> str:
    """Return why a note is not carried out for its amount, or "" where it is."""
    if note.verb in UNMEASURED:
        return ""
    if under_least(note):
        return under_least(note)
    seam = note.verb in WIDTHS and note.counted != AmountAs.TOTAL
    if seam and note.amount > MOST_AT_A_SEAM:
        return f"{told(note.amount)} is over {told(MOST_AT_A_SEAM)} at one seam: {_tape(note)}"
    measured = isinstance(note.where, AtMeasure) and note.verb in ADDS
    size = abs(measure_change(note)) if measured else note.amount
    if size > MOST_ROUND:
        return f"{told(size)} is over {told(MOST_ROUND)} in all: {_tape(note)}"
    return ""


def under_least(note: Note) -> str:
    """Return why a note is too small to be sewn, or "" where it is not."""
    if note.verb in UNMEASURED or note.amount >= LEAST:
        return ""
    return f"{told(note.amount)} is under {told(LEAST)}: it is left as it is"


def sent_back(note: Note) -> bool:
    """Return whether a note moves nothing because it asks for more than a seam should give."""
    return note.amount >= LEAST and bool(not_carried_out(note))


def _tape(note: Note) -> str:
    what = str(note.where).replace("_", " ") if isinstance(note.where, AtMeasure) else "the body there"
    return f"nothing is moved; measure {what} again and put it in the wearer's file"
