"""What the fitting page knows: the note being written, the costume before this fitting and with it. No widgets."""

from __future__ import annotations

import tempfile
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from drafting.checks.words import capital, plain
from drafting.costume.file import CostumeFile
from drafting.costume.make import Made, MadeGarment, finished
from drafting.costume.refitted import refitted
from drafting.draft.draft import Draft, EdgeRef
from drafting.draft.landmark import landmarks
from drafting.draft.piece import Piece
from drafting.fitting.file import FittingFile, read_fitting
from drafting.fitting.note import Done, Note
from drafting.fitting.threads import contradictions
from drafting.geometry import Path as Line
from drafting.ground.errors import InputError
from drafting.ground.units import ShownUnit, show_length

SEEN = 0.5
"""mm: a length that changed by less is no matter to a maker (ours)."""

MOVED = 0.05
"""mm: what moved by less stayed (half of the last figure shown)."""


@dataclass(frozen=True)
class Typed:
    """A note as the fields of the page have it: every value a text."""

    garment: str
    side: str
    where: str
    at: str
    verb: str
    amount: str
    counted: str
    kind: str
    state: str

    def toml(self) -> str:
        """Return the note as it would stand in a fitting file."""
        rows = [("garment", self.garment), ("side", self.side), ("where", self.where.strip()), ("verb", self.verb)]
        rows += [("at", self.at.strip())] if self.at.strip() else []
        rows += [("amount", self.amount.strip())] if self.amount.strip() else []
        rows += [("as", self.counted), ("kind", self.kind), ("state", self.state)]
        return "[[notes]]\n" + "".join(f"{key} = {_quoted(value)}\n" for key, value in rows)


def _quoted(value: str) -> str:
    return '"' + value.replace("\\", "\\\\").replace('"', '\\"').replace("\n", " ") + '"'


def note_of(typed: Typed, unit: ShownUnit, garments: Sequence[str]) -> Note:
    """Return the note that the fields say, read as a file is; raises `InputError` with what is wrong."""
    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder) / "note.toml"
        amount = replace(typed, amount=_with_unit(typed.amount, unit), at=typed.at)
        place.write_text(f'unit = "{unit}"\n{amount.toml()}', "utf-8")
        (note,) = read_fitting(place, garments).notes
    return note


def _with_unit(amount: str, unit: ShownUnit) -> str:
    """Return an amount with her unit behind it, where it has none."""
    text = amount.strip()
    return f"{text} {unit}" if text and text[-1].isdigit() else text


@dataclass(frozen=True)
class BeforeAndAfter:
    """A costume before a fitting and with it, drafted; and what became of the fitting's notes."""

    before: Made
    after: Made

    def done(self) -> tuple[Done, ...]:
        """Return what became of every note."""
        return (*self.after.costume.fittings.done, *(one for made in self.after.garments for one in made.done))


def fitted_at(costume: CostumeFile, fitting: FittingFile | None, more: Sequence[Note] = ()) -> BeforeAndAfter:
    """Return the costume before `fitting` and with its notes, and those tried beside them.

    Raises `DraftError` where a note cannot be carried out, or contradicts another.
    """
    held = costume.fittings.held
    path = fitting.path if fitting else ""
    earlier = tuple(one for one in held if one.path != path)
    own = next((one for one in held if one.path == path), fitting)
    tried = (replace(note, spot=replace(note.spot, file=path)) for note in more)  # as it will stand written
    notes = (*(own.notes if own else ()), *tried)
    now = FittingFile(
        title=own.title if own else "",
        on=own.on if own else None,
        path=path,
        cut=own.cut if own else False,
        notes=notes,
    )
    faults = tuple(contradictions(now))
    if faults:
        raise InputError(faults)
    before, after = refitted(costume, earlier), refitted(costume, (*earlier, now) if notes else earlier)
    return BeforeAndAfter(finished(before), finished(after))


@dataclass(frozen=True)
class ChangedLength:
    """An edge whose length changed, or whose partner's did: mm before and after, and the partner's length now."""

    ref: EdgeRef
    before: float
    after: float
    partner: str
    there: float | None


def changed_lengths(before: MadeGarment, after: MadeGarment) -> tuple[ChangedLength, ...]:
    """Return every edge whose sewn length changed by 0.5 mm or more, the most first, and its partner."""
    old = {(p.name, e.name): e.sewn_length for p in before.draft.pieces for e in p.edges}
    found = []
    for piece in after.draft.pieces:
        for edge in piece.edges:
            ref = (piece.name, edge.name)
            was = old.get(ref)
            if was is not None and abs(was - edge.sewn_length) > SEEN:
                partner, there = _partner(after.draft, ref)
                found.append(ChangedLength(ref, was, edge.sewn_length, partner, there))
    return tuple(sorted(found, key=lambda one: -abs(one.after - one.before)))


def _partner(draft: Draft, ref: EdgeRef) -> tuple[str, float | None]:
    """Return what an edge is sewn to, in words, and how long that is."""
    for seam in draft.seams:
        for own, other in ((seam.a, seam.b), (seam.b, seam.a)):
            if ref in own:
                names = " + ".join(f"{plain(piece)} {plain(edge)}" for piece, edge in other)
                return names, sum(draft.edge(one).sewn_length for one in other)
    return "", None


