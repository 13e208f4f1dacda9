"""The `fullness` tables of a garment: which edge is opened, by how much, and whether it is gathered.

[[garments.shirt.fullness]]
edge = "sleeve.hem"      # piece.edge
gather = 2.0             # or "100 %", or flat = "60 cm"; or flare: cuts = 4, each = "3 cm"
pivot = "cap_front"      # where the cuts end (else the edge farthest away)
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

from drafting.ground.units import BadValue, as_written, parse_number, parse_percent
from drafting.reading.cursor import TableReader
from drafting.reading.given import FilePlace

MOST_CUTS, MOST_RATIO, USUAL_CUTS = 40, 5.0, 6
AMOUNTS = ("gather", "flat", "each")
EDGE = 'name it as piece.edge, as in edge = "{}"'


@dataclass(frozen=True, slots=True)
class FullnessWish:
    """One fullness as its maker wrote it: gathered to a `ratio` or from a `flat` length (mm), or
    flared by `each` mm in every one of `cuts` cuts. `spot` is where it was written."""

    piece: str
    edge: str
    ratio: float | None = None
    flat: float | None = None
    cuts: int = USUAL_CUTS
    each: float | None = None
    pivot: str = ""
    spot: FilePlace = field(default=FilePlace(), compare=False)


def read_fullness(garment: TableReader) -> tuple[FullnessWish, ...]:
    """Return every wish of a garment; what is wrong goes to the faults of its file."""
    return tuple(wish for one in garment.numbered("fullness") for wish in _wish(one))


def _wish(table: TableReader) -> Iterator[FullnessWish]:
    """Yield the wish of one entry, where it can be read."""
    ref = read_edge(table, "sleeve.hem")
    ratio, flat, each = table.read("gather", _ratio), table.length("flat"), table.length("each")
    cuts, pivot = table.read("cuts", _cuts), table.text("pivot")
    if sum(key in table for key in AMOUNTS) != 1:
        table.add("needs one amount", "give gather, or flat, or cuts and each")
    elif ref and any(amount is not None for amount in (ratio, flat, each)):
        number = USUAL_CUTS if cuts is None else cuts
        piece, edge = ref
        yield FullnessWish(
            piece=piece,
            edge=edge,
            ratio=ratio,
            flat=flat,
            cuts=number,
            each=each,
            pivot=pivot or "",
            spot=table.spot(),
        )
    table.close()


def read_edge(table: TableReader, example: str) -> tuple[str, str] | None:
    """Return piece and edge of a table's key `edge`; None with a fault noted where it names none."""

    def parse(value: object) -> tuple[str, str]:
        piece, _, edge = value.partition(".") if isinstance(value, str) else ("", "", "")
        if piece.strip() and edge.strip():
            return piece.strip(), edge.strip()
        raise BadValue(f"{as_written(value)} names no edge", EDGE.format(example))

    return table.needed("edge", parse, EDGE.format(example))


def _cuts(value: object) -> int:
    number = parse_number(value)
    if number != int(number) or not 1 <= number <= MOST_CUTS:
        raise BadValue(f"{as_written(value)} cuts cannot be made", f"1 to {MOST_CUTS}")
    return int(number)


def _ratio(value: Any) -> float:
    """A ratio as a number (2.0), or a theatre's fullness in percent ("100 %": as much again)."""
    percent = isinstance(value, str) and "%" in value
    ratio = 1 + parse_percent(value) / 100 if percent else parse_number(value)
    if not 1 < ratio <= MOST_RATIO:
        what = f"a fullness of {as_written(value)} cannot be"
        raise BadValue(what, f"more than 1 to one, at most {MOST_RATIO:g} to one")
    return ratio
