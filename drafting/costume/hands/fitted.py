"""The hands of a garment with its notes carried out: names that there are not, amounts too great, what is told.

Where a note moves a girth by more than a seam should give, it is left out and the maker sent to her tape.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from drafting.blocks import Block
from drafting.body import Body
from drafting.body.body import SIDES
from drafting.checks.girths import covered_girth
from drafting.costume.choices import Chosen
from drafting.costume.hands.both import both_drafted
from drafting.costume.wishes import Misfit
from drafting.draft.draft import Draft
from drafting.draft.named import edge_named, edge_of_hand, handed_name, of_hand, piece_named
from drafting.draft.piece import Edge, Piece
from drafting.fabric import Fabric
from drafting.fitting.again import said_again, undone
from drafting.fitting.applied import Fitted, unplaced
from drafting.fitting.limits import MOST_ROUND
from drafting.fitting.measures import amount_said
from drafting.fitting.moved_told import edges_moved, girths_moved
from drafting.fitting.note import AtEdge, AtPiece, Done, FromEnd, Moved, Note, NoteSide
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.ground.names import name_in_words
from drafting.ground.nearest import joined
from drafting.reading.style import CutWish

MOVED = 0.05
"""mm: a girth that moved by less was not moved (half of the last figure shown)."""


@dataclass(frozen=True)
class FittedHands:
    """The hands as their notes want them, what each note moved, and the notes that cannot be had."""

    hands: tuple[Draft, ...]
    done: tuple[Done, ...] = ()
    misfits: tuple[Misfit, ...] = ()
    findings: tuple[Finding, ...] = ()


def fitted_hands(
    body: Body, fabric: Fabric | None, block: Block, chosen: Chosen, notes: Sequence[Note]
) -> FittedHands:
    """Return the draft of both hands, or of each, with the notes carried out in their order.

    A note at a piece or an edge that there is not is a misfit, with its place in the maker's file. Raises
    `DraftError` where the garment cannot be drafted.
    """
    if not notes:
        return FittedHands(tuple(fit.draft for fit in both_drafted(body, fabric, block, chosen)))
    plain = both_drafted(body, fabric, block, chosen)
    notes = [_by_hand(plain[0].draft, note) for note in notes]
    unknown = tuple(_unknown(plain[0].draft, notes))
    gone = [_not_hers(note, error) for note, error in unknown if note.gives_way]
    stay = ((note.spot, error) for note, error in unknown if not note.gives_way)
    misfits = (*stay, *_contradicting(plain[0].draft, notes))
    lost = {spot for spot, _ in misfits} | {note.spot for note, _ in unknown}
    again = said_again(plain[0].draft, [note for note in notes if note.spot not in lost])
    fits, known, over = _drafted_with(body, fabric, block, chosen, again.notes)
    over = [*gone, *over]
    moved = _girths(plain, fits)
    if any(map(_too_much, moved)):
        each = {note: _girths(plain, both_drafted(body, fabric, block, chosen, [note])) for note in known}
        over += [_sent_back(note, girths) for note, girths in each.items() if any(map(_too_much, girths))]
        known = [note for note in known if note not in {one.note for one in over}]
        fits = both_drafted(body, fabric, block, chosen, known)
        moved = _girths(plain, fits)
    done = tuple(_told(known, fits, moved))
    return FittedHands(
        hands=tuple(fit.draft for fit in fits),
        done=(*done, *over, *again.done),
        misfits=misfits,
        findings=(*_said_of(fits), *map(_finding, (*(one for one in done if one.carried), *over, *again.done))),
    )


def _drafted_with(
    body: Body, fabric: Fabric | None, block: Block, chosen: Chosen, notes: Sequence[Note]
) -> tuple[list[Fitted], list[Note], list[Done]]:
    """Return the hands drafted, the notes carried out on them, and those that leave nothing to be drafted.

    They are left out and told, each by itself, and stop no other.
    """
    try:
        return both_drafted(body, fabric, block, chosen, notes), list(notes), []
    except DraftError:
        kept: list[Note] = []
        lost: list[Done] = []
    for note in notes:
        try:
            both_drafted(body, fabric, block, chosen, [*kept, note])
            kept.append(note)
        except DraftError as error:
            said = f"{amount_said(note)} at {name_in_words(str(note.where))} is not carried out: {error.sentence}"
            lost.append(Done(note, said=said, carried=False))
    return both_drafted(body, fabric, block, chosen, kept), kept, lost


def before_style(note: Note, cuts: Sequence[CutWish]) -> Note:
    """Return the note at a piece that a style line cuts off, as one at the piece that it is cut from.

    Notes are carried out before style: what is cut off goes with it. One at the style line itself is left.
    """
    for cut in reversed(cuts):
        where = note.where
        if not isinstance(where, AtEdge | AtPiece) or (isinstance(where, AtEdge) and where.edge == cut.edge):
            return note
        names = {cut.name: cut.piece} | {handed_name(cut.name, s): handed_name(cut.piece, s) for s in SIDES}
        if where.piece in names:
            note = replace(note, where=replace(where, piece=names[where.piece]))
    return note


def _by_hand(draft: Draft, note: Note) -> Note:
    """Return the note of a piece as drafted, where it names the piece of one hand (`front-left`), or the half of a
    piece cut whole (`back.shoulder_left`), for that hand.

    One that says the other hand beside it is left as it is: its piece, or its edge, is not found.
    """
    if not isinstance(note.where, AtEdge | AtPiece):
        return note
    named = of_hand(draft, note.where.piece)
    if named is not None and note.side in (NoteSide.BOTH, named[1]):
        note = replace(note, where=replace(note.where, piece=named[0]), side=NoteSide(named[1]))
    if not isinstance(note.where, AtEdge) or note.where.piece not in draft:
        return note
    half = edge_of_hand(draft[note.where.piece], note.where.edge)
    if half is None or note.side not in (NoteSide.BOTH, half[1]):
        return note
    end = edge_of_hand(draft[note.where.piece], note.at.end) if note.at else None
    at = replace(note.at, end=end[0]) if note.at and end else note.at
    return replace(note, where=replace(note.where, edge=half[0]), side=NoteSide(half[1]), at=at)


def _not_hers(note: Note, error: DraftError) -> Done:
    """Return that a note of the wearer whom the costume was fitted on has no place on another."""
    what = f"{note.verb} {note.where}: fitted on another wearer, and not carried out on this one"
    return Done(note, said=f"{what}: {error.sentence}", carried=False)


def _unknown(draft: Draft, notes: Sequence[Note]) -> Iterator[tuple[Note, DraftError]]:
    """Yield each note that names a piece or an edge that the garment does not have."""
    for note in notes:
        try:
            if isinstance(note.where, AtEdge | AtPiece):
                _refuse_other_hand(draft, note, note.where.piece)
                piece = piece_named(draft, note.where.piece)
                if isinstance(note.where, AtEdge):
                    _refuse_beyond(piece, edge_named(piece, note.where.edge), note.at)
        except DraftError as error:
            yield note, error


def _refuse_beyond(piece: Piece, edge: Edge, at: FromEnd | None) -> None:
    """Raise `DraftError` where a place is counted from an edge it does not meet, or lies past its end."""
    if at is None:
        return
    called, number = name_in_words(f"{piece.name}.{edge.name}"), piece.index(edge.name)
    ends = [piece.edges[(number + step) % len(piece.edges)].name for step in (-1, 1)]
    if at.end not in ends:
        edge_named(piece, at.end)
        what = f"the {called} does not meet the {name_in_words(at.end)}"
        raise DraftError(what, turn=f"count from one of its ends: {joined(ends, 'or')}")
    if at.mm > edge.length:
        raise DraftError(f"the {called} is {told(edge.length)} long", value=f"{told(at.mm)} from {at.end}")


def _contradicting(draft: Draft, notes: Sequence[Note]) -> Iterator[Misfit]:
    """Yield each note that undoes another of its fitting, which names the same place in another way."""
    for one, other in undone(draft, notes):
        what = f"lines {one.spot.line} and {other.spot.line} contradict each other: "
        what += f"{one.verb} {one.where}, and {other.verb} {other.where} ({other.side})"
        yield other.spot, DraftError(what, turn="keep the one that is meant")


def _refuse_other_hand(draft: Draft, note: Note, piece: str) -> None:
    """Raise `DraftError` where a note names the piece of one hand and says the other beside it."""
    named = of_hand(draft, piece)
    if named is not None:
        stem, side = named
        raise DraftError(
            f"{piece} is the {side} hand's, and side says {note.side}",
            turn=f"leave side out, or name {handed_name(stem, note.side)}",
        )


def _said_of(fits: Sequence[Fitted]) -> tuple[Finding, ...]:
    """Return what the alterations say, once where both hands say it."""
    return tuple(dict.fromkeys(one for fit in fits for one in (*fit.findings, *unplaced(fit.left))))


def _told(notes: Sequence[Note], fits: Sequence[Fitted], girths: Sequence[Moved]) -> Iterator[Done]:
    """Yield each note with what it moved: its edges, and the girths where it is the only note."""
    for note in notes:
        found = [made for fit in fits for made in fit.done if made.note == note]
        if not found:
            yield Done(
                note,
                said=f"{note.verb} at {name_in_words(str(note.where))}: not carried out, as the checks say",
                carried=False,
            )
            continue
        edges = tuple(dict.fromkeys(moved for made in found for moved in made.moved if moved.piece))
        moved = (*(girths if len(notes) == 1 else _own_girths(note, fits)), *edges)
        shown = girths_moved(moved) or edges_moved(edges)
        said = f"{amount_said(note)} at {name_in_words(str(note.where))}" + (
            f": {', '.join(shown)}" if shown else ""
        )
        yield Done(note, moved, said)


def _own_girths(note: Note, fits: Sequence[Fitted]) -> Iterator[Moved]:
    """Yield each girth that one of several notes moved, round the body the mean of both hands."""
    for level, limb in {girth.level: girth.limb for girth in fits[0].draft.girths}.items():
        mine = [_girth_of(note, fit, level) for fit in fits]
        known = [pair for pair in mine if pair is not None]
        yield from _as_one(level, limb, known)


def _girth_of(note: Note, fit: Fitted, level: str) -> tuple[float, float] | None:
    """Return a girth of one hand before and after a note; where the note moved none of it, as it is now."""
    moved = (one for made in fit.done if made.note == note for one in made.moved)
    found = next(((one.before, one.after) for one in moved if not one.piece and one.edge == level), None)
    now = covered_girth(fit.draft, level)
    return found or (None if now is None else (now, now))


def _girths(before: Sequence[Fitted], after: Sequence[Fitted]) -> tuple[Moved, ...]:
    """Return each girth that moved: of a limb the hand that moved most, round the body the mean of both."""
    found: list[Moved] = []
    girths = {girth.level: girth.limb for girth in before[0].draft.girths}
    hands = max(len(before), len(after))
    drafts = [(before[n % len(before)].draft, after[n % len(after)].draft) for n in range(hands)]
    for level, limb in girths.items():
        pairs = [
            (old, new)
            for a, b in drafts
            if (old := covered_girth(a, level)) is not None and (new := covered_girth(b, level)) is not None
        ]
        found += _as_one(level, limb, pairs)
    return tuple(found)


def _as_one(level: str, limb: bool, pairs: Sequence[tuple[float, float]]) -> list[Moved]:
    """Return a girth before and after, told by each hand, as one: none where it did not move."""
    if not pairs:
        return []
    chosen = [max(pairs, key=lambda pair: abs(pair[1] - pair[0]))] if limb else pairs
    old, new = (sum(side) / len(chosen) for side in zip(*chosen, strict=True))
    return [Moved("", level, old, new, "at the fitting")] if abs(old - new) > MOVED else []


def _too_much(moved: Moved) -> bool:
    return abs(moved.after - moved.before) > MOST_ROUND + MOVED


def _sent_back(note: Note, girths: Sequence[Moved]) -> Done:
    over = next(one for one in girths if _too_much(one))
    said = (
        f"{amount_said(note)} at {name_in_words(str(note.where))} would move the {over.edge} "
        f"from {told(over.before)} to {told(over.after)}, over {told(MOST_ROUND)} round: "
        "nothing is moved; lay the tape again"
    )
    return replace(Done(note, said=said), carried=False)


def _finding(done: Done) -> Finding:
    one = next(iter(done.moved), None)
    return Finding(
        check="fitting",
        level="note" if done.carried else "warning",
        where=str(done.note.where),
        value=one.after if one else None,
        wanted=one.before if one else None,
        sentence=done.said,
    )
