"""Engine 1: greedy placing in an order, and a local search for a better order.

A layout is an order of the copies and, for each, a pose or the choice of its best one. A move swaps
two copies, puts one elsewhere in the order, or changes a pose; worse layouts are taken now and then
(simulated annealing), and the search starts again several times. It is limited by a count of placed
outlines, so that the same job and seed give the same layout, on any machine at any load.
"""

from __future__ import annotations

import math
import random
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field, replace

from drafting.layout.packing.job import Kit
from drafting.layout.packing.model import Packing, Pose
from drafting.layout.packing.place import Laid, as_spot, best_spot, blocked_boxes

ROUNDS = 4
"""How often the search starts again (ours: without, it got stuck after 15 s)."""

WARM, COLD = 0.012, 0.0008
"""Share of the length by which a layout may be worse, at the start and the end of a round (ours)."""

Poses = tuple[Pose | None, ...]
"""For each copy the pose it must take, None for the one that serves best."""

LayOrder = tuple[tuple[int, ...], Poses]
"""An order, and the poses in it: what a layout is placed from."""

OnBetterLay = Callable[[Packing], None]


@dataclass(frozen=True)
class Tried:
    """One layout: the order, the poses, where everything lies in that order, and its length."""

    order: tuple[int, ...]
    poses: Poses
    laid: tuple[Laid, ...]
    length: float


