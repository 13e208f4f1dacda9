"""How wide is the cloth at a level? Read off the outline, not off the line that marks the level. mm.

A straight level is run on, or cut off, where the outline or the leg of an inner dart crosses it, and
darts that it crosses are left out. It ends inside the outline only where its other part goes on, or at
a stop: a centre line with an overlap beyond it.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable, Iterator

from drafting.checks.words import capital, mm, plain
from drafting.draft.draft import Draft
from drafting.draft.piece import EdgeKind, Level, Piece
from drafting.geometry import Path, line
from drafting.geometry.area import distances
from drafting.geometry.crossing import crossings
from drafting.geometry.curve import Line
from drafting.ground import tolerances as tol
from drafting.ground.findings import Finding
from drafting.ground.remembered import remembered

CENTRE = "centre"
"""The kind of mark that a centre line with an overlap beyond it is."""

ALONG = 2.5 * tol.FLAT
"""mm: a level no farther from the outline than this lies along it: a hem, a waist seam."""


def levels_reach_edges(draft: Draft) -> Iterator[Finding]:
    """Does every level line run to the outline, so that what it shows is what the cloth has?"""
    for piece in draft.pieces:
        for level in piece.levels:
            found = width(piece, level)
            if abs(found - level.length) > tol.GIRTH_MATCH:
                name = f"{capital(plain(piece.name))} {plain(level.name)} level"
                said = f"{name}: the line is {mm(level.length)} long and the cloth there {mm(found)} wide"
                where = f"{piece.name}.{level.name}"
                yield Finding("level line", "error", where, level.length, found, said)


def width(piece: Piece, level: Level) -> float:
    """Return how wide `piece` is at `level`, mm, parts between darts added up."""
    found = next((n for n, own in enumerate(piece.levels) if own is level), None)
    return _wide(piece, level) if found is None else _wide_at(piece, found)


@remembered(512)
def _wide_at(piece: Piece, number: int) -> float:
    """Return how wide a piece is at one of its own levels: asked by every check, and by what has changed."""
    return _wide(piece, piece.levels[number])


def _wide(piece: Piece, level: Level) -> float:
    return math.fsum(_width(piece, level, path) for path in level.paths)


def _width(piece: Piece, level: Level, path: Path) -> float:
    straight = len(path.segments) == 1 and isinstance(path.segments[0], Line)
    if not straight or path.length < tol.LEAST_EDGE or lies_along(path, piece.outline):
        return path.length
    middle = path.at(path.length / 2)
    return sum(_reach(piece, level, path, middle, end) for end in (path.start, path.end))


def _reach(piece: Piece, level: Level, path: Path, middle: complex, end: complex) -> float:
    """Return how far the cloth reaches from the `middle` of a part of the level towards its `end`.

    What an open dart takes up on the way is left out.
    """
    drawn = abs(end - middle)
    ray = _ray(piece, middle, (end - middle) / drawn)
    goes_on = [other for part in level.paths if part is not path for other in (part.start, part.end)]
    stops = [*goes_on, *level.stops, *_centres(piece, ray)]
    at_stop = any(abs(stop - end) < tol.GIRTH_MATCH for stop in stops)
    if at_stop or float(distances(line(end, end + tol.CLOSED), piece.outline)[0]) <= ALONG:
        reach = drawn
    else:
        legs = [leg for dart in piece.darts for leg in (dart.leg_a, dart.leg_b)]
        edges = _met(ray, [piece.outline, *legs])
        reach = min(edges, key=lambda edge: abs(edge - drawn), default=drawn)
    return reach - _taken_up(piece, ray, reach)


def _taken_up(piece: Piece, ray: Path, reach: float) -> float:
    """Return how much of the ray, up to `reach`, lies in the mouths of darts, mm."""
    taken = 0.0
    for into, out in itertools.pairwise([*piece.edges, piece.edges[0]]):
        if into.kind is EdgeKind.DART and out.kind is EdgeKind.DART:
            taken += _gap(ray, (into.path, out.path), reach)
    return taken + math.fsum(_gap(ray, (dart.leg_a, dart.leg_b), reach) for dart in piece.darts)


def _gap(ray: Path, legs: tuple[Path, Path], reach: float) -> float:
    met = _met(ray, legs)
    return abs(met[1] - met[0]) if len(met) == 2 and max(met) < reach - ALONG else 0.0


def _met(ray: Path, paths: Iterable[Path]) -> list[float]:
    """Return how far along the ray each of the paths is crossed, mm."""
    return [abs(crossing.point - ray.start) for path in paths for crossing in crossings(ray, path)]


def _ray(piece: Piece, start: complex, way: complex) -> Path:
    """Return the straight line from `start` that reaches past the outline."""
    x0, y0, x1, y1 = piece.outline.bounds
    return line(start, start + way * (abs(complex(x1 - x0, y1 - y0)) + 1.0))


def _centres(piece: Piece, ray: Path) -> Iterator[complex]:
    """Yield where the level crosses a centre line that is marked on the piece."""
    for mark in piece.placements:
        if mark.what == CENTRE:
            yield from (crossing.point for crossing in crossings(ray, mark.path))


def lies_along(path: Path, outline: Path) -> bool:
    """Return whether a path lies on another all along: a level on a hem, a waist seam."""
    return float(distances(path, outline, every=path.length / 8).max()) <= ALONG
