"""A cast from its file to its folder: each wearer in turn, then what stands over all of them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from drafting.costume.cast import Cast, costume_for
from drafting.costume.telling import Tell, tell_nobody
from drafting.ground.errors import InputError
from drafting.output.cast.cast_page import CastTold, call_sheet, call_sheet_file, cast_page
from drafting.output.cast.engines import Engine
from drafting.output.cast.job import Outcome, WearerJob, refused_outcome, unpacked
from drafting.output.cast.key import key_of
from drafting.output.cast.lays import bought_together, files_of, groups, lays_together
from drafting.output.cast.over_all import Records, as_rows, differs, shopping_for_all, shopping_text
from drafting.output.cast.place import FILES, RECORDS, as_json, cast_folder, cleared, left_behind, put_file, stands
from drafting.output.cast.told import MADE
from drafting.output.folder import CAST
from drafting.output.report import made_with

SCHEMA = 1

DRAFTED, LAID = 0.9, 0.98
"""Shares of the time that drafting all wearers, and laying them out together, end at (ours)."""


@dataclass(frozen=True)
class CastMade:
    """What came of a cast: every record by folder, who was made now, whose folders are no longer wanted."""

    cast: Cast
    records: Records
    made_now: tuple[str, ...]
    left: tuple[str, ...]

    @property
    def refused(self) -> tuple[str, ...]:
        """The folders of those who could not be made."""
        return tuple(name for name, record in self.records.items() if record["status"] != MADE)

    @property
    def holds(self) -> bool:
        """Whether everybody was made and no check says *error*."""
        levels = (row[0] for record in self.records.values() for row in record["checks"])
        return not self.refused and "error" not in levels


def write_cast(
    cast: Cast, out: Path | str, engine: Engine, tell: Tell = tell_nobody, blocks: Path | None = None
) -> CastMade:
    """Make every wearer whose folder does not stand yet, then write what is over all; return what came of it.

    A wearer's folder is put in place whole, or not at all. Raises `InputError`, with nothing written, where
    `out` is not a cast's to write; what the disk raises ends the run, with what was made so far.
    """
    place = cast_folder(Path(out), cast)
    if not (place / CAST).exists():  # so that a run which is killed is known for ours
        put_file(place / CAST, as_json({"schema": SCHEMA, "cast": cast.title, "wearers": [], FILES: []}))
    records: dict[str, Mapping[str, Any]] = {}
    made_now: list[str] = []

    def come(outcome: Outcome) -> None:
        records[outcome.folder] = outcome.record
        count, every = len(records), len(cast.wearers)
        tell(f"{count} of {every} wearers: {outcome.folder}", DRAFTED * count / every)

    for outcome in engine(_jobs(cast, place, blocks, come), place):
        unpacked(outcome, place)
        put_file(place / RECORDS / f"{outcome.folder}.json", as_json(outcome.record))
        made_now.append(outcome.folder)
        come(outcome)
    in_order = {one.folder: records[one.folder] for one in cast.wearers}
    _write_over_all(cast, in_order, place, tell)
    left = left_behind(place, in_order)
    return CastMade(cast, in_order, tuple(made_now), tuple(left))


def _jobs(cast: Cast, place: Path, blocks: Path | None, come: Any) -> Iterator[WearerJob]:
    """Yield the work that there is; who stands already, and who cannot be read, comes at once."""
    for wearer in cast.wearers:
        try:
            costume = costume_for(cast, wearer)
        except InputError as refused:
            come(refused_outcome(wearer.folder, refused.faults))
            continue
        key = key_of(costume, blocks)
        record = stands(place, wearer.folder, key)
        if record is None:
            yield WearerJob(wearer.folder, costume, key)
        else:
            come(Outcome(wearer.folder, record))


def _write_over_all(cast: Cast, records: Records, place: Path, tell: Tell) -> None:
    """Write the call sheets, the lays together, the list, the page and, last, the record of the cast."""
    made = [one for one in cast.wearers if records[one.folder]["status"] == MADE]
    lays = lays_together(
        cast, records, place, lambda words, share: tell(words, DRAFTED + share * (LAID - DRAFTED))
    )
    shown = tuple({name: value for name, value in row.items() if name != "key"} for row in lays)
    bought = shopping_for_all({one.folder: records[one.folder] for one in made}, bought_together(lays))
    drawn = {group.name: files_of(group) for group in groups(cast, records)}
    pictures = {name: (place / png).read_bytes() for name, (_, png) in drawn.items()}
    it = CastTold(cast, records, bought, shown, pictures)
    names = {one.folder: one.name for one in made}
    files = {call_sheet_file(one): call_sheet(it, one) for one in made}
    files |= {"shopping.csv": shopping_text(bought, names, cast.told_in), "cast.html": cast_page(it)}
    for n, (name, text) in enumerate(files.items()):
        tell(f"Writing {name}", LAID + (1 - LAID) * n / len(files))
        put_file(place / name, text)
    kept = [f"{RECORDS}/{name}.json" for name in (*records, *(f"lay {row['name']}" for row in lays))]
    every = sorted(
        [
            *files,
            *(file for pair in drawn.values() for file in pair),
            *(name for name in kept if (place / name).exists()),
            CAST,
        ]
    )
    cleared(place, every)
    put_file(place / CAST, as_json(_cast_record(it, every)))


def _cast_record(it: CastTold, files: list[str]) -> dict[str, Any]:
    """Return `cast.json` as plain data, lengths in mm."""
    cast = it.cast
    return {
        "schema": SCHEMA,
        "cast": cast.title,
        "made_with": made_with(),
        "wearers": [_wearer(it, n) for n in range(len(cast.wearers))],
        "shopping": list(as_rows(it.bought)),
        "layout": list(it.lays),
        FILES: files,
    }


def _wearer(it: CastTold, n: int) -> dict[str, Any]:
    wearer = it.cast.wearers[n]
    record, other = it.records[wearer.folder], it.cast.beside(wearer)
    about = {
        "wearer": wearer.name,
        "folder": wearer.folder,
        "role": wearer.role,
        "understudies": wearer.understudies,
        "compared_with": other.folder if other is not None and other is not wearer else None,
        "differs": differs(it.cast, wearer, it.records) if wearer.body else {},
    }
    held = ("status", "reasons", "measured_on", "measures", "doubted", "take", "checks", "garments")
    return about | {name: record[name] for name in held}
