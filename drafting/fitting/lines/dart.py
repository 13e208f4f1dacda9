"""Fullness taken to a dart, or given by it: a gaping armhole folded away, a bust fuller or smaller.

What lies between the place that is folded or opened and the dart turns about a point that stays, as a cutter
turns it on the table; so its edges keep their lengths, and the same angle back gives the start again.
"""

from __future__ import annotations

import cmath
import itertools
import math
from collections.abc import Iterable, Iterator

from drafting.draft.by_role import BUST_POINTS
from drafting.draft.draft import Draft, EdgeRef
from drafting.draft.piece import Edge, Piece
from drafting.draft.roles import EdgeRole, LevelKind, PieceRole
from drafting.fitting.lines.along import Knot
from drafting.fitting.lines.altered import Altered, carried_out, made_exact
from drafting.fitting.lines.armhole import bust_width
from drafting.fitting.lines.on_path import on_path
from drafting.fitting.lines.places import (
    BEHIND,
    INSIDE,
    at_height,
    body_pieces,
    edge_after,
    height,
    middle,
    outline_darts,
)
from drafting.fitting.lines.shift import ON_OUTLINE, Shift
from drafting.fitting.lines.shoulder import armholes, at_tip, last_part, tip, unwaved
from drafting.fitting.lines.waist import at_edges, width_at
from drafting.ground.errors import DraftError

Dart = tuple[Edge, Edge]


def armhole_fold(draft: Draft, behind: bool, shorter: float) -> Altered:
    """Return a body whose armhole is shorter by `shorter` mm in front or behind: its loose fold is taken away.

    It goes to the dart of that half, which opens by it; where there is none, to the shoulder's tip.
    """

    def long(one: Draft) -> float:
        return math.fsum(e.length for p in body_pieces(one) for e in armholes(p) if (p.role in BEHIND) == behind)

    return made_exact(draft, -shorter, lambda one, by: _folded(one, behind, -by), long)


def _folded(draft: Draft, behind: bool, shorter: float) -> Altered:
    role = EdgeRole.BACK_DART if behind else EdgeRole.BUST_DART
    pieces = [p for p in body_pieces(draft) if (p.role in BEHIND) == behind and armholes(p)]
    darts = [(p, dart) for p in pieces for dart in outline_darts(p, role)]
    shifts = [_to_dart(piece, dart, shorter) for piece, dart in darts[:1]]
    where = "the dart"
    if not shifts:
        shifts = [_to_tip(p, corner, shorter) for p in pieces if (corner := tip(p)) is not None]
        where = "the shoulder"
    if not shifts:
        raise DraftError("no armhole of this half has a dart or a shoulder", turn="note it at an edge instead")
    half = "back" if behind else "front"
    what = f"{half} armhole {'folded away' if shorter > 0 else 'opened'} to {where}"
    return unwaved(draft, carried_out(draft, shifts, what))


def _to_tip(piece: Piece, corner: str, lower: float) -> Shift:
    """Return a piece whose shoulder turns down about the neck, its tip by `lower` mm."""
    inner, outer = last_part(piece, corner)
    arm = outer - inner
    down = -1.0 if arm.real > 0 else 1.0
    return at_tip(piece, corner, arm * cmath.exp(1j * down * lower / abs(arm)) - arm)


def _to_dart(piece: Piece, dart: Dart, shorter: float) -> Shift:
    """Return a piece with what lies between its armhole and a dart turned about the dart's point."""
    into, out = dart
    arms = armholes(piece)
    if any(abs(into.path.start - e.path.end) < INSIDE for e in arms):
        way = out.path.end - into.path.start
        by = way / abs(way) * shorter / 2
        return Shift(piece.name, {into.name: -by, edge_after(piece, out.name): by})
    pivot = _pivot(piece, out)
    arm, names = _between(piece, dart)
    corner = arm.path.start if arm.name in names else arm.path.end
    side = (corner - pivot) / abs(corner - pivot)
    turns = 1.0 if (side * (arm.path.at(arm.length / 2) - corner).conjugate()).imag < 0 else -1.0
    angle = cmath.exp(1j * turns * shorter / abs(corner - pivot)) - 1
    corners = {name: angle * (piece[name].path.start - pivot) for name in names}
    knots = {arm.name: tuple(Knot(at, 0j) for at in middle(arm))}

    def inside(place: complex) -> complex:
        return angle * (place - pivot) if _on(piece, names, place) else 0j

    return Shift(piece.name, corners, knots, inside=inside)


