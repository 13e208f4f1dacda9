"""Bodies from CSV: one measure a row, or one wearer a row."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from pathlib import Path

from drafting.body.body import Body
from drafting.body.dimensions import dimension_name
from drafting.body.in_rows import (
    TITLES,
    Headed,
    WearerRead,
    each_wearer,
    given,
    hands_paired,
    headed,
    put,
    rows_kept,
    told_apart,
    wrong_headings,
)
from drafting.body.toml_reader import RawBody, body_of, read_toml_body
from drafting.ground.errors import Fault, InputError
from drafting.ground.findings import Finding
from drafting.ground.names import clean_text
from drafting.ground.nearest import meant
from drafting.ground.units import SHOWN
from drafting.reading.given import MOST_FAULTS, Faults
from drafting.reading.spreadsheet import ENDINGS, read_spreadsheet
from drafting.reading.table import Row, read_table

OTHER_WEARERS = "other wearers"
"""The check whose notes say what is wrong with the other rows of a table."""

HEADS = ("name", "value", "unit")

TABLES = (".csv", *ENDINGS)
"""Endings of the files that hold a table."""

HEADINGS = "write a row of headings, as Name, Height, Bust, Waist, Hip, and below it one wearer a row"
"""What a table of wearers should hold."""


def read_body(path: Path | str) -> Body:
    """Return the one wearer of a TOML or CSV file, every measure in mm; `FILE#NAME` names one of several.

    Raises `InputError` with every fault of the file, each with its line. Where one of several is named,
    only her own row's faults refuse her: what is wrong with the others is said in a note.

    >>> from drafting.ground.shipped import shipped
    >>> body = read_body(shipped("measurements") / "bodies" / "lamplighter.toml")
    >>> body["bust_girth"], body.measured("bust_girth")  # the file says 36 1/4 in
    (920.75, True)
    """
    file, named = _file_and_name(path)
    if named:
        return _called(named, read_wearers(file), file)
    bodies = read_bodies(file)
    if len(bodies) != 1:
        titles = ", ".join(clean_text(body.title, SHOWN) for body in bodies[:6])
        right = f"keep one in the file, or name one behind a #: {file.name}#{clean_text(bodies[0].title, SHOWN)}"
        raise InputError([Fault(f"holds {len(bodies)} wearers ({titles})", right, "wearer", str(file), 1)])
    return bodies[0]


def _file_and_name(path: Path | str) -> tuple[Path, str]:
    """Return the file, and the wearer named behind the last # of a path that is no file itself."""
    text = str(path)
    file, mark, named = text.rpartition("#")
    return (Path(file), named.strip()) if mark and file and not Path(text).exists() else (Path(text), "")


def read_wearers(path: Path | str, unit: str | None = None) -> tuple[WearerRead, ...]:
    """Return the wearers of a file, those that cannot be read too, each with what is wrong with her row.

    Bare numbers of a table that says no unit are in `unit`. Raises `InputError` for faults of all of it.
    """
    path = Path(path)
    rows = _table(path, HEADINGS)
    table = headed(rows)
    if table is None:
        if rows and not any(dimension_name(_plain(row.cells[0])) for row in rows):
            raise InputError([_nameless(rows[0], path)])
        return tuple(WearerRead(body.title, body) for body in read_bodies(path))
    wrong = wrong_headings(table, str(path), unit) or _nobody(table, str(path))
    if wrong:
        raise InputError(wrong)
    return tuple(told_apart(tuple(each_wearer(table, str(path), unit)), str(path)))


def _called(named: str, read: Sequence[WearerRead], file: Path) -> Body:
    """Return the one of several wearers that is called so; raises `InputError`."""
    found = [one for one in read if one.name.casefold() == named.casefold()]
    if len(found) == 1:
        (one,) = found
        if one.body is None:
            raise InputError(one.faults)
        return replace(one.body, said=(*one.body.said, *_of_others(read, one)))
    if found:
        fault = Fault(
            f"holds {len(found)} wearers called {clean_text(named, SHOWN)}",
            "give each a name of her own, or tell them apart in a column headed id",
        )
    else:
        right = meant(named, [one.name for one in read], "the first column of the file names all")
        fault = Fault(f"holds no wearer called {clean_text(named, SHOWN)}", right)
    raise InputError([replace(fault, field="wearer", file=str(file), line=1)])


