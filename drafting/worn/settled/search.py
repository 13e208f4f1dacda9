"""Downhill to rest: Newton's steps, with a damping that gives way as they succeed."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np

from drafting.worn.nouns import Reals
from drafting.worn.settled.balance import Scene, State, second_derivative, state_at
from drafting.worn.settled.blocks import downhill, factored, moved_by
from drafting.worn.settled.touch import Held

# The true second derivative is asked below this residual; farther away its downward bends only mislead
# (a shirt: 120 steps from 20, 92 from 3, 78 from 0.3).
_TRUE_BELOW = 0.3
# Steps with the positive part after one with the true derivative that led nowhere.
_PATIENCE = 6
# m: no vertex moves farther in one step.
_STRIDE = 0.03
# Damping, in weights of a vertex per m of its way: at first, at least, and where the search gives up.
_DAMPING = (20.0, 1e-3, 1e7)
# Times that a step is bettered with the factor at hand: cloth cannot follow a curved path of equal length in
# one straight step, the next brings the length back.
_BETTERED = 2


Heard = Callable[[float], None]


def no_one(residual: float) -> None:
    """Hear nothing."""


@dataclass(frozen=True)
class Limits:
    """How long to search: until the `residual` is small enough for numbers, for so many Newton `steps` at most.

    Steps, not seconds: a garment comes to the same rest on every machine. `heard` is told the residual at every
    step; what it raises ends the search.
    """

    residual: float = 0.05
    steps: int = 400
    heard: Heard = no_one


@dataclass(frozen=True, eq=False)
class Search:
    """Where a search stands; from step `true_from` on the true second derivative serves."""

    state: State
    damping: float
    step: int = 0
    true_from: int = 0


def residual_of(scene: Scene, state: State) -> float:
    """Root mean square force on a vertex as a share of the mean vertex weight."""
    return float(np.sqrt((state.force**2).sum(axis=1).mean()) / scene.sheet.weight.mean())


def searched(scene: Scene, points: Reals, held: Held, limits: Limits) -> Search:
    """Steps from `points` (count, 3) m with friction `held`, until at rest or a limit is met."""
    search = Search(state_at(scene, points, held), _DAMPING[0])
    while search.step < limits.steps and search.damping < _DAMPING[2]:
        residual = residual_of(scene, search.state)
        limits.heard(residual)
        if residual <= limits.residual:
            break
        search = _step(scene, held, search, residual < _TRUE_BELOW and search.step >= search.true_from)
    return search


def _step(scene: Scene, held: Held, search: Search, true: bool) -> Search:
    way, solve, true = _direction(scene, held, search, true)
    state, share = _moved(scene, held, search.state, way, solve)
    if state is None:
        damping = min(search.damping * 10.0 + 1.0, _DAMPING[2])
        rests = search.step + 1 + _PATIENCE if true else search.true_from
        return replace(search, damping=damping, step=search.step + 1, true_from=rests)
    factor = 0.25 if share > 0.6 else 3.0 if share > 0.2 else 30.0
    return replace(search, state=state, damping=max(search.damping * factor, _DAMPING[1]), step=search.step + 1)


def _direction(
    scene: Scene, held: Held, search: Search, true: bool
) -> tuple[Reals, Callable[[Reals], Reals] | None, bool]:
    """Newton's way (count, 3) m down; what answers another force with the same factor; whether it is true."""
    weight = scene.sheet.weight
    shift = search.damping * (weight + 0.2 * weight.mean())
    force, pattern = search.state.force, scene.pattern
    factor = factored(pattern, second_derivative(scene, search.state, held, true), shift)
    found = downhill(pattern, factor, force) if true else None
    if found is not None and (found[0] * force).sum() < 0.0:
        return found[0], (lambda more: moved_by(pattern, factor, more)) if found[1] == 0 else None, True
    if true:
        factor = factored(pattern, second_derivative(scene, search.state, held, False), shift)
    return -moved_by(pattern, factor, force), lambda more: moved_by(pattern, factor, more), False


def _moved(
    scene: Scene, held: Held, state: State, way: Reals, solve: Callable[[Reals], Reals] | None
) -> tuple[State | None, float]:
    """The state after the step, None where no share of it leads down, and the share that was gone."""
    way = _capped(way)
    slope = float((way * state.force).sum())
    if slope >= 0.0:
        return None, 0.0
    new = state_at(scene, state.points + way, held)
    if solve is not None:
        better = _bettered(scene, held, new, solve)
        if better.energy <= state.energy + 1e-4 * slope:
            return better, 1.0
    share = 1.0
    for _ in range(10):
        rise = float((way * new.force).sum())
        level = abs(new.energy - state.energy) < 1e-9 * abs(state.energy) and abs(rise) <= 0.9 * abs(slope)
        if level or new.energy <= state.energy + 1e-4 * share * slope:
            return new, share
        share *= min(max(slope / (slope - rise), 0.15), 0.6) if rise > 0.0 else 0.5
        new = state_at(scene, state.points + share * way, held)
    return None, 0.0


def _bettered(scene: Scene, held: Held, state: State, solve: Callable[[Reals], Reals]) -> State:
    for _ in range(_BETTERED):
        new = state_at(scene, state.points + _capped(-solve(state.force)), held)
        if new.energy >= state.energy:
            break
        state = new
    return state


def _capped(way: Reals) -> Reals:
    """No vertex farther than a stride."""
    far = np.sqrt((way * way).sum(axis=1))
    return np.asarray(way * np.minimum(1.0, _STRIDE / (far + 1e-30))[:, None])
