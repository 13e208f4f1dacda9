"""A body made smaller by the share of the cloth's stretch that is worn."""

from __future__ import annotations

from dataclasses import replace

from drafting.body.body import Body
from drafting.body.estimates import Measure

AROUND = (
    "neck_base_girth",
    "bust_girth",
    "high_bust_girth",
    "waist_girth",
    "hip_girth",
    "across_back_width",
    "across_front_width",
    "bust_point_width",
    "upper_arm_girth",
    "elbow_girth",
    "forearm_girth",
    "wrist_girth",
    "shoulder_length",
    "shoulder_drop",
)
"""Measures that lie around the body; the shoulder's drop goes with its length, so its slope stays."""

ALONG = (
    "axilla_depth",
    "scye_depth",
    "back_waist_length",
    "front_waist_length",
    "bust_point_depth",
    "waist_to_hip",
    "arm_length",
    "upper_arm_length",
)


def reduced(body: Body, around: float, along: float = 1.0) -> Body:
    """Return `body` with its girths and widths times `around` and its lengths times `along`.

    Both hands of a measure shrink with their mean, and so does how far people stray from it.
    """
    factors = dict.fromkeys(AROUND, around) | dict.fromkeys(ALONG, along)
    changed = {name: _times(m, factors[name]) if name in factors else m for name, m in body.measures.items()}
    return replace(body, measures=changed)


def _times(measure: Measure, factor: float) -> Measure:
    def less(mm: float | None) -> float | None:
        return None if mm is None else mm * factor

    return replace(
        measure, mm=measure.mm * factor, sd=less(measure.sd), left=less(measure.left), right=less(measure.right)
    )
