"""Cloths as numbers, for tests that want nothing else of them."""

from __future__ import annotations

from drafting.worn.nouns import Ply


def cloth(bending_length: float, weight: float = 1.6) -> Ply:
    """A cloth alike all ways: its bending length in mm, its weight in N/m2."""
    bends = weight * (bending_length / 1000) ** 3
    return Ply(
        along=1500.0,
        across=1500.0,
        shear=60.0,
        bends_along=bends,
        bends_across=bends,
        weight=weight,
        thickness=0.3,
    )
