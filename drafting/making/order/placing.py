"""The whole costume's steps in one row: what can be done while another part waits is put there."""

from __future__ import annotations

from collections.abc import Mapping, Sequence, Set
from dataclasses import replace

from drafting.making.model import Step


def in_waiting_time(steps: Sequence[Step], after: Mapping[str, Set[str]] = {}) -> tuple[Step, ...]:
    """Return the steps numbered, in an order in which every part exists and waits are used.

    `after` names by its key what else a step waits for, by the keys of those steps.

    The steps come in an order that is right where nothing waits. They are taken one by one: the first
    whose parts are there and ready; only if every part is still drying or hanging does the maker wait.
    """
    needs = {key: {*before, *after.get(key, ())} for key, before in steps_before(steps).items()}
    ready: dict[str, float] = {}
    left, clock, out = list(steps), 0.0, list[Step]()
    while left:
        free = [step for step in left if needs[step.key] <= ready.keys()]
        at = {step.key: max([ready[key] for key in needs[step.key]], default=0.0) for step in free}
        now = next((step for step in free if at[step.key] <= clock), None)
        if now is None:
            now = min(free, key=lambda step: at[step.key])
            clock = at[now.key]
        clock += now.minutes / 60
        ready[now.key] = clock + now.wait
        left.remove(now)
        out.append(replace(now, n=len(out) + 1))
    return tuple(out)


def steps_before(steps: Sequence[Step]) -> dict[str, set[str]]:
    """Return by each step's key the keys of those that make, cut or take apart what it uses, and of the fitting
    that comes before it: what a fitting may still change is not made up while another part lies drying."""
    by: dict[str, str] = {}
    fitted: dict[str, str] = {}
    found: dict[str, set[str]] = {}
    for step in steps:
        tried = {fitted[step.garment]} if step.garment in fitted else set()
        found[step.key] = tried | {by[part] for part in step.uses if part in by}
        if step.verb == "fit":
            fitted[step.garment] = step.key
        made = step.pieces if step.stage == "cut" else (*step.apart, step.makes)
        by |= dict.fromkeys(made, step.key)
    return found
