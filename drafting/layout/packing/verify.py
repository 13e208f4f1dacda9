"""Does a layout keep every rule? Asked with shapely, of the outlines themselves.

No engine's word is taken for its layout: this reads the job and the spots, and nothing else.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterator

from drafting.geometry.area import least_gap, overlaps
from drafting.geometry.path import Box
from drafting.ground.names import name_in_words
from drafting.layout.packing.model import Job, Packing, Ring, box_of, ring_area

OVERLAP = 1e-6
"""Share of a mean piece that two pieces may overlap by: the last digits of the arithmetic."""

ON_FOLD = 0.01
"""mm: how far a fold edge may lie off the fold (a pencil line is fifty times as wide)."""

NEAR_ENOUGH = 2e-3
"""mm: what may be missing from a gap."""

OUTSIDE = 1e-5
"""Share of the width by which an outline may leave the cloth: the last digits of the arithmetic."""


def broken_rules(job: Job, packing: Packing) -> list[str]:
    """Return every rule that the layout breaks, in words (nothing where it keeps them all)."""
    rings = [job.posed(spot) for spot in packing.spots]
    return [
        *_counts(job, packing),
        *_poses(job, packing),
        *_inside(job, packing, rings),
        *_apart(job, packing, rings),
        *_blocked(job, rings),
        *_levels(job, packing),
        *_lines(job, packing, rings),
    ]


def _counts(job: Job, packing: Packing) -> Iterator[str]:
    placed = Counter(spot.copy for spot in packing.spots)
    for n in range(len(job.copies)):
        if placed.pop(n, 0) != 1:
            yield f"{_name(job, n)} does not lie there once"
    if placed:
        yield "something lies there that was not asked for"


def _poses(job: Job, packing: Packing) -> Iterator[str]:
    for spot in packing.spots:
        if spot.pose not in job.copies[spot.copy].poses:
            yield f"{_name(job, spot.copy)} lies a way up that is not allowed"


def _inside(job: Job, packing: Packing, rings: list[Ring]) -> Iterator[str]:
    slack = OUTSIDE * job.strip.width
    first = min((box_of(ring)[0] for ring in rings), default=0.0)
    for spot, ring in zip(packing.spots, rings, strict=True):
        x0, y0, x1, y1 = box_of(ring)
        if not all(map(math.isfinite, (x0, y0, x1, y1))):
            yield f"{_name(job, spot.copy)} lies nowhere"
        beyond = x1 - max(first, 0.0) > packing.length + slack
        if x0 < -slack or y0 < -slack or y1 > job.strip.width + slack or beyond:
            yield f"{_name(job, spot.copy)} lies off the cloth"
        on_fold = job.kinds[job.copies[spot.copy].kind].fold
        meet, high = job.strip.meet, job.strip.width - y1
        off = high if meet is not None and spot.pose.over else y0
        if on_fold and abs(off) > ON_FOLD:
            yield f"{_name(job, spot.copy)} lies {off:.3f} off the fold"
        near = y0 if meet is None else min(y0, high)
        if not on_fold and near < job.strip.fold_gap - max(slack, NEAR_ENOUGH):
            yield f"{_name(job, spot.copy)} lies {near:.3f} from the fold, with no room for the blade"
        if meet is not None and y0 < meet - ON_FOLD and y1 > meet + ON_FOLD:
            yield f"{_name(job, spot.copy)} lies across the line where the selvedges meet"


def _apart(job: Job, packing: Packing, rings: list[Ring]) -> Iterator[str]:
    if not rings:
        return
    allowed = OVERLAP * math.fsum(abs(ring_area(ring)) for ring in rings) / len(rings)
    for a, b, area in overlaps(rings):
        if area > allowed:
            names = (_name(job, packing.spots[i].copy) for i in (a, b))
            yield f"{' and '.join(names)} overlap by {area:.4g}"
    gap = job.strip.gap
    if gap > NEAR_ENOUGH and (least := least_gap(rings, gap)) < gap - NEAR_ENOUGH:
        yield f"two pieces are {least:.4f} apart, and {gap:g} is asked for"


def _blocked(job: Job, rings: list[Ring]) -> Iterator[str]:
    allowed = OVERLAP * math.fsum(abs(ring_area(ring)) for ring in rings) / max(1, len(rings))
    boxes = [_ring(box) for box in job.strip.blocked]
    for a, b, area in overlaps([*rings, *boxes]):
        if a < len(rings) <= b and area > allowed:
            yield f"a piece lies on fault {b - len(rings) + 1} of the cloth"


def _levels(job: Job, packing: Packing) -> Iterator[str]:
    step, first = job.strip.repeat, None
    for spot in packing.spots if step else ():
        kind = job.kinds[job.copies[spot.copy].kind]
        x0 = min(spot.pose.of(p).real for p in kind.ring)
        own = 0.0 if kind.level is None else spot.pose.of(complex(kind.level)).real - x0
        first = spot.x + own if first is None else first
        off = math.remainder(spot.x + own - first, step or 1.0)
        if abs(off) > NEAR_ENOUGH:
            yield f"{_name(job, spot.copy)} lies {off:.3f} off the repeat"


def _lines(job: Job, packing: Packing, rings: list[Ring]) -> Iterator[str]:
    """Yield what lies off the repeat across, counted from the first stripe; pieces with no room are free."""
    step = job.strip.repeat_across
    for spot, ring in zip(packing.spots, rings, strict=True) if step else ():
        kind, box = job.kinds[job.copies[spot.copy].kind], box_of(ring)
        if not job.strip.lined_up(box[3] - box[1] + NEAR_ENOUGH, kind.fold):
            continue
        y0 = min(spot.pose.of(p).imag for p in kind.ring)
        own = 0.0 if kind.line is None else spot.pose.of(complex(0, kind.line)).imag - y0
        off = math.remainder(box[1] + own - job.strip.stripe, step or 1.0)
        if abs(off) > NEAR_ENOUGH:
            yield f"{_name(job, spot.copy)} lies {off:.3f} off the repeat across"


def _name(job: Job, copy: int) -> str:
    return name_in_words(job.kinds[job.copies[copy].kind].name)


def _ring(box: Box) -> Ring:
    x0, y0, x1, y1 = box
    return complex(x0, y0), complex(x1, y0), complex(x1, y1), complex(x0, y1)
