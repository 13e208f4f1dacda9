"""The lines of a collar: a stand that rises in front, a fall that spreads over it. mm, half a collar.

Centre back on x = 0, the front towards -x, the neck edge below. The back of the stand runs straight,
its front bends up (so it leans to the neck); the fall's lower edge bends the other way, so that its
outer edge is longer and lies over the shoulders.
"""

from __future__ import annotations

import cmath
import math
from dataclasses import dataclass

from drafting.geometry import Path, line, smooth, solve, turn
from drafting.geometry.curve import Line
from drafting.geometry.solve import zero_between
from drafting.ground.findings import Finding
from drafting.ground.lengths import told

STRAIGHT = 0.7
"""Share of the back neck along which a stand is straight (ours, by eye)."""

ARRIVES = 1.7
"""The bend ends this many times as steep as its chord (2 would be an arc; ours, by eye)."""

FRONT_HEIGHT = 0.85
"""Height of a stand at the centre front over that at the back (ours, by eye)."""

ROUND = 0.95
"""How nearly square to the neck edge a rounded stand ends (ours)."""


LEAST_RISE, MOST_RISE = -0.08, 0.5
"""Rise over what of the neck edge bends: from a little outwards to some 45 degrees of turn (ours)."""

PLAY = 3.0
"""mm: how far a collar's ease may lie from what was asked before it is a warning (ours)."""


@dataclass(frozen=True)
class Stand:
    """A half stand: `neck` runs front to back, `top` back to centre front, `front` down from there."""

    neck: Path
    top: Path
    front: Path
    rise: float


@dataclass(frozen=True)
class StandEdges:
    """What a half stand has to be, mm: `length` of its neck edge from centre back to front edge, the
    `back` neck's share of it, `extension` past the centre front, `height` at the centre back."""

    length: float
    back: float
    extension: float
    height: float


@dataclass(frozen=True)
class HalfFall:
    """A half fall: `stand` edge front to back, `outer` back to the point, `front` point to stand."""

    stand: Path
    outer: Path
    front: Path


def rising_line(length: float, straight: float, rise: float, what: str) -> Path:
    """Return a line of exactly `length` mm from 0 towards -x: straight first, then rising by `rise`.

    A negative rise falls. The run is solved; raises `DraftError` where the length is too short.
    """
    start = complex(-straight, 0)

    def drawn(run: float) -> Path:
        end = start + complex(-run, rise)
        steep = math.atan2(abs(rise), run) * ARRIVES * (1 if rise > 0 else -1)
        arrive = turn(180 - math.degrees(steep))
        head = (Line(0j, start),) if straight > 0 else ()
        return Path((*head, smooth(start, end, -1 + 0j, arrive)))

    rest = length - straight
    run = solve(
        lambda x: drawn(x).length,
        length,
        (0.5 * rest, rest),
        what=what,
        within=1e-10,
        turn="choose less rise, or a wider neck",
    )
    return drawn(run)


def stand_for(edges: StandEdges, top: float) -> Stand:
    """Return the stand whose half top is `top` mm long, from centre back to centre front, by its rise;
    where no rise within reach does it, the one that comes nearest."""
    room = edges.length - STRAIGHT * edges.back
    low, high = LEAST_RISE * room, MOST_RISE * room

    def over(rise: float) -> float:
        return stand_lines(edges, rise).top.length - top

    ends = over(low), over(high)
    if ends[0] * ends[1] >= 0:
        return stand_lines(edges, low if abs(ends[0]) < abs(ends[1]) else high)
    return stand_lines(edges, zero_between(over, (low, high), ends, 1e-9))


def collar_said(stand: Stand, neck: float, asked: float) -> Finding:
    """Tell how long the buttoned stand's top is against the `neck` girth (mm); a warning where it lies
    farther from what was `asked` than a finger's play."""
    top = 2 * stand.top.length
    ease = top - neck
    text = (
        f"Buttoned, the stand's top is {told(top)} round and the neck {told(neck)}: {told(ease)} of ease "
        f"({told(asked)} asked)."
    )
    if abs(ease - asked) <= PLAY:
        return Finding("collar top", "note", "collar-stand", ease, asked, text)
    text += (
        " The neckline is so much longer that no stand leans in as far: ask for less neck ease, or a higher stand."
        if ease > asked
        else " The stand stands closer than that: ask for less rise or more neck ease."
    )
    return Finding("collar top", "warning", "collar-stand", ease, asked, text)


def deeper_said(depth: float, asked: float, stand: float) -> Finding:
    """Tell that a fall was made `depth` mm deep instead of what was `asked`, over a stand of that height."""
    text = (
        f"The fall is drafted {told(depth)} deep at the centre back instead of {told(asked)}, so that it covers "
        f"the seam of the {told(stand)} stand."
    )
    return Finding("collar fall", "note", "collar", depth, asked, text)


def stand_lines(edges: StandEdges, rise: float) -> Stand:
    """Return the stand that rises by `rise` mm to the front; its top is cut off there by a rounded end."""
    back, extension, height = edges.back, edges.extension, edges.height
    length = edges.length
    neck = rising_line(length, STRAIGHT * back, rise, "collar stand")
    centre = length - extension
    up = neck.tangent(centre) * -1j  # the neck is drawn backwards here, the cloth on its right
    corner = neck.at(centre) + FRONT_HEIGHT * height * up
    high = complex(-STRAIGHT * back, height)
    top = Path((Line(1j * height, high), smooth(high, corner, -1 + 0j, neck.tangent(centre))))
    if extension <= 0:
        front = line(corner, neck.end)
    else:
        down = neck.arrive * cmath.exp(1j * math.pi / 2 * ROUND)
        front = Path((smooth(corner, neck.end, neck.tangent(centre), down),))
    return Stand(neck.reversed(), top, front, rise)


def fall_lines(length: float, back: float, depth: float, drop: float, point: float, spread: float) -> HalfFall:
    """Return the fall whose lower edge is `length` mm from centre back to centre front.

    `depth` is its height at the centre back, `drop` how far its lower edge falls to the front,
    `point` the length of its front edge and `spread` how far that leans forward, degrees.
    """
    lower = rising_line(length, 0.5 * back, -drop, "collar fall")
    up = lower.arrive * -1j
    tip = lower.end + point * up * turn(spread)
    chord = tip - 1j * depth
    arrive = -((chord / abs(chord)) ** 2)  # an arc: leaves square to the centre back
    outer = Path((smooth(1j * depth, tip, -1 + 0j, arrive),))
    return HalfFall(lower.reversed(), outer, line(tip, lower.end))
