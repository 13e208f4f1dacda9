"""The whole file of a spreadsheet as it was saved, as rows of text: the one door to python-calamine."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date, datetime
from pathlib import Path

from drafting.ground.errors import Fault, InputError
from drafting.reading.table import Row
from drafting.reading.text import LARGEST, looked_at

ENDINGS = (".xlsx", ".xlsm", ".xls", ".ods")
"""Endings of the files that spreadsheets save whole."""

MOST_ROWS, MOST_COLUMNS = 5000, 300
"""Of one sheet (ours: a table of people is far smaller; a packed file may unfold to millions)."""


def read_spreadsheet(path: Path) -> tuple[Row, ...]:
    """Return the rows of the first sheet that holds any, blank ones left out; raises `InputError`.

    A row's line is its number in the sheet. What a cell shows by its format (a unit, a rounding) is not
    read: a number is the number that was typed.
    """
    looked_at(path, most=10 * LARGEST)
    for cells in _sheets(path):
        rows = tuple(Row(n, row) for n, row in enumerate(map(_texts, cells), 1) if any(row))
        if rows:
            return rows
    return ()


def _sheets(path: Path) -> Iterable[list[list[object]]]:
    """Yield the cells of each sheet."""
    try:
        import python_calamine
    except ImportError:
        what = "is the whole file of a spreadsheet, and what reads those is not installed"
        right = 'pip install "drafting-kit[cast]", or save the sheet as CSV'
        raise InputError([Fault(what, right, "", str(path))]) from None
    try:
        book = python_calamine.CalamineWorkbook.from_path(str(path))
        for name in book.sheet_names:
            sheet = book.get_sheet_by_name(name)
            if sheet.total_height > MOST_ROWS or sheet.total_width > MOST_COLUMNS:
                what = f"its sheet {name!r} has {sheet.total_height} rows and {sheet.total_width} columns"
                raise InputError([Fault(what, f"{MOST_ROWS} and {MOST_COLUMNS} are taken at most", "", str(path))])
            yield sheet.to_python(skip_empty_area=False)
    except (python_calamine.CalamineError, OSError, ValueError) as trouble:
        what = f"is no spreadsheet that can be read ({trouble})"
        raise InputError([Fault(what, "save it anew as .xlsx or .ods, or as CSV", "", str(path))]) from None


def _texts(row: list[object]) -> tuple[str, ...]:
    return tuple(map(_text, row))


def _text(cell: object) -> str:
    """Return a cell as its maker would have typed it."""
    if isinstance(cell, datetime):
        return (cell.date() if cell.time() == datetime.min.time() else cell).isoformat()
    if isinstance(cell, date):
        return cell.isoformat()
    if isinstance(cell, bool):
        return str(cell).lower()
    if isinstance(cell, float):
        return repr(int(cell)) if cell.is_integer() and abs(cell) < 1e15 else repr(cell)
    return str(cell).strip()
