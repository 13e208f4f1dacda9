"""Several things side by side on one panel: each keeps its shape, none touches another."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from drafting.making.stages.picture import Face, Ink, InkLine, InkMark, InkName, drawn_panel

APART, ROW = 60.0, 1300.0
"""mm of cloth between two things, and in a row of them (ours)."""


def in_rows(things: Iterable[Sequence[Ink]], row: float = ROW) -> list[Ink]:
    """Return the inks of each thing moved so that they stand in rows, left to right."""
    found: list[Ink] = []
    x = top = low = 0.0
    for inks in things:
        if not inks:
            continue
        x0, y0, x1, y1 = drawn_panel(inks).box
        if x and x + x1 - x0 > row:
            x, top = 0.0, low - APART
        by = complex(x - x0, top - y1)
        found += [moved_ink(ink, by) for ink in inks]
        low = min(low, top + y0 - y1)
        x += x1 - x0 + APART
    return found


def moved_ink(ink: Ink, by: complex) -> Ink:
    """Return one ink moved."""
    match ink:
        case Face():
            return replace(ink, ring=ink.ring + by)
        case InkLine():
            return replace(ink, points=ink.points + by)
        case InkMark():
            return replace(ink, at=ink.at + by)
        case InkName():
            return replace(ink, ring=ink.ring + by, hidden=tuple(ring + by for ring in ink.hidden))
