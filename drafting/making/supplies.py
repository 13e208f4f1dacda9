"""What a shopping list has beside cloth and notions: thread by kind, tape, pads, strips, cheap cloth to try in.

All are added up from the steps that use them; lengths in mm.
"""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence

from drafting.costume.make import Made, MadeGarment
from drafting.costume.mock_up import MockUp, cloth_to_try, mock_length
from drafting.fitting.mock_cloth import WIDTH
from drafting.layout import Lay
from drafting.making.model import ShoppingRow, Step, said
from drafting.making.stitch_rows import ThreadKind
from drafting.making.thread import WASTE, seam_thread

METRE = 1000.0

SOLD = 100.0
"""mm: what is cut from a roll is bought by full 10 cm (common practice)."""

MOCK_USED = 0.7
"""Share of a cheap cloth to try in that a lay by hand uses (ours)."""

SPOOL = 100 * METRE

THREADS: dict[ThreadKind, str] = {
    "sewing": "shop.thread_sewing",
    "overlock": "shop.thread_overlock",
    "basting": "shop.thread_basting",
    "buttonhole": "shop.thread_buttonhole",
    "mock-up": "shop.thread_mock_up",
}
"""What each kind of thread is called on the list."""


def up_to(length: float, step: float = SOLD) -> float:
    """Return a length rounded up to what is sold.

    >>> up_to(738.0), up_to(700.0)
    (800.0, 700.0)
    """
    return math.ceil(round(length / step, 9)) * step


def threads(made: Made, steps: Sequence[Step], each: float | None) -> Iterator[ShoppingRow]:
    """Yield one row for each kind of thread and each cloth that it matches; `each` is the price of 100 m."""
    used: dict[tuple[ThreadKind, str], list[tuple[str, float]]] = defaultdict(list)
    for step in steps:
        for key, length in seam_thread(made, [step]).items():
            used[key].append((step.key, length))
    for (kind, role), parts in sorted(used.items()):
        fabric = made.costume.fabrics.get(role)
        sewn = math.fsum(length for _, length in parts)
        cloth = fabric.title if fabric else role
        detail = said(THREADS[kind], cloth=cloth, sewn=sewn, waste=WASTE)
        length = sewn * (1 + WASTE)
        priced = each is not None and kind in ("sewing", "buttonhole")
        cost = each * math.ceil(length / SPOOL) if priced and each is not None else None
        yield ShoppingRow("thread", detail, length, "mm", tuple(parts), cost)


def supplies(made: Made, steps: Sequence[Step], costs: Mapping[str, float]) -> Iterator[ShoppingRow]:
    """Yield one row for each thing that steps use up, for each cloth that it has to match."""
    found: dict[tuple[str, str, str, str], list[tuple[str, float]]] = defaultdict(list)
    for step in steps:
        for one in step.takes:
            found[one.what, one.kind, one.unit, one.cloth].append((step.key, one.amount))
    for (what, kind, unit, role), parts in found.items():
        amount = math.fsum(part for _, part in parts)
        amount = up_to(amount) if unit == "mm" else math.ceil(amount)
        each = costs.get(what)
        cost = None if each is None else each * (amount / METRE if unit == "mm" else amount)
        fabric = made.costume.fabrics.get(role)
        detail = (
            said("shop.supply_for", kind=kind, cloth=fabric.title) if fabric else said("shop.supply", kind=kind)
        )
        yield ShoppingRow(what, detail, amount, unit, tuple(parts), cost)


def mock_up_cloth(made: Made, steps: Sequence[Step], mock: MockUp | None) -> Iterator[ShoppingRow]:
    """Yield the cheap cloths of a costume's toiles: as much as its `mock` takes, which is what the mock-up's own
    folder says, or by the area of their pieces without one, or where a piece is wider than the cheap cloth."""
    toiles = {step.garment for step in steps if step.verb == "toile"}
    found: dict[str, list[tuple[str, float]]] = defaultdict(list)
    for garment in made.garments:
        if garment.name in toiles:
            found[cloth_to_try(made, garment).ask_for].append((garment.name, _by_area(garment)))
    laid = _laid(mock) if mock else {}
    for kind, parts in found.items():
        lays = laid.get(kind, ())
        if lays and not any(lay.left_out for lay in lays):
            detail = said("shop.mock_up", kind=kind, width=WIDTH)
            own = tuple(("lay", lay.cloth_length) for lay in lays)
            yield ShoppingRow("mock-up cloth", detail, math.fsum(map(mock_length, lays)), "mm", own)
            continue
        length = up_to(math.fsum(part for _, part in parts))
        detail = said("shop.mock_up_about", kind=kind, width=WIDTH)
        yield ShoppingRow("mock-up cloth", detail, length, "mm", tuple(parts))


def _laid(mock: MockUp) -> Mapping[str, Sequence[Lay]]:
    """Return the lays of each cheap cloth by what it is asked for: two of one kind may be laid apart."""
    lays = {lay.role: lay for lay in mock.made.lays}
    found: dict[str, dict[str, Lay]] = defaultdict(dict)
    for garment in mock.made.garments:
        found[mock.cloths[garment.name].ask_for][garment.fabric] = lays[garment.fabric]
    return {kind: tuple(own.values()) for kind, own in found.items()}


def _by_area(garment: MadeGarment) -> float:
    """Return about how much of a cheap cloth a garment takes, mm: its shell, laid by hand."""
    shells = [cut for cut in garment.pattern.pieces if not cut.piece.material]
    area = math.fsum(c.cut.area * c.piece.count * (2 if c.piece.fold_edge else 1) for c in shells)
    tall = max((_tall(c.cut.bounds) for c in shells), default=0.0)
    return max(area / (WIDTH * MOCK_USED), tall)


def _tall(box: tuple[float, float, float, float]) -> float:
    x0, y0, x1, y1 = box
    return max(x1 - x0, y1 - y0)


def shelves(boxes: Sequence[tuple[float, float]], width: float) -> float:
    """Return how long a cloth of this width must be for boxes (along, across), laid row by row, longest first.

    A lay that a maker can copy in the shop; a box wider than the cloth takes a row of its own.

    >>> shelves([(300, 400), (200, 400), (100, 400)], 900)
    400.0
    """
    length, room, row = 0.0, 0.0, 0.0
    for along, across in sorted(boxes, reverse=True):
        if across > room:
            length += row
            room, row = width, along
        room -= across
    return length + row
