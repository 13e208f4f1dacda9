"""Darts that radiate from one point: shortened, and their mouths trued.

A wedge of cloth is opened about the bust point (the apex). Its sewn tip ends short of the apex, on
the wedge's own middle line, so that it still aims there. Closing the shorter dart turns a little
more than the wedge; the seam line beside the mouth is bent by half of that on each side, so that the
closed seam runs on smoothly. That lengthens a curved seam, by up to half a millimetre (measured):
where it is sewn to another, `kept_mouth` gives the mouth back what the bend added.
"""

from __future__ import annotations

import cmath
import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from drafting.draft.by_role import dart_legs
from drafting.draft.draft import Seam
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import DartLeg, EdgeRole, SeamKind
from drafting.geometry import Path, line, smooth, unit

BEND_OVER = 60.0
"""mm at adult scale: the stretch beside a dart mouth over which the seam line is bent."""

KEPT_ROUNDS = 8
"""How often the corner of a mouth is moved until its seam is as long as it was; two or three do."""

WAVE = 0.75
"""Degrees by which a seam that is trued beside a mouth may swing to either side of its chord (ours)."""


@dataclass(frozen=True)
class DartMouth:
    """The trued mouth of a dart: the seam before it, its two legs, the seam after it."""

    before: Path
    leg_in: Path
    leg_out: Path
    after: Path


def bend_end(path: Path, by: float, over: float) -> Path:
    """Return `path` with its last `over` mm bent so that it arrives `by` degrees further left."""
    if abs(by) < 1e-9:
        return path
    over = min(over, 0.8 * path.length)
    kept, tail = path.split(path.length - over)
    arrive = tail.arrive * cmath.exp(1j * math.radians(by))
    return Path((*kept.segments, smooth(tail.start, tail.end, tail.leave, arrive)))


def bend_start(path: Path, by: float, over: float) -> Path:
    """Return `path` with its first `over` mm bent so that it leaves `by` degrees further left."""
    return bend_end(path.reversed(), by, over).reversed()


def true_mouth(
    before: Path, leg_in: Path, leg_out: Path, after: Path, over: float, first: float = 0.5
) -> DartMouth:
    """Return the mouth with both seam ends bent until the closed seam makes 180 degrees.

    `first` is the share of that bend that the seam before the dart takes.
    """
    missing = _missing(before, leg_in, leg_out, after)
    return DartMouth(
        bend_end(before, -missing * first, over), leg_in, leg_out, bend_start(after, missing * (1 - first), over)
    )


def _missing(before: Path, leg_in: Path, leg_out: Path, after: Path) -> float:
    """Return by how many degrees the closed seam turns too far at the mouth."""
    inside = cmath.phase(-before.arrive / leg_in.leave) % (2 * math.pi)
    outside = cmath.phase(-leg_out.arrive / after.leave) % (2 * math.pi)
    return math.degrees(inside + outside) - 180


def _first_share(before: Path, legs: tuple[Path, Path], after: Path, over: float) -> float:
    """Return the share of the bend that the seam before the dart can take without bending to and fro.

    It takes half. Where it leaves the stretch that is bent by some degrees to the left of its chord and would
    now arrive to the right, the product of both is held to `WAVE` squared; the seam after the dart takes the rest.
    """
    missing = _missing(before, *legs, after)
    tail = before.split(before.length - min(over, 0.8 * before.length))[1]
    chord = tail.end - tail.start
    swings = math.degrees(cmath.phase(chord / tail.leave)), math.degrees(cmath.phase(tail.arrive / chord))
    side = 1.0 if missing > 0 else -1.0
    out, room, bend = side * swings[0], side * swings[1], abs(missing) / 2
    if out <= 0 or bend - room <= WAVE**2 / out:
        return 0.5
    return max(0.0, room + WAVE**2 / out) / abs(missing)


def kept_mouth(
    seam: Path, at: float, opened: Callable[[Path], Path], apex: complex, short: float, over: float
) -> DartMouth:
    """Return the trued mouth of a dart opened `at` mm along a seam that stays as long as it is, within 1e-4 mm.

    What follows the dart is turned away by `opened`. The dart's first corner moves along the seam by what the
    bends add on both sides, so that what follows is no shorter than it was; its legs are equally long.
    """
    off = 0.0
    for _ in range(KEPT_ROUNDS):
        before, after = seam.split(at - off)[0], opened(seam.split(at)[1])
        legs = short_legs(before.end, after.start, apex, short)
        mouth = true_mouth(before, *legs, after, over, _first_share(before, legs, after, over))
        more = mouth.before.length + mouth.after.length - seam.length
        if abs(more) < 1e-4:
            break
        off += more
    return mouth


def short_legs(first: complex, second: complex, apex: complex, short: float) -> tuple[Path, Path]:
    """Return the two legs of a wedge about `apex`, its tip `short` mm off on their middle line, equally long."""
    aimed = apex + unit(unit(first - apex) + unit(second - apex)) * short
    across, middle = unit(second - first), (first + second) / 2
    tip = aimed + across * ((middle - aimed) * across.conjugate()).real
    return line(first, tip), line(tip, second)


def dart_edges(name: str, role: EdgeRole, leg_in: Path, leg_out: Path) -> list[Edge]:
    """Return the two legs of a dart open to the outline."""
    first, second = f"{name}_in", f"{name}_out"
    return [
        Edge(first, leg_in, EdgeKind.DART, role=role, dart=DartLeg(name, True, second)),
        Edge(second, leg_out, EdgeKind.DART, role=role, dart=DartLeg(name, False, first)),
    ]


def dart_seams(piece: Piece) -> Iterator[Seam]:
    """Yield the seam of every dart that opens to the outline, its legs tip to tip."""
    for into, out in dart_legs(piece):
        name = into.dart.dart.replace("_", " ") if into.dart else "dart"
        legs = ((piece.name, into.name),), ((piece.name, out.name),)
        yield Seam(f"{piece.name} {name}", *legs, end=None, kind=SeamKind.DART)
