"""What a cutter does after every change: corners that meet are squared again, seams that meet made equal."""

from __future__ import annotations

import cmath
import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from drafting.draft.draft import Draft, EdgeRef, Seam
from drafting.draft.piece import Edge, Piece
from drafting.draft.roles import EdgeRole, PieceRole, SeamKind
from drafting.draft.walk import sewn_apart
from drafting.fitting.followers import FOLLOWERS, How
from drafting.fitting.lines.along import Knot
from drafting.fitting.lines.corners import crosses_middle
from drafting.fitting.lines.giving import stays_from
from drafting.fitting.lines.shift import Shift
from drafting.fitting.lines.trueing import Longer, Met, Trueing
from drafting.geometry import Path

TURNED = 1e-8
"""Radians: a corner that has turned by no more has not."""

OUT = 1e-8
"""mm: two seams that differ from what they did by no more are equal."""

ROUNDS = 8
"""How often all seams are gone through at most; each round leaves some thousandth of what was out."""

FOLLOWS = (
    EdgeRole.ARMHOLE,
    EdgeRole.NECK,
    EdgeRole.HEM,
    EdgeRole.WAIST,
    EdgeRole.STAND_NECK,
    EdgeRole.CAP,
    EdgeRole.CAP_PART,
    EdgeRole.YOKE,
    EdgeRole.GORGE,
    EdgeRole.BOTTOM,
    EdgeRole.CROTCH,
    EdgeRole.SHOULDER,
    EdgeRole.SIDE,
    EdgeRole.CENTRE_SEAM,
    EdgeRole.UNDERARM,
    EdgeRole.ARM_SEAM,
    EdgeRole.PANEL,
)
"""Of two edges that meet in a corner the one that bends to keep it square, the first of these (ours)."""

SQUARE = ({EdgeRole.WAIST, EdgeRole.CROTCH}, {EdgeRole.WAIST, EdgeRole.FLY})
"""The roles of two edges whose corner stays as it is, though no seam asks for it."""

SHOULDER_TAKES = 0.75
"""Of the turn of a corner at the shoulder's tip: the armhole, straight there, would be hollowed by all of it
(ours). That of a panelled piece, straighter still, would be by the rest: there the shoulder takes it all."""

STRAIGHT_ARMHOLE = frozenset({PieceRole.BACK, PieceRole.SIDE_BODY})
"""Where a panel seam meets an armhole that is straight: the panel seam bends beside it (ours: a coat's back and
side body)."""

GIVES = (
    EdgeRole.CROTCH,
    EdgeRole.HEM,
    EdgeRole.WAIST,
    EdgeRole.SLIT,
    EdgeRole.VENT,
    EdgeRole.PLEAT,
    EdgeRole.SIDE,
    EdgeRole.YOKE,
    EdgeRole.SHOULDER,
    EdgeRole.ARMHOLE,
    EdgeRole.CAP,
    EdgeRole.CAP_PART,
)
"""At which neighbour's corner a seam is made longer or shorter: at the first of these (ours: a seam is
trued at its free end, never at the neck)."""


def corners_kept(work: Trueing) -> Trueing:
    """Return the work with what meets at the ends of seams and at folds turned back to what it made.

    Two corners that meet are judged by their sum: where one gains what the other loses, both stay.
    """
    before, met = work.before, dict(work.met)
    closed = dict[EdgeRef, float]()
    for seam in before.seams:
        if any(name in work.found for name, _ in (*seam.a, *seam.b)):
            for corners in corners_that_meet(before, seam):
                shares, was = _taken(work, corners), met.get(corners, Met((0.0,) * len(corners)))
                off = math.fsum(_turned(work, ref) - closed.get(ref, 0.0) for ref in corners)
                whole = was.turn + off
                for ref, share, had in zip(corners, shares, was.each, strict=True):
                    closed[ref] = closed.get(ref, 0.0) + share * whole - had
                met[corners] = Met(tuple(share * whole for share in shares), whole)
    for piece in before.pieces:
        if piece.name in work.found:
            for at, edge in enumerate(piece.edges):
                if crosses_middle(piece, at) or _roles(piece, edge.name) in SQUARE:
                    ref = piece.name, edge.name
                    closed[ref] = _turned(work, ref)
    return replace(_squared(work, closed), met=met)


def _taken(work: Trueing, corners: Sequence[EdgeRef]) -> list[float]:
    """Return how much of a turn each of the corners that meet takes: as much as the other.

    Of two waists, nearly straight, the one that bends more takes more: the other would soon bend to and fro.
    """
    bends = [1.0 for _ in corners]
    if all(_roles(work.before[name], edge) == SIDE_OF_WAIST for name, edge in corners):
        bends = [LEAST_BENT + _waist_bend(work, ref) for ref in corners]
    return [one / math.fsum(bends) for one in bends]


