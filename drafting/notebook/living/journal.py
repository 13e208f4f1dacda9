"""The journal of a costume: every choice as it was made, a line each, laid over the costume file. No widgets.

A line is a JSON object: `{"garment", "choice", "value", "by"}`, or `"as": "file"` (what the file says) or
`"as": "usual"` (not said at all) in place of the value. The last line of a choice counts. What was
torn off when a machine stopped is no line.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any

from drafting.costume.file import CostumeFile, Garment
from drafting.ground.errors import InputError
from drafting.notebook.living.parts import choices_in
from drafting.reading.choices import read_values
from drafting.reading.given import Given, Origin

AS_FILE, AS_USUAL = "file", "usual"

Named = tuple[str, str]
"""A garment and a choice of it."""


@dataclass(frozen=True)
class JournalLine:
    """One choice as it was made: `given`, or None and then `said` as the file has it or as is usual."""

    garment: str
    choice: str
    given: Given | None
    said: str = ""


def differences(asked: CostumeFile, now: CostumeFile, file: CostumeFile) -> tuple[JournalLine, ...]:
    """Return the moves that lead from what was `asked` to what is asked `now`."""
    return tuple(_moves(asked, now, file))


def _moves(asked: CostumeFile, now: CostumeFile, file: CostumeFile) -> Iterator[JournalLine]:
    after = _all_choices(now)
    for named in {**_all_choices(asked), **after}:
        if not _same(asked, now, named):
            as_file = _same(now, file, named)
            given = None if as_file else after.get(named)
            yield JournalLine(*named, given=given, said=AS_FILE if as_file else "" if given else AS_USUAL)


def apart(asked: CostumeFile, file: CostumeFile) -> tuple[Named, ...]:
    """Return every choice that is asked otherwise than the file has it."""
    every = {**_all_choices(file), **_all_choices(asked)}
    return tuple(named for named in every if not _same(asked, file, named))


def laid_over(file: CostumeFile, moves: Iterable[JournalLine]) -> CostumeFile:
    """Return the costume as it is asked: the last move of each choice laid over the file.

    Moves of a garment or a choice that the file no longer has are passed over.
    """
    last = {(move.garment, move.choice): move for move in moves}
    return replace(file, garments=tuple(_over(file, garment, last) for garment in file.garments))


def _over(file: CostumeFile, garment: Garment, last: Mapping[Named, JournalLine]) -> Garment:
    mine = [move for (name, _), move in last.items() if name == garment.name]
    if not mine:
        return garment
    known, choices = choices_in(file, garment.name), dict(garment.choices)
    for move in mine:
        if move.choice in known and move.given is not None:
            choices[move.choice] = move.given
        elif move.said == AS_USUAL:
            choices.pop(move.choice, None)
    return garment if choices == garment.choices else replace(garment, choices=choices)


def line_of(move: JournalLine) -> str:
    """Return a move as a line of the journal.

    >>> line_of(JournalLine("shirt", "bust_ease", Given("105 mm", source="notebook")))
    '{"garment": "shirt", "choice": "bust_ease", "value": "105 mm", "by": "notebook"}\\n'
    """
    row: dict[str, Any] = {"garment": move.garment, "choice": move.choice}
    if move.given is None:
        row["as"] = move.said
    else:
        row |= {"value": move.given.value, "by": move.given.source}
    return json.dumps(row, ensure_ascii=False) + "\n"


def moves_in(text: str) -> tuple[JournalLine, ...]:
    """Return the moves of a journal; what is torn off or no move at all is passed over."""
    return tuple(move for line in text.split("\n") if (move := _read(line)) is not None)


def _read(line: str) -> JournalLine | None:
    try:
        row = json.loads(line)
        garment, choice = str(row["garment"]), str(row["choice"])
        if row.get("as") in (AS_FILE, AS_USUAL):
            return JournalLine(garment, choice, None, row["as"])
        by_hand = row.get("by") == "notebook"
        return JournalLine(garment, choice, Given(row["value"], source="notebook" if by_hand else "file"))
    except (ValueError, KeyError, TypeError, AttributeError):
        return None


def changed_words(asked: CostumeFile, now: CostumeFile) -> tuple[str, ...]:
    """Return in words what differs between two states of a costume: choices, measures, cloths.

    A choice stands as `shirt: bust ease`.
    """
    words = [f"{garment}: {choice}".replace("_", " ").replace("-", " ") for garment, choice in apart(now, asked)]
    if asked.wearer != now.wearer:
        words.append("the wearer's measures")
    if asked.fabrics != now.fabrics or asked.lays != now.lays:
        words.append("the cloths")
    if [(g.name, g.block, g.fabric, g.wishes) for g in asked.garments] != [
        (g.name, g.block, g.fabric, g.wishes) for g in now.garments
    ]:
        words.append("the garments")
    if asked.fittings.held != now.fittings.held:
        words.append("the notes of a fitting")
    if asked.workroom != now.workroom or asked.worn_on != now.worn_on:
        words.append("the workroom")
    return tuple(words)


def _all_choices(costume: CostumeFile) -> dict[Named, Given]:
    return {(g.name, name): given for g in costume.garments for name, given in g.choices.items()}


def _same(one: CostumeFile, other: CostumeFile, named: Named) -> bool:
    """Say whether two states give a choice alike: 105 mm from a slider is 10.5 in a file in cm."""
    a, b = _said(one, named), _said(other, named)
    if a is None or b is None or a.value == b.value:
        return (a is None) == (b is None)
    known = choices_in(one, named[0]).get(named[1])
    if known is None:
        return False
    free = replace(known, low=None, high=None)
    try:
        mine, _ = read_values([free], {named[1]: a}, Origin(unit=one.unit))
        theirs, _ = read_values([free], {named[1]: b}, Origin(unit=other.unit))
    except InputError:
        return False
    return bool(mine == theirs)


def _said(costume: CostumeFile, named: Named) -> Given | None:
    return next((g.choices.get(named[1]) for g in costume.garments if g.name == named[0]), None)
