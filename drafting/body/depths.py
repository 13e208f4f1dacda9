"""Breadth and depth of waist and hip that the survey leads one to expect; nobody tapes them."""

from __future__ import annotations

from drafting.body.body import Body
from drafting.body.estimates import estimate_scale

SURVEYED = {
    "waist breadth": (0.0143, 0.2694, 0.0363, 0.0232, -20.1),
    "waist depth": (0.0027, 0.3132, -0.0267, -0.0144, -7.4),
    "hip breadth": (-0.0511, 0.0049, 0.3463, 0.0029, 37.8),
    "hip depth": (0.0448, 0.0738, 0.1747, -0.0053, -40.7),
}
"""Factors of bust, waist, hip, height, and a constant (mm): least squares on 3,034 adults of
`Source.ANSUR_II`; people stray by 9.8, 10.5, 9.0 and 10.7 mm (sd)."""

FROM = ("bust_girth", "waist_girth", "hip_girth", "height")


def surveyed(body: Body, name: str) -> float:
    """Return "waist breadth", "waist depth", "hip breadth" or "hip depth" in mm."""
    *factors, constant = SURVEYED[name]
    grown = sum(factor * body[girth] for factor, girth in zip(factors, FROM, strict=True))
    return grown + constant * estimate_scale(body["height"])