def _waist_bend(work: Trueing, ref: EdgeRef) -> float:
    """Return by how much a waist that starts or ends at a corner bends, degrees: the mean of before and after."""
    name, edge = ref
    piece = work.before[name]
    at = piece.index(edge)
    waist = next(e.name for e in (piece.edges[at - 1], piece.edges[at]) if e.role is EdgeRole.WAIST)
    paths = [draft[name][waist].path for draft in (work.before, work.draft)]
    return math.degrees(sum(abs(cmath.phase(path.arrive / path.leave)) for path in paths)) / 2


SIDE_OF_WAIST = {EdgeRole.WAIST, EdgeRole.SIDE}

LEAST_BENT = 0.2
"""degrees: what is added to the bend of a waist, so that two straight ones share a turn (ours)."""


def _roles(piece: Piece, corner: str) -> set[EdgeRole]:
    number = piece.index(corner)
    return {piece.edges[number - 1].role, piece.edges[number].role}


def _turned(work: Trueing, ref: EdgeRef) -> float:
    """Return by how much the corner where an edge starts has opened, radians."""
    old, new = work.before[ref[0]], work.draft[ref[0]]
    if old is new:
        return 0.0
    more = math.radians(new.corner(new.index(ref[1])) - old.corner(old.index(ref[1])))
    return (more + math.pi) % (2 * math.pi) - math.pi


def corners_that_meet(draft: Draft, seam: Seam) -> Iterator[tuple[EdgeRef, ...]]:
    """Yield the corners (by the edge that starts there) that together have to run on smoothly."""
    ends = ((seam.start, seam.a[0], seam.b[0], True), (seam.end, seam.a[-1], seam.b[-1], False))
    for corner, mine, other, at_start in ends:
        one = mine if at_start else _following(draft, mine)
        two = _following(draft, other) if at_start else other
        if corner is not None:
            yield (one,) if corner == "square" or one == two else (one, two)


def _following(draft: Draft, ref: EdgeRef) -> EdgeRef:
    piece = draft[ref[0]]
    return ref[0], piece.edges[(piece.index(ref[1]) + 1) % len(piece.edges)].name


def _squared(work: Trueing, closed: Mapping[EdgeRef, float]) -> Trueing:
    """Return the work with corners (by the edge that starts there) closed by so much, where an edge gives way."""
    turns = dict[str, dict[tuple[str, str], float]]()
    for (name, edge), more in closed.items():
        piece = work.before[name]
        at = piece.index(edge)
        into, out = piece.edges[at - 1], piece.edges[at]
        shares = _gives_way(piece, into, out)
        for end, by in (((into.name, "end"), -more * shares[0]), ((out.name, "start"), more * shares[1])):
            if abs(by) > TURNED:
                turns.setdefault(name, {})[end] = by
    for name, each in turns.items():
        work = work.with_shift(Shift(name, turns=each))
    return work


def _gives_way(piece: Piece, into: Edge, out: Edge) -> tuple[float, float]:
    """Return how much of a corner's turn each of its two edges takes."""
    if {into.role, out.role} == {EdgeRole.SHOULDER, EdgeRole.ARMHOLE}:
        most = 1.0 if any(e.role is EdgeRole.PANEL for e in piece.edges) else SHOULDER_TAKES
        return (most, 1 - most) if into.role is EdgeRole.SHOULDER else (1 - most, most)
    if {into.role, out.role} == {EdgeRole.ARMHOLE, EdgeRole.PANEL} and piece.role in STRAIGHT_ARMHOLE:
        return (0.0, 1.0) if into.role is EdgeRole.ARMHOLE else (1.0, 0.0)
    places = [FOLLOWS.index(edge.role) if edge.role in FOLLOWS else len(FOLLOWS) for edge in (into, out)]
    if min(places) == len(FOLLOWS):
        return 0.0, 0.0
    return (0.0, 1.0) if places[1] < places[0] else (1.0, 0.0)


def seams_trued(work: Trueing) -> Trueing:
    """Return the work with each seam between two edges as equal, or as far apart, as it was before."""
    before = work.before
    seams = [s for s in before.seams if s.a != s.b and FOLLOWERS[s.kind] is How.TRUED]
    starts = {seam.name: _gives_at_start(work, seam) for seam in seams}
    for _ in range(ROUNDS):
        out = 0.0
        for seam in seams:
            if any(name in work.found for name, _ in (*seam.a, *seam.b)):
                over = sewn_apart(work.draft, seam) - sewn_apart(before, seam)
                if abs(over) > OUT:
                    out = max(out, abs(over))
                    work = _made_equal(work, seam, over, at_start=starts[seam.name])
        work = corners_kept(work)
        if out <= OUT:
            break
    return work


