"""Does a free edge hold its angle? A peplum, a ruffle, a collar, the tip of a tail: one strip, one number.

The number is the length of the edge in bending lengths. The limits were read off the exact curve of
a strip that leaves its seam 40 degrees below the horizontal.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from math import cos, radians

import numpy as np
from numpy.typing import NDArray

from drafting.geometry.elastica import PARTS, bent_strip
from drafting.ground.lengths import told
from drafting.ground.sources import Cited, Source, cite
from drafting.worn.cloth import Stiffened
from drafting.worn.nouns import Ply

HOLDS_TO = 1.4
"""Bending lengths up to which an edge keeps four fifths of its reach."""

COLLAPSES_FROM = 4.0
"""Bending lengths past which hardly a seventh of its reach is left."""

UPRIGHT = 1.986
"""Bending lengths up to which a strip stands upright by itself: 7.837 ** (1 / 3)."""
UPRIGHT_FROM: Cited = cite(Source.GREENHILL, "an upright pole of even weight")


class EdgeStanding(StrEnum):
    """What becomes of an edge's angle."""

    HOLDS = "holds"
    SOFTENS = "softens"
    COLLAPSES = "collapses"


@dataclass(frozen=True)
class FreeEdge:
    """An edge at rest: its length in bending lengths, mm that it reaches out, the share of its
    straight reach that this is, and the sentence that a maker reads."""

    standing: EdgeStanding
    ratio: float
    reach: float
    kept: float
    words: str


def bending_length_of(ply: Ply) -> float:
    """Return the bending length along in mm: (rigidity / weight) ** (1 / 3)."""
    return 1000 * float((ply.bends_along / ply.weight) ** (1 / 3))


def upright_limit(ply: Ply) -> float:
    """Return the mm up to which an edge of this cloth stands upright alone (`Source.GREENHILL`)."""
    return UPRIGHT * bending_length_of(ply)


def free_edge(piece: Ply | Stiffened, length: float, leaves: float = 40.0) -> FreeEdge:
    """Return how an edge stands that hangs free for `length` mm, with a stiffer hem where it has one.

    `leaves`: degrees below the horizontal at which it leaves its seam (0 straight out).
    """
    whole = piece.whole if isinstance(piece, Stiffened) else piece
    stiff, heavy = _along(piece, length)
    strip = bent_strip(length / 1000, stiff, heavy, clamp=leaves)
    reach = 1000 * float(strip.out[-1])
    kept = reach / (length * cos(radians(leaves)))
    ratio = length / bending_length_of(whole)
    standing = _standing(piece, ratio, kept)
    hem = piece.hem if isinstance(piece, Stiffened) else whole
    unsure = {"bends_along", "weight"} & {*whole.guessed, *hem.guessed}
    words = (
        f"{told(length)} of this cloth is {ratio:.1f} bending lengths: the edge {standing}. "
        f"It reaches out {told(reach)}, {100 * kept:.0f} % of its straight reach."
    )
    if unsure:
        words += " The stiffness is a guess: slide a test strip."
    return FreeEdge(standing=standing, ratio=ratio, reach=reach, kept=kept, words=words)


def _along(piece: Ply | Stiffened, length: float) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """Return rigidity and weight of each part of an edge, from its seam to its hem."""
    if isinstance(piece, Ply):
        return np.full(PARTS, piece.bends_along), np.full(PARTS, piece.weight)
    hem = (np.arange(PARTS) + 0.5) / PARTS * length > length - piece.hem_depth
    stiff = np.where(hem, piece.hem.bends_along, piece.whole.bends_along)
    return stiff, np.where(hem, piece.hem.weight, piece.whole.weight)


def _standing(piece: Ply | Stiffened, ratio: float, kept: float) -> EdgeStanding:
    """Return the verdict: by length in bending lengths; with a stiffer hem by what is kept of the reach."""
    if isinstance(piece, Stiffened) and piece.hem != piece.whole:
        return _graded(-kept, (-0.8, -0.15))
    return _graded(ratio, (HOLDS_TO, COLLAPSES_FROM))


def _graded(value: float, limits: tuple[float, float]) -> EdgeStanding:
    if value <= limits[0]:
        return EdgeStanding.HOLDS
    return EdgeStanding.SOFTENS if value <= limits[1] else EdgeStanding.COLLAPSES
