"""The diamond darts at the waist of a torso to the hip: one, or several beside each other. Mm."""

from __future__ import annotations

import math

from drafting.draft.piece import InnerDart
from drafting.geometry import line
from drafting.shaping.torso.plan import TorsoPlan

WIDEST = 45.0
"""mm at adult scale: what one dart takes at most (common practice: one wider than 30 to 40 stands off)."""

BETWEEN, FREE = 32.0, 0.2
"""mm at adult scale between two darts, and no more than this share of the waist that they leave (ours)."""

SHORTER = 15.0
"""mm at adult scale: so much farther in end both tips of a dart beside one nearer the centre (ours, by eye)."""

NAMES = {
    1: ("waist_dart",),
    2: ("waist_dart", "waist_dart_side"),
    3: ("waist_dart", "waist_dart_middle", "waist_dart_side"),
}
"""What the darts of a half are called, from the centre to the side: the first alike on every figure, so that a
costume that names it suits them all."""


def diamond_darts(
    plan: TorsoPlan, tip: complex, wide: float, foot: float, side: float, *, several: bool
) -> tuple[InnerDart, ...]:
    """Return a half's diamond dart with its upper `tip`, `wide` at the waist, down to the height `foot`.

    Where `several` may be had, what is too wide for one parts in two or three about the same place, from the
    centre to the `side` (x of the waist's end).
    """
    count = min(len(NAMES), math.ceil(wide / (WIDEST * plan.scale) - 1e-9)) if several else 1
    each = wide / count
    apart = each + min(BETWEEN * plan.scale, FREE * (side - wide))
    reach = (count - 1) * apart / 2
    middle = min(tip.real, side - reach - apart + each / 2) if count > 1 else tip.real
    found = []
    for number, name in enumerate(NAMES[count]):
        x, less = middle - reach + number * apart, number * SHORTER * plan.scale
        top, low = complex(x, tip.imag - less), complex(x, foot + less)
        left, right = (line(top, complex(x + s * each / 2, plan.waist), low) for s in (-1, 1))
        found.append(InnerDart(name, left, right))
    return tuple(found)
