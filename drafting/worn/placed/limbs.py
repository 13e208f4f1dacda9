"""Round arm and leg: tubes about the limb's axis, as wide as the cloth is there."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from drafting.draft.frame import BodyHeight
from drafting.draft.roles import PieceRole
from drafting.worn.nouns import Reals, SewnMesh, SewnPiece, Whole

LOWERED = 14.0
"""mm: how far below the shoulder joint a crown starts (ours, by eye: a cap stands over the joint)."""

BAND = 15.0
"""mm: the width of a tube is read over bands of the cloth so deep (ours)."""

FULL, OVER = 0.75, 60.0
"""Lower than where the cloth is so much as wide as it is within so many mm above, a slanting hem has ended part of
it (ours: a sleeve narrows to 0.88 over that length)."""

LEAST = 25.0
"""mm: no tube starts narrower in the half (ours: a wrist is 25)."""


@dataclass(frozen=True, eq=False)
class Tube:
    """Pieces that go round one limb: for each its flat vertices, height over the common level, way across."""

    pieces: tuple[int, ...]
    vertices: tuple[Whole, ...]
    up: tuple[Reals, ...]
    across: tuple[Reals, ...]
    radius: tuple[Reals, ...]


def tube(mesh: SewnMesh, members: list[int], level: BodyHeight, below: float, body: Mapping[str, float]) -> Tube:
    """Return the pieces `members` laid side by side round a limb, `level` at up = 0.

    A piece that does not reach it lies by another height that it states; `body` tells the wearer's, mm.
    Over `below` mm the width is taken as it is at `below`: a cap or a seat closes no tube, nor a slanting hem.
    """
    flats = [np.unique(mesh.triangles[mesh.piece == index]) for index in members]
    ups, spans = [], []
    for index, flat in zip(members, flats, strict=True):
        up = mesh.flat[flat, 1] - _level(mesh.pieces[index], level, mesh.flat[flat, 1], body)
        ups.append(up)
        spans.append(_spans(mesh, index, up.max() - mesh.flat[flat, 1].max()))
    low, high = min(float(up.min()) for up in ups), max(float(up.max()) for up in ups)
    heights = np.arange(low, high + BAND, BAND)
    lefts = [np.interp(heights, h, left) for h, left, _ in spans]
    rights = [np.interp(heights, h, right) for h, _, right in spans]
    total = sum(right - left for left, right in zip(lefts, rights, strict=True))
    closed = np.clip(heights, _over_hem(heights, total), below)
    total = np.interp(closed, heights, total)
    radius = np.maximum(total / (2 * np.pi), LEAST)
    radii, acrosses = [], []
    for flat, up, left, right in zip(flats, ups, lefts, rights, strict=True):
        middle = np.interp(np.clip(up, closed[0], below), heights, (left + right) / 2)
        radii.append(np.interp(up, heights, radius))
        acrosses.append(mesh.flat[flat, 0] - middle)
    return Tube(tuple(members), tuple(flats), tuple(ups), tuple(acrosses), tuple(radii))


def _over_hem(heights: Reals, total: Reals) -> float:
    """Return the lowest height at which the whole of the cloth is there."""
    count = int(OVER / BAND) + 1
    wide = np.array([total[at : at + count].max() for at in range(len(total))])
    return float(heights[(total >= FULL * wide).argmax()])


def _level(piece: SewnPiece, level: BodyHeight, y: Reals, body: Mapping[str, float]) -> float:
    """Return where the level lies on a piece: as stated, or as far from what it states as on the body."""
    place = piece.frame.at(level)
    if place is None and level is BodyHeight.CROTCH and (knee := piece.frame.at(BodyHeight.KNEE)):
        return knee.imag + body["crotch"] - body["knee"]
    return float(y.max()) if place is None else place.imag


def _spans(mesh: SewnMesh, index: int, moved: float) -> tuple[Reals, Reals, Reals]:
    """Return heights up a piece, and where the cloth begins and ends across at each."""
    triangles = mesh.triangles[mesh.piece == index]
    ends = mesh.flat[triangles[:, [0, 1, 1, 2, 2, 0]].reshape(-1, 2)]
    low, high = ends[:, :, 1].min(), ends[:, :, 1].max()
    heights = np.linspace(low, high, max(3, int((high - low) / BAND)) + 1)[1:-1]
    below, above = ends[:, 0, 1] < heights[:, None], ends[:, 1, 1] < heights[:, None]
    step = np.where(ends[:, 1, 1] == ends[:, 0, 1], 1.0, ends[:, 1, 1] - ends[:, 0, 1])
    x = ends[:, 0, 0] + (heights[:, None] - ends[:, 0, 1]) * (ends[:, 1, 0] - ends[:, 0, 0]) / step
    crossed = below != above
    return heights + moved, np.where(crossed, x, np.inf).min(axis=1), np.where(crossed, x, -np.inf).max(axis=1)


def round_arm(mesh: SewnMesh, sleeve: Tube, axis: Reals, hand: float) -> list[Reals]:
    """Return where each piece of a sleeve starts round the arm (axis: shoulder, elbow, wrist of the left).

    What is longer than to the wrist starts pushed up to it: lower down the thumb would stick through it.
    """
    shoulder, elbow, wrist = axis
    crowns = [mesh.pieces[i].frame.at(BodyHeight.CROWN) for i in sleeve.pieces]
    crown = max(float(up.max()) for up in sleeve.up) if not any(crowns) else 0.0
    for index, place in zip(sleeve.pieces, crowns, strict=True):
        if place is not None:
            crown = place.imag - _level(mesh.pieces[index], BodyHeight.ARMPIT, np.array([place.imag]), {})
    upper = (elbow - shoulder) / np.linalg.norm(elbow - shoulder)
    lower = (wrist - elbow) / np.linalg.norm(wrist - elbow)
    out = np.array([1.0, 0.0, 0.0]) - upper * upper[0]
    out /= np.linalg.norm(out)
    behind = np.cross(upper, out)
    behind = behind if behind[1] > 0 else -behind
    length = float(np.linalg.norm(elbow - shoulder))
    beyond = crown - min(float(up.min()) for up in sleeve.up) - LOWERED - length
    short = min(1.0, float(np.linalg.norm(wrist - elbow)) / beyond) if beyond > 0.0 else 1.0
    found = []
    for index, up, across, radius in zip(sleeve.pieces, sleeve.up, sleeve.across, sleeve.radius, strict=True):
        down = crown - up - LOWERED
        axis_at = shoulder + np.minimum(down, length)[:, None] * upper
        axis_at = axis_at + short * np.maximum(down - length, 0.0)[:, None] * lower
        under = np.pi if mesh.pieces[index].role is PieceRole.UNDER_SLEEVE else 0.0
        turn = under + hand * across / radius
        points = axis_at + radius[:, None] * (np.cos(turn)[:, None] * out + np.sin(turn)[:, None] * behind)
        found.append(points * [hand, 1.0, 1.0])
    return found


def round_leg(leg: Tube, axis: Reals, crotch: float, hand: float, behind: tuple[bool, ...]) -> list[Reals]:
    """Return where each piece of a leg starts round it; `behind` says which pieces lie at the back.

    What is as long as to the floor starts pushed up to the ankle: lower down the foot would stick through it.
    """
    line = axis[::-1]
    ankle, knee = line[0, 2], line[1, 2]
    lowest = crotch + min(float(up.min()) for up in leg.up)
    short = min(1.0, (knee - ankle) / (knee - lowest)) if lowest < knee else 1.0
    found = []
    for up, across, radius, back in zip(leg.up, leg.across, leg.radius, behind, strict=True):
        z = crotch + up
        z = np.where(z < knee, knee - short * (knee - z), z)
        x, y = (np.interp(z, line[:, 2], line[:, i]) for i in (0, 1))
        turn, way = hand * across / radius, 1.0 if back else -1.0
        points = np.column_stack([x - way * radius * np.sin(turn), y + way * radius * np.cos(turn), z])
        found.append(points * [hand, 1.0, 1.0])
    return found


def under_fork(x: Reals, up: Reals, seat: Reals, fork: Reals) -> Reals:
    """Return where the vertices of one half of a crotch seam start, from the trunk to the fork, in x = 0.

    `x` across the flat piece says how far each has gone under: all the way at the fork, where `up` is least.
    """
    points = seat * [0.0, 1.0, 1.0]
    if len(x) < 2:
        return points
    lowest, highest = x[up.argmin()], x[up.argmax()]
    gone = np.clip((x - highest) / (lowest - highest), 0.0, 1.0) if lowest != highest else np.ones(len(x))
    points[:, 1] += gone * (fork[1] - points[:, 1])
    points[:, 2] = np.minimum(points[:, 2], fork[2] + np.maximum(up, 0.0))
    return points
