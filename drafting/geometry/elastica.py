"""A strip that bends under its own weight: the heavy elastica, exactly, whatever its clamp, load and rigidity.

The tangent's angle t below the horizontal obeys (B t')' + W cos t = 0, with B the rigidity, W the
weight beyond the point, t given at the clamp and t' = 0 at the free end (Euler's elastica with
weight). Here: the energy of a rod of equal parts, least by Newton's method with a tridiagonal
matrix. Any one system of units; angles in degrees outside, radians within.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from drafting.ground.errors import DraftError

_Reals = NDArray[np.float64]

PARTS = 400
"""Parts of a rod: a chord's angle is then right to 0.001 degrees up to six bending lengths (tests)."""

MOST_STEPS = 100
ENOUGH = 1e-11
"""The share of the whole weight's moment at which a rod counts as at rest."""

MOST_TURN = 1.5
"""Radians that a part may turn in one step: a limp strip would else wind itself round its clamp."""

ROUNDING = 1e-15
"""The share of its energy below which a rod's further fall cannot be told."""

LEAST_STEP = 1e-9


@dataclass(frozen=True, eq=False)
class BentStrip:
    """A strip at rest: `angles` (n,) of its parts in degrees below the horizontal, `out` and `down`
    (n + 1,) of its points from the clamp, in the unit of its length."""

    angles: _Reals
    out: _Reals
    down: _Reals

    @property
    def chord(self) -> float:
        """The angle of the line from clamp to free end, degrees below the horizontal."""
        return float(np.degrees(np.arctan2(self.down[-1], self.out[-1])))


@dataclass(frozen=True, eq=False)
class _Rod:
    """A rod without units: joints' stiffness (n,), each part's load (n,), clamp in radians."""

    joints: _Reals
    loads: _Reals
    clamp: float

    def turned(self, angles: _Reals) -> _Reals:
        """Return by how much each joint is turned."""
        return np.diff(angles, prepend=self.clamp)

    def energy(self, angles: _Reals) -> float:
        turned = self.turned(angles)
        return float(0.5 * self.joints @ (turned * turned) - self.loads @ np.sin(angles))

    def slope(self, angles: _Reals) -> _Reals:
        moments = self.joints * self.turned(angles)
        rising: _Reals = moments - self.loads * np.cos(angles)
        rising[:-1] -= moments[1:]
        return rising

    def step(self, angles: _Reals, slope: _Reals) -> _Reals:
        """Return Newton's step; where the whole matrix is not positive, its positive part's."""
        from scipy.linalg.lapack import dptsv  # loaded by who bends a strip only

        stiff = self.joints.copy()
        stiff[:-1] += self.joints[1:]
        weight = self.loads * np.sin(angles)
        step, failed = dptsv(stiff + weight, -self.joints[1:], -slope)[2:]
        if failed:
            step = dptsv(stiff + np.maximum(weight, 0.0), -self.joints[1:], -slope)[2]
        return np.asarray(step)


def bent_strip(
    length: float,
    rigidity: float | _Reals,
    weight: float | _Reals,
    *,
    clamp: float = 0.0,
    end_load: float = 0.0,
    parts: int = PARTS,
) -> BentStrip:
    """Return a strip held at one end, at rest.

    `rigidity` and `weight` a unit of length, each one number or one a part (`parts` of them, from
    the clamp); `clamp` in degrees below the horizontal (-90 stands upright); `end_load` hangs on the free end.
    Raises `DraftError` for a strip without length or rigidity.

    >>> round(bent_strip(2.0, 1.0, 1.0).chord, 2)
    41.49
    """
    stiff = np.broadcast_to(np.asarray(rigidity, float), (parts,))
    heavy = np.broadcast_to(np.asarray(weight, float), (parts,))
    if not length > 0 or not np.all(stiff > 0):
        raise DraftError("a strip needs a length and a rigidity of more than zero")
    part = length / parts
    joints = np.empty(parts)
    joints[0] = 2 * stiff[0] / part
    joints[1:] = 2 / (part / stiff[:-1] + part / stiff[1:])
    beyond = np.cumsum((heavy * part)[::-1])[::-1]
    loads = (beyond - 0.5 * heavy * part + end_load) * part
    scale = float(np.mean(stiff)) / length
    angles = _at_rest(_Rod(joints / scale, loads / scale, float(np.radians(clamp))))
    return _laid_out(angles, part)


def _at_rest(rod: _Rod) -> _Reals:
    """Return the angles at which the energy is least, found downhill from the straight strip."""
    angles = np.full(len(rod.joints), rod.clamp)
    energy = rod.energy(angles)
    small = ENOUGH * max(1.0, float(np.abs(rod.loads).max()) * len(rod.loads))
    for _ in range(MOST_STEPS):
        slope = rod.slope(angles)
        if np.abs(slope).max() < small:
            return angles
        step = rod.step(angles, slope)
        share = min(1.0, MOST_TURN / float(np.abs(step).max()))
        fall = float(slope @ step)
        if -fall < ROUNDING * max(1.0, abs(energy)):
            return angles
        while share > LEAST_STEP:
            new = angles + share * step
            found = rod.energy(new)
            if found <= energy + 1e-4 * share * fall:
                break
            share *= 0.5
        else:
            return angles  # no lower energy can be told from this one
        angles, energy = new, found
    return angles


def _laid_out(angles: _Reals, part: float) -> BentStrip:
    out = np.concatenate(([0.0], np.cumsum(np.cos(angles)) * part))
    down = np.concatenate(([0.0], np.cumsum(np.sin(angles)) * part))
    return BentStrip(angles=np.degrees(angles), out=out, down=down)
