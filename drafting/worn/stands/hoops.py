"""Whether a bone that goes all round a hem stands as a ring, or is drawn into folds by what hangs on it."""

from __future__ import annotations

import math

import numpy as np

from drafting.worn.nouns import AtRest, Reals, SewnMesh, Whole
from drafting.worn.stands.model import Hoop


def hoop_of(rest: AtRest) -> Hoop | None:
    """Return the longest ring of bone in a garment at rest; None where none goes all round."""
    bones = [rod.vertices for rod in rest.mesh.rods if rod.along]
    hoops = [hoop_along(_both_hands(rest, chain)) for chain in bones if goes_round(rest.mesh, chain)]
    return max(hoops, key=lambda one: one.across, default=None)


def goes_round(mesh: SewnMesh, chain: Whole) -> bool:
    """Return whether a line of sewn points is closed, or goes from middle to middle of a half that is mirrored."""
    return bool(chain[0] == chain[-1] or (mesh.halved and mesh.on_middle[[chain[0], chain[-1]]].all()))


def _both_hands(rest: AtRest, chain: Whole) -> Reals:
    line = rest.points[chain]
    return line if chain[0] == chain[-1] else np.concatenate([line, line[-2::-1] * (-1, 1, 1)])


def hoop_along(line: Reals) -> Hoop:
    """Return a closed line (N, 3) mm as a hoop: what its ring is across, and how much of its area it encloses.

    The area is that of the closed line seen along its own axis, half of the sum of its cross products; a ring
    encloses the most that its length can, L^2 / (4 pi) (plane geometry).
    """
    ahead = np.diff(line, axis=0)
    long = float(np.linalg.norm(ahead, axis=1).sum())
    area = 0.5 * float(np.linalg.norm(np.cross(line[:-1] - line[0], ahead).sum(axis=0)))
    return Hoop(across=long / math.pi, share=4 * math.pi * area / long**2)
