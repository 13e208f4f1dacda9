"""The waist: side height, darts, and one smooth line from centre front over the side to centre back.

The darts are closed first, one curve is drawn in each piece, square at the centre, and opened again:
legs are equal and a closed mouth runs on smoothly without iteration. The two curves make 180 degrees
at the side. They bend one way only because the side point is raised or lowered until they can.
"""

from __future__ import annotations

import cmath
import math
from collections.abc import Callable
from dataclasses import dataclass

from drafting.geometry import Cubic
from drafting.geometry.brent import brent_zero
from drafting.geometry.solve import root_near
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.shaping.trouser.centre import CentreEdge
from drafting.shaping.trouser.curves import clamp, one_way_curve, rising_direction
from drafting.shaping.trouser.darts import ClosedDarts, OpenedWaist, close_darts, open_darts
from drafting.shaping.trouser.frame import LegFrame
from drafting.shaping.trouser.rise import Rise

SIDE_SHARE, SIDE_STEEPEST = 0.30, 0.20
"""Part of the suppression at each side seam, and how far in it may lean (tangent) (ours)."""

FRONT_DART, TWO_DARTS = 0.36, 32.0
"""Front share of the darts; mm at a hip of 1,000 over which the back takes two (ours)."""

LEAST_DART = 8.0
"""mm at adult scale: a narrower dart is a sliver, and its amount goes to the seams beside it (common
practice: 6 to 10)."""

SIDE_RISE, SIDE_FALL = 0.35, 0.40
"""The side point rises over the waist level so many times its inset, or falls (ours)."""

BENDS = (0.12, 3.0)
"""How a line may leave the side: its angle to the chord over that at the centre (ours)."""

MOST_INSET = 150.0
"""mm at a hip of 1,000: the side is sought so far in or out beyond half of what is to spare (ours)."""

FIRST_STEP, MOST_LIFT = 4.0, 0.60
"""mm at a hip of 1,000, and share of hip to waist, or to a front top that a measured crotch lifts over
it: in steps of the first, twice that and so on, at most by the second, the height is looked for at
which both lines are parabolas (ours)."""

STRAIGHT = math.radians(0.4)
"""A waist line that turns less the wrong way still counts as bending one way (rule: 1 degree)."""


@dataclass(frozen=True, slots=True)
class WaistShaping:
    """What the side seam (each piece) and each dart take in, mm; a side below 0 lets out."""

    side: float
    front: tuple[float, ...] = ()
    back: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class Waist:
    """The settled waist: closed curves from side to centre, the same opened, and the hip curve.

    `side` is the front's side point (the back's lies `wider` further out).
    """

    shaping: WaistShaping
    side: complex
    hip_curve: Cubic
    front_closed: Cubic
    back_closed: Cubic
    front: OpenedWaist
    back: OpenedWaist

    @property
    def length(self) -> float:
        return self.front_closed.length + self.back_closed.length


@dataclass(frozen=True, slots=True)
class _Ends:
    """Angles (radians) of one closed line, from square to the side: of its chord, at the centre."""

    closed: ClosedDarts
    square: complex
    chord: float
    end: float

    def leave(self, bend: float) -> float:
        """Return the angle at the side that bends `bend` times as much as the centre does."""
        return self.chord + bend * (self.chord - self.end)

    @property
    def span(self) -> tuple[float, float]:
        """Least and greatest angle at the side that leave the line bent one way."""
        ends = [self.leave(bend) for bend in BENDS]
        return min(ends) - STRAIGHT, max(ends) + STRAIGHT


