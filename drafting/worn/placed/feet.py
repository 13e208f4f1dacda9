"""Round foot and leg: what is drawn as they are seen from the side, as a shoe's upper is."""

from __future__ import annotations

import numpy as np

from drafting.draft.frame import BodyHeight
from drafting.worn.contact import DistanceField
from drafting.worn.form.form import Form
from drafting.worn.nouns import Reals, SewnMesh, SewnPiece, Whole
from drafting.worn.placed.outside import MARGIN

BAND = 15.0
"""mm: foot and leg are read at levels so far apart (ours)."""

SHARES = 33
"""Places on each half of a level, from the front to the back (ours)."""

RAYS, FINE, FARTHEST = 37, 6.0, 330.0
"""Ways on each half in which the skin is looked for, at every so many mm, so far out (ours)."""

DRAWN, STRIDE, PRESSED = 300, 2.0, 0.3
"""How often cloth is drawn close, how far past the mean of what a vertex's edges want, and how much less what is
pressed together wants to lengthen (ours: what starts pulled to ten times its length is then within a tenth)."""

LOW = 20.0
"""mm over the floor: no level is read below, where the sole turns under (ours)."""


def round_foot(mesh: SewnMesh, members: list[int], form: Form) -> tuple[list[Whole], list[Reals]]:
    """Return the flat vertices of one hand's pieces, and where each starts: round the form's foot at its height.

    Half of what goes round is drawn across, so a share of the cloth from front to back lies at the same share of
    that side of the foot; where the foot is longer than the cloth, which ends on the laces, at its length from
    the heel.
    """
    flats = [np.unique(mesh.triangles[mesh.piece == index]) for index in members]
    sides = [-mesh.pieces[i].frame.ahead.real for i in members]  # type: ignore[union-attr]
    from_toes = [side * mesh.flat[flat, 0] for side, flat in zip(sides, flats, strict=True)]
    heights = [_height(mesh.pieces[i], form) + mesh.flat[flat, 1] for i, flat in zip(members, flats, strict=True)]
    low, high = min(float(z.min()) for z in heights), max(float(z.max()) for z in heights)
    levels = np.linspace(max(low, LOW), high, max(3, int((high - low) / BAND)))
    halves = _halves(form, levels)
    first, last = _reach(np.concatenate(from_toes), np.concatenate(heights), levels)
    hand = -1.0 if mesh.pieces[members[0]].hand == "right" else 1.0
    found = []
    for side, x, z in zip(sides, from_toes, heights, strict=True):
        half = halves[:, 0 if side * hand > 0 else 1]
        found.append(_on_half(half, levels, x, z, first, last) * [hand, 1.0, 1.0])
    return flats, found


def _height(piece: SewnPiece, form: Form) -> float:
    """Return the height over the floor of y = 0 of a piece."""
    knee = piece.frame.at(BodyHeight.KNEE)
    return 0.0 if knee is None else form.levels["knee"] - knee.imag


def _halves(form: Form, levels: Reals) -> Reals:
    """Return each level of the left foot or leg (n, 2, SHARES, 2): outer half then inner half, front to back."""
    middle = np.column_stack([np.interp(levels, form.leg[::-1, 2], form.leg[::-1, i]) for i in range(2)])
    turns = np.linspace(0.0, np.pi, RAYS)  # from straight ahead over the outer side to the back
    way = np.array([[np.sin(turns), -np.cos(turns)], [-np.sin(turns), -np.cos(turns)]]).transpose(0, 2, 1)
    out = np.arange(0.0, FARTHEST, FINE)
    spots = middle[:, None, None, None] + way[None, :, :, None] * out[:, None]
    heights = np.broadcast_to(levels[:, None, None, None], spots.shape[:-1])
    told = form(np.stack([spots[..., 0].ravel(), spots[..., 1].ravel(), heights.ravel()])).reshape(
        spots.shape[:-1]
    )
    first = np.maximum((told > 0.0).argmax(axis=-1), 1)[..., None]
    inside, outside = (np.take_along_axis(told, first - i, axis=-1)[..., 0] for i in (1, 0))
    skin = out[first[..., 0]] - FINE * np.clip(outside / (outside - inside), 0.0, 1.0)
    lines = middle[:, None, None] + way[None] * skin[..., None]
    return np.array([[_even(line) for line in pair] for pair in lines])


def _even(line: Reals) -> Reals:
    """Return `SHARES` places along a line, as far from each other."""
    way = np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.diff(line, axis=0), axis=1))])
    at = np.linspace(0.0, way[-1], SHARES)
    return np.column_stack([np.interp(at, way, line[:, i]) for i in range(2)])


def _reach(x: Reals, z: Reals, levels: Reals) -> tuple[Reals, Reals]:
    """Return where the cloth begins and ends at each level, seen from the side."""
    near = np.abs(z[:, None] - levels[None]) < BAND
    return np.where(near, x[:, None], np.inf).min(axis=0), np.where(near, x[:, None], -np.inf).max(axis=0)


def _on_half(half: Reals, levels: Reals, x: Reals, z: Reals, first: Reals, last: Reals) -> Reals:
    """Return where vertices lie on one half of foot and leg, `x` from the toes back and `z` over the floor."""
    begins, ends = np.interp(z, levels, first), np.interp(z, levels, last)
    round_it = np.linalg.norm(np.diff(half, axis=1), axis=2).sum(axis=1)
    long = np.maximum(np.interp(z, levels, round_it), ends - begins)
    share = np.clip(1.0 - (ends - x) / long, 0.0, 1.0) * (SHARES - 1)
    row = np.clip(np.interp(z, levels, np.arange(len(levels))), 0, len(levels) - 1.001)
    at, on = row.astype(int), np.minimum(share.astype(int), SHARES - 2)
    up, along = (row - at)[:, None], (share - on)[:, None]
    lower = half[at, on] * (1 - along) + half[at, on + 1] * along
    upper = half[at + 1, on] * (1 - along) + half[at + 1, on + 1] * along
    return np.column_stack([lower * (1 - up) + upper * up, z])


def drawn_close(mesh: SewnMesh, points: Reals, members: list[int], distance: DistanceField) -> Reals:
    """Return the points with the cloth of these pieces as long as it is cut, outside the form.

    Over the instep, where foot and leg meet, level with level is no way round: cloth starts much drawn out there.
    """
    triangles = mesh.triangles[np.isin(mesh.piece, members)]
    ends = np.unique(np.sort(triangles[:, [0, 1, 1, 2, 2, 0]].reshape(-1, 2), axis=1), axis=0)
    long = np.linalg.norm(mesh.flat[ends[:, 0]] - mesh.flat[ends[:, 1]], axis=1)
    one, other = mesh.merged[ends].T
    own = np.unique(mesh.merged[triangles])
    met = np.maximum(np.bincount(np.concatenate([one, other]), minlength=mesh.count), 1.0)[:, None]
    found = points.copy()
    for _ in range(DRAWN):
        way = found[other] - found[one]
        now = np.maximum(np.linalg.norm(way, axis=1), 1e-6)
        pull = (0.5 * np.where(now > long, 1.0, PRESSED) * (now - long) / now)[:, None] * way
        moved = np.zeros_like(found)
        np.add.at(moved, one, pull)
        np.add.at(moved, other, -pull)
        found += STRIDE * moved / met
        near = distance.near(found[own], MARGIN, curved=False)
        inside = near.distance < MARGIN
        found[own[near.places[inside]]] += (MARGIN - near.distance[inside])[:, None] * near.gradient[inside]
        found[own, 2] = np.maximum(found[own, 2], MARGIN)
    return found
