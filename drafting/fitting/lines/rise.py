"""The rise of a trouser: its depth, its crotch in front and behind, the seat, the width of a leg."""

from __future__ import annotations

import math

from drafting.checks.trouser import waist_waves
from drafting.draft.draft import Draft
from drafting.draft.piece import Piece
from drafting.draft.roles import EdgeRole, LevelKind, PieceRole
from drafting.fitting.lines.along import Knot
from drafting.fitting.lines.altered import Altered, carried_out, made_exact, then
from drafting.fitting.lines.longer import Zone, lengthened
from drafting.fitting.lines.places import (
    INSIDE,
    at_height,
    corner_between,
    ends_beside,
    height,
    inward,
    leg_pieces,
    needed,
)
from drafting.fitting.lines.shift import Shift
from drafting.ground.errors import DraftError

CENTRES = (EdgeRole.FLY, EdgeRole.CROTCH)
"""What meets the waist at the centre line."""


def rise_depth(draft: Draft, deeper: float) -> Altered:
    """Return trousers whose rise is deeper by `deeper` mm all round: the waist goes up, the legs stay."""
    pieces = leg_pieces(draft)
    top = needed(height(pieces, LevelKind.WAIST), "waist")
    low = max(point_of(p, EdgeRole.CROTCH, EdgeRole.INSEAM).imag for p in pieces)
    zone = Zone(top, low, deeper)
    shifts = [lengthened(p, (zone,), lift=deeper) for p in pieces]
    return carried_out(draft, shifts, f"rise {'deepened' if deeper > 0 else 'shortened'}")


def point_of(piece: Piece, one: EdgeRole, other: EdgeRole) -> complex:
    """Return the corner of a piece between edges of two roles; raises `DraftError` where it has none."""
    corner = corner_between(piece, one, other)
    if corner is None:
        raise DraftError(f"the {piece.name} has no corner of {one} and {other}", turn="note it at an edge instead")
    return piece[corner].path.start


def _half(draft: Draft, behind: bool) -> list[Piece]:
    found = [p for p in leg_pieces(draft) if (p.role is PieceRole.BACK) == behind]
    if not found:
        raise DraftError("these are no trousers with a front and a back", turn="note it at an edge instead")
    return found


def centre_height(draft: Draft, behind: bool, higher: float) -> Altered:
    """Return trousers whose waist is higher by `higher` mm at the centre, and as before at the side."""
    hip = needed(height(leg_pieces(draft), LevelKind.HIP), "hip")
    shifts = [_tilted(p, hip, higher) for p in _half(draft, behind)]
    what = f"{'back' if behind else 'front'} rise {'lengthened' if higher > 0 else 'shortened'} at the waist"
    return carried_out(draft, shifts, what)


def _tilted(piece: Piece, hip: float, higher: float) -> Shift:
    """Return a piece whose waist is turned about its side; its centre line goes on as it runs above the hip."""
    corner = next((c for role in CENTRES if (c := corner_between(piece, EdgeRole.WAIST, role))), None)
    side = corner_between(piece, EdgeRole.WAIST, EdgeRole.SIDE)
    if corner is None or side is None:
        raise DraftError(f"the {piece.name} has no waist from side to centre", turn="note it at an edge instead")
    centre, far = piece[corner].path.start, piece[side].path.start
    number = piece.index(corner)
    beside = piece.edges[number - 1], piece.edges[number]
    edge = next(e for e in beside if e.role in CENTRES)
    waist = next(e for e in beside if e is not edge)
    at = at_height(edge.path, hip)
    inside = at is not None and INSIDE < at < edge.length - INSIDE
    low = (
        edge.path.at(at) if inside and at is not None else edge.path.at(0.0 if edge is beside[0] else edge.length)
    )
    way = (centre - low) / (centre - low).imag
    corners = {corner: way * higher}
    for one in piece.edges:
        before = piece.edges[piece.index(one.name) - 1]
        if {one.role, before.role} <= LYING and EdgeRole.WAIST in (one.role, before.role):
            share = _beside(one.path.start - far, way) / _beside(centre - far, way)
            corners[one.name] = way * higher * share * (TILT - (TILT - 1.0) * share)
    knots = {edge.name: (Knot(at, 0j),)} if inside and at is not None else {}
    held = frozenset({(waist.name, "end" if waist is beside[0] else "start")})
    return Shift(piece.name, corners, knots, held=held)


TILT = 1.6
"""Of the mean slope of a turned waist at its side, where it is steepest; it flattens toward the centre (ours)."""


LYING = frozenset({EdgeRole.WAIST, EdgeRole.WAIST_DART})
"""What the waist of a trouser piece runs along, with its darts."""


def _beside(place: complex, way: complex) -> float:
    """Return how far a place lies beside a direction: what a move along it leaves as it was."""
    return (place * way.conjugate()).imag


def fork_length(draft: Draft, behind: bool, longer: float) -> Altered:
    """Return trousers whose fork reaches farther by `longer` mm; knee and hip stay."""
    shifts = []
    hip, knee = (height(leg_pieces(draft), kind) for kind in (LevelKind.HIP, LevelKind.KNEE))
    for piece in _half(draft, behind):
        corner = corner_between(piece, EdgeRole.CROTCH, EdgeRole.INSEAM)
        if corner is None:
            continue
        fork = piece[corner].path.start
        way = 1.0 if fork.real > 0 else -1.0
        knots = {}
        for edge in piece.edges:
            y = {EdgeRole.CROTCH: hip, EdgeRole.INSEAM: knee}.get(edge.role)
            at = None if y is None else at_height(edge.path, y)
            if at is not None and INSIDE < at < edge.length - INSIDE:
                knots[edge.name] = (Knot(at, 0j),)
        shifts.append(Shift(piece.name, {corner: way * longer + 0j}, knots, _crotch_held(piece)))
    what = f"{'back' if behind else 'front'} fork {'lengthened' if longer > 0 else 'shortened'}"
    return carried_out(draft, shifts, what)


