"""A cursor over one table of a maker's file: typed values out, faults with their places in.

It knows what was asked of it: `close` names every key of the table that nobody asked for.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from datetime import date, datetime
from functools import partial
from pathlib import Path
from typing import Any, TypeVar

from drafting.ground.errors import InputError
from drafting.ground.units import BadValue, NoUnit, Sign, as_written, parse_length, parse_number
from drafting.reading.entries import Keys
from drafting.reading.given import Faults, FilePlace, Given, Origin, one_of, plain_text, truth
from drafting.reading.kinds import FileKind, no_file_of_ours, told_kind, wrong_kind
from drafting.reading.toml import TomlFile, read_toml

T = TypeVar("T")

MOST_ENTRIES = 100
"""Tables of a list: trims, shapes, faults of a cloth (ours; nobody sews on more, or cuts round more)."""


@dataclass(slots=True)
class TableReader:
    """One table while it is read: its `data`, its `keys` from the top of the `file`, its `name`.

    `unit` is the file's unit of length. Every reading method returns None (or what it says) where
    the key is missing, and where its value is at fault; the fault goes to `faults`.
    """

    file: TomlFile
    faults: Faults
    data: Mapping[str, Any]
    keys: Keys = ()
    name: str = ""
    unit: str | None = None
    asked: dict[str, None] = field(default_factory=dict)

    def __contains__(self, key: str) -> bool:
        return key in self.data

    def spot(self, key: str = "") -> FilePlace:
        """Return where a key stands, or the table itself; a missing key stands where its table does."""
        keys = (*self.keys, key) if key else self.keys
        name = ".".join(part for part in (self.name, key) if part)
        return FilePlace(self.file.path, name, self.file.line(*keys) or 1)

    def add(self, what: str, right: str = "", key: str = "") -> None:
        """Note a fault of a key, or of the table."""
        spot = self.spot(key)
        self.faults.add(what, right, spot.field, spot.line)

    def given(self, key: str) -> Given | None:
        """Return the raw value of a key."""
        self.asked[key] = None
        if key not in self.data:
            return None
        return Given(self.data[key], self.file.line(*self.keys, key) or 1)

    def at_most(self, most: int, what: str) -> bool:
        """Return whether the table has no more than `most` keys; a fault says how many of `what` it has."""
        if len(self.data) > most:
            self.faults.add(f"{len(self.data)} {what}", f"{most} are taken at most", self.name, self.spot().line)
        return len(self.data) <= most

    def every(self) -> Iterator[tuple[str, Given]]:
        """Yield each key that was not asked for yet, with its raw value: of a table open to any."""
        for key in [key for key in self.data if key not in self.asked]:
            given = self.given(key)
            if given is not None:
                yield key, given

    def read(self, key: str, parse: Callable[[object], T]) -> T | None:
        """Return what `parse` makes of a value; it raises `BadValue` for one that will not do."""
        self.asked[key] = None
        if key not in self.data:
            return None
        try:
            return parse(self.data[key])
        except NoUnit as bad:
            spot = self.spot(key)
            self.faults.without_unit(bad, spot.field, spot.line)
        except BadValue as bad:
            self.add(bad.what, bad.right, key)
        return None

    def needed(self, key: str, parse: Callable[[object], T], right: str) -> T | None:
        """Return what `parse` makes of a value; a missing one is a fault, mended by `right`."""
        if key not in self.data:
            self.add(f"needs {'an' if key[:1] in 'aeiou' else 'a'} {key}", right)
        return self.read(key, parse)

    def length(self, key: str, sign: Sign = "positive") -> float | None:
        """Return a length in mm."""
        return self.read(key, self.as_length(sign))

    def as_length(self, sign: Sign = "positive") -> Callable[[object], float]:
        """Return the reader of a length in this file's unit."""
        return partial(parse_length, unit=self.unit, sign=sign)

    def number(self, key: str, sign: Sign = "any") -> float | None:
        """Return a plain number."""
        return self.read(key, partial(parse_number, sign=sign))

    def truth(self, key: str) -> bool | None:
        """Return a yes or a no."""
        return self.read(key, truth)

    def text(self, key: str) -> str | None:
        """Return a text."""
        return self.read(key, plain_text)

    def word(self, key: str, words: Iterable[str], usual: str = "") -> str:
        """Return one of `words`, or what is `usual`."""
        return self.read(key, partial(one_of, words=tuple(words))) or usual

    def day(self, key: str) -> date | None:
        """Return a day."""
        return self.read(key, partial(_day, key))

    def texts(self, key: str, form: str) -> tuple[tuple[Given, FilePlace], ...]:
        """Return each text of a list, with its place; a list looks like `form`."""
        given = self.given(key)
        value = () if given is None else given.value
        if not isinstance(value, (list, tuple)) or not all(isinstance(v, str) for v in value):
            self.add("is not a list of texts", f"write it like {form}", key)
            return ()
        return tuple(self._entries(key, value))

    def listed(self, key: str, words: Iterable[str]) -> tuple[str, ...] | None:
        """Return a list of known `words`; a number is taken for the word that looks the same."""
        given, known = self.given(key), tuple(words)
        if given is None:
            return None
        if not isinstance(given.value, list):
            right = f'write a list, as in {key} = ["{known[0]}", "{known[1]}"]'
            self.add("is not a list", right, key)
            return ()
        parse = partial(_entry_of, words=known)
        found = (self.faults.value(parse, one, spot.field) for one, spot in self._entries(key, given.value))
        return tuple(word for word in found if word)

    def _entries(self, key: str, values: Iterable[Any]) -> Iterator[tuple[Given, FilePlace]]:
        for number, value in enumerate(values):
            line = self.file.line(*self.keys, key, str(number)) or 1
            yield Given(value, line), FilePlace(self.file.path, self.spot(key).field, line)

    def table(self, key: str) -> TableReader:
        """Return a table within this one, empty where there is none."""
        self.asked[key] = None
        value = self.data.get(key, {})
        if not isinstance(value, dict):
            name = self.spot(key).field
            self.add(f"is {as_written(value)}, not a table", f"begin it with a line [{name}]", key)
            value = {}
        return self._within((*self.keys, key), self.spot(key).field, value)

    def numbered(self, key: str) -> Iterator[TableReader]:
        """Yield each entry of a list of tables, by its number and with its own lines."""
        self.asked[key] = None
        entries, name = self.data.get(key, []), self.spot(key).field
        if not isinstance(entries, list) or not all(isinstance(one, dict) for one in entries):
            self.add("must be a list of tables", f"begin each with a line [[{name}]]", key)
            return
        if len(entries) > MOST_ENTRIES:
            self.add(f"has {len(entries)} entries", f"{MOST_ENTRIES} are taken at most", key)
            return
        for number, entry in enumerate(entries):
            yield self._within((*self.keys, key, str(number)), f"{name}[{number + 1}]", entry)

    def _within(self, keys: Keys, name: str, data: Mapping[str, Any]) -> TableReader:
        return TableReader(self.file, self.faults, data, keys, name, self.unit)

    def origin(self) -> Origin:
        """Return where the values of this table come from."""
        return Origin(self.file.path, self.unit, self.name)

    def close(self, listed: str = "") -> None:
        """Note every key that was not asked for, with the nearest that were (or where all are)."""
        for key in self.data:
            if key not in self.asked:
                self.faults.unknown(self.spot(key), key, self.asked, listed)

    def refuse(self) -> None:
        """Raise `InputError` with every fault of the file, where there is one."""
        if self.faults.found:
            raise InputError(self.faults.found)


