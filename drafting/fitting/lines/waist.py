"""Narrower or wider at a level, or at one seam: taken at side, centre seam and darts, or where it is noted."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum

from drafting.checks.levels import width
from drafting.draft.draft import Draft, EdgeRef
from drafting.draft.piece import Edge, EdgeKind, InnerDart, Piece
from drafting.draft.roles import EdgeRole, LevelKind
from drafting.fitting.lines.along import Knot
from drafting.fitting.lines.altered import Altered, carried_out, made_exact
from drafting.fitting.lines.places import (
    INSIDE,
    Hold,
    at_height,
    body_pieces,
    ends_beside,
    height,
    height_on,
    inward,
    knotted,
    leg_pieces,
    needed,
    outline_darts,
    part_pieces,
    skirt_pieces,
)
from drafting.fitting.lines.shift import Shift
from drafting.ground.errors import DraftError
from drafting.ground.frozen import freeze


class _Kind(StrEnum):
    """Where the waist is taken in."""

    SIDE = "side"
    CENTRE = "centre"
    DART = "dart"


SHARES = {_Kind.SIDE: 0.5, _Kind.CENTRE: 0.25, _Kind.DART: 0.25}
"""How a change of the waist is shared out (common practice: half at the side, a quarter at the centre back,
a quarter in the darts); where one of them is missing the others have its part."""

SIDES = frozenset({EdgeRole.SIDE, EdgeRole.PANEL})
CENTRE = frozenset({EdgeRole.CENTRE_SEAM})
DARTS = frozenset({EdgeRole.PRINCESS})

DART_REACH = 25.0
"""mm: an open dart whose mouth lies no farther from a level than this opens at that level (ours)."""


def waist(draft: Draft, taken: float, part: str = "trunk") -> Altered:
    """Return a body, or a skirt, whose waist is smaller by `taken` mm on this hand (less than 0: larger).

    Bust and hip stay. Raises `DraftError` where no seam and no dart lies at the waist.
    """
    return made_exact(
        draft, -taken, lambda one, by: _waist(one, -by, part), lambda one: width_at(one, LevelKind.WAIST, part)
    )


def width_at(draft: Draft, kind: LevelKind, part: str = "trunk") -> float:
    """Return how wide the part that goes round the body is on one hand at a level, mm, darts left out."""
    return math.fsum(width(p, level) for p in part_pieces(draft, part) for level in p.levels if level.kind is kind)


def _wide(dart: InnerDart, level: float) -> float:
    """Return how wide a dart inside a piece is at a level, mm."""
    ends = [at_height(leg, level) for leg in (dart.leg_a, dart.leg_b)]
    return abs(dart.leg_a.at(ends[0] or 0.0) - dart.leg_b.at(ends[1] or 0.0))


def _waist(draft: Draft, taken: float, part: str) -> Altered:
    body, marks = part_pieces(draft, part), level_heights(draft)
    level = needed(height(body, LevelKind.WAIST), "waist")
    top = DART_REACH if part == "skirt" else -DART_REACH  # a skirt's seams end at its waist
    sides, centre, princess = (_edges(body, roles, level, top) for roles in (SIDES, CENTRE, DARTS))
    kinds = [_Kind.SIDE] if sides else []
    kinds += [_Kind.CENTRE] if centre else []
    count = len(princess) / 2 + sum(len(_open(p, level)) + len(_inside(p, level)) for p in body)
    kinds += [_Kind.DART] if count else []
    if not kinds:
        raise DraftError("there is no seam and no dart at the waist", turn="note it at an edge (`piece.edge`)")
    each = {kind: taken * SHARES[kind] / sum(SHARES[one] for one in kinds) for kind in kinds}
    dart = each.get(_Kind.DART, 0.0) / max(count, 1)
    edges = [
        *_shared(sides, each.get(_Kind.SIDE, 0.0)),
        *_shared(centre, each.get(_Kind.CENTRE, 0.0)),
        *((p, e, dart / 2) for p, e in princess),
    ]
    shifts = []
    for piece in body:
        mine = [(e, by) for p, e, by in edges if p is piece]
        legs = [(pair, dart) for pair in _open(piece, level)]
        own = {one.name: 1 + dart / _wide(one, level) for one in _inside(piece, level)}
        if mine or legs or own:
            heights = ((e.name, height_on(piece, e, LevelKind.WAIST)) for e, _ in mine)
            taking = TakenAt({name: y for name, y in heights if y is not None})
            shifts.append(_shift(piece, mine, legs, own, level, marks, taking))
    return carried_out(draft, shifts, _why(taken), {"waist_half": -taken})


def _edges(
    body: Sequence[Piece], roles: frozenset[EdgeRole], level: float, top: float
) -> list[tuple[Piece, Edge]]:
    """Return the edges of these roles that pass a height, or end up to `top` mm below it, with their pieces."""
    return [(p, e) for p in body for e in p.edges if e.role in roles and _crosses(e, level, top)]


def _shared(edges: Sequence[tuple[Piece, Edge]], whole: float) -> list[tuple[Piece, Edge, float]]:
    return [(p, e, whole / len(edges)) for p, e in edges]


def _open(piece: Piece, level: float) -> list[tuple[Edge, Edge]]:
    return [legs for legs in outline_darts(piece, EdgeRole.WAIST_DART) if _opens(legs, level)]


def _inside(piece: Piece, level: float) -> list[InnerDart]:
    return [dart for dart in piece.darts if _spans(dart, level)]


def _why(taken: float) -> str:
    return "waist taken in" if taken > 0 else "waist let out"


def level_heights(draft: Draft) -> list[tuple[LevelKind, float]]:
    """Return the levels of a body, a skirt or legs, with their heights: a change between two stays there."""
    pieces = body_pieces(draft) or skirt_pieces(draft) or leg_pieces(draft)
    found = ((kind, height(pieces, kind)) for kind in STAYS)
    return [(kind, y) for kind, y in found if y is not None]


STAYS = (LevelKind.BUST, LevelKind.WAIST, LevelKind.HIP, LevelKind.KNEE)


@dataclass(frozen=True)
class TakenAt:
    """How a piece is taken in: the height of each edge by its name, and whether a hem near by goes along."""

    own: Mapping[str, float]
    hem_along: bool = False

    def __post_init__(self) -> None:
        freeze(self, "own")


def at_edges(draft: Draft, refs: Sequence[EdgeRef], taken: float, level: float) -> Altered:
    """Return the draft narrower at a height by `taken` mm, parted evenly between these edges."""
    return at_heights(draft, dict.fromkeys(refs, level), taken)


def at_heights(draft: Draft, levels: Mapping[EdgeRef, float], taken: float, *, hem_along: bool = False) -> Altered:
    """Return the draft narrower by `taken` mm, parted evenly between edges, each at a height of its own.

    `hem_along` says that a hem just below goes along.
    """
    each, marks = taken / len(levels), level_heights(draft)
    shifts = []
    for name in dict.fromkeys(name for name, _ in levels):
        piece = draft[name]
        mine = {edge: level for (n, edge), level in levels.items() if n == name}
        taking = TakenAt(mine, hem_along=hem_along)
        shifts.append(_shift(piece, [(piece[e], each) for e in mine], [], {}, min(mine.values()), marks, taking))
    return carried_out(draft, shifts, "seam taken in" if taken > 0 else "seam let out")


def _shift(
    piece: Piece,
    edges: Sequence[tuple[Edge, float]],
    darts: Sequence[tuple[tuple[Edge, Edge], float]],
    inner: dict[str, float],
    level: float,
    marks: Sequence[tuple[LevelKind, float]],
    taking: TakenAt,
) -> Shift:
    """Return a piece taken in at a level, each edge at the height at which it meets it."""
    holds: list[tuple[Hold, complex]] = []
    for edge, by in edges:
        hem = _hem_end(piece, edge) if taking.hem_along else None
        own = [(kind, y if (on := height_on(piece, edge, kind)) is None else on) for kind, y in marks]
        holds += _taken(edge, by, taking.own.get(edge.name, level), own, hem)
    for (into, out), by in darts:
        mouth = out.path.end - into.path.start
        way = mouth / abs(mouth) if abs(mouth) > 1e-9 else 1.0
        holds.append((Hold(into, 0.0), -way * by / 2))
        holds.append((Hold(out, out.length), way * by / 2))
    corners, knots = knotted(piece, holds)
    tips = ends_beside(piece, EdgeRole.ARMHOLE, EdgeRole.SHOULDER)  # kept straight, so that the shoulder stays
    return Shift(piece.name, corners, knots, _held(edges, knots, level) | tips, darts=inner)


def _held(
    edges: Sequence[tuple[Edge, float]], knots: Mapping[str, tuple[Knot, ...]], level: float
) -> frozenset[tuple[str, str]]:
    """Return the lower ends of edges that go on below the hip, where they stay: they keep their direction there.

    One that ends above goes straight on to its end: held there too it would bend to and fro.
    """
    found = set()
    for edge, _ in edges:
        upward = edge.path.end.imag > edge.path.start.imag
        stays = [knot for knot in knots.get(edge.name, ()) if knot.by == 0 and edge.path.at(knot.at).imag < level]
        if stays:
            found.add((edge.name, "start" if upward else "end"))
    return frozenset(found)


def _taken(
    edge: Edge, by: float, level: float, marks: Sequence[tuple[LevelKind, float]], hem: float | None
) -> list[tuple[Hold, complex]]:
    """Return the places of an edge that is taken in at a level, and those next to it that stay.

    The end at a `hem` (mm along the edge) near by goes along; the bust stays by the armhole above it, where a side
    ends.
    """
    ends = {0.0: abs(edge.path.start.imag - level), edge.length: abs(edge.path.end.imag - level)}
    at = min(ends, key=lambda place: ends[place])
    if ends[at] > DART_REACH:
        crossed = at_height(edge.path, level)
        at = at if crossed is None else crossed
    way = inward(edge, min(max(at, 0.5), edge.length - 0.5)) * by
    found = [(Hold(edge, at), way)]
    if hem is not None and INSIDE < abs(hem - at) < HEM_NEAR:
        found.append((Hold(edge, hem), way))
    for kind, mark in marks:
        there = at_height(edge.path, mark) if abs(mark - level) > DART_REACH else None
        ends_there = edge.role is EdgeRole.SIDE and kind is LevelKind.BUST
        if there is not None and not ends_there and 30.0 < there < edge.length - 30.0:
            found.append((Hold(edge, there), 0j))
    return found


def _hem_end(piece: Piece, edge: Edge) -> float | None:
    """Return the end of an edge at which it meets a hem, mm along it, or None."""
    at = piece.index(edge.name)
    if piece.edges[at - 1].role is EdgeRole.HEM:
        return 0.0
    return edge.length if piece.edges[(at + 1) % len(piece.edges)].role is EdgeRole.HEM else None


HEM_NEAR = 60.0
"""mm: a hem no farther from where a seam is taken in goes along, as a fork does (ours)."""


def _crosses(edge: Edge, level: float, top: float) -> bool:
    ends = edge.path.start.imag, edge.path.end.imag
    return min(ends) - DART_REACH <= level <= max(ends) + top


def _opens(legs: tuple[Edge, Edge], level: float) -> bool:
    return legs[0].kind is EdgeKind.DART and abs(legs[0].path.start.imag - level) <= DART_REACH


def _spans(dart: InnerDart, level: float) -> bool:
    ends = sorted((dart.leg_a.start.imag, dart.leg_a.end.imag))
    return ends[0] < level < ends[1]
