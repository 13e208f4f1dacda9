"""The armhole: its base higher or lower, its front scooped, the body wider or narrower across."""

from __future__ import annotations

import math

from drafting.draft.by_role import closing_turn, dart_legs
from drafting.draft.draft import Draft, EdgeRef
from drafting.draft.piece import Edge, Piece
from drafting.draft.roles import EdgeRole, LevelKind
from drafting.fitting.lines.along import Knot
from drafting.fitting.lines.altered import Altered, carried_out, made_exact
from drafting.fitting.lines.places import (
    BEHIND,
    INSIDE,
    at_height,
    body_pieces,
    edge_after,
    height,
    inward,
    middle,
    outline_darts,
)
from drafting.fitting.lines.shift import Shift
from drafting.fitting.lines.shoulder import armholes, unwaved
from drafting.fitting.lines.waist import width_at
from drafting.ground.errors import DraftError

FRONT_FOLD = 0.3
"""Of an armhole's height, from its base: where its front fold cuts in (ours: above the underarm's curve)."""

SIDE_REACH = 0.35
"""Of the way from bust to waist: so far down the side seam goes along with the base of the armhole (ours)."""


def armhole_base(draft: Draft, raised: float) -> Altered:
    """Return a body whose armhole ends higher by `raised` mm under the arm; its upper half stays."""
    body = body_pieces(draft)
    bust, waist = height(body, LevelKind.BUST), height(body, LevelKind.WAIST)
    fixed = None if bust is None or waist is None else bust + SIDE_REACH * (waist - bust)
    shifts = [_raised(p, name, raised, fixed) for p in body if (name := underarm(p)) is not None]
    if not shifts:
        raise DraftError("no armhole of this draft ends under the arm", turn="note it at an edge instead")
    return carried_out(draft, shifts, f"armhole {'raised' if raised > 0 else 'lowered'}")


def underarm(piece: Piece) -> str | None:
    """Return the edge that starts at the lowest place of the armhole, or None."""
    low = sorted({e.path.start.imag for e in armholes(piece)} | {e.path.end.imag for e in armholes(piece)})
    meets = {EdgeRole.ARMHOLE, EdgeRole.SIDE}
    for at, edge in enumerate(piece.edges):
        roles = {piece.edges[at - 1].role, edge.role}
        lowest = bool(low) and abs(edge.path.start.imag - low[0]) < INSIDE
        if EdgeRole.ARMHOLE in roles and roles <= meets and lowest:
            return edge.name
    return None


def _raised(piece: Piece, corner: str, raised: float, fixed: float | None) -> Shift:
    """Return a piece whose underarm goes up along its side seam, which stays below the height `fixed`.

    By so much with the dart closed: one that opens to the side leaves what is above it leaning.
    """
    edges = piece.edges[piece.index(corner) - 1], piece[corner]
    side = next((e for e in edges if e.role is EdgeRole.SIDE), None)
    by = 1j * raised
    knots: dict[str, tuple[Knot, ...]] = {}
    if side is not None:
        at = None if fixed is None else at_height(side.path, fixed)
        if at is not None and INSIDE < at < side.length - INSIDE:
            knots[side.name] = (Knot(at, 0j),)
            way = piece[corner].path.start - side.path.at(at)
        else:
            way = piece[corner].path.start - (side.path.end if side.name == corner else side.path.start)
        by = way / (way * _dart_closed(piece, side)).imag * raised
    for edge in edges:
        if edge.role is EdgeRole.ARMHOLE:
            knots[edge.name] = tuple(Knot(at, 0j) for at in middle(edge))
    return Shift(piece.name, {corner: by}, knots)


def _dart_closed(piece: Piece, edge: Edge) -> complex:
    """Return what closing the open dart at an edge's end turns its ways by; 1 where there is none."""
    for into, out in dart_legs(piece):
        if out.path.end == edge.path.start:
            return closing_turn(into, out)
        if into.path.start == edge.path.end:
            return 1 / closing_turn(into, out)
    return 1 + 0j


def armhole_scoop(draft: Draft, ref: EdgeRef, deeper: float) -> Altered:
    """Return the draft with one edge of an armhole scooped out by `deeper` mm at its front fold."""
    edge = draft.edge(ref)
    low, high = sorted((edge.path.start.imag, edge.path.end.imag))
    return carried_out(draft, [_pushed(edge, ref[0], low + FRONT_FOLD * (high - low), deeper)], "armhole scooped")


def across_width(draft: Draft, behind: bool, wider: float) -> Altered:
    """Return a body wider by `wider` mm between the armhole and the middle, in the back or in front."""
    body = [p for p in body_pieces(draft) if (p.role in BEHIND) == behind]
    long = {p.name: max(armholes(p), key=lambda e: e.length, default=None) for p in body if _is_main(p)}
    shifts = []
    for name, edge in long.items():
        if edge is None:
            continue
        shifts.append(_widened(draft[name], edge, wider))
    if not shifts:
        raise DraftError("there is no armhole to widen at", turn="note it at an edge (`piece.edge`) instead")
    what = "back" if behind else "front"
    return unwaved(draft, carried_out(draft, shifts, f"across {what} {'widened' if wider > 0 else 'narrowed'}"))