@dataclass(frozen=True)
class CornerMoved:
    """A corner of a piece, or a place of an edge, that moved: where it lay (laid on the anchor) and lies now."""

    old: complex
    new: complex


@dataclass(frozen=True)
class Pair:
    """A piece before and now, laid on one anchor of both; its corners that moved, and the edges that stayed."""

    before: Piece
    after: Piece
    by: complex
    anchor: complex
    named: str
    shifts: tuple[CornerMoved, ...]
    stayed: tuple[str, ...]


def pairs(before: MadeGarment, after: MadeGarment) -> Iterator[Pair]:
    """Yield each piece that changed, and each that is sewn to one that did."""
    old = {piece.name: piece for piece in before.draft.pieces}
    own = [piece for piece in after.draft.pieces if not piece.material]
    moved = {p.name for p in own if p.name in old and not _same(old[p.name], p)}
    partners = {
        name
        for seam in after.draft.seams
        if moved & {n for n, _ in (*seam.a, *seam.b)}
        for name, _ in (*seam.a, *seam.b)
    }
    for piece in own:
        if piece.name in moved or (piece.name in partners and piece.name in old):
            yield _pair(old[piece.name], piece)


def _same(one: Piece, other: Piece) -> bool:
    if [e.name for e in one.edges] != [e.name for e in other.edges]:
        return False
    return one is other or not any(_moved_edges(one, other, _on_anchor(one, other)[0]))


def _on_anchor(one: Piece, other: Piece) -> tuple[complex, complex]:
    """Return how far a piece as it was is moved onto the piece as it is, and the anchor of both."""
    there, here = landmarks(one, other)
    return here - there, here


def _moved_edges(one: Piece, other: Piece, by: complex) -> Iterator[bool]:
    for a, b in zip(one.edges, other.edges, strict=True):
        yield any(
            abs(a.path.at(a.length * share) + by - b.path.at(b.length * share)) > MOVED
            for share in (0, 0.25, 0.5, 0.75, 1)
        )


def _moved_inside(old: Line, new: Line) -> list[CornerMoved]:
    """Return the place between its ends where an edge moved most, where neither end moved as far."""
    pairs = list(zip(old.evenly(PLACES), new.evenly(PLACES), strict=True))
    most = max(pairs, key=lambda pair: abs(pair[1] - pair[0]))
    ends = max(abs(b - a) for a, b in (pairs[0], pairs[-1]))
    return [CornerMoved(*most)] if abs(most[1] - most[0]) > ends + MOVED_INSIDE else []


PLACES, MOVED_INSIDE = 17, 1.0
"""At how many places of an edge it is looked where it moved most, and by how many mm more than its ends (ours)."""


def _pair(one: Piece, other: Piece) -> Pair:
    by, anchor = _on_anchor(one, other)
    old = {edge.name: edge for edge in one.edges}
    shifts, stayed = [], []
    for edge in other.edges:
        was = old.get(edge.name)
        if was is None:
            continue
        at, now = was.path.end + by, edge.path.end
        if abs(at - now) > MOVED:
            shifts.append(CornerMoved(at, now))
        shifts += _moved_inside(was.path.moved(by), edge.path)
        if not any(
            abs(was.path.at(was.length * s) + by - edge.path.at(edge.length * s)) > MOVED for s in (0, 0.5, 1)
        ):
            stayed.append(edge.name)
    return Pair(
        before=one,
        after=other,
        by=by,
        anchor=anchor,
        named=_corner(other, anchor),
        shifts=tuple(shifts),
        stayed=tuple(stayed),
    )


def _corner(piece: Piece, at: complex) -> str:
    """Return the name of a corner: the two edges that meet there."""
    for edge, after in zip(piece.edges, (*piece.edges[1:], piece.edges[0]), strict=True):
        if abs(edge.path.end - at) < MOVED:
            return f"where {plain(edge.name)} and {plain(after.name)} meet"
    return "on a mark of both"


def next_list(costume: CostumeFile, unit: ShownUnit) -> list[str]:
    """Return what the next fitting has to look at again: every note that was not seen right."""
    rows = []
    for thread in costume.fittings.threads:
        note = thread.note
        if not thread.closed:
            amount = f", {show_length(note.amount, unit)} ({note.counted})" if note.amount else ""
            garment = f"{note.garment}: " if note.garment else ""
            where = str(note.where).replace("_", " ")
            rows.append(capital(f"{garment}{note.verb} {where}, {note.side}{amount}: {thread.said[-1].state}"))
    return rows


def said_of_cloth(note: Note, unit: ShownUnit) -> str:
    """Return a note about the cloth as its own file keeps it.

    >>> from drafting.fitting.note import AmountAs, AtLevel, NoteKind, NoteSide, NoteState, Verb
    >>> loose = Note(
    ...     garment="coat",
    ...     side=NoteSide.BOTH,
    ...     where=AtLevel("waist"),
    ...     verb=Verb.TAKE_IN,
    ...     amount=10.0,
    ...     counted=AmountAs.PINCH,
    ...     kind=NoteKind.CLOTH,
    ...     state=NoteState.PINNED,
    ... )
    >>> said_of_cloth(loose, "cm")
    'coat: take in waist, both, 1 cm (pinch)'
    """
    amount = f", {show_length(note.amount, unit)} ({note.counted})" if note.amount else ""
    return f"{note.garment}: {note.verb} {note.where}, {note.side}{amount}"
