"""The `trims` and `appliques` tables of a garment: what is sewn along an edge, what onto a piece.

[[garments.coat.trims]]
edge = "front.lapel"     # piece.edge
kind = "braid"           # braid, ribbon, lace, fringe, piping, binding
width = "12 mm"
cut = "bias"             # else it is bought by the metre

[[garments.coat.appliques]]
piece = "tail-2"
shape = "star"           # circle, diamond, star
width = "6 cm"
height = "6 cm"
edge = "hem"             # it stands in from the middle of this edge
inside = "12 cm"         # its middle, so far inside
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from drafting.ground.units import BadValue, parse_length
from drafting.reading.given import Faults

TRIM_KEYS = ("edge", "kind", "width", "cut")
APPLIQUE_KEYS = ("piece", "shape", "width", "height", "edge", "inside")
KINDS = ("braid", "ribbon", "lace", "fringe", "piping", "binding")
SHAPES = ("circle", "diamond", "star")
CUTS = ("bought", "bias")
WIDEST = 300.0
"""mm: no trim is wider (ours)."""


@dataclass(frozen=True, slots=True)
class TrimWish:
    """A trim along one edge: its `kind`, its `width` (mm; of the strip as cut where it is `bias`)."""

    piece: str
    edge: str
    kind: str
    width: float
    bias: bool = False


@dataclass(frozen=True, slots=True)
class AppliqueWish:
    """A shape sewn onto a piece, `inside` mm from the middle of an edge to its own middle."""

    piece: str
    shape: str
    width: float
    height: float
    edge: str
    inside: float


def read_trims(value: Any, where: str, line: int | None, unit: str | None, faults: Faults) -> tuple[TrimWish, ...]:
    """Return every trim of a garment; what is wrong goes to `faults`."""

    def one(table: Mapping[str, Any], place: str) -> TrimWish | None:
        piece, _, edge = str(table.get("edge", "")).partition(".")
        if not (piece and edge):
            right = 'name it as piece.edge, as in edge = "front.lapel"'
            faults.add("needs an edge", right, place, line)
            return None
        kind = _word(table, "kind", KINDS, "braid")
        bias = _word(table, "cut", CUTS, "bias" if kind in ("piping", "binding") else "bought")
        return TrimWish(piece, edge, kind, _length(table, "width", unit), bias == "bias")

    return _tables(value, TRIM_KEYS, where, line, faults, one)


def read_appliques(
    value: Any, where: str, line: int | None, unit: str | None, faults: Faults
) -> tuple[AppliqueWish, ...]:
    """Return every appliqué of a garment; what is wrong goes to `faults`."""

    def one(table: Mapping[str, Any], place: str) -> AppliqueWish | None:
        if not (table.get("piece") and table.get("edge")):
            right = 'name both, as in piece = "tail-2" and edge = "hem"'
            faults.add("needs a piece and an edge to stand in from", right, place, line)
            return None
        width = _length(table, "width", unit)
        height = _length(table, "height", unit) if "height" in table else width
        shape = _word(table, "shape", SHAPES, "circle")
        inside = _length(table, "inside", unit)
        return AppliqueWish(str(table["piece"]), shape, width, height, str(table["edge"]), inside)

    return _tables(value, APPLIQUE_KEYS, where, line, faults, one)


def _tables(
    value: Any,
    keys: tuple[str, ...],
    where: str,
    line: int | None,
    faults: Faults,
    one: Callable[[Mapping[str, Any], str], Any],
) -> tuple[Any, ...]:
    if not isinstance(value, list) or not all(isinstance(table, dict) for table in value):
        faults.add("must be a list of tables", f"begin each with a line [[{where}]]", where, line)
        return ()
    found = []
    for i, table in enumerate(value, 1):
        place = f"{where}[{i}]"
        for key in table:
            if key not in keys:
                faults.unknown(key, keys, f"{place}.{key}", line)
        try:
            found.append(one(table, place))
        except BadValue as bad:
            faults.add(bad.what, bad.right, place, line)
    return tuple(wish for wish in found if wish is not None)


def _word(table: Mapping[str, Any], key: str, words: tuple[str, ...], usual: str) -> str:
    value = str(table.get(key, usual))
    if value not in words:
        raise BadValue(f"{key} '{value[:30]}' is not known here", f"write one of {', '.join(words)}")
    return value


def _length(table: Mapping[str, Any], key: str, unit: str | None) -> float:
    if key not in table:
        raise BadValue(f"needs a {key}", f'as in {key} = "12 mm"')
    mm = parse_length(table[key], unit)
    if mm > WIDEST and key == "width":
        raise BadValue(f"a {key} of {mm:g} mm cannot be", f"at most {WIDEST:g} mm; name the unit")
    return mm
