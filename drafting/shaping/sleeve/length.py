"""How long a sleeve is: what its cap leaves below the arm, and what is said where that is too little."""

from __future__ import annotations

from drafting.ground.findings import Finding
from drafting.ground.lengths import told
from drafting.shaping.sleeve.cap import WIDEST_HEM, Cap, fit_widened, hem_bow
from drafting.shaping.sleeve.half_cap import HalfArmhole

LEAST_UNDERARM = 40.0
"""mm at adult scale: least underarm seam of a short sleeve, room for a hem or a casing (ours)."""

LEAST_CAP = 0.55
"""A sleeve is at least so much of the armhole's depth longer than its underarm seam (ours)."""

SETTLES = 6


def fit_long_enough(
    front: HalfArmhole, back: HalfArmhole, width: float, wrist: float, length: float, least: float
) -> tuple[Cap, float, float]:
    """Return the cap, the sleeve's width as `fit_widened` gives it, and its length from the crown.

    The length is as asked, or so much more that the underarm seam is `least` mm long. Raises as
    `fit_widened` does.
    """
    length = max(length, LEAST_CAP * (front.depth + back.depth) / 2 + least)
    for _ in range(SETTLES):
        cap, settled = fit_widened(front, back, width, wrist, length)
        corner = length + hem_bow(min(wrist, WIDEST_HEM * settled), cap.lean)
        if corner - cap.height >= least - 0.01:
            break
        length += least - (corner - cap.height)
    return cap, settled, length


def lengthened_said(length: float, asked: float) -> tuple[Finding, ...]:
    """Say so where a sleeve was drafted longer (mm, from the crown) than asked for."""
    if length <= asked + 0.5:
        return ()
    text = (
        f"The sleeve is drafted {told(length)} long from the crown instead of {told(asked)}, so that an "
        "underarm seam is left that can be sewn and hemmed."
    )
    return (Finding("sleeve length", "note", "sleeve", length, asked, text),)
