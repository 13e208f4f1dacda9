"""Cloth on the form and on the floor: pressure that grows as it sinks in, and the one rule of friction."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from drafting.worn.contact import DistanceField
from drafting.worn.nouns import Reals, Truth, Whole
from drafting.worn.settled.sheet import ClothSheet

# N/m3: the form's firmness at a depth of one skin. It comes with depth, so that touching has no jump: a close
# top's 130 Pa sinks in by 0.2 mm.
FIRMNESS = 2e6
# m
SKIN = 3e-4
# Cloth on skin or shirt; from memory.
_FRICTION = 0.3
# Share of the form's firmness with which a held vertex clings to its place.
_CLINGS = 0.1
UPWARDS = np.array([0.0, 0.0, 1.0])
"""Out of the floor, which lies at z = 0."""


@dataclass(frozen=True, eq=False)
class Touch:
    """The k touches of vertices, `places` (k,): the first `on_form` of them of the form, the others of the floor.

    `out` (k, 3): the distance's gradient; `pressing` (k,) N; `firmness` (k,) N/m its rate; `energy` J. Cloth
    between a foot and the floor touches both.
    """

    places: Whole
    out: Reals
    pressing: Reals
    firmness: Reals
    energy: float
    on_form: int


@dataclass(frozen=True, eq=False)
class Held:
    """Friction as last looked at, of k vertices `places`.

    Each is pressed with `pressing` (k,) N along `out` (k, 3) and clings to `anchors` (k, 3) m with
    `stiffness` (k,) N/m.
    """

    places: Whole
    pressing: Reals
    out: Reals
    anchors: Reals
    stiffness: Reals


@dataclass(frozen=True, eq=False)
class Clinging:
    """What friction does: `energy` J, `drag` (k, 3) N, `rate` (k,) N/m in the plane of touch."""

    energy: float
    drag: Reals
    rate: Reals


def touching(sheet: ClothSheet, field: DistanceField | None, off: Reals, points: Reals) -> Touch:
    """`off` (count,) m: how far cloth's middle lies from what it rests on. Without a form there is no floor."""
    if field is None:
        return _touch(sheet, np.zeros(0, dtype=np.int64), np.zeros(0), np.zeros((0, 3)), 0)
    near = field.near(points * 1e3, float(off.max()) * 1e3, curved=False)
    depth = off[near.places] - near.distance * 1e-3
    on = depth > 0.0
    low = np.flatnonzero(points[:, 2] < off)
    places = np.concatenate([near.places[on], low])
    sunk = np.concatenate([depth[on], off[low] - points[low, 2]])
    out = np.concatenate([near.gradient[on], np.tile(UPWARDS, (len(low), 1))])
    return _touch(sheet, places, sunk, out, int(on.sum()))


def _touch(sheet: ClothSheet, places: Whole, depth: Reals, out: Reals, on_form: int) -> Touch:
    """What pressure comes of a `depth` (k,) m."""
    firm = FIRMNESS * sheet.share[places]
    return Touch(
        places=places,
        out=out,
        pressing=firm * depth**2 / (2.0 * SKIN),
        firmness=firm * depth / SKIN,
        energy=float(firm @ depth**3) / (6.0 * SKIN),
        on_form=on_form,
    )


def touch_blocks(touch: Touch, field: DistanceField | None, points: Reals) -> Reals:
    """(k, 3, 3) N/m; given the `field`, with its curvature, which makes cloth on a round form less steady."""
    blocks = touch.firmness[:, None, None] * touch.out[:, :, None] * touch.out[:, None, :]
    if field is None:
        return blocks
    on = slice(touch.on_form)
    bend = field.near(points[touch.places[on]] * 1e3, np.inf).hessian * 1e3
    blocks[on] -= touch.pressing[on, None, None] * bend
    return blocks


def unheld() -> Held:
    none = np.zeros(0)
    return Held(np.zeros(0, dtype=np.int64), none, np.zeros((0, 3)), np.zeros((0, 3)), none)


def held_by(sheet: ClothSheet, touch: Touch, points: Reals, slip: Reals) -> Held:
    """Whoever is in touch clings to the place from which it was drawn by `slip` (count, 3) m."""
    return Held(
        places=touch.places,
        pressing=touch.pressing,
        out=touch.out / np.linalg.norm(touch.out, axis=1)[:, None],
        anchors=points[touch.places] - slip[touch.places],
        stiffness=_CLINGS * FIRMNESS * sheet.share[touch.places],
    )


def held_anew(sheet: ClothSheet, before: Held, touch: Touch, points: Reals) -> Held:
    """Look again who presses how hard. Where a vertex slid, its anchor is drawn along behind it."""
    return held_by(sheet, touch, points, slip_of(before, points))


def slip_of(held: Held, points: Reals) -> Reals:
    """(count, 3) m: how far each vertex is drawn from its anchor, no farther than friction can hold it."""
    away = slipped(held, points)
    reach = _FRICTION * held.pressing / held.stiffness
    found = np.zeros_like(points)
    far = np.sqrt((away * away).sum(axis=1)) + 1e-15
    found[held.places] = away * np.minimum(1.0, reach / far)[:, None]
    return found


def slipped(held: Held, points: Reals) -> Reals:
    """(k, 3) m: away from the anchors, in the plane of touch."""
    away = points[held.places] - held.anchors
    sunk: Reals = away - (away * held.out).sum(axis=1)[:, None] * held.out
    return sunk


def clinging(held: Held, points: Reals) -> Clinging:
    """Cloth clings up to friction times pressure, then slides against that drag."""
    away = slipped(held, points)
    far = np.sqrt((away * away).sum(axis=1) + 1e-18)
    most = _FRICTION * held.pressing
    sticks: Truth = held.stiffness * far <= most
    rate = np.where(sticks, held.stiffness, most / far)
    sliding = most * (far - 0.5 * most / held.stiffness)
    stored = np.where(sticks, 0.5 * held.stiffness * far**2, sliding)
    return Clinging(energy=float(stored.sum()), drag=rate[:, None] * away, rate=rate)


def cling_blocks(held: Held, by: Clinging) -> Reals:
    """(k, 3, 3) N/m: in the plane of touch; while it slides a little more than the true one, never negative."""
    plane: Reals = by.rate[:, None, None] * (np.eye(3) - held.out[:, :, None] * held.out[:, None, :])
    return plane
