"""The torso below the bust: side seam, waist darts and lower edge, to the waist or to the hip.

Waist length: the waist meets the centre line, each dart leg and the side seam at right angles, so
the closed waist runs on smoothly; the side seam's lean is solved so that the stitched waist is exact.
Hip length: one curved side profile serves back and front (equal seams), upright at the hip; darts
become diamonds. A waist larger than the bust is normal: no darts, and the side leans outwards.
"""

from __future__ import annotations

import cmath
import math
from dataclasses import dataclass

from scipy.optimize import brentq

from drafting.draft.piece import InnerDart
from drafting.geometry import Path, curve_through, line, smooth, turn
from drafting.geometry.heights import x_at
from drafting.geometry.solve import root_near
from drafting.ground import tolerances as tol
from drafting.ground.errors import DraftError
from drafting.shaping.torso.plan import TorsoPlan

STEEPEST_SIDE = 14.0
"""degrees: a side seam that leans more hands the rest to the darts (ours)."""

FLAREST_SIDE = 45.0
"""degrees: a side seam that leans more than this is no side seam (ours; a large belly needs 26)."""

TRUED_OVER = 60.0
"""mm at adult scale: the stretch over which the waist turns to meet a seam or leg squarely."""

BACK_DIAMOND, FRONT_DIAMOND = 0.68, 0.50
"""How far the diamonds reach from waist to hip (ours)."""

SIDE_STARTS = 0.25
MOST_START = 5.0
"""The side seam to the hip starts off its chord by this share of its turn at the waist, against it,
and by at most so many degrees: so it bends one way from underarm to waist (ours)."""


@dataclass(frozen=True)
class HalfBottom:
    """One half's lower edge from centre to side: one path, or two with an open waist dart between.

    `tip` is that dart's tip; `inner` a diamond dart instead; `waist` the waist's level line.
    """

    hem: tuple[Path, ...]
    waist: tuple[Path, ...]
    tip: complex = 0j
    inner: InnerDart | None = None

    @property
    def length(self) -> float:
        return sum(path.length for path in self.hem)


@dataclass(frozen=True)
class Bottom:
    """Back and front below the bust. `side` runs from underarm to lower edge, x as an offset from
    each half's own width at the bust line; `lean` is its lean at the underarm, degrees."""

    back: HalfBottom
    front: HalfBottom
    side: Path
    lean: float


def dart_intakes(plan: TorsoPlan, bust: float) -> tuple[float, float]:
    """Return back and front waist dart intakes, mm (shares of the suppression: ours).

    Back 0.32 of it, front 0.12 to 0.28 growing with the bust's fullness; each at most 0.06 of the
    bust girth; under 3 mm (adult scale) a dart is left out and the side seam takes its amount.
    """
    if not plan.darts:
        return 0.0, 0.0
    spare = plan.half - plan.waist_half
    full = min(1.0, plan.fullness / (0.05 * bust))
    most = 0.06 * bust
    back, front = min(0.32 * spare, most), min((0.12 + 0.16 * full) * spare, most)
    height = plan.bust_line - plan.waist
    over = (spare - back - front) / 2 - math.tan(math.radians(STEEPEST_SIDE)) * height
    if spare > 0 and over > 0:
        back, front = back + 1.1 * over, front + 0.9 * over
    least = 3 * plan.scale
    return (back if back >= least else 0.0), (front if front >= least else 0.0)


Tips = tuple[complex, complex]
"""The upper tips of back and front waist dart."""


def draw_bottom(plan: TorsoPlan, bust: float, to_hip: bool, tip_at_point: bool) -> Bottom:
    """Return the torso below the bust line; the stitched girth there is exact within 0.001 mm.

    `tip_at_point` lets the front waist dart run up to the bust point, as a panel seam wants it.
    """
    short = 0.0 if tip_at_point else plan.dart_short
    tips = complex(0.48 * plan.back, plan.bust_line), plan.bust_point - 1j * short
    return _to_hip(plan, bust, tips) if to_hip else _to_waist(plan, bust, tips)


# ------------------------------------------------------------------------------ to the waist


def _to_waist(plan: TorsoPlan, bust: float, tips: Tips) -> Bottom:
    back_dart, front_dart = dart_intakes(plan, bust)
    back_tip, front_tip = tips
    side = (plan.half - plan.waist_half - back_dart - front_dart) / 2
    for _ in range(30):  # converges by about a factor of ten a step
        slope = side / (plan.bust_line - plan.waist)
        lean = math.degrees(math.atan(slope))
        if abs(lean) > FLAREST_SIDE:
            raise _too_far_apart(plan, f"a side seam that leans up to {FLAREST_SIDE:.0f} degrees")
        back = _half_waist(plan, plan.back, slope, back_tip, back_dart)
        front = _half_waist(plan, plan.front, slope, front_tip, front_dart)
        miss = back.length + front.length - plan.waist_half
        if abs(miss) < 1e-4:
            break
        side += miss / 2
    else:
        raise _too_far_apart(plan, f"a side seam that leans up to {FLAREST_SIDE:.0f} degrees")
    if min(path.length for path in (*back.hem, *front.hem)) < tol.LEAST_EDGE * plan.scale + 0.1:
        raise _too_far_apart(plan, "waist darts that leave some waist beside them")
    under = complex(slope * (plan.underarm - plan.bust_line), plan.underarm)
    return Bottom(back, front, line(under, back.hem[-1].end - plan.back), lean)


