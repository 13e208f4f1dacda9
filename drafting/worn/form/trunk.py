"""The trunk: a stack of sections from crotch to shoulder, cut off above by the slope of the shoulders.

Between hip and crotch its section runs over into those of the two legs, so that groin, seat fold and
the line between the legs come about by themselves, and no edge stands where trunk and leg meet.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from drafting.worn.form.dials import Dials
from drafting.worn.form.shapes import Stack, cut, ended, oval, stacked
from drafting.worn.form.sizes import Sizes, Slice
from drafting.worn.nouns import Reals

WIDEST = 0.50
"""How far forward of the back, as a share of the depth, a section is widest (ours)."""


@dataclass(frozen=True, eq=False)
class Trunk:
    """`stack` holds half breadth, front, back, power; `legs` middle, half breadth, middle y, half depth."""

    sizes: Sizes
    dials: Dials
    stack: Stack
    legs: Stack
    top: float

    def __call__(self, at: Reals) -> Reals:
        """Distance (n,) of points (3, n), arms, neck and head left out."""
        x, y, z = np.abs(at[0]), at[1], at[2]
        low = z < self.top
        found = np.empty_like(x)
        found[low] = self._below(x[low], y[low], z[low])
        high = ~low
        found[high] = self._body(x[high], y[high], z[high])
        return cut(found, self._roof(x, y, z), 50 * self.sizes.unit)

    def _below(self, x: Reals, y: Reals, z: Reals) -> Reals:
        """Below the hip: legs, and above the crotch more and more of the trunk."""
        share = self.mixed(z)
        leg = self.leg(x, y, z)
        some = share > 0
        leg[some] += share[some] * (self._body(x[some], y[some], z[some]) - leg[some])
        return leg

    def mixed(self, z: Reals) -> Reals:
        """How far a section is the trunk's (1) or the legs' (0)."""
        floor = self.sizes.levels.crotch + self.dials.crotch_up
        t = np.clip((z - floor) / (self.top - floor), 0.0, 1.0)
        found: Reals = 1.0 - (1.0 - t) ** self.dials.square
        return found

    def leg(self, x: Reals, y: Reals, z: Reals) -> Reals:
        """Distance to the left leg."""
        middle, half, depth_at, deep = self.legs.at(z)
        soft = np.sqrt(x * x + (1.5 * self.sizes.unit) ** 2)
        u, v = (soft - middle) / half, (y - depth_at) / deep
        reach = np.sqrt(u * u + v * v) + 1e-9
        slope = np.sqrt((u / half) ** 2 + (v / deep) ** 2) / reach + 1e-9
        return ended((reach - 1.0) / slope, self.legs.beyond(z))

    def _body(self, x: Reals, y: Reals, z: Reals) -> Reals:
        half, front, back, power = self.stack.at(z)
        widest = back + WIDEST * (front - back)
        ahead = y < widest
        if self.dials.breasts > 0:
            front = front - self._breasts(x, z)
        deep = np.where(ahead, widest - front, back - widest)
        return ended(oval(x, np.abs(y - widest), (half, deep), power), self.stack.beyond(z))

    def _breasts(self, x: Reals, z: Reals) -> Reals:
        """How far (n,) the front stands out, mm."""
        lv, apart = self.sizes.levels, self.sizes.wanted["bust_point_width"]
        off = z - lv.bust
        above, below = (lv.armpit - lv.bust) * 1.5 + 10 * self.sizes.unit, (lv.bust - lv.under_bust) * 1.05
        t = np.clip(np.abs(off) / np.where(off > 0, above, below), 0.0, 1.0)
        tall = np.where(off > 0, (1 - t * t) ** 1.6, (1 - t**1.7) ** 1.8)
        width = 0.40 * apart
        wide = np.exp(-(((x - apart / 2) / width) ** 2)) + np.exp(-(((x + apart / 2) / width) ** 2))
        found: Reals = self.dials.breasts * tall * wide
        return found

    def _roof(self, x: Reals, y: Reals, z: Reals) -> Reals:
        """Distance to the slope of the shoulders, negative below it."""
        s, k = self.sizes, self.dials
        u = s.unit
        (xn, zn), (xs, zs) = s.side_neck, s.shoulder
        ridge, fall = ridge_at(s), (zn - zs) / (xs - xn)
        steep = fall + (k.lift_in - k.lift_out) / (xs - xn)
        middle = zn + k.lift_in + steep * xn
        soft = np.sqrt(x * x + (12 * u) ** 2)
        behind = _curve(zn + fall * xn - s.levels.nape - k.lift_back, s.nape - ridge, u)
        ahead = _curve(zn + fall * xn - s.levels.throat, ridge - s.throat, u)
        off = y - ridge
        drop = np.where(off > 0, _bent(off, behind, 1.6), _bent(off, ahead, 1.1))
        away = 0.6 * np.minimum(np.abs(off) / (60 * u), 1.0)
        found: Reals = (z - (middle - steep * soft - drop)) / np.sqrt(1.0 + steep**2 + away**2)
        return found


def ridge_at(s: Sizes) -> float:
    """The y of the line along the top of the shoulder."""
    return s.neck_side + 6 * s.unit


def _curve(drop: float, at: float, u: float) -> float:
    """The curvature (1 / mm) by which a ridge falls `drop` mm over `at`."""
    return max(drop, 1.0 * u) * 2.0 / max(at, 10.0 * u) ** 2


def _bent(off: Reals, curve: float, most: float) -> Reals:
    """A parabola that runs out into straight lines of slope `most`."""
    found: Reals = (most**2 / curve) * (np.sqrt(1.0 + (curve * off / most) ** 2) - 1.0)
    return found


def trunk(s: Sizes, k: Dials) -> Trunk:
    """The trunk with its legs, as the knobs stand."""
    lv, u = s.levels, s.unit
    top = max(lv.hip, lv.crotch + 85 * u)
    hip = scaled(s.slices["hip_girth"], k.scales["hip_girth"])
    legs = leg_rows(s, k, hip, top)
    return Trunk(s, k, stacked(_rows(s, k, hip, legs), 22 * u), stacked(legs, 12 * u), top)


def scaled(one: Slice, by: float) -> Slice:
    middle = one.middle
    return Slice(
        one.breadth * by, middle + (one.front - middle) * by, middle + (one.back - middle) * by, one.power
    )


def _rows(s: Sizes, k: Dials, hip: Slice, legs: Reals) -> Reals:
    """Height, half breadth, front, back, power from the crotch to above the shoulder."""
    lv, u = s.levels, s.unit
    waist, under, high = (
        scaled(s.slices[name], k.scales[name]) for name in ("waist_girth", "under_bust_girth", "high_bust_girth")
    )
    t = (lv.bust - lv.under_bust) / (lv.armpit - lv.under_bust)
    lower = 1.1 * (lv.under_bust - lv.waist) / (lv.armpit - lv.waist)
    high, under = high.moved(k.rounded), under.moved(lower * k.rounded)
    bust = deeper_chest(_between(under, high, t), k.scales["bust_girth"])
    belly = _between(waist, hip, 0.5)
    full = max(waist.front * -1, hip.front * -1)
    belly = Slice(belly.breadth, 0.5 * (belly.front - full) - 2 * u, belly.back - 3 * u, belly.power)
    half = (lv.armpit + s.shoulder[1]) / 2
    thigh = legs[-3]
    seat = [lv.crotch, thigh[1] + thigh[2], thigh[3] - thigh[4], thigh[3] + thigh[4], 3.0]
    rows = [[lv.crotch - 40 * u, *seat[1:]], seat]
    for z, one in ((lv.hip, hip), ((lv.hip + lv.waist) / 2, belly), (lv.waist, waist), (lv.under_bust, under)):
        rows.append([z, one.breadth, one.front, one.back, one.power])
    rows.append([lv.bust, bust.breadth, bust.front, bust.back, bust.power])
    rows.append([lv.armpit, high.breadth, high.front, high.back, high.power])
    upper = (s.nape + high.back) / 2 + 12 * u + 0.9 * k.rounded
    chest = 0.5 * s.throat + 0.5 * (0.3 * high.front + 0.7 * bust.front) - 5 * u
    rows.append([half, k.across, chest, upper, 2.5])
    rows.append(
        [
            lv.throat,
            s.shoulder[0] - 6 * u,
            s.throat + 2 * u - 0.5 * k.lift_front,
            s.nape + 26 * u + 0.55 * k.rounded,
            2.4,
        ]
    )
    rows.append([lv.nape + 30 * u, s.shoulder[0] - 10 * u, s.throat + 34 * u, s.nape + 22 * u, 2.4])
    return np.array([[z, a, f, b, n] for z, a, f, b, n in rows])


def deeper_chest(one: Slice, by: float) -> Slice:
    """A chest that grows more to the front than in breadth."""
    more = by - 1.0
    return replace(
        one, breadth=one.breadth * (1.0 + 0.75 * more), front=one.front - 1.6 * more * (one.back - one.front)
    )


def _between(one: Slice, other: Slice, t: float) -> Slice:
    parts = zip(
        (one.breadth, one.front, one.back, one.power),
        (other.breadth, other.front, other.back, other.power),
        strict=True,
    )
    return Slice(*(a + t * (b - a) for a, b in parts))


def half_deep(half: float, girth: float) -> float:
    """The half depth of an ellipse of this half breadth and girth, mm (Ramanujan's formula)."""
    low, high = 0.2 * half, 5.0 * half
    for _ in range(40):
        deep = (low + high) / 2
        round_ = np.pi * (3 * (half + deep) - np.sqrt((3 * half + deep) * (half + 3 * deep)))
        low, high = (deep, high) if round_ < girth else (low, deep)
    return (low + high) / 2


def leg_rows(s: Sizes, k: Dials, hip: Slice, top: float) -> Reals:
    """Height, middle, half breadth, middle y, half depth from the ankle up to the hip, in rising order."""
    lv, u = s.levels, s.unit
    names = ("thigh_girth", "lower_thigh_girth", "knee_girth", "calf_girth", "ankle_girth")
    deep = [half_deep(h, s.wanted[n]) for (_, _, h), n in zip(s.legs, names, strict=True)]
    thigh_back = hip.back - 0.07 * (hip.back - hip.front)
    knee_back = deep[2] - 2 * u
    backs = [
        thigh_back,
        knee_back + 0.30 * (thigh_back - knee_back) - 2 * u,
        knee_back,
        knee_back + 16 * u,
        knee_back - 4 * u,
    ]
    rows = []
    for (z, c, h), d, b, n in zip(s.legs, deep, backs, names, strict=True):
        by = k.scales[n]
        inside = c - h
        rows.append([z, max(c, h * by + inside), h * by, b - d, d * by])
    z, c, h, y, d = rows[0]
    outer = hip.breadth * 1.0
    rows.insert(0, [top + 20 * u, outer / 2, outer / 2, hip.middle, (hip.back - hip.front) / 2])
    mid = 0.5 * (lv.crotch + top)
    out = 0.5 * (c + h) + 0.5 * outer
    rows.insert(1, [mid, out - h * 1.0, h * 1.0, 0.6 * y + 0.4 * hip.middle, d * 1.02])
    rows.insert(2, [lv.crotch + 4 * u, c, h, y, d])
    z, c, h, y, d = rows[-1]
    rows.append([26 * u, c, h * 1.05, y + 4 * u, d * 1.12])
    return np.array(sorted(rows))
