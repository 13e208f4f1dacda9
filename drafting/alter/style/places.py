"""Where on the outline of a piece a line begins or ends: a share of an edge, a distance, a level, a dart's tip."""

from __future__ import annotations

from dataclasses import dataclass

from drafting.draft.by_role import dart_legs
from drafting.draft.named import edge_named
from drafting.draft.piece import EdgeKind, Piece
from drafting.geometry.brent import brent_zero
from drafting.geometry.crossing import crossings, extended
from drafting.geometry.curve import Segment
from drafting.ground import tolerances as tol
from drafting.ground.errors import DraftError, UnknownNameError
from drafting.ground.lengths import told
from drafting.ground.nearest import meant
from drafting.reading.style_places import OutlinePlace

REACH = 2.0
"""mm: a level line is run on by this, so that it crosses the edge on which it ends (ours)."""

WALK = 32
"""Steps in which a segment is looked through for its nearest place."""

SNAP = 0.05
"""mm: a place nearer to a corner is the corner."""


@dataclass(frozen=True, slots=True)
class RingSpot:
    """A place on a ring of edges: the index of the edge, and mm from its start."""

    index: int
    at: float


def spot_on(piece: Piece, place: OutlinePlace) -> RingSpot:
    """Return where a place lies on a piece; raises `DraftError` with the names or the reach that would be right.

    A place in a corner is the end of the edge before it.
    """
    if place.dart:
        return _tip(piece, place.dart)
    edge = edge_named(piece, place.edge)
    if edge.kind is EdgeKind.DART:
        raise DraftError(
            f"the {piece.name}'s {edge.name} is the leg of a dart",
            turn="name the edge that the dart opens to, or the dart's tip",
        )
    index, length = piece.index(edge.name), edge.length
    at = _distance(piece, place, index)
    if not -SNAP <= at <= length + SNAP:
        raise DraftError(
            f"the place lies off the {piece.name}'s {edge.name}",
            value=told(at),
            reach=f"0 to {told(length, 'most')}",
        )
    if at <= SNAP:
        before = (index - 1) % len(piece.edges)
        return RingSpot(before, piece.edges[before].length)
    if at >= length - SNAP:
        return RingSpot(index, length)
    if min(at, length - at) < tol.LEAST_EDGE:
        raise DraftError(
            f"a bit of the {piece.name}'s {edge.name} is left that is too short to sew",
            value=told(min(at, length - at), "fine"),
            reach=f"{told(tol.LEAST_EDGE, 'least')} or more, or nothing",
            turn="end the line in the corner, or farther from it",
        )
    return RingSpot(index, at)


def spot_point(piece: Piece, spot: RingSpot) -> complex:
    """Return the point of a place."""
    path = piece.edges[spot.index].path
    return path.end if spot.at >= path.length else path.at(spot.at)


def _tip(piece: Piece, name: str) -> RingSpot:
    leg = leg_into(piece, name)
    return RingSpot(leg, piece.edges[leg].length)


def leg_into(piece: Piece, name: str) -> int:
    """Return the index of the leg that runs to the tip of dart `name`, called by the dart's name or a leg's."""
    legs = list(dart_legs(piece))
    for inward, outward in legs:
        if name in (inward.name, outward.name, inward.dart.dart if inward.dart else ""):
            return piece.index(inward.name)
    known = [inward.dart.dart if inward.dart else inward.name for inward, _ in legs]
    right = meant(name, known) if known else "it has none that opens to its outline"
    raise UnknownNameError(f"the {piece.name} has no dart {name}", turn=right)


def _distance(piece: Piece, place: OutlinePlace, index: int) -> float:
    edge = piece.edges[index]
    if place.level:
        return _at_level(piece, place, index)
    at = place.share * edge.length if place.share is not None else place.distance or 0.0
    return edge.length - at if _counts_back(piece, place, index) else at


def _counts_back(piece: Piece, place: OutlinePlace, index: int) -> bool:
    """Return whether it is counted from the edge's end: from the neighbour that meets it there."""
    if not place.beside:
        return False
    after, before = piece.edges[(index + 1) % len(piece.edges)].name, piece.edges[index - 1].name
    if place.beside not in (after, before):
        raise UnknownNameError(
            f"the {piece.name}'s {place.edge} does not meet its {place.beside}",
            turn=f"count it from {before} or from {after}",
        )
    return place.beside == after


def _at_level(piece: Piece, place: OutlinePlace, index: int) -> float:
    path = piece.edges[index].path
    known = [level.name for level in piece.levels]
    level = next((one for one in piece.levels if one.name == place.level), None)
    if level is None:
        right = meant(place.level, known) if known else "it has none"
        raise UnknownNameError(f"the {piece.name} has no level {place.level}", turn=right)
    for line in level.paths:
        for one in crossings(path, extended(line, REACH, REACH)):
            whole, part = int(one.on_a), one.on_a - int(one.on_a)
            inside = path.segments[whole].split(part)[0].length if part and whole < len(path.segments) else 0.0
            return sum(path.lengths[:whole]) + inside
    raise DraftError(f"the {place.level} level does not reach the {piece.name}'s {place.edge}")


def nearest_places(segment: Segment, point: complex) -> list[float]:
    """Return the parameters at which a segment may be nearest to a point, refined from a fine walk along it."""
    best = min((abs(segment.point(k / WALK) - point), k / WALK) for k in range(WALK + 1))[1]
    low, high = max(best - 1 / WALK, 0.0), min(best + 1 / WALK, 1.0)

    def along(t: float) -> float:
        return ((segment.point(t) - point) * segment.velocity(t).conjugate()).real

    if along(low) * along(high) < 0:
        return [float(brent_zero(along, low, high, within=1e-15)), best]
    return [best]
