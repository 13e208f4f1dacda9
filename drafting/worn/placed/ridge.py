"""Shoulder seams start on the shoulders, and what lies in front of and behind them moves with them."""

from __future__ import annotations

import numpy as np

from drafting.worn.form.form import Form
from drafting.worn.nouns import Reals, SewnMesh
from drafting.worn.placed.trunk import ROUND, Wraps

BEHIND = 15.0
"""mm behind the shoulder point and the side of the neck that shoulder seams start (ours: at rest on six people
they lay 6 to 30 behind)."""


def shoulders_seated(mesh: SewnMesh, form: Form, body: Wraps, z: Reals, way: Reals, hand: Reals) -> Reals:
    """Return the way round the trunk with the shoulder seams of each hand over the shoulder, not behind it.

    A wide lap in front, or a round back, draws a field that is even round the body backwards; an armhole in
    front then starts behind the arm. Nothing moves below the bust line, all of it at the shoulder seams.
    """
    found = way.copy()
    low = form.levels["bust"]
    for side in np.unique(hand):
        own = mesh.shoulders[(hand[mesh.shoulders] == side) & ~np.isnan(z[mesh.shoulders])]
        if not len(own) or (top := float(z[own].mean())) <= low:
            continue
        is_at = float(way[own].mean())
        goes_to = _way_over(form, body, top, side)
        here = (hand == side) & (z > low) & ~np.isnan(way)
        knot = is_at + np.clip((z[here] - low) / (top - low), 0.0, 1.0) * (goes_to - is_at)
        at = way[here]
        found[here] = np.where(at < is_at, at * knot / is_at, 1.0 - (1.0 - at) * (1.0 - knot) / (1.0 - is_at))
    return found


def _way_over(form: Form, body: Wraps, height: float, side: float) -> float:
    """Return how far round the trunk the shoulder's ridge is at a height, from 0 in front to 1 behind."""
    ways = np.linspace(0.0, 1.0, 4 * ROUND)
    ring = body.around(np.full(len(ways), height), ways, np.full(len(ways), side))
    sides = [form.points[name] for name in ("side neck", "shoulder")]
    ridge = np.interp(np.abs(ring[:, 0]), [p[0] for p in sides], [p[1] for p in sides]) + BEHIND
    outer = np.abs(ring[:, 0]) > sides[0][0] / 2
    front = np.flatnonzero(outer & (ring[:, 1] < ridge))
    return float(ways[front[-1]]) if len(front) else 0.5
