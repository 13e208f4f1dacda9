"""Closings at a centre: rows of fasteners, lengths of zips as they are sold, edges folded back. mm.

All lines are those of a front drawn as the wearer's left: its centre on x = 0, the cloth at x > 0. A
back is turned over before and after.
"""

from __future__ import annotations

import itertools
import math
from dataclasses import replace

from drafting.draft.piece import Edge, EdgeKind, Piece, Placement
from drafting.draft.roles import EdgeRole
from drafting.geometry import line
from drafting.shaping.details.button_stand import FrontLines, front_facing_edges, outward_path, stand_edges
from drafting.shaping.details.buttons import button_mark
from drafting.shaping.details.small_pieces import reflection_at

ZIP_STEP, LONG_ZIP, LONG_STEP = 50.0, 800.0, 100.0
"""mm: zips are sold every 5 cm, beyond 80 cm every 10 (common practice; shops differ)."""

SHORTEST_ZIP = 100.0
"""mm: the shortest zip that is commonly sold (common practice)."""


def sold_zip(length: float) -> float:
    """Return the shortest zip that is sold and no shorter than `length`, mm.

    >>> sold_zip(412), sold_zip(60), sold_zip(805)
    (450.0, 100.0, 900.0)
    """
    step = ZIP_STEP if length <= LONG_ZIP else LONG_STEP
    return max(SHORTEST_ZIP, math.ceil(length / step - 1e-9) * step)


def evenly(first: float, last: float, widest: float) -> list[float]:
    """Return places from `first` to `last`, evenly and no wider apart than `widest`, mm.

    >>> evenly(10, 70, 25)
    [10.0, 30.0, 50.0, 70.0]
    """
    steps = max(1, math.ceil((last - first) / widest - 1e-9))
    return [first + (last - first) * i / steps for i in range(steps + 1)]


def folded_back(lines: FrontLines, stand: float, width: float) -> tuple[Edge, ...]:
    """Return the edges that take the centre's place: a stand beyond it, and its facing folded back.

    `width` is the facing's, from the edge on which it folds. Without a stand it folds on the centre.
    """
    return stand_edges(lines, stand, width) if stand else _turned(lines, width)


def strip(lines: FrontLines, stand: float, width: float) -> tuple[Edge, ...]:
    """Return the ring of the same facing as a piece of its own."""
    if stand:
        return front_facing_edges(lines, stand, width, unfolded=False)
    edges = _turned(lines, width)
    closing = line(edges[-1].path.end, edges[0].path.start)
    return *edges, Edge("front_edge", closing, role=EdgeRole.FRONT_EDGE)


def _turned(lines: FrontLines, width: float) -> tuple[Edge, ...]:
    turned = reflection_at(0.0)
    neck = outward_path(lines.neck.reversed(), width).mapped(turned)
    hem = outward_path(lines.hem, width).mapped(turned).reversed()
    return (
        Edge("facing_neck", neck, EdgeKind.OPENING, role=EdgeRole.FACING_NECK),
        Edge("facing", line(neck.end, hem.start), EdgeKind.FREE, role=EdgeRole.FACING),
        Edge("facing_hem", hem, EdgeKind.HEM, role=EdgeRole.FACING_HEM),
    )


def hook_marks(
    lines: FrontLines, down: float, number: int, hands: tuple[str, str], lap: float, size: float
) -> tuple[Placement, Placement]:
    """Return a hook on the hand on top and its eye beneath: short strokes, `lap` mm beyond the centre."""
    over, under = hands
    at = lines.top - 1j * down
    hook = Placement(f"hook_{over}_{number}", line(at - lap, at - lap + size), "hook", over)
    return hook, Placement(f"eye_{under}_{number}", line(at + lap, at + lap - size), "hook", under)


def eyelet_mark(lines: FrontLines, down: float, number: int, inside: float, size: float) -> Placement:
    """Return an eyelet in its true size, `inside` mm from the centre, on both hands."""
    ring = button_mark(f"eyelet_{number}", lines.top - 1j * down + inside, size)
    return replace(ring, what="eyelet")


def cord_length(places: list[float], inside: float) -> float:
    """Return what a cord takes that crosses from eyelet to eyelet down a closed edge and is tied, mm.

    Two ends cross each space, and each is left `CORD_END` long to be drawn out and tied.
    """
    crossed = sum(math.hypot(2 * inside, b - a) for a, b in itertools.pairwise(places))
    return 2 * crossed + 2 * inside + 2 * CORD_END


CORD_END = 350.0
"""mm: what each end of a lacing needs to be opened far enough and tied (ours)."""


def front_lines(piece: Piece, at: int) -> FrontLines:
    """Return the lines beside the centre at place `at` of a front's ring."""
    return FrontLines(piece.edges[at - 1].path, piece.edges[(at + 1) % len(piece.edges)].path)
