"""The shoulder: its slope, its length, its seam moved forward; the front higher or lower against the back.

The armhole goes along as a whole where the slope changes, so that the sleeve stays; where the shoulder's
length or place changes it fades out towards the base.
"""

from __future__ import annotations

import cmath
import math
from collections.abc import Iterable

from drafting.draft.draft import Draft
from drafting.draft.piece import Edge, Piece
from drafting.draft.roles import EdgeRole, LevelKind
from drafting.fitting.lines.along import Knot
from drafting.fitting.lines.altered import Altered, carried_out
from drafting.fitting.lines.places import BEHIND, INSIDE, at_height, body_pieces, edge_after, height, needed
from drafting.fitting.lines.shift import Shift
from drafting.geometry.turning import inflections
from drafting.ground import tolerances as tol
from drafting.ground.errors import DraftError


def shoulder_slope(draft: Draft, lower: float) -> Altered:
    """Return a body whose shoulder tips and armholes lie lower by `lower` mm; neck and waist stay."""
    body = body_pieces(draft)
    waist = needed(height(body, LevelKind.WAIST), "waist")
    shifts = []
    for piece in body:
        ends = shoulder_ends([p for p in body if (p.role in BEHIND) == (piece.role in BEHIND)])
        if ends and (armholes(piece) or shoulders(piece)):
            shifts.append(_sloped(piece, lower, ends, waist))
    return carried_out(draft, _some(shifts), f"shoulder {'lowered' if lower > 0 else 'raised'}")


def _sloped(piece: Piece, lower: float, ends: tuple[complex, complex], waist: float) -> Shift:
    """Return a piece whose shoulder turns about the neck and whose armhole sinks as it is."""
    arms = [p for e in armholes(piece) for p in (e.path.start, e.path.end)]
    corners: dict[str, complex] = {}
    for edge in piece.edges:
        place, share = edge.path.start, 0.0
        if any(abs(place - p) < INSIDE for p in arms):
            share = 1.0
        elif _on_shoulder(piece, edge):
            share = (place - ends[0]).real / (ends[1] - ends[0]).real
        corners[edge.name] = -1j * lower * share
    knots = {}
    for edge in piece.edges:
        at = at_height(edge.path, waist) if edge.role in HANGS else None
        if at is not None and BELOW < at < edge.length - BELOW:
            knots[edge.name] = (Knot(at, 0j),)
    return Shift(piece.name, corners, knots)


HANGS = frozenset({EdgeRole.SIDE, EdgeRole.PANEL, EdgeRole.PRINCESS, EdgeRole.CENTRE_SEAM})
"""Seams that run down from above; below the waist they stay."""

BELOW = 25.0
"""mm: a seam that goes on by no more than this below the waist ends there (ours: it is sewn to a waist edge)."""


def _on_shoulder(piece: Piece, edge: Edge) -> bool:
    """Return whether an edge starts on the shoulder: at the seam, or at a dart's mouth in it."""
    before = piece.edges[piece.index(edge.name) - 1]
    return EdgeRole.SHOULDER in (edge.role, before.role)


def armholes(piece: Piece) -> list[Edge]:
    """Return the edges of a piece that lie on the armhole."""
    return [edge for edge in piece.edges if edge.role is EdgeRole.ARMHOLE]


def shoulders(piece: Piece) -> list[Edge]:
    """Return the edges of a piece that lie on the shoulder seam."""
    return [edge for edge in piece.edges if edge.role is EdgeRole.SHOULDER]


def shoulder_ends(pieces: Iterable[Piece]) -> tuple[complex, complex] | None:
    """Return the ends of the shoulder of these pieces, the inner and the outer; None where they have none."""
    places = [p for piece in pieces for e in shoulders(piece) for p in (e.path.start, e.path.end)]
    return (min(places, key=lambda p: abs(p.real)), max(places, key=lambda p: abs(p.real))) if places else None


def tip(piece: Piece) -> str | None:
    """Return the edge that starts at the shoulder's tip, or None."""
    for at, edge in enumerate(piece.edges):
        if {piece.edges[at - 1].role, edge.role} == {EdgeRole.SHOULDER, EdgeRole.ARMHOLE}:
            return edge.name
    return None


def shoulder_length(draft: Draft, longer: float) -> Altered:
    """Return a body whose shoulder seam is longer by `longer` mm; the base of the armhole stays."""
    shifts = []
    for piece in body_pieces(draft):
        corner = tip(piece)
        if corner is not None:
            inner, outer = last_part(piece, corner)
            shifts.append(at_tip(piece, corner, (outer - inner) / abs(outer - inner) * longer))
    what = f"shoulder {'lengthened' if longer > 0 else 'shortened'}"
    return unwaved(draft, carried_out(draft, _some(shifts), what))


def shoulder_forward(draft: Draft, by: float) -> Altered:
    """Return a body whose shoulder seam lies farther forward at the tip by `by` mm, and as before at the neck.

    What the front loses the back gets. The lengths of the seam stay.
    """
    shifts = []
    for piece in body_pieces(draft):
        corner = tip(piece)
        if corner is not None:
            inner, outer = last_part(piece, corner)
            arm = outer - inner
            angle = 2 * math.asin(by / 2 / abs(arm))
            way = 1.0 if (piece.role in BEHIND) == (arm.real > 0) else -1.0
            shifts.append(Shift(piece.name, {corner: arm * cmath.exp(1j * way * angle) - arm}))
    return carried_out(draft, _some(shifts), f"shoulder seam moved {'forward' if by > 0 else 'back'}")


def last_part(piece: Piece, corner: str) -> tuple[complex, complex]:
    """Return the ends of the shoulder's outermost edge, the inner and the outer (at the tip)."""
    place = piece[corner].path.start
    edge = next(e for e in shoulders(piece) if min(abs(e.path.start - place), abs(e.path.end - place)) < INSIDE)
    return (edge.path.end, place) if abs(edge.path.start - place) < INSIDE else (edge.path.start, place)


def at_tip(piece: Piece, corner: str, by: complex) -> Shift:
    """Return a piece's tip moved, and its armhole with it as a whole, down to where it ends."""
    beside = (e.name for e in armholes(piece) if e.name == corner or edge_after(piece, e.name) == corner)
    return Shift(piece.name, {corner: by}, whole=frozenset(beside))


def unwaved(before: Draft, found: Altered) -> Altered:
    """Return what was altered; raises `DraftError` where an armhole would bend to and fro that did not."""
    refs = [(piece.name, edge.name) for piece in body_pieces(before) for edge in armholes(piece)]
    if any(_waves(found.draft.edge(ref)) and not _waves(before.edge(ref)) for ref in refs):
        raise DraftError(
            "the armhole is too straight to be altered by so much there: it would bend to and fro",
            turn="take half of it there, and half at another seam",
        )
    return found


def _waves(edge: Edge) -> bool:
    return inflections(edge.path, tol.TURN_MATTERS) > 0


def _some(shifts: list[Shift]) -> list[Shift]:
    if not shifts:
        raise DraftError("no piece has a shoulder that ends at an armhole", turn="draw it by hand")
    return shifts
