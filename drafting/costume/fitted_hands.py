"""Notes carried out on the drafts of the hands, before they are joined: one after the other."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from drafting.body import Body
from drafting.body.body import SIDES
from drafting.body.sides import one_side
from drafting.checks.girths import finished_girth
from drafting.costume.wishes import Misfit
from drafting.draft.draft import Draft
from drafting.draft.named import edge_named, piece_named
from drafting.draft.two_sides import alike
from drafting.fabric import Fabric
from drafting.fitting.applied import Fitted, fitted
from drafting.fitting.limits import MOST_ROUND
from drafting.fitting.measures import amount_said
from drafting.fitting.note import AtEdge, AtLevel, AtPiece, Done, Moved, Note, NoteSide
from drafting.ground.errors import DraftError, UnknownNameError
from drafting.ground.findings import Finding
from drafting.ground.lengths import told

MOVED = 0.05
"""mm: a girth that moved by less was not moved (half of the last figure shown)."""


@dataclass(frozen=True)
class FittedHands:
    """The hands as their notes want them, what each note moved, and the notes that cannot be had."""

    hands: tuple[Draft, ...]
    done: tuple[Done, ...] = ()
    misfits: tuple[Misfit, ...] = ()
    findings: tuple[Finding, ...] = ()


def fitted_hands(hands: Sequence[Draft], notes: Sequence[Note], body: Body, fabric: Fabric | None) -> FittedHands:
    """Return the draft of both hands, or of each, with the notes carried out in their order.

    A note for one side makes two drafts of one. What cannot be carried out is a misfit, with its place
    in the maker's file, and moves nothing.
    """
    if not notes:
        return FittedHands(tuple(hands))
    apart = len(hands) > 1 or any(note.side != NoteSide.BOTH for note in notes)
    drafts: tuple[Draft, ...] = (hands[0], hands[-1]) if apart else (hands[0],)
    bodies = tuple(one_side(body, side) for side in SIDES) if apart else (body,)
    done: list[Done] = []
    misfits: list[Misfit] = []
    said: list[Finding] = []
    for note in notes:
        try:
            _there(drafts[0], note)
            each = [
                fitted(draft, [note] if note.side in (NoteSide.BOTH, side) else [], own, fabric)
                for draft, own, side in zip(drafts, bodies, SIDES, strict=False)
            ]
        except DraftError as error:
            misfits.append((note.spot, error))
            continue
        told = _told(note, drafts, each)
        done.append(told)
        said += [_finding(told), *(finding for one in each for finding in one.findings)]
        drafts = tuple(one.draft for one in each) if told.carried else drafts
    if len(drafts) > 1 and alike(*drafts):
        drafts = drafts[:1]
    return FittedHands(drafts, tuple(done), tuple(misfits), tuple(dict.fromkeys(said)))


def _there(draft: Draft, note: Note) -> None:
    """Raise `DraftError` where the garment has no such place as a note names."""
    where = note.where
    if isinstance(where, AtEdge | AtPiece):
        piece = piece_named(draft, where.piece)
        if isinstance(where, AtEdge):
            edge_named(piece, where.edge)
            if note.at:
                edge_named(piece, note.at.end)
    elif isinstance(where, AtLevel) and all(at.kind != where.level for p in draft.pieces for at in p.levels):
        raise UnknownNameError(
            f"no piece of this garment reaches the {where.level}", turn="name a piece or an edge"
        )


def _told(note: Note, before: Sequence[Draft], each: Sequence[Fitted]) -> Done:
    """Return what a note did, its girths read off the pieces before and after."""
    girths = tuple(_girths(note, before, [one.draft for one in each]))
    over = next((one for one in girths if abs(one.after - one.before) > MOST_ROUND), None)
    if over:
        said = (
            f"{amount_said(note)} at {note.where} would move the {over.edge} from {told(over.before)} to "
            f"{told(over.after)}, over {told(MOST_ROUND)} round: nothing is moved; lay the tape again"
        )
        return Done(note, girths, said, carried=False)
    edges = dict.fromkeys(moved for one in each for made in one.done for moved in made.moved)
    shown = ", ".join(f"{one.edge} {told(one.before)} to {told(one.after)}" for one in girths)
    return Done(note, (*girths, *edges), f"{amount_said(note)} at {note.where}" + (f": {shown}" if shown else ""))


def _girths(note: Note, before: Sequence[Draft], after: Sequence[Draft]) -> list[Moved]:
    """Return each girth that moved; where the hands are apart, one round the body is their mean."""
    levels = dict.fromkeys(girth.level for girth in before[0].girths)
    found = []
    for level in levels:
        limb = any(girth.limb for girth in before[0].girths if girth.level == level)
        pairs = [
            (old, new)
            for a, b in zip(before, after, strict=True)
            if (old := finished_girth(a, level)) is not None and (new := finished_girth(b, level)) is not None
        ]
        if not pairs:
            continue
        if limb:
            old, new = next((p for p in pairs if abs(p[0] - p[1]) > MOVED), pairs[0])
        else:
            old, new = (sum(side) / len(pairs) for side in zip(*pairs, strict=True))
        if abs(old - new) > MOVED:
            found.append(Moved("", level, old, new, f"{note.verb.done} at {note.where}"))
    return found


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
