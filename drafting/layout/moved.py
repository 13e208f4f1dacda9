"""Move one piece of a lay by hand: it snaps, overlap is refused, the new length is told."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.ground.names import name_in_words
from drafting.ground.nearest import meant
from drafting.layout.lay import Lay
from drafting.layout.packing.clip import left_over
from drafting.layout.packing.job import Kit
from drafting.layout.packing.model import Packing, Pose, Spot, box_of
from drafting.layout.packing.place import Laid, blocked_boxes, blocked_by
from drafting.layout.packing.verify import broken_rules
from drafting.layout.remarks import lay_findings
from drafting.layout.repeat import nearest_on_repeat

SNAP = 15.0
"""mm: a piece let go so near to a place where it touches its neighbours goes there (ours)."""

REACH = 40.0
"""mm: a piece let go on top of others moves so far by itself, and no farther (ours)."""


def moved(
    lay: Lay, piece: str, x: float, y: float, pose: Pose | None = None, snap: float = SNAP, kit: Kit | None = None
) -> Lay:
    """Return the lay with one outline moved so that its box begins at (x, y), or near it.

    `piece` is an outline's name as `Lay.id` gives it. Within `snap` mm the outline goes to a corner
    where it touches its neighbours or the cloth's edge; one on the fold stays on the fold, and
    on cloth with a repeat the outline goes to the nearest place that keeps to it. With a
    `pose` it is turned as well, only as grain and nap allow. `length` of the lay returned is the new
    one. Raises `DraftError` where other pieces lie there, or where there is no such outline or pose.
    A `kit` of the lay's job that is kept from move to move makes the next ones quick.
    """
    spot = next((s for s in lay.packing.spots if lay.id(s) == piece), None)
    if spot is None:
        known = meant(piece, (lay.id(s) for s in lay.packing.spots))
        raise DraftError(f"no outline {piece!r} lies here", turn=known)
    if not (math.isfinite(x) and math.isfinite(y)):
        raise DraftError(f"{name_in_words(piece)} cannot lie at ({x}, {y})")
    old, others = spot, [s for s in lay.packing.spots if s is not spot]
    if pose is not None and pose not in lay.job.copies[spot.copy].poses:
        raise DraftError(f"{name_in_words(piece)} cannot be turned so: its grain, nap or hand forbids it")
    spot = replace(spot, pose=pose or spot.pose)
    there = _snapped(lay, others, spot, complex(x, _row_of(lay, spot, y)), snap, kit or Kit(lay.job))
    spots = tuple(replace(spot, x=there.real, y=there.imag) if s is old else s for s in lay.packing.spots)
    packing = lay.job.packing(spots, "moved by hand")
    faults_found = broken_rules(lay.job, packing)
    if faults_found:
        raise DraftError(f"{name_in_words(piece)} cannot lie there: {faults_found[0]}")
    new = replace(lay, packing=packing)
    return replace(new, findings=lay_findings(new))


def _row_of(lay: Lay, spot: Spot, y: float) -> float:
    """Return the y asked for; where a fold edge has to lie on a fold, that of the first or the second of two."""
    if not lay.outline(spot).fold:
        return y
    if lay.job.strip.meet is None or not spot.pose.over:
        return 0.0
    box = box_of(tuple(spot.pose.of(p) for p in lay.outline(spot).ring))
    return lay.job.strip.width - (box[3] - box[1])


def next_pose(lay: Lay, piece: str) -> Pose:
    """Return the pose that comes after an outline's own among those its grain and nap allow."""
    spot = next(s for s in lay.packing.spots if lay.id(s) == piece)
    poses = lay.job.copies[spot.copy].poses
    return poses[(poses.index(spot.pose) + 1) % len(poses)] if spot.pose in poses else poses[0]


