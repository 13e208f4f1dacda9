"""A seam whose two sides cannot lie flat on each other: both parts right side up, fine lines notch to notch."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from drafting.draft.draft import Seam
from drafting.draft.roles import SeamKind
from drafting.geometry.area_room import shared_area
from drafting.geometry.curve import Points
from drafting.geometry.moves import STAY, Motion, best_fit, mirrored_in
from drafting.geometry.polylines import polyline_length
from drafting.making.stages.laid import flat, names_of
from drafting.making.stages.picture import Ink, InkLine, StageDrawing, closer, drawn_panel
from drafting.making.stages.shapes import LaidPieces, laid_edges, laid_notches, matching, outward_at
from drafting.making.stages.so_far import SoFar, axis_of, meeting_points

STEP, MOST_STEPS = 30.0, 40
"""mm by which parts are drawn apart at a time, and how often at most (ours)."""

MANY = 4
"""More pieces than these are not drawn for the sake of what hangs from them (ours)."""


def drawn_apart(so_far: SoFar, seam: Seam) -> StageDrawing | None:
    """Return both parts of a seam drawn apart, the fixed one with what hangs from it already."""
    parts_a, parts_b = so_far.parts(seam.a), so_far.parts(seam.b)
    fixed_parts, free_parts = (parts_b, parts_a) if len(parts_b) < len(parts_a) else (parts_a, parts_b)
    if len(parts_a) == len(parts_b) and _size(so_far, parts_b) > _size(so_far, parts_a):
        fixed_parts, free_parts = parts_b, parts_a
    if len(fixed_parts) != 1:
        return None
    root = next(iter(fixed_parts[0]))
    fixed: LaidPieces = so_far.beside(root)
    alone = seam.kind is SeamKind.ATTACHED
    if alone or len(fixed) > MANY:
        fixed = dict(fixed_parts[0])
    moved: dict[str, Motion] = {}
    for part in free_parts:
        guest = so_far.beside(next(iter(part)))
        one_in_hand = bool(set(guest) & set(fixed))
        if alone or len(guest) > MANY or one_in_hand:
            guest, fixed = dict(part), dict(fixed_parts[0])
        here, there = meeting_points(so_far, seam, fixed_parts[0], part)
        if not len(here):
            return None
        move = best_fit(there, here)
        away = _away(so_far, seam, fixed_parts[0])
        clear = _cleared(so_far, {**fixed, **moved}, {n: move.after(m) for n, m in guest.items()}, away)
        moved |= clear
    both: LaidPieces = {**fixed, **moved}
    return StageDrawing("apart", (closer(drawn_panel(_inks(so_far, seam, both))),))


def _size(so_far: SoFar, parts: list[dict[str, Motion]]) -> float:
    return so_far.goods.size([name for part in parts for name in part])


def _away(so_far: SoFar, seam: Seam, fixed: LaidPieces) -> complex:
    """Return the way out of the fixed part at the middle of its edge."""
    chain = seam.a if seam.a[0][0] in fixed else seam.b
    line = max(laid_edges(so_far.goods, chain, fixed), key=len)
    return outward_at(line, polyline_length(line) / 2, over=False)


def _cleared(so_far: SoFar, fixed: LaidPieces, guest: dict[str, Motion], away: complex) -> dict[str, Motion]:
    """Return the guest moved away until nothing of it lies on what is there, or on its own other hand."""
    shapes = so_far.goods.shapes
    axis = axis_of(so_far, fixed)
    hands = (STAY, mirrored_in(*axis)) if axis else (STAY,)
    there = [hand(placing(shapes[name].outline)) for hand in hands for name, placing in fixed.items()]
    for step in range(1, MOST_STEPS):
        shift = Motion(by=away * STEP * step)
        rings = [shift.after(move)(shapes[name].outline) for name, move in guest.items()]
        if not any(_touch(ring, other) for ring in rings for other in there):
            break
    return {name: shift.after(move) for name, move in guest.items()}


def _touch(one: Points, other: Points) -> bool:
    if one.real.max() < other.real.min() or other.real.max() < one.real.min():
        return False
    if one.imag.max() < other.imag.min() or other.imag.max() < one.imag.min():
        return False
    return shared_area(one, other) > 0.0


def _inks(so_far: SoFar, seam: Seam, both: LaidPieces) -> Iterator[Ink]:
    goods = so_far.goods
    yield from flat(so_far, both, over=False)
    axis = axis_of(so_far, both)
    for hand in (STAY, mirrored_in(*axis)) if axis else (STAY,):
        for chain in (seam.a, seam.b):
            yield from (InkLine("sewing", hand(line), seam.name) for line in laid_edges(goods, chain, both))
        yield from (InkLine("hidden", hand(line)) for line in _threads(so_far, seam, both))
    yield from names_of(goods, both, STAY)


def _threads(so_far: SoFar, seam: Seam, both: LaidPieces) -> Iterator[Points]:
    """Yield the lines from each notch and end of one side to its partner."""
    a, b = matching(so_far.goods, seam, both, both)
    yield from (np.array([a[i], b[i]]) for i in (0, -1) if len(a))
    ours = {laid.notch.name: laid.at for laid in laid_notches(so_far.goods, seam, both, on_a=True)}
    theirs = {laid.notch.name: laid.at for laid in laid_notches(so_far.goods, seam, both, on_a=False)}
    yield from (np.array([at, theirs[name]]) for name, at in ours.items() if name in theirs)