def settle_waist(frame: LegFrame, rise: Rise) -> Waist:
    """Return the waist whose stitched length is the wanted one.

    Raises `DraftError` with the reachable girths where darts of this depth cannot take in so much.
    """
    wanted = frame.waist_girth / 2
    spare = draw_waist(frame, rise, WaistShaping(0.0)).length - wanted
    if spare > 0 and not frame.style.casing:
        for front_dart in (True, False):
            found = _with_darts(frame, rise, spare, front_dart, wanted)
            if found is not None:
                return found
    reach = abs(spare) / 2 + MOST_INSET * frame.unit
    low, high = -reach, min(reach, 0.8 * frame.front_hip)

    def drawn(side: float) -> Waist:
        return draw_waist(frame, rise, WaistShaping(side))

    return drawn(_solved(lambda s: drawn(s).length, wanted, spare / 2, (low, high)))


def _with_darts(frame: LegFrame, rise: Rise, spare: float, front_dart: bool, wanted: float) -> Waist | None:
    """Return the waist with a back dart, and a front dart or what it would take in at the sides.

    None where a dart would be too small.
    """
    side = min(SIDE_SHARE * spare, SIDE_STEEPEST * frame.rise)
    intake = spare - 2 * side
    in_front = FRONT_DART * intake
    count = 2 if intake - in_front > TWO_DARTS * frame.unit else 1

    def shaping(part: float) -> WaistShaping:
        back = ((1 - FRONT_DART) * intake * part / count,) * count
        if front_dart:
            return WaistShaping(side, (in_front * part,), back)
        return WaistShaping(side + in_front / 2, (), back)

    def length(part: float) -> float:
        return draw_waist(frame, rise, shaping(part)).length

    least = LEAST_DART * frame.asked.scale
    if intake < 0.5 * least or length(0.0) <= wanted:
        return None
    settled = shaping(_solved(length, wanted, 1.0, (0.0, 3 + 30 * frame.unit / intake)))
    drawn = draw_waist(frame, rise, settled)
    mouths = [abs(far - near) for near, _, far in (*drawn.front.darts, *drawn.back.darts)]
    return drawn if min(mouths) >= least else None


def _solved(length: Callable[[float], float], wanted: float, guess: float, between: tuple[float, float]) -> float:
    """Return the intake between two bounds with which the waist, the shorter the more, is as wanted.

    Wide darts let the waist grow again: the bounds themselves have to lie on either side of it.
    """
    low, high = between
    least, most = sorted((length(low), length(high)))
    if not least <= wanted <= most:
        raise DraftError(
            "the waist cannot be shaped from this hip with a side seam and darts",
            value=f"{told(2 * wanted)} round the waist",
            reach=f"{told(2 * least, 'least')} to {told(2 * most, 'most')}",
            turn="give the waist more ease, or measure waist and hip again",
        )
    found = root_near(lambda x: wanted - length(x), guess, between, 1e-9 * (high - low))
    if found is not None:
        return found
    return float(brent_zero(lambda x: length(x) - wanted, low, high, within=1e-8))


def draw_waist(frame: LegFrame, rise: Rise, shaping: WaistShaping) -> Waist:
    """Return the waist with this shaping; its side point as near the rule's height as bends well."""
    foot, up = _side_point(frame, rise, shaping.side)
    side = foot + up * _lift(frame, rise, shaping)
    hip_curve = one_way_curve(complex(-rise.legs.half, frame.hip), rising_direction(frame.side_lean), side, up)
    front, back = _ends(frame, rise, shaping, side, up)
    leave = _leave(front, back)
    front_line = _line(front, rise.front, leave)
    back_line = _line(back, rise.back, -leave)
    return Waist(
        shaping=shaping,
        side=side,
        hip_curve=hip_curve,
        front_closed=front_line,
        back_closed=back_line,
        front=open_darts(front_line, front.closed.darts),
        back=open_darts(back_line, back.closed.darts),
    )


def _side_point(frame: LegFrame, rise: Rise, inset: float) -> tuple[complex, complex]:
    """Return the front's side point, `inset` in at the rule's height, and the side's direction there.

    The side turns beyond its chord by three quarters of what it turned before (ours).
    """
    height = frame.rise + (SIDE_RISE if inset > 0 else SIDE_FALL) * inset
    chord = math.atan2(inset, height)
    turned = chord + math.atan(frame.side_lean)
    lean = chord + (0.75 if turned > 0 else 0.3) * turned
    return complex(inset - rise.legs.half, height + frame.hip), cmath.rect(1.0, math.pi / 2 - lean)


