"""The point of a piece that stays where it is on the body while the piece is drafted anew."""

from __future__ import annotations

from itertools import pairwise

from drafting.draft.frame import BodyHeight
from drafting.draft.piece import Edge, Piece
from drafting.draft.roles import EdgeRole, LevelKind, NotchKind

CORNERS = (
    {EdgeRole.CENTRE, EdgeRole.NECK},
    {EdgeRole.CENTRE_SEAM, EdgeRole.NECK},
    {EdgeRole.STAND_NECK, EdgeRole.NECK},
    {EdgeRole.NECK},
    {EdgeRole.FRONT_EDGE, EdgeRole.NECK},
    {EdgeRole.GORGE, EdgeRole.NECK},
    {EdgeRole.CENTRE, EdgeRole.COLLAR_NECK},
    {EdgeRole.WAIST, EdgeRole.SIDE},
    {EdgeRole.WAIST, EdgeRole.CENTRE_SEAM},
    {EdgeRole.CROTCH, EdgeRole.INSEAM},
    {EdgeRole.CAP},
    {EdgeRole.CAP, EdgeRole.CAP_PART},
    {EdgeRole.CAP_PART},
    {EdgeRole.WAIST, EdgeRole.FRONT},
    {EdgeRole.SHOULDER, EdgeRole.NECK},
    {EdgeRole.SHOULDER, EdgeRole.ARMHOLE},
    {EdgeRole.CENTRE, EdgeRole.HEM},
)
"""The roles of two edges that meet in a landmark, the surest first: the neck at the centre, the waist at
the side, the fork of a leg, a sleeve's crown (ours)."""


CROWN = BodyHeight.CROWN.value
"""The point of a piece that is its crown: a sleeve turned in its armhole parts its cap elsewhere."""


def landmarks(piece: Piece, other: Piece) -> tuple[complex, complex]:
    """Return one and the same landmark of two drafts of a piece, mm, where it lies in each.

    It is found by what edges, marks and levels were declared to be; where nothing was, it is the first
    corner between two edges that both drafts call alike, or at last the middle of each.
    """
    if CROWN in piece.points and CROWN in other.points:
        return piece.points[CROWN], other.points[CROWN]
    for roles in CORNERS:
        at, there = _corner(piece, roles), _corner(other, roles)
        if at is not None and there is not None:
            return at, there
    for found in (_crown, _waist):
        at, there = found(piece), found(other)
        if at is not None and there is not None:
            return at, there
    alike = _named_corners(other)
    for names, at in _named_corners(piece).items():
        if names in alike:
            return at, alike[names]
    return _middle(piece), _middle(other)


def _meeting(piece: Piece) -> list[tuple[Edge, Edge]]:
    return list(pairwise((*piece.edges, piece.edges[0])))


def _corner(piece: Piece, roles: set[EdgeRole]) -> complex | None:
    found = (edge.path.end for edge, after in _meeting(piece) if {edge.role, after.role} == roles)
    return next(found, None)


def _crown(piece: Piece) -> complex | None:
    marks = ((edge, notch) for edge in piece.edges for notch in edge.notches if notch.kind is NotchKind.CROWN)
    return next((edge.path.at(notch.at) for edge, notch in marks), None)


def _waist(piece: Piece) -> complex | None:
    levels = (level for level in piece.levels if level.kind is LevelKind.WAIST and level.paths)
    return next((level.paths[0].at(level.paths[0].length / 2) for level in levels), None)


def _named_corners(piece: Piece) -> dict[tuple[str, str], complex]:
    return {(edge.name, after.name): edge.path.end for edge, after in _meeting(piece)}


def _middle(piece: Piece) -> complex:
    x0, y0, x1, y1 = piece.outline.bounds
    return complex(x0 + x1, y0 + y1) / 2
