"""A skirt of one front and one back, shaped by darts and its side seams; straight below the hip, or flared. mm.

Both are drawn with the side at -x and the centre on x = 0, the waist level at y = 0; the front is turned over
at the end. The darts are closed before the waist is drawn and opened after: the side point rises until the
front's line is a parabola; the back's centre lies lower than the front's, as far as its line still bends evenly.
"""

from __future__ import annotations

import cmath
import math
from collections.abc import Callable
from dataclasses import dataclass

from drafting.draft.piece import Edge, EdgeKind, Level, Piece
from drafting.draft.roles import EdgeRole, Half, LevelKind, PieceRole
from drafting.geometry import Cubic, Path, line
from drafting.geometry.brent import brent_zero
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.shaping.skirt.plan import SkirtPlan
from drafting.shaping.torso.dart_mouth import dart_edges
from drafting.shaping.trouser.curves import one_way_curve
from drafting.shaping.trouser.darts import ClosedDarts, OpenedWaist, darts_closed, open_darts

SIDE_SHARE, SIDE_STEEPEST = 0.21, 0.20
"""Part of what is taken in at each side edge, and how far in it may lean (tangent) (ours)."""

FRONT_SHARE = 0.30
"""The front darts' part of all darts (common practice: a third or less)."""

MOST_DART, LEAST_DART = 32.0, 8.0
"""mm, at a hip of 1,000 and at adult scale: a wider dart is two, a narrower one goes to the sides (common
practice: 15 to 35, and none under 6 to 10)."""

PLACES = {1: (0.5,), 2: (0.36, 0.70), 3: (0.27, 0.52, 0.77), 4: (0.22, 0.42, 0.62, 0.82)}
"""Where darts stand along the waist, from the side (ours)."""

LONG_FRONT, LONG_BACK = 0.47, (0.56, 0.66)
"""Depth of the darts, of waist to hip: in front, behind at the side and at the centre (common practice: front 80
to 100 mm, back 120 to 140)."""

BACK_DROP = 8.0
"""mm at adult scale: the centre back lies so far below the waist level (common practice: 5 to 15)."""

STEEPEST_CHORD = 0.8
"""Of the side's angle: the most that the back's waist falls by its chord (ours: else it bends at the side)."""

MOST_LIFT = 0.45
"""Of waist to hip: how far the side point may rise over the waist level, or fall (ours)."""

TURNED_ON = (0.75, 0.30)
"""How far beyond its chord the side turns at the waist, of what it turned before: one way, and back (ours)."""


@dataclass(frozen=True)
class HalfSkirt:
    """One half as drawn: its waist opened, its hip curve, and what its darts take in (side to centre)."""

    waist: OpenedWaist
    closed: Cubic
    hip_curve: Cubic
    darts: tuple[float, ...]


@dataclass(frozen=True)
class _Asked:
    """What is tried: the side's inset, and the darts of front and back, side to centre."""

    inset: float
    front: tuple[float, ...] = ()
    back: tuple[float, ...] = ()


def straight_pieces(plan: SkirtPlan, more: float) -> tuple[Piece, Piece]:
    """Return front and back, the centre of each an edge `centre`; the hem is `more` mm wider than the hip.

    Raises `DraftError` where darts and sides cannot take in so much.
    """
    lean = math.atan(more / 4 / (plan.length - plan.rise))
    front, back = _settled(plan, lean)
    return (_piece(plan, front, lean, PieceRole.FRONT).mirrored(), _piece(plan, back, lean, PieceRole.BACK))