def opened(path: Path, wanted: FileKind | None = None) -> TableReader:
    """Return a file's outermost table, with its unit.

    Raises `InputError` for a text that is no TOML, and for another kind of file than is `wanted`.
    """
    file = read_toml(path) if wanted is None else _of_kind(path, wanted)
    table = TableReader(file, Faults(file.path, list(file.faults)), file.data)
    table.unit = table.faults.unit(table.given("unit"))
    return table


def _of_kind(path: Path, wanted: FileKind) -> TomlFile:
    """Return a file of the kind that is wanted; raises `InputError` that names any other as what it is."""
    try:
        file = read_toml(path)
    except InputError:
        other = no_file_of_ours(path, wanted)
        if other is None:
            raise
        raise InputError([other]) from None
    if not file.data and (other := no_file_of_ours(path, wanted)):
        raise InputError([other])
    found = told_kind(file.data, wanted)
    if found is not wanted:
        raise InputError([wrong_kind(path, found, wanted)])
    return file


def _day(key: str, value: object) -> date:
    if isinstance(value, date) and not isinstance(value, datetime):
        return value
    raise BadValue(f"{as_written(value)} is no day", f"write it like {key} = 2027-01-05")


def _entry_of(value: object, words: tuple[str, ...]) -> str:
    number = isinstance(value, int) and not isinstance(value, bool)
    return one_of(as_written(value) if number else value, words)
