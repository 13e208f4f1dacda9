"""The neckline lower or higher at the middle, wider or narrower at the shoulder."""

from __future__ import annotations

from drafting.draft.draft import Draft
from drafting.draft.piece import Piece
from drafting.draft.roles import EdgeRole
from drafting.fitting.lines.altered import Altered, carried_out
from drafting.fitting.lines.places import BEHIND, body_pieces
from drafting.fitting.lines.shift import Shift
from drafting.geometry import Path
from drafting.ground.errors import DraftError


def neck_depth(draft: Draft, behind: bool, lower: float) -> Altered:
    """Return a body whose neck lies lower by `lower` mm at the centre, in the back or in front."""
    shifts = []
    for piece in body_pieces(draft):
        corner = _at_centre(piece)
        if (piece.role in BEHIND) == behind and corner is not None:
            neck = next(e for e in piece.edges if e.role is EdgeRole.NECK)
            end = "start" if neck.name == corner else "end"
            shifts.append(Shift(piece.name, {corner: -1j * lower}, held=frozenset({(neck.name, end)})))
    if not shifts:
        raise DraftError(
            "no neckline of this draft ends at the centre line",
            turn="lower the front of a coat by its break, or note it at an edge (`piece.edge`)",
        )
    what = "back" if behind else "front"
    return carried_out(draft, shifts, f"{what} neck {'lowered' if lower > 0 else 'raised'}")


def _at_centre(piece: Piece) -> str | None:
    """Return the edge that starts where the neckline meets the centre, or None."""
    for at, edge in enumerate(piece.edges):
        roles = {piece.edges[at - 1].role, edge.role}
        if EdgeRole.NECK in roles and roles & {EdgeRole.CENTRE, EdgeRole.CENTRE_SEAM, EdgeRole.STAND_NECK}:
            return edge.name
    return None


def neck_width(draft: Draft, wider: float) -> Altered:
    """Return a body whose neck is wider by `wider` mm on each shoulder: the seam is shorter by as much."""
    shifts = []
    for piece in body_pieces(draft):
        for at, edge in enumerate(piece.edges):
            before = piece.edges[at - 1]
            if {before.role, edge.role} == {EdgeRole.SHOULDER, EdgeRole.NECK}:
                shoulder = edge if edge.role is EdgeRole.SHOULDER else before
                way = _chord(shoulder.path) if shoulder is edge else -_chord(shoulder.path)
                neck = before if shoulder is edge else edge
                held = frozenset({(neck.name, "start" if shoulder is edge else "end")})
                shifts.append(Shift(piece.name, {edge.name: way * wider}, held=held))
    if not shifts:
        raise DraftError("no shoulder of this draft ends at a neckline", turn="note it at an edge instead")
    return carried_out(draft, shifts, f"neck {'widened' if wider > 0 else 'narrowed'}")


def _chord(path: Path) -> complex:
    """Return the direction from a path's start to its end: it is the same when an end has moved along it."""
    return (path.end - path.start) / abs(path.end - path.start)
