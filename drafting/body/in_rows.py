"""A table with one wearer a row: a maker's headings, units in them or below them, a fault's place in both."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from drafting.body.body import SIDES, Body
from drafting.body.dimensions import names_offered
from drafting.body.headings import ABOUT_HER, ID, ROLE, UNDERSTUDIES, UNIT, WEARER, Heading, column_heading
from drafting.body.toml_reader import KEYS, RawBody, body_of
from drafting.ground.errors import Fault, InputError
from drafting.ground.names import clean_text
from drafting.ground.units import LENGTH_UNITS, SHOWN, WEIGHT_UNITS
from drafting.reading.given import Faults, Given
from drafting.reading.table import Row

MOST_WEARERS = 2000
"""Rows of a table of wearers (ours: a large cast; each takes a few milliseconds)."""

NAMED = 4
"""Columns that a fault names (ours)."""

SUMS = frozenset(("sum", "total", "totals", "subtotal", "average", "median"))
"""What a spreadsheet's row of sums is called; it is nobody's."""

TITLES = 5
"""Rows above the headings, such as the name of the show, that are passed over (ours)."""


@dataclass(frozen=True)
class WearerRead:
    """A wearer of a table as she could be read: her name, her body or what is wrong with her row.

    `role` is what she plays, `understudies` whose understudy she is, `id` what tells her from one of the same
    name; "" where no column says it.
    """

    name: str
    body: Body | None
    faults: tuple[Fault, ...] = ()
    line: int | None = None
    role: str = ""
    understudies: str = ""
    id: str = ""


@dataclass(frozen=True)
class Headed:
    """A table of wearers taken apart: its headings with their row, and the row of units, if there is one."""

    row: Row
    heads: tuple[Heading, ...]
    units: tuple[str, ...]
    rows: tuple[Row, ...]

    @property
    def names_at(self) -> int:
        """The column that names the wearer."""
        return next(n for n, head in enumerate(self.heads) if head.name == WEARER)


def headed(rows: Sequence[Row]) -> Headed | None:
    """Return a table with one wearer a row, None for rows that are none; titles above it are passed over."""
    for n, row in enumerate(rows[: TITLES + 1]):
        heads = tuple(column_heading(cell) for cell in row.cells)
        if any(head.name == WEARER for head in heads) and "value" not in (cell.lower() for cell in row.cells):
            below = tuple(rows[n + 1 :])
            units = below[0].cells if below and _holds_units(below[0]) else ()
            return Headed(row, heads, units, below[1 if units else 0 :])
        if sum(map(bool, row.cells)) > 1:
            return None
    return None


def wrong_headings(table: Headed, file: str, unit: str | None = None) -> list[Fault]:
    """Return what is wrong with the headings of a table, which no row can mend; bare numbers are in `unit`."""
    faults = Faults(file)
    first: dict[str, str] = {}
    for n, head in enumerate(table.heads):
        cell, line = table.row.cells[n], table.row.line
        if faults.full:
            break
        if not head.known:
            right = f"{names_offered(head.name)}; or begin the heading with #, and the column is left out"
            faults.add("heads a column, and is no body dimension", right, cell, line)
        elif head.name and head.today in first:
            faults.add("heads two columns" + _other_words(first[head.today], cell), "keep one", cell, line)
        elif head.name:
            first[head.today] = cell
    faults.found += _without_unit(table, file, unit)
    if len(table.rows) > MOST_WEARERS:
        most = f"{MOST_WEARERS} are taken at most"
        faults.add(f"holds {len(table.rows)} rows", most, "", table.rows[MOST_WEARERS].line)
    return faults.found


def _without_unit(table: Headed, file: str, unit: str | None) -> Iterator[Fault]:
    """Yield, once, that columns of lengths say their unit nowhere: not for one wearer."""
    if unit or any(head.name == UNIT for head in table.heads):
        return
    bare = [
        table.row.cells[n]
        for n, (head, own) in enumerate(zip(table.heads, _units(table), strict=True))
        if head.is_length and not own
        if table.rows and all(_is_bare("".join(row.cells[n : n + 1])) for row in table.rows)
    ]
    if bare and len(table.rows) > 1:
        others = f" and {len(bare) - NAMED} more" if len(bare) > NAMED else ""
        what = f"{', '.join(bare[:NAMED])}{others}: nothing says in which unit these columns are"
        right = f'write it once: "{bare[0]} (cm)" in the heading, cm in the row below it, or a column unit'
        yield Fault(what, right, "", file, table.row.line)


def _is_bare(cell: str) -> bool:
    return bool(cell) and cell.replace(",", ".").replace(".", "", 1).strip().isdecimal()


def _units(table: Headed) -> tuple[str, ...]:
    """Return the unit of each column, by its heading or by the row below; "" where neither says one."""
    below = (table.units[n] if n < len(table.units) else "" for n in range(len(table.heads)))
    return tuple(head.unit or own for head, own in zip(table.heads, below, strict=True))


def _other_words(one: str, other: str) -> str:
    return "" if one == other else f": {clean_text(one, SHOWN)} says the same"


def each_wearer(table: Headed, file: str, unit: str | None = None) -> Iterator[WearerRead]:
    """Yield the wearer of each row; bare numbers are in the unit of their column, else of the row, else `unit`."""
    units = _units(table)
    for row in rows_kept(table):
        yield _wearer(table, row, units, Faults(file), unit)


def rows_kept(table: Headed) -> tuple[Row, ...]:
    """Return the rows of wearers, without those that a maker has set aside."""
    return tuple(row for row in table.rows if not _left_out(table, row))


def _left_out(table: Headed, row: Row) -> bool:
    """Return whether a maker has set a row aside: its name begins with #."""
    return "".join(row.cells[table.names_at : table.names_at + 1]).startswith("#")


