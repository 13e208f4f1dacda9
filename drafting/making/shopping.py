"""The shopping list: everything to buy for a costume, each line the sum of its parts.

Lengths in mm. A line has a cost where the price is known: a cloth's from its own file (`price`),
everything else from the workroom's prices.
"""

from __future__ import annotations

import csv
import io
import math
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence

from drafting.alter.braces import BRACE_BUTTON
from drafting.costume.make import Made
from drafting.costume.mock_up import MockUp
from drafting.draft.draft import Notion
from drafting.ground.lengths import in_unit, told
from drafting.layout import Lay
from drafting.layout.outlines import Outline
from drafting.layout.packing.model import box_of
from drafting.making.model import Setting, ShoppingRow, Step, said
from drafting.making.settings.needles import sold_as
from drafting.making.settings.seams import along_lines
from drafting.making.supplies import mock_up_cloth, shelves, supplies, threads, up_to
from drafting.making.trim_lengths import laid_trims
from drafting.making.whole_order import work_order
from drafting.making.words import plan_sentence
from drafting.shaping.details.zips import sold_zip

METRE = 1000.0

CUT_ENDS = {"boning": 10.0, "elastic": 20.0, "cord": 20.0}
"""mm lost at each length that is cut: a bone's filed ends, what an elastic is held by (common practice)."""

LIGNE = 0.635
"""mm: the unit in which buttons are sold; 40 of them are an inch (common practice)."""

BUTTONS = ("button", BRACE_BUTTON)

SPARE_BUTTONS = 1
"""Of each kind, beyond those sewn on (common practice: one is lost before the costume is worn out)."""


def shopping(
    made: Made,
    settings: Mapping[tuple[str, str], Setting],
    prices: Mapping[str, float] | None = None,
    steps: Sequence[Step] | None = None,
    mock: MockUp | None = None,
) -> tuple[ShoppingRow, ...]:
    """Return what to buy: cloths, interfacings, thread, notions, needles, and what the `steps` use up.

    `made` has its lays already; steps that nobody gives are worked out. `prices` are for a metre of elastic,
    boning, casing and interfacing (`elastic`, ...), 100 m of `thread`, one `button`, one packet of `needle`. The
    cheap cloth is that of the `mock` where it is laid out, else about as much.
    """
    costs, steps = prices or {}, work_order(made, settings) if steps is None else steps
    return (
        *_cloths(made, costs),
        *mock_up_cloth(made, steps, mock),
        *threads(made, steps, costs.get("thread")),
        *_notions(made, costs),
        *_trims(made),
        *supplies(made, steps, costs),
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
            _cloth_key(lay) if shrinks else "shop.cloth",
            title=lay.cloth.title,
            width=lay.cloth.width,
            shrinks=shrinks,
            spare=spare,
        )
        parts = (("lay", lay.cloth_length),)
        yield ShoppingRow(lay.role, detail, lay.buy_length, "mm", parts, _metres(lay.buy_length, each))


def _cloth_key(lay: Lay) -> str:
    """Return how a cloth that shrinks is told: by what takes the shrinkage out of it."""
    return "shop.cloth_steamed" if lay.cloth.shrunk_by == "steam" else "shop.cloth_shrinks"


def _interfacings(made: Made, lay: Lay, each: float | None) -> Iterator[ShoppingRow]:
    """Yield one line a kind, each with a lay of its own: they are different cloths."""
    weights: dict[str, list[Outline]] = defaultdict(list)
    kinds = {(g.name, n.piece): n.kind for g in made.garments for n in g.draft.notions if n.what == "interfacing"}
    for outline in lay.outlines:
        key = outline.part.garment, outline.part.cut.piece.name
        weights[kinds.get(key) or "interfacing"].append(outline)
    for kind, outlines in weights.items():
        own = {outline.part.name: outline for outline in outlines}
        parts = tuple((name, area_cut(outline)) for name, outline in own.items())
        length = lay.buy_length
        if len(weights) > 1:
            boxes = [box for outline in own.values() for box in _boxes(outline)]
            length = up_to(shelves(boxes, lay.cloth.usable_width) + lay.cloth.wishes.spare, lay.cloth.step)
        detail = said("shop.interfacing", kind=kind, width=lay.cloth.width, n=len(own))
        yield ShoppingRow("interfacing", detail, length, "mm", parts, _metres(length, each))


