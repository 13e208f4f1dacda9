"""Where the buttons of a coat's front stand: one row on the centre, or a row on each front that leans. Mm."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.shaping.coat.body_pieces import split_at_x
from drafting.shaping.coat.lapel import FrontEdge, Lapel
from drafting.shaping.coat.shape import path_x_at

FIRST_UP, LAST_UP = 26.0, 44.0
"""mm at a chest of 1000: the lowest button over the front corner and over the edge below it, the highest over the
break (from memory)."""

BELOW_NECK = 18.0
"""mm at a chest of 1000: the highest button of a front without a lapel below the neck (common practice)."""

HOLE_IN = 18.0
"""mm at a chest of 1000: how far inside the front edge a buttonhole holds its button (from memory)."""

LEANS, MOST_IN = 26.0, 0.6
"""mm at a chest of 1000 by which a row leans outwards at most, and the share of the forepart's waist within which
its lowest button stands (ours)."""

APART = 85.0
"""mm: about so far apart stand the buttons of a front that closes to the neck (common practice: 75 to 100)."""

USUAL = 3
"""Buttons in a row below a lapel (common practice)."""

AS_THE_FRONT = -1.0
"""A count of buttons that nobody typed: the front decides."""


@dataclass(frozen=True)
class ButtonPlace:
    """Where a `button` stands on each front, and where the `hole` lies, on the front on top, that it goes through.

    None above the break: that cloth is turned over, and the button is for show.
    """

    button: complex
    hole: complex | None


CLOSEST = 2.0
"""Diameters of a button: nearer to each other stand none that nobody asked for (ours: a button's width)."""


def count_of(edge: FrontEdge, asked: float, chest: float, button: float, *, single: bool) -> int:
    """Return how many buttons, `button` mm across, stand in a row: those asked for, else what the front wants.

    Below a `single` front's low break there is room for fewer.
    """
    if asked >= 0:
        return round(asked)
    low, high = _ends(edge, chest / 1000, single=single)
    if isinstance(edge.upper, Lapel):
        return max(1, min(USUAL, 1 + int((high - low) / (CLOSEST * button) + 1e-9)))
    return max(2, 1 + round((high - low) / APART))


def close_said(row: tuple[ButtonPlace, ...], button: float) -> tuple[Finding, ...]:
    """Warn where the buttons of one row, `button` mm across, would lie on each other."""
    apart = min((abs(b.button - a.button) for a, b in pairwise(row)), default=button)
    if apart >= button:
        return ()
    said = (
        f"{len(row)} buttons in a row stand {told(apart, 'small')} apart, and those of {told(button, 'small')}"
        " would lie on each other: take fewer, smaller ones, or a lapel that breaks higher."
    )
    return (Finding("button rows", "warning", "front", apart, button, said),)


def _ends(edge: FrontEdge, k: float, *, single: bool) -> tuple[float, float]:
    """Return the heights of the lowest and the highest button, of two rows some above the break.

    The lowest stands as far over the edge below it, which rises towards the side, as over the corner.
    """
    low = edge.edge.end.imag + FIRST_UP * k
    if not isinstance(edge.upper, Lapel):
        high = edge.edge.start.imag - BELOW_NECK * k
    else:
        high = edge.breaks.imag + (0.0 if single else LAST_UP * k)
    centre, first = edge.centre(low), 0.0 if single else _first(edge, low, k)
    over = max(_bottom_at(edge, x) for x in (centre + first, centre - first))
    return max(low, min(high, over + FIRST_UP * k)), high


def _bottom_at(edge: FrontEdge, x: float) -> float:
    """Return the height of the edge below a front at a place across it, or at its end nearest to that."""
    start, end = edge.bottom.start, edge.bottom.end
    if start.real < x < end.real:
        return split_at_x(edge.bottom, x)[0].end.imag
    return (start if x <= start.real else end).imag


def row_on_centre(edge: FrontEdge, count: int, chest: float) -> tuple[ButtonPlace, ...]:
    """Return the buttons of a single-breasted front, from the waist up to the break: each has its hole."""
    low, high = _ends(edge, chest / 1000, single=True)
    if count == 1:
        low = high
    heights = [low + (high - low) * i / max(1, count - 1) for i in range(count)]
    places = [complex(edge.centre(y), y) for y in heights]
    return tuple(ButtonPlace(at, at) for at in places)


def rows_beside(edge: FrontEdge, count: int, chest: float) -> tuple[ButtonPlace, ...]:
    """Return one front's buttons, from the waist up, in a row that leans outwards and follows a belly.

    Worn closed the fronts lie centre on centre: what the edge on top holds lies mirrored in the centre front.
    Where the edge runs hollow towards a belly, the row lies so much farther in that every hole keeps off it.
    """
    k = chest / 1000
    low, high = _ends(edge, k, single=False)
    first = _first(edge, low, k)
    last = min(_mirrored(edge, high, HOLE_IN * k) - edge.centre(high), first + LEANS * k)
    closes = edge.breaks.imag if isinstance(edge.upper, Lapel) else high
    found = []
    for number in range(count):
        share = number / max(1, count - 1)
        y = low + share * (high - low)
        at = complex(edge.centre(y) + first + share * (last - first), y)
        hole = complex(2 * edge.centre(at.imag) - at.real, at.imag)
        found.append(ButtonPlace(at, hole if at.imag <= closes + 1e-9 else None))
    return _clear_of_the_edge(found, edge, HOLE_IN * k)


def _clear_of_the_edge(row: list[ButtonPlace], edge: FrontEdge, inside: float) -> tuple[ButtonPlace, ...]:
    """Return a row with every hole so far `inside` the edge, as far as both rows stay twice that apart, mm."""
    holes = [(place.button, place.hole) for place in row if place.hole is not None]
    near = min((hole.real - path_x_at(edge.edge, hole.imag) for _, hole in holes), default=inside)
    room = min(((button - hole).real for button, hole in holes), default=0.0) / 2 - inside
    short = max(0.0, min(inside - near, room))
    return tuple(ButtonPlace(p.button - short, p.hole and p.hole + short) for p in row)


def _first(edge: FrontEdge, low: float, k: float) -> float:
    """Return how far from the centre front the lowest button of a row stands, at this height, mm."""
    return min(_mirrored(edge, low, HOLE_IN * k), MOST_IN * edge.bottom.end.real) - edge.centre(low)


def _mirrored(edge: FrontEdge, y: float, inside: float) -> float:
    """Return the place across, mm, that lies beneath what is `inside` mm in from the edge on top."""
    corner, at_break = edge.edge.end, edge.breaks
    share = (y - corner.imag) / (at_break.imag - corner.imag)
    if not isinstance(edge.upper, Lapel):
        share = min(1.0, share)
    x = corner.real + share * (at_break.real - corner.real)
    return 2 * edge.centre(y) - (x + inside)


def rows_apart_said(row: tuple[ButtonPlace, ...], button: float, chest: float) -> tuple[Finding, ...]:
    """Warn where the buttons of two rows, `button` mm across, would lie on each other when it is closed."""
    apart = min((abs(place.button - place.hole) for place in row if place.hole is not None), default=button)
    if apart >= button:
        return ()
    least = button / 2 + HOLE_IN * chest / 1000
    return (
        Finding(
            "button rows",
            "warning",
            "front",
            apart,
            button,
            f"Closed, the two rows stand only {told(apart, 'small')} apart at the waist, and buttons of "
            f"{told(button, 'small')} would lie on each other: take a front_overlap of {told(least)} or more, or "
            "smaller buttons.",
        ),
    )
