"""Notes followed from fitting to fitting: what one place still asks for, and what contradicts itself.

A note that a later fitting says again is the same note: carried over (`seen`, `on paper`) or closed
(`right`) it adds nothing; pinned again or still wrong it adds its amount; too much takes it back. So is one that
says it of one hand where both were noted, or of the same place by its other name.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import combinations

from drafting.body.dimensions import dimension_name
from drafting.fitting.file import FittingFile
from drafting.fitting.limits import not_carried_out, sent_back, under_least
from drafting.fitting.note import Done, Note, NoteKind, NoteSide, NoteState, Verb
from drafting.ground.errors import Fault

KEPT = (NoteKind.BODY, NoteKind.STYLE)
"""Kinds that change a draft: one goes with the wearer, one with the costume."""

SAME = (NoteState.SEEN, NoteState.ON_PAPER, NoteState.RIGHT)
"""States in which a note that a later fitting repeats is only looked at again."""


@dataclass(frozen=True)
class Thread:
    """What one place asks for by now: the note with its amount summed up, and each note said of it.

    `note` stands where the first that counts was written, in the state that last asked for something; `mm` is
    its amount along the verb first said. `left` are the notes of it that move nothing, and why;
    `counts` says whether any other does.
    """

    note: Note
    said: tuple[Note, ...]
    mm: float = 0.0
    left: tuple[Done, ...] = ()
    counts: bool = False

    @property
    def closed(self) -> bool:
        """Whether each hand that it is about was seen again and right."""
        last = [next(one for one in reversed(self.said) if share_a_hand(one.side, hand)) for hand in self.hands]
        return all(one.state == NoteState.RIGHT for one in last)

    @property
    def hands(self) -> tuple[NoteSide, ...]:
        """The hands that it is about."""
        side = self.said[0].side
        return (NoteSide.LEFT, NoteSide.RIGHT) if side is NoteSide.BOTH else (side,)


def always_counts(note: Note) -> str:
    """Return "": nothing is said against a note before it is read with the others."""
    return ""


def followed(
    fittings: Sequence[FittingFile], left_out: Callable[[Note], str] = always_counts
) -> tuple[Thread, ...]:
    """Return what all fittings, in the order held, ask for by now, each place once.

    `left_out` says why a note adds nothing, whatever else was noted there; "" where it does.
    """
    found: list[Thread] = []
    for note in (note for fitting in fittings for note in fitting.notes):
        before = [at for at, thread in enumerate(found) if _said_again(thread.said[0], note)]
        same = next((at for at in before if _key(found[at].said[0]) == _key(note)), None)
        if note.state in SAME and before:
            for at in before:
                found[at] = replace(found[at], said=(*found[at].said, note))
        elif same is not None:
            found[same] = _again(found[same], note, left_out(note))
        else:
            found.append(_begun(note, left_out(note), again=bool(before)))
    return tuple(found)


def _key(note: Note) -> tuple[object, ...]:
    garment = "" if note.kind == NoteKind.BODY else note.garment
    return note.kind, garment, note.side, note.where, note.verb, note.at, note.counted


def _said_again(old: Note, note: Note) -> bool:
    """Return whether a note says the same thing again: another way counted, of one hand, or by another name."""
    if _key(old)[:-1] == _key(note)[:-1]:
        return True
    closing = (NoteState.RIGHT, NoteState.TOO_MUCH)
    alike = _key(old)[:2] == _key(note)[:2] or (note.state in closing and _either_keeps(old, note))
    later = old.spot.file != note.spot.file
    return (
        later
        and alike
        and old.verb == note.verb
        and share_a_hand(old.side, note.side)
        and _place(old) == _place(note)
    )


def _either_keeps(one: Note, other: Note) -> bool:
    """Return whether body or style remembers both, on one garment where neither goes with the body."""
    garment = one.garment == other.garment or NoteKind.BODY in (one.kind, other.kind)
    return garment and {one.kind, other.kind} <= set(KEPT)


def share_a_hand(one: NoteSide, other: NoteSide) -> bool:
    """Return whether two sides have a hand in common."""
    return NoteSide.BOTH in (one, other) or one is other


def _begun(note: Note, why: str, *, again: bool) -> Thread:
    """Return the thread of a note that stands first; its place may have been said in another way before."""
    why = why or (not_carried_out(note) if note.kind in KEPT else "")
    back = again and note.state == NoteState.TOO_MUCH
    if back and note.verb.reverse is None:
        why = (
            why or f"say how much of it is right in all, at the first note; {note.verb} has no way back of its own"
        )
    if why:
        return Thread(note, (note,), left=(Done(note, said=f"{note.asks}: {why}", carried=False),))
    return _summed(Thread(note, (note,)), note, -note.amount if back else note.amount)


def _again(thread: Thread, note: Note, why: str) -> Thread:
    """Return a thread with one more note said of it; what is taken back too far turns round."""
    summed = _summed(thread, note, thread.mm + (-note.amount if note.state == NoteState.TOO_MUCH else note.amount))
    why = why or (under_least(note) if note.kind in KEPT else "")
    of = note
    if not why and note.state == NoteState.TOO_MUCH and not thread.counts and not_carried_out(thread.said[0]):
        why = "nothing was moved there, so nothing is taken back"
    if not why and note.kind in KEPT and sent_back(summed.note):
        of = replace(summed.note, spot=note.spot)
        why = not_carried_out(of) + (WITH_EARLIER if thread.counts else "")
    if why:
        done = Done(of, said=f"{note.asks}: {why}", carried=False)
        return replace(thread, said=(*thread.said, note), left=(*thread.left, done))
    return replace(summed, said=(*thread.said, note))


WITH_EARLIER = "; so much it is with what was noted there before, and that stays as it was"


def _summed(thread: Thread, note: Note, mm: float) -> Thread:
    """Return a thread whose notes come to an amount, along the verb first said."""
    first = thread.said[0]
    mm = mm if first.verb.reverse else max(mm, 0.0)
    verb = first.verb if mm >= 0 else first.verb.reverse or first.verb
    spot = thread.note.spot if thread.counts else note.spot
    return replace(
        thread, note=replace(first, amount=abs(mm), verb=verb, state=note.state, spot=spot), mm=mm, counts=True
    )


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
