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

from collections.abc import Iterator
from dataclasses import dataclass, field

from drafting.ground.units import BadValue, as_written, parse_length, show_length, unit_of
from drafting.reading.cursor import TableReader
from drafting.reading.fullness import read_edge
from drafting.reading.given import FilePlace

KINDS = ("braid", "ribbon", "lace", "fringe", "piping", "binding")
SHAPES = ("circle", "diamond", "star")
CUTS = ("bought", "bias")
WIDEST = 300.0
"""mm: no trim is wider (ours)."""


@dataclass(frozen=True, slots=True)
class TrimWish:
    """A trim along one edge: its `kind`, its `width` (mm; of the strip as cut where it is `bias`).

    `spot` is where it was written.
    """

    piece: str
    edge: str
    kind: str
    width: float
    bias: bool = False
    spot: FilePlace = field(default=FilePlace(), compare=False)


@dataclass(frozen=True, slots=True)
class AppliqueWish:
    """A shape sewn onto a piece, `inside` mm from the middle of an edge to its own middle.

    `spot` is where it was written.
    """

    piece: str
    shape: str
    width: float
    height: float
    edge: str
    inside: float
    spot: FilePlace = field(default=FilePlace(), compare=False)


def read_trims(garment: TableReader) -> tuple[TrimWish, ...]:
    """Return every trim of a garment; what is wrong goes to the faults of its file."""
    return tuple(wish for one in garment.numbered("trims") for wish in _trim(one))


def read_appliques(garment: TableReader) -> tuple[AppliqueWish, ...]:
    """Return every appliqué of a garment; what is wrong goes to the faults of its file."""
    return tuple(wish for one in garment.numbered("appliques") for wish in _applique(one))


def _trim(table: TableReader) -> Iterator[TrimWish]:
    """Yield the trim of one entry, where it can be read."""
    ref, width = read_edge(table, "front.lapel"), _width(table)
    kind = table.word("kind", KINDS, "braid")
    cut = table.word("cut", CUTS, "bias" if kind in ("piping", "binding") else "bought")
    table.close()
    if ref and width is not None:
        yield TrimWish(*ref, kind, width, cut == "bias", table.spot())


def _applique(table: TableReader) -> Iterator[AppliqueWish]:
    """Yield the appliqué of one entry, where it can be read."""
    piece = table.needed("piece", _name, 'as in piece = "tail-2"')
    edge = table.needed("edge", _name, 'it stands in from the middle of one, as in edge = "hem"')
    shape = table.word("shape", SHAPES, "circle")
    width, height = _width(table), table.length("height")
    inside = table.needed("inside", table.as_length(), 'as in inside = "12 cm"')
    table.close()
    if piece and edge and width is not None and inside is not None:
        size = width, width if height is None else height
        yield AppliqueWish(piece, shape, *size, edge, inside, table.spot())


def _name(value: object) -> str:
    if isinstance(value, str) and value.strip():
        return value.strip()
    raise BadValue(f"{as_written(value)} is no name", 'write it in quotes, as in "hem"')


def _width(table: TableReader) -> float | None:
    def parse(value: object) -> float:
        mm = parse_length(value, table.unit)
        if mm > WIDEST:
            what = f"a width of {as_written(value, table.unit)} cannot be"
            most = show_length(WIDEST, unit_of(value, table.unit))
            raise BadValue(what, f"at most {most}; name the unit")
        return mm

    return table.needed("width", parse, 'as in width = "12 mm"')