def _on(piece: Piece, names: Iterable[str], place: complex) -> bool:
    """Return whether a place lies on one of these edges."""
    return any(on_path(piece[name].path, place)[0] <= ON_OUTLINE for name in names)


def _pivot(piece: Piece, out: Edge) -> complex:
    """Return the point about which a piece turns: the bust point, else the tip of the dart."""
    points = [piece.points[name] for name in BUST_POINTS if name in piece.points]
    return min(points, key=lambda p: abs(p - out.path.start), default=out.path.start)


def _between(piece: Piece, dart: Dart) -> tuple[Edge, list[str]]:
    """Return the armhole's edge next to a dart, and the edges at whose starts the corners between them lie."""
    count, roles = len(piece.edges), [edge.role for edge in piece.edges]
    for start, step in ((piece.index(dart[1].name) + 1, 1), (piece.index(dart[0].name), -1)):
        names = []
        for at in itertools.islice(itertools.count(start, step), count):
            edge, before = piece.edges[at % count], piece.edges[(at - 1) % count]
            names.append(edge.name)
            ahead = edge if step > 0 else before
            if ahead.role is EdgeRole.ARMHOLE:
                return ahead, names
            if ahead.role in {EdgeRole.CENTRE, EdgeRole.CENTRE_SEAM, EdgeRole.FRONT_EDGE}:
                break
    assert EdgeRole.ARMHOLE in roles
    raise DraftError("the dart does not lie beside the armhole", turn="note it at an edge instead")


# ------------------------------------------------------------------------------------- the bust


def fuller_bust(draft: Draft, taken: float) -> Altered:
    """Return a body narrower by `taken` mm on this hand at the bust (less than 0: wider), and as long as it needs.

    With a bust dart at the side the front is cut from its armhole, its side and its hem to the bust point and
    opened there: the dart grows, the side seam keeps its length, the front is longer below the bust. A panel
    seam through the bust gives the width itself; with neither, or a dart elsewhere, the sides do.
    """
    body = body_pieces(draft)
    darts = [(p, dart) for p in body for dart in outline_darts(p, EdgeRole.BUST_DART) if _at_side(p, dart)]
    if darts and middle(_between(*darts[0])[0]):
        return _cut_open(draft, -taken)
    level = height(body, LevelKind.BUST)
    panels = [] if level is None else list(_panels(draft, level))
    if panels and level is not None:
        tops = [max(e.path.start.imag, e.path.end.imag) for e in map(draft.edge, panels)]
        level = min(tops) if min(tops) < level + NEAR_END else level
        return made_exact(
            draft,
            -taken,
            lambda one, by: at_edges(one, panels, -by, level),
            lambda one: width_at(one, LevelKind.BUST),
        )
    return bust_width(draft, taken)


def _panels(draft: Draft, level: float) -> Iterator[EdgeRef]:
    """Yield the edges of the panel seams that pass the bust on the front."""
    for seam in draft.seams:
        refs = [ref for ref in (*seam.a, *seam.b) if draft.edge(ref).role in {EdgeRole.PRINCESS, EdgeRole.PANEL}]
        in_front = any(draft[name].role in {PieceRole.FRONT, PieceRole.SIDE_FRONT} for name, _ in refs)
        if in_front and not any(draft[name].material for name, _ in refs):
            yield from (ref for ref in refs if _passes(draft.edge(ref), level))


def _passes(edge: Edge, level: float) -> bool:
    at = at_height(edge.path, level)
    return at is not None and INSIDE < at < edge.length - INSIDE


