"""What stretching and shearing the sheet costs: energy, forces, and their rate of change.

Along a thread direction the force is in proportion to the strain. Pressed together cloth wrinkles, finer than the
mesh can show: the force yields smoothly where a wrinkle one triangle wide would, and keeps 1 % of its stiffness.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy import sparse

from drafting.worn.nouns import Reals
from drafting.worn.settled.sheet import ClothSheet

# Share of the stiffness that wrinkled cloth keeps when pressed further.
_KEPT = 0.01
# Long enough to have a direction: where a start folds a thread onto itself, its length is 0.
_POINT = 1e-6


@dataclass(frozen=True, eq=False)
class Stretched:
    """The sheet's state at one place; of T triangles, along and across.

    `threads` two of (T, 3): where 1 m of thread runs; `long` two of (T,); `crossed` (T,): their product, the
    shear; `force` two of (T,) N m a unit strain; `rate` two of (T,): its derivative; `energy` J.
    """

    threads: tuple[Reals, Reals]
    long: tuple[Reals, Reals]
    crossed: Reals
    force: tuple[Reals, Reals]
    rate: tuple[Reals, Reals]
    energy: float


def gradient_matrix(sheet: ClothSheet) -> sparse.csr_matrix:
    """(2T, count): points to threads along, then across."""
    count = len(sheet.areas)
    rows = np.repeat(np.arange(count), 3)
    parts = [
        sparse.csr_matrix((sheet.slopes[:, :, way].ravel(), (rows, sheet.triangles.ravel())), (count, sheet.count))
        for way in (0, 1)
    ]
    return sparse.vstack(parts).tocsr()


def stretched(sheet: ClothSheet, gradient: sparse.csr_matrix, points: Reals) -> Stretched:
    both = gradient @ points
    threads = both[: len(sheet.areas)], both[len(sheet.areas) :]
    long = tuple(np.sqrt((thread * thread).sum(axis=1) + _POINT**2) for thread in threads)
    laws = [_law(long[way] - 1.0, sheet.yields[:, way]) for way in (0, 1)]
    crossed = (threads[0] * threads[1]).sum(axis=1)
    energy = sum(float(sheet.pulls[:, way] @ laws[way][0]) for way in (0, 1))
    return Stretched(
        threads=threads,
        long=(long[0], long[1]),
        crossed=crossed,
        force=(sheet.pulls[:, 0] * laws[0][1], sheet.pulls[:, 1] * laws[1][1]),
        rate=(sheet.pulls[:, 0] * laws[0][2], sheet.pulls[:, 1] * laws[1][2]),
        energy=energy + 0.5 * float(sheet.pulls[:, 2] @ (crossed * crossed)),
    )


def _law(strain: Reals, give: Reals) -> tuple[Reals, Reals, Reals]:
    """Energy, force and rate of one thread direction, per stiffness; pressed past 2 `give` it bears no more."""
    pressed = np.clip(-strain, 0.0, 2.0 * give)
    beyond = np.maximum(-strain - 2.0 * give, 0.0)
    pulled = np.maximum(strain, 0.0)
    energy = 0.5 * pulled**2 + 0.5 * pressed**2 - pressed**3 / (12.0 * give) + give * beyond
    force = pulled - pressed + pressed**2 / (4.0 * give)
    rate = np.where(strain >= 0.0, 1.0, 1.0 - pressed / (2.0 * give))
    kept, rest = _KEPT, 1.0 - _KEPT
    return rest * energy + 0.5 * kept * strain**2, rest * force + kept * strain, rest * rate + kept


def stretch_forces(sheet: ClothSheet, gradient: sparse.csr_matrix, state: Stretched) -> Reals:
    """(count, 3) N: derivative of the energy by the points."""
    along, across = state.threads
    shear = (sheet.pulls[:, 2] * state.crossed)[:, None]
    one = (state.force[0] / state.long[0])[:, None] * along + shear * across
    other = (state.force[1] / state.long[1])[:, None] * across + shear * along
    forces: Reals = gradient.T @ np.concatenate([one, other])
    return forces


def stretch_blocks(sheet: ClothSheet, state: Stretched, full: bool) -> Reals:
    """(T, 3, 3, 3, 3) N/m: between corners i and j, second derivative by their coordinates.

    `full`: the true one; else what pressing and shear take away is left out, and none is negative.
    """
    along, across = state.threads
    shear = sheet.pulls[:, 2]
    one = _thread_part(state, 0, full) + shear[:, None, None] * _outer(across, across)
    other = _thread_part(state, 1, full) + shear[:, None, None] * _outer(along, along)
    mixed = shear[:, None, None] * _outer(across, along)
    if full:
        mixed = mixed + (shear * state.crossed)[:, None, None] * np.eye(3)
    lengthwise, crosswise = sheet.slopes[:, :, 0], sheet.slopes[:, :, 1]
    first = _each(lengthwise, one) + _each(crosswise, mixed.transpose(0, 2, 1))
    second = _each(lengthwise, mixed) + _each(crosswise, other)
    found: Reals = np.einsum("tixy,tj->tijxy", first, lengthwise) + np.einsum("tixy,tj->tijxy", second, crosswise)
    return found


def _each(slopes: Reals, part: Reals) -> Reals:
    """(T, 3, 3, 3): the part (T, 3, 3), times each corner's slope."""
    return np.asarray(slopes[:, :, None, None] * part[:, None])


def _thread_part(state: Stretched, way: int, full: bool) -> Reals:
    """(T, 3, 3): derivative of a thread's pull by where the thread runs."""
    unit = state.threads[way] / state.long[way][:, None]
    turning = state.force[way] / state.long[way]
    if not full:
        turning = np.maximum(turning, 0.0)
    lengthwise = _outer(unit, unit)
    return state.rate[way][:, None, None] * lengthwise + turning[:, None, None] * (np.eye(3) - lengthwise)


def _outer(one: Reals, other: Reals) -> Reals:
    return np.asarray(one[:, :, None] * other[:, None, :])
