"""What a cutter does after every change: corners that meet are squared again, seams that meet made equal."""

from __future__ import annotations

import cmath
import math
from collections.abc import Iterator
from dataclasses import replace

from drafting.draft.draft import Draft, EdgeRef, Seam
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole, PieceRole, SeamKind
from drafting.draft.walk import sewn_apart
from drafting.fitting.followers import FOLLOWERS, How
from drafting.fitting.lines.along import Knot
from drafting.fitting.lines.giving import stays_from
from drafting.fitting.lines.shift import Shift, reshaped
from drafting.geometry import Path

TURNED = 1e-9
"""Radians: a corner that has turned by no more has not."""

OUT = 1e-9
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
(ours)."""

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


def corners_kept(before: Draft, after: Draft) -> Draft:
    """Return the draft with what meets at the ends of seams and at folds turned back to what it made.

    Two corners that meet are judged by their sum: where one gains what the other loses, both stay.
    """
    changed = {p.name for p in after.pieces if p is not before[p.name]}
    for seam in before.seams:
        if changed & {name for name, _ in (*seam.a, *seam.b)}:
            for corners in _asked(before, seam):
                off = [_turned(before, after, ref) for ref in corners]
                for ref in corners:
                    after = _squared(after, ref, math.fsum(off) / len(off))
    for piece in before.pieces:
        if piece.name in changed:
            for at, edge in enumerate(piece.edges):
                if _at_fold(piece, at) or {edge.role, piece.edges[at - 1].role} in SQUARE:
                    ref = piece.name, edge.name
                    after = _squared(after, ref, _turned(before, after, ref))
    return after


def _turned(before: Draft, after: Draft, ref: EdgeRef) -> float:
    """Return by how much the corner where an edge starts has opened, radians."""
    old, new = before[ref[0]], after[ref[0]]
    if old is new:
        return 0.0
    more = math.radians(new.corner(new.index(ref[1])) - old.corner(old.index(ref[1])))
    return (more + math.pi) % (2 * math.pi) - math.pi


def _asked(draft: Draft, seam: Seam) -> Iterator[tuple[EdgeRef, ...]]:
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


def _at_fold(piece: Piece, at: int) -> bool:
    return EdgeKind.FOLD in (piece.edges[at].kind, piece.edges[at - 1].kind)


def _squared(draft: Draft, ref: EdgeRef, more: float) -> Draft:
    """Return the draft with the corner where an edge starts closed by `more`, by the edge that gives way."""
    if abs(more) < TURNED:
        return draft
    piece = draft[ref[0]]
    at = piece.index(ref[1])
    into, out = piece.edges[at - 1], piece.edges[at]
    shares = _gives_way(piece, into, out)
    bent = (_bent(into, at_start=False, by=-more * shares[0]), _bent(out, at_start=True, by=more * shares[1]))
    return draft.with_pieces([piece.with_edges(*bent)])


def _gives_way(piece: Piece, into: Edge, out: Edge) -> tuple[float, float]:
    """Return how much of a corner's turn each of its two edges takes."""
    if {into.role, out.role} == {EdgeRole.SHOULDER, EdgeRole.ARMHOLE}:
        most = SHOULDER_TAKES if into.role is EdgeRole.SHOULDER else 1 - SHOULDER_TAKES
        return most, 1 - most
    if {into.role, out.role} == {EdgeRole.ARMHOLE, EdgeRole.PANEL} and piece.role in STRAIGHT_ARMHOLE:
        return (0.0, 1.0) if into.role is EdgeRole.ARMHOLE else (1.0, 0.0)
    places = [FOLLOWS.index(edge.role) if edge.role in FOLLOWS else len(FOLLOWS) for edge in (into, out)]
    if min(places) == len(FOLLOWS):
        return 0.0, 0.0
    return (0.0, 1.0) if places[1] < places[0] else (1.0, 0.0)


