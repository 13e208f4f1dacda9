"""Close up a layout that was found with rough outlines: every piece slides back on fine ones."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from drafting.layout.packing.job import Kit
from drafting.layout.packing.model import Packing, Spot
from drafting.layout.packing.place import Laid, blocked_boxes, covered_stretches


def closed_up(kit: Kit, packing: Packing) -> Packing:
    """Return the layout with each piece slid towards the start of the cloth, the first one first.

    No piece changes its row or its pose. Where levels keep to a repeat along the cloth, nothing is
    moved.
    """
    if kit.job.strip.repeat:
        return packing
    lying = blocked_boxes(kit)
    spots: list[Spot] = []
    for spot in sorted(packing.spots, key=lambda s: (s.x, s.y)):
        kind = kit.job.copies[spot.copy].kind
        here = Laid(kind, spot.pose, round(spot.x * kit.scale), round(spot.y * kit.scale))
        slid = here._replace(x=min(here.x, _stop(kit, lying, here)))
        lying.append(slid)
        moved = spot if slid.x == here.x else replace(spot, x=slid.x / kit.scale)
        spots.append(moved)
    return kit.job.packing(tuple(spots), packing.engine)


def _stop(kit: Kit, lying: Sequence[Laid], here: Laid) -> int:
    """Return the x where a piece that slides back along its row meets the first other one, or 0."""
    stop = 0
    for there in sorted(lying, key=lambda laid: -_end(kit, laid)):
        if _end(kit, there) <= stop:
            break
        if there.x < here.x and _level_with(kit, there, here):
            stop = max(stop, _meets(kit, there, here))
    return stop


def _meets(kit: Kit, there: Laid, here: Laid) -> int:
    """Return the end of the last stretch that `there` bars on the row of `here`, up to its place."""
    paths, _ = kit.no_fit(there.kind, there.pose, here.kind, here.pose)
    flipped = [path[:, ::-1] for path in paths]
    ends = [high for low, high in covered_stretches(flipped, here.y - there.y) if low + there.x < here.x]
    return there.x + int(np.ceil(max(ends))) if ends else 0


def _end(kit: Kit, laid: Laid) -> int:
    """Return an x beyond which a piece bars nothing."""
    return laid.x + kit.size(laid.kind, laid.pose).width + _gap(kit)


def _level_with(kit: Kit, there: Laid, here: Laid) -> bool:
    a, b = kit.size(there.kind, there.pose).height, kit.size(here.kind, here.pose).height
    return there.y - b - _gap(kit) < here.y < there.y + a + _gap(kit)


def _gap(kit: Kit) -> int:
    """Return twice the gap and a little, grid steps: grown outlines reach no farther."""
    return round((2 * kit.job.strip.gap + 0.01 * kit.job.strip.width) * kit.scale)
