"""Which part of an edge gives way where it is made longer or shorter at one end, and which stays."""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable
from dataclasses import replace

from drafting.draft.draft import Draft
from drafting.draft.piece import Edge, Piece
from drafting.draft.roles import EdgeRole
from drafting.geometry import Cubic, Path


def stays_from(edge: Edge, *, at_start: bool) -> float | None:
    """Return the joint (mm from its start) beyond which an edge stays that gives way at an end; None: all goes."""
    wanted = (GIVING if at_start else 1 - GIVING) * edge.length
    joints = list(itertools.accumulate(edge.path.lengths[:-1]))
    nearest = min(joints, key=lambda at: abs(at - wanted), default=math.inf)
    if edge.role not in UPRIGHT:
        return None
    return nearest if abs(nearest - wanted) <= NEAR * edge.length else None


def ready(draft: Draft, names: Iterable[str]) -> Draft:
    """Return the draft with joints where the long curves of these pieces, and of what they are sewn to, stay.

    Which share of an edge gives way then hangs on its length, not on the joints that its path happens to have:
    so the reverse finds the same places again.
    """
    asked = set(names)
    sewn = {n for s in draft.seams for n, _ in (*s.a, *s.b) if asked & {name for name, _ in (*s.a, *s.b)}}
    return draft.with_pieces(_ready(draft[name]) for name in sorted(asked | sewn))


def _ready(piece: Piece) -> Piece:
    edges = tuple(_with_joints(edge) for edge in piece.edges)
    same = all(one is other for one, other in zip(edges, piece.edges, strict=True))
    return piece if same else replace(piece, edges=edges)


def _with_joints(edge: Edge) -> Edge:
    path = edge.path
    curved = any(isinstance(segment, Cubic) for segment in path.segments)
    if edge.role not in UPRIGHT or not curved:
        return edge
    for wanted in (GIVING * edge.length, (1 - GIVING) * edge.length):
        joints = itertools.accumulate(path.lengths[:-1])
        if all(abs(at - wanted) > NEAR * edge.length for at in joints):
            path = Path.joined(path.split(wanted))
    return edge if path is edge.path else replace(edge, path=path)


UPRIGHT = frozenset(
    {
        EdgeRole.SIDE,
        EdgeRole.PANEL,
        EdgeRole.PRINCESS,
        EdgeRole.CENTRE_SEAM,
        EdgeRole.CROTCH,
        EdgeRole.INSEAM,
        EdgeRole.UNDERARM,
        EdgeRole.ARM_SEAM,
    }
)
"""Edges that run up the body: of these a share gives way; a shoulder, a hem, a neck goes along as a whole."""

GIVING, NEAR = 0.4, 0.05
"""Of a curve that is made longer or shorter the first share alone gives way; a joint no farther off than the
second share of it is taken for the place (ours)."""
