"""Where an alteration takes hold: pieces, heights and corners, found by what they were declared to be."""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from drafting.draft.by_role import dart_legs
from drafting.draft.draft import Draft
from drafting.draft.piece import Edge, Piece
from drafting.draft.roles import FACINGS, SLEEVES, EdgeRole, Half, LevelKind, PieceRole
from drafting.fitting.lines.along import Knot
from drafting.fitting.lines.on_path import on_path
from drafting.geometry import Path, line
from drafting.geometry.crossing import crossings
from drafting.ground.errors import DraftError

INSIDE = 1.0
"""mm: a place nearer than this to an end of its edge is that end."""

WIDE = 1e4
"""mm: a straight this long crosses any piece."""


def body_pieces(draft: Draft) -> tuple[Piece, ...]:
    """Return the pieces of the garment's own cloth that lie on the trunk above the hip."""
    upper = {EdgeRole.ARMHOLE, EdgeRole.SHOULDER, EdgeRole.NECK}
    return tuple(
        piece
        for piece in draft.pieces
        if not piece.material
        and piece.role not in FACINGS | SLEEVES
        and (upper & {edge.role for edge in piece.edges})
        and piece.role in TRUNK
    )


TRUNK = frozenset({PieceRole.FRONT, PieceRole.SIDE_FRONT, PieceRole.BACK, PieceRole.SIDE_BODY, PieceRole.PLAIN})
"""What a body is made of; a yoke declares nothing of its own."""

BEHIND = frozenset({PieceRole.BACK, PieceRole.PLAIN})
"""What lies on the back; a yoke does."""


def lies_behind(piece: Piece, edge: Edge) -> bool:
    """Return whether an edge lies on the back: as it or its neighbours declare on a piece that has both halves."""
    at = piece.index(edge.name)
    near = [piece.edges[at - 1], piece.edges[(at + 1) % len(piece.edges)]]
    own = {one.half for one in piece.edges if one.role in (EdgeRole.CENTRE, EdgeRole.CENTRE_SEAM)}
    if not own >= {Half.FRONT, Half.BACK}:
        return piece.role in BEHIND
    declared = [one.half for one in (edge, *near) if one.half is not Half.NONE]
    return declared[:1] == [Half.BACK]


def leg_pieces(draft: Draft) -> tuple[Piece, ...]:
    """Return the pieces that go round the legs."""
    return tuple(p for p in draft.pieces if not p.material and any(e.role is EdgeRole.INSEAM for e in p.edges))


def skirt_pieces(draft: Draft) -> tuple[Piece, ...]:
    """Return the pieces of a skirt of its own, which hang from the waist; none where a body or legs hang there."""
    if body_pieces(draft) or leg_pieces(draft):
        return ()
    hangs = {EdgeRole.WAIST, EdgeRole.HEM}
    return tuple(
        p for p in draft.pieces if not p.material and p.role in TRUNK and hangs <= {edge.role for edge in p.edges}
    )


def part_pieces(draft: Draft, part: str) -> tuple[Piece, ...]:
    """Return the pieces of a part of a garment by its word: trunk, sleeve, leg or skirt."""
    return PARTS[part](draft)


def sleeve_pieces(draft: Draft) -> tuple[Piece, ...]:
    """Return the pieces that a sleeve is made of."""
    return tuple(p for p in draft.pieces if not p.material and p.role in SLEEVES)


def height(pieces: Iterable[Piece], kind: LevelKind) -> float | None:
    """Return the height (y, mm) of a level of the body on these pieces, or None where none draws it."""
    found = (level.paths[0].at(0.0).imag for p in pieces for level in p.levels if level.kind is kind)
    return next(found, None)


def height_on(piece: Piece, edge: Edge, kind: LevelKind) -> float | None:
    """Return the height (y, mm) at which a piece's level ends on one of its edges: a front over a belly has its
    waist higher at the side than at the middle. None where it does not end there.
    """
    ends = (p for lv in piece.levels if lv.kind is kind for path in lv.paths for p in (path.start, path.end))
    found = [p.imag for p in ends if on_path(edge.path, p)[0] <= INSIDE]
    return found[0] if found else None


