"""The layout that is there at once: boxes on shelves across the cloth.

Never short, always valid: something to show before the first search has ended, and to fall back on.
"""

from __future__ import annotations

import math

from drafting.geometry.path import Box
from drafting.layout.packing.model import HAIR, Job, Packing, Pose, Spot, box_of


def shelved(job: Job) -> Packing:
    """Return a layout of the boxes round all pieces, long before short, row after row.

    Pieces on the fold stand in rows of their own.
    """
    if job.strip.meet is not None:
        return _in_a_row(job, job.strip.meet)
    found: list[Spot] = []
    x = y = deep = 0.0
    for n, pose, (x0, y0, x1, y1) in _boxes(job):
        wide, high = x1 - x0, y1 - y0
        fold = job.kinds[job.copies[n].kind].fold
        low = _row(job, n, pose, job.strip.low(fold), high)
        y = low if fold else max(low, _row(job, n, pose, y, high))
        if found and (fold or y + high > job.strip.width * (1 + HAIR)):
            x, y, deep = x + deep + job.strip.gap, low, 0.0
        at = _clear(job, n, pose, x, y, wide, high)
        if at > x:
            x, y, deep = at, low, 0.0
            at = _clear(job, n, pose, x, y, wide, high)
        found.append(Spot(n, pose, at, y))
        y, deep = y + high + job.strip.gap, max(deep, at - x + wide)
    return job.packing(tuple(found), "shelves")


def _in_a_row(job: Job, meet: float) -> Packing:
    """Return a layout on cloth with two folds: one piece after the other, each on the fold where it has room."""
    found: list[Spot] = []
    x = 0.0
    for n, copy in enumerate(job.copies):
        kind = job.kinds[copy.kind]
        low = job.strip.low(kind.fold)
        for pose in copy.poses:
            x0, y0, x1, y1 = box_of(tuple(pose.of(p) for p in kind.ring))
            high = pose.over if kind.fold else y1 - y0 + low > meet
            if y1 - y0 + low <= (job.strip.width - meet if high else meet) * (1 + HAIR):
                x = _clear(job, n, pose, x, 0.0, x1 - x0, job.strip.width)
                found.append(Spot(n, pose, x, job.strip.width - low - (y1 - y0) if high else low))
                x += x1 - x0 + job.strip.gap
                break
    return job.packing(tuple(found), "shelves")


def _boxes(job: Job) -> list[tuple[int, Pose, Box]]:
    boxes = []
    for n, copy in enumerate(job.copies):
        lying = ((p, box_of(tuple(p.of(c) for c in job.kinds[copy.kind].ring))) for p in copy.poses)
        fold = job.kinds[copy.kind].fold
        fitting = [(p, b) for p, b in lying if job.strip.holds(b[3] - b[1], fold)]
        boxes.append((n, *fitting[0]))
    return sorted(
        boxes, key=lambda item: (not job.kinds[job.copies[item[0]].kind].fold, -(item[2][2] - item[2][0]))
    )


def _clear(job: Job, n: int, pose: Pose, x: float, y: float, wide: float, high: float) -> float:
    """Return the first place from `x` on that keeps clear of faults and lies on the repeat."""
    gap = job.strip.gap
    while True:
        x = _on_repeat(job, n, pose, x)
        struck = [
            box
            for box in job.strip.blocked
            if box[0] < x + wide + gap and box[2] > x - gap and box[1] < y + high + gap and box[3] > y - gap
        ]
        if not struck:
            return x
        x = max(box[2] for box in struck) + gap


def _row(job: Job, n: int, pose: Pose, y: float, high: float) -> float:
    """Return the first place from `y` up that lies on the repeat across."""
    kind, step = job.kinds[job.copies[n].kind], job.strip.repeat_across
    if not step or not job.strip.lined_up(high, kind.fold):
        return y
    y0 = min(pose.of(p).imag for p in kind.ring)
    own = (0.0 if kind.line is None else pose.of(complex(0, kind.line)).imag - y0) - job.strip.stripe
    return math.ceil((y + own) / step - 1e-9) * step - own


def _on_repeat(job: Job, n: int, pose: Pose, x: float) -> float:
    step = job.strip.repeat
    if not step:
        return x
    kind = job.kinds[job.copies[n].kind]
    x0 = min(pose.of(p).real for p in kind.ring)
    own = 0.0 if kind.level is None else pose.of(complex(kind.level)).real - x0
    return math.ceil((x + own) / step - 1e-9) * step - own
