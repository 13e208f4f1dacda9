"""Move a dart to any place of its piece's outline about its tip, or close it into gathers."""

from __future__ import annotations

import cmath
import itertools
import math
from collections.abc import Callable, Sequence
from dataclasses import replace

from drafting.alter.style.gathered_dart import dart_gathered
from drafting.alter.style.join import run_on
from drafting.alter.style.merged import merged
from drafting.alter.style.places import RingSpot, leg_into, spot_on, spot_point
from drafting.alter.style.rings import (
    CutSides,
    RingStretch,
    become,
    holds_point,
    named_apart,
    region_within,
    renamed_chains,
    run_between,
)
from drafting.draft.by_role import closing_turn
from drafting.draft.draft import Draft
from drafting.draft.named import piece_named
from drafting.draft.piece import Edge, EdgeKind, Level, Piece
from drafting.draft.roles import EdgeRole
from drafting.geometry import Path, line
from drafting.geometry.area import is_simple
from drafting.geometry.crossing import crossings, ends_moved
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.reading.style import DartWish

HOLD = frozenset({EdgeRole.CENTRE, EdgeRole.CENTRE_SEAM, EdgeRole.FRONT_EDGE, EdgeRole.NECK})
"""Edges that stay where they lie while a dart is turned."""


WIDER = 0.05
"""mm wider inside than at its mouth: such a dart bends, and no turn about its tip closes it."""


LEAST_OPEN = math.radians(4.0)
"""radians between a dart and the edge it starts from, at least (ours: flatter, the edge bows over the dart)."""


def dart_moved(draft: Draft, wish: DartWish) -> Draft:
    """Return the draft with a dart at its new place, or gathered away; every other stitched length stays.

    Raises `DraftError` where the line from place to tip runs off the piece or over another dart, and for a dart
    that is wider inside than at its mouth, which no turn about its tip closes.
    """
    piece = piece_named(draft, wish.piece)
    leg = leg_into(piece, wish.dart)
    _refuse_wider_inside(piece, piece.edges[leg], piece.edges[(leg + 1) % len(piece.edges)])
    return (
        dart_gathered(draft, piece, leg) if wish.to is None else _moved(draft, piece, leg, spot_on(piece, wish.to))
    )


def _refuse_wider_inside(piece: Piece, into: Edge, out: Edge) -> None:
    joints = [
        way / into.length for way in itertools.accumulate(into.path.lengths[:-1])
    ]  # a cut may lie close beside one
    shares = [*(number / 50 for number in range(1, 50)), *joints]
    mouth = abs(into.path.start - out.path.end)
    inside = [abs(into.path.at(s * into.length) - out.path.at((1 - s) * out.length)) for s in shares]
    if max(inside) > mouth + WIDER:
        sizes = f"{told(max(inside), 'fine')}, and {told(mouth, 'fine')} at its mouth"
        raise DraftError(
            f"the dart {into.name} of the {piece.name} is widest inside, {sizes}",
            turn="leave it where it is, and choose a line that does not run over it",
        )


def _moved(draft: Draft, piece: Piece, leg: int, spot: RingSpot) -> Draft:
    count = len(piece.edges)
    into, out = piece.edges[leg], piece.edges[(leg + 1) % count]
    tip, place = into.path.end, spot_point(piece, spot)
    _refuse_off(piece, into, out, line(place, tip))
    _refuse_along(piece.edges[spot.index], spot.at, tip, piece.name)
    begin = RingSpot((leg + 1) % count, out.length)
    end = RingSpot((leg - 1) % count, piece.edges[leg - 1].length)
    first, second = run_between(piece, begin, spot), run_between(piece, spot, end)
    if not first or not second:
        return draft  # it is there already
    turn = closing_turn(into, out)
    turns_first = not _holds(first) and (_holds(second) or _long(first) <= _long(second))
    turn = turn / abs(turn) if turns_first else abs(turn) / turn
    ring = Path.joined([line(tip, out.path.end), *(s.edge.path for s in first), line(place, tip)])
    turned = _turned_about(tip, turn)
    one = [replace(s.edge, path=s.edge.path.mapped(turned)) if turns_first else s.edge for s in first]
    two = [s.edge if turns_first else replace(s.edge, path=s.edge.path.mapped(turned)) for s in second]
    one[0] = replace(one[0], path=ends_moved(one[0].path, start=two[-1].path.end))
    legs = (replace(into, path=line(one[-1].path.end, tip)), replace(out, path=line(tip, two[0].path.start)))
    edges = named_apart([*two, *one, *legs])
    made = _with_all(piece, tuple(edges), CutSides(line(place, tip), region_within(ring)), turned, turns_first)
    if not is_simple(made.outline):
        raise DraftError(
            f"the {piece.name} would lie over itself with its dart there", turn="choose another place"
        )
    names = become([(piece.name, second, edges), (piece.name, first, edges[len(two) :])])
    found = renamed_chains(draft.with_pieces([made]), piece.name, names)
    return merged(found, piece.name, edges[len(two) - 1].name, edges[len(two)].name)


