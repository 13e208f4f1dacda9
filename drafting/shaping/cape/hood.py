"""The lines of a hood: half of it, seen from the side, the face to the left. mm.

The neck edge is solved to the neck line it is sewn to; the middle seam runs from the nape over the crown to the
brow. Heights and depths come from the head; their rules are common practice, held by what a hood measures.
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.body import Body
from drafting.geometry import Path, smooth, solve, turn
from drafting.ground.scale import body_scale

OVER_CROWN = 110.0
"""mm at adult scale: the face edge is so much longer than the crown lies above the nape: 75 down to the pit of
the neck, the rest to sink and to move in (common practice: 33 to 37 cm in all for an adult)."""

DEPTH, ROUND_HEAD = 0.5, -25.0
"""The hood's depth: half the head's girth and so many mm at adult scale (common practice: 24 to 27 cm)."""

ADULT_HEAD, ADULT_HEIGHT, HEAD_SHRINKS = 570.0, 1700.0, 0.35
"""mm, and the power of the height by which a head that nobody measured is smaller (ours: 50 cm at 116 cm)."""

TALL = 0.42
"""Of the head's girth: the crown lies at least so far above the nape (ours: 24 cm over 57; a child's estimated
nape can lie higher)."""

NECK_RISE = 0.13
"""How far the neck edge rises to the nape, of its length (ours, by eye: the pit of the neck lies lower)."""

FULLEST = 0.58
"""Of its height: where a hood is deepest (ours, by eye)."""


@dataclass(frozen=True)
class Hood:
    """Half a hood: `neck` from the front to the nape, `middle` from there over the crown to the brow."""

    neck: Path
    middle: Path
    height: float
    depth: float


def head_girth(body: Body) -> float:
    """Return the head's girth, mm; by the height where nobody measured it."""
    if "head_girth" in body:
        return body["head_girth"]
    return float(ADULT_HEAD * (body["height"] / ADULT_HEIGHT) ** HEAD_SHRINKS)


def hood_lines(body: Body, neck: float, more: float) -> Hood:
    """Return the hood for half a neck line of `neck` mm, `more` mm higher and deeper than it has to be."""
    scale = body_scale(body)
    head = head_girth(body)
    tall = max(body["height"] - body["nape_height"], TALL * head)
    height = tall + OVER_CROWN * head / ADULT_HEAD + more
    depth = DEPTH * head + ROUND_HEAD * scale + more
    rise = NECK_RISE * neck

    def edge(run: float) -> Path:
        return Path((smooth(0j, complex(run, rise), turn(-4.0), turn(2 * 8.0 + 4.0)),))

    run = solve(lambda x: edge(x).length, neck, (0.7 * neck, neck), what="neck of the hood")
    low = edge(run)
    depth = max(depth, run + 10.0 * scale)
    full = complex(depth, rise + FULLEST * (height - rise))
    middle = Path((smooth(low.end, full, 1j * low.arrive, 1j), smooth(full, complex(0.0, height), 1j, -1 + 0j)))
    return Hood(low, middle, height, depth)
