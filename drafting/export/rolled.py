"""Outlines on one long strip of paper: the least length, found by the cutting layout's packer. Layer 5."""

from __future__ import annotations

from collections.abc import Sequence

from drafting.export.placing import TURNS, Placing, Ring, Spot, placed
from drafting.layout import Copy, Job, Kind, Pose, Strip, pack

GAP = 0.0
"""mm between two outlines, which have their room round them."""

COUNT = 60
"""Outlines placed by the packer (ours: about half a second)."""

SLICE = 100.0
"""mm: on a roll too narrow for a piece, length is counted in such slices (ours)."""


def rolled(rings: Sequence[Ring], width: float, step: tuple[float, float]) -> tuple[Placing, float]:
    """Return where outlines go on a strip `width` mm wide, and the length taken, mm.

    A piece that no quarter turn fits to the strip is spread over parts that lie `step` mm apart.
    """
    poses = tuple(Pose(turn) for turn in TURNS)
    if any(_least_side(ring) > width for ring in rings):
        parts = placed(rings, (step[0], SLICE), COUNT)
        return parts, parts.rows * SLICE
    kinds = tuple(Kind(f"outline {n}", tuple(ring)) for n, ring in enumerate(rings))
    copies = tuple(Copy(n, poses) for n in range(len(kinds)))
    packing = pack(Job(kinds, copies, Strip(width, GAP)), count=COUNT)
    spots = tuple(_upright(rings[s.copy], s.pose.turn, s.x, s.y, width) for s in packing.spots)
    return Placing(spots, 1, 1, ((0, 0),)), packing.length


def _upright(ring: Ring, turn: int, x: float, y: float, width: float) -> Spot:
    """Return a spot of the strip on paper: the strip's length runs up the paper."""
    lying = [p * Spot(turn, 0j).factor for p in ring]
    corner = complex(min(p.real for p in lying), min(p.imag for p in lying))
    return Spot((turn + 90) % 360, (complex(x, y) - corner) * 1j + width)


def _least_side(ring: Ring) -> float:
    x, y = [p.real for p in ring], [p.imag for p in ring]
    return min(max(x) - min(x), max(y) - min(y))