def _turned_about(tip: complex, turn: complex) -> Callable[[complex], complex]:
    return lambda p: tip + (p - tip) * turn


def _refuse_off(piece: Piece, into: Edge, out: Edge, path: Path) -> None:
    """Raise `DraftError` where the line from the new place to the tip runs off the piece or over a dart."""
    for edge in piece.edges:
        ends = (path.start, path.end)
        over = [c for c in crossings(path, edge.path) if all(abs(c.point - end) > 0.2 for end in ends)]
        if over and edge not in (into, out):
            raise DraftError(
                f"the {piece.name}'s dart would run over its {edge.name}", turn="choose a place that its tip sees"
            )
    if any(crossings(path, leg) for dart in piece.darts for leg in (dart.leg_a, dart.leg_b)):
        raise DraftError(f"the {piece.name}'s dart would run over another", turn="choose another place")
    if not holds_point(piece.outline, path.at(path.length / 2)):
        raise DraftError(f"the {piece.name}'s dart would run off the piece", turn="choose another place")


def _refuse_along(edge: Edge, at: float, tip: complex, piece: str) -> None:
    """Raise `DraftError` where a dart from this place on an edge would run along the edge itself."""
    way = tip - edge.path.at(at)
    turned = abs(cmath.phase(way / edge.path.tangent(at)))
    if way and min(turned, math.pi - turned) < LEAST_OPEN:
        raise DraftError(
            f"the {piece}'s dart would run along its {edge.name}", turn="choose a place that lies farther round"
        )


def _holds(run: Sequence[RingStretch]) -> bool:
    return any(s.edge.role in HOLD or s.edge.kind is EdgeKind.FOLD for s in run)


def _long(run: Sequence[RingStretch]) -> float:
    return sum(s.edge.length for s in run)


def _with_all(
    piece: Piece, edges: tuple[Edge, ...], parts: CutSides, turned: Callable[[complex], complex], first: bool
) -> Piece:
    """Return the piece with new edges, and all that lies on the side that was turned turned with it."""

    def here(point: complex) -> complex:
        return turned(point) if parts.holds(point) == first else point

    own, other = parts.levels(piece.levels)
    moves, stays = (own, other) if first else (other, own)
    marks, marks_beyond = parts.marks(piece.placements)
    if not first:
        marks, marks_beyond = marks_beyond, marks
    darts, darts_beyond = parts.darts(piece.darts)
    if not first:
        darts, darts_beyond = darts_beyond, darts
    return replace(
        piece,
        edges=edges,
        levels=_one_each(piece.levels, [*stays, *(level.mapped(turned) for level in moves)]),
        placements=(*marks_beyond, *(replace(m, path=m.path.mapped(turned)) for m in marks)),
        darts=(
            *darts_beyond,
            *(replace(d, leg_a=d.leg_a.mapped(turned), leg_b=d.leg_b.mapped(turned)) for d in darts),
        ),
        points={name: here(p) for name, p in piece.points.items()},
    )


def _one_each(old: Sequence[Level], bits: Sequence[Level]) -> tuple[Level, ...]:
    """Return the levels in their old order, the bits of each as one level again."""
    found = []
    for level in old:
        paths = [path for bit in bits if bit.name == level.name for path in bit.paths]
        found.append(replace(level, paths=run_on(tuple(paths))))
    return tuple(found)
