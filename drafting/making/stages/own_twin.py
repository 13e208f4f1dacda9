"""Seams of a piece to itself, or to the other hand of its pair: two layers, or one folded over."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from drafting.draft.draft import Seam
from drafting.geometry.curve import Points
from drafting.geometry.moves import STAY, TURNED_OVER, Motion, mirrored_in
from drafting.geometry.polylines import kept_left, left_of, line_crossings, polyline_length
from drafting.making.stages.laid import (
    LEAST_ALLOWANCE,
    cloth,
    lines_sewn,
    name_on,
    pins_at_ends,
    pressed_to,
    turned_back,
)
from drafting.making.stages.picture import Face, Ink, InkLine, StageDrawing, drawn_panel
from drafting.making.stages.shapes import Shape, laid_edges, matching
from drafting.making.stages.so_far import STRAIGHT, SoFar, bulge

UNDER = 14 - 14j
"""mm by which the lower of two equal layers is drawn beside the upper (ours)."""


def to_its_twin(so_far: SoFar, seam: Seam) -> StageDrawing:
    """Return two equal layers right sides together; where their seam is straight, opened out as well."""
    goods = so_far.goods
    pieces = list(dict.fromkeys(piece for piece, _ in seam.a))
    where = {name: so_far.where[name] for name in pieces}
    inks: list[Ink] = [Face("right", goods.shapes[n].cut + UNDER, n) for n in pieces]
    inks += [Face("wrong", goods.shapes[n].cut, n, over=True) for n in pieces]
    still = dict.fromkeys(pieces, STAY)
    inks += lines_sewn(goods, seam, still, seam.a, "sewing")
    inks += pins_at_ends(laid_edges(goods, seam.a, still), over=False)
    inks += [name_on(goods.shapes[n], goods.shapes[n].cut) for n in pieces]
    one = drawn_panel(inks)
    line = np.concatenate(laid_edges(goods, seam.a, where))
    shape = goods.shapes[pieces[0]]
    if len(pieces) > 1 or shape.piece.copies > 1 or not shape.piece.pair or bulge(line) > STRAIGHT:
        return StageDrawing("two layers", (one,))
    return StageDrawing("two hands", (one, drawn_panel(_both_hands(shape, seam))))


def _both_hands(shape: Shape, seam: Seam) -> Iterator[Ink]:
    line = shape.edges[seam.a[0][1]]
    mirror = mirrored_in(complex(line[0]), complex(line[-1]))
    hands = (TURNED_OVER, TURNED_OVER.after(mirror))
    yield from (Face("wrong", hand(shape.outline), shape.name, over=True) for hand in hands)
    for hand in hands:
        wide = min(LEAST_ALLOWANCE, polyline_length(line) / 3)
        yield Face("right", hand(np.concatenate([line, left_of(line, wide)[::-1]])))
    yield InkLine("sewn", TURNED_OVER(line), seam.name)
    yield pressed_to(TURNED_OVER(line), over=True)
    yield pressed_to(hands[1](line), over=False)
    yield name_on(shape, TURNED_OVER(shape.outline))


def to_itself(so_far: SoFar, seam: Seam, press: str) -> StageDrawing:
    """Return one piece folded in the line that halves its two edges, right sides in, edge on edge."""
    (name,) = {piece for piece, _ in (*seam.a, *seam.b)}
    shape = so_far.goods.shapes[name]
    here = {name: Motion()}
    a, b = matching(so_far.goods, seam, here, here)
    through, way = middle_line((a + b) / 2, a, b)
    parts = [kept_left(shape.cut, through, way), kept_left(shape.cut, through, -way)]
    lies, turned = sorted(parts, key=_area)[::-1]
    over = mirrored_in(through, through + way)
    inks: list[Ink] = [Face("right", lies, name), Face("wrong", over(turned), name, over=True)]
    for line in (*laid_edges(so_far.goods, seam.a, here), *laid_edges(so_far.goods, seam.b, here)):
        if on_same_side(line, turned, through, way):
            inks.append(InkLine("sewing", over(line), seam.name))
    ends = line_crossings(shape.cut, through, way)
    inks += [InkLine("fold", np.array([ends[0], ends[-1]]))] if len(ends) else []
    inks.append(name_on(shape, over(turned)))
    return StageDrawing("folded on itself", (drawn_panel(inks), drawn_panel(_tube(so_far, seam, shape, press))))


def middle_line(middles: Points, a: Points, b: Points) -> tuple[complex, complex]:
    """Return the straight line that fits the midpoints best: a point of it and its way."""
    centre = complex(middles.mean())
    square = complex(np.sum((middles - centre) ** 2))
    if abs(square) > 1.0:
        root = np.sqrt(square)
        return centre, complex(root / abs(root))
    across = complex(a.mean() - b.mean())
    return centre, 1j * across / abs(across)


def _area(ring: Points) -> float:
    return abs(float(np.sum(ring.real * np.roll(ring.imag, -1) - ring.imag * np.roll(ring.real, -1))))


def on_same_side(line: Points, ring: Points, through: complex, way: complex) -> bool:
    sides = [((z - through) * np.conj(way)).imag.mean() for z in (line, ring)]
    return bool(sides[0] * sides[1] > 0)


def _tube(so_far: SoFar, seam: Seam, shape: Shape, press: str) -> Iterator[Ink]:
    """Yield the piece wrong side up, the allowances of both edges folded back as they will lie."""
    here = {shape.name: TURNED_OVER}
    yield cloth(shape, TURNED_OVER)
    for chain in (seam.a, seam.b) if press == "open" else (seam.a,):
        for _, edge in chain:
            yield turned_back(shape, edge, TURNED_OVER, look="right")
        yield pressed_to(max(laid_edges(so_far.goods, chain, here), key=len), over=True)
    yield name_on(shape, TURNED_OVER(shape.outline))