def _too_far_apart(plan: TorsoPlan, reach: str) -> DraftError:
    return DraftError(
        "bust and waist are too far apart for the height between them",
        value=f"a half bust of {plan.half:.0f} mm, a half waist of {plan.waist_half:.0f} mm",
        reach=reach,
        turn="choose other bust or waist ease, or check both girths and the back waist length",
    )


def _half_waist(plan: TorsoPlan, width: float, slope: float, tip: complex, dart: float) -> HalfBottom:
    level = complex(0, plan.waist)
    reach = TRUED_OVER * plan.scale
    y = plan.waist - slope * reach / 2
    side = complex(width - slope * (plan.bust_line - y), y)
    at_side = turn(-math.degrees(math.atan(slope)))
    if dart <= 0:
        whole = (_run(level, side, 1 + 0j, at_side),)
        return HalfBottom(whole, whole)
    height, fall, leg = tip.imag - plan.waist, 0.0, 0.0
    for _ in range(6):  # the mouth is lowered as the leg leans; settles at once
        leg = math.atan(dart / 2 / (height + fall))
        fall = math.tan(leg) * min(reach, 0.8 * (tip.real - dart / 2)) / 2
    mouth = complex(tip.real, plan.waist - fall)
    down, up = turn(-math.degrees(leg)), turn(math.degrees(leg))
    first = _run(level, mouth - dart / 2, 1 + 0j, down)
    hem = (first, _run(mouth + dart / 2, side, up, at_side))
    return HalfBottom(hem, hem, tip)


def _run(a: complex, b: complex, leave: complex, arrive: complex) -> Path:
    return Path((smooth(a, b, leave, arrive),))


# -------------------------------------------------------------------------------- to the hip


def _to_hip(plan: TorsoPlan, bust: float, tips: Tips) -> Bottom:
    back_dart, front_dart = dart_intakes(plan, bust)
    back_tip, front_tip = tips
    side = (plan.half - plan.waist_half - back_dart - front_dart) / 2
    profile, lean = _profile(plan, side)
    back_low = complex(back_tip.real, plan.waist - BACK_DIAMOND * (plan.waist - plan.hip))
    front_low = complex(front_tip.real, plan.waist - FRONT_DIAMOND * (plan.waist - plan.hip))
    return Bottom(
        _half_hip(plan, plan.back, side, profile, (back_tip, back_low), back_dart),
        _half_hip(plan, plan.front, side, profile, (front_tip, front_low), front_dart),
        profile,
        lean,
    )


def _profile(plan: TorsoPlan, side: float) -> tuple[Path, float]:
    """Return the side profile underarm - waist - hip that passes offset 0 at the bust line."""
    waist = complex(-side, plan.waist)
    hip = complex(plan.hip_half / 2 - plan.half / 2, plan.hip)

    def drawn(x: float) -> Path:
        start = complex(x, plan.underarm)
        bend = math.degrees(cmath.phase((hip - waist) / (waist - start)))
        off = max(-MOST_START, min(MOST_START, SIDE_STARTS * bend))
        return curve_through(start, waist, hip, (waist - start) * turn(-off), -1j)

    def off(x: float) -> float:
        return x_at(drawn(x).segments[0].as_cubic(), plan.bust_line)

    drop = plan.underarm - plan.bust_line
    near = side / (plan.bust_line - plan.waist) * drop
    spread = 0.6 * drop + 1.0
    start = root_near(off, near, (near - spread, near + spread), 1e-9)
    if start is None:
        while off(near - spread) * off(near + spread) > 0:
            spread *= 1.7
        start = float(brentq(off, near - spread, near + spread, xtol=1e-9))
    path = drawn(start)
    return path, -math.degrees(cmath.phase(path.leave / -1j))


def _half_hip(plan: TorsoPlan, width: float, side: float, profile: Path, tips: Tips, dart: float) -> HalfBottom:
    hem = (line(complex(0, plan.hip), width + profile.end),)
    centre, edge = complex(0, plan.waist), complex(width - side, plan.waist)
    if dart <= 0:
        return HalfBottom(hem, (line(centre, edge),))
    left, right = (complex(tips[0].real + s * dart / 2, plan.waist) for s in (-1, 1))
    inner = InnerDart("waist_dart", line(tips[0], left, tips[1]), line(tips[0], right, tips[1]))
    return HalfBottom(hem, (line(centre, left), line(right, edge)), tips[0], inner)