def _bent(edge: Edge, *, at_start: bool, by: float) -> Edge:
    """Return an edge whose direction at one end is turned, its ends where they were."""
    if abs(by) < TURNED:
        return edge
    factor = cmath.exp(1j * by)
    segments = list(edge.path.segments)
    if at_start:
        one = segments[0].as_cubic()
        segments[0] = one._replace(b=one.a + (one.b - one.a) * factor)
    else:
        one = segments[-1].as_cubic()
        segments[-1] = one._replace(c=one.d + (one.c - one.d) * factor)
    path = Path(tuple(segments))
    share = path.length / edge.length
    notches = tuple(replace(n, at=n.at * share) for n in edge.notches)
    sewn = None if edge.sewn is None else edge.sewn * share
    return replace(edge, path=path, notches=notches, sewn=sewn)


def seams_trued(before: Draft, after: Draft) -> Draft:
    """Return the draft with each seam between two edges as equal, or as far apart, as it was before."""
    touched = {p.name for p in after.pieces if p is not before[p.name]}
    seams = [
        seam
        for seam in before.seams
        if seam.a != seam.b
        and touched & {name for name, _ in (*seam.a, *seam.b)}
        and FOLLOWERS[seam.kind] is How.TRUED
    ]
    were = [sewn_apart(before, seam) for seam in seams]
    for _ in range(ROUNDS):
        out = 0.0
        for seam, was in zip(seams, were, strict=True):
            over = sewn_apart(after, seam) - was
            if abs(over) > OUT:
                out = max(out, abs(over))
                after = _made_equal(before, after, seam, over)
        after = corners_kept(before, after)
        if out <= OUT:
            break
    return after


def _made_equal(before: Draft, draft: Draft, seam: Seam, over: float) -> Draft:
    """Return the draft with chain a shorter and chain b longer by half of `over` each, at their free end.

    The free end of a side seam is the one that was moved, where the other stays.
    """
    at_start = _gives_at_start(draft, seam)
    if seam.kind is SeamKind.SIDE:
        moved = [_end_moved(before, draft, seam, at_start=one) for one in (True, False)]
        at_start = moved[0] if moved[0] != moved[1] else at_start
    a, b = (seam.a[0], seam.b[0]) if at_start else (seam.a[-1], seam.b[-1])
    draft = _longer(draft, a, -over / 2, at_start=at_start)
    return _longer(draft, b, over / 2, at_start=not at_start)


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


def _gives_at_start(draft: Draft, seam: Seam) -> bool:
    def rank(ref: EdgeRef, *, at_start: bool) -> int:
        piece = draft[ref[0]]
        at = piece.index(ref[1])
        beside = piece.edges[at - 1] if at_start else piece.edges[(at + 1) % len(piece.edges)]
        if seam.kind is SeamKind.DART and beside.dart is not None:
            return len(GIVES) + 1
        return GIVES.index(beside.role) if beside.role in GIVES else len(GIVES)

    return rank(seam.a[0], at_start=True) < rank(seam.a[-1], at_start=False)


def _longer(draft: Draft, ref: EdgeRef, by: float, *, at_start: bool) -> Draft:
    piece = draft[ref[0]]
    edge = piece[ref[1]]
    away = _plain(-edge.path.leave if at_start else edge.path.arrive)
    corner = ref[1] if at_start else _following(draft, ref)[1]
    number = piece.index(ref[1])
    beside = piece.edges[number - 1] if at_start else piece.edges[(number + 1) % len(piece.edges)]
    ends = [(edge, at_start), *([(beside, not at_start)] if edge.dart is not None else [])]
    knots = {e.name: (Knot(at, 0j),) for e, first in ends if (at := stays_from(e, at_start=first)) is not None}
    whole = frozenset({beside.name} if beside.role is EdgeRole.ARMHOLE else ())
    return draft.with_pieces([reshaped(piece, Shift(piece.name, {corner: away * by}, knots, whole=whole)).after])


def _plain(way: complex) -> complex:
    """Return a move upright or level, whichever is nearer, that goes on by 1 mm along a direction.

    It is the same after the change as before, so that a change and its reverse undo each other.
    """
    return 1j / way.imag if abs(way.imag) > abs(way.real) else 1 / way.real + 0j
