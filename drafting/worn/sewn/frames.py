"""How each piece lies on the body, read from levels, roles and marks, and from what its block states.

A piece is drawn as the left hand hangs on the body, so the middle in front runs down along its outline and
the middle behind runs up.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import numpy as np

from drafting.draft.draft import Draft
from drafting.draft.frame import BodyFrame, BodyHeight, Limb
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import SLEEVES, SMALL, EdgeRole, Half, LevelKind, PieceRole
from drafting.geometry.curve import Points

OF_LEVEL = {
    LevelKind.BUST: BodyHeight.BUST,
    LevelKind.WAIST: BodyHeight.WAIST,
    LevelKind.HIP: BodyHeight.HIP,
    LevelKind.KNEE: BodyHeight.KNEE,
    LevelKind.ELBOW: BodyHeight.ELBOW,
    LevelKind.UPPER_ARM: BodyHeight.ARMPIT,
}

OF_CORNER = (
    (BodyHeight.NAPE, frozenset({EdgeRole.CENTRE, EdgeRole.CENTRE_SEAM}), frozenset({EdgeRole.NECK})),
    (BodyHeight.CROTCH, frozenset({EdgeRole.CROTCH}), frozenset({EdgeRole.INSEAM})),
)
"""The height at which two neighbouring edges meet that have these roles."""


def frames(draft: Draft, shell: tuple[Piece, ...]) -> dict[str, BodyFrame]:
    """Return how each piece lies on the body; `limb` is always said."""
    found = {piece.name: _frame(piece) for piece in shell}
    for _ in range(2):
        for piece in shell:
            if found[piece.name].limb is None:
                beside = [found[name].limb for name in _neighbours(draft, piece) if name in found]
                found[piece.name] = replace(found[piece.name], limb=_carried(piece, beside))
    return {name: replace(frame, limb=frame.limb or Limb.TRUNK) for name, frame in found.items()}


def _frame(piece: Piece) -> BodyFrame:
    """Return what a piece says by itself; what its block states comes first."""
    own = piece.frame or BodyFrame()
    stated = {height for height, _ in own.heights}
    heights = [(k, p) for k, p in (*_at_corners(piece), *_at_levels(piece)) if k not in stated]
    limb = own.limb or _limb(piece, {height for height, _ in heights} | stated)
    return replace(own, heights=(*own.heights, *heights), limb=limb)


def _limb(piece: Piece, heights: set[BodyHeight]) -> Limb | None:
    roles = {edge.role for edge in piece.edges}
    if piece.role in SLEEVES | {PieceRole.CUFF} or heights & {BodyHeight.ARMPIT, BodyHeight.ELBOW}:
        return Limb.ARM
    if roles & {EdgeRole.INSEAM, EdgeRole.CROTCH} or BodyHeight.KNEE in heights:
        return Limb.LEG
    return Limb.TRUNK if heights or piece.role in SMALL - {PieceRole.BAND} else None


def _carried(piece: Piece, beside: list[Limb | None]) -> Limb | None:
    """Return the limb of a piece that says nothing itself: one with a hem hangs from the trunk."""
    known = [limb for limb in beside if limb is not None]
    if not known:
        return None
    hems = any(edge.kind is EdgeKind.HEM for edge in piece.edges)
    if hems and set(known) <= {Limb.TRUNK, Limb.HANGS}:
        return Limb.HANGS
    return Limb.TRUNK if known[0] is Limb.HANGS else known[0]


def _neighbours(draft: Draft, piece: Piece) -> Iterator[str]:
    for seam in draft.seams:
        names = {name for name, _ in (*seam.a, *seam.b)}
        if piece.name in names:
            yield from names - {piece.name}


def _at_levels(piece: Piece) -> Iterator[tuple[BodyHeight, complex]]:
    for level in piece.levels:
        if level.kind in OF_LEVEL:
            points = [path.at(path.length / 2) for path in level.paths]
            yield OF_LEVEL[level.kind], complex(np.mean(points))


def _at_corners(piece: Piece) -> Iterator[tuple[BodyHeight, complex]]:
    """Yield the heights that corners of the outline lie at."""
    for edge, after in zip(piece.edges, (*piece.edges[1:], piece.edges[0]), strict=True):
        for height, one, other in OF_CORNER:
            met = (edge.role in one and after.role in other) or (edge.role in other and after.role in one)
            behind = height is not BodyHeight.NAPE or (_is_behind(edge if edge.role in one else after))
            if met and behind and piece.role not in SMALL:
                yield height, edge.path.end
        halves = {edge.half, after.half} == {Half.FRONT, Half.BACK}
        if halves and edge.role in CAPS and after.role in CAPS and piece.role is not PieceRole.UNDER_SLEEVE:
            yield BodyHeight.CROWN, edge.path.end


CAPS = frozenset({EdgeRole.CAP, EdgeRole.CAP_PART})
"""Edges whose front and back half meet at the crown."""


def _is_behind(edge: Edge) -> bool:
    """Return whether an edge on the middle lies on the back: stated, or running up."""
    if edge.half is not Half.NONE:
        return edge.half is Half.BACK
    return (edge.path.end - edge.path.start).imag > 0


def runs_behind(points: Points, half: Half, hand: str) -> bool:
    """Return whether a side on the middle lies behind: as its edge states, or by the way it runs."""
    if half is not Half.NONE:
        return half is Half.BACK
    return bool((points[-1] - points[0]).imag > 0) != (hand == "right")
