"""A piece as it is sewn: its ring of sides as fine polylines, cut back to where it is folded.

A polyline holds complex points, mm. What is cut off lies folded under, or under the other hand's overlap.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from drafting.draft.piece import Piece
from drafting.geometry import Path
from drafting.geometry.curve import Points
from drafting.ground import tolerances as tol


@dataclass(frozen=True, eq=False)
class RingSide:
    """What is left of one edge: `points` from `start` mm along the edge as drafted."""

    name: str
    points: Points
    start: float = 0.0

    @property
    def length(self) -> float:
        return run_length(self.points)


@dataclass(frozen=True, eq=False)
class Cut:
    """A cut along a mark: its line, now the side `name`, the ring that went, and the edges that went whole."""

    name: str
    fold: Points
    gone: Points
    edges: frozenset[str]


@dataclass(frozen=True, eq=False)
class PieceRing:
    """A piece cut back: the sides that are left in outline order, and what was cut in turn."""

    piece: Piece
    sides: tuple[RingSide, ...]
    cuts: tuple[Cut, ...] = ()

    def __getitem__(self, name: str) -> RingSide:
        return next(side for side in self.sides if side.name == name)

    def __contains__(self, name: str) -> bool:
        return any(side.name == name for side in self.sides)

    def get(self, name: str) -> RingSide | None:
        """Return the side of this name, or None where it was cut off."""
        return next((side for side in self.sides if side.name == name), None)

    @property
    def outline(self) -> Points:
        """The closed ring's points, each once."""
        return np.concatenate([side.points[:-1] for side in self.sides])


def run_length(points: Points) -> float:
    """Return the length of a polyline, mm."""
    return float(np.abs(np.diff(points)).sum())


def ways(points: Points) -> NDArray[np.float64]:
    """Return how far along a polyline each of its points lies, mm."""
    return np.concatenate([[0.0], np.cumsum(np.abs(np.diff(points)))])


def at(points: Points, distances: NDArray[np.float64]) -> Points:
    """Return the points at these distances along a polyline."""
    along = ways(points)
    return np.interp(distances, along, points.real) + 1j * np.interp(distances, along, points.imag)


def fine(path: Path) -> Points:
    """Return a path as a polyline that lies within the flatness of the kit."""
    points = path.points(tol.FLAT)
    apart: Points = points[np.concatenate([[True], np.abs(np.diff(points)) > 1e-9])]
    return apart


def piece_ring(piece: Piece) -> PieceRing:
    """Return the whole ring of a piece; what two neighbouring edges share is one point."""
    lines = [fine(edge.path).copy() for edge in piece.edges]
    for line, after in zip(lines, [*lines[1:], lines[0]], strict=True):
        after[0] = line[-1]
    return PieceRing(
        piece, tuple(RingSide(edge.name, line) for edge, line in zip(piece.edges, lines, strict=True))
    )


def cut_in_two(ring: PieceRing, line: Points, name: str) -> tuple[PieceRing, PieceRing]:
    """Return both parts of the ring cut along `line`, whose two ends lie on it.

    The line becomes the side `name` of each; each keeps what it was cut from among its cuts.
    """
    places = sorted(place_on(ring, end)[:2] for end in (line[0], line[-1]))
    one, two = _stretch(ring, *places), _stretch(ring, places[1], places[0])
    return _kept(ring, one, two, line, name), _kept(ring, two, one, line, name)


def _kept(ring: PieceRing, kept: list[RingSide], lost: list[RingSide], line: Points, name: str) -> PieceRing:
    """Return the ring of the sides that are kept, closed by the line."""
    begins, ends = kept[0].points[0], kept[-1].points[-1]
    run = line if abs(line[0] - ends) < abs(line[-1] - ends) else line[::-1]
    fold = np.concatenate([[ends], run[1:-1], [begins]])
    whole = frozenset(side.name for side in lost) - {side.name for side in kept}
    gone = np.concatenate([*(side.points[:-1] for side in lost), lost[-1].points[-1:]])
    cut = Cut(name, fold, gone, whole)
    sides = [RingSide(side.name, side.points.copy(), side.start) for side in kept]
    return replace(ring, sides=_closed([*sides, RingSide(name, fold)]), cuts=(*ring.cuts, cut))


TINY = 1e-6
"""mm: what is left of a side that is no longer is left away."""


def place_on(ring: PieceRing, point: complex) -> tuple[int, float, float]:
    """Return the side nearest to a point, how far along it that lies, and how far off; corners start sides."""
    best = (np.inf, 0, 0.0)
    for index, side in enumerate(ring.sides):
        starts, steps = side.points[:-1], np.diff(side.points)
        share = np.clip(((point - starts) * np.conj(steps)).real / np.abs(steps) ** 2, 0.0, 1.0)
        gaps = np.abs(starts + share * steps - point)
        nearest = int(gaps.argmin())
        if gaps[nearest] < best[0] - 1e-3:
            along = float(ways(side.points)[nearest] + share[nearest] * abs(steps[nearest]))
            best = (float(gaps[nearest]), index, along)
    gap, index, along = best
    if along > ring.sides[index].length - CORNER:
        return (index + 1) % len(ring.sides), 0.0, gap
    return index, 0.0 if along < CORNER else along, gap


CORNER = 0.5
"""mm: a fold that ends so near a corner ends there."""


def _stretch(ring: PieceRing, begin: tuple[int, float], end: tuple[int, float]) -> list[RingSide]:
    """Return the sides from one place on the ring round to another."""
    sides, count = ring.sides, len(ring.sides)
    found: list[RingSide] = []
    at_side, along = begin
    while True:
        side = sides[at_side]
        last = at_side == end[0] and end[1] > along
        found += _part(side, along, end[1] if last else side.length)
        if last or len(found) > count + 1:
            return found
        at_side, along = (at_side + 1) % count, 0.0
        if (at_side, 0.0) == end:
            return found


def _part(side: RingSide, begin: float, end: float) -> list[RingSide]:
    """Return a side between two distances along what is left of it, or nothing where that is nothing."""
    if end - begin < TINY:
        return []
    along = ways(side.points)
    between = side.points[(along > begin + TINY) & (along < end - TINY)]
    first, last = at(side.points, np.array([begin, end]))
    return [RingSide(side.name, np.concatenate([[first], between, [last]]), side.start + begin)]


def _closed(sides: list[RingSide]) -> tuple[RingSide, ...]:
    """Return the sides with each joint one point."""
    for side, after in zip(sides, [*sides[1:], sides[0]], strict=True):
        after.points[0] = side.points[-1]
    return tuple(sides)


def xy(points: Points) -> NDArray[np.float64]:
    """Return complex points as (n, 2)."""
    return np.column_stack([points.real, points.imag])
