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
from dataclasses import dataclass, field

from drafting.ground.units import BadValue, as_written, parse_number, parse_percent
from drafting.reading.cursor import TableReader
from drafting.reading.fullness import read_edge
from drafting.reading.given import FilePlace

PLEATS = ("knife", "box", "inverted", "tuck")
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
    spot: FilePlace = field(default=FilePlace(), compare=False)


@dataclass(frozen=True, slots=True)
class JoinWish:
    """Join the piece of an edge to what that edge is sewn to, along the seam."""

    piece: str
    edge: str
    spot: FilePlace = field(default=FilePlace(), compare=False)


@dataclass(frozen=True, slots=True)
class DartWish:
    """Close a dart of a piece and open it at another place, or (None) close it into gathers."""

    piece: str
    dart: str
    to: OutlinePlace | None
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
    spot: FilePlace = field(default=FilePlace(), compare=False)


@dataclass(frozen=True, slots=True)
class ShiftWish:
    """Move an edge of a piece out by `start` mm where it starts in outline order, and `end` mm where it ends."""

    piece: str
    edge: str
    start: float
    end: float
    spot: FilePlace = field(default=FilePlace(), compare=False)


StyleWish = CutWish | JoinWish | DartWish | PleatWish | ShiftWish


def read_style(garment: TableReader) -> tuple[StyleWish, ...]:
    """Return every step of a garment in its order; what is wrong goes to the faults of its file."""
    return tuple(wish for one in garment.numbered("style") for wish in _wish(one))


def _wish(table: TableReader) -> Iterator[StyleWish]:
    do = table.needed("do", _deed, f"one of {', '.join(DEEDS)}")
    before = len(table.faults.found)
    wish = DEEDS[do](table) if do else None
    if do:
        table.close()
    if wish is not None and len(table.faults.found) == before:
        yield wish


def _deed(value: object) -> str:
    if isinstance(value, str) and value in DEEDS:
        return value
    raise BadValue(f"{as_written(value)} is not known here", f"one of {', '.join(DEEDS)}")


def _cut(table: TableReader) -> StyleWish | None:
    piece, name = _name(table, "piece", "back"), _name(table, "name", "back-yoke")
    start, end = _place(table, "from"), _place(table, "to")
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
    return JoinWish(*ref, table.spot()) if ref else None


def _move(table: TableReader) -> StyleWish | None:
    piece, dart, to = _name(table, "piece", "front"), _name(table, "dart", "bust"), _place(table, "to")
    return None if piece is None or dart is None or to is None else DartWish(piece, dart, to, table.spot())


def _gather(table: TableReader) -> StyleWish | None:
    piece, dart = _name(table, "piece", "front"), _name(table, "dart", "bust")
    return None if piece is None or dart is None else DartWish(piece, dart, None, table.spot())


def _pleat(table: TableReader) -> StyleWish | None:
    piece, start, end = _name(table, "piece", "back"), _place(table, "from"), _place(table, "to")
    kind = table.word("kind", PLEATS, "knife")
    depth = table.needed("depth", table.as_length(), 'how far it reaches under, as in depth = "3 cm"')
    number, apart = table.read("number", _count), table.length("apart")
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
}
"""What may be done, each with its reader."""


def _place(table: TableReader, key: str) -> OutlinePlace | None:
    if key not in table:
        table.add(f"needs {key}", f"as in {key} = {ON_EDGE}")
        return None
    place = table.table(key)
    edge, dart, level, beside = (place.text(one) for one in ("edge", "dart", "level", "beside"))
    share, distance = place.read("share", _share), place.length("distance", "any")
    place.close()
    amounts = [share is not None, distance is not None, bool(level)]
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


def _count(value: object) -> int:
    number = parse_number(value)
    if number != int(number) or not 1 <= number <= MOST_PLEATS:
        raise BadValue(f"{as_written(value)} pleats cannot be", f"1 to {MOST_PLEATS}")
    return int(number)


def _name(table: TableReader, key: str, example: str) -> str | None:
    def parse(value: object) -> str:
        if isinstance(value, str) and value.strip():
            return value.strip()
        raise BadValue(f"{as_written(value)} is no name", f'write it in quotes, as in "{example}"')

    return table.needed(key, parse, f'as in {key} = "{example}"')
