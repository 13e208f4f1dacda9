"""Breadth and depth of waist and hip that the survey leads one to expect; nobody tapes them."""

from __future__ import annotations

from drafting.ground.scale import Measured

SURVEYED = {
    "chest depth": (0.1952, 0.0043, 0.1057, -0.0635, 49.7),
    "waist breadth": (0.0143, 0.2694, 0.0363, 0.0232, -20.1),
    "waist depth": (0.0027, 0.3132, -0.0267, -0.0144, -7.4),
    "hip breadth": (-0.0511, 0.0049, 0.3463, 0.0029, 37.8),
    "hip depth": (0.0448, 0.0738, 0.1747, -0.0053, -40.7),
}
"""Factors of bust, waist, hip, height, and a constant (mm): least squares on 3,034 adults of
`Source.ANSUR_II`; people stray by 11.7, 9.8, 10.5, 9.0 and 10.7 mm (sd). The chest is at the fullest bust."""

FROM = ("bust_girth", "waist_girth", "hip_girth", "height")


ROUND_SEAT, SQUARE_SEAT = 0.45, 1.30
"""Crotch length less twice the rise, as shares of the seat's depth: the least and the most that the rule
gives anybody in the survey (0.51 and 1.26; the middle is 0.88), a little widened (ours)."""


def surveyed(measures: Measured, name: str, scale: float = 1.0) -> float:
    """Return "chest depth", "waist breadth", "waist depth", "hip breadth" or "hip depth" in mm.

    `scale` is that of `estimates.estimate_scale` where `measures` are a body's own, not an adult's.
    """
    *factors, constant = SURVEYED[name]
    grown = sum(factor * measures[girth] for factor, girth in zip(factors, FROM, strict=True))
    return grown + constant * scale


def seat_depth(measures: Measured, scale: float = 1.0) -> float:
    """Return how deep the trunk is between waist and hip, mm."""
    return (surveyed(measures, "waist depth", scale) + surveyed(measures, "hip depth", scale)) / 2
