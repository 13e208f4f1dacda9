"""The plan's tables: buttons and their holes, boning, elastic, gathers, trims. Lengths mm."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Callable, Iterator, Mapping
from functools import partial

from drafting.costume.garment import MadeGarment
from drafting.costume.make import Made
from drafting.draft.draft import Draft, EdgeRef, Notion, Seam
from drafting.draft.gathers import Gathers, both_gathered, gathers_along
from drafting.draft.piece import EdgeKind
from drafting.draft.walk import walk
from drafting.fabric import Fabric
from drafting.ground.lengths import told
from drafting.making.model import Said, Table, said
from drafting.making.order.parts import base_of
from drafting.making.seam_lengths import has_half
from drafting.making.trim_lengths import laid_trims
from drafting.shaping.coat.hem_braid import HEM_BRAID
from drafting.shaping.flare.elastic import OVERLAP

TableRow = tuple[Said | str | float, ...]
RowsOf = Callable[[MadeGarment], Iterator[TableRow]]

QUARTERS = 4
"""Gathers are marked in quarters on both sides, so that they spread evenly (common practice)."""


def tables(made: Made) -> tuple[Table, ...]:
    """Return every table that has a row."""
    kinds: dict[str, tuple[tuple[str, ...], RowsOf]] = {
        "table.buttons": (("count", "button", "places", "how"), partial(_button_rows, made.costume.fabrics)),
        "table.boning": (("count", "bone", "cut", "how"), _bone_rows),
        "table.elastic": (("count", "cut", "loop", "how"), _elastic_rows),
        "table.gathers": (("drawn", "sewn", "marks", "partner_marks"), _gather_rows),
        "table.trims": (("count", "trim", "cut", "total", "how"), _trim_rows),
    }
    found = (
        Table(name, ("head.where", *(f"head.{head}" for head in heads)), tuple(_each(made, rows)))
        for name, (heads, rows) in kinds.items()
    )
    return tuple(table for table in found if table.rows)


def _each(made: Made, rows: RowsOf) -> Iterator[TableRow]:
    for garment in made.garments:
        yield from rows(garment)


def _of(garment: MadeGarment, what: str) -> Iterator[Notion]:
    return (notion for notion in garment.draft.notions if notion.what == what)


def _where(garment: MadeGarment, place: str) -> Said:
    return said("table.where", garment=garment.name, place=place)


def _button_rows(fabrics: Mapping[str, Fabric], garment: MadeGarment) -> Iterator[TableRow]:
    high = shank(fabrics.get(garment.fabric))
    for notion in _of(garment, "button"):
        button = said("table.button", size=notion.size or 0.0, kind=notion.kind)
        places = places_said(garment, notion.piece, "button")
        key = "table.button_flat" if notion.kind == "flat" else "table.button_how"
        how = said(key, note=notion.note, shank=high)
        yield _where(garment, notion.where), float(notion.count), button, places, how


LAYERS, LEAST_SHANK, MOST_SHANK = 2, 2.0, 4.0
"""Layers that a buttonhole side has, and mm of thread shank at least and at most (from memory)."""


def shank(fabric: Fabric | None) -> float:
    """Return how high the thread shank of a flat button is, mm: as thick as what it closes."""
    thickness = (fabric.thickness if fabric else None) or 0.0
    return min(MOST_SHANK, max(LEAST_SHANK, LAYERS * thickness))


def places_said(garment: MadeGarment, piece: str, what: str) -> Said:
    """Return how far from its piece's uppermost mark the others of a kind lie: down, or across where they do."""
    middles = []
    if piece in garment.draft:
        marks = garment.draft[piece].placements
        middles = [_middle(mark.path.bounds) for mark in marks if mark.what == what]
    if not middles:
        return said("table.places", places="-")
    first, *others = sorted(middles, key=lambda p: (-round(p.imag, 3), p.real))
    across = sum(abs((p - first).real) for p in others) > sum(abs((p - first).imag) for p in others)
    found = ", ".join(told(abs(p - first)) for p in (first, *others))
    return said("table.places_across" if across else "table.places", places=found)


def _middle(box: tuple[float, float, float, float]) -> complex:
    x0, y0, x1, y1 = box
    return complex((x0 + x1) / 2, (y0 + y1) / 2)


def _bone_rows(garment: MadeGarment) -> Iterator[TableRow]:
    for notion in _of(garment, "boning"):
        bone = said("table.bone", kind=notion.kind, size=notion.size or 0.0)
        cut = said("table.length", length=notion.cut_length or 0.0)
        yield _where(garment, notion.where), float(notion.count), bone, cut, notion.note


