"""What a costume file may ask of its lays: the tables `[lays.<role>]`.

[lays.shell]
lay = "open"
gap = "8 mm"
faults = [{along = 120, across = 30, length = 6, width = 4}]
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import partial
from typing import Any

from drafting.geometry.path import Box
from drafting.ground.errors import InputError
from drafting.ground.units import parse_length
from drafting.layout.cloth import LayWishes
from drafting.reading.choices import read_choices
from drafting.reading.given import Faults, Given

Wished = tuple[LayWishes, tuple[Box, ...]]
"""The wishes for one cloth, and the boxes of it that cannot be used."""

FAULT = ("along", "across", "length", "width")
"""A fault in the cloth: its corner from the start of the lay and one selvedge, and its size."""


def read_lays(
    table: Mapping[str, Any],
    line: Callable[..., int | None],
    roles: tuple[str, ...],
    unit: str | None,
    faults: Faults,
) -> dict[str, Wished]:
    """Return the wishes of each role; what is wrong joins `faults`."""
    found: dict[str, Wished] = {}
    for role, value in table.items():
        where, at = f"lays.{role}", line("lays", role)
        if not isinstance(value, dict):
            faults.add("must be a table", f"begin it with a line [{where}]", where, at)
            continue
        if role not in (*roles, "lining", "interfacing", "contrast"):
            faults.unknown(role, roles, where, at)
        given = {k: Given(v, line("lays", role, k)) for k, v in value.items() if k != "faults"}
        try:
            wishes, _ = read_choices(LayWishes, given, unit, faults.file, where=where)
        except InputError as refused:
            faults.found.extend(refused.faults)
            continue
        boxes = value.get("faults", [])
        at = line("lays", role, "faults")
        found[role] = wishes, tuple(_boxes(boxes, f"{where}.faults", at, unit, faults))
    return found


def _boxes(rows: object, where: str, line: int | None, unit: str | None, faults: Faults) -> list[Box]:
    form = "faults = [{along = 120, across = 30, length = 6, width = 4}]"
    if not isinstance(rows, list) or not all(isinstance(row, dict) and set(row) == set(FAULT) for row in rows):
        faults.add("is not a list of faults", f"write it like {form}", where, line)
        return []
    boxes = []
    for row in rows:
        sizes = {
            key: faults.value(partial(parse_length, unit=unit, sign="not negative"), Given(row[key], line), where)
            for key in FAULT
        }
        if None not in sizes.values():
            x, y, long, wide = (float(sizes[key] or 0.0) for key in FAULT)
            boxes.append((x, y, x + long, y + wide))
    return boxes
