"""What a costume file may ask of its lays: the tables `[lays.<role>]`.

[lays.shell]
lay = "open"
gap = "8 mm"
faults = [{along = 120, across = 30, length = 6, width = 4}]
"""

from __future__ import annotations

from collections.abc import Iterator

from drafting.geometry.path import Box
from drafting.ground.errors import InputError
from drafting.layout.cloth import LayWishes
from drafting.reading.choices import read_choices
from drafting.reading.cursor import TableReader

Wished = tuple[LayWishes, tuple[Box, ...]]
"""The wishes for one cloth, and the boxes of it that cannot be used."""

FAULT = ("along", "across", "length", "width")
"""A fault in the cloth: its corner from the start of the lay and one selvedge, and its size."""


FURTHER_ROLES = ("lining", "interfacing", "contrast")
"""What pieces may be cut from though the costume names no cloth for it."""


def read_lays(lays: TableReader, roles: tuple[str, ...]) -> dict[str, Wished]:
    """Return the wishes of each role; what is wrong goes to the faults of the file."""
    found: dict[str, Wished] = {}
    known = dict.fromkeys((*roles, *FURTHER_ROLES))
    for role in lays.data:
        if role not in known:
            lays.faults.unknown(lays.spot(role), role, known)
        table = lays.table(role)
        boxes = tuple(box for one in table.numbered("faults") for box in _box(one))
        try:
            wishes, _ = read_choices(LayWishes, dict(table.every()), table.origin())
        except InputError as refused:
            table.faults.found.extend(refused.faults)
        else:
            found[role] = wishes, boxes
    return found


def _box(table: TableReader) -> Iterator[Box]:
    """Yield the box of one fault in the cloth, where it can be read."""
    right = "write it like {along = 120, across = 30, length = 6, width = 4}"
    lengths = [table.needed(key, table.as_length("not negative"), right) for key in FAULT]
    table.close()
    x, y, long, wide = (length or 0.0 for length in lengths)
    if None not in lengths:
        yield x, y, x + long, y + wide
