"""A piece with its corners, and places along its edges, moved; what lies on it goes along."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace

from drafting.draft.piece import Edge, InnerDart, Level, Notch, Piece, Placement
from drafting.draft.roles import EdgeRole
from drafting.fitting.lines.along import Ends, Jointed, Knot, Pull, moved_along, way_of
from drafting.fitting.lines.on_path import at_least_apart, on_path
from drafting.geometry import Path, line
from drafting.geometry.crossing import crossings, extended, part_between
from drafting.geometry.curve import Line
from drafting.ground.frozen import freeze

ON_OUTLINE = 0.6
"""mm: the end of a level line that is no farther from the outline than this lies on it."""

AT_CORNER = 0.01
"""mm: a named point that is no farther from a corner is that corner."""

STEEP = 1.6
"""Of the mean slope up to the next knot: from 1.5 on a displacement bends one way only (the cubic's own)."""

LEVEL = 1e-6
"""Of its length: a line that rises by less is level."""

SMALL_MARK = 60.0
"""mm: a mark that is no longer than this (a buttonhole) is moved as it is, never stretched."""


def stays(_place: complex) -> complex:
    """Return how far what lies inside a piece is moved: nowhere."""
    return 0j


@dataclass(frozen=True)
class Shift:
    """How one piece is moved.

    `corners` holds displacements (x + yj, mm) by the edge that starts at the corner; `knots` places along
    edges; `held` the ends of edges, as (edge, "start" or "end"), where the edge keeps its direction, and
    `steep` those where it sets off faster than it goes on, so that it bends one way only; `whole` edges that
    turn and grow as a whole between their ends, so that they bend as they did; `turns` the angles (radians)
    by which edges are turned at an end; `inside` says how what lies inside is moved; `darts` how many times as
    wide darts inside become.
    """

    piece: str
    corners: Mapping[str, complex] = field(default_factory=dict)
    knots: Mapping[str, tuple[Knot, ...]] = field(default_factory=dict)
    held: frozenset[tuple[str, str]] = frozenset()
    steep: frozenset[tuple[str, str]] = frozenset()
    whole: frozenset[str] = frozenset()
    turns: Mapping[tuple[str, str], float] = field(default_factory=dict)
    inside: Callable[[complex], complex] = stays
    darts: Mapping[str, float] = field(default_factory=dict)

    def __post_init__(self) -> None:
        freeze(self, "corners", "knots", "turns", "darts")

    def slope(self, edge: str, end: str) -> float:
        """Return how steep the displacement of an edge sets off at one of its ends."""
        if (edge, end) in self.held:
            return 0.0
        return STEEP if (edge, end) in self.steep else 1.0

    def pull(self, edge: str, following: str) -> Pull | None:
        """Return how an edge is moved, given the name of the edge that starts where it ends; None: it stays."""
        if not (edge in self.corners or following in self.corners or edge in self.knots or self._turned(edge)):
            return None
        return Pull(
            ends=Ends(self.corners.get(edge, 0j), self.corners.get(following, 0j)),
            knots=self.knots.get(edge, ()),
            slopes=(self.slope(edge, "start"), self.slope(edge, "end")),
            turns=(self.turns.get((edge, "start"), 0.0), self.turns.get((edge, "end"), 0.0)),
            as_whole=edge in self.whole,
        )

    def _turned(self, edge: str) -> bool:
        return (edge, "start") in self.turns or (edge, "end") in self.turns

    def joins(self, other: Shift) -> bool:
        """Say whether another shift that moves nothing inside is one with this, its amounts added to these."""
        mine, others = (
            (one.piece, one.knots, one.held, one.steep, one.whole, one.inside, one.darts) for one in (self, other)
        )
        return mine == others and not any(k.by for knots in self.knots.values() for k in knots)

    def joined(self, other: Shift) -> Shift:
        """Return both of two shifts that are one."""
        corners = {name: self.corners.get(name, 0j) + by for name, by in other.corners.items()}
        turns = {name: self.turns.get(name, 0.0) + by for name, by in other.turns.items()}
        return replace(self, corners={**self.corners, **corners}, turns={**self.turns, **turns})


@dataclass(frozen=True)
class Reshaped:
    """A piece before and after, and for each edge the way on which places are told again."""

    before: Piece
    after: Piece
    ways: Mapping[str, Jointed]

    def __post_init__(self) -> None:
        freeze(self, "ways")

    def place(self, edge: str, at: float) -> float:
        """Return where a place of an edge (mm from its start) has come to."""
        index, t = self.ways[edge].placed(at)
        path = self.after[edge].path
        part = path.segments[index].split(t)[0].length if 0 < t < 1 else t * path.lengths[index]
        return sum(path.lengths[:index]) + part

    def point(self, edge: str, at: float) -> complex:
        """Return the point to which a place of an edge has come."""
        index, t = self.ways[edge].placed(at)
        return self.after[edge].path.segments[index].point(t)


def reshaped(piece: Piece, shifts: Sequence[Shift], known: Reshaped | None = None) -> Reshaped:
    """Return the piece moved by all of these at once; raises KeyError for an edge that it does not have.

    What lies inside goes along with the first of them. An edge that is moved as in `known` is taken from it.
    """
    for name in (name for shift in shifts for name in (*shift.corners, *shift.knots)):
        piece.index(name)
    ways, edges = {}, []
    for at, edge in enumerate(piece.edges):
        following = piece.edges[(at + 1) % len(piece.edges)].name
        pulls = tuple(one for shift in shifts if (one := shift.pull(edge.name, following)) is not None)
        if known is not None and known.ways[edge.name].pulls == pulls:
            ways[edge.name] = known.ways[edge.name]
            edges.append(known.after.edges[at])
            continue
        way = way_of(edge.path, pulls)
        path = moved_along(way, None if known is None else known.after.edges[at].path)
        ways[edge.name] = way
        edges.append(edge if path is edge.path else _with_path(edge, path, way))
    found = Reshaped(piece, replace(piece, edges=tuple(edges)), ways)
    return replace(found, after=_with_inside(found, shifts[0])) if shifts else found


def _with_path(edge: Edge, path: Path, way: Jointed) -> Edge:
    """Return an edge on its new path, its own notches where they were, its gathers in the old share."""

    def placed(notch: Notch) -> Notch:
        index, t = way.placed(notch.at)
        part = path.segments[index].split(t)[0].length if 0 < t < 1 else t * path.lengths[index]
        return replace(notch, at=sum(path.lengths[:index]) + part)

    sewn = None if edge.sewn is None else edge.sewn * path.length / edge.length
    return replace(edge, path=path, sewn=sewn, notches=tuple(placed(n) for n in edge.notches))


def _with_inside(found: Reshaped, shift: Shift) -> Piece:
    piece = found.after
    if shift.inside is stays and not shift.darts:
        corners = {name: _corner(found, place) or place for name, place in piece.points.items()}
        return replace(piece, points=corners) if corners != piece.points else piece

    def move(place: complex) -> complex:
        return place + shift.inside(place)

    return replace(
        piece,
        darts=tuple(_widened(_dart(dart, move), shift.darts.get(dart.name, 1.0)) for dart in piece.darts),
        points={name: _corner(found, place) or move(place) for name, place in piece.points.items()},
        placements=tuple(_mark(mark, move) for mark in piece.placements),
        frame=piece.frame and piece.frame.mapped(move),
    )


def _corner(found: Reshaped, place: complex) -> complex | None:
    """Return where the corner at a place has come to; None where no corner lies there."""
    pairs = zip(found.before.edges, found.after.edges, strict=True)
    return next((new.path.start for old, new in pairs if abs(old.path.start - place) < AT_CORNER), None)


def _dart(dart: InnerDart, move: Callable[[complex], complex]) -> InnerDart:
    return replace(dart, leg_a=dart.leg_a.mapped(move), leg_b=dart.leg_b.mapped(move))


def _mark(mark: Placement, move: Callable[[complex], complex]) -> Placement:
    if mark.path.length > SMALL_MARK:
        return replace(mark, path=mark.path.mapped(move))
    middle = mark.path.at(mark.path.length / 2)
    return replace(mark, path=mark.path.moved(move(middle) - middle))


def _widened(dart: InnerDart, times: float) -> InnerDart:
    """Return a dart inside a piece so many times as wide, its tips where they were."""
    tip, way = dart.leg_a.start, dart.leg_a.end - dart.leg_a.start

    def spread(place: complex) -> complex:
        return place + ((place - tip) / way).imag * way * 1j * (times - 1.0)

    return dart if times == 1.0 else _dart(dart, spread)


def with_levels(found: Reshaped, inside: Callable[[complex], complex]) -> Piece:
    """Return the piece with its level lines drawn again on its new outline."""

    def move(place: complex) -> complex:
        return place + inside(place)

    levels = tuple(_relaid_level(found, level, move) for level in found.before.levels)
    return replace(found.after, levels=levels)


def _relaid_level(found: Reshaped, level: Level, move: Callable[[complex], complex]) -> Level:
    """Return a level line drawn again on the new outline: at its own height, from edge to edge."""
    paths = tuple(_relaid(found, path, move) for path in level.paths)
    return replace(level, paths=paths, stops=tuple(map(move, level.stops)))


def _relaid(found: Reshaped, path: Path, move: Callable[[complex], complex]) -> Path:
    for old in found.before.edges:
        new = found.after[old.name].path
        if abs(old.path.start - path.start) + abs(old.path.end - path.end) < ON_OUTLINE / 10:
            return new
        if abs(old.path.start - path.end) + abs(old.path.end - path.start) < ON_OUTLINE / 10:
            return new.reversed()
    if len(path.segments) > 1 or not isinstance(path.segments[0], Line):
        return _bent_level(found, path, path.mapped(move))
    ends = move(path.start), move(path.end)
    straight = _drawn_out(ends[0], ends[1])
    return line(*(_end(found, old, new, straight) for old, new in zip((path.start, path.end), ends, strict=True)))


def _bent_level(found: Reshaped, old: Path, moved: Path) -> Path:
    """Return a level that bends, as over a belly, run on or cut off where it meets the edges again it ended on."""
    for at_start in (True, False):
        was = old.start if at_start else old.end
        inside = old.at(0.3 * old.length if at_start else 0.7 * old.length)
        ends_on = (e for e in found.before.edges if on_path(e.path, was)[0] <= ON_OUTLINE / 10)
        edge = next((e for e in ends_on if on_path(e.path, inside)[0] > ON_OUTLINE), None)  # else it runs along it
        if edge is None:
            continue
        come = found.point(edge.name, on_path(edge.path, was)[1])
        far = extended(moved, FAR, 0.0) if at_start else extended(moved, 0.0, FAR)
        met = crossings(far, found.after[edge.name].path)
        if met:
            place = min(met, key=lambda one: abs(one.point - come)).on_a
            whole = float(len(far.segments))
            moved = (part_between(far, place, whole) if at_start else part_between(far, 0.0, place)) or moved
    return moved


FAR = 100.0
"""mm: no level is run on by more to where its edge has come."""


def _drawn_out(start: complex, end: complex) -> Path:
    """Return the straight through two points that reaches far past both."""
    way = (end - start) / max(abs(end - start), 1e-9) * 500.0
    return line(start - way, end + way)


def _end(found: Reshaped, old: complex, moved: complex, straight: Path) -> complex:
    """Return the end of a level line: where it meets the edge again on which it ended before."""
    edges = (edge for edge in found.before.edges if at_least_apart(edge.path, old) <= ON_OUTLINE)
    near = [(on_path(edge.path, old), edge.name) for edge in edges]
    (gap, at), name = min(near, default=((math.inf, 0.0), ""))
    if gap <= ON_OUTLINE:
        come = found.point(name, at)
        if _is_level(straight):
            return _met(straight, _passing(found, name, straight), come)
        off = old - found.before[name].path.at(at)  # it ended as far from the edge before
        turned = found.after[name].path.tangent(found.place(name, at)) / found.before[name].path.tangent(at)
        return come + off * turned
    for was, now in zip(found.before.darts, found.after.darts, strict=True):
        for leg, new in ((was.leg_a, now.leg_a), (was.leg_b, now.leg_b)):
            if on_path(leg, old)[0] <= ON_OUTLINE:
                return _met(straight, new, moved)
    return moved


def _passing(found: Reshaped, name: str, straight: Path) -> Path:
    """Return the edge that a level ends on: its own, or the armhole that has come down to it beside that one."""
    own = found.after[name].path
    arms = [edge.path for edge in found.after.edges if edge.role is EdgeRole.ARMHOLE]
    return own if crossings(straight, own) else next((arm for arm in arms if crossings(straight, arm)), own)


def _is_level(straight: Path) -> bool:
    """Say whether a line keeps its height; one beside a dart turned with it and goes where its end has come."""
    return abs((straight.end - straight.start).imag) < LEVEL * straight.length


def _met(straight: Path, path: Path, there: complex) -> complex:
    """Return where a straight meets a path nearest to a point of it; that point where it does not."""
    met = [one.point for one in crossings(straight, path)]
    return min(met, key=lambda p: abs(p - there), default=there)
