"""How long a fly may be, and its lines: facing, shield and topstitching on the front's centre edge. mm.

All lines lie in the frame of the front, whose fly edge runs down from the waist with the cloth on its left:

         S ---- T ---- P--- waist
           |    |    |
      fold |    |fly | inner      left of T: the shield, beyond the centre
           |    |    |            right of T: the facing, behind the front
           |    |   /
           |    E-'
         F '----' below
"""

from __future__ import annotations

import cmath
import math
from dataclasses import dataclass, replace

from drafting.draft.by_role import the_edge
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import EdgeRole
from drafting.geometry import Path, line
from drafting.geometry.construct import smooth, unit

J_HEIGHT = 1.1
"""Height of the J over the width of the facing (ours: nearly a quarter circle)."""

MOST_J = 0.6
"""Share of the fly that the J may take (ours)."""

LEAST_FLY, MOST_FLY = 150.0, 200.0
"""mm at adult scale: how long a trouser's fly is (common practice: 150 to 200)."""

TURNED, MOST_TURNED = 30.0, 85.0
"""degrees: a fly ends where the crotch curve has turned so far, and so far at most where it would be too
short otherwise (ours: a zip still lies well in a curve that has turned by a third of a right angle)."""


def fly_room(centre: Path, least: float, needed: float) -> float:
    """Return how long a fly may get, mm, on a `centre` front that runs down from the waist.

    It ends where the crotch curve turns, or farther down until it has its `least` length or passes the
    hip (`needed`), both while the curve allows it at all.
    """
    return max(_turned_at(centre, TURNED), min(max(least, needed), _turned_at(centre, MOST_TURNED)))


def _turned_at(centre: Path, by: float) -> float:
    """Return how far down a centre edge, which bends one way, has turned by so many degrees, mm."""
    low, high = 0.0, centre.length
    for _ in range(24):
        middle = (low + high) / 2
        turned = abs(math.degrees(cmath.phase(centre.tangent(middle) / centre.leave)))
        low, high = (middle, high) if turned < by else (low, middle)
    return low


def centre_front(front: Piece) -> Path:
    """Return the centre front from the waist down to the fork."""
    return Path.joined([the_edge(front, role).path for role in (EdgeRole.FLY, EdgeRole.CROTCH)])


def opened_front(front: Piece, length: float, allowance: float) -> Piece:
    """Return the front open for `length` mm from the waist; the rest is crotch seam."""
    high, low = centre_front(front).split(length)
    fly = replace(the_edge(front, EdgeRole.FLY), path=high, kind=EdgeKind.SEAM, allowance=allowance)
    return front.with_edges(fly, replace(the_edge(front, EdgeRole.CROTCH), path=low))


@dataclass(frozen=True)
class FlyLines:
    """What a fly is built on: the `fly` edge down from the waist, and the `waist` that ends at it."""

    fly: Path
    waist: Path

    @property
    def top(self) -> complex:
        return self.fly.start

    @property
    def end(self) -> complex:
        return self.fly.end


def inner_line(lines: FlyLines, width: float) -> Path:
    """Return the line from the fly's end in a J up to the waist, `width` mm from the centre there."""
    down = lines.fly.leave
    top = behind_waist(lines, width).start
    deep = ((lines.end - top) / down).real
    foot = top + down * (deep - min(J_HEIGHT * width, MOST_J * deep))
    bend = smooth(lines.end, foot, 1j * lines.fly.arrive, -down)
    return Path((bend, *line(foot, top).segments))


def behind_waist(lines: FlyLines, width: float) -> Path:
    """Return the last `width` mm of the waist; square to the fly where that is shorter."""
    length = lines.waist.length
    if length > width:
        return lines.waist.split(length - width)[1]
    return line(lines.top + 1j * lines.fly.leave * width, lines.top)


def fly_facing_edges(lines: FlyLines, width: float, waist_allowance: float) -> tuple[Edge, ...]:
    """Return the facing as it lies behind the front; its waist is caught in the waist's seam."""
    waist = behind_waist(lines, width)
    return (
        Edge("waist", waist, EdgeKind.FREE, allowance=waist_allowance, role=EdgeRole.WAIST),
        Edge("fly", lines.fly, role=EdgeRole.FLY),
        Edge("inner", inner_line(lines, width), EdgeKind.FREE, role=EdgeRole.INNER),
    )


def shield_edges(lines: FlyLines, width: float, longer: float, banded: bool, allowance: float) -> tuple[Edge, ...]:
    """Return half of the shield, beyond the centre with its outer edge on the fold of the cloth.

    It is `width` mm wide at the waist and reaches `longer` mm below the fly. `banded` says that the
    waist is sewn to a band's underlap. `allowance` is that of the short edge below the fly.
    """
    down = unit(lines.end - lines.top)
    side = lines.top - 1j * down * width
    low = lines.end + lines.fly.arrive * longer
    foot = side + down * ((low - lines.top) / down).real
    waist = EdgeKind.SEAM if banded else EdgeKind.OPENING
    return (
        Edge("fly", lines.fly.reversed(), role=EdgeRole.FLY),
        Edge("waist", line(lines.top, side), waist, role=EdgeRole.WAIST),
        Edge("fold", line(side, foot), EdgeKind.FOLD),
        Edge("bottom", line(foot, low), role=EdgeRole.BOTTOM),
        Edge("below", line(low, lines.end), EdgeKind.FREE, allowance=allowance),
    )
