"""The shortest layout of a job: engine 1 within a count, engine 2 within a time."""

from __future__ import annotations

import itertools
import random
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field

from drafting.ground.errors import DraftError
from drafting.layout.packing.child_process import PATIENCE, Child, library_there
from drafting.layout.packing.clean import checked_job
from drafting.layout.packing.close import closed_up
from drafting.layout.packing.job import ROUGH, Kit
from drafting.layout.packing.library import Problem, tight_teeth
from drafting.layout.packing.model import Job, Packing, Spot
from drafting.layout.packing.search import OnBetterLay, Searcher
from drafting.layout.packing.shelf import shelved
from drafting.layout.packing.verify import broken_rules

COUNT = 4500
"""Outlines placed by engine 1 where no time is given (ours: about 2 s for the demo, table and all; twice as many
change its lays by less than 2 %, either way)."""

ENDLESS = 1e12

FEW = 8
"""Up to so many outlines are searched fine: there is little to save, and a hair may matter (ours)."""

CLOSED = 3
"""The best so many layouts of rough outlines are closed up with fine ones (ours)."""

LOOK = 0.1
"""Seconds between two looks at the child processes."""

OWN_SHARE = 1 / 3
"""Share of the time for engine 1 where there is a fold (ours)."""

HANDS_SHARE, FIRST_SHARE = 0.15, 0.01
"""The same without a fold, where outlines may be turned over (which the library cannot), and where
they may not (ours)."""


def pack(
    job: Job,
    *,
    count: float = COUNT,
    seconds: float = 0.0,
    seed: int = 0,
    workers: int = 2,
    said: OnBetterLay | None = None,
    halted: Callable[[], bool] = bool,
    rough: Kit | None = None,
) -> Packing:
    """Return the shortest layout found of a job.

    Without `seconds` engine 1 places `count` outlines: the same job and seed give the same layout
    (none: boxes on shelves). It does so with rough outlines (`rough`, where the same job stands ready),
    and closes up what it found.
    With `seconds` both engines look that long. `said` hears each better layout, the first one
    within half a second; `halted` is asked again and again, and ends the search where it says so.
    Raises `DraftError` for outlines and cloth that cannot be laid out.
    """
    job = checked_job(job)
    kit = Kit(job)
    for copy in job.copies:
        if not any(kit.fits(copy.kind, pose) for pose in copy.poses):
            raise DraftError(f"{job.kinds[copy.kind].name} is wider than the cloth")
    if not job.copies:
        return Packing(0.0, (), "nothing to lay")
    hunt = Hunt(job=job, seconds=seconds, seed=seed, workers=workers, said=said, halted=halted, ready=rough)
    hunt.take(shelved(job))
    if seconds <= 0:
        if count > 0 or hunt.best is None:
            hunt.own_counted(count)
    else:
        hunt.look(time.monotonic() + seconds)
    if hunt.best is None:
        raise DraftError("no layout was found that keeps every rule", turn="report it as a fault")
    return hunt.best


