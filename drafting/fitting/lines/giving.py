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


def stays_from(edge: Edge, before: Path, after: Path, *, at_start: bool) -> float | None:
    """Return the joint beyond which an edge stays that gives way at an end, mm from its start; None: all goes.

    `before` and `after` are its path as it was and as it has become, with the same joints: the place is sought on
    the mean of both, so that it is found again on the way back.
    """
    if edge.role not in UPRIGHT:
        return None
    wanted = GIVING if at_start else 1 - GIVING
    inner = range(1, len(before.segments))
    shares = {k: sum(math.fsum(p.lengths[:k]) / p.length for p in (before, after)) / 2 for k in inner}
    nearest = min(inner, key=lambda k: abs(shares[k] - wanted), default=None)
    if nearest is None or abs(shares[nearest] - wanted) > FAR:
        return None
    return math.fsum(before.lengths[:nearest])


def ready(draft: Draft, names: Iterable[str]) -> Draft:
    """Return the draft with joints where the long curves of these pieces, and of what they are sewn to, stay.

    An edge that has joints enough gets none: so the reverse, which finds those of the way there, adds none to
    them, and the edge is moved by the same curves.
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
    if edge.role not in UPRIGHT or not curved or len(path.segments) >= ENOUGH:
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

GIVING, NEAR, FAR = 0.4, 0.05, 0.2
"""Of a curve that is made longer or shorter the first share alone gives way; where there is no joint within the
second share of it one is added, and one within the third is taken for the place (ours)."""

ENOUGH = 3
"""Segments: a curve that has so many has joints enough."""
