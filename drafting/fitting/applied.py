"""A draft with the notes of a fitting carried out on it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from drafting.checks.girths import covered_girth
from drafting.draft.draft import Draft
from drafting.draft.roles import EdgeRole
from drafting.fitting.alteration import Alteration
from drafting.fitting.amounts import on_one_hand
from drafting.fitting.found import Found, places_of
from drafting.fitting.known import ALTERATIONS
from drafting.fitting.lines.altered import SEEN, Altered
from drafting.fitting.lines.fair import DrawnFair, drawn_fair
from drafting.fitting.lines.lengths import LENGTH_CHOSEN
from drafting.fitting.note import Done, Moved, Note, NoteSide, Verb
from drafting.geometry.area import is_simple
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.names import name_in_words


@dataclass(frozen=True)
class Fitted:
    """A draft that follows its notes, what each of them moved, and what is to be said of it.

    `left` are notes whose place the draft does not have: a later part may draw it.
    """

    draft: Draft
    done: tuple[Done, ...] = ()
    findings: tuple[Finding, ...] = ()
    left: tuple[Note, ...] = ()


def fitted(draft: Draft, notes: Sequence[Note]) -> Fitted:
    """Return the draft of one hand with each of its notes carried out, in the order given.

    The notes are those of that hand alone. A note whose place the draft lacks is left for a later part;
    one that no alteration answers, or that cannot be carried out, is said and changes nothing.
    """
    given, done = draft, list[Done]()
    findings: list[Finding] = []
    left: list[Note] = []
    for note in notes:
        places = places_of(draft, note)
        if not places:
            left.append(note)
            continue
        if note.verb is Verb.LEAVE:
            done.append(Done(note, ()))
            continue
        asked = list(alterations_meant(note, places))
        if not asked and _may_come(note):
            left.append(note)
        elif not asked:
            findings.append(_unknown(note, hem=any(p.edge and p.edge.role is EdgeRole.HEM for p in places)))
        for known, place in asked[:1]:
            if known.middle and note.side is not NoteSide.BOTH:
                findings.append(_middle(note, known))
                continue
            try:
                found = _without_crossing(draft, known.alter(place, _signed(note, known)))
            except DraftError as error:
                findings.append(_refused(note, known, error))
                continue
            done.append(Done(note, (*_round(draft, found.draft), *_once(found.moved))))
            draft = found.draft
    fair = drawn_fair(given, draft) if draft is not given else DrawnFair(draft)
    return Fitted(fair.draft, tuple(done), (*findings, *fair.findings), tuple(left))


def unplaced(notes: Iterable[Note]) -> Iterator[Finding]:
    """Yield what is to be said of notes whose place no part of the garment has, or for which none is altered."""
    for note in notes:
        yield _unknown(note)


def alterations_meant(note: Note, places: Sequence[Found]) -> Iterator[tuple[Alteration, Found]]:
    """Yield each alteration that a note means, with its place; the first is the one."""
    for known in ALTERATIONS:
        if note.verb in known.more | known.less:
            for place in places:
                if any(test(place) for test in known.meant):
                    yield known, place


def _without_crossing(before: Draft, found: Altered) -> Altered:
    """Return what was altered; raises `DraftError` where an outline crosses itself that did not."""
    for piece in found.draft.pieces:
        given = before[piece.name]
        if piece is not given and not is_simple(piece.outline) and is_simple(given.outline):
            raise DraftError(
                f"the outline of the {name_in_words(piece.name)} would cross itself",
                turn="note less, or at the seam beside it",
            )
    return found


def _may_come(note: Note) -> bool:
    """Return whether a later part of the garment may have what a note by level or measure means."""
    return not hasattr(note.where, "piece")


def _signed(note: Note, known: Alteration) -> float:
    amount = on_one_hand(note, known.counts)
    return amount if note.verb in known.more else -amount


def _round(before: Draft, after: Draft) -> Iterator[Moved]:
    """Yield each girth of this hand that an alteration moved; it belongs to no piece."""
    for level in dict.fromkeys(girth.level for girth in before.girths):
        old, new = covered_girth(before, level), covered_girth(after, level)
        if old is not None and new is not None and abs(new - old) > SEEN:
            yield Moved("", level, old, new, "at the fitting")


def _once(moved: Iterable[Moved]) -> tuple[Moved, ...]:
    """Return each edge that was moved once: from its first length to its last."""
    found: dict[tuple[str, str], Moved] = {}
    for one in moved:
        key = (one.piece, one.edge)
        first = found.get(key, one)
        found[key] = Moved(piece=one.piece, edge=one.edge, before=first.before, after=one.after, why=first.why)
    return tuple(found.values())


LENGTHS = (Verb.LENGTHEN, Verb.SHORTEN, Verb.RAISE, Verb.LOWER)


def _told(note: Note) -> str:
    return f"Fitting note at {name_in_words(str(note.where))}: {note.verb} {told(note.amount)}"


def _unknown(note: Note, *, hem: bool = False) -> Finding:
    length = f"A length is a choice here: {LENGTH_CHOSEN}"
    other = "Draw it by hand, or note it at a seam, a level or a measure"
    said = (
        f"{_told(note)}: no alteration of the line is known for it on this garment. "
        f"{length if hem and note.verb in LENGTHS else other}"
    )
    return Finding("fitting", "warning", str(note.where), None, None, said)


def _middle(note: Note, known: Alteration) -> Finding:
    said = (
        f"{_told(note)} ({known.name}): it moves the middle, "
        'which both hands have in common; note it for both (side = "both")'
    )
    return Finding("fitting", "warning", str(note.where), note.amount, None, said)


def _refused(note: Note, known: Alteration, error: DraftError) -> Finding:
    said = f"{_told(note)} ({known.name}): {error.sentence}"
    return Finding("fitting", "warning", str(note.where), note.amount, None, said)