def _boxes(outline: Outline) -> list[tuple[float, float]]:
    """Return the box (along, across) round each copy that is cut from one outline, opened from its fold."""
    x0, y0, x1, y1 = box_of(outline.ring)
    return [(x1 - x0, (y1 - y0) * (2 if outline.fold else 1))] * outline.part.cut.piece.count


def area_cut(outline: Outline) -> float:
    """Return the area (mm2) of all the cloth cut from one outline, both hands and halves."""
    piece = outline.part.cut.piece
    return outline.part.cut.cut.area * piece.count * (2 if piece.fold_edge else 1)


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
        yield _notion_row(what, kind, size, found, costs.get("button" if what in BUTTONS else what))


def _notion_row(
    what: str, kind: str, size: float | None, found: list[tuple[str, Notion]], each: float | None
) -> ShoppingRow:
    if what == "zip":
        return _zip_row(kind, found, each)
    key = "shop.notion" if size is None else "shop.button" if what in BUTTONS else "shop.sized"
    detail = said(key, what=what, kind=kind or what, size=size or 0.0, ligne=round((size or 0.0) / LIGNE))
    if all(notion.cut_length is not None for _, notion in found):
        parts = tuple((f"{g}: {n.where}", n.count * (n.cut_length or 0.0)) for g, n in found)
        ends = CUT_ENDS.get(what, 0.0) * sum(notion.count for _, notion in found)
        length = up_to(sum(amount for _, amount in parts) + ends)
        return ShoppingRow(what, detail, length, "mm", (*parts, ("ends", ends)), _metres(length, each))
    parts = tuple((f"{g}: {n.where}", float(n.count)) for g, n in found)
    if what in BUTTONS:
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
    """Yield one line for each trim that is bought, and for the cord in a bias strip, which comes out of scraps."""
    groups: dict[tuple[str, float], list[tuple[str, float]]] = defaultdict(list)
    for garment in made.garments:
        for laid in laid_trims(garment):
            what = laid.trim.kind if not laid.trim.bias else "cord" if laid.trim.kind == "piping" else ""
            if what:
                name = f"{garment.name}: {' '.join(laid.place)}"
                groups[what, laid.trim.width].append((name, laid.total))
    for (kind, width), parts in groups.items():
        length = up_to(math.fsum(amount for _, amount in parts))
        detail = said("shop.cord", width=width) if kind == "cord" else said("shop.trim", kind=kind, width=width)
        yield ShoppingRow(kind, detail, length, "mm", tuple(parts))


def _needles(settings: Mapping[tuple[str, str], Setting], costs: Mapping[str, float]) -> Iterator[ShoppingRow]:
    """Yield a packet for each needle: they bend and break, and one costume blunts several."""
    seams: dict[tuple[str, int], list[str]] = defaultdict(list)
    for (garment, seam), setting in along_lines(settings).items():
        seams[setting.needle.point, setting.needle.size].append(f"{garment}: {seam}")
    each = costs.get("needle")
    for (point, size), names in sorted(seams.items()):
        detail = said("shop.needles", point=point, size=size, sold=sold_as(size), n=len(names))
        yield ShoppingRow("needle", detail, 1.0, "packet", tuple((n, 0.0) for n in names), each)


def total_cost(rows: tuple[ShoppingRow, ...]) -> tuple[float, int]:
    """Return the sum of all known costs and how many lines have none."""
    known = [row.cost for row in rows if row.cost is not None]
    return math.fsum(known), len(rows) - len(known)


FORMULA = frozenset("=+-@\t\r\uff1d\uff0b\uff0d\uff20")
"""What a cell begins with that a spreadsheet reckons out (common practice), in both widths."""


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
        writer.writerow((row.what, harmless_cell(plan_sentence(row.detail, unit)), amount, sold_in, cost))
    return out.getvalue()


def harmless_cell(text: str) -> str:
    """Return a text that no spreadsheet takes for a formula: an apostrophe goes before one that looks so.

    >>> harmless_cell("=HYPERLINK(1)"), harmless_cell("cotton")
    ("'=HYPERLINK(1)", 'cotton')
    """
    return f"'{text}" if text[:1] in FORMULA else text


def _metres(length: float, each: float | None) -> float | None:
    return None if each is None else each * length / METRE