@dataclass
class Hunt:
    """One search: the best layout so far, and everything that offers better ones."""

    job: Job
    seconds: float
    seed: int
    workers: int
    said: OnBetterLay | None
    halted: Callable[[], bool]
    ready: Kit | None = None
    best: Packing | None = None
    refused: list[str] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.kit = Kit(self.job)
        gap = self.job.strip.gap
        rough = gap > 0 and len(self.job.copies) > FEW
        self.rough = (self.ready or Kit(self.job, ROUGH)) if rough else self.kit
        self.dice = random.Random(self.seed)

    def take(self, packing: Packing) -> None:
        """Keep a layout that is shorter than the best one, once it is found to keep every rule."""
        if self.best is not None and packing.length >= self.best.length:
            return
        faults = broken_rules(self.job, packing)
        if faults:
            self.refused += faults
            return
        self.best = packing
        if self.said:
            self.said(packing)

    def own(self, deadline: float) -> None:
        """Let engine 1 look until the deadline."""
        search = Searcher(self.kit, ENDLESS, self.seed, deadline, self.take, self.halted)
        self.take(search.run())

    def own_counted(self, count: float) -> None:
        """Let engine 1 place so many rough outlines, and close up the best of what it found."""
        search = Searcher(self.rough, count, self.seed, halted=self.halted)
        self.take(search.run())
        if self.rough is not self.kit:
            for tried in search.good[-CLOSED:]:
                self.take(closed_up(self.kit, search.packing(tried)))

    def look(self, deadline: float) -> None:
        """Let both engines look until the deadline."""
        folds = [n for n, c in enumerate(self.job.copies) if self.job.kinds[c.kind].fold]
        strip = self.job.strip
        known = not (strip.blocked or strip.repeat or strip.repeat_across or strip.meet is not None)
        if not known or not library_there():
            self.own(deadline)  # the library knows neither faults nor repeats nor a second fold
        elif folds:
            self._look_folded(folds, deadline)
        else:
            start = time.monotonic()
            share = HANDS_SHARE if self._may_turn_over() else FIRST_SHARE
            self.own(start + share * (deadline - start))
            self._run([(Problem(self.kit, self._hands()), self.workers)], deadline)

    def _look_folded(self, folds: list[int], deadline: float) -> None:
        """Engine 1 and short runs of tight combs side by side, then the two best combs to the end."""
        start = time.monotonic()
        turn = start + OWN_SHARE * (deadline - start)
        poses = {n: self.job.copies[n].poses[0] for n in folds}
        search = Searcher(self.kit, ENDLESS, self.seed, start + 0.2, None, self.halted)
        self.take(search.run())
        orders = _few_orders(folds, self.dice)
        problems = [Problem(self.kit, self._hands(), tight_teeth(self.kit, o, poses)) for o in orders]
        each = max(1.0, (turn - time.monotonic()) / len(problems))
        runs = _Queue(problems, each, self.seed)
        search = Searcher(self.kit, ENDLESS, self.seed, turn, self.take, lambda: self.halted() or runs.tend(self))
        self.take(search.run())
        runs.close(self)
        own = Problem(self.kit, search.packing_of_best(), _teeth(search.packing_of_best(), folds))
        chosen = [own, *sorted(runs.lengths, key=lambda p: runs.lengths[p])[: self.workers - 1]]
        self._run([(p, max(1, self.workers // len(chosen))) for p in chosen], deadline)

    def _may_turn_over(self) -> bool:
        """Say whether engine 1 has to settle for some outline if it is mirrored."""
        return any(len({pose.mirror for pose in copy.poses}) > 1 for copy in self.job.copies)

    def _hands(self) -> Packing:
        assert self.best is not None
        return self.best

    def _run(self, problems: Sequence[tuple[Problem, int]], deadline: float) -> None:
        """Let the library work on problems side by side until the deadline."""
        left = round(deadline - time.monotonic())
        if left < 1 or self.halted():
            return
        runs = [_Run(p, left, workers, self.seed) for p, workers in problems]
        try:
            while any(not run.child.ended for run in runs):
                for run in runs:
                    run.hear(self)
                if self.halted() or time.monotonic() > deadline + PATIENCE:
                    break
                time.sleep(LOOK)
        finally:
            for run in runs:
                run.child.stop()
        for run in runs:
            run.hear(self)
        if not self.halted():  # told to stop, it stops
            self.settle()

    def settle(self) -> None:
        """Place everything of the best layout once more, from the start of the cloth onwards."""
        assert self.best is not None
        lying = sorted(self.best.spots, key=lambda spot: (spot.x, spot.y))
        poses = {spot.copy: spot.pose for spot in lying}
        search = Searcher(self.kit, ENDLESS)
        order = tuple(spot.copy for spot in lying)
        search.decoded(order, tuple(poses[n] for n in range(len(poses))))
        self.take(search.packing_of_best())


class _Run:
    """One child process and the lines of it that were heard."""

    def __init__(self, problem: Problem, seconds: float, workers: int, seed: int) -> None:
        self.problem = problem
        self.child = Child(problem.asked(max(1, round(seconds)), workers, seed))
        self.heard = 0
        self.shortest = float("inf")

    def hear(self, hunt: Hunt) -> None:
        """Offer the last layout that was not heard yet (each is shorter than those before)."""
        lines = self.child.lines
        if len(lines) > self.heard:
            self.heard = len(lines)
            packing = self.problem.packing(lines[-1]["placed"])
            self.shortest = min(self.shortest, packing.length)
            hunt.take(packing)


class _Queue:
    """Problems run one after the other, each for a few seconds, while engine 1 searches."""

    def __init__(self, problems: list[Problem], each: float, seed: int) -> None:
        self.waiting, self.each, self.seed = problems, each, seed
        self.lengths: dict[Problem, float] = {}
        self.now: _Run | None = None

    def tend(self, hunt: Hunt) -> bool:
        """Start the next run where the last one ended; always False, as nothing is halted."""
        if self.now is not None and self.now.child.ended:
            self.close(hunt)
        if self.now is None and self.waiting:
            self.now = _Run(self.waiting.pop(0), self.each, 1, self.seed)
        return False

    def close(self, hunt: Hunt) -> None:
        """End the run there is, and note how short its layout became."""
        if self.now is not None:
            self.now.child.stop()
            self.now.hear(hunt)
            self.lengths[self.now.problem] = self.now.shortest
            self.now = None


def _few_orders(folds: list[int], dice: random.Random, most: int = 4) -> list[list[int]]:
    """Return up to four orders of the on-fold copies."""
    if len(folds) <= 6:
        orders = [list(order) for order in itertools.permutations(folds)]
        dice.shuffle(orders)
        return orders[:most]
    return [dice.sample(folds, len(folds)) for _ in range(most)]


def _teeth(packing: Packing, folds: list[int]) -> tuple[Spot, ...]:
    return tuple(spot for spot in packing.spots if spot.copy in folds)