def needed(found: float | None, what: str) -> float:
    """Return a height; raises `DraftError` where the draft has none."""
    if found is None:
        raise DraftError(f"this draft has no {what} level", turn="note it at an edge (`piece.edge`) instead")
    return found


def at_height(path: Path, y: float) -> float | None:
    """Return where a path first is at a height, mm from its start, or None."""
    met = crossings(path, line(complex(-WIDE, y), complex(WIDE, y)))
    return mm_along(path, met[0].on_a) if met else None


def mm_along(path: Path, place: float) -> float:
    """Return a crossing's place (segment and parameter in one number) in mm from the path's start."""
    index = min(int(place), len(path.segments) - 1)
    t = place - index
    part = path.segments[index].split(t)[0].length if 0 < t < 1 else t * path.lengths[index]
    return math.fsum(path.lengths[:index]) + part


def edge_after(piece: Piece, edge: str) -> str:
    """Return the name of the edge that starts where this one ends."""
    return piece.edges[(piece.index(edge) + 1) % len(piece.edges)].name


def corner_between(piece: Piece, one: EdgeRole, other: EdgeRole) -> str | None:
    """Return the edge that starts where an edge of one role meets one of another, or None."""
    for at, edge in enumerate(piece.edges):
        if {piece.edges[at - 1].role, edge.role} == {one, other} and piece.edges[at - 1].role is not edge.role:
            return edge.name
    return None


def ends_beside(piece: Piece, role: EdgeRole, other: EdgeRole) -> frozenset[tuple[str, str]]:
    """Return the ends, as (edge, "start" or "end"), at which edges of one role meet one of another."""
    count = len(piece.edges)
    beside = [(edge, piece.edges[at - 1], piece.edges[(at + 1) % count]) for at, edge in enumerate(piece.edges)]
    return frozenset(
        (edge.name, end)
        for edge, before, after in beside
        for end, neighbour in (("start", before), ("end", after))
        if (edge.role, neighbour.role) == (role, other)
    )


def middle(edge: Edge) -> list[float]:
    """Return the lowest joint of an armhole well inside it, where the round of its base ends.

    It is told in mm from the edge's start; none where it has none. Which joint it is hangs on their order alone,
    so that an alteration that moves them and its reverse take hold of the same one.
    """
    joints = list(itertools.accumulate(edge.path.lengths[:-1]))
    inner = [at for at in joints if 0.2 * edge.length < at < 0.8 * edge.length]
    falls = edge.path.start.imag > edge.path.end.imag
    return [max(inner) if falls else min(inner)] if inner else []


def inward(edge: Edge, at: float) -> complex:
    """Return which way (1 or -1) the cloth lies beside an edge, level, at a place of it."""
    return complex(math.copysign(1.0, (1j * edge.path.tangent(at)).real))


@dataclass(frozen=True)
class Hold:
    """A place of an edge: one of its ends, or a knot inside."""

    edge: Edge
    at: float

    @property
    def end(self) -> str:
        """Return "start", "end", or "" for a place inside."""
        if self.at < INSIDE:
            return "start"
        return "end" if self.at > self.edge.length - INSIDE else ""


def knotted(
    piece: Piece, holds: Iterable[tuple[Hold, complex]]
) -> tuple[dict[str, complex], dict[str, tuple[Knot, ...]]]:
    """Return corners and knots, as a `Shift` takes them, of places and by how much each is moved."""
    corners: dict[str, complex] = {}
    knots: dict[str, tuple[Knot, ...]] = {}
    for hold, by in holds:
        name = hold.edge.name
        if hold.end == "start":
            corners[name] = by
        elif hold.end == "end":
            corners[edge_after(piece, name)] = by
        else:
            knots[name] = tuple(sorted((*knots.get(name, ()), Knot(hold.at, by)), key=lambda k: k.at))
    return corners, knots


def outline_darts(piece: Piece, role: EdgeRole) -> Iterator[tuple[Edge, Edge]]:
    """Yield the legs of each open dart of a role."""
    yield from ((one, two) for one, two in dart_legs(piece) if one.role is role)


PARTS = {"trunk": body_pieces, "sleeve": sleeve_pieces, "leg": leg_pieces, "skirt": skirt_pieces}
"""The parts of a garment that a note may lie on, by what each is called, and how its pieces are found."""