def _settled(plan: SkirtPlan, lean: float) -> tuple[HalfSkirt, HalfSkirt]:
    """Return both halves whose waists come to half the waist together."""
    least, unit = LEAST_DART * plan.scale, plan.body_hip / 1000
    side = min(SIDE_SHARE * plan.spare, SIDE_STEEPEST * plan.rise)
    intake = plan.spare - 2 * side
    front, back = _shared(intake, least, MOST_DART * unit)
    if sum(back) < least:
        front, back, span = (), (), (-0.2 * plan.rise, plan.spare / 2 + 0.2 * plan.rise)
    else:
        side, span = side + (intake - sum(front) - sum(back)) / 2, (0.3, 2.5)

    def asked(x: float) -> _Asked:
        return _Asked(side, tuple(x * w for w in front), tuple(x * w for w in back)) if back else _Asked(x)

    def waist(x: float) -> float:
        return sum(half.closed.length for half in _halves(plan, asked(x), lean)) - plan.waist

    low, high = waist(span[0]), waist(span[1])
    if not high <= 0 <= low:
        raise DraftError(
            "the waist cannot be shaped from this hip with side seams and darts",
            value=f"{told(2 * plan.waist)} round the waist",
            reach=f"{told(2 * (plan.waist + high), 'least')} to {told(2 * (plan.waist + low), 'most')}",
            turn="give the waist more ease, or choose gores",
        )
    return _halves(plan, asked(float(brent_zero(waist, *span, within=1e-9))), lean)


def _shared(intake: float, least: float, most: float) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """Return the darts of front and back; a front dart that were a sliver is left to the sides."""
    front = FRONT_SHARE * intake
    if front < least:
        front = 0.0
    return _parted(front, most), _parted((1 - FRONT_SHARE) * intake, most)


def _parted(width: float, most: float) -> tuple[float, ...]:
    if width <= 0:
        return ()
    count = min(max(PLACES), math.ceil(width / most))
    return (width / count,) * count


def _halves(plan: SkirtPlan, asked: _Asked, lean: float) -> tuple[HalfSkirt, HalfSkirt]:
    """Return front and back for these darts, over one side point."""
    front = _Half(plan, plan.front_hip, asked.inset, asked.front, True, lean)
    lift = _root(lambda lift: front.bent(lift, 0.0), plan.rise)
    back = _Half(plan, plan.back_hip, asked.inset, asked.back, False, lean)
    return front.drawn(lift, 0.0), back.drawn(lift, _drop(back, lift))


def _drop(back: _Half, lift: float) -> float:
    """Return how far the centre back lies below the waist level: as the trade has it, or as far as bends well."""
    even = _root(lambda drop: -back.bent(lift, drop), back.plan.rise)
    wanted = max(even, BACK_DROP * back.plan.scale)

    def beyond(drop: float) -> float:
        closed, leave = back.closed(lift, drop)
        return STEEPEST_CHORD * cmath.phase(leave) - cmath.phase(complex(0.0, -drop) - closed.side)

    if beyond(wanted) <= 0 or beyond(even) >= 0:
        return wanted if beyond(wanted) <= 0 else even
    return float(brent_zero(beyond, even, wanted, within=1e-9))


def _root(bent: Callable[[float], float], rise: float) -> float:
    """Return the height at which a line is a parabola, or the bound nearer to it."""
    low, high = -MOST_LIFT * rise, MOST_LIFT * rise
    at_low, at_high = bent(low), bent(high)
    if at_low * at_high > 0:
        return low if abs(at_low) < abs(at_high) else high
    return float(brent_zero(bent, low, high, within=1e-9))


