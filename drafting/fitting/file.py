"""The fitting file: what was noted at one fitting, read strictly.

title = "First mock-up"
on = 2026-11-09
cut = true                    # optional: the cloth itself had been cut by then

[[notes]]
garment = "shirt"
side = "both"                 # left, right or both: the wearer's
where = "front.side"          # piece.edge, a piece, a level, or a measure of the body
at = "4 cm from hem"          # optional: so far along the edge, from where it meets that one
verb = "take in"
amount = "1 cm"
as = "pinch"                  # total, pinch or seam
kind = "style"                # body, style, cloth or accident
state = "pinned"
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from functools import partial
from pathlib import Path

from drafting.body.dimensions import dimension_name
from drafting.draft.roles import LevelKind
from drafting.fitting.measures import measure_meant
from drafting.fitting.note import (
    AmountAs,
    AtEdge,
    AtLevel,
    AtMeasure,
    AtPiece,
    FromEnd,
    Note,
    NoteKind,
    NoteSide,
    NoteState,
    NoteWhere,
    Verb,
)
from drafting.ground.nearest import joined
from drafting.ground.units import BadValue, as_written, parse_length, shown_unit
from drafting.reading.cursor import TableReader, opened
from drafting.reading.given import one_of
from drafting.reading.kinds import FileKind

NAME = r"[A-Za-z0-9][A-Za-z0-9_-]*"
PLACE = re.compile(rf"({NAME})(?:\.({NAME}))?")
FROM_END = re.compile(rf"(?P<length>.+?)\s+from\s+(?P<end>{NAME})")
LEVELS = tuple(kind.value for kind in LevelKind if kind is not LevelKind.PLAIN)
WIDTHS = (Verb.TAKE_IN, Verb.LET_OUT)
WITHOUT_AMOUNT = (Verb.LEAVE, Verb.CLIP)


@dataclass(frozen=True)
class FittingFile:
    """One fitting: its notes in the order written; `cut` says that the cloth had been cut before it."""

    title: str
    on: date | None
    path: str
    cut: bool
    notes: tuple[Note, ...]


def read_fitting(path: Path, garments: Sequence[str] | None = None) -> FittingFile:
    """Return the fitting in a file; raises `InputError` with every fault of it, each with its line.

    `garments` are the names that a note may give; None where any will do (a wearer's own fittings).
    """
    table = opened(path, FileKind.FITTING)
    title = table.text("title") or path.stem
    day, cut = table.day("on"), table.truth("cut") or False
    notes = tuple(note for entry in table.numbered("notes") for note in _note(entry, garments))
    table.close()
    table.refuse()
    return FittingFile(title=title, on=day, path=table.file.path, cut=cut, notes=notes)


def _note(table: TableReader, garments: Sequence[str] | None) -> Iterator[Note]:
    """Yield the note of one entry, where it can be read."""
    before = table.faults.count
    kind = table.needed("kind", partial(one_of, words=tuple(NoteKind)), f"it is one of {', '.join(NoteKind)}")
    verb = table.needed("verb", partial(one_of, words=tuple(Verb)), 'as in verb = "take in"')
    side = table.word("side", tuple(NoteSide), NoteSide.BOTH)
    state = table.word("state", tuple(NoteState), NoteState.PINNED)
    garment = _garment(table, garments, kind or "")
    where = table.needed("where", partial(_where, kind or "", verb or ""), 'as in where = "front.side"')
    at = table.read("at", partial(_from_end, table.unit))
    amount = _amount(table, verb or "")
    counted = _counted(table, verb or "")
    table.close()
    if at is not None and not isinstance(where, AtEdge):
        table.add("is a place along an edge", 'name the edge, as in where = "front.side"', "at")
    if table.faults.count == before and kind and verb and where:
        yield Note(
            garment=garment,
            side=NoteSide(side),
            where=where,
            verb=Verb(verb),
            amount=amount,
            counted=AmountAs(counted),
            kind=NoteKind(kind),
            state=NoteState(state),
            at=at,
            spot=table.spot(),
        )


def _garment(table: TableReader, garments: Sequence[str] | None, kind: str) -> str:
    """Return the garment that a note is about; a note about the body needs none."""
    if "garment" not in table:
        table.given("garment")
        if kind != NoteKind.BODY and len(garments or ()) != 1:
            table.add("is missing", f"name the garment: {joined(garments or ('shirt',), 'or')}", "garment")
        return garments[0] if garments and len(garments) == 1 else ""
    if garments is None:
        return table.text("garment") or ""
    return table.word("garment", garments)


def _where(kind: str, verb: str, value: object) -> NoteWhere:
    found = PLACE.fullmatch(value.strip()) if isinstance(value, str) else None
    said = value.strip().replace("_", " ") if isinstance(value, str) else ""  # as it is written of a measure
    level = said.lower() if said.lower() in LEVELS else ""
    if kind == NoteKind.BODY:
        return AtMeasure(measure_meant(value, verb))
    if level:
        return AtLevel(level)
    if found is None:
        raise BadValue(
            f"{as_written(value)} is no place", 'write piece.edge, as in "front.side", a piece or a level'
        )
    piece, edge = found.groups()
    if edge:
        return AtEdge(piece, edge)
    return AtMeasure(piece) if dimension_name(piece) == piece else AtPiece(piece)


def _from_end(unit: str | None, value: object) -> FromEnd:
    found = FROM_END.fullmatch(value.strip()) if isinstance(value, str) else None
    if found is None:
        far = "1 1/2 in" if shown_unit(unit) == "in" else "4 cm"
        raise BadValue(f"{as_written(value)} is no place on an edge", f'write it like at = "{far} from hem"')
    return FromEnd(parse_length(found["length"], unit, sign="not negative"), found["end"])


def _amount(table: TableReader, verb: str) -> float:
    if verb in WITHOUT_AMOUNT and "amount" not in table:
        table.given("amount")
        return 0.0
    return table.needed("amount", table.as_length(), 'say how much, as in amount = "1 cm"') or 0.0


def _counted(table: TableReader, verb: str) -> str:
    """Return what the amount counts; a width has to say it, as a pinch is half the cloth."""
    if verb in WIDTHS and "as" not in table:
        table.given("as")
        right = (
            'pinch or total? as = "pinch" is what the pins hold at one place, half the cloth; "total" is how much '
            'the finished girth changes; "seam" is what one edge moves'
        )
        table.add("is missing", right, "as")
    return table.word("as", tuple(AmountAs), AmountAs.TOTAL)
