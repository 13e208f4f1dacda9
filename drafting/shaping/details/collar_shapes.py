"""Wings on a stand, a collar that lies flat, and rounded ends. mm, half a collar, centre back on x = 0.

A flat collar is laid out as the trade does it: back and front necklines joined at the neck point, the shoulders
lapped over each other at their tips; its neck edge is that line, made smooth, and as long as the neckline. A wing
is the tip of a stand that is folded outwards over a roll line.
"""

from __future__ import annotations

import cmath
import math
from dataclasses import dataclass

from drafting.draft.chain import laid_end_to_end
from drafting.geometry import Path, curve_through, line, smooth, turn, unit
from drafting.geometry.construct import Directed
from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.shaping.details.buttons import Button
from drafting.shaping.details.collar_lines import ROUND, Stand

SPRINGS = 0.6
"""Height at which a wing leaves the centre front over that of the stand there (ours, by eye)."""

BLENDS = 0.35
"""Share of each neckline that is drawn anew where back and front of a flat collar are joined (ours)."""

ROUND_BUTTON = 4.0
"""mm: what a button's place is higher than the button, half above and half below (ours)."""

ROUNDED = 0.6
"""Share of the shorter one that a rounded end takes of front and outer edge (ours, by eye)."""


@dataclass(frozen=True)
class Wing:
    """A stand's front with a wing: `top` from the centre back to the roll line, `upper` on to the `tip`, `fore`
    from there to the centre front, `front` down to the neck; `roll` is the line it is folded over, upwards."""

    top: Path
    upper: Path
    fore: Path
    front: Path
    roll: Path


def wing_lines(stand: Stand, extension: float, width: float, length: float, spread: float) -> Wing:
    """Return the wing of a stand that runs on by `extension` past the centre front. mm.

    `width` of its top edge is folded over; its front edge is `length` long and points down once folded, `spread`
    degrees outwards from the centre line.
    """
    centre, back = stand.neck.at(extension), stand.neck.tangent(extension)
    up = unit(stand.top.end - centre)
    springs = centre + SPRINGS * (stand.top.end - centre)
    top, _ = stand.top.split(stand.top.length - min(width, 0.5 * stand.top.length))
    way = unit(top.end - springs)
    folded = -up * math.cos(math.radians(spread)) + back * math.sin(math.radians(spread))
    tip = springs + length * way * (folded / way).conjugate()
    ends = stand.neck.start
    if extension > 0:
        down = -stand.neck.leave * cmath.exp(1j * math.pi / 2 * ROUND)
        front = Path((smooth(springs, ends, -back, down),))
    else:
        front = line(springs, ends)
    return Wing(
        top=top, upper=line(top.end, tip), fore=line(tip, springs), front=front, roll=line(springs, top.end)
    )


@dataclass(frozen=True)
class FlatCollar:
    """A half flat collar: `neck` runs front to back, `outer` back to the point, `front` point to neck; `lapped` is
    the angle by which the shoulders lie over each other, degrees."""

    neck: Path
    outer: Path
    front: Path
    lapped: float


def flat_lines(
    back: Path, front: Path, shoulder: float, overlap: float, depth: float, point: float, spread: float
) -> FlatCollar:
    """Return the flat collar on these necklines: `back` from the centre back to the neck point, `front` from there
    to the centre front.

    The shoulders, `shoulder` mm long, lie `overlap` mm over each other at their tips; the collar is `depth` deep,
    its front edge `point` long and leans forward by `spread` degrees.
    """
    lapped = 2 * math.asin(min(1.0, overlap / (2 * shoulder)))
    neck = _laid_out(back, front, cmath.exp(1j * lapped))
    neck = neck.reversed().mirrored()
    end, way = neck.end, neck.arrive
    neck = neck.mapped(lambda p: (p - end) / way)
    middle = neck.length - back.length
    side = Directed(neck.at(middle), neck.tangent(middle))
    tip = neck.start + point * 1j * neck.leave * turn(spread)
    outer = curve_through(1j * depth, side.at + depth * 1j * side.heading, tip, -1 + 0j, -neck.leave)
    return FlatCollar(neck, outer, line(tip, neck.start), math.degrees(lapped))


def _laid_out(back: Path, front: Path, opened: complex) -> Path:
    """Return the two necklines joined, the front turned by `opened` about the neck point and the bend made smooth;
    as long as both together."""
    joined = laid_end_to_end([back, front])
    corner = back.end
    before, after = joined.split(back.length)
    after = after.mapped(lambda p: corner + (p - corner) * opened)
    kept, _ = before.split((1 - BLENDS) * before.length)
    _, goes_on = after.split(BLENDS * after.length)
    bend = Path((smooth(kept.end, goes_on.start, kept.arrive, goes_on.leave),))
    drawn = Path.joined([kept, bend, goes_on])
    grown = joined.length / drawn.length
    return drawn.mapped(lambda p: p * grown)


def flat_said(lines: FlatCollar, lap: float, depth: float) -> Finding:
    """Tell by how much the outer edge of a collar `depth` mm deep is shorter than the cloth it lies on."""
    less = 2 * math.radians(lines.lapped) * depth
    text = (
        f"The flat collar is laid out with the shoulders {told(lap)} over each other at their tips: its outer "
        f"edge is {told(less)} shorter than the cloth under it, and it rolls up at the neck seam by that."
    )
    return Finding("collar lies", "note", "collar", less, None, text)


def low_said(springs: complex, button: Button) -> tuple[Finding, ...]:
    """Warn where a wing leaves the centre front, at `springs` seen from the neck seam, too low for the button."""
    high, wanted = abs(springs), button.diameter + ROUND_BUTTON
    if high >= wanted:
        return ()
    text = (
        f"The wings leave the centre front {told(high)} above the neck seam, and a button of "
        f"{told(button.diameter)} wants {told(wanted)}: ask for a higher collar_stand or a smaller button."
    )
    return (Finding("wing", "warning", "collar-stand", high, wanted, text),)


def rounded_end(outer: Path, front: Path) -> tuple[Path, Path]:
    """Return outer and front edge with their corner rounded, the round as a part of the outer edge."""
    cut = ROUNDED * min(front.length, outer.length / 2)
    kept, _ = outer.split(outer.length - cut)
    _, rest = front.split(cut)
    return Path((*kept.segments, smooth(kept.end, rest.start, kept.arrive, rest.leave))), rest
