"""A sleeve opened above the elbow only: its underarm seams led out to a wide cap, the forearm left as it was. mm.

The upper part of each seam is drawn anew between its two ends in the directions it had, so that what it joins runs
on smoothly; what front and back then miss each other by is made up in how far the back is led out.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace

from drafting.draft.by_role import edges_as
from drafting.draft.piece import Edge, Piece
from drafting.draft.roles import EdgeRole, Half, LevelKind
from drafting.geometry import Path, smooth
from drafting.geometry.solve import zero_between
from drafting.ground.frozen import freeze

PLAY = 40.0
"""mm: the back is led out by at most so much more or less than the front (ours)."""


@dataclass(frozen=True)
class LedOut:
    """Underarm edges by name, led out by `front` and `back` mm at the armhole; the front is `grown` mm longer."""

    edges: Mapping[str, Edge]
    front: float
    back: float
    grown: float

    def __post_init__(self) -> None:
        freeze(self, "edges")


def led_out(sleeve: Piece, by: float) -> LedOut:
    """Return the underarm edges of a one-piece sleeve led out by `by` mm on each side, from the elbow up."""
    down = _elbow_below(sleeve)
    fronts = [e for e in edges_as(sleeve, EdgeRole.UNDERARM) if e.half is Half.FRONT]
    backs = [e for e in edges_as(sleeve, EdgeRole.UNDERARM) if e.half is Half.BACK]
    top, upper = fronts[0], backs[-1]  # the front runs down from the armhole, the back up to it
    front = _front(top, down, by)
    grown = front.length - top.length

    def over(far: float) -> float:
        return _back(upper, down, far).length - upper.length - grown

    ends = over(by - PLAY), over(by + PLAY)
    far = zero_between(over, (by - PLAY, by + PLAY), ends, 1e-9) if ends[0] * ends[1] < 0 else by
    back = _back(upper, down, far)
    return LedOut({top.name: replace(top, path=front), upper.name: replace(upper, path=back)}, by, far, grown)


def _elbow_below(sleeve: Piece) -> float:
    """Return how far below the upper arm the elbow lies, mm; beyond any seam where the sleeve ends above it."""
    at = {
        level.kind: level.paths[0].end.imag
        for level in sleeve.levels
        if level.kind in (LevelKind.UPPER_ARM, LevelKind.ELBOW)
    }
    return at[LevelKind.UPPER_ARM] - at[LevelKind.ELBOW] if LevelKind.ELBOW in at else math.inf


def _front(edge: Edge, down: float, by: float) -> Path:
    """Return the front's seam, which runs down from the armhole, led out to -x above the elbow."""
    path = edge.path
    if down >= path.length:
        return Path((smooth(path.start - by, path.end, path.leave, path.arrive),))
    upper, lower = path.split(down)
    return Path((smooth(upper.start - by, upper.end, upper.leave, upper.arrive), *lower.segments))


def _back(edge: Edge, down: float, by: float) -> Path:
    """Return the back's seam, which runs up to the armhole, led out to +x above the elbow (or above its dart)."""
    path = edge.path
    if down >= path.length - 1.0:
        return Path((smooth(path.start, path.end + by, path.leave, path.arrive),))
    lower, upper = path.split(path.length - down)
    return Path((*lower.segments, smooth(upper.start, upper.end + by, upper.leave, upper.arrive)))
