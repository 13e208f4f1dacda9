"""The whole costume's steps in one row: what can be done while another part waits is put there."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from drafting.making.model import Step


def in_waiting_time(steps: Sequence[Step]) -> tuple[Step, ...]:
    """Return the steps numbered, in an order in which every part exists and waits are used.

    The steps come in an order that is right where nothing waits. They are taken one by one: the first
    whose parts are there and ready; only if every part is still drying or hanging does the maker wait.
    """
    made_by = {step.makes: step for step in steps}
    pieces = {name: step.makes for step in steps if step.stage == "cut" for name in step.pieces}
    ready: dict[str, float] = {}
    left, clock, out = list(steps), 0.0, list[Step]()
    while left:
        free = [step for step in left if all(part in ready for part in _parts(step, made_by, pieces))]
        at = {step.key: max([ready[p] for p in _parts(step, made_by, pieces)], default=0.0) for step in free}
        now = next((step for step in free if at[step.key] <= clock), None)
        if now is None:
            now = min(free, key=lambda step: at[step.key])
            clock = at[now.key]
        clock += now.minutes / 60
        ready[now.makes] = clock + now.wait
        left.remove(now)
        out.append(replace(now, n=len(out) + 1))
    return tuple(out)


def _parts(step: Step, made_by: dict[str, Step], pieces: dict[str, str]) -> list[str]:
    """Return the parts made by other steps that a step needs: its own, or the cutting of its pieces."""
    found = [pieces.get(part, part) for part in step.uses]
    return [part for part in found if part in made_by]
