"""The tape on the form: rays from inside find the surface, girths are read as a taut tape lies."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from scipy.spatial import ConvexHull

from drafting.worn.form.solid import Solid
from drafting.worn.nouns import Reals, Whole

RAYS = 49
"""Rays to half a section of the trunk, and to a whole section of a limb."""
_WALKS, _HALVES = 30, 13


@dataclass(frozen=True, eq=False)
class Rays:
    """`start` (n, 3) inside, unit `way` (n, 3), and how `far` (n,) they are followed, mm."""

    start: Reals
    way: Reals
    far: Reals


def rays(start: Reals, way: Reals, far: float) -> Rays:
    return Rays(np.broadcast_to(start, way.shape), way, np.full(len(way), far))


def touched(solid: Callable[[Reals], Reals], asked: tuple[Rays, ...]) -> tuple[Reals, ...]:
    """Where each ray first leaves the solid, (n, 3) a batch; the end of a ray that never leaves it."""
    start = np.concatenate([r.start for r in asked])
    way = np.concatenate([r.way for r in asked])
    far = np.concatenate([r.far for r in asked])
    steps = np.linspace(0.0, 1.0, _WALKS)[:, None] * far
    walked = start.T[:, None, :] + steps[None] * way.T[:, None, :]
    value = solid(walked.reshape(3, -1)).reshape(_WALKS, -1)
    out = value > 0
    last = np.where(out.any(axis=0), np.maximum(out.argmax(axis=0), 1), _WALKS - 1)
    each = np.arange(len(far))
    low, high = steps[last - 1, each], steps[last, each]
    for _ in range(_HALVES):
        middle = (low + high) / 2
        inner = solid((start + middle[:, None] * way).T.copy()) < 0
        low, high = np.where(inner, middle, low), np.where(inner, high, middle)
    found = start + ((low + high) / 2)[:, None] * way
    return tuple(np.split(found, np.cumsum([len(r.way) for r in asked])[:-1]))


def hull(points: Reals) -> Whole:
    """Which of points (n, 2) a taut line round them touches, in order."""
    return np.asarray(ConvexHull(points).vertices, dtype=np.int64)


def girth(section: Reals) -> float:
    """The length of a taut tape round points (n, 2), mm."""
    round_ = section[hull(section)]
    return run(np.concatenate([round_, round_[:1]]))


def run(line: Reals) -> float:
    """The length of a line through points (n, d), mm."""
    return float(np.sqrt((np.diff(line, axis=0) ** 2).sum(axis=1)).sum())


def half_fan(middle: Reals, far: float, count: int = RAYS) -> Rays:
    """Level rays from (0, y, z) to the wearer's left, from the front (-y) round to the back."""
    turn = np.linspace(-np.pi / 2, np.pi / 2, count)
    return rays(middle, np.stack([np.cos(turn), np.sin(turn), 0 * turn], axis=1), far)


def mirrored(half: Reals) -> Reals:
    """A closed section (n, 2) from its left half, front to back (m, 2 or 3)."""
    return np.concatenate([half[:, :2], half[-2:0:-1, :2] * [-1.0, 1.0]])


def ring_about(middle: Reals, across: Reals, on: Reals, far: float, count: int = RAYS) -> Rays:
    """Rays all round `middle` in the plane of the unit vectors `across` and `on`."""
    turn = np.linspace(0.0, 2 * np.pi, count)[:-1]
    return rays(middle, np.cos(turn)[:, None] * across + np.sin(turn)[:, None] * on, far)


def trunk_middle(solid: Solid, z: float) -> Reals:
    """A point well inside the trunk at a height."""
    _, front, back, _ = solid.trunk.stack.at(np.array([z]))
    return np.array([0.0, float(front[0] + back[0]) / 2, z])


def leg_middle(solid: Solid, z: float) -> Reals:
    x, _, y, _ = solid.trunk.legs.at(np.array([z]))
    return np.array([float(x[0]), float(y[0]), z])


def square_to(way: Reals) -> tuple[Reals, Reals]:
    """Two unit vectors square to `way` and to one another; the first outward and up, the second backward."""
    back = np.array([0.0, 1.0, 0.0]) - way * way[1]
    back /= np.linalg.norm(back)
    return np.cross(way, back), back
