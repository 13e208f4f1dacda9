"""A pocket of a costume that was written for another wearer, moved or made smaller until its piece holds it."""

from __future__ import annotations

import cmath
import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from drafting.draft.piece import Piece
from drafting.geometry import Path
from drafting.geometry.area import outside
from drafting.ground.findings import Finding, Severity
from drafting.ground.lengths import told
from drafting.ground.names import name_in_words
from drafting.reading.pockets import PocketWish

MOST, STEP = 60.0, 4.0
"""mm: no pocket is moved farther, and it is tried at such steps (ours: farther it is another pocket)."""

WAYS = 24
"""Ways in which it is tried, level ones first: a pair of pockets stays at one height (ours)."""

SHARES = (1.0, 0.9, 0.8, 0.7, 0.6)
"""Of its size, largest first: what a hand goes into is made smaller last (ours)."""

SMALL = 5.0
"""mm: a move that no eye sees is a note (ours)."""

FINE = 0.1
"""mm to which the least move is found."""


@dataclass(frozen=True)
class MovedPocket:
    """A pocket as it fits: its `wish`, perhaps smaller, moved by `shift` mm on its piece."""

    wish: PocketWish
    shift: complex = 0j


def moved_to_fit(
    piece: Piece, wish: PocketWish, line_of: Callable[[PocketWish], Path], least: float
) -> MovedPocket | None:
    """Return the pocket with the least change with which at most `least` mm2 sticks out; None where there is none.

    `line_of` draws the outline of a wish where it was asked for.
    """
    for share in SHARES:
        smaller = replace(wish, width=share * wish.width, height=share * wish.height)
        drawn = line_of(smaller)

        def holds(shift: complex, drawn: Path = drawn) -> bool:
            return outside(drawn.mapped(lambda place: place + shift), piece.outline) <= least

        for shift in _shifts():
            if holds(shift):
                return MovedPocket(smaller, _least(shift, holds))
    return None


def _shifts() -> Iterator[complex]:
    """Yield moves from none to the farthest, at each distance the level ones first."""
    yield 0j
    ways = sorted((cmath.exp(2j * math.pi * k / WAYS) for k in range(WAYS)), key=lambda way: abs(way.imag))
    for number in range(1, round(MOST / STEP) + 1):
        for way in ways:
            yield number * STEP * way


def _least(shift: complex, holds: Callable[[complex], bool]) -> complex:
    """Return the shortest move in the way of one that holds, to `FINE`, between it and the step before."""
    if not shift:
        return shift
    way = shift / abs(shift)
    low, high = abs(shift) - STEP, abs(shift)
    while high - low > FINE:
        middle = (low + high) / 2
        low, high = (low, middle) if holds(middle * way) else (middle, high)
    return high * way


def moved_said(piece: Piece, asked: PocketWish, moved: MovedPocket) -> Finding:
    """Return the warning that a pocket does not lie where, or is not as large as, the costume has it."""
    far, wish = abs(moved.shift), moved.wish
    done = [f"lies {told(far)} from its place"] if far >= FINE else []
    if wish.width < asked.width:
        done.append(
            f"is {told(wish.width)} x {told(wish.height)} instead of {told(asked.width)} x {told(asked.height)}"
        )
    sentence = (
        f"On this wearer the {asked.kind} pocket of the {name_in_words(piece.name)} would stick out over its "
        f"stitching line, so it {' and '.join(done)}. Mark it where it is drawn, or write a place of its own for "
        "this wearer."
    )
    level: Severity = "note" if far < SMALL and wish.width == asked.width else "warning"
    return Finding("pocket", level, piece.name, far, None, sentence)