def _widened(piece: Piece, edge: Edge, wider: float) -> Shift:
    """Return a piece wider at its armhole: in the middle, or where it ends at a panel and at the shoulder's tip.

    The armhole of a panelled piece is nearly straight: pushed in the middle it would bend to and fro.
    """
    low, high = sorted((edge.path.start.imag, edge.path.end.imag))
    roles = {e.role for e in piece.edges}
    if EdgeRole.YOKE in roles or (EdgeRole.PANEL not in roles and edge.length > SHORT):
        return _pushed(edge, piece.name, low + ACROSS * (high - low), -wider)
    falls = edge.path.start.imag > edge.path.end.imag
    lower, upper = (
        (edge_after(piece, edge.name), edge.name) if falls else (edge.name, edge_after(piece, edge.name))
    )
    out = -inward(edge, edge.length / 2) * wider
    return Shift(
        piece.name,
        {lower: out, upper: out} if edge.length <= SHORT else {upper: 2 * out},
        whole=frozenset({edge.name}),
    )


SHORT = 120.0
"""mm: the armhole of a panel that is no longer ends where the body is measured across (ours)."""

ACROSS = 0.5
"""Of an armhole's height, from its base: where the body is measured across (practice: half way)."""


def _is_main(piece: Piece) -> bool:
    """Return whether an armhole of a piece begins at the shoulder or belongs to what hangs from a yoke."""
    return any(e.role in {EdgeRole.SHOULDER, EdgeRole.YOKE} for e in piece.edges)


def _pushed(edge: Edge, piece: str, y: float, by: float) -> Shift:
    """Return an armhole pushed into the cloth, level, at one height; its ends stay where they are.

    Its upper part, nearly straight, turns about the shoulder; it bends below, where it is round anyway.
    """
    at = at_height(edge.path, y)
    place = edge.length / 2 if at is None else at
    falls = edge.path.start.imag > edge.path.end.imag
    knot = Knot(place, inward(edge, place) * by, -1 if falls else 1)
    return Shift(piece, knots={edge.name: (knot,)}, steep=frozenset({(edge.name, "end" if falls else "start")}))


def bust_width(draft: Draft, taken: float) -> Altered:
    """Return a body narrower by `taken` mm on this hand at the bust, at its side; waist and across stay."""
    return made_exact(
        draft, -taken, lambda one, by: _bust_width(one, -by), lambda one: width_at(one, LevelKind.BUST)
    )


def _bust_width(draft: Draft, taken: float) -> Altered:
    body = body_pieces(draft)
    corners = {p.name: name for p in body if (name := underarm(p)) is not None}
    sides = {n: c for n, c in corners.items() if EdgeRole.SIDE in _beside(draft[n], c)}
    if not sides:
        raise DraftError("there is no side seam at the bust", turn="note it at an edge (`piece.edge`) instead")
    shifts = []
    for name, corner in sides.items():
        shifts.append(_narrowed(draft[name], corner, taken / len(sides), height(body, LevelKind.WAIST)))
    return carried_out(draft, shifts, f"bust {'taken in' if taken > 0 else 'let out'}")


def _beside(piece: Piece, corner: str) -> set[EdgeRole]:
    return {piece.edges[piece.index(corner) - 1].role, piece[corner].role}


def _narrowed(piece: Piece, corner: str, by: float, waist: float | None) -> Shift:
    edges = piece.edges[piece.index(corner) - 1], piece[corner]
    side = next(e for e in edges if e.role is EdgeRole.SIDE)
    way = inward(side, 1.0 if side.name == corner else side.length - 1.0)
    knots: dict[str, tuple[Knot, ...]] = {}
    for edge in piece.edges:
        if edge.role is EdgeRole.SIDE and waist is not None:
            at = at_height(edge.path, waist)
            if at is not None and INSIDE < at < edge.length - INSIDE:
                knots[edge.name] = (Knot(at, 0j),)
    for edge in edges:
        if edge.role is EdgeRole.ARMHOLE:
            knots[edge.name] = tuple(Knot(at, 0j) for at in middle(edge))
    mouth = _mouth_in(side, piece) if waist is not None else {}
    top = piece[corner].path.start.imag
    share = 0.0 if waist is None else (math.fsum(mouth.values()) / max(len(mouth), 1) - waist) / (top - waist)
    return Shift(piece.name, {**dict.fromkeys(mouth, way * by * share), corner: way * by}, knots)


def _mouth_in(side: Edge, piece: Piece) -> dict[str, float]:
    """Return the heights of the mouth of a dart that opens below the upper part of a side seam, by its corners."""
    for into, out in outline_darts(piece, EdgeRole.BUST_DART):
        after = edge_after(piece, out.name)
        if side.name in (after, piece.edges[piece.index(into.name) - 1].name):
            return {into.name: into.path.start.imag, after: out.path.end.imag}
    return {}
