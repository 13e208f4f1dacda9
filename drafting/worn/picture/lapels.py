"""Lapels and collars laid on the cloth that they are turned over, and fronts on each other: a picture only.

In the reckoning a garment's own layers do not meet: a lapel may sink into the front beneath it, and what laps over
the middle stands straight on.
"""

from __future__ import annotations

from collections.abc import Set
from dataclasses import replace

import numpy as np

from drafting.geometry.curve import Points
from drafting.worn.contact import DistanceField
from drafting.worn.fronts import BEYOND
from drafting.worn.nouns import AtRest, Limb, Reals, SewnMesh, Truth, Whole
from drafting.worn.picture.dressed import whole_cloth
from drafting.worn.picture.laps import FrontsMeeting, meetings
from drafting.worn.picture.spots import spots_worn
from drafting.worn.picture.tucked import OuterCloth, evened, faces_out
from drafting.worn.rolls import laid_back, past_roll

ROUNDS = 6
"""How often it is lifted and evened out (ours: then nothing moves on)."""

LIFTED = 4.0
"""mm that it lies over the cloth beneath: two layers of velvet (ours)."""

SUNK = 60.0
"""mm: what lies deeper than that behind other cloth does not lie on it (by eye)."""


def turned_over(rest: AtRest, pieces: Set[str], field: DistanceField) -> Truth:
    """Return (T,): which triangles of the named pieces lie turned over, wrong side out.

    Of a piece with a roll line all beyond it, on the side where more faces inwards; of another all or nothing.
    """
    mesh = rest.mesh
    inwards = ~faces_out(whole_cloth(rest), field)[: len(mesh.sewn)]
    over = np.zeros(len(mesh.sewn), bool)
    for index, piece in enumerate(mesh.pieces):
        if piece.name in pieces:
            own = np.flatnonzero(mesh.piece == index)
            for part in _parts(mesh, index, own):
                over[part] = len(part) > 0 and bool(inwards[part].mean() > 0.5)
    return over


def _parts(mesh: SewnMesh, index: int, own: np.ndarray) -> tuple[np.ndarray, ...]:
    """Return the triangles of a piece on either side of its roll line; all of them where it has none."""
    rolls = mesh.pieces[index].rolls
    if not rolls:
        return (own,)
    turns = past_roll(rolls, mesh.places(mesh.triangles[own]).mean(axis=1))
    return own[turns], own[~turns]


def laid_on(rest: AtRest, over: Truth, field: DistanceField) -> AtRest:
    """Return a garment with what laps over its middle laid on its other hand, and what is turned `over` (T,)
    lifted on to the cloth beneath it; seams stay where they are."""
    rest = _lapped(rest, over, field)
    if not over.any():
        return rest
    mesh, even, beneath = rest.mesh, evened(rest), OuterCloth(rest, field, ~over)
    free = np.zeros(mesh.count, bool)
    free[mesh.sewn[over]] = True
    free[mesh.sewn[~over]] = False
    points = rest.points
    for _ in range(ROUNDS):
        found = beneath.beneath(points)
        rise = np.where(free & (found.outside > -SUNK), np.maximum(LIFTED - found.outside, 0.0), 0.0)
        move = rise[:, None] * found.way
        points = points + np.where((rise > 0.0)[:, None], move, (even @ move) * free[:, None])
    return replace(rest, points=points)


def _lapped(rest: AtRest, over: Truth, field: DistanceField) -> AtRest:
    """Return a garment with what lies beyond its middle in front laid on the cloth of the other hand."""
    mesh = rest.mesh
    points, laid = _folded_back(rest, over)
    if not mesh.halved:
        return replace(rest, points=points)
    beyond = ~laid & (points[:, 0] < -BEYOND) & ~np.isin(np.arange(mesh.count), _of_legs(mesh))
    own = ~(over | (beyond | laid)[mesh.sewn].any(axis=1))
    if not beyond.any() or not own.any():
        return replace(rest, points=points)
    found = OuterCloth(rest, field, own).beneath(points)
    lies = beyond & found.under & (np.abs(found.outside) < SUNK)
    return replace(rest, points=points - np.where(lies, found.outside, 0.0)[:, None] * found.way)


