"""Other ways to the same hem: seams shaped from a depth down, godets, and uncut cloth.

Straight seams (`flare.bent_panels`) re-curve the waist edge; these leave it alone, or need no seam.

shaped   seams straight to a depth, then swung outwards, mirror images: equal by construction
godet    a sector of cloth let into the lower part of each seam of the plain tail
uncut    the bend spread evenly over one piece: slash and spread without end
"""

from __future__ import annotations

import cmath
import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from drafting.geometry import Cubic, Path, line, solve
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.shaping.flare.plain_tail import PlainTail
from drafting.shaping.flare.tail_bend import TailPanel, bent_panels

MOST_SWING = 45.0
"""degrees: a shaped seam that leans out more at the hem is no seam any more (ours)."""


@dataclass(frozen=True)
class Godet:
    """A sector let into a seam: its angle (degrees) and its outline parts, point upwards."""

    angle: float
    left: Path
    right: Path
    hem: Path


def shaped_panels(
    tail: PlainTail, cuts: Sequence[float], flare: Sequence[float], start: float
) -> tuple[TailPanel, ...]:
    """Return panels whose inner seams swing out below the share `start` of their length.

    Each seam is cut off at its ruling's length and its hem squared to it; one common factor on all
    swings makes the whole sweep grow by the sum of the flare exactly.
    """
    plain = bent_panels(tail, cuts, [0.0] * len(cuts))
    if not any(flare[1:-1]):
        return plain

    def swung(factor: float) -> tuple[TailPanel, ...]:
        amounts = [0.0, *(factor * f / 2 for f in flare[1:-1]), 0.0]
        ends = zip(plain, pairwise(amounts), strict=True)
        return tuple(_swung(panel, *pair, start) for panel, pair in ends)

    wanted = sum(p.hem_plain for p in plain) + sum(flare[1:-1])
    factor = solve(
        lambda x: sum(p.hem.length for p in swung(x)),
        wanted,
        (0.2, 3.0),
        what="swing of the seams",
        turn="choose less flare, or let the seams swing from higher up",
    )
    panels = swung(factor)
    steepest = max(abs(_lean_angle(p)) for panel in panels for p in (panel.back, panel.front))
    if steepest > MOST_SWING:
        raise DraftError(
            "shaped seams would have to swing out too far",
            value=f"{steepest:.0f} degrees at the hem",
            reach=f"up to {MOST_SWING:.0f} degrees",
            turn="choose less flare or more seams, let the seams swing from higher up, or take straight seams",
        )
    return panels


def _lean_angle(seam: Path) -> float:
    return math.degrees(cmath.phase(seam.arrive / seam.leave))


def _swung(panel: TailPanel, back: float, front: float, start: float) -> TailPanel:
    left, right = _seam(panel.back, -back, start), _seam(panel.front, front, start)
    at_back = panel.hem.leave * _lean(panel.back, left)
    at_front = panel.hem.arrive * _lean(panel.front, right)
    return TailPanel(panel.waist, _arc(left.end, right.end, at_back, at_front), left, right, panel.hem_plain)


def _lean(plain: Path, swung: Path) -> complex:
    return swung.arrive / plain.arrive


def _seam(plain: Path, swing: float, start: float) -> Path:
    """Return the seam swung by `swing` mm (to its left, looking down) at its end, cut to its length."""
    if swing == 0.0:
        return plain
    length, down = plain.length, plain.leave
    top, rest = start * length, (1 - start) * length
    aside = 1j * down * swing
    knee = plain.start + down * top

    def lower(run: float) -> Cubic:
        """The parabola aside = swing (x / rest)^2 from 0 to `run`, as its exact cubic."""
        out = aside * (run / rest) ** 2
        end = knee + down * run + out
        return Cubic(knee, knee + down * run / 3, end - (down * run + 2 * out) / 3, end)

    run = solve(
        lambda x: lower(x).length,
        rest,
        (0.2 * rest, rest),
        what="end of a shaped seam",
        turn="choose less flare, or let the seams swing from higher up",
    )
    head = line(plain.start, knee).segments if top > 1e-6 else ()
    return Path((*head, lower(run)))


def _arc(a: complex, b: complex, leave: complex, arrive: complex) -> Path:
    """Return the hem from `a` to `b`: handles as those of a circle's arc of this turn."""
    bend_angle = abs(cmath.phase(arrive / leave))
    share = 1 / 3 if bend_angle < 1e-6 else 2 / 3 * math.tan(bend_angle / 4) / math.sin(bend_angle / 2)
    handle = share * abs(b - a)
    return Path((Cubic(a, a + leave * handle, b - arrive * handle, b),))


def godet(length: float, width: float) -> Godet:
    """Return the godet for a slit of `length` mm whose curved hem is `width` mm.

    A sector: angle = width / length (radians). Its straight hem would be a chord, and too short.
    """
    angle = width / length
    if angle > 1.5 * math.pi:
        raise DraftError(
            "a godet cannot be wider than three quarters of a circle",
            value=f"{told(width)} in a slit of {told(length)}",
            reach=f"up to {told(1.5 * math.pi * length, 'most')}",
            turn="let it in higher, or give it less",
        )
    parts = max(1, math.ceil(angle / math.radians(45)))
    start = -1j * cmath.exp(-0.5j * angle) * length
    step = cmath.exp(1j * angle / parts)
    rays = [start * step**k for k in range(parts + 1)]
    hem = Path.joined(_arc(a, b, a / abs(a) * 1j, b / abs(b) * 1j) for a, b in pairwise(rays))
    return Godet(math.degrees(angle), line(0j, rays[0]), line(rays[-1], 0j), hem)


MOST_TURN = 300.0
"""degrees: a piece in one that turns more would lie over itself (ours)."""


def uncut_tail(tail: PlainTail, total: float, longer: float = 1.0) -> TailPanel:
    """Return the whole tail as one piece whose hem grows by `total` mm, spread evenly.

    Raises `DraftError` where it would turn so far as to lie over itself.
    """
    short = tail.length_at(tail.width / 2)
    if total / short > math.radians(MOST_TURN):
        raise DraftError(
            "so much flare cannot be cut in one piece",
            value=f"{told(total)} on a tail of {told(short)}",
            reach=f"up to {told(math.radians(MOST_TURN) * short, 'most')}",
            turn="give it less, or cut it in panels",
        )
    return bent_panels(tail, (0.0, tail.width), (total / 2, total / 2), longer)[0]
