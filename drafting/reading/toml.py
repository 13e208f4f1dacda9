"""TOML with the line of every key, and its mistakes named by line.

`tomllib` reads the values but tells no lines, so a small scanner walks the text beside it: it
follows strings and brackets just far enough to know where a key or a [table] begins.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from drafting.ground.errors import Fault, InputError
from drafting.ground.frozen import freeze
from drafting.reading.cures import loaded
from drafting.reading.entries import QUOTED, Keys, entry_lines
from drafting.reading.given import Faults
from drafting.reading.text import read_text

LARGEST = 200_000
"""Bytes of a TOML file (ours: a hundred times what a costume takes)."""

DEEPEST = 20
"""Tables within each other (ours; a costume has five)."""

LONGEST_ROW = 5_000
"""Characters of a line (ours; no maker's is longer)."""

_KEY = r"""(?:[A-Za-z0-9_-]+|"[^"\n]*"|'[^'\n]*')"""
_DOTTED = rf"{_KEY}(?:\s*\.\s*{_KEY})*"
_TABLE = re.compile(rf"\s*\[\s*(?P<keys>{_DOTTED})\s*\]\s*(?:#.*)?")
_ARRAY_TABLE = re.compile(rf"\s*\[\[\s*(?P<keys>{_DOTTED})\s*\]\]\s*(?:#.*)?")
_PAIR = re.compile(rf"\s*(?P<keys>{_DOTTED})\s*=(?P<value>.*)")
_TOKEN = re.compile(rf"{QUOTED}|[\[\]{{}}]")


@dataclass(frozen=True)
class TomlFile:
    """A TOML file's `data`, the line of each key, and the faults that left it readable."""

    path: str
    data: Mapping[str, Any]
    lines: Mapping[Keys, int]
    faults: tuple[Fault, ...] = ()

    def __post_init__(self) -> None:
        freeze(self, "data", "lines")

    def line(self, *keys: str) -> int | None:
        """Return the line of a key, or of the nearest table or key that holds it.

        A table without a line of its own stands where the first of its keys does.
        """
        for end in range(len(keys), 0, -1):
            if keys[:end] in self.lines:
                return self.lines[keys[:end]]
        return None


@dataclass(slots=True)
class _Scan:
    lines: dict[Keys, int] = field(default_factory=dict)
    twice: list[tuple[Keys, int, int]] = field(default_factory=list)  # keys, first, again
    spare: dict[int, str] = field(default_factory=dict)  # line given again -> what stands for it
    again: dict[str, Keys] = field(default_factory=dict)  # stand-in table -> the table it repeats
    entries: dict[Keys, int] = field(default_factory=dict)  # [[table]] -> its last entry
    implied: dict[Keys, int] = field(default_factory=dict)  # tables and entries without a line
    too_deep: int = 0  # the line of a key of more than `DEEPEST` parts

    def note(self, keys: Keys, line: int) -> bool:
        """Note a key or table; return whether it is new."""
        new = keys not in self.lines
        if new:
            self.lines[keys] = line
            for end in range(1, len(keys)):
                self.implied.setdefault(keys[:end], line)
        else:
            self.twice.append((keys, self.lines[keys], line))
        return new

    def within(self, keys: Keys) -> Keys:
        """Return `keys` with the number of the entry behind each [[table]] among them."""
        found: Keys = ()
        for key in keys:
            found = (*found, key)
            if found in self.entries:
                found = (*found, str(self.entries[found]))
        return found

    def entry(self, keys: Keys) -> Keys:
        """Begin one more entry of a [[table]]; return its keys, its number last."""
        array = (*self.within(keys[:-1]), keys[-1])
        self.entries[array] = self.entries.get(array, -1) + 1
        return self.within(keys)


def read_toml(path: Path) -> TomlFile:
    """Return the file's values with their lines.

    A key given twice is a fault that names both lines; the first one is kept, so that the rest of
    the file can be judged too. Raises `InputError` where the text cannot be read at all, or says
    nothing.
    """
    file = parse_toml(read_text(path, most=LARGEST), str(path))
    if not file.data and not file.faults:
        raise InputError([Fault("says nothing", "was it saved?", "", str(path), 1)])
    return file


def parse_toml(text: str, path: str = "") -> TomlFile:
    """Return the values and lines of a TOML `text`; `path` is for the faults."""
    longest = _longest_row(text)
    if len(text.split("\n")[longest - 1]) > LONGEST_ROW:
        what = f"this line has more than {LONGEST_ROW} characters"
        raise InputError([Fault(what, "write it on several", "", path, longest)])
    scan = _scanned(text)
    faults = Faults(path)
    for keys, first, again in scan.twice:
        what = f"is given twice, on lines {first} and {again}"
        faults.add(what, "keep one", ".".join(keys), again)
    kept = [scan.spare.get(number, row) for number, row in enumerate(text.split("\n"), 1)]
    data = {} if scan.too_deep else loaded(kept, faults, _line_of)
    if scan.too_deep or _depth(data) > DEEPEST:
        what = f"has more than {DEEPEST} tables within each other"
        line = scan.too_deep or longest
        raise InputError([Fault(what, "a costume needs five", "", path, line)])
    for stand_in, keys in scan.again.items():
        _merge(data, keys, data.pop(stand_in, {}))
    return TomlFile(path, data, scan.implied | scan.lines, tuple(faults.found))


def _depth(data: dict[str, Any]) -> int:
    """Return how many tables and lists stand within each other, counted to just over `DEEPEST`."""
    level: list[Any] = [data]
    for depth in range(DEEPEST + 1):
        inner = [one.values() if isinstance(one, dict) else one for one in level]
        level = [item for items in inner for item in items if isinstance(item, (dict, list))]
        if not level:
            return depth + 1
    return DEEPEST + 1


def _merge(data: dict[str, Any], keys: Keys, more: dict[str, Any]) -> None:
    """Put the keys of a table given again beside those it was first given."""
    table: Any = data
    for key in keys:
        entry = isinstance(table, list) and key.isdigit() and int(key) < len(table)
        table = table[int(key)] if entry else table.get(key) if isinstance(table, dict) else None
    if isinstance(table, dict):
        table.update({key: value for key, value in more.items() if key not in table})


def _scanned(text: str) -> _Scan:
    """Return the line of every key and table, and the keys given twice."""
    scan = _Scan()
    rows = text.split("\n")
    table: Keys = ()
    for statement in statements(text):
        number, row = statement.first, statement.row
        head = _ARRAY_TABLE.fullmatch(row) or _TABLE.fullmatch(row)
        match = head or _PAIR.fullmatch(row)
        keys = _split(match["keys"]) if match else ()
        if len(keys) > DEEPEST:
            scan.too_deep = scan.too_deep or number
        elif head and head.re is _ARRAY_TABLE:
            table = scan.entry(keys)
            scan.note(table, number)
        elif head:
            table = scan.within(keys)
            if not scan.note(table, number):
                stand_in = f"given again on line {number}"
                scan.spare[number], scan.again[stand_in] = f'["{stand_in}"]', table
        elif match:
            new = scan.note((*table, *keys), number)
            if statement.last == number and not new:
                scan.spare[number] = ""
            elif statement.last > number and new:
                scan.implied.update(entry_lines((*table, *keys), rows[number - 1 : statement.last], number))
    return scan


@dataclass(frozen=True, slots=True)
class Statement:
    """A key or a [table] of a file: its first and last line (from 1), and its first line's text."""

    first: int
    last: int
    row: str


def statements(text: str) -> Iterator[Statement]:
    """Yield each statement of a TOML text: a key with its whole value, or the head of a table."""
    depth, quote, began = 0, "", (0, "")
    for number, row in enumerate(text.split("\n"), 1):
        starts = depth == 0 and not quote
        if not (starts and row.lstrip().startswith("[")):
            depth, quote = _after(row, depth, quote)
        if starts:
            began = (number, row)
        said = began[1].strip() and not began[1].lstrip().startswith("#")
        if said and depth == 0 and not quote:
            yield Statement(began[0], number, began[1])
    if depth or quote:
        yield Statement(began[0], number, began[1])


def headers(text: str) -> dict[Keys, int]:
    """Return the line of each [table] by its keys; entries of a [[table]] are numbered."""
    scan, found = _Scan(), dict[Keys, int]()
    for statement in statements(text):
        if match := _ARRAY_TABLE.fullmatch(statement.row):
            found[scan.entry(_split(match["keys"]))] = statement.first
        elif match := _TABLE.fullmatch(statement.row):
            found.setdefault(scan.within(_split(match["keys"])), statement.first)
    return found


def _after(row: str, depth: int, quote: str) -> tuple[int, str]:
    """Return bracket depth and open long quote after a line that began with these."""
    at = 0
    while at < len(row):
        if quote:
            end = row.find(quote, at)
            if end < 0:
                return depth, quote
            at, quote = end + 3, ""
            continue
        token = _TOKEN.search(row, at)
        if token is None:
            break
        at, mark = token.end(), token[0]
        if mark in ('"""', "'''"):
            quote = mark
        elif mark in "[{":
            depth += 1
        elif mark in "]}":
            depth = max(0, depth - 1)
    return depth, quote


def _split(dotted: str) -> Keys:
    return tuple(part.strip().strip("\"'") for part in re.findall(_KEY, dotted))


def _line_of(message: str, text: str) -> int:
    """Return the line that `tomllib` means by a message about `text`."""
    place = re.search(r"\(at line (\d+), column \d+\)", message)
    return int(place[1]) if place else _open_row(text) if "end of doc" in message else _longest_row(text)


def _open_row(text: str) -> int:
    """Return the line on which the last statement begins: the one that finds no end."""
    return max((statement.first for statement in statements(text)), default=1)


def _longest_row(text: str) -> int:
    """Return the longest line: most likely the one with a number or nesting beyond all bounds."""
    rows = text.split("\n")
    return max(range(len(rows)), key=lambda number: len(rows[number])) + 1
