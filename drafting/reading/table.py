"""CSV as spreadsheets save it: comma or semicolon, byte-order mark, either line end."""

from __future__ import annotations

import csv
from dataclasses import dataclass
from itertools import islice
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
    began = ended = 0
    try:
        for cells in reader:
            began, ended = ended + 1, reader.line_num
            stripped = tuple(cell.strip() for cell in cells)
            if any(cell.strip(",;") for cell in stripped):
                rows.append(Row(reader.line_num, stripped))
    except csv.Error as trouble:
        long = "field limit" in str(trouble)
        what = "this row has a cell far too long" if long else f"this row cannot be read: {trouble}"
        right = "look for a quote that is not closed, and save the table as CSV again"
        raise InputError([Fault(what, right, "", path, max(1, reader.line_num))]) from None
    lines = text.split("\n")
    if ended > began and "".join(lines[began - 1 : ended]).count('"') % 2:  # the last row, over several lines
        first = next(n for n, line in enumerate(lines[began - 1 :], began) if '"' in line)
        what = "a quote is opened here and never closed"
        raise InputError([Fault(what, "close it, or take it out", "", path, first)])
    return tuple(rows)


FIRST_ROWS = 8
"""Rows that are looked at to tell what parts the cells (ours): a title may stand above the headings."""


def _separator(text: str) -> str:
    """Return what parts the cells: a semicolon or tab in the first row that has cells wins, or in two below."""
    filled = (row for row in text.split("\n") if row.strip(' ,;\t"'))
    rows = list(islice(filled, FIRST_ROWS))
    for mark in ";\t":
        parted = [row for row in rows if row.count(mark) >= max(2, row.count(","))]
        if (rows and mark in rows[0]) or len(parted) > 1:
            return mark
    return ","
