"""A fitting file's text: begun, with one note more, with the last one taken back. What stands in it stays."""

from __future__ import annotations

import json
import re
from datetime import date

from drafting.fitting.note import Note
from drafting.ground.units import ShownUnit
from drafting.ground.written_lengths import written_length

HEAD = "[[notes]]"
BEGINS = re.compile(r"""\s*\[\[\s*(?:notes|"notes"|'notes')\s*\]\]""")
"""A line that begins a note, as any hand may write it."""


def begun(title: str, on: date | None, unit: ShownUnit) -> str:
    """Return the text of a fitting at which nothing was noted yet."""
    day = f"on = {on.isoformat()}\n" if on else ""
    return f'title = {json.dumps(title, ensure_ascii=False)}\n{day}unit = "{unit}"\n'


def with_note(text: str, note: Note, unit: ShownUnit) -> str:
    """Return a fitting's text with one note more, lengths in `unit`.

    >>> from drafting.fitting.note import AmountAs, AtEdge, NoteKind, NoteSide, NoteState, Verb
    >>> pinned = Note(
    ...     garment="shirt",
    ...     side=NoteSide.BOTH,
    ...     where=AtEdge("front", "side"),
    ...     verb=Verb.TAKE_IN,
    ...     amount=12.7,
    ...     counted=AmountAs.SEAM,
    ...     kind=NoteKind.STYLE,
    ...     state=NoteState.PINNED,
    ... )
    >>> with_note(begun("First", None, "in"), pinned, "in").splitlines()[-5:-2]
    ['verb = "take in"', 'amount = "1/2 in"', 'as = "seam"']
    """
    rows = [HEAD]
    if note.garment:
        rows.append(f'garment = "{note.garment}"')
    rows += [f'side = "{note.side}"', f'where = "{note.where}"']
    if note.at:
        rows.append(f'at = "{written_length(note.at.mm, unit)} from {note.at.end}"')
    rows.append(f'verb = "{note.verb}"')
    if note.amount:
        rows.append(f'amount = "{written_length(note.amount, unit)}"')
    rows += [f'as = "{note.counted}"', f'kind = "{note.kind}"', f'state = "{note.state}"']
    return f"{text.rstrip()}\n\n" + "\n".join(rows) + "\n"


def without_last(text: str) -> str:
    """Return a fitting's text without its last note."""
    rows = text.splitlines(keepends=True)
    heads = [number for number, row in enumerate(rows) if BEGINS.match(row)]
    return "".join(rows[: heads[-1]]).rstrip() + "\n" if heads else text
