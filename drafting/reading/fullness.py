"""The `fullness` tables of a garment: which edge is opened, by how much, and whether it is gathered.

[[garments.shirt.fullness]]
edge = "sleeve.hem"      # piece.edge
gather = 2.0             # or "100 %", or flat = "60 cm"; or flare: cuts = 4, each = "3 cm"
pivot = "cap_front"      # where the cuts end (else the edge farthest away)
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from drafting.ground.units import BadValue, parse_length, parse_number, parse_percent
from drafting.reading.given import Faults

KEYS = ("edge", "gather", "flat", "cuts", "each", "pivot")
MOST_CUTS, MOST_RATIO = 40, 5.0


@dataclass(frozen=True, slots=True)
class FullnessWish:
    """One fullness as its maker wrote it: gathered to a `ratio` or from a `flat` length (mm), or
    flared by `each` mm in every one of `cuts` cuts."""

    piece: str
    edge: str
    ratio: float | None = None
    flat: float | None = None
    cuts: int = 6
    each: float | None = None
    pivot: str = ""


def read_fullness(
    value: Any, where: str, line: int | None, unit: str | None, faults: Faults
) -> tuple[FullnessWish, ...]:
    """Return every wish of a garment; what is wrong goes to `faults`."""
    if not isinstance(value, list) or not all(isinstance(one, dict) for one in value):
        faults.add("must be a list of tables", f"begin each with a line [[{where}]]", where, line)
        return ()
    read = (_wish(one, f"{where}[{i}]", line, unit, faults) for i, one in enumerate(value, 1))
    return tuple(wish for wish in read if wish is not None)


def _wish(
    one: Mapping[str, Any], where: str, line: int | None, unit: str | None, faults: Faults
) -> FullnessWish | None:
    for key in one:
        if key not in KEYS:
            faults.unknown(key, KEYS, f"{where}.{key}", line)
    piece, _, edge = str(one.get("edge", "")).partition(".")
    if not (piece and edge):
        faults.add("needs an edge", 'name it as piece.edge, as in edge = "sleeve.hem"', where, line)
        return None
    if sum(key in one for key in ("gather", "flat", "each")) != 1:
        faults.add("needs one amount", "give gather, or flat, or cuts and each", where, line)
        return None
    try:
        cuts = int(parse_number(one.get("cuts", 6)))
        if not 1 <= cuts <= MOST_CUTS:
            raise BadValue(f"{cuts} cuts", f"1 to {MOST_CUTS}")
        flat, each = (parse_length(one[k], unit) if k in one else None for k in ("flat", "each"))
        ratio = _ratio(one["gather"]) if "gather" in one else None
    except BadValue as bad:
        faults.add(bad.what, bad.right, where, line)
        return None
    return FullnessWish(
        piece=piece, edge=edge, ratio=ratio, flat=flat, cuts=cuts, each=each, pivot=str(one.get("pivot", ""))
    )


def _ratio(value: Any) -> float:
    """A ratio as a number (2.0), or a theatre's fullness in percent ("100 %": as much again)."""
    ratio = 1 + parse_percent(value) / 100 if isinstance(value, str) and "%" in value else parse_number(value)
    if not 1 < ratio <= MOST_RATIO:
        raise BadValue(f"a fullness of {ratio:g} to one", f"more than 1, at most {MOST_RATIO:g}")
    return ratio
