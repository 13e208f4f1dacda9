"""Longer or shorter between two heights: what lies above stays, what lies below goes down by the amount.

A slash across the grain, opened evenly over the way between two levels, so that edges run on without a
step and both sides of every seam get the same.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from drafting.draft.piece import Piece
from drafting.fitting.lines.along import Knot
from drafting.fitting.lines.places import WIDE, mm_along
from drafting.fitting.lines.shift import Shift
from drafting.geometry import Path, line
from drafting.geometry.crossing import crossings
from drafting.ground.errors import DraftError

LEAST_LEFT = 0.4
"""Share of the way between two levels that is left at least when it is shortened (ours)."""


AT_END = 1.0
"""mm: a line of a zone that meets an edge so near its end meets that end. What is moved there sets off flat, as it
does at a line a little farther inside: so it does not matter on which side of this a place comes to lie."""


@dataclass(frozen=True, slots=True)
class Zone:
    """Between two heights (y of the upper and the lower, mm) a piece is made longer by `more` mm."""

    top: float
    low: float
    more: float

    def drop(self, y: float) -> float:
        """Return by how much a height sinks, mm."""
        share = (self.top - y) / (self.top - self.low)
        return self.more * min(1.0, max(0.0, share))


def refused(zones: Iterable[Zone]) -> None:
    """Raise `DraftError` where a zone would lose too much of its length."""
    for zone in zones:
        high = zone.top - zone.low
        if high < 1.0 or high + zone.more < LEAST_LEFT * high:
            raise DraftError(
                "there is too little length between the levels to take that away",
                turn="take the measure again: this is no alteration of a seam",
            )


def lengthened(piece: Piece, zones: tuple[Zone, ...], lift: float = 0.0) -> Shift:
    """Return how a piece is moved that is made longer, all of it `lift` mm higher."""
    refused(zones)

    def drop(place: complex) -> complex:
        return 1j * (lift - sum(zone.drop(place.imag) for zone in zones))

    heights = {y for zone in zones for y in (zone.top, zone.low)}
    return sheared(piece, drop, [line(complex(-WIDE, y), complex(WIDE, y)) for y in heights], flat=2 * AT_END)


def sheared(piece: Piece, by: Callable[[complex], complex], bends: Iterable[Path], flat: float = -1.0) -> Shift:
    """Return a piece of which every place is moved by `by`, which changes its rule along the lines `bends`.

    Edges that end no farther than `flat` mm from such a line keep their direction there.
    """
    lines, knots, held = list(bends), {}, set[tuple[str, str]]()
    for edge in piece.edges:
        places = {mm_along(edge.path, one.on_a) for bend in lines for one in crossings(edge.path, bend)}
        inside = sorted(at for at in places if AT_END < at < edge.length - AT_END)
        knots[edge.name] = tuple(Knot(at, by(edge.path.at(at))) for at in inside)
        for end, place in (("start", edge.path.start), ("end", edge.path.end)):
            if any(_apart(place, bend) <= flat for bend in lines):
                held.add((edge.name, end))
    corners = {edge.name: by(edge.path.start) for edge in piece.edges}
    return Shift(piece.name, corners, knots, frozenset(held), inside=by)


def _apart(place: complex, straight: Path) -> float:
    """Return how far a place lies from a straight, mm."""
    way = straight.end - straight.start
    return abs(((place - straight.start) * way.conjugate()).imag) / abs(way)