def told_apart(read: Sequence[WearerRead], file: str) -> Iterator[WearerRead]:
    """Yield the wearers of a table, those of one name called by their `id` too; where that tells none apart, no
    body, and the lines of all of them."""
    alike: dict[str, list[WearerRead]] = {}
    for one in read:
        alike.setdefault(one.name.casefold() or f"row {one.line}", []).append(one)
    for one in read:
        others = [two for two in alike.get(one.name.casefold(), []) if two is not one]
        if not one.name or not others:
            yield one
        elif one.id and one.id.casefold() not in (two.id.casefold() for two in others):
            name = f"{one.name} ({one.id})"
            yield replace(one, name=name, body=one.body and replace(one.body, title=name))
        else:
            lines = " and ".join(str(two.line) for two in others)
            what = f"has the name that line {lines} has" if len(others) == 1 else f"has the name of lines {lines}"
            right = "give each a name of her own, or tell them apart in a column headed id"
            fault = Fault(what, right, clean_text(one.name, SHOWN), file, one.line)
            yield replace(one, body=None, faults=(fault, *one.faults))


def _wearer(table: Headed, row: Row, units: Sequence[str], faults: Faults, unit: str | None) -> WearerRead:
    raw, told = RawBody(line=row.line), dict.fromkeys((WEARER, ROLE, UNDERSTUDIES, ID), "")
    if unit:
        raw.about["unit"] = Given(unit, row.line)
    for head, own, cell in zip(table.heads, units, row.cells, strict=False):
        if cell and head.name in ABOUT_HER.values():
            told[head.name] = cell
        elif cell and head.name:
            put(raw, head.name, given(cell, own, row.line))
    name = told[WEARER]
    if not name:
        faults.add("names no wearer", f"write a name below {table.row.cells[table.names_at]}", "", row.line)
    if name.strip(" .:").casefold() in SUMS:
        faults.add(
            "is no wearer but a row that adds up the others", "take it out, or begin it with #", name, row.line
        )
        return WearerRead(name, None, tuple(faults.found), row.line)
    if any(row.cells[len(table.heads) :]):
        right = "a decimal comma needs semicolons between the cells, or quotes round the number"
        faults.add("has more cells than the first row", right, "", row.line)
    hands_paired(raw, faults)
    read = WearerRead(
        name=name, body=None, line=row.line, role=told[ROLE], understudies=told[UNDERSTUDIES], id=told[ID]
    )
    try:
        body = body_of(raw, faults, default_title=name)
    except InputError as refused:
        return replace(read, faults=tuple(_of(table, name, row, fault) for fault in refused.faults))
    return replace(read, name=body.title, body=body)


def _of(table: Headed, name: str, row: Row, fault: Fault) -> Fault:
    where = ", ".join(filter(None, (clean_text(name, SHOWN), fault.field, *_columns(table, fault.field))))
    return Fault(fault.what, fault.right, where, fault.file, fault.line or row.line)


def _columns(table: Headed, field: str) -> Iterator[str]:
    """Yield the maker's own headings of the measures that a fault names, where they are other words."""
    named = {name.strip() for name in field.split(",")}
    for head, cell in zip(table.heads, table.row.cells, strict=True):
        own = head.today.partition(".")[0]
        meant = {own, head.name, head.name.partition(".")[0]}
        if own and named & meant and cell.casefold().replace(" ", "_") not in named:
            yield f'column "{clean_text(cell, SHOWN)}"'


def _holds_units(row: Row) -> bool:
    cells = [cell.lower() for cell in row.cells if cell]
    known = {**LENGTH_UNITS, **WEIGHT_UNITS}
    named = {"unit", "units", "wearer", "name"}
    return any(cell in known for cell in cells) and all(cell in known or cell in named for cell in cells)


def given(value: str, unit: str, line: int) -> Given:
    """Return a cell with the unit of its column, which the cell's own unit outdoes."""
    bare = value and not any(mark.isalpha() or mark in "\"'″′”’" for mark in value)
    return Given(f"{value} {unit}" if bare and unit else value, line)


def put(raw: RawBody, name: str, cell: Given) -> None:
    """Put one cell where it belongs: beside the measures, under the layers, or among them."""
    if name.startswith("layers."):
        raw.layers[name.removeprefix("layers.")] = cell
    elif name in KEYS:
        raw.about[name] = cell
    else:
        raw.measures[name] = cell


def hands_paired(raw: RawBody, faults: Faults) -> None:
    """Join `name.left` and `name.right` into one measure."""
    for name in [n.rpartition(".")[0] for n in raw.measures if n.rpartition(".")[2] in SIDES]:
        hands = [raw.measures.pop(f"{name}.{side}", None) for side in SIDES]
        left, right = hands
        if isinstance(left, Given) and isinstance(right, Given):
            raw.measures[name] = (left, right)
        elif isinstance(one := left or right, Given):
            faults.add("needs both hands", f"give {name}.left and {name}.right", name, one.line)
