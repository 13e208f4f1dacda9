"""Steps of style that add to a garment: a godet, a corner rounded or squared, a strip made for an edge.

[[garments.skirt.style]]
do = "godet"
edge = "front.side"      # into this seam, from its open end; or piece and from, for a slash
height = "25 cm"
width = "30 cm"          # so much it adds along the hem

[[garments.skirt.style]]
do = "facing"            # or hem facing, binding, band, cuff
edges = ["front.hem", "back.hem"]
width = "5 cm"
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import partial
from types import MappingProxyType

from drafting.ground.units import BadValue, as_written
from drafting.reading.cursor import TableReader
from drafting.reading.fullness import read_edge
from drafting.reading.given import FilePlace
from drafting.reading.style_places import OutlinePlace, read_name, read_place

EDGINGS: Mapping[str, float] = MappingProxyType(
    {"facing": 45.0, "hem facing": 60.0, "binding": 12.0, "band": 40.0, "cuff": 60.0}
)
"""What is made for an edge, and how wide it is where nothing is written, mm (common practice: facings 40 to 60,
hem facings 50 to 80, bindings 8 to 15; bands and cuffs by eye)."""

Ref = tuple[str, str]


@dataclass(frozen=True, slots=True)
class GodetWish:
    """Let a godet `name` into the seam of `edge`, from its open end (beside the edge `beside`), or with a place
    `at` into a slash; `height` mm high, adding `width` mm to the hem."""

    piece: str
    edge: str
    at: OutlinePlace | None
    height: float
    width: float
    name: str = ""
    beside: str = ""
    hand: str = ""
    spot: FilePlace = field(default=FilePlace(), compare=False)


@dataclass(frozen=True, slots=True)
class CornerWish:
    """Round the corner between an edge and its neighbour `beside` by a `radius` (mm), or (None) square it."""

    piece: str
    edge: str
    beside: str
    radius: float | None
    hand: str = ""
    spot: FilePlace = field(default=FilePlace(), compare=False)


@dataclass(frozen=True, slots=True)
class EdgingWish:
    """Make a `kind` of `EDGINGS` for edges that run on in one, `width` mm wide once finished."""

    kind: str
    edges: tuple[Ref, ...]
    width: float
    name: str = ""
    interfacing: bool = True
    hand: str = ""
    spot: FilePlace = field(default=FilePlace(), compare=False)

    @property
    def piece(self) -> str:
        """The piece of the first edge."""
        return self.edges[0][0]


AddedWish = GodetWish | CornerWish | EdgingWish


def _godet(table: TableReader) -> AddedWish | None:
    if "from" in table or "piece" in table:
        piece, at = read_name(table, "piece", "front"), read_place(table, "from")
        ref = None if piece is None or at is None else (piece, at.edge)
    else:
        ref, at = read_edge(table, "front.side"), None
    height = table.needed("height", table.as_length(), 'how high it reaches, as in height = "25 cm"')
    width = table.needed("width", table.as_length(), 'how much it adds to the hem, as in width = "30 cm"')
    name, beside = table.text("name") or "", table.text("beside") or ""
    if ref is None or height is None or width is None:
        return None
    return GodetWish(*ref, at=at, height=height, width=width, name=name, beside=beside, spot=table.spot())


def _corner(table: TableReader, round_it: bool) -> AddedWish | None:
    ref, beside = read_edge(table, "front.hem"), read_name(table, "beside", "centre")
    radius = table.needed("radius", table.as_length(), 'as in radius = "3 cm"') if round_it else None
    if ref is None or beside is None or (round_it and radius is None):
        return None
    return CornerWish(*ref, beside=beside, radius=radius, spot=table.spot())


def _edging(table: TableReader, kind: str) -> AddedWish | None:
    edges = tuple(_edges(table))
    width, stiff = table.length("width"), table.truth("interfacing")
    name = table.text("name") or ""
    if not edges:
        return None
    return EdgingWish(
        kind=kind,
        edges=edges,
        width=width or EDGINGS[kind],
        name=name,
        interfacing=stiff is not False,
        spot=table.spot(),
    )


def _edges(table: TableReader) -> Iterator[Ref]:
    if "edges" not in table:
        one = read_edge(table, "front.hem")
        if one:
            yield one
        return
    for given, spot in table.texts("edges", '["front.hem", "back.hem"]'):
        piece, dot, edge = str(given.value).partition(".")
        if not piece or not dot or not edge:
            bad = BadValue(f"{as_written(given.value)} names no edge", 'write piece.edge, as in "front.hem"')
            table.faults.add(bad.what, bad.right, spot.field, given.line)
        else:
            yield piece, edge


ADDED: Mapping[str, Callable[[TableReader], AddedWish | None]] = MappingProxyType(
    {
        "godet": _godet,
        "round corner": partial(_corner, round_it=True),
        "square corner": partial(_corner, round_it=False),
        **{kind: partial(_edging, kind=kind) for kind in EDGINGS},
    }
)
"""What may be added, each with its reader."""
