"""What is reckoned over all wearers, from their records: what differs, and what to buy."""

from __future__ import annotations

import csv
import io
import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Any

from drafting.costume.cast import Cast, CastWearer
from drafting.ground.units import ShownUnit
from drafting.making.model import Said, ShoppingRow
from drafting.making.shopping import harmless_cell, shopping_csv

DIFFERS = 20.0
"""mm: from here on a measure is told to differ (as a workroom asked for it: beyond it a costume is altered)."""

SUMMED = frozenset({"n", "sewn"})
"""Facts of a shopping line that differ from wearer to wearer, and add up."""

Records = Mapping[str, Mapping[str, Any]]
"""The record of each wearer, by her folder."""


def differs(cast: Cast, wearer: CastWearer, records: Records) -> dict[str, float]:
    """Return by how much (mm) a wearer's measures differ from those of whom she is compared with.

    Only what was taken of one of the two is told; of a measure that each hand has, the hand that differs most.
    """
    other = cast.beside(wearer)
    if other is None or other is wearer:
        return {}
    hers, theirs = (records[one.folder]["measures"] for one in (wearer, other))
    found = {}
    for name in hers:
        if name in theirs and "measured" in (hers[name]["source"], theirs[name]["source"]):
            by = max(
                (
                    hers[name].get(hand, hers[name]["mm"]) - theirs[name].get(hand, theirs[name]["mm"])
                    for hand in ("left", "right")
                ),
                key=abs,
            )
            if round(abs(by), 6) >= DIFFERS:
                found[name] = by
    return found


@dataclass(frozen=True)
class Bought:
    """One line of the list for all: what to buy, and the folders of those it is for."""

    row: ShoppingRow
    wearers: tuple[str, ...]


@dataclass
class _Line:
    rows: list[ShoppingRow] = field(default_factory=list)
    wearers: list[str] = field(default_factory=list)


def shopping_for_all(records: Records, together: Mapping[str, float]) -> tuple[Bought, ...]:
    """Return one buying list: like lines added up, in the order in which they first come.

    `together` holds the length to buy (mm) of each cloth that is laid for all at once, in place of the sum.
    """
    lines: dict[tuple[Any, ...], _Line] = {}
    for folder, record in records.items():
        for row in map(_row, record["shopping"]):
            line = lines.setdefault(_sort(row), _Line())
            line.rows.append(row)
            line.wearers.append(folder)
    return tuple(
        Bought(_added(line.rows, together), tuple(dict.fromkeys(line.wearers))) for line in lines.values()
    )


def _row(held: Mapping[str, Any]) -> ShoppingRow:
    detail = Said(held["detail"]["key"], tuple((name, value) for name, value in held["detail"]["facts"]))
    return ShoppingRow(held["what"], detail, held["amount"], held["unit"], (), held["cost"])


def _sort(row: ShoppingRow) -> tuple[Any, ...]:
    return (row.what, row.unit, row.detail.key, tuple(one for one in row.detail.facts if one[0] not in SUMMED))


def _added(rows: Sequence[ShoppingRow], together: Mapping[str, float]) -> ShoppingRow:
    facts = dict(rows[0].detail.facts)
    for name in SUMMED & facts.keys():
        facts[name] = sum(dict(row.detail.facts)[name] for row in rows)  # type: ignore[misc]
    amount, costs = math.fsum(row.amount for row in rows), [row.cost for row in rows if row.cost is not None]
    cost = math.fsum(costs) if len(costs) == len(rows) else None
    whole = replace(rows[0], detail=Said(rows[0].detail.key, tuple(facts.items())), amount=amount, cost=cost)
    if rows[0].what in together and rows[0].detail.key in ("shop.cloth", "shop.cloth_shrinks"):
        length = together[rows[0].what]
        each = None if cost is None else cost / amount
        return replace(whole, amount=length, cost=None if each is None else each * length)
    return whole


def shopping_text(bought: Iterable[Bought], names: Mapping[str, str], unit: ShownUnit) -> str:
    """Return the list as CSV, as a single costume's, with a last column that says for whom."""
    every = list(bought)
    out = io.StringIO(newline="")
    writer = csv.writer(out, lineterminator="\n")
    lines = csv.reader(io.StringIO(shopping_csv(tuple(one.row for one in every), unit), newline=""))
    writer.writerow([*next(lines), "for"])
    for cells, one in zip(lines, every, strict=True):
        writer.writerow([*cells, harmless_cell(for_whom(one, names))])
    return out.getvalue()


def for_whom(one: Bought, names: Mapping[str, str]) -> str:
    """Return for whom a line is: "all", or the names."""
    return "all" if len(one.wearers) == len(names) else ", ".join(names[folder] for folder in one.wearers)


def as_rows(bought: Iterable[Bought]) -> Iterator[dict[str, Any]]:
    """Yield the list as rows of `cast.json`, lengths in mm."""
    for one in bought:
        detail = {"key": one.row.detail.key, "facts": dict(one.row.detail.facts)}
        yield {
            "what": one.row.what,
            "detail": detail,
            "amount": one.row.amount,
            "unit": one.row.unit,
            "cost": one.row.cost,
            "for": list(one.wearers),
        }
