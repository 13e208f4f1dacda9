"""The lines of a fly: facing, shield and topstitching, drawn on the front's own centre edge. mm.

All lie in the frame of the front, whose fly edge runs down from the waist with the cloth on its left:

         S ---- T ---- P--- waist
           |    |    |
      fold |    |fly | inner      left of T: the shield, beyond the centre
           |    |    |            right of T: the facing, behind the front
           |    |   /
           |    E-'
         F '----' below
"""

from __future__ import annotations

from dataclasses import dataclass

from drafting.draft.piece import Edge, EdgeKind
from drafting.draft.roles import EdgeRole
from drafting.geometry import Path, line
from drafting.geometry.construct import smooth, unit

J_HEIGHT = 1.1
"""Height of the J over the width of the facing (ours: nearly a quarter circle)."""

MOST_J = 0.6
"""Share of the fly that the J may take (ours)."""


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
