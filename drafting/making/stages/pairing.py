"""Two sides of a seam laid right sides together: the larger below, what is sewn to it turned over on top."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from drafting.draft.draft import EdgeRef, Seam
from drafting.draft.roles import SeamKind
from drafting.geometry.moves import Motion, best_fit
from drafting.geometry.polylines import polyline_length
from drafting.making.stages.bent import bent_to
from drafting.making.stages.shapes import LaidAs, LaidPieces, pieces_along
from drafting.making.stages.so_far import SoFar, meeting_points

BENT_FROM = 5.0
"""mm of miss from which the upper cloth is drawn bent to the lower edge (ours)."""

TOO_FAR = 0.3
"""Miss as a share of the seam beyond which bending would not be true, and the parts are drawn apart (ours)."""


@dataclass(frozen=True, eq=False)
class Pairing:
    """LaidPieces both sides of a seam lie, which chain is the lower one's, and by how much they missed (mm)."""

    lower: LaidPieces
    upper: LaidPieces
    lower_chain: tuple[EdgeRef, ...]
    upper_chain: tuple[EdgeRef, ...]
    miss: float

    def too_far(self, length: float) -> bool:
        """Return whether the upper cloth would have to be bent beyond what a hand can do."""
        return self.miss > TOO_FAR * length


def paired(so_far: SoFar, seam: Seam) -> Pairing | None:
    """Return both sides of a seam edge on edge, or None where they hang in too many parts to lie so."""
    parts = {chain: _parts(so_far, seam, chain) for chain in (seam.a, seam.b)}
    lower_chain, upper_chain = seam.a, seam.b
    if _is_lower(so_far, seam.b, parts[seam.b], seam.a, parts[seam.a]):
        lower_chain, upper_chain = seam.b, seam.a
    if len(parts[lower_chain]) != 1:
        return None
    (lower,) = parts[lower_chain]
    placed: dict[str, LaidAs] = {}
    miss = 0.0
    for part in parts[upper_chain]:
        here, there = meeting_points(so_far, seam, lower, part)
        if not len(here):
            return None
        move = best_fit(there, here, over=True)
        gap = float(np.abs(there - move(here)).max())
        miss = max(miss, gap)
        for name, where in part.items():
            laid = move.after(where)
            placed[name] = bent_to(laid, move(here), there, polyline_length(there)) if gap > BENT_FROM else laid
    return Pairing(lower, placed, lower_chain, upper_chain, miss)


def _parts(so_far: SoFar, seam: Seam, chain: tuple[EdgeRef, ...]) -> list[dict[str, Motion]]:
    """Return what of a chain is laid as one; to a collar or a cuff each piece is laid by itself.

    A body that lies flat is not as round as the neck it makes: piece by piece it follows the collar.
    """
    if seam.kind is not SeamKind.ATTACHED:
        return so_far.parts(chain)
    return [{name: so_far.where[name]} for name in pieces_along(chain)]


def _is_lower(
    so_far: SoFar,
    one: Sequence[EdgeRef],
    its: Sequence[LaidPieces],
    other: Sequence[EdgeRef],
    others: Sequence[LaidPieces],
) -> bool:
    """Return whether the first chain's parts lie below: what hangs together, else what is larger."""
    if len(its) != len(others):
        return len(its) < len(others)
    size = so_far.goods.size
    return size(pieces_along(one)) > size(pieces_along(other))
