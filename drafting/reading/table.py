"""CSV as spreadsheets save it: comma or semicolon, byte-order mark, either line end."""

from __future__ import annotations

import csv
from dataclasses import dataclass
from pathlib import Path

from drafting.ground.errors import Fault, InputError
from drafting.reading.text import read_text


@dataclass(frozen=True, slots=True)
class Row:
    """The stripped cells of one row and the line it ends on."""

    line: int
    cells: tuple[str, ...]


def read_table(path: Path) -> tuple[Row, ...]:
    """Return the rows of a CSV file, blank ones left out; raises `InputError`."""
    return parse_table(read_text(path, fallback="cp1252"), str(path))


def parse_table(text: str, path: str = "") -> tuple[Row, ...]:
    """Return the rows of a CSV `text`; `path` is for the faults."""
    reader = csv.reader(text.split("\n"), delimiter=_separator(text), skipinitialspace=True)
    rows = []
    try:
        for cells in reader:
            stripped = tuple(cell.strip() for cell in cells)
            if any(stripped):
                rows.append(Row(reader.line_num, stripped))
    except csv.Error as trouble:
        what = f"this row cannot be read: {trouble}"
        fault = Fault(what, "save the table as CSV again", "", path, max(1, reader.line_num))
        raise InputError([fault]) from None
    return tuple(rows)


def _separator(text: str) -> str:
    """Return what parts the cells: a semicolon or tab in the first row that has cells wins."""
    first = next((row for row in text.split("\n") if row.strip(' ,;\t"')), "")
    return next((mark for mark in ";\t" if mark in first), ",")
