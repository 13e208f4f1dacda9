"""Places on a piece's outline and other values that every step of style is written with."""

from __future__ import annotations

from dataclasses import dataclass

from drafting.ground.units import BadValue, as_written, parse_number, parse_percent
from drafting.reading.cursor import TableReader

MOST_PLEATS = 40
"""Pleats of one step (ours)."""

ON_EDGE = '{ edge = "armhole", share = 0.5 }'


@dataclass(frozen=True, slots=True)
class OutlinePlace:
    """A place on a piece's outline: of an `edge` a `share` of its length, a `distance` (mm), or where a `level`
    crosses it, counted from where it meets its neighbour `beside` (else in outline order); or a `dart`'s tip."""

    edge: str = ""
    share: float | None = None
    distance: float | None = None
    level: str = ""
    beside: str = ""
    dart: str = ""


def read_place(table: TableReader, key: str) -> OutlinePlace | None:
    """Return the place on an outline that a key tells; what is wrong goes to the faults of its file."""
    if key not in table:
        table.add(f"needs {key}", f"as in {key} = {ON_EDGE}")
        return None
    place = table.table(key)
    edge, dart, level, beside = (place.text(one) for one in ("edge", "dart", "level", "beside"))
    share, distance = place.read("share", _share), place.length("distance", "any")
    place.close()
    given = [one in place for one in ("share", "distance", "level")]
    amounts = [share is not None, distance is not None, bool(level)]
    if given != amounts and sum(given) == 1 and edge and not dart:
        return None  # what is wrong with the one amount is told already
    if dart and not edge and not any(amounts):
        return OutlinePlace(dart=dart)
    if dart or not edge or sum(amounts) != 1:
        place.add(
            "names no place", f'give edge and one of share, distance, level, as in {ON_EDGE}; or dart = "..."'
        )
        return None
    return OutlinePlace(edge, share=share, distance=distance, level=level or "", beside=beside or "")


def _share(value: object) -> float:
    share = parse_percent(value) / 100 if isinstance(value, str) and "%" in value else parse_number(value)
    if not 0 <= share <= 1:
        raise BadValue(f"a share of {as_written(value)} is out of range", "0 to 1, or 0 % to 100 %")
    return share


def pleat_count(value: object) -> int:
    """Return how many pleats a value says; raises `BadValue`."""
    number = parse_number(value)
    if number != int(number) or not 1 <= number <= MOST_PLEATS:
        raise BadValue(f"{as_written(value)} pleats cannot be", f"1 to {MOST_PLEATS}")
    return int(number)


def read_name(table: TableReader, key: str, example: str) -> str | None:
    """Return a name that has to be there, as in `example`."""

    def parse(value: object) -> str:
        if isinstance(value, str) and value.strip():
            return value.strip()
        raise BadValue(f"{as_written(value)} is no name", f'write it in quotes, as in "{example}"')

    return table.needed(key, parse, f'as in {key} = "{example}"')
