"""What is faced in one piece: edges that go on one after the other once darts and seams between them are sewn.

A facing is cut from the sewn edge: the panels are laid together along the seam between them, a dart is
laid shut (common practice), so that neither lies twice under the turned edge.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from drafting.draft.chain import laid_end_to_end
from drafting.draft.draft import Draft, EdgeRef
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.geometry import Path, line

EdgeRun = tuple[EdgeRef, ...]
"""Edges that are faced by one piece, in outline order."""

WHOLE = (PieceRole.FRONT, PieceRole.BACK)
"""Pieces that the others of a run are laid to: the facing has their grain and their name."""

MIDDLE = (EdgeRole.CENTRE, EdgeRole.CENTRE_SEAM, EdgeRole.FRONT_EDGE, EdgeRole.STAND_NECK)
"""What lies beside a run at the middle of the body: the centre, or the stand that goes on from it."""


def runs(draft: Draft, refs: Sequence[EdgeRef]) -> list[EdgeRun]:
    """Return the edges, those together that one sewn dart or seam parts."""
    found: list[EdgeRun] = []
    for ref in refs:
        if found and _sewn_between(draft, found[-1][-1], ref):
            found[-1] = (*found[-1], ref)
        else:
            found.append((ref,))
    return found


def _sewn_between(draft: Draft, one: EdgeRef, other: EdgeRef) -> bool:
    """Say whether what follows `one` is sewn to what comes before `other`."""
    ends = (one[0], _beside(draft, one, 1).name), (other[0], _beside(draft, other, -1).name)
    return any(a in seam.a and b in seam.b for seam in draft.seams for a, b in (ends, ends[::-1]))


def _beside(draft: Draft, ref: EdgeRef, step: int) -> Edge:
    piece = draft[ref[0]]
    return piece.edges[(piece.index(ref[1]) + step) % len(piece.edges)]


def name_of(run: EdgeRun, role: EdgeRole) -> str:
    """Return what the facing's edge along a run of this role is called."""
    return run[0][1] if len(run) == 1 else role.replace(" ", "_")


def laid_together(draft: Draft, run: EdgeRun, role: EdgeRole) -> Piece:
    """Return a piece that has the whole run as one edge: the piece itself, if it has only this one; else
    the run, its neighbours on either side and a straight that closes it.

    `role` is the run's; the pieces lie as the front's or back's own piece does, with the middle of the body
    where it has it.
    """
    if len(run) == 1:
        return draft[run[0][0]]
    at = _base(draft, run)
    base = draft[run[at][0]]
    paths = [draft.edge(ref).path for ref in run]
    onward = laid_end_to_end(paths[at:])
    back = laid_end_to_end([path.reversed() for path in paths[at::-1]]).reversed()
    whole = Path((*back.segments, *onward.segments[len(paths[at].segments) :]))
    before, after = _beside(draft, run[0], -1), _beside(draft, run[-1], 1)
    first = _carried(before, paths[0].start, whole.start, whole.leave / paths[0].leave)
    last = _carried(after, paths[-1].end, whole.end, whole.arrive / paths[-1].arrive)
    ring = (
        first,
        Edge(name_of(run, role), whole, role=role),
        last,
        Edge("closing", line(last.path.end, first.path.start), EdgeKind.FREE),
    )
    return replace(base, edges=ring, levels=(), darts=(), placements=())


def _base(draft: Draft, run: EdgeRun) -> int:
    """Return which edge of a run lies as it is drawn: the one beside the middle, so that a fold or an opening
    stays on the warp where a dart is laid shut; else the first of a front or a back."""
    ends = ((0, -1), (len(run) - 1, 1))
    middle = [i for i, step in ends if _is_middle(_beside(draft, run[i], step))]
    whole = [i for i in (*middle, *range(len(run))) if draft[run[i][0]].role in WHOLE]
    return whole[0] if whole else 0


def _is_middle(edge: Edge) -> bool:
    return edge.kind is EdgeKind.FOLD or edge.role in MIDDLE


def _carried(edge: Edge, start: complex, to: complex, factor: complex) -> Edge:
    """Return a neighbouring edge as it lies once the run has been laid together."""
    return replace(edge, path=edge.path.mapped(lambda p: to + (p - start) * factor))
