"""Outlines on one long strip of paper: cut to the least length that was found."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from drafting.printing.placing import TURNS, Placing, places_on_pages
from drafting.printing.raster import Corners

SLICE = 50.0
"""mm: length of a roll is counted in such slices, as pages are elsewhere (ours)."""


def places_on_roll(
    rings: Sequence[Corners], step: tuple[float, float], *, turned: Sequence[Sequence[Corners]] = ()
) -> tuple[Placing, float]:
    """Return where outlines go on a roll, and the length taken, mm; `turned` as in `places_on_pages`.

    Outlines too wide for the roll go over parts side by side that lie `step` mm apart.
    """
    placing = places_on_pages(rings, (step[0], SLICE), turned=turned)
    fours = turned or [(ring,) * len(TURNS) for ring in rings]
    lying = [(four[TURNS.index(spot.turn)], spot) for four, spot in zip(fours, placing.spots, strict=True)]
    low = min(spot.of(p).imag for ring, spot in lying for p in ring)
    down = tuple(replace(spot, move=spot.move - 1j * low) for spot in placing.spots)
    return replace(placing, spots=down), placing.rows * SLICE - low