@dataclass
class Searcher:
    """A search over one `Kit`; `left` counts the outlines that may still be placed.

    `good` are the layouts that were the best one in their time, the best one last. `hints` are
    plans of a like job to start from, in place of the plain orders.
    """

    kit: Kit
    left: float
    seed: int = 0
    deadline: float | None = None
    said: OnBetterLay | None = None
    halted: Callable[[], bool] = bool
    best: Tried | None = None
    good: list[Tried] = field(default_factory=list)
    hints: tuple[LayOrder, ...] = ()
    dice: random.Random = field(default_factory=random.Random)

    def run(self) -> Packing:
        """Return the shortest layout found within the count (and before the deadline)."""
        self.dice.seed(self.seed)
        starts = sorted(self._starts(), key=lambda tried: tried.length)
        whole = self.left
        for n in range(ROUNDS):
            start = starts[n % len(starts)] if n % 2 == 0 else self.best
            self._round(start or starts[0], whole / ROUNDS)
            if self._over():
                break
        return self.packing_of_best()

    def _starts(self) -> Iterator[Tried]:
        """Yield the layouts of the plain orders, the first one even where no count is left."""
        for order, poses in self.hints or ((order, self._free()) for order in self._orders()):
            if tried := self.decoded(order, poses):
                yield tried
            if self._over():
                return

    def first(self) -> Packing:
        """Return the layout of the plain order: large before small."""
        tried = self.decoded(next(self._orders()), self._free())
        assert tried is not None
        return self.packing(tried)

    def packing_of_best(self) -> Packing:
        """Return the shortest layout that this search has found."""
        assert self.best is not None
        return self.packing(self.best)

    def packing(self, tried: Tried) -> Packing:
        spots = tuple(as_spot(self.kit, copy, laid) for copy, laid in zip(tried.order, tried.laid, strict=True))
        return self.kit.job.packing(spots, "own search")

    def decoded(
        self, order: tuple[int, ...], poses: Poses, limit: float = math.inf, before: Tried | None = None
    ) -> Tried | None:
        """Return the layout of an order, None once it is longer than `limit` (grid steps).

        What `before` has in common with it at the beginning is not placed again.
        """
        laid = list(_shared(order, poses, before))
        end = self._start(laid)
        fixed = blocked_boxes(self.kit)
        for copy in order[len(laid) :]:
            found = self._placed(copy, poses[copy], fixed + laid, end)
            laid.append(found)
            end = max(end, found.x + self.kit.size(found.kind, found.pose).width)
            if end > limit:
                return None
        tried = Tried(order, poses, tuple(laid), self._length(laid))
        if self.best is None or tried.length < self.best.length - 1:
            self.best = tried
            self.good.append(tried)
            if self.said:
                self.said(self.packing(tried))
        return tried

    def _placed(self, copy: int, pose: Pose | None, lying: list[Laid], end: int) -> Laid:
        """Return the best place of one copy: the shortest layout, then the farthest to the left."""
        wanted = self.kit.job.copies[copy]
        best: tuple[tuple[float, ...], Laid] | None = None
        for one in wanted.poses if pose is None else (pose,):
            self.left -= 1
            spot = best_spot(self.kit, lying, wanted.kind, one)
            if spot is None:
                continue
            wide = self.kit.size(wanted.kind, one).width
            key = (max(spot[0] + wide, end), spot[0] + 0.2 * wide, spot[1])
            if best is None or key < best[0]:
                best = key, Laid(wanted.kind, one, *spot)
        assert best is not None, "a copy that fits no way up is left out before"
        return best[1]

    def _round(self, start: Tried, count: float) -> None:
        stop, now = self.left - count, poses_settled(start)
        while self.left > stop and not self._over():
            share = max(0.0, (self.left - stop) / count)
            heat = now.length * COLD * (WARM / COLD) ** share
            order, poses = self._moved(now)
            limit = now.length + heat * -math.log(1 - self.dice.random())
            tried = self.decoded(order, poses, limit, now)
            if tried and tried.length <= limit:
                now = tried
            self.left -= 0.1  # a move that changes nothing is not free

    def _moved(self, now: Tried) -> tuple[tuple[int, ...], Poses]:
        order, poses = list(now.order), list(now.poses)
        roll = self.dice.random()
        if len(order) < 2 or roll > 0.75:
            copy = self.dice.choice(order)
            poses[copy] = self.dice.choice((None, *self.kit.job.copies[copy].poses))
        elif roll < 0.4:
            i, j = self.dice.sample(range(len(order)), 2)
            order[i], order[j] = order[j], order[i]
        else:
            copy = order.pop(self.dice.randrange(len(order)))
            order.insert(self.dice.randrange(len(order) + 1), copy)
        return tuple(order), tuple(poses)

    def _orders(self) -> Iterator[tuple[int, ...]]:
        kinds = [self.kit.job.kinds[copy.kind] for copy in self.kit.job.copies]
        area = [kind.area for kind in kinds]
        long = [kind.box[2] for kind in kinds]
        fold = [not kind.fold for kind in kinds]
        numbers = range(len(kinds))
        yield tuple(sorted(numbers, key=lambda i: -area[i]))
        yield tuple(sorted(numbers, key=lambda i: (fold[i], -area[i])))
        yield tuple(sorted(numbers, key=lambda i: -long[i]))
        yield tuple(sorted(numbers, key=lambda i: (fold[i], -long[i])))

    def _free(self) -> Poses:
        return (None,) * len(self.kit.job.copies)

    def _start(self, laid: list[Laid]) -> int:
        ends = (there.x + self.kit.size(there.kind, there.pose).width for there in laid)
        return max(ends, default=0)

    def _length(self, laid: list[Laid]) -> float:
        return float(self._start(laid) - min((there.x for there in laid), default=0))

    def _over(self) -> bool:
        late = self.deadline is not None and time.monotonic() > self.deadline
        return self.left <= 0 or late or self.halted()


def poses_settled(tried: Tried) -> Tried:
    """Return a layout with the poses that served best in it made fast: one try a copy, not four."""
    poses = list(tried.poses)
    for copy, laid in zip(tried.order, tried.laid, strict=True):
        poses[copy] = laid.pose
    return replace(tried, poses=tuple(poses))


def _shared(order: tuple[int, ...], poses: Poses, before: Tried | None) -> tuple[Laid, ...]:
    """Return what two layouts place alike from the beginning."""
    if before is None:
        return ()
    for i, (copy, was) in enumerate(zip(order, before.order, strict=True)):
        if copy != was or poses[copy] != before.poses[copy]:
            return before.laid[:i]
    return before.laid
