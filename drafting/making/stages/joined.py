"""A seam between two parts: right sides together, then opened out from the wrong side and pressed."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from drafting.draft.draft import EdgeRef, Seam
from drafting.draft.walk import walk
from drafting.geometry.moves import TURNED_OVER, Motion, best_fit, mirrored_in
from drafting.making.stages.apart import drawn_apart
from drafting.making.stages.laid import (
    cloth,
    flat,
    lines_sewn,
    name_on,
    names_of,
    pins_at_ends,
    pressed_to,
    turned_back,
)
from drafting.making.stages.pairing import Pairing, paired
from drafting.making.stages.picture import Ink, InkLine, InkMark, Panel, StageDrawing, closer, drawn_panel
from drafting.making.stages.shapes import Goods, LaidPieces, laid_edges, laid_notches, matching
from drafting.making.stages.so_far import SoFar, axis_of, hands_of, with_seam

GATHERED_FROM = 1.1
"""Drawn over sewn from which gathers cannot be shown lying on what they are sewn to (ours)."""


def seam_joined(so_far: SoFar, seam: Seam, press: str, towards: str) -> StageDrawing | None:
    """Return the drawing of a seam between two parts; None where they hang in too many parts for one."""
    pairing = paired(so_far, seam)
    if pairing is None:
        return None
    walked = walk(so_far.goods.garment.draft, seam)
    shorter = min(walked.a_length, walked.b_length)
    if (walked.gather_ratio or 1.0) > GATHERED_FROM or pairing.too_far(shorter):
        return drawn_apart(so_far, seam)
    one = drawn_panel(right_sides_together(so_far, seam, pairing))
    two = opened_and_pressed(so_far, seam, press, towards)
    return StageDrawing("joined", (closer(one), two))


def right_sides_together(so_far: SoFar, seam: Seam, pairing: Pairing) -> Iterator[Ink]:
    """Yield the lower part right side up, the upper one turned over on it, pinned and stitched."""
    goods = so_far.goods
    shapes = goods.shapes
    for where in (pairing.lower, pairing.upper):
        yield from (cloth(shapes[name], placing, cut=True) for name, placing in where.items())
    mirrored = _both_whole(so_far, pairing)
    yield from (InkLine("hidden", line) for line in laid_edges(goods, pairing.lower_chain, pairing.lower))
    for hand in [Motion(), *mirrored]:
        lines = lines_sewn(goods, seam, pairing.upper, pairing.upper_chain, "sewing")
        yield from (replace(line, points=hand(line.points)) for line in lines)
    yield from pinned(goods, seam, pairing)
    tops = [placing(shapes[name].cut) for name, placing in pairing.upper.items()]
    yield from (name_on(shapes[name], top) for name, top in zip(pairing.upper, tops, strict=True))
    for name, placing in pairing.lower.items():
        yield name_on(shapes[name], placing(shapes[name].cut), tops)


def _both_whole(so_far: SoFar, pairing: Pairing) -> list[Motion]:
    """Return the mirror in which the seam is sewn once more, where both parts are whole."""
    axis = axis_of(so_far, pairing.lower)
    whole = any(so_far.goods.shapes[name].axis for name in pairing.upper)
    return [mirrored_in(*axis)] if axis and whole else []


def pinned(goods: Goods, seam: Seam, pairing: Pairing) -> Iterator[InkMark]:
    """Yield pins and ticks at each notch of the upper edge, and a pin near each end."""
    on_a = pairing.upper_chain == seam.a
    for laid in laid_notches(goods, seam, pairing.upper, on_a=on_a):
        yield InkMark("notch", laid.at + laid.out * 15.0, laid.out, 14.0, laid.notch.count)
        yield InkMark("pin", laid.at, laid.out, 46.0)
    yield from pins_at_ends(laid_edges(goods, pairing.upper_chain, pairing.upper), over=True)


# ----------------------------------------------------------------------------------- opened out


def opened_and_pressed(so_far: SoFar, seam: Seam, press: str, towards: str) -> Panel:
    """Return what the seam makes, wrong side up, its allowances pressed."""
    after = with_seam(so_far, seam)
    if seam.name in after.laid:
        where: LaidPieces = after.beside(seam.a[0][0])
        inks = list(flat(after, where, over=True))
        hands = hands_of(after, where)
    else:
        where, hands = _beside_seam(so_far, seam), (Motion(),)
        inks = list(flat(so_far, where, over=True, hands=False))
    for hand in hands:
        inks += pressed_seam(so_far.goods, seam, where, TURNED_OVER.after(hand), press, towards)
    return closer(drawn_panel([*inks, *names_of(so_far.goods, where, TURNED_OVER)]))


def _beside_seam(so_far: SoFar, seam: Seam) -> LaidPieces:
    """Return the two sides of a seam that closes a ring, opened at that seam alone."""
    a = {name: so_far.where[name] for name, _ in seam.a}
    b = {name: so_far.where[name] for name, _ in seam.b}
    there, here = matching(so_far.goods, seam, a, b)
    move = best_fit(there, here)
    return {**{name: move.after(own) for name, own in b.items()}, **a}


def pressed_seam(
    goods: Goods, seam: Seam, where: LaidPieces, view: Motion, press: str, towards: str
) -> Iterator[Ink]:
    """Yield a seam's allowances as they are pressed, the seam, and the arrows that say which way."""
    laid = {name: view.after(move) for name, move in where.items() if isinstance(move, Motion)}
    chains = _pressed_onto(seam, press, towards)
    aside = len(chains) == 1
    for chain in chains:
        for piece, edge in chain:
            if piece in laid:
                shape = goods.shapes[piece]
                yield turned_back(
                    shape, edge, laid[piece], look="right" if shape.piece.material != "lining" else "lining"
                )
                if aside:
                    yield turned_back(shape, edge, laid[piece], look="wrong", by=14.0)
    yield from lines_sewn(goods, seam, laid, seam.a, "sewn")
    for chain in chains:
        lines = laid_edges(goods, chain, laid)
        if lines:
            yield pressed_to(max(lines, key=len), over=view.over)


def _pressed_onto(seam: Seam, press: str, towards: str) -> list[Sequence[EdgeRef]]:
    """Return the chains onto which allowances are pressed: both, one, or none."""
    if press == "open":
        return [seam.a, seam.b]
    if press == "not":
        return []
    return [seam.b if any(piece == towards for piece, _ in seam.b) else seam.a]
