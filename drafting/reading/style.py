"""The `style` tables of a garment: what is cut, joined, moved and folded, in this order.

[[garments.top.style]]
do = "cut"
piece = "back"
from = { edge = "armhole", share = 0.4 }
to = { edge = "centre", distance = "10 cm", beside = "neck" }
name = "back-yoke"       # the piece that is new
holds = "neck"           # it is the part with this edge (else the smaller one)
bow = "8 mm"             # so far the line bows to its left
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field, replace

from drafting.ground.units import BadValue, as_written
from drafting.reading.cursor import TableReader
from drafting.reading.fullness import read_edge
from drafting.reading.given import FilePlace
from drafting.reading.style_made import ADDED, CornerWish, EdgingWish, GodetWish
from drafting.reading.style_places import OutlinePlace, pleat_count, read_name, read_place

PLEATS = ("knife", "box", "inverted", "tuck")


@dataclass(frozen=True, slots=True)
class CutWish:
    """Cut a piece from one place of its outline to another; the part that `holds` an edge is the new piece
    `name`. The line bows by `bow` mm to its left; `edge` is what it is called on both parts."""

    piece: str
    start: OutlinePlace
    end: OutlinePlace
    name: str
    holds: str = ""
    bow: float = 0.0
    edge: str = "style_line"
    hand: str = ""
    spot: FilePlace = field(default=FilePlace(), compare=False)


@dataclass(frozen=True, slots=True)
class JoinWish:
    """Join the piece of an edge to what that edge is sewn to, along the seam."""

    piece: str
    edge: str
    hand: str = ""
    spot: FilePlace = field(default=FilePlace(), compare=False)


@dataclass(frozen=True, slots=True)
class DartWish:
    """Close a dart of a piece and open it at another place, or (None) close it into gathers."""

    piece: str
    dart: str
    to: OutlinePlace | None
    hand: str = ""
    spot: FilePlace = field(default=FilePlace(), compare=False)


@dataclass(frozen=True, slots=True)
class PleatWish:
    """Open a piece for pleats from one edge through to another: `number` of a `kind`, each `depth` mm deep,
    `apart` mm between their folds, laid towards the start or end of the first edge, stitched down `stitched`
    mm from it."""

    piece: str
    start: OutlinePlace
    end: OutlinePlace
    kind: str
    depth: float
    number: int = 1
    apart: float | None = None
    towards: str = "end"
    stitched: float = 0.0
    hand: str = ""
    spot: FilePlace = field(default=FilePlace(), compare=False)


@dataclass(frozen=True, slots=True)
class ShiftWish:
    """Move an edge of a piece out by `start` mm where it starts in outline order, and `end` mm where it ends."""

    piece: str
    edge: str
    start: float
    end: float
    hand: str = ""
    spot: FilePlace = field(default=FilePlace(), compare=False)


StyleWish = CutWish | JoinWish | DartWish | PleatWish | ShiftWish | GodetWish | CornerWish | EdgingWish
"""A step; with a `hand` (left, right) that hand alone has it, and the two are cut apart."""

HANDS = ("left", "right")


def read_style(garment: TableReader) -> tuple[StyleWish, ...]:
    """Return every step of a garment in its order; what is wrong goes to the faults of its file."""
    return tuple(wish for one in garment.numbered("style") for wish in _wish(one))


def _wish(table: TableReader) -> Iterator[StyleWish]:
    do = table.needed("do", _deed, f"one of {', '.join(DEEDS)}")
    before = len(table.faults.found)
    wish = DEEDS[do](table) if do else None
    hand = table.word("hand", HANDS)
    if do:
        table.close()
    if wish is not None and len(table.faults.found) == before:
        yield replace(wish, hand=hand)


def _deed(value: object) -> str:
    if isinstance(value, str) and value in DEEDS:
        return value
    raise BadValue(f"{as_written(value)} is not known here", f"one of {', '.join(DEEDS)}")


def _cut(table: TableReader) -> StyleWish | None:
    piece, name = read_name(table, "piece", "back"), read_name(table, "name", "back-yoke")
    start, end = read_place(table, "from"), read_place(table, "to")
    holds, bow, edge = table.text("holds"), table.length("bow", "any"), table.text("edge")
    if piece is None or name is None or start is None or end is None:
        return None
    return CutWish(
        piece=piece,
        start=start,
        end=end,
        name=name,
        holds=holds or "",
        bow=bow or 0.0,
        edge=edge or "style_line",
        spot=table.spot(),
    )


def _join(table: TableReader) -> StyleWish | None:
    ref = read_edge(table, "back-yoke.shoulder")
    return JoinWish(*ref, spot=table.spot()) if ref else None


def _move(table: TableReader) -> StyleWish | None:
    piece, dart, to = read_name(table, "piece", "front"), read_name(table, "dart", "bust"), read_place(table, "to")
    return None if piece is None or dart is None or to is None else DartWish(piece, dart, to, spot=table.spot())


def _gather(table: TableReader) -> StyleWish | None:
    piece, dart = read_name(table, "piece", "front"), read_name(table, "dart", "bust")
    return None if piece is None or dart is None else DartWish(piece, dart, None, spot=table.spot())


def _pleat(table: TableReader) -> StyleWish | None:
    piece, start, end = read_name(table, "piece", "back"), read_place(table, "from"), read_place(table, "to")
    kind = table.word("kind", PLEATS, "knife")
    depth = table.needed("depth", table.as_length(), 'how far it reaches under, as in depth = "3 cm"')
    number, apart = table.read("number", pleat_count), table.length("apart")
    towards = table.word("towards", ("start", "end"), "end")
    stitched = table.length("stitched", "any")
    if piece is None or start is None or end is None or depth is None:
        return None
    return PleatWish(
        piece=piece,
        start=start,
        end=end,
        kind=kind,
        depth=depth,
        number=number or 1,
        apart=apart,
        towards=towards,
        stitched=stitched or 0.0,
        spot=table.spot(),
    )


def _shift(table: TableReader) -> StyleWish | None:
    ref = read_edge(table, "back.hem")
    start, end = table.length("start", "any"), table.length("end", "any")
    if start is None and end is None:
        table.add("moves nothing", 'say how far one of its ends goes out, as in end = "4 cm"')
        return None
    return ShiftWish(*ref, start=start or 0.0, end=end or 0.0, spot=table.spot()) if ref else None


DEEDS: dict[str, Callable[[TableReader], StyleWish | None]] = {
    "cut": _cut,
    "join": _join,
    "move dart": _move,
    "gather dart": _gather,
    "pleat": _pleat,
    "move edge": _shift,
    **ADDED,
}
"""What may be done, each with its reader."""