NEAR_END = 60.0
"""mm: a panel seam that ends no higher above the bust goes out with it at its end, too (ours)."""


def _at_side(piece: Piece, dart: Dart) -> bool:
    beside = piece.edges[piece.index(dart[0].name) - 1].role, piece[edge_after(piece, dart[1].name)].role
    return beside == (EdgeRole.SIDE, EdgeRole.SIDE)


def _cut_open(draft: Draft, wider: float) -> Altered:
    """Return a body wider by `wider` mm at the bust, its front cut to the bust point.

    What turns there is measured on the mean of before and after, as found by the try before.
    """
    last = [draft]

    def opened(one: Draft, by: float) -> Altered:
        shifts = list(_cuts(one, last[-1], by))
        longer = math.fsum(-shift.corners[_lowest(one[shift.piece])].imag for shift in shifts)
        what = f"bust {'let out' if by > 0 else 'taken in'} to its point"
        found = carried_out(one, shifts, what, {"front_waist_length": longer})
        last.append(found.draft)
        return found

    opened(draft, wider)
    return made_exact(draft, wider, opened, lambda one: width_at(one, LevelKind.BUST))


def _lowest(piece: Piece) -> str:
    return min(piece.edges, key=lambda edge: edge.path.start.imag).name


def _cuts(draft: Draft, after: Draft, wider: float) -> Iterator[Shift]:
    for piece in body_pieces(draft):
        for dart in outline_darts(piece, EdgeRole.BUST_DART):
            if _at_side(piece, dart):
                yield _cut(piece, after[piece.name], dart, wider)


def _cut(piece: Piece, after: Piece, dart: Dart, wider: float) -> Shift:
    """Return a front cut to its bust point and opened there by `wider` mm; `after` is it as far as it is known.

    What lies above the dart turns about the middle of the armhole, what lies below goes out and down.
    """
    into, out = dart
    arm, upper = _between(piece, dart)
    waist = height([piece], LevelKind.WAIST)
    point, hinge = ((p + q) / 2 for p, q in zip(_reach(piece, dart), _reach(after, dart), strict=True))
    reach = point - hinge
    side = 1.0 if arm.path.start.real > point.real else -1.0
    angle = 1j * side * wider / abs(reach.imag)
    turn = (1 + angle / 2) / (1 - angle / 2) - 1
    drop = -1j * wider * abs(reach.real / reach.imag)
    corners = {n: angle * ((piece[n].path.start + after[n].path.start) / 2 - hinge) for n in upper}
    corners |= {e.name: drop for e in piece.edges if e.path.start.imag < point.imag and e.name not in upper}
    corners[into.name] = side * wider + drop
    corners.pop(out.name, None)
    knots: dict[str, tuple[Knot, ...]] = {arm.name: (Knot(middle(arm)[0], 0j),)}
    for edge in piece.edges:
        centre = edge.role in {EdgeRole.CENTRE, EdgeRole.CENTRE_SEAM, EdgeRole.FRONT_EDGE}
        y = point.imag if centre else waist
        at = None if y is None or edge.name in upper else at_height(edge.path, y)
        inside = at is not None and INSIDE < at < edge.length - INSIDE
        if inside and at is not None and (centre or edge.role is EdgeRole.SIDE):
            knots[edge.name] = (Knot(at, 0j if centre else drop),)

    def sinks(place: complex) -> complex:
        if _on(piece, upper, place):
            return turn * (place - hinge)
        return drop if place.imag < point.imag - INSIDE else 0j

    below = piece.edges[piece.index(into.name) - 1]
    return Shift(piece.name, corners, knots, steep=frozenset({(below.name, "end")}), inside=sinks)


def _reach(piece: Piece, dart: Dart) -> tuple[complex, complex]:
    """Return the bust point, and the place of the armhole that a cut to it opens from."""
    arm, _ = _between(piece, (piece[dart[0].name], piece[dart[1].name]))
    return _pivot(piece, piece[dart[1].name]), arm.path.at(middle(arm)[0])
