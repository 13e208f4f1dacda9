"""Darts that radiate from one point: shortened, and their mouths trued.

A wedge of cloth is opened about the bust point (the apex). Its sewn tip ends short of the apex, on
the wedge's own middle line, so that it still aims there. Closing the shorter dart turns a little
more than the wedge; the seam line beside the mouth is bent by half of that on each side, so that the
closed seam runs on smoothly. Lengths change by a few thousandths of a millimetre (measured).
"""

from __future__ import annotations

import cmath
import math
from collections.abc import Iterator
from dataclasses import dataclass

from drafting.draft.by_role import dart_legs
from drafting.draft.draft import Seam
from drafting.draft.piece import Edge, EdgeKind, Piece
from drafting.draft.roles import DartLeg, EdgeRole, SeamKind
from drafting.geometry import Path, line, smooth, unit

BEND_OVER = 60.0
"""mm at adult scale: the stretch beside a dart mouth over which the seam line is bent."""


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
    inside = cmath.phase(-before.arrive / leg_in.leave) % (2 * math.pi)
    outside = cmath.phase(-leg_out.arrive / after.leave) % (2 * math.pi)
    missing = math.degrees(inside + outside) - 180
    return DartMouth(
        bend_end(before, -missing * first, over), leg_in, leg_out, bend_start(after, missing * (1 - first), over)
    )


def short_legs(first: complex, second: complex, apex: complex, short: float) -> tuple[Path, Path]:
    """Return the two legs of a wedge whose corners lie equally far from `apex`, tip `short` mm off."""
    tip = apex + unit(unit(first - apex) + unit(second - apex)) * short
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
