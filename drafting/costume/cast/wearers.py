"""The wearers that a cast file names: a folder of body files, a table, or a list of files."""

from __future__ import annotations

import os
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import count
from pathlib import Path

from drafting.body.reader import TABLES, read_wearers
from drafting.costume.cast.model import CastWearer
from drafting.ground.errors import Fault, InputError
from drafting.ground.names import clean_text, safe_name
from drafting.ground.units import SHOWN, BadValue, as_written
from drafting.reading.cursor import TableReader

FORM = 'wearers = "cast.csv", a folder of body files, or a list as in ["bo.toml", "ada.toml"]'

KEPT = frozenset({"call-sheets", "records", "layout"})
"""Folders of a cast that no wearer's may be called like."""


def wearers_named(table: TableReader) -> tuple[CastWearer, ...]:
    """Return the wearers in their order; what is wrong with all of a file goes to the table's faults.

    What is wrong with one wearer alone stands with her.
    """
    found: list[_Named] = []
    for path in table.read("wearers", _paths(table)) or ():
        found += _of_file(table, path)
    if not found and not table.faults.found:
        right = FORM if "wearers" not in table else "put body files there, or name a table of wearers"
        table.add("names no wearer" if "wearers" in table else "is missing", right, "wearers")
    return tuple(_each_by_her_own_folder(found))


@dataclass(frozen=True)
class _Named:
    """A wearer, the file that names her, and her line in it, if it is a table."""

    wearer: CastWearer
    file: Path
    line: int | None = None

    @property
    def place(self) -> str:
        return f"{self.file.name}:{self.line}" if self.line else self.file.name


def _paths(table: TableReader) -> _Paths:
    return _Paths(Path(table.file.path).parent)


class _Paths:
    """The reader of `wearers`: every file that it names, from the cast's folder."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder

    def __call__(self, value: object) -> list[Path]:
        named = value if isinstance(value, list) else [value]
        if not named or not all(isinstance(one, str) and one.strip() and "\0" not in one for one in named):
            raise BadValue(f"{as_written(value)} names no wearers", FORM)
        return [path for one in named for path in self._of(str(one))]

    def _of(self, name: str) -> list[Path]:
        path = Path(os.path.join(self.folder, name))
        if not path.is_dir():
            if not path.exists() and "#" not in name:
                raise BadValue(f"there is no {clean_text(name, SHOWN)}", "check the name and the folder")
            return [path]
        return sorted(one for one in path.iterdir() if one.suffix == ".toml" and one.is_file())


def _of_file(table: TableReader, path: Path) -> Iterator[_Named]:
    """Yield the wearers of one file; a table whose headings are at fault refuses the whole cast."""
    held = path.suffix.lower() in TABLES
    try:
        read = read_wearers(path, table.unit)
    except InputError as refused:
        if held:
            table.faults.found.extend(refused.faults)
        else:
            yield _Named(CastWearer(path.stem, safe_name(path.stem), str(path), None, refused.faults), path)
        return
    for one in read:
        name = one.name or f"row {one.line}"
        wearer = CastWearer(
            name=name,
            folder=_folder(name if held else path.stem),
            source=f"{path}#{one.name}" if held else str(path),
            body=one.body,
            faults=one.faults,
            role=one.role,
            understudies=one.understudies,
        )
        yield _Named(wearer, path, one.line)


def _folder(name: str) -> str:
    own = safe_name(name)
    return f"{own}-wearer" if own in KEPT else own


def _each_by_her_own_folder(found: Sequence[_Named]) -> Iterator[CastWearer]:
    """Yield the wearers; those who would share a folder are named with all their places, and have no body."""
    shared: dict[str, list[_Named]] = {}
    for one in found:
        shared.setdefault(one.wearer.folder, []).append(one)
    taken = set(shared)
    for one in found:
        wearer, others = one.wearer, [two for two in shared[one.wearer.folder] if two is not one]
        if not others:
            yield wearer
            continue
        folder = next(name for n in count(1) if (name := f"{wearer.folder}-{one.line or n}-{n}") not in taken)
        taken.add(folder)
        if wearer.faults:
            yield replace(wearer, folder=folder)
            continue
        places = " and ".join(f"{clean_text(two.wearer.name, SHOWN)} ({two.place})" for two in others)
        what = f"would share the folder {wearer.folder} with {places}"
        fault = Fault(what, "give each a name of her own", clean_text(wearer.name, SHOWN), str(one.file), one.line)
        yield replace(wearer, folder=folder, body=None, faults=(fault,))
