"""A puff as an arch: a strip of cloth longer than the way between its two seams, hinged at both.

Least energy of a rod of equal parts whose ends are held, by Newton's method with the two forces at
the far end as unknowns (Lagrange's multipliers). It begins without weight, where the answer is the
pinned elastica, and takes the weight on in steps. Gathering multiplies weight and stiffness alike,
so it leaves the bending length and this answer as they are; gathered cloth is stiffer still than
that, so what is said is the least.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy.linalg.lapack import dgtsv
from scipy.optimize import brentq
from scipy.special import ellipe, ellipj, ellipk

from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.worn.hang.strip import bending_length_of
from drafting.worn.nouns import Ply

_Reals = NDArray[np.float64]

PARTS = 160
"""Parts of an arch: its stand-off is then right to 0.1 % (tests)."""

NEAR = 1e-9
MOST_STEPS = 12
MOST_TURN = 1.0
"""Radians that a part may turn in one step; more, and the weight was taken on too fast."""

FIRST_WEIGHT = 8.0
"""The weight, as (length / bending length)^3, that the first step takes on."""

MOST_BENDING_LENGTHS = 40.0
"""Of cloth between two seams: beyond it hangs limp, as it does there."""


@dataclass(frozen=True)
class Puff:
    """A puff at rest: mm that it stands off, how far below its upper seam, and how low it hangs."""

    stands_off: float
    widest_at: float
    lowest: float
    guessed: bool

    @property
    def words(self) -> str:
        """The puff as a maker reads it."""
        said = (
            f"The puff stands off {told(self.stands_off)} at least, farthest {told(self.widest_at)} down from the "
            f"seam that it is gathered into, and hangs {told(self.lowest)} low."
        )
        return said + (" The stiffness is a guess: slide a test strip." if self.guessed else "")


def puff(ply: Ply, cloth: float, span: float) -> Puff:
    """Return how a puff stands: `cloth` mm along the strip, its seams `span` mm apart, one above the other.

    Raises `DraftError` where there is no cloth to spare.
    """
    if not 0 < span < cloth:
        raise DraftError(
            "a puff needs more cloth than the way between its seams",
            value=f"{told(cloth)} of cloth over {told(span)}",
            turn="lengthen the puff, or move its band up",
        )
    ratio = min(cloth / bending_length_of(ply), MOST_BENDING_LENGTHS)
    angles = _arch(span / cloth, ratio**3)
    out, down = (np.cumsum(turn(angles)) * cloth / PARTS for turn in (np.cos, np.sin))
    widest = int(np.argmax(out))
    return Puff(
        stands_off=float(out[widest]),
        widest_at=float(down[widest]),
        lowest=float(down.max()),
        guessed=bool({"bends_along", "weight"} & set(ply.guessed)),
    )


def _arch(share: float, weight: float) -> _Reals:
    """Return the angles (radians below the horizontal) of an arch of length 1 over a `share` of it.

    `weight` is (length / bending length)^3.
    """
    angles, forces = _weightless(share)
    taken, step = 0.0, FIRST_WEIGHT
    while taken < weight:
        aim = min(weight, taken + step)
        found = _settled(angles, forces, share, aim)
        if found is None:
            step /= 2
        else:
            (angles, forces), taken, step = found, aim, 2 * step
    return angles


def _weightless(share: float) -> tuple[_Reals, _Reals]:
    """Return angles and end forces of the pinned elastica, by elliptic functions: 2 E / K - 1 = share."""
    modulus = brentq(lambda m: 2 * ellipe(m) / ellipk(m) - 1 - share, 0.0, 1 - 1e-9)
    quarter = ellipk(modulus)
    along = ((np.arange(PARTS) + 0.5) / PARTS - 0.5) * 2 * quarter
    turned = 2 * np.arcsin(np.sqrt(modulus) * ellipj(along, modulus)[0])
    return np.pi / 2 + turned, np.array([0.0, -4 * quarter**2])


def _settled(angles: _Reals, forces: _Reals, share: float, weight: float) -> tuple[_Reals, _Reals] | None:
    """Return angles and end forces at rest under a weight, found from near; None where that was not near."""
    part, ends = 1.0 / PARTS, np.array([0.0, share])
    loads = weight * part * (1.0 - (np.arange(PARTS) + 0.5) * part)
    stiff, off = np.full(PARTS, 2.0 * PARTS), np.full(PARTS - 1, -float(PARTS))
    stiff[[0, -1]] = PARTS
    for _ in range(MOST_STEPS):
        sines, cosines = np.sin(angles), np.cos(angles)
        reach = part * np.array([cosines, sines])
        moves = part * np.array([-sines, cosines])
        bends = PARTS * np.diff(angles)
        slope = np.append(0.0, bends) - np.append(bends, 0.0) - loads * cosines - forces @ moves
        missed = ends - reach.sum(axis=1)
        diagonal = stiff + loads * sines + forces @ reach
        *_, solved, failed = dgtsv(off, diagonal, off, np.column_stack((-slope, *moves)))
        if failed:
            return None
        pulls = np.linalg.solve(moves @ solved[:, 1:], missed - moves @ solved[:, 0])
        step = solved[:, 0] + solved[:, 1:] @ pulls
        if np.abs(step).max() > MOST_TURN:
            return None
        angles, forces = angles + step, forces + pulls
        if np.abs(step).max() < NEAR:
            return angles, forces
    return None
