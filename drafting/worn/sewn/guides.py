"""Lines inside a piece that vertices have to follow: roll lines, bones, and the middle of the body."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

import numpy as np

from drafting.draft.by_role import edges_as
from drafting.draft.draft import EdgeRef
from drafting.draft.frame import BodyFrame, BodyHeight
from drafting.draft.roles import EdgeRole
from drafting.geometry import Path
from drafting.geometry.area import Region
from drafting.geometry.curve import Points
from drafting.shaping.coat.hem_braid import HEM_BRAID
from drafting.worn.sewn.folds import REACH, runs_on_rim
from drafting.worn.sewn.rings import PieceRing, fine, place_on

ROLL, BONE, CENTRE, BUTTON, HOLE, CLOSING = "roll line", "bone", "centre", "button", "buttonhole", "closing line"
"""Kinds of marks that are followed, or read (`Placement.what`)."""

FRONT, BACK = "middle in front", "middle behind"
"""What the lines are called that a frame states."""


def inner_lines(ring: PieceRing, frame: BodyFrame) -> dict[str, Points]:
    """Return the lines inside a piece by name, from rim to rim where they reach it."""
    region = Region.of(ring.outline)
    cut = {done.name for done in ring.cuts}
    followed: tuple[str, ...] = (ROLL, BONE, HEM_BRAID)
    followed += () if frame.front or frame.back else (CENTRE,)
    marks = [m for m in ring.piece.placements if m.what in followed and m.name not in cut]
    drawn = {mark.name: fine(mark.path) for mark in marks}
    drawn |= {name: np.array(line) for name, line in ((FRONT, frame.front), (BACK, frame.back)) if line}
    found = {}
    for name, line in drawn.items():
        across = region.across(_longer(line), REACH) if name in (FRONT, BACK) else None
        if across is None:
            across = region.across(line, REACH)
        inside = line if region.holds(line).all() else None
        kept = inside if across is None else across
        if kept is not None and not runs_on_rim(region, kept):
            found[name] = kept
    return found


def _longer(line: Points) -> Points:
    """Return a straight with `STATED_SHORT` more at each end: a block may state it from the shoulder down.

    It then meets the rim where it runs to; the rim's nearest place to its end may lie beside it.
    """
    more = STATED_SHORT * (line[-1] - line[0]) / abs(line[-1] - line[0])
    return np.array([line[0] - more, line[-1] + more])


STATED_SHORT = 60.0
"""mm: how far a stated middle may end short of the outline (ours)."""


def marked_ends(
    rings: Mapping[str, PieceRing], lines: Mapping[str, Mapping[str, Points]], apart: float
) -> dict[EdgeRef, list[float]]:
    """Return where lines inside end on the sides, mm along what is left of each: vertices have to stand there."""
    marks: dict[EdgeRef, list[float]] = {}
    for name, ring in rings.items():
        for line in lines[name].values():
            for ref, way in _ends(ring, line, apart):
                marks.setdefault(ref, []).append(way)
    return marks


def _ends(ring: PieceRing, line: Points, apart: float) -> Iterator[tuple[EdgeRef, float]]:
    for end in (line[0], line[-1]):
        index, way, gap = place_on(ring, end)
        if gap < REACH and apart < way < ring.sides[index].length - apart:
            yield (ring.piece.name, ring.sides[index].name), way


def with_middle(ring: PieceRing, frame: BodyFrame) -> BodyFrame:
    """Return the frame with the middle that a piece was opened out over, unless its block states one.

    The mark runs as the left hand's outline does: down in front, up behind.
    """
    cut = {done.name for done in ring.cuts}
    marks = [mark.path for mark in ring.piece.placements if mark.what == CENTRE and mark.name not in cut]
    if not marks or ring.piece.hand or frame.front or frame.back:
        return frame
    line = (marks[0].start, marks[0].end)
    if line[1].imag <= line[0].imag:
        return replace(frame, front=line)
    necks = [edge for edge in edges_as(ring.piece, EdgeRole.NECK) if _ends_at(edge.path, line[1])]
    nape = ((BodyHeight.NAPE, line[1]),) if necks and frame.at(BodyHeight.NAPE) is None else ()
    return replace(frame, back=line, heights=(*nape, *frame.heights))


def _ends_at(path: Path, place: complex) -> bool:
    return min(abs(path.start - place), abs(path.end - place)) < REACH
