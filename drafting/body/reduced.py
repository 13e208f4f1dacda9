"""A body made smaller by the share of the cloth's stretch that is worn."""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType

from drafting.body import Body

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
    """Return `body` with its girths and widths times `around` and its lengths times `along`."""
    factors = dict.fromkeys(AROUND, around) | dict.fromkeys(ALONG, along)
    changed = {
        name: replace(m, mm=m.mm * factors[name]) if name in factors else m for name, m in body.measures.items()
    }
    return replace(body, measures=MappingProxyType(changed))
