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


AT_END = 0.1
"""mm: a line of a zone that meets an edge so near its end meets that end. With more, trueing could bring it out of
reach of the end, and the way back would take hold of another place."""


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
    return sheared(piece, drop, [line(complex(-WIDE, y), complex(WIDE, y)) for y in heights])


def sheared(piece: Piece, by: Callable[[complex], complex], bends: Iterable[Path]) -> Shift:
    """Return a piece of which every place is moved by `by`, which changes its rule along the lines `bends`."""
    knots = {}
    for edge in piece.edges:
        places = {mm_along(edge.path, one.on_a) for bend in bends for one in crossings(edge.path, bend)}
        inside = sorted(at for at in places if AT_END < at < edge.length - AT_END)
        knots[edge.name] = tuple(Knot(at, by(edge.path.at(at))) for at in inside)
    return Shift(piece.name, {edge.name: by(edge.path.start) for edge in piece.edges}, knots, inside=by)