def _of_others(read: Sequence[WearerRead], named: WearerRead) -> Iterator[Finding]:
    """Yield a note for each other wearer of the table that could not be read."""
    for one in read:
        if one is not named and one.faults:
            first, more = one.faults[0], len(one.faults) - 1
            rest = f" (and {more} more)" if more else ""
            words = f"another wearer of this table cannot be read: {first}{rest}; nothing of that row is used here"
            yield Finding(OTHER_WEARERS, "note", clean_text(one.name, SHOWN), "", None, words)


def read_bodies(path: Path | str) -> tuple[Body, ...]:
    """Return every wearer of a CSV file (or the one of a TOML file), every measure in mm.

    Raises `InputError` with every fault of the file, each with its line.

    >>> from drafting.ground.shipped import shipped
    >>> len(read_bodies(shipped("measurements") / "bodies" / "kite.toml"))
    1
    """
    path = Path(path)
    if path.suffix.lower() not in TABLES:
        return (read_toml_body(path),)
    rows = _table(path, f"write name,value,unit rows for one wearer; for several {HEADINGS}")
    table = headed(rows)
    if table is not None:
        return _wearers(table, str(path))
    faults = Faults(str(path))
    return (body_of(_one(rows, faults), faults, default_title=path.stem),)


def _nameless(row: Row, path: Path) -> Fault:
    return Fault("heads no column with the wearers' names", HEADINGS, "", str(path), row.line)


def _table(path: Path, right: str) -> Sequence[Row]:
    """Return the rows of a table, none of another kind of file; raises `InputError` where it is empty: `right`."""
    if path.suffix.lower() not in TABLES:
        return ()
    rows = read_table(path) if path.suffix.lower() == ".csv" else read_spreadsheet(path)
    if not rows:
        raise InputError([Fault("holds no rows", right, "", str(path), 1)])
    for row in rows[: TITLES + 1]:
        if sum(dimension_name(_plain(cell)) is not None for cell in row.cells) > 1 and headed(rows) is None:
            raise InputError([_nameless(row, path)])
    return rows


def _plain(cell: str) -> str:
    return cell.strip().lower().replace(" ", "_").replace("-", "_")


def _one(rows: Sequence[Row], faults: Faults) -> RawBody:
    """Return the wearer of a table with one measure a row (a heading row may be missing)."""
    heads = tuple(_plain(cell) for cell in rows[0].cells)
    headed = "name" in heads and "value" in heads
    order = heads if headed else HEADS
    raw = RawBody(line=rows[0].line)
    seen: dict[str, int] = {}
    for row in rows[1:] if headed else rows:
        if any(row.cells[len(order) :]):
            right = "a decimal comma needs semicolons between the cells, or quotes round the number"
            faults.add(f"has {len(row.cells)} cells, {len(order)} are known", right, row.cells[0], row.line)
            continue
        cells = dict(zip(order, row.cells, strict=False))
        name = _plain(cells.get("name", ""))
        if name in seen:
            faults.add(f"is given twice, on lines {seen[name]} and {row.line}", "keep one", name, row.line)
            continue
        seen[name] = row.line
        cell = given(cells.get("value", ""), cells.get("unit", ""), row.line)
        if name:
            put(raw, name, cell)
        else:
            faults.add("has no name", "write the measure's name in the first cell", "", cell.line)
    hands_paired(raw, faults)
    return raw


def _wearers(table: Headed, file: str) -> tuple[Body, ...]:
    """Return the wearers of a table with one wearer a row, all faults of all rows at once."""
    found = wrong_headings(table, file) or _nobody(table, file)
    bodies = []
    for one in () if found else each_wearer(table, file):
        bodies += [one.body] if one.body else []
        found += one.faults
        if len(found) > MOST_FAULTS:
            break
    if found:
        raise InputError(found)
    return tuple(bodies)


def _nobody(table: Headed, file: str) -> list[Fault]:
    if rows_kept(table):
        return []
    what, right = "holds no wearer", "write one row for each"
    if table.rows:
        what, right = f"{what}: each name begins with #, which leaves its row out", "write the names without it"
    return [Fault(what, right, "", file, table.row.line)]
