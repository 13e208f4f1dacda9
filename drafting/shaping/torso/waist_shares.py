"""How waist and hip are shared between back and front, and between darts and side seam.

Up to 0.80 of the bust the waist is the trunk's own; what it gains over that is belly, and three
quarters of it lie in front (survey: two thirds to five sixths on the hundred largest bellies, the back
keeping its depth). So the side seam stays where it is on the body while a belly grows. Shares of the
darts are ours.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from drafting.ground import tolerances as tol
from drafting.shaping.torso.plan import BACK_OF_GROWTH, TorsoPlan

STEEPEST_SIDE = 14.0
"""degrees: a side seam that leans in more hands the rest to the darts (ours)."""

BACK_DART, FRONT_DART = 0.32, (0.12, 0.16)
"""Shares of what is taken in: the back dart's, the front dart's on a flat bust and what a full one adds."""

MOST_DART = 0.06
"""Greatest waist dart as a share of the bust girth (ours)."""

BACK_OF_HIP = 0.60
"""The back's share of what the hip has over the bust (ours)."""

FORWARD = 0.7
"""mm that a half waist is carried to the back for each mm that the back is straighter than usual, as the waist
stays behind where the chest goes forward (ours: half of the 1.4 that the forms of 120 drawn people show, r = 0.88,
since heights are taken to a centimetre, and backs differ by no more)."""


@dataclass(frozen=True)
class Share:
    """What one half takes in at the waist, mm: by its dart, and by its side edge (negative: let out).

    `hip` is how much wider than the bust it is at the hip, `hung` what of that was not asked for: under
    a belly that lets a side edge out, it hangs straight down.
    """

    dart: float
    side: float
    hip: float
    hung: float = 0.0


def waist_shares(plan: TorsoPlan, bust: float) -> tuple[Share, Share]:
    """Return the shares of back and front.

    Both side edges take in alike where both can. Who carries the chest forward has the front taken in more and
    the back less, so that the side seam hangs plumb. A dart is at most 0.06 of the bust girth, except that
    it takes over what a side seam of more than 14 degrees would; under 8 mm (adult scale) it is left
    out, and its side edge takes its amount.
    """
    own = plan.half - plan.waist_half + plan.growth
    full = min(1.0, plan.fullness / (0.05 * bust))
    dart = FRONT_DART[0] + FRONT_DART[1] * full if plan.darts else BACK_DART
    back_own = 0.5 + (BACK_DART - dart) / 2 if own > 0 else 0.5
    back, front = _carried(plan, back_own * own, (1 - back_own) * own)
    back -= BACK_OF_GROWTH * plan.growth
    front -= (1 - BACK_OF_GROWTH) * plan.growth
    darts = (BACK_DART + dart) / 2 if plan.darts else 0.0
    side = max(0.0, min((0.5 - darts) * own, back, front))
    wider = plan.hip_half - plan.half
    rear = BACK_OF_HIP if wider > 0 else 0.5
    return (
        _shared(plan, bust, back, side, (1.1, rear * wider)),
        _shared(plan, bust, front, side, (0.9, (1 - rear) * wider)),
    )


def _carried(plan: TorsoPlan, back: float, front: float) -> tuple[float, float]:
    """Return what back and front take in, mm, where the chest is carried forward: the front does for the back, or
    the back for the front; no half takes in less than nothing for it."""
    if not plan.darts:
        return back, front
    moved = min(max(FORWARD * plan.forward, -max(0.0, front)), max(0.0, back))
    return back - moved, front + moved


def _shared(plan: TorsoPlan, bust: float, taken: float, side: float, more: tuple[float, float]) -> Share:
    """Return one half's share of what it takes in; `more` is its part of a steep side, and its hip."""
    if taken <= 0:
        hung = max(0.0, -taken - more[1])
        return Share(0.0, taken, more[1] + hung, hung)
    if not plan.darts:
        return Share(0.0, taken, more[1])
    dart = min(taken - side, MOST_DART * bust)
    steepest = math.tan(math.radians(STEEPEST_SIDE)) * (plan.bust_line - plan.waist)
    over = taken - dart - steepest
    if over > 0:
        dart += min(more[0] * over, taken - dart)
    if dart < tol.LEAST_DART * plan.scale:
        dart = 0.0
    return Share(dart, taken - dart, more[1])
