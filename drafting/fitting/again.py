"""Notes that say the same alteration of a garment by two names, as only its draft can tell.

The two edges of a seam are one place, so are the piece of one hand (`front-left`) and the piece with its side.
What a later fitting says of such a place is said again: it adds nothing where it is only looked at, and takes
back where it was too much.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from drafting.draft.draft import Draft
from drafting.fitting.applied import alterations_meant
from drafting.fitting.followers import FOLLOWERS, How
from drafting.fitting.found import Found, places_of
from drafting.fitting.note import Done, Note, NoteState
from drafting.fitting.threads import SAME, share_a_hand
from drafting.ground.names import name_in_words

Meaning = tuple[object, ...]
"""An alteration by its name, its place in the draft, and which way it goes."""


@dataclass(frozen=True)
class SaidAgain:
    """The notes that are left to carry out, and what was only looked at again."""

    notes: tuple[Note, ...]
    done: tuple[Done, ...]


def said_again(draft: Draft, notes: Sequence[Note]) -> SaidAgain:
    """Return notes of one garment, in the order held, without those that an earlier one of them says already."""
    kept: list[Note] = []
    done: list[Done] = []
    meant = {id(note): meaning(draft, note) for note in notes}
    for note in notes:
        before = [one for one in kept if one.spot.file != note.spot.file and share_a_hand(one.side, note.side)]
        again = meant[id(note)] is not None and any(meant[id(one)] == meant[id(note)] for one in before)
        if again and note.state in SAME:
            said = f"{note.verb} at {name_in_words(str(note.where))}: noted before, and looked at again"
            done.append(Done(note, said=said))
        elif again and note.state is NoteState.TOO_MUCH and note.verb.reverse:
            kept.append(replace(note, verb=note.verb.reverse))
            meant[id(kept[-1])] = meaning(draft, kept[-1])
        else:
            kept.append(note)
    return SaidAgain(tuple(kept), tuple(done))


def undone(draft: Draft, notes: Sequence[Note]) -> Iterator[tuple[Note, Note]]:
    """Yield every two notes of one fitting that undo each other, the later one second."""
    meant = [(note, meaning(draft, note)) for note in notes]
    for at, (note, mine) in enumerate(meant):
        for one, its in meant[:at]:
            against = mine and its and mine[:-1] == its[:-1] and mine[-1] != its[-1]
            if against and one.spot.file == note.spot.file and share_a_hand(one.side, note.side):
                yield one, note


def meaning(draft: Draft, note: Note) -> Meaning | None:
    """Return what a note means on this draft; None where no alteration answers it."""
    known, place = next(alterations_meant(note, places_of(draft, note)), (None, None))
    if known is None or place is None:
        return None
    return known.name, _where(note, place), note.at, note.verb in known.more


def _where(note: Note, place: Found) -> str:
    """Return the place of a note: its seam where both its edges are moved alike, else its edge; "" for no edge."""
    if place.edge is None:
        return ""
    seam = place.seam()
    both = seam is not None and FOLLOWERS[seam.kind] is How.TRUED
    return f"seam {seam.name}" if both and seam is not None else str(note.where)
