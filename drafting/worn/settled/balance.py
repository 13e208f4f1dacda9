"""All that acts on the sheet, at one place: energy, force, and the blocks of the second derivative."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from scipy import sparse

from drafting.worn.contact import DistanceField
from drafting.worn.nouns import Reals, Whole
from drafting.worn.settled.apart import Parted, Sides, kept_apart, sides_of
from drafting.worn.settled.bending import bending
from drafting.worn.settled.blocks import BlockPattern, blocks_of, pattern_of
from drafting.worn.settled.facing import Fending, Walls, fended, fending_blocks, fending_forces, no_walls
from drafting.worn.settled.sheet import ClothSheet
from drafting.worn.settled.stretch import Stretched, gradient_matrix, stretch_blocks, stretch_forces, stretched
from drafting.worn.settled.strung import Taut, Threads, boned, pulling, thread_blocks, threads_of
from drafting.worn.settled.touch import (
    Clinging,
    Held,
    Touch,
    cling_blocks,
    clinging,
    touch_blocks,
    touching,
    unheld,
)


@dataclass(frozen=True, eq=False)
class Scene:
    """A sheet and what acts on it. `off` (count,) m: how far cloth's middle lies from the form.

    `walls`: who faces whom, as last looked at; `meeting` four of (6k,): their blocks; `met` (M, 2): who ever did.
    """

    sheet: ClothSheet
    field: DistanceField | None
    off: Reals
    gradient: sparse.csr_matrix
    steady: tuple[sparse.csr_matrix, sparse.csr_matrix]
    threads: Threads
    sides: Sides
    pattern: BlockPattern
    walls: Walls
    meeting: tuple[Whole, ...]
    met: Whole


@dataclass(frozen=True, eq=False)
class State:
    """The scene at `points` (count, 3) m: `energy` J, `force` (count, 3) N the energy's derivative."""

    points: Reals
    energy: float
    force: Reals
    stretch: Stretched
    touch: Touch
    cling: Clinging
    apart: Parted
    fending: Fending
    taut: Taut


def scene_of(sheet: ClothSheet, field: DistanceField | None, off: Reals) -> Scene:
    steady = tuple(one + other for one, other in zip(bending(sheet), boned(sheet), strict=True))
    threads, none = threads_of(sheet), np.zeros((0, 2), dtype=np.int64)
    return Scene(
        sheet=sheet,
        field=field,
        off=off,
        gradient=gradient_matrix(sheet),
        steady=(steady[0], steady[1]),
        threads=threads,
        sides=sides_of(sheet.mesh),
        pattern=pattern_of(sheet, (steady[0], steady[1]), threads.ends, none),
        walls=no_walls(),
        meeting=(none[:, 0],) * 4,
        met=none,
    )


def scene_with(scene: Scene, walls: Walls) -> Scene:
    """The scene after another look at who faces whom."""
    pattern, met = scene.pattern, scene.met
    meeting = blocks_of(pattern, walls.pairs)
    if meeting is None:
        met = np.unique(np.concatenate([met, walls.pairs]), axis=0)
        pattern = pattern_of(scene.sheet, scene.steady, scene.threads.ends, met)
        meeting = blocks_of(pattern, walls.pairs)
    assert meeting is not None
    return replace(scene, walls=walls, pattern=pattern, meeting=meeting, met=met)


def state_at(scene: Scene, points: Reals, held: Held | None = None) -> State:
    """What acts at `points` (count, 3) m, with friction as `held`; without, nothing clings."""
    sheet, held = scene.sheet, held or unheld()
    stretch = stretched(sheet, scene.gradient, points)
    steady = np.column_stack([scene.steady[0] @ points[:, 0], scene.steady[1] @ points[:, 1:]])
    touch = touching(sheet, scene.field, scene.off, points)
    cling, pull = clinging(held, points), pulling(scene.threads, points)
    apart, fending = kept_apart(scene.sides, sheet, points), fended(scene.walls, sheet, points)
    force = stretch_forces(sheet, scene.gradient, stretch) + steady
    force[:, 2] += sheet.weight
    np.add.at(force, touch.places, -touch.pressing[:, None] * touch.out)
    np.add.at(force, held.places, cling.drag)
    force[scene.sides.places, 0] += apart.force
    force += fending_forces(scene.walls, fending, sheet.count)
    np.add.at(force, scene.threads.ends[:, 0], pull.force[:, None] * pull.way)
    np.add.at(force, scene.threads.ends[:, 1], -pull.force[:, None] * pull.way)
    lifted = 0.5 * float((points * steady).sum()) + float(sheet.weight @ points[:, 2])
    energy = stretch.energy + lifted + touch.energy + cling.energy + apart.energy + fending.energy + pull.energy
    return State(
        points=points,
        energy=energy,
        force=force * sheet.loose,
        stretch=stretch,
        touch=touch,
        cling=cling,
        apart=apart,
        fending=fending,
        taut=pull,
    )


def second_derivative(scene: Scene, state: State, held: Held, full: bool) -> Reals:
    """(blocks, 9) N/m on the scene's pattern; `full` the true one, else one without negative parts."""
    pattern = scene.pattern
    found = pattern.base + pattern.of_corners @ stretch_blocks(scene.sheet, state.stretch, full).reshape(-1, 9)
    pressed = touch_blocks(state.touch, scene.field if full else None, state.points)
    np.add.at(found, pattern.diagonal[state.touch.places], pressed.reshape(-1, 9))
    np.add.at(found, pattern.diagonal[held.places], cling_blocks(held, state.cling).reshape(-1, 9))
    found[pattern.diagonal[scene.sides.places], 0] += state.apart.rate
    springs = (
        (pattern.threads, thread_blocks(state.taut, full)),
        (scene.meeting, fending_blocks(scene.walls, state.fending)),
    )
    for blocks, along in springs:
        for places, sign in zip(blocks, (1.0, 1.0, -1.0, -1.0), strict=True):
            np.add.at(found, places, sign * along.reshape(-1, 9))
    return np.asarray(found * pattern.loose)
