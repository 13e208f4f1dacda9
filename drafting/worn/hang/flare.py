"""How far a flare stands off by itself, and into about how many folds its hem falls.

A flared piece is a sector of a ring: wound round its waist without a fold it is a cone, and the
cone is what a stiff hoop at the hem would hold open. What the cloth holds by its own stiffness is
less: the free edge of `strip`, leaving the waist at the cone's slope.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import asin, degrees, tau

from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.ground.sources import Cited, Source, cite, ours
from drafting.worn.cloth import Stiffened
from drafting.worn.hang.strip import FreeEdge, bending_length_of, free_edge
from drafting.worn.nouns import Ply

FOLDS = 0.158
"""Folds = this * hem / (bending length^(3/4) * length^(1/4))."""
FOLDS_FROM: tuple[Cited, ...] = (
    cite(Source.ELEMENTS_OF_DRAPING, "the bending length sets the size of folds; several counts are stable"),
    ours("relaxed tails, discs and a full circle; the circle came out a third lower"),
)
FOLDS_WITHIN = 0.5
"""The share by which such a count may be wrong."""


@dataclass(frozen=True)
class FreeFlare:
    """How far a flare's hem stands off its waist line, mm: as a cone held open (`cone`), and `alone`."""

    cone: float
    alone: FreeEdge


@dataclass(frozen=True)
class FoldCount:
    """About how many folds a hem falls into, with its range."""

    likely: float
    low: float
    high: float

    @property
    def words(self) -> str:
        """The count as a maker reads it."""
        low, high = max(0, round(self.low)), max(1, round(self.high))
        return f"about {max(1, round(self.likely))} folds, give or take half: {low} to {high}"


def free_flare(piece: Ply | Stiffened, girth: float, hem: float, length: float, span: float = 360.0) -> FreeFlare:
    """Return how far a flare of `length` mm stands off, from its `girth` at the waist and its `hem`, mm.

    `span`: degrees of the body that it goes round (half a skirt 180).
    Raises `DraftError` where the hem is narrower than the waist, or flares beyond a flat ring.
    """
    opening = (hem - girth) / length
    share = opening / (span / 360.0 * tau)
    if not 0 <= share <= 1:
        raise DraftError(
            "a flare's hem lies between its waist and a flat ring",
            value=f"hem {told(hem, 'fine')}",
            reach=f"{told(girth, 'fine')} to {told(girth + length * span / 360.0 * tau)}",
        )
    leaves = 90.0 - degrees(asin(share))
    return FreeFlare(cone=length * share, alone=free_edge(piece, length, leaves))


def fold_count(ply: Ply, hem: float, length: float) -> FoldCount:
    """Return about how many folds a `hem` falls into, `length` mm below where it is held; within a half."""
    count = FOLDS * hem / (bending_length_of(ply) ** 0.75 * length**0.25)
    return FoldCount(likely=count, low=(1 - FOLDS_WITHIN) * count, high=(1 + FOLDS_WITHIN) * count)
