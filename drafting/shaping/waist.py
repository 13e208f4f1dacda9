"""The waist edge: shared over side seam and darts, trued at every mouth, solved to the girth.

The waist meets the centre line, each dart leg and the side seam at right angles, so the closed
waist runs on smoothly. The side seam's lean is what is solved: the stitched waist is then exact.
A waist larger than the bust is normal: no darts, and the side seam leans outwards.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from drafting.geometry import Path, smooth, turn
from drafting.shaping.torso import TorsoPlan

STEEPEST_SIDE = 14.0
"""degrees: a side seam that leans more hands the rest to the darts (ours)."""

TRUED_OVER = 60.0
"""mm at adult scale: the stretch over which the waist turns to meet a seam or leg squarely."""


@dataclass(frozen=True)
class HalfWaist:
    """One half's waist edge, centre to side: one path, or two with a dart between.

    `tip` is the waist dart's tip; the mouth is the end of the first and start of the second path.
    """

    paths: tuple[Path, ...]
    tip: complex
    side: complex

    @property
    def length(self) -> float:
        return sum(path.length for path in self.paths)


@dataclass(frozen=True)
class Waist:
    """Back and front half waist and the side seam's lean (degrees, positive: narrower below)."""

    back: HalfWaist
    front: HalfWaist
    lean: float


def dart_intakes(plan: TorsoPlan, bust: float) -> tuple[float, float]:
    """Return back and front waist dart intakes, mm (shares of the suppression: ours).

    Back 0.32 of it, front 0.12 to 0.28 growing with the bust's fullness; each at most 0.06 of the
    bust girth; under 3 mm (adult scale) a dart is left out and the side seam takes its amount.
    """
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


def draw_waist(plan: TorsoPlan, bust: float) -> Waist:
    """Return the waist whose stitched length is the wanted one within 0.001 mm."""
    back_dart, front_dart = dart_intakes(plan, bust)
    back_tip = complex(0.48 * plan.back, plan.bust_line)
    front_tip = complex(
        plan.bust_point.real, min(plan.bust_point.imag - plan.dart_short, plan.bust_line)
    )
    side = (plan.half - plan.waist_half - back_dart - front_dart) / 2
    for _ in range(30):  # converges by about a factor of ten a step
        slope = side / (plan.bust_line - plan.waist)
        back = _half(plan, plan.back, slope, back_tip, back_dart)
        front = _half(plan, plan.front, slope, front_tip, front_dart)
        miss = back.length + front.length - plan.waist_half
        if abs(miss) < 1e-4:
            break
        side += miss / 2
    return Waist(back, front, math.degrees(math.atan(slope)))


def _half(plan: TorsoPlan, width: float, slope: float, tip: complex, dart: float) -> HalfWaist:
    level = complex(0, plan.waist)
    reach = TRUED_OVER * plan.scale
    lean = math.atan(slope)
    drop = slope * reach / 2
    y = plan.waist - drop
    side = complex(width - slope * (plan.bust_line - y), y)
    at_side = turn(-math.degrees(lean))
    if dart <= 0:
        return HalfWaist((_run(level, side, 1 + 0j, at_side),), tip, side)
    height = tip.imag - plan.waist
    fall, leg = 0.0, 0.0
    for _ in range(6):  # the mouth is lowered as the leg leans; settles at once
        leg = math.atan(dart / 2 / (height + fall))
        fall = math.tan(leg) * min(reach, 0.8 * (tip.real - dart / 2)) / 2
    mouth = complex(tip.real, plan.waist - fall)
    first, second = mouth - dart / 2, mouth + dart / 2
    down, up = turn(-math.degrees(leg)), turn(math.degrees(leg))
    return HalfWaist(
        (_run(level, first, 1 + 0j, down), _run(second, side, up, at_side)), tip, side
    )  # fmt: skip


def _run(a: complex, b: complex, leave: complex, arrive: complex) -> Path:
    return Path((smooth(a, b, leave, arrive),))