def _snapped(lay: Lay, others: Sequence[Spot], spot: Spot, wanted: complex, snap: float, kit: Kit) -> complex:
    """Return the free place for a spot that is nearest to the one wanted."""
    step = 1 / kit.scale
    rest = _free(kit, others, spot, wanted)
    at = complex(round(wanted.real * kit.scale), round(wanted.imag * kit.scale))
    if kit.job.strip.repeat or kit.step(kit.job.copies[spot.copy].kind, spot.pose):
        kept = nearest_on_repeat(kit, rest, others, spot, at)
        if kept is None or abs(kept - at) * step > max(REACH, *_repeats(kit)):
            raise _refused(lay, others, spot, wanted)
        return complex(kept.real * step, _row_of(lay, spot, kept.imag * step))
    corners = [complex(*corner) for path in rest for corner in path]
    edge = min((_nearest(path, at) for path in rest), key=lambda p: abs(p - at), default=None)
    if edge is None:
        raise _refused(lay, others, spot, wanted)
    corner = min(corners, key=lambda p: abs(p - at))
    if abs(corner - at) * step <= snap:
        return corner * step
    if _is_in(rest, at) and abs(edge - at) * step > snap:
        return wanted
    if abs(edge - at) * step <= (snap if _is_in(rest, at) else REACH):
        # Rounded towards the free side: an edge of the grid may cut a hair off a neighbour.
        return edge * step
    raise _refused(lay, others, spot, wanted)


def _is_near(kit: Kit, there: Spot, spot: Spot, wanted: complex) -> bool:
    """Say whether a piece can be in the way of a spot that is let go near `wanted`."""
    kinds = (kit.job.copies[s.copy].kind for s in (there, spot))
    a, b = (kit.size(kind, s.pose) for kind, s in zip(kinds, (there, spot), strict=True))
    room = max(REACH, *_repeats(kit)) + 4 * kit.job.strip.gap + 2 * SNAP
    return (
        there.x - b.width / kit.scale - room < wanted.real < there.x + a.width / kit.scale + room
        and there.y - b.height / kit.scale - room < wanted.imag < there.y + a.height / kit.scale + room
    )


def _repeats(kit: Kit) -> tuple[float, float]:
    return kit.job.strip.repeat or 0.0, kit.job.strip.repeat_across or 0.0


def _free(kit: Kit, others: Sequence[Spot], spot: Spot, wanted: complex) -> list[list[list[int]]]:
    copies = kit.job.copies
    lying = blocked_boxes(kit) + [
        Laid(copies[s.copy].kind, s.pose, round(s.x * kit.scale), round(s.y * kit.scale))
        for s in others
        if _is_near(kit, s, spot, wanted)
    ]
    kind = copies[spot.copy].kind
    room = blocked_by(kit, lying, kind, spot.pose)
    far = max(room.reach, round(wanted.real * kit.scale)) + round(1000 * kit.scale)
    # A piece on the fold, or as wide as the cloth, has a line to go along: a box of no height.
    return left_over((0, room.low, far, max(room.low + 1, room.high)), room.blockers)


def _nearest(path: list[list[int]], at: complex) -> complex:
    """Return the point of a closed line on the grid that is nearest to `at`."""
    p = np.array([complex(*corner) for corner in path])
    d = np.roll(p, -1) - p
    long = np.maximum(np.abs(d) ** 2, 1e-12)
    t = np.clip(((at - p) * d.conj()).real / long, 0, 1)
    found = p + t * d
    return complex(found[np.argmin(np.abs(found - at))])


def _is_in(paths: list[list[list[int]]], at: complex) -> bool:
    """Say whether a point lies inside outlines and outside their holes (crossings to its right)."""
    inside = False
    for path in paths:
        for (ax, ay), (bx, by) in zip(path, [*path[1:], path[0]], strict=True):
            if (ay > at.imag) != (by > at.imag):
                inside ^= at.real < ax + (at.imag - ay) * (bx - ax) / (by - ay)
    return inside


def _refused(lay: Lay, others: Sequence[Spot], spot: Spot, wanted: complex) -> DraftError:
    trial = Packing(math.inf, (*others, replace(spot, x=wanted.real, y=wanted.imag)))
    said = next((s for s in broken_rules(lay.job, trial) if "overlap" in s or "off the cloth" in s), "")
    return DraftError(
        f"{name_in_words(lay.id(spot))} cannot lie there" + (f": {said.split(' by ')[0]}" if said else ""),
        value=f"{told(wanted.real)} along, {told(wanted.imag)} across",
        turn="let it go on free cloth",
    )
