"""The bust point higher or lower, and the dart or panel seam that aims at it."""

from __future__ import annotations

from drafting.draft.by_role import BUST_POINTS
from drafting.draft.draft import Draft
from drafting.draft.piece import Piece
from drafting.draft.roles import EdgeRole
from drafting.fitting.lines.along import Knot
from drafting.fitting.lines.altered import Altered, carried_out
from drafting.fitting.lines.on_path import on_path
from drafting.fitting.lines.places import body_pieces, outline_darts
from drafting.fitting.lines.shift import Shift
from drafting.ground.errors import DraftError

ON_SEAM = 8.0
"""mm: a panel seam that passes the bust point no farther off is shaped by it (ours)."""


def bust_point(draft: Draft, raised: float) -> Altered:
    """Return a front whose bust point lies higher by `raised` mm; mouth of the dart and level line stay.

    Raises `DraftError` where neither a dart nor a panel seam shapes the bust.
    """
    shifts = [_raised(p, raised) for p in body_pieces(draft) if any(name in p.points for name in BUST_POINTS)]
    if not any(shift.corners or shift.knots for shift in shifts):
        raise DraftError("neither a dart nor a panel seam shapes this bust", turn="choose a `bust_dart` first")
    return carried_out(draft, shifts, f"bust point {'raised' if raised > 0 else 'lowered'}")


def _raised(piece: Piece, raised: float) -> Shift:
    points = [piece.points[name] for name in BUST_POINTS if name in piece.points]
    by = 1j * raised
    corners = {
        out.name: by
        for role in (EdgeRole.BUST_DART, EdgeRole.WAIST_DART)
        for _, out in outline_darts(piece, role)
        if min(abs(out.path.start.real - p.real) for p in points) < ABOVE_ONE or role is EdgeRole.BUST_DART
    }
    knots = {}
    for edge in piece.edges:
        gap, at = min((on_path(edge.path, p) for p in points), default=(ON_SEAM, 0.0))
        if edge.role is EdgeRole.PRINCESS and gap < ON_SEAM:
            knots[edge.name] = (Knot(at, by),)

    def inside(place: complex) -> complex:
        return by if any(abs(place - p) < 1.0 for p in points) else 0j

    return Shift(piece.name, corners, knots, inside=inside)


ABOVE_ONE = 15.0
"""mm: a waist dart whose tip lies no farther beside the bust point is shaped for it (ours)."""
