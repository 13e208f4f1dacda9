"""The `pockets` table of a garment: what is sewn onto a piece to put things in.

[[garments.shirt.pockets]]
piece = "front"
kind = "patch"           # patch, flap, welt, slant, in-seam
edge = "shoulder"        # it stands in from a place on this edge
along = 0.4              # where on the edge, of its length from its start; 0.5 is its middle
inside = "16 cm"         # the middle of its top, so far inside
width = "11 cm"
height = "13 cm"
corners = "round"        # square, round, pointed
tilt = 8                 # a welt, degrees: its end away from the centre front so much higher
hand = "left"            # this hand alone has it
bag = "pocketing"        # the role of the cloth that a bag is cut from: a welt's, a slant or in-seam pocket's

A slant pocket runs from the waist, `width` in from the corner, to `height` down the side beyond that corner; its
`edge` is either. The mouth of an in-seam pocket is `width` long, its middle at `along` its `edge`; its bag hangs
`height` below. Neither takes `inside`, `corners` or `tilt`.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import dataclass, field

from drafting.ground.nearest import meant
from drafting.ground.units import BadValue, as_written, parse_number
from drafting.reading.cursor import TableReader
from drafting.reading.given import FilePlace
from drafting.reading.style import HANDS

POCKETS = ("patch", "flap", "welt", "slant", "in-seam")
ON_EDGE = frozenset({"slant", "in-seam"})
"""Pockets whose mouth lies at the edge itself: nothing stands `inside`."""

BAGGED = ON_EDGE | {"welt"}
"""Pockets with a bag that hangs inside."""

CORNERS = ("square", "round", "pointed")

HEIGHTS = {"patch": 1.15, "flap": 0.38, "welt": 0.18, "slant": 3.8, "in-seam": 0.75}
"""Heights over widths, where none is written (common practice: a patch 13 by 15 cm, a flap 14 by 5.5, a welt
12 by 2.2, a slant mouth 4.5 by 17, a mouth of 16 with 12 of bag below it)."""

WIDTHS = {"slant": "4.5 cm", "in-seam": "16 cm"}
"""An example of a width, where it is no pocket's own."""


@dataclass(frozen=True, slots=True)
class PocketWish:
    """A pocket of a `kind` on a piece: the middle of its top `inside` mm from the place `along` an edge.

    `along` is a share of the edge's length, `tilt` how many degrees a welt is turned, `hand` (left, right) which
    hand alone has it, `bag` the role of the cloth of its bag ("": the lining's, else the garment's), `spot` where
    it was written. One that `gives_way` is moved where it would stick out: its costume was written for another
    wearer.
    """

    piece: str
    edge: str
    kind: str
    width: float
    height: float
    inside: float
    along: float = 0.5
    corners: str = "square"
    tilt: float = 0.0
    hand: str = ""
    bag: str = ""
    gives_way: bool = False
    spot: FilePlace = field(default=FilePlace(), compare=False)


def read_pockets(garment: TableReader, roles: Collection[str]) -> tuple[PocketWish, ...]:
    """Return every pocket of a garment; what is wrong goes to the faults of its file. `roles` are its cloths'."""
    return tuple(wish for one in garment.numbered("pockets") for wish in _pocket(one, roles))


def _pocket(table: TableReader, roles: Collection[str]) -> Iterator[PocketWish]:
    """Yield the pocket of one entry, where it can be read."""
    piece = table.needed("piece", _name, 'as in piece = "front"')
    edge = table.needed("edge", _name, 'it stands in from a place on one, as in edge = "shoulder"')
    kind = table.word("kind", POCKETS, "patch")
    width = table.needed("width", table.as_length(), f'as in width = "{WIDTHS.get(kind, "13 cm")}"')
    height, along = table.length("height"), table.read("along", _share)
    inside = _inside(table, kind)
    _shaped(table, kind)
    corners, tilt = table.word("corners", CORNERS, "square"), table.read("tilt", _tilt)
    hand, bag = table.word("hand", HANDS), _bag(table, kind, roles)
    table.close()
    if piece and edge and width is not None and inside is not None:
        yield PocketWish(
            piece=piece,
            edge=edge,
            kind=kind,
            width=width,
            height=HEIGHTS[kind] * width if height is None else height,
            inside=inside,
            along=0.5 if along is None else along,
            corners=corners,
            tilt=tilt or 0.0,
            hand=hand,
            bag=bag,
            spot=table.spot(),
        )


def _inside(table: TableReader, kind: str) -> float | None:
    """Return how far inside its edge a pocket stands; 0 for one whose mouth lies at the edge."""
    if kind not in ON_EDGE:
        return table.needed("inside", table.as_length(), 'as in inside = "16 cm"')
    if table.length("inside", "any") is not None:
        table.add(f"is not for a pocket of kind {kind}: its mouth lies at the edge", "leave it out", "inside")
    return 0.0


def _shaped(table: TableReader, kind: str) -> None:
    """Refuse what shapes a pocket that is sewn on or cut in, for one whose mouth lies at the edge."""
    for key in ("corners", "tilt") if kind in ON_EDGE else ():
        if table.given(key) is not None:
            table.add(f"is not for a pocket of kind {kind}: its mouth lies at the edge", "leave it out", key)


def _bag(table: TableReader, kind: str, roles: Collection[str]) -> str:
    """Return the role of a bag's cloth; "" where none is named."""

    def parse(value: object) -> str:
        if isinstance(value, str) and value in roles:
            return value
        right = meant(str(value)[:40] if isinstance(value, str) else "", roles)
        raise BadValue(f"{as_written(value)} is no role under [fabrics]", right)

    if table.given("bag") is not None and kind not in BAGGED:
        table.add(f"is not for a pocket of kind {kind}: it has no bag", "leave it out", "bag")
        return ""
    return table.read("bag", parse) or ""


def _share(value: object) -> float:
    share = parse_number(value)
    if 0 <= share <= 1:
        return share
    raise BadValue(
        f"{as_written(value)} is no share of an edge", "write 0 for its start, 1 for its end, 0.5 for its middle"
    )


MOST_TILT = 30.0
"""degrees: a welt leans no more (ours)."""


def _tilt(value: object) -> float:
    tilt = parse_number(value)
    if abs(tilt) <= MOST_TILT:
        return tilt
    right = f"write up to {MOST_TILT:.0f}, as in tilt = 8"
    raise BadValue(f"{as_written(value)} degrees is too steep for a welt", right)


def _name(value: object) -> str:
    if isinstance(value, str) and value.strip():
        return value.strip()
    raise BadValue(f"{as_written(value)} is no name", 'write it in quotes, as in "front"')