def _made_equal(work: Trueing, seam: Seam, over: float, *, at_start: bool) -> Trueing:
    """Return the work with chain a shorter and chain b longer by half of `over` each, at their free end."""
    a, b = (seam.a[0], seam.b[0]) if at_start else (seam.a[-1], seam.b[-1])
    work = _longer(work, a, -over / 2, at_start=at_start)
    return _longer(work, b, over / 2, at_start=not at_start)


def _gives_at_start(work: Trueing, seam: Seam) -> bool:
    """Say whether a seam is trued where chain a starts: at its free end.

    The free end of a side seam is the one that was moved, where the other stays.
    """
    if seam.kind is SeamKind.SIDE:
        moved = [_end_moved(work.before, work.draft, seam, at_start=one) for one in (True, False)]
        if moved[0] != moved[1]:
            return moved[0]
    return _free_at_start(work.before, seam)


def _end_moved(before: Draft, after: Draft, seam: Seam, *, at_start: bool) -> bool:
    """Say whether either side of a seam was moved at one of its ends by more than truing moves it."""
    ends = (seam.a[0], seam.b[0]) if at_start else (seam.a[-1], seam.b[-1])
    starts = (at_start, not at_start)
    places = (
        [_end(d.edge(ref).path, at_start=one) for d in (before, after)]
        for ref, one in zip(ends, starts, strict=True)
    )
    return any(abs(old - new) > MOVED for old, new in places)


def _end(path: Path, *, at_start: bool) -> complex:
    return path.start if at_start else path.end


MOVED = 1.0
"""mm: an end that was moved by no more was not altered, only trued (ours)."""


def _free_at_start(draft: Draft, seam: Seam) -> bool:
    def rank(ref: EdgeRef, *, at_start: bool) -> int:
        piece = draft[ref[0]]
        at = piece.index(ref[1])
        beside = piece.edges[at - 1] if at_start else piece.edges[(at + 1) % len(piece.edges)]
        if seam.kind is SeamKind.DART and beside.dart is not None:
            return len(GIVES) + 1
        return GIVES.index(beside.role) if beside.role in GIVES else len(GIVES)

    return rank(seam.a[0], at_start=True) < rank(seam.a[-1], at_start=False)


def _longer(work: Trueing, ref: EdgeRef, by: float, *, at_start: bool) -> Trueing:
    """Return the work with an edge longer by `by` mm at an end.

    All that it was made longer by there goes the way that the edge goes now: so the order of the steps is
    forgotten.
    """
    piece, now = work.before[ref[0]], work.draft[ref[0]]
    edge = piece[ref[1]]
    whole = work.longer.get((ref, at_start), Longer()).mm + by
    moved = whole * _plain(sum(_outward(path, at_start=at_start) for path in (edge.path, now[ref[1]].path)))
    more = moved - work.longer.get((ref, at_start), Longer()).moved
    number = piece.index(ref[1])
    corner = ref[1] if at_start else piece.edges[(number + 1) % len(piece.edges)].name
    beside = piece.edges[number - 1] if at_start else piece.edges[(number + 1) % len(piece.edges)]
    ends = [(edge, at_start), *([(beside, not at_start)] if edge.dart is not None else [])]
    knots = {
        e.name: (Knot(at, 0j),)
        for e, first in ends
        if (at := stays_from(e, *work.paths(ref[0], e.name), at_start=first)) is not None
    }
    turns = frozenset({beside.name} if beside.role is EdgeRole.ARMHOLE else ())
    work = work.with_shift(Shift(piece.name, {corner: more}, knots, whole=turns))
    return replace(work, longer={**work.longer, (ref, at_start): Longer(whole, moved)})


def _outward(path: Path, *, at_start: bool) -> complex:
    """Return the direction in which a path goes on beyond one of its ends."""
    return -path.leave if at_start else path.arrive


def _plain(ways: complex) -> complex:
    """Return a move upright or level, whichever is nearer, that goes on by 1 mm along a direction.

    The direction is given as the sum of that before the change and that after it: so it is the same on the way
    back, and a change and its reverse undo each other.
    """
    way = ways / abs(ways)
    return 1j / way.imag if abs(way.imag) > abs(way.real) else 1 / way.real + 0j
