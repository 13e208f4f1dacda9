"""The cast file: a costume, its wearers, and in `[wearer.NAME]` what differs for one of them."""

from __future__ import annotations

import os
from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import partial
from pathlib import Path

from drafting.body.toml_reader import read_measures
from drafting.costume.cast.differs import wrong_choices
from drafting.costume.cast.model import Cast, CastWearer, Changes, told_unit
from drafting.costume.cast.wearers import wearers_named
from drafting.costume.file import CostumeFile
from drafting.costume.whole import read_whole_costume
from drafting.ground.errors import Fault, InputError
from drafting.ground.names import clean_text
from drafting.ground.nearest import meant
from drafting.ground.units import SHOWN, BadValue, as_written
from drafting.reading.cursor import TableReader, opened
from drafting.reading.kinds import FileKind

TOGETHER = 'lay_together = ["shell", "lining"]'


def read_cast(path: Path | str) -> Cast:
    """Return the cast in `path`; a wearer who cannot be read is in it, with what is wrong.

    Raises `InputError` with every fault of the cast file, of the table of wearers as a whole, and of the
    costume with its cloths; also where no wearer can be read.

    >>> from drafting.ground.shipped import shipped
    >>> cast = read_cast(shipped("measurements") / "casts" / "lanterns.toml")
    >>> [wearer.folder for wearer in cast.wearers][:2]
    ['ada-brook', 'bo-lindqvist']
    """
    table = opened(Path(path), FileKind.CAST)
    title = table.text("title") or Path(path).stem
    costume = table.needed("costume", partial(_beside, table), 'name it: costume = "../costumes/name.toml"')
    asked = table.texts("lay_together", TOGETHER) if "lay_together" in table else ()
    wearers = tuple(_understudies(table, _with_changes(table, wearers_named(table))))
    table.given("lay_together")
    table.close()
    cast = Cast(
        title=title,
        costume=costume or "",
        wearers=wearers,
        together=tuple(dict.fromkeys(str(given.value) for given, _ in asked)),
        path=table.file.path,
        unit=table.unit,
        told_in=told_unit(table.unit, wearers),
    )
    if costume:
        _judged(table, cast)
    if table.faults.found or not any(one.body for one in wearers):
        raise InputError([*table.faults.found, *(fault for one in wearers for fault in one.faults)])
    return cast


def _beside(table: TableReader, value: object) -> str:
    if not isinstance(value, str) or not value.strip() or "\0" in value:
        raise BadValue(f"{as_written(value)} names no costume", 'as in "../costumes/name.toml"')
    return os.path.join(os.path.dirname(table.file.path), value)


def _with_changes(table: TableReader, wearers: Sequence[CastWearer]) -> tuple[CastWearer, ...]:
    """Return the wearers with what the tables `[wearer.NAME]` say of them."""
    tables, changed = table.table("wearer"), list(wearers)
    for name in tables.data:
        own = tables.table(name)
        changes = _changes(own)
        found = [n for n, one in enumerate(changed) if name.casefold() in (one.name.casefold(), one.folder)]
        if found:
            changed[found[0]] = _changed(changed[found[0]], changes, table.faults.file)
        elif any(one.body for one in wearers):  # a table that cannot be read names nobody
            right = meant(name, [one.name for one in wearers], "the table of wearers names all")
            own.add(f"no wearer of this cast is called {clean_text(name, SHOWN)}", right)
    return tuple(changed)


def _changes(own: TableReader) -> Changes:
    role, understudies = own.text("role") or "", own.text("understudies") or ""
    measures = read_measures(own.table("measures"))
    garments = own.table("choices")
    choices = {name: dict(garments.table(name).every()) for name in garments.data}
    let_out = own.given("let_out")
    own.close()
    return Changes(
        role=role,
        understudies=understudies,
        measures=measures,
        choices=choices,
        let_out=let_out,
        line=own.spot().line,
    )


def _changed(wearer: CastWearer, changes: Changes, file: str) -> CastWearer:
    """Return a wearer with her changes; measures that make a body nobody has stand among her faults."""
    told = replace(
        wearer,
        changes=changes,
        role=changes.role or wearer.role,
        understudies=changes.understudies or wearer.understudies,
    )
    if wearer.body is None or not changes.measures:
        return told
    try:
        return replace(told, body=wearer.body.changed(**changes.measures))
    except InputError as refused:
        placed = (replace(fault, file=file, line=changes.line) for fault in refused.faults)
        return replace(told, body=None, faults=tuple(placed))


def _understudies(table: TableReader, wearers: Sequence[CastWearer]) -> Iterator[CastWearer]:
    """Yield the wearers, each understudy with the name of another wearer; a name that nobody has is a fault."""
    names = {word: one.name for one in wearers for word in (one.folder, one.name.casefold())}
    for one in wearers:
        name = names.get(one.understudies.casefold())
        if one.understudies and name in (None, one.name):
            who = clean_text(one.understudies, SHOWN)
            what = f"{clean_text(one.name, SHOWN)} understudies {who}, who is no other wearer of this cast"
            right = meant(one.understudies, [two.name for two in wearers if two is not one])
            table.faults.add(what, right, "understudies", one.changes.line or 1)
        yield replace(one, understudies=name or "")


def _judged(table: TableReader, cast: Cast) -> None:
    """Put what is wrong with the costume, and with what the cast asks of it, among the faults."""
    first = next((one for one in cast.wearers if one.body), None)
    try:
        costume = read_whole_costume(cast.costume, first.source if first else None, first.body if first else None)
    except InputError as refused:
        found = (fault if fault.line else _at(table, "costume", fault) for fault in refused.faults)
        table.faults.found.extend(found)
        return
    for role in cast.together:
        if role not in costume.fabrics:
            right = meant(role, costume.fabrics)
            table.add(f"{clean_text(role, SHOWN)} is no cloth of the costume", right, "lay_together")
    table.faults.found.extend(_all_wrong_choices(cast, costume))


def _at(table: TableReader, key: str, fault: Fault) -> Fault:
    """Return a fault of a lost file, placed where the cast names it."""
    return table.spot(key).fault(f"{clean_text(fault.file)}: {fault.what}", fault.right)


def _all_wrong_choices(cast: Cast, costume: CostumeFile) -> Iterator[Fault]:
    for wearer in cast.wearers:
        yield from wrong_choices(cast, wearer, costume)
