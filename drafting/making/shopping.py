"""The shopping list: everything to buy for a costume, each line the sum of its parts.

Lengths in mm. A line has a cost where the price is known: a cloth's from its own file (`price`),
everything else from the workroom's prices.
"""

from __future__ import annotations

import csv
import io
import math
from collections import defaultdict
from collections.abc import Iterator, Mapping

from drafting.costume.make import Made
from drafting.draft.draft import Notion
from drafting.ground.lengths import in_unit, told
from drafting.layout import Lay
from drafting.layout.lay import BUY_STEP
from drafting.layout.outlines import Outline
from drafting.layout.packing.model import box_of
from drafting.making.model import Setting, ShoppingRow, said
from drafting.making.tables import trim_length
from drafting.making.thread import WASTE, seam_thread
from drafting.making.words import plan_sentence
from drafting.shaping.details.zips import sold_zip

METRE = 1000.0

SPARE_BUTTONS = 1
"""Of each kind, beyond those sewn on (common practice: one is lost before the costume is worn out)."""


def shopping(
    made: Made, settings: Mapping[tuple[str, str], Setting], prices: Mapping[str, float] | None = None
) -> tuple[ShoppingRow, ...]:
    """Return what to buy: cloths, interfacings, thread, notions, needles.

    `made` has its lays already. `prices` are for a metre of elastic, boning, casing and interfacing
    (`elastic`, ...), 100 m of `thread`, one `button`, one packet of `needle`.
    """
    costs = prices or {}
    return (
        *_cloths(made, costs),
        *_threads(made, settings, costs),
        *_notions(made, costs),
        *_trims(made),
        *_needles(settings, costs),
    )


def _cloths(made: Made, costs: Mapping[str, float]) -> Iterator[ShoppingRow]:
    for lay in made.lays:
        fabric = made.costume.fabrics.get(lay.role)
        each = fabric.price if fabric else None
        if lay.role == "interfacing":
            yield from _interfacings(made, lay, costs.get("interfacing", each))
            continue
        shrinks, spare = lay.cloth.shrinkage[0], lay.cloth.wishes.spare
        detail = said(
            "shop.cloth_shrinks" if shrinks else "shop.cloth",
            title=lay.cloth.title,
            width=lay.cloth.width,
            shrinks=shrinks,
            spare=spare,
        )
        parts = (("lay", lay.cloth_length),)
        yield ShoppingRow(lay.role, detail, lay.buy_length, "mm", parts, _metres(lay.buy_length, each))


def _interfacings(made: Made, lay: Lay, each: float | None) -> Iterator[ShoppingRow]:
    """Yield one line a weight; the lay is shared out by area, never shorter than the longest piece."""
    weights: dict[str, list[Outline]] = defaultdict(list)
    kinds = {(g.name, n.piece): n.kind for g in made.garments for n in g.draft.notions if n.what == "interfacing"}
    for outline in lay.outlines:
        key = outline.part.garment, outline.part.cut.piece.name
        weights[kinds.get(key) or "interfacing"].append(outline)
    total = math.fsum(area_cut(outline) for outline in lay.outlines) or 1.0
    for kind, outlines in weights.items():
        parts = tuple((outline.part.name, area_cut(outline)) for outline in outlines)
        area = math.fsum(amount for _, amount in parts)
        length = lay.buy_length
        if len(weights) > 1:
            share = max(lay.cloth_length * area / total, *map(_longest, outlines))
            length = math.ceil(round((share + lay.cloth.wishes.spare) / BUY_STEP, 9)) * BUY_STEP
        detail = said("shop.interfacing", kind=kind, width=lay.cloth.width, n=len(outlines))
        yield ShoppingRow("interfacing", detail, length, "mm", parts, _metres(length, each))


def area_cut(outline: Outline) -> float:
    """Return the area (mm2) of all the cloth cut from one outline, both hands and halves."""
    piece = outline.part.cut.piece
    return outline.part.cut.cut.area * piece.count * (2 if piece.fold_edge else 1)


def _longest(outline: Outline) -> float:
    x0, _, x1, _ = box_of(outline.ring)
    return x1 - x0


def _threads(
    made: Made, settings: Mapping[tuple[str, str], Setting], costs: Mapping[str, float]
) -> Iterator[ShoppingRow]:
    parts = tuple(sorted(seam_thread(made, settings).items()))
    sewn = sum(length for _, length in parts)
    length = sewn * (1 + WASTE)
    each = costs.get("thread")
    cost = None if each is None else each * math.ceil(length / (100 * METRE))
    yield ShoppingRow("thread", said("shop.thread", sewn=sewn, waste=WASTE), length, "mm", parts, cost)


