"""What is wrong with a line that is no TOML, and what it most likely means.

A line that can be mended is a fault all the same; it is read as mended, so that the rest of the file
can be judged at once.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from drafting.ground.errors import Fault, InputError
from drafting.ground.names import clean_text
from drafting.ground.units import SHOWN
from drafting.reading.given import Faults

CURED = 300
"""Characters of a line that is searched for a cure (ours)."""

MOST_CURES = 20
"""Lines of one file that are mended (ours: beyond that it is another kind of file)."""

_KEY = r"\s*(?P<key>[A-Za-z0-9_.-]+)\s*=\s*"
_BARE = re.compile(_KEY + r"(?P<value>[^\"'\[{#]+?)\s*(?:#.*)?")
_OPEN = re.compile(_KEY + r"[\"'](?P<value>[^\"'#]*?)\s*(?:#.*)?")
_DAY = re.compile(r"\d{2,4}-\d{1,2}-\d{1,2}")
_DOUBLE, _SINGLE = "\u201c\u201d\u201e\u201f\u00ab\u00bb", "\u2018\u2019\u201a\u201b"
_STRAIGHT = str.maketrans(dict.fromkeys(_DOUBLE, '"') | dict.fromkeys(_SINGLE, "'"))


@dataclass(frozen=True, slots=True)
class Cure:
    """A fault of one line, and the line as it was most likely meant (None: it has no cure)."""

    fault: Fault
    row: str | None


def loaded(rows: list[str], faults: Faults, line_of: Callable[[str, str], int]) -> dict[str, Any]:
    """Return the values of a file's `rows`; a line that can be mended is a fault, and is read as mended.

    `line_of(message, text)` tells the line that `tomllib` complains of. Raises `InputError`, with all
    `faults`, where a line cannot be mended.
    """
    rows, tried = list(rows), set[int]()
    while len(tried) <= MOST_CURES:
        text = "\n".join(rows)
        try:
            return tomllib.loads(text)
        except (tomllib.TOMLDecodeError, RecursionError, ValueError) as trouble:
            line = _unclosed(rows) or line_of(str(trouble), text)
            cure = cured(str(trouble), rows[line - 1], faults.file, line)
        if cure.row is None or line in tried:
            if not faults.found or tried:
                faults.found.append(cure.fault)
            break
        tried.add(line)
        faults.found.append(cure.fault)
        rows[line - 1] = cure.row
    raise InputError(faults.found)


def _unclosed(rows: list[str]) -> int:
    """Return the first line whose quote is not closed, of which `tomllib` may complain far below; 0 for none."""
    short = (row.translate(_STRAIGHT) if len(row) < CURED else "" for row in rows)
    return next((number for number, row in enumerate(short, 1) if _OPEN.fullmatch(row)), 0)


def cured(message: str, row: str, path: str, line: int) -> Cure:
    """Return what is wrong with a row of which `tomllib` says `message`, and its cure."""
    if len(row) < CURED:
        straight = row.translate(_STRAIGHT)
        if straight != row and _reads(straight):
            right = f"type straight ones: {clean_text(straight, 2 * SHOWN)}"
            return Cure(Fault("has curly quotes", right, _key(row), path, line, misquoted=True), straight)
        if opened := _OPEN.fullmatch(straight):
            right = f'close it: {opened["key"]} = "{clean_text(opened["value"], SHOWN)}"'
            fault = Fault("a quote is missing", right, opened["key"], path, line, misquoted=True)
            return Cure(fault, _quoted(opened))
        if bare := _BARE.fullmatch(row):
            value = clean_text(bare["value"], SHOWN)
            if _DAY.fullmatch(value):
                return Cure(
                    Fault(f"{value} is no day", "write it like 2027-01-05", bare["key"], path, line), f"# {row}"
                )
            right = f'put quotes round the value: {bare["key"]} = "{value}"'
            fault = Fault(f"{value} stands without quotes", right, bare["key"], path, line, misquoted=True)
            return Cure(fault, _quoted(bare))
    words = re.sub(r"\s*\(at .*\)", "", message).strip() or "it is nested too deeply"
    said = clean_text(f"this cannot be read: {words}", 140)
    return Cure(Fault(said, 'a line looks like key = "92 cm"', "", path, line), None)


def _quoted(match: re.Match[str]) -> str:
    value = match["value"].replace("\\", "").replace('"', "")
    return f'{match["key"]} = "{value}"'


def _key(row: str) -> str:
    key, equals, _ = row.partition("=")
    return clean_text(key, SHOWN) if equals else ""


def _reads(row: str) -> bool:
    try:
        return bool(tomllib.loads(row))
    except (tomllib.TOMLDecodeError, RecursionError, ValueError):
        return False