def _elastic_rows(garment: MadeGarment) -> Iterator[TableRow]:
    for notion in _of(garment, "elastic"):
        cut = said("table.length", length=notion.cut_length or 0.0)
        loop = said("table.length", length=(notion.cut_length or OVERLAP) - OVERLAP)
        yield _where(garment, notion.where), float(notion.count), cut, loop, notion.note


def _gather_rows(garment: MadeGarment) -> Iterator[TableRow]:
    draft = garment.draft
    in_seams = {ref for seam in draft.seams for ref in (*seam.a, *seam.b)}
    for seam in draft.seams:
        walked = walk(draft, seam)
        if both := both_gathered(walked):
            for drawn_up, side in zip(both, (seam.a, seam.b), strict=True):
                yield _seam_gathers(garment, seam, drawn_up, f"{seam.name} {base_of(draft[side[0][0]])}")
        elif run := gathers_along([walked]):
            yield _seam_gathers(garment, seam, run, seam.name)
    rounds: dict[tuple[str, str], list[tuple[str, float, float]]] = defaultdict(list)
    for piece in draft.pieces:
        for edge in piece.edges:
            if edge.sewn is not None and (piece.name, edge.name) not in in_seams:
                whole = 1 if piece.fold_edge is None else 2
                found = piece.name, whole * edge.length, whole * edge.sewn
                rounds[_drawn_by(draft, (piece.name, edge.name)), edge.name].append(found)
    for (_, name), parts in rounds.items():  # front and back of one leg are one round of elastic
        names = " + ".join(piece for piece, _, _ in parts)
        drawn, sewn = math.fsum(p[1] for p in parts), math.fsum(p[2] for p in parts)
        yield _gathers(_where(garment, f"{names} {name}"), drawn, sewn)


def _drawn_by(draft: Draft, ref: EdgeRef) -> str:
    """Return where the elastic lies that draws an edge up; the edge's own piece where none does."""
    return next((n.where for n in draft.notions if ref in n.edges), ref[0])


def _seam_gathers(garment: MadeGarment, seam: Seam, run: Gathers, place: str) -> TableRow:
    """Return the gathers of one seam as it is sewn: of both halves where it runs on over the middle."""
    whole = 2 if has_half(garment.draft, seam) else 1
    where = said("table.where_between" if run.between else "table.where", garment=garment.name, place=place)
    return _gathers(where, whole * run.drawn, whole * run.held)


def _gathers(where: Said, drawn: float, held: float) -> TableRow:
    length, sewn = (said("table.length", length=value) for value in (drawn, held))
    return where, length, sewn, _quarters(drawn), _quarters(held)


def quarters_of(length: float) -> tuple[float, ...]:
    """Return where the quarter marks of an edge lie, mm from its start.

    >>> quarters_of(800), quarters_of(320)
    ((200.0, 400.0, 600.0), (80.0, 160.0, 240.0))
    """
    return tuple(length * i / QUARTERS for i in range(1, QUARTERS))


def _quarters(length: float) -> Said:
    marks = ", ".join(map(told, quarters_of(length)))
    return said("table.marks", marks=marks)


def _trim_rows(garment: MadeGarment) -> Iterator[TableRow]:
    yield from _braid_rows(garment)
    for laid in laid_trims(garment):
        trim, caught = laid.trim, garment.draft.edge(laid.refs[0]).kind is EdgeKind.SEAM
        how = said("table.trim_caught" if caught else "table.trim_bought")
        if trim.bias:
            how = said("table.trim_bias", width=trim.width, side=cloth_for_strip(laid.total, trim.width))
        kind = said("table.trim", kind=trim.kind, width=trim.width)
        each = said("table.length", length=laid.cuts[0].each)
        if laid.by_hand:
            each = said("table.each_hand", **laid.by_hand)
        total = said("table.length", length=laid.total)
        yield _where(garment, " ".join(laid.place)), float(laid.count), kind, each, total, how


def _braid_rows(garment: MadeGarment) -> Iterator[TableRow]:
    """Yield the stiff braid along a hem, among the trims."""
    for notion in _of(garment, HEM_BRAID):
        cut = notion.cut_length or 0.0
        kind = said("table.trim", kind=notion.kind, width=notion.size or 0.0)
        each, total = said("table.length", length=cut), said("table.length", length=notion.count * cut)
        yield _where(garment, notion.where), float(notion.count), kind, each, total, notion.note


def cloth_for_strip(length: float, width: float) -> float:
    """Return the side (mm) of the square of cloth that gives `length` of bias strip `width` wide.

    Strips of a square's bias are at most its diagonal long; every join takes one width more.
    """
    side = math.sqrt(length * width)
    joins = math.ceil(length / (side * math.sqrt(2)))
    return math.sqrt((length + joins * width) * width)
