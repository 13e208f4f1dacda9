"""What the common bolt widths need, folded and open: one table beside a lay.

The lays of the table are quick ones, on roughly simplified outlines: a little longer than a search
would make them, never shorter than what can be cut.
"""

from __future__ import annotations

import math
from dataclasses import replace

from drafting.layout.cloth import LayName
from drafting.layout.lay import LAYERS_LONG, Lay, OtherWay, to_buy
from drafting.layout.packing.model import Job, Packing, Pose
from drafting.layout.packing.search import LayOrder, Searcher
from drafting.layout.packing.verify import broken_rules
from drafting.layout.pieces import WAYS, Pieces

QUICK = 50
"""Outlines placed to learn what another width needs (ours)."""


def with_other_ways(pieces: Pieces, lay: Lay) -> Lay:
    """Return the lay with what common bolt widths need, folded and open.

    Where a narrower cloth happened on a shorter lay, that one is taken: it fits here as well.
    """
    ways: tuple[LayName, ...] = (*WAYS, "crosswise") if lay.lay == "crosswise" else WAYS
    others: list[OtherWay] = []
    for way in ways:
        lay, rows = _one_way(pieces, lay, way)
        others += rows
    if lay.lay == "double":
        names = tuple(outline.part.name for outline in lay.left_out)
        others.append(OtherWay(lay.cloth.width, "double", None if names else lay.cloth_length, names))
    return replace(lay, others=tuple(others))


def _one_way(pieces: Pieces, lay: Lay, way: LayName) -> tuple[Lay, list[OtherWay]]:
    """Return the table's rows for one way to spread the cloth, and the lay, shorter if it can be."""
    job, _, lost = pieces.job(way, lay.cloth.at_width(lay.cloth.widths[-1]))
    job = job if way == lay.lay else _few_poses(job)
    hints = _hint(lay.packing) if way == lay.lay and not lay.left_out and not lost else ()
    never = tuple(outline.part.name for outline in lost)
    rows: list[OtherWay] = []
    least = math.inf
    for width in lay.cloth.widths:
        if width == lay.cloth.width and way == lay.lay:
            names = tuple(outline.part.name for outline in lay.left_out)
            own = None if names else lay.cloth_length
            least = min(least, own or math.inf)
            rows.append(OtherWay(width, way, own, names))
            continue
        room = lay.cloth.at_width(width).layer_width(way)
        names = (*never, *_too_wide(job, room))
        if names or not job.copies:
            rows.append(OtherWay(width, way, None, names))
            continue
        if least < math.inf and to_buy(lay.cloth, least) <= to_buy(
            lay.cloth, _bound(job, room) * LAYERS_LONG[way]
        ):
            rows.append(OtherWay(width, way, least))  # no lay there could save a length that is sold
            continue
        packing = _quick(pieces, job, room, hints)
        hints = _hint(packing)
        if way == lay.lay and width < lay.cloth.width:
            lay = _shorter(lay, packing)
        # A wider cloth needs no more: what fits a narrower one fits on it.
        least = min(least, packing.length * LAYERS_LONG[way])
        rows.append(OtherWay(width, way, least))
    return lay, rows


def _bound(job: Job, room: float) -> float:
    """Return what no lay can be shorter than: the longest outline, or all of them filling the width."""
    return max(job.area / room, *(kind.box[2] for kind in job.kinds))


def _quick(pieces: Pieces, job: Job, width: float, hints: tuple[LayOrder, ...]) -> Packing:
    kit = pieces.kit(replace(job, strip=replace(job.strip, width=width)))
    return Searcher(kit, QUICK, hints=hints).run()


def _hint(packing: Packing) -> tuple[LayOrder, ...]:
    """Return the plan that places a layout's pieces from the start of the cloth onwards."""
    lying = sorted(packing.spots, key=lambda spot: (spot.x, spot.y))
    poses = tuple(spot.pose for spot in sorted(lying, key=lambda spot: spot.copy))
    return ((tuple(spot.copy for spot in lying), poses),)


def _too_wide(job: Job, room: float) -> list[str]:
    strip = replace(job.strip, width=room)
    return [kind.name for kind in job.kinds if not strip.holds(kind.box[3] - kind.box[1], kind.fold)]


def _few_poses(job: Job) -> Job:
    """Return the job with each copy lying on one face: as few no-fit polygons as will do."""
    copies = tuple(replace(copy, poses=_one_face(copy.poses)) for copy in job.copies)
    return replace(job, copies=copies)


def _one_face(poses: tuple[Pose, ...]) -> tuple[Pose, ...]:
    faces = {pose.mirror for pose in poses}
    fixed = len(faces) == 2 and len(poses) == 4
    return tuple(pose for pose in poses if not pose.mirror) if fixed else poses


def _shorter(lay: Lay, packing: Packing) -> Lay:
    better = packing.length < lay.length and not lay.left_out and not broken_rules(lay.job, packing)
    return replace(lay, packing=packing) if better else lay
