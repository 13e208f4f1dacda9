"""Notes followed from fitting to fitting: what one place still asks for, and what contradicts itself.

A note that a later fitting says again is the same note: carried over (`seen`, `on paper`) or closed
(`right`) it adds nothing; pinned again or still wrong it adds its amount; too much takes it back.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import combinations

from drafting.body.dimensions import dimension_name
from drafting.fitting.file import FittingFile
from drafting.fitting.note import Note, NoteKind, NoteSide, NoteState, Verb
from drafting.ground.errors import Fault

KEPT = (NoteKind.BODY, NoteKind.STYLE)
"""Kinds that change a draft: one goes with the wearer, one with the costume."""

SAME = (NoteState.SEEN, NoteState.ON_PAPER, NoteState.RIGHT)
"""States in which a note that a later fitting repeats is only looked at again."""


@dataclass(frozen=True)
class Thread:
    """What one place asks for by now: the note with its amount summed up, and each note said of it."""

    note: Note
    said: tuple[Note, ...]

    @property
    def closed(self) -> bool:
        """Whether it was seen again and right."""
        return self.said[-1].state == NoteState.RIGHT


def followed(fittings: Sequence[FittingFile]) -> tuple[Thread, ...]:
    """Return what all fittings, in the order held, ask for by now, each place once."""
    found: dict[tuple[object, ...], Thread] = {}
    for note in (note for fitting in fittings for note in fitting.notes):
        key = _key(note)
        if note.state not in SAME:
            key = (*key, note.counted) if key in found and found[key].note.counted != note.counted else key
        old = found.get(key)
        found[key] = Thread(_begun(note, key), (note,)) if old is None else _again(old, note)
    return tuple(found.values())


def _key(note: Note) -> tuple[object, ...]:
    garment = "" if note.kind == NoteKind.BODY else note.garment
    return note.kind, garment, note.side, note.where, note.verb, note.at


def _begun(note: Note, key: tuple[object, ...]) -> Note:
    """Return a note that stands first at its place; counted another way than its elder it may take back."""
    again = len(key) > len(_key(note)) and note.state == NoteState.TOO_MUCH
    return replace(note, verb=note.verb.reverse or note.verb) if again else note


def _again(thread: Thread, note: Note) -> Thread:
    """Return a thread with one more note said of it; what is taken back too far turns round."""
    if note.state in SAME:
        amount = thread.note.amount
    else:
        amount = thread.note.amount + (-note.amount if note.state == NoteState.TOO_MUCH else note.amount)
    verb = thread.note.verb if amount >= 0 else thread.note.verb.reverse or thread.note.verb
    summed = replace(thread.note, amount=abs(amount), verb=verb, state=note.state)
    return Thread(summed, (*thread.said, note))


def contradictions(fitting: FittingFile) -> Iterator[Fault]:
    """Yield a fault for every two notes of one fitting that undo each other."""
    for one, other in combinations(fitting.notes, 2):
        if _undo(one, other):
            lines = f"lines {one.spot.line} and {other.spot.line}"
            yield other.spot.fault(
                f"{lines} contradict each other: {_short(one)}, and {_short(other)}",
                "keep the one that is meant; what was too much at a later fitting is said there",
            )


def _undo(one: Note, other: Note) -> bool:
    sides = {one.side, other.side}
    apart = sides == {NoteSide.LEFT, NoteSide.RIGHT}
    alike = one.garment == other.garment or NoteKind.BODY in (one.kind, other.kind)
    if apart or not alike or not {one.kind, other.kind} <= set(KEPT) or _place(one) != _place(other):
        return False
    return one.verb.reverse == other.verb or (one.verb != other.verb and Verb.LEAVE in (one.verb, other.verb))


def _place(note: Note) -> tuple[object, ...]:
    """Return where a note is, a level and the girth that is taken there as one place."""
    name = str(note.where).replace(" ", "_")
    return dimension_name(name) or name, note.at


def _short(note: Note) -> str:
    return f"{note.verb} {note.where} ({note.side}, {note.kind})"