def _ends(frame: LegFrame, rise: Rise, shaping: WaistShaping, side: complex, up: complex) -> tuple[_Ends, _Ends]:
    """Return the angles of front and back line with their darts closed."""
    front = close_darts(frame, side, rise.front.top, shaping.front, front=True)
    back = close_darts(frame, side - frame.wider, rise.back.top, shaping.back, front=False)
    return _angles(front, rise.front, up), _angles(back, rise.back, up)


def _angles(closed: ClosedDarts, centre: CentreEdge, up: complex) -> _Ends:
    square = closed.turned * up / 1j
    return _Ends(
        closed, square, cmath.phase((centre.top - closed.side) / square), cmath.phase(centre.heading / 1j / square)
    )


def _line(ends: _Ends, centre: CentreEdge, leave: float) -> Cubic:
    return one_way_curve(ends.closed.side, ends.square * cmath.exp(1j * leave), centre.top, centre.heading / 1j)


def _leave(front: _Ends, back: _Ends) -> float:
    """Return the front's angle at the side (the back has its opposite), nearest to two parabolas."""
    low_front, high_front = front.span
    low_back, high_back = back.span
    low, high = max(low_front, -high_back), min(high_front, -low_back)
    ideal = (front.leave(1.0) - back.leave(1.0)) / 2
    return clamp(ideal, low, high) if low <= high else (low + high) / 2


def _lift(frame: LegFrame, rise: Rise, shaping: WaistShaping) -> float:
    """Return how far along the side (mm) its point moves so that both lines bend one way.

    At one place both lines would be parabolas; that is approached only as far as needed.
    """
    foot, up = _side_point(frame, rise, shaping.side)

    def ends(lift: float) -> tuple[_Ends, _Ends]:
        return _ends(frame, rise, shaping, foot + up * lift, up)

    at_rule = ends(0.0)
    if _apart(*at_rule) <= 0:
        return 0.0
    way = math.copysign(1.0, _miss(*at_rule))

    def near(lift: float) -> float:
        return -_apart(*ends(way * lift))

    most = MOST_LIFT * (frame.rise + max(rise.front_rise, 0.0))
    found = root_near(near, FIRST_STEP * frame.unit, (0.0, most), 1e-9)
    return way * found if found is not None else _lift_sought(frame, most, ends)


def _apart(front: _Ends, back: _Ends) -> float:
    """Return how far (radians) the angles at the side that suit either line lie apart."""
    low_front, high_front = front.span
    low_back, high_back = back.span
    return max(low_front, -high_back) - min(high_front, -low_back)


def _miss(front: _Ends, back: _Ends) -> float:
    """Return by what the angles at the side differ with which both lines are parabolas."""
    return front.leave(1.0) + back.leave(1.0)


def _lift_sought(frame: LegFrame, most: float, ends: Callable[[float], tuple[_Ends, _Ends]]) -> float:
    """Return the lift from afar, where a few steps from the rule's height do not find it."""
    best = _parabolas(frame, most, lambda lift: _miss(*ends(lift)))
    if _apart(*ends(best)) > 0:
        return best
    return float(brent_zero(lambda lift: _apart(*ends(lift)), 0.0, best, within=1e-9))


def _parabolas(frame: LegFrame, most: float, miss: Callable[[float], float]) -> float:
    """Return where along the side both lines are parabolas (`miss` falls through 0 there)."""
    at_rule = miss(0.0)
    way = 1.0 if at_rule > 0 else -1.0
    near, step = 0.0, FIRST_STEP * frame.unit
    while step < most and miss(way * step) * at_rule > 0:
        near, step = step, 2 * step
    far = min(step, most)
    if miss(way * far) * at_rule > 0:
        return way * far
    return way * float(brent_zero(lambda v: miss(way * v), near, far, within=1e-5))