def fuller_seat(draft: Draft, fuller: float) -> Altered:
    """Return trousers for a fuller seat: the fork longer by `fuller` mm behind, the waist higher by half."""
    first = fork_length(draft, True, fuller / 2)
    second = then(first, centre_height(first.draft, True, fuller / 2))
    return then(second, fork_length(second.draft, True, fuller / 2))


def crotch_length(draft: Draft, behind: bool, longer: float) -> Altered:
    """Return trousers whose crotch seam is longer by `longer` mm in all: half at the waist, half at the fork."""

    def alter(one: Draft, by: float) -> Altered:
        first = centre_height(one, behind, by / 4)
        second = then(first, fork_length(first.draft, behind, by / 2))
        return then(second, centre_height(second.draft, behind, by / 4))

    def long(one: Draft) -> float:
        return math.fsum(e.length for p in leg_pieces(one) for e in p.edges if e.role in CENTRES)

    return made_exact(draft, longer, alter, long)


def centre_waist(draft: Draft, behind: bool, taken: float) -> Altered:
    """Return trousers taken in by `taken` mm on this hand at the centre of the waist; the hip stays."""
    shifts = []
    hip = height(leg_pieces(draft), LevelKind.HIP)
    for piece in _half(draft, behind):
        corner = next((c for role in CENTRES if (c := corner_between(piece, EdgeRole.WAIST, role))), None)
        if corner is None:
            continue
        edge = next(e for e in (piece.edges[piece.index(corner) - 1], piece[corner]) if e.role in CENTRES)
        at = None if hip is None else at_height(edge.path, hip)
        inside = at is not None and INSIDE < at < edge.length - INSIDE
        knots = {edge.name: (Knot(at, 0j),)} if inside and at is not None else {}
        waist = piece.edges[piece.index(corner) - 1] if edge.name == corner else piece[corner]
        chord = waist.path.end - waist.path.start
        way = chord / abs(chord) * (-1.0 if edge.name == corner else 1.0)
        steep = frozenset({(edge.name, "start" if edge.name == corner else "end")})
        shifts.append(Shift(piece.name, {corner: way * taken}, knots, steep=steep))
    what = f"centre {'back' if behind else 'front'} {'taken in' if taken > 0 else 'let out'} at the waist"
    return _waist_unwaved(draft, carried_out(draft, shifts, what))


def _waist_unwaved(before: Draft, found: Altered) -> Altered:
    """Return what was altered; raises `DraftError` where a waist would bend to and fro that did not."""
    for piece in leg_pieces(found.draft):
        if waist_waves(piece) and not waist_waves(before[piece.name]):
            raise DraftError(
                "the centre would lean so far that the waist, square to it, would bend to and fro",
                turn="take half of it there, and half at the darts or the sides",
            )
    return found


def leg_width(draft: Draft, y: float, taken: float) -> Altered:
    """Return legs narrower by `taken` mm at a height, half on each edge of the inseam; the side stays."""
    pieces = leg_pieces(draft)
    marks = [h for k in (LevelKind.WAIST, LevelKind.HIP, LevelKind.KNEE) if (h := height(pieces, k)) is not None]
    edges = [
        (p, e) for p in pieces for e in p.edges if e.role is EdgeRole.INSEAM and at_height(e.path, y) is not None
    ]
    if not edges:
        raise DraftError("no inseam passes this level", turn="note it at an edge (`piece.edge`) instead")
    shifts = []
    for piece in pieces:
        corners: dict[str, complex] = {}
        knots: dict[str, tuple[Knot, ...]] = {}
        for _, edge in [one for one in edges if one[0] is piece]:
            at = at_height(edge.path, y) or 0.0
            by = inward(edge, at) * taken / len(edges)
            found = [Knot(at, by)]
            for mark in marks:
                there = at_height(edge.path, mark)
                if there is not None and abs(there - at) > NEAR and NEAR < there < edge.length - NEAR:
                    found.append(Knot(there, 0j))
            for end, corner in ((0.0, edge.name), (edge.length, _after(piece, edge.name))):
                if abs(end - at) < FORK_NEAR:
                    corners[corner] = by
            knots[edge.name] = tuple(sorted(found, key=lambda k: k.at))
        shifts.append(Shift(piece.name, corners, knots, _crotch_held(piece)))
    return carried_out(draft, shifts, f"leg {'taken in' if taken > 0 else 'let out'}")


def _crotch_held(piece: Piece) -> frozenset[tuple[str, str]]:
    """Return the ends at which a crotch keeps its direction: at the waist, square to it, and where it is the fly's
    line that runs on."""
    return frozenset().union(*(ends_beside(piece, EdgeRole.CROTCH, one) for one in (EdgeRole.WAIST, EdgeRole.FLY)))


def _after(piece: Piece, edge: str) -> str:
    return piece.edges[(piece.index(edge) + 1) % len(piece.edges)].name


NEAR, FORK_NEAR = 25.0, 60.0
"""mm: levels nearer than the first to a place are left out; a fork nearer than the second goes along (ours)."""
