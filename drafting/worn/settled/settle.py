"""A sewn mesh, a place to start from and the wearer's form: where the garment comes to rest."""

from __future__ import annotations

import time
from dataclasses import replace

import numpy as np

from drafting.worn.contact import DistanceField
from drafting.worn.nouns import AtRest, Reals, SewnMesh, Truth
from drafting.worn.settled.balance import Scene, scene_of, state_at
from drafting.worn.settled.search import Limits, Search, residual_of, searched
from drafting.worn.settled.sheet import sheet_of
from drafting.worn.settled.touch import held_anew, unheld

# N/m: a cloth stiffer than this is taken as this stiff, pulled and sheared (see `sheet_of`).
_STIFFEST = (400.0, 100.0)
# Friction is looked at anew after so many steps, time and again: first while the garment is put on, then longer.
_ROUNDS = (3,) * 8 + (30,) * 6 + (120,) * 20


def at_rest(
    mesh: SewnMesh,
    points: Reals,
    field: DistanceField | None,
    limits: Limits | None = None,
    *,
    beneath: float = 0.0,
    held: Truth | None = None,
) -> AtRest:
    """The garment at rest, started from `points` (count, 3) mm.

    `field`: the wearer's form, None for cloth that hangs free; `beneath` mm of garments worn under it. `held`
    (count,): vertices that stay where they start, with whole triangles of them clamped.
    """
    limits, started = limits or Limits(), time.process_time()
    stays = np.zeros(mesh.count, dtype=bool) if held is None else held
    scene = scene_of(sheet_of(mesh, stays, *_STIFFEST), field, _standing_off(mesh, beneath))
    walk, steps = _rounds(scene, points * 1e-3, limits, started)
    residual = residual_of(scene, walk.state)
    return AtRest(
        mesh=mesh,
        points=walk.state.points * 1e3,
        residual=residual,
        settled=residual <= limits.residual,
        steps=steps,
        seconds=time.process_time() - started,
    )


def _rounds(scene: Scene, points: Reals, limits: Limits, started: float) -> tuple[Search, int]:
    """Searches with friction as last looked at, until it too is at rest."""
    state = state_at(scene, points)
    held = held_anew(scene.sheet, unheld(), state.touch, points)
    walk, steps = Search(state_at(scene, points, held), 0.0), 0
    for most in _ROUNDS if scene.field else (limits.steps,):
        left = limits.seconds - (time.process_time() - started)
        this = replace(limits, seconds=left, steps=min(most, limits.steps - steps))
        walk = searched(scene, walk.state.points, held, this, damping=50.0 if most == _ROUNDS[0] else 5.0)
        steps += walk.step
        done = walk.step == 0 and residual_of(scene, walk.state) <= limits.residual
        if done or steps >= limits.steps or time.process_time() - started >= limits.seconds:
            break
        held = held_anew(scene.sheet, held, walk.state.touch, walk.state.points)
    return walk, steps


def _standing_off(mesh: SewnMesh, beneath: float) -> Reals:
    """(count,) m: half the thickest cloth at a vertex, over what is worn beneath."""
    thick = np.array([ply.thickness for ply in mesh.plies])[mesh.ply]
    off = np.zeros(mesh.count)
    np.maximum.at(off, mesh.sewn.ravel(), np.repeat(0.5 * thick + beneath, 3) * 1e-3)
    return off