def _folded_back(rest: AtRest, over: Truth) -> tuple[Reals, Truth]:
    """Return the points (count, 3) with each lap laid on the other hand, and which ones (count,) that moved.

    The foot of a lapel lies on its own lap, and the rest of it follows.
    """
    mesh, points, moved = rest.mesh, rest.points.copy(), np.zeros(rest.mesh.count, bool)
    turned = np.isin(np.arange(mesh.count), mesh.sewn[over]) & ~np.isin(np.arange(mesh.count), mesh.sewn[~over])
    for meeting in meetings(mesh):
        side = meeting.own
        faces = mesh.triangles[mesh.piece == side.piece]
        own = np.unique(faces)
        flat, to = mesh.places(own), mesh.merged[own]
        lap = (side.inside(flat) < -BEYOND) & ~turned[to]
        if lap.any():
            points[to[lap]] = _lap_laid(rest, meeting, faces, flat[lap])
            moved[to[lap]] = True
            rolls = mesh.pieces[side.piece].rolls
            if rolls:
                over_it = laid_back(rolls, flat)
                lies = turned[to] & (side.inside(over_it) < 0.0)
                points[to[lies]] = _worn_at(points, mesh, faces, over_it[lies])
                moved[to[lies]] = True
    return _followed(rest, points, turned & ~moved), moved


def _lap_laid(rest: AtRest, meeting: FrontsMeeting, faces: Whole, flat: Points) -> Reals:
    """Return (N, 3): where places that are cut beyond their middle lie on the other hand's cloth.

    Where middle lies on middle, as far inside it as they were cut beyond; less by what the two hang apart, more by
    what they cross, so that a lap keeps its width. What the other hand does not reach goes straight towards it.
    Fronts that hang twice as far apart as the lap is wide are open: their laps stay as they hang.
    """
    foot, deep = meeting.foot(flat), -meeting.own.inside(flat)
    ours, theirs = (
        _worn_at(rest.points, rest.mesh, faces, foot),
        _on_other(rest, meeting, meeting.beside(foot, 0.0)),
    )
    inwards = _on_other(rest, meeting, meeting.beside(foot, INWARDS)) - theirs
    inwards /= np.maximum(np.linalg.norm(inwards, axis=1, keepdims=True), 1e-9)
    apart = -np.einsum("nc,nc->n", ours - theirs, inwards)
    reached = _on_other(rest, meeting, meeting.beside(foot, np.maximum(deep - apart, 0.0)))
    share = np.clip(deep / np.maximum(apart, 1e-9), 0.0, 1.0)[:, None]
    laid = np.where((deep < apart)[:, None], ours + share * (theirs - ours), reached)
    shut = np.clip(2.0 - apart / deep.max(), 0.0, 1.0)[:, None]
    hangs = _worn_at(rest.points, rest.mesh, faces, flat)
    found: Reals = hangs + shut * (laid - hangs)
    return found


def _followed(rest: AtRest, points: Reals, follows: Truth) -> Reals:
    """Return points, those that follow (count,) moved evenly along with what lies round them."""
    even, move = evened(rest), points - rest.points
    for _ in range(FOLLOWED):
        move = np.where(follows[:, None], even @ move, move)
    found: Reals = rest.points + move
    return found


def _on_other(rest: AtRest, meeting: FrontsMeeting, flat: Points) -> Reals:
    """Return (N, 3): where places of the other hand's front lie."""
    faces = rest.mesh.triangles[rest.mesh.piece == meeting.other.piece]
    found = _worn_at(rest.points, rest.mesh, faces, flat)
    return found * (-1.0, 1.0, 1.0) if meeting.mirrored else found


def _worn_at(points: Reals, mesh: SewnMesh, faces: Whole, spots: Points) -> Reals:
    return spots_worn(points, mesh, faces, spots)[0]


def _of_legs(mesh: SewnMesh) -> Whole:
    """Return the sewn vertices of legs, which lap over nothing."""
    legs = [index for index, piece in enumerate(mesh.pieces) if piece.limb is Limb.LEG]
    return np.unique(mesh.sewn[np.isin(mesh.piece, legs)])


INWARDS = 20.0
"""mm within a middle that tell which way a front's cloth goes on from it: one mesh's side (ours)."""

FOLLOWED = 40
"""How often what follows is evened out: a lapel's breadth of cloth on a mesh of 20 mm, some times over (ours)."""
