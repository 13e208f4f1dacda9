"""A sewn mesh, a place to start from and the wearer's form: where the garment comes to rest."""

from __future__ import annotations

import time
from dataclasses import replace
from typing import NamedTuple

import numpy as np

from drafting.worn.contact import DistanceField
from drafting.worn.nouns import AtRest, Reals, SewnMesh, Truth
from drafting.worn.settled.balance import Scene, State, scene_of, scene_with, state_at
from drafting.worn.settled.carried_over import carried_over
from drafting.worn.settled.facing import LegCloth, leg_cloth, walls_faced
from drafting.worn.settled.search import Heard, Limits, residual_of, searched
from drafting.worn.settled.sheet import sheet_of, starched
from drafting.worn.settled.touch import held_anew, held_by, slip_of

STIFFEST = (1000.0, 100.0)
"""N/m: a cloth stiffer than this is taken as this stiff, pulled and sheared (see `sheet_of`)."""

# Friction is looked at anew after so many steps, until it too is at rest: at every step while a garment is put on,
# else a close top creeps up by 4 cm before it holds.
_PUT_ON, _WORN = (1,) * 8 + (3,) * 6, (3,) * 4
_THEN = (30,) * 6 + (120,) * 20
# A garment is put on starched to so many times its stiffness, so that limp cloth keeps no crumples of where it
# started, and is made limp once so much force is left on a vertex, in mean vertex weights.
_STARCHED, LOOSE = 100.0, 0.5


def at_rest(
    mesh: SewnMesh,
    start: Reals | AtRest,
    field: DistanceField | None,
    limits: Limits | None = None,
    *,
    beneath: float = 0.0,
    held: Truth | None = None,
) -> AtRest:
    """Return the garment at rest.

    `start`: points (count, 3) mm from which it is put on, or an answer of before, of this or another mesh of the
    garment. `field`: the wearer's form, None for cloth that hangs free; `beneath` mm of garments worn under it.
    `held` (count,): vertices that stay where they start, with whole triangles of them clamped.
    """
    limits, started = limits or Limits(), time.process_time()
    stays = np.zeros(mesh.count, dtype=bool) if held is None else held
    sheet, off = sheet_of(mesh, stays, *STIFFEST), _standing_off(mesh, beneath)
    scene = scene_of(sheet, field, off)
    if isinstance(start, AtRest):
        points, slip = (1e-3 * part for part in carried_over(start, mesh))
        looked = _Looked(points, slip, leg_cloth(mesh, field, points), limits.steps)
    else:
        legs = leg_cloth(mesh, field, start * 1e-3)
        first = _Looked(start * 1e-3, np.zeros_like(start), legs, limits.steps)
        stiff = scene_of(starched(sheet, _STARCHED), field, off)
        _, looked = _rounds(stiff, first, max(LOOSE, limits.residual), _PUT_ON, limits.heard)
    state, looked = _rounds(scene, looked, limits.residual, _WORN, limits.heard)
    residual = residual_of(scene, state)
    return AtRest(
        mesh=mesh,
        points=state.points * 1e3,
        slip=looked.slip * 1e3,
        residual=residual,
        settled=residual <= limits.residual,
        steps=limits.steps - looked.steps,
        seconds=time.process_time() - started,
    )


def from_coarse(
    coarse: SewnMesh,
    fine: SewnMesh,
    points: Reals,
    field: DistanceField,
    limits: Limits | None = None,
    *,
    beneath: float = 0.0,
    first: Limits | None = None,
) -> AtRest:
    """Return the `fine` mesh at rest; the same garment in a `coarse` mesh is put on from `points` first.

    `first` limits that, else `limits`, loosened to `LOOSE`.
    """
    limits = limits or Limits()
    loose = first or replace(limits, residual=LOOSE)
    shape = at_rest(coarse, points, field, loose, beneath=beneath)
    rest = at_rest(fine, shape, field, replace(limits, steps=limits.steps - shape.steps), beneath=beneath)
    return replace(rest, steps=rest.steps + shape.steps, seconds=rest.seconds + shape.seconds)


class _Looked(NamedTuple):
    """What rounds hand on: `points` and `slip` (count, 3) m, the cloth that may meet itself, the `steps` left."""

    points: Reals
    slip: Reals
    legs: LegCloth | None
    steps: int


def _rounds(
    scene: Scene, before: _Looked, residual: float, first: tuple[int, ...], heard: Heard
) -> tuple[State, _Looked]:
    """Search with friction, and with who faces whom, as last looked at, until these too are at rest."""
    points, slip, legs, steps = before
    held = held_by(scene.sheet, state_at(scene, points).touch, points, slip)
    for number, most in enumerate(first + _THEN if scene.field else (steps,)):
        if legs:
            scene = scene_with(scene, walls_faced(legs, points, scene.walls if number > len(first) else None))
        found = searched(scene, points, held, Limits(residual, min(most, steps), heard))
        state, points, steps = found.state, found.state.points, steps - found.step
        if steps <= 0 or (found.step == 0 and residual_of(scene, state) <= residual):
            break
        held = held_anew(scene.sheet, held, state.touch, points)
    return state, _Looked(points, slip_of(held, points), legs, steps)


def _standing_off(mesh: SewnMesh, beneath: float) -> Reals:
    """(count,) m: half the thickest cloth at a vertex, over what is worn beneath."""
    thick = np.array([ply.thickness for ply in mesh.plies])[mesh.ply]
    off = np.zeros(mesh.count)
    np.maximum.at(off, mesh.sewn.ravel(), np.repeat(0.5 * thick + beneath, 3) * 1e-3)
    return off