@dataclass(frozen=True)
class _Half:
    plan: SkirtPlan
    hip: float
    inset: float
    darts: tuple[float, ...]
    front: bool
    lean: float

    def side(self, lift: float) -> tuple[complex, complex]:
        """Return the side point and the side's direction there, upwards."""
        chord = math.atan2(self.inset, self.plan.rise + lift)
        turned = chord - self.lean
        return complex(self.inset - self.hip, lift), cmath.rect(
            1.0, math.pi / 2 - chord - TURNED_ON[turned < 0] * turned
        )

    def closed(self, lift: float, drop: float) -> tuple[ClosedDarts, complex]:
        """Return the closed darts, and the direction in which the waist leaves the side, square to it."""
        side, up = self.side(lift)
        top = complex(0.0, -drop)
        if not self.darts:
            return ClosedDarts(side, 1 + 0j, ()), up / 1j
        long = (LONG_FRONT, LONG_FRONT) if self.front else LONG_BACK
        count = len(self.darts)
        steps = [k / max(count - 1, 1) for k in range(count)] if count > 1 else [1.0]
        lengths = [(long[0] + step * (long[1] - long[0])) * self.plan.rise for step in steps]
        closed = darts_closed(side, top, self.darts, PLACES[count], lengths)
        return closed, closed.turned * up / 1j

    def bent(self, lift: float, drop: float) -> float:
        """Return by what the waist misses a parabola (radians): it leaves at twice its chord's angle."""
        closed, leave = self.closed(lift, drop)
        return cmath.phase(leave) - 2 * cmath.phase(complex(0.0, -drop) - closed.side)

    def drawn(self, lift: float, drop: float) -> HalfSkirt:
        closed, leave = self.closed(lift, drop)
        waist = one_way_curve(closed.side, leave, complex(0.0, -drop), 1 + 0j)
        side, up = self.side(lift)
        below = cmath.rect(1.0, math.pi / 2 - self.lean)
        hip_curve = one_way_curve(complex(-self.hip, -self.plan.rise), below, side, up)
        return HalfSkirt(open_darts(waist, closed.darts), waist, hip_curve, self.darts)


NAMES = {
    1: ("waist",),
    2: ("waist_centre", "waist_side"),
    3: ("waist_centre", "waist_middle", "waist_side"),
    4: ("waist_centre", "waist_inner", "waist_outer", "waist_side"),
    5: ("waist_centre", "waist_inner", "waist_middle", "waist_outer", "waist_side"),
}
"""What the parts of a waist are called, from the centre, by their number."""

DARTS = {
    1: ("waist_dart",),
    2: ("waist_dart_centre", "waist_dart_side"),
    3: ("waist_dart_centre", "waist_dart_middle", "waist_dart_side"),
    4: ("waist_dart_centre", "waist_dart_inner", "waist_dart_outer", "waist_dart_side"),
}
"""What darts are called, from the centre, by their number."""


def _piece(plan: SkirtPlan, half: HalfSkirt, lean: float, role: PieceRole) -> Piece:
    hip = half.hip_curve.a
    corner = hip - cmath.rect(plan.length - plan.rise, math.pi / 2 - lean)
    low, top = complex(0.0, -plan.length), half.waist.parts[-1].d
    hem = one_way_curve(corner, cmath.rect(1.0, -lean), low, 1 + 0j)
    side = Path((half.hip_curve.reversed(), *line(hip, corner).segments))
    behind = Half.FRONT if role is PieceRole.FRONT else Half.BACK
    return Piece(
        role.value,
        (
            Edge("hem", Path((hem,)), EdgeKind.HEM, role=EdgeRole.HEM),
            Edge("centre", line(low, top), EdgeKind.FOLD, role=EdgeRole.CENTRE, half=behind),
            *_waist_edges(half.waist),
            Edge("side", side, role=EdgeRole.SIDE),
        ),
        levels=(
            Level("waist", tuple(Path((part,)) for part in half.waist.parts), LevelKind.WAIST),
            Level("hip", (line(hip, complex(0.0, hip.imag)),), LevelKind.HIP),
        ),
        points={"side_hip": hip, "side_waist": half.hip_curve.d, "centre_waist": top},
        title=role.value.capitalize(),
        role=role,
    )


def _waist_edges(opened: OpenedWaist) -> list[Edge]:
    """Return the waist from centre to side: its parts and, between them, the darts."""
    found: list[Edge] = []
    count = len(opened.parts)
    for k, part in enumerate(reversed(opened.parts)):
        path = Path((part.reversed(),))
        found.append(Edge(NAMES[count][k], path, EdgeKind.OPENING, role=EdgeRole.WAIST))
        if k < len(opened.darts):
            near_side, tip, near_centre = opened.darts[-1 - k]
            legs = line(near_centre, tip), line(tip, near_side)
            found += dart_edges(DARTS[count - 1][k], EdgeRole.WAIST_DART, *legs)
    return found
