"""The neckline lower or higher at the middle, wider or narrower at the shoulder."""

from __future__ import annotations

from drafting.draft.draft import Draft
from drafting.draft.piece import Edge, Piece
from drafting.draft.roles import EdgeRole
from drafting.fitting.lines.altered import Altered, carried_out
from drafting.fitting.lines.places import body_pieces, lies_behind
from drafting.fitting.lines.shift import Shift
from drafting.geometry import Path
from drafting.ground.errors import DraftError


def neck_depth(draft: Draft, behind: bool, lower: float) -> Altered:
    """Return a body whose neck lies lower by `lower` mm at the centre, in the back or in front."""
    shifts = []
    for piece in body_pieces(draft):
        if (corner := _at_centre(piece, behind)) is not None:
            edge, held, down = corner
            shifts.append(Shift(piece.name, {edge: down * lower}, held=frozenset({held})))
    if not shifts:
        raise DraftError(
            "no neckline of this draft ends at the centre line",
            turn="such a front begins where it breaks: change lapel_break of a coat, v_above_bust of a waistcoat",
        )
    what = "back" if behind else "front"
    return carried_out(draft, shifts, f"{what} neck {'lowered' if lower > 0 else 'raised'}")


def _at_centre(piece: Piece, behind: bool) -> tuple[str, tuple[str, str], complex] | None:
    """Return the edge that starts where the neckline meets the centre behind or in front, the end of the neck's
    edge that lies there, and the way down the centre; or None. A cape in one piece has both.
    """
    for at, edge in enumerate(piece.edges):
        before = piece.edges[at - 1]
        for neck, middle, end in ((edge, before, "start"), (before, edge, "end")):
            if neck.role is EdgeRole.NECK and middle.role in MIDDLES and lies_behind(piece, middle) == behind:
                return edge.name, (neck.name, end), _down(middle, from_start=middle is edge)
    return None


MIDDLES = (EdgeRole.CENTRE, EdgeRole.CENTRE_SEAM, EdgeRole.STAND_NECK)
"""What a neckline ends at in the middle."""


def _down(middle: Edge, *, from_start: bool) -> complex:
    if middle.role is EdgeRole.STAND_NECK:  # the neckline itself goes on
        return -1j
    way = middle.path.segments[0].tangent(0.0) if from_start else -middle.path.segments[-1].tangent(1.0)
    return way / abs(way)


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