def _notions(made: Made, costs: Mapping[str, float]) -> Iterator[ShoppingRow]:
    """Yield one line for each sort of notion, in the order the garments name them."""
    groups: dict[tuple[str, str, float | None], list[tuple[str, Notion]]] = defaultdict(list)
    for garment in made.garments:
        for notion in garment.draft.notions:
            if notion.what != "interfacing":
                size = sold_zip(notion.cut_length or 0.0) if notion.what == "zip" else notion.size
                key = (notion.what, notion.kind, size)
                groups[key].append((garment.name, notion))
    for (what, kind, size), found in groups.items():
        yield _notion_row(what, kind, size, found, costs.get(what))


def _notion_row(
    what: str, kind: str, size: float | None, found: list[tuple[str, Notion]], each: float | None
) -> ShoppingRow:
    if what == "zip":
        return _zip_row(kind, found, each)
    detail = said("shop.notion" if size is None else "shop.sized", what=what, kind=kind or what, size=size or 0.0)
    if all(notion.cut_length is not None for _, notion in found):
        parts = tuple((f"{g}: {n.where}", n.count * (n.cut_length or 0.0)) for g, n in found)
        length = sum(amount for _, amount in parts)
        return ShoppingRow(what, detail, length, "mm", parts, _metres(length, each))
    parts = tuple((f"{g}: {n.where}", float(n.count)) for g, n in found)
    if what == "button":
        parts = (*parts, ("spare", float(SPARE_BUTTONS)))
    count = sum(amount for _, amount in parts)
    return ShoppingRow(what, detail, count, "piece", parts, None if each is None else each * count)


def _zip_row(kind: str, found: list[tuple[str, Notion]], each: float | None) -> ShoppingRow:
    """Return the row of zips alike: each is bought whole, as long as they are sold."""
    size = sold_zip(max(notion.cut_length or 0.0 for _, notion in found))
    parts = tuple((f"{g}: {n.where}", float(n.count)) for g, n in found)
    count = sum(amount for _, amount in parts)
    detail = said("shop.zip", kind=kind, size=size)
    return ShoppingRow("zip", detail, count, "piece", parts, None if each is None else each * count)


def _trims(made: Made) -> Iterator[ShoppingRow]:
    """Yield one line for each trim that is bought; bias strips come out of the cloth's scraps."""
    groups: dict[tuple[str, float], list[tuple[str, float]]] = defaultdict(list)
    for garment in made.garments:
        for trim in garment.trims:
            if not trim.bias:
                count, each = trim_length(garment, trim)
                name = f"{garment.name}: {trim.piece} {trim.edge}"
                groups[trim.kind, trim.width].append((name, count * each))
    for (kind, width), parts in groups.items():
        length = math.fsum(amount for _, amount in parts)
        yield ShoppingRow(kind, said("shop.trim", kind=kind, width=width), length, "mm", tuple(parts))


def _needles(settings: Mapping[tuple[str, str], Setting], costs: Mapping[str, float]) -> Iterator[ShoppingRow]:
    """Yield a packet for each needle: they bend and break, and one costume blunts several."""
    seams: dict[tuple[str, int], list[str]] = defaultdict(list)
    for (garment, seam), setting in settings.items():
        seams[setting.needle.point, setting.needle.size].append(f"{garment}: {seam}")
    each = costs.get("needle")
    for (point, size), names in sorted(seams.items()):
        detail = said("shop.needles", point=point, size=size, n=len(names))
        yield ShoppingRow("needle", detail, 1.0, "packet", tuple((n, 0.0) for n in names), each)


def total_cost(rows: tuple[ShoppingRow, ...]) -> tuple[float, int]:
    """Return the sum of all known costs and how many lines have none."""
    known = [row.cost for row in rows if row.cost is not None]
    return math.fsum(known), len(rows) - len(known)


def shopping_csv(rows: tuple[ShoppingRow, ...], unit: str | None = "cm") -> str:
    """Return the list as CSV: what, detail, amount, unit, cost; lengths in m, or in yards for inches.

    >>> print(shopping_csv(()), end="")
    what,detail,amount,unit,cost
    """
    out = io.StringIO(newline="")
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(("what", "detail", "amount", "unit", "cost"))
    for row in rows:
        amount, sold_in = f"{row.amount:g}", row.unit
        if row.unit == "mm":
            amount, _, sold_in = in_unit(told(row.amount, "bought"), unit).rpartition(" ")
        cost = "" if row.cost is None else f"{row.cost:.2f}"
        writer.writerow((row.what, plan_sentence(row.detail, unit), amount, sold_in, cost))
    return out.getvalue()


def _metres(length: float, each: float | None) -> float | None:
    return None if each is None else each * length / METRE
