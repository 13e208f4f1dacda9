"""Bodies from CSV: one measure a row, or one wearer a row."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from drafting.body.body import SIDES, Body
from drafting.body.toml_reader import KEYS, RawBody, body_of, read_toml_body
from drafting.ground.errors import Fault, InputError
from drafting.ground.findings import Finding
from drafting.ground.names import clean_text
from drafting.ground.nearest import meant
from drafting.ground.units import LENGTH_UNITS, SHOWN, WEIGHT_UNITS
from drafting.reading.given import MOST_FAULTS, Faults, Given
from drafting.reading.table import Row, read_table

OTHER_WEARERS = "other wearers"
"""The check whose notes say what is wrong with the other rows of a table."""

HEADS = ("name", "value", "unit")

MOST_WEARERS = 400
"""Rows of a table of wearers (ours: a large cast; each takes a few milliseconds)."""


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
        return _called(named, _read_rows(file), file)
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


@dataclass(frozen=True)
class _RowRead:
    """One wearer of a table as she could be read: her name, and her body or what is wrong with her row."""

    name: str
    body: Body | None
    faults: tuple[Fault, ...] = ()


def _read_rows(path: Path) -> list[_RowRead]:
    """Return the wearers of a file, those that cannot be read too; raises `InputError` for faults of all of it."""
    rows = _table(path)
    if rows and _plain(rows[0].cells[0]) == "wearer":
        doubled = _doubled(tuple(_plain(cell) for cell in rows[0].cells), rows[0].line, str(path))
        if doubled:
            raise InputError(doubled)
        return list(_each(rows, str(path)))
    return [_RowRead(body.title, body) for body in read_bodies(path)]


def _called(named: str, read: Sequence[_RowRead], file: Path) -> Body:
    """Return the one of several wearers that is called so; raises `InputError`."""
    found = [one for one in read if one.name.casefold() == named.casefold()]
    if len(found) == 1:
        (one,) = found
        if one.body is None:
            raise InputError(one.faults)
        return replace(one.body, said=(*one.body.said, *_of_others(read, one)))
    if found:
        fault = Fault(
            f"holds {len(found)} wearers called {clean_text(named, SHOWN)}", "give each a name of its own"
        )
    else:
        right = meant(named, [one.name for one in read], "the first column of the file names all")
        fault = Fault(f"holds no wearer called {clean_text(named, SHOWN)}", right)
    raise InputError([replace(fault, field="wearer", file=str(file), line=1)])


def _of_others(read: Sequence[_RowRead], named: _RowRead) -> Iterator[Finding]:
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
    if path.suffix.lower() != ".csv":
        return (read_toml_body(path),)
    rows = _table(path)
    if _plain(rows[0].cells[0]) == "wearer":
        return _wearers(rows, str(path))
    faults = Faults(str(path))
    return (body_of(_one(rows, faults), faults, default_title=path.stem),)


def _table(path: Path) -> Sequence[Row]:
    """Return the rows of a CSV file, none of another kind of file; raises `InputError` where it is empty."""
    if path.suffix.lower() != ".csv":
        return ()
    rows = read_table(path)
    if not rows:
        raise InputError([Fault("holds no rows", "write name,value,unit rows", "", str(path), 1)])
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
        _put(raw, faults, name, _given(cells.get("value", ""), cells.get("unit", ""), row.line))
    _paired(raw, faults)
    return raw


def _wearers(rows: Sequence[Row], file: str) -> tuple[Body, ...]:
    """Return the wearers of a table with one wearer a row, all faults of all rows at once."""
    found = _doubled(tuple(_plain(cell) for cell in rows[0].cells), rows[0].line, file)
    bodies = []
    for one in _each(rows, file):
        bodies += [one.body] if one.body else []
        found += one.faults
        if len(found) > MOST_FAULTS:
            break
    if not bodies and not found:
        found.append(Fault("holds no wearer", "write one row for each", "", file, rows[0].line))
    if found:
        raise InputError(found)
    return tuple(bodies)


def _each(rows: Sequence[Row], file: str) -> Iterator[_RowRead]:
    """Yield the wearer of each row of a table with one wearer a row."""
    heads = tuple(_plain(cell) for cell in rows[0].cells)
    units = rows[1].cells if len(rows) > 1 and _holds_units(rows[1]) else ()
    if len(rows) > MOST_WEARERS:
        what = f"holds {len(rows) - 1} rows"
        raise InputError([Fault(what, f"{MOST_WEARERS} are taken at most", "", file, rows[MOST_WEARERS].line)])
    for row in rows[2 if units else 1 :]:
        faults = Faults(file)
        if any(row.cells[len(heads) :]):
            faults.add("has more cells than the first row", "check the commas", row.cells[0], row.line)
        raw = RawBody(line=row.line)
        for n, (head, cell) in enumerate(zip(heads[1:], row.cells[1:], strict=False), 1):
            if head and cell:
                unit = units[n] if n < len(units) else ""
                _put(raw, faults, head, _given(cell, unit, row.line))
        _paired(raw, faults)
        try:
            body = body_of(raw, faults, default_title=row.cells[0])
            yield _RowRead(body.title, body)
        except InputError as refused:
            yield _RowRead(row.cells[0], None, tuple(_of(row, fault) for fault in refused.faults))


def _of(row: Row, fault: Fault) -> Fault:
    wearer = clean_text(row.cells[0], SHOWN)
    name = f"{wearer}, {fault.field}" if fault.field else wearer
    return Fault(fault.what, fault.right, name, fault.file, fault.line or row.line)


def _doubled(heads: Sequence[str], line: int, file: str) -> list[Fault]:
    twice = sorted(head for head, count in Counter(heads).items() if head and count > 1)
    faults = Faults(file)
    for head in twice:
        faults.add("heads two columns", "keep one", head, line)
    return faults.found


def _holds_units(row: Row) -> bool:
    cells = [cell.lower() for cell in row.cells[1:] if cell]
    known = {**LENGTH_UNITS, **WEIGHT_UNITS}
    return bool(cells) and all(cell in known for cell in cells)


def _given(value: str, unit: str, line: int) -> Given:
    """Return a cell with the unit of its column, which the cell's own unit outdoes."""
    bare = value and not any(mark.isalpha() or mark in "\"'″′”’" for mark in value)
    return Given(f"{value} {unit}" if bare and unit else value, line)


def _put(raw: RawBody, faults: Faults, name: str, given: Given) -> None:
    """Put one cell where it belongs: beside the measures, under the layers, or among them."""
    if name.startswith("layers."):
        raw.layers[name.removeprefix("layers.")] = given
    elif name in KEYS:
        raw.about[name] = given
    elif name:
        raw.measures[name] = given
    else:
        faults.add("has no name", "write the measure's name in the first cell", "", given.line)


def _paired(raw: RawBody, faults: Faults) -> None:
    """Join `name.left` and `name.right` into one measure."""
    for name in [n.rpartition(".")[0] for n in raw.measures if n.rpartition(".")[2] in SIDES]:
        hands = [raw.measures.pop(f"{name}.{side}", None) for side in SIDES]
        left, right = hands
        if isinstance(left, Given) and isinstance(right, Given):
            raw.measures[name] = (left, right)
        elif isinstance(one := left or right, Given):
            faults.add("needs both hands", f"give {name}.left and {name}.right", name, one.line)
