"""Where the arm sets in: depth of the armpit and both widths across, from five knobs turned together.

They pull against one another, so what each knob does is asked of the form, and the step is the least
squares one, kept within what a body can be.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

import numpy as np
from scipy.optimize import lsq_linear

from drafting.worn.form.dials import Dials, Stance
from drafting.worn.form.read import arm_folds
from drafting.worn.form.sizes import Sizes
from drafting.worn.form.solid import Solid, solid
from drafting.worn.nouns import Reals

TURNED = {"across": 4.0, "arm_back": 4.0, "arm_in": 4.0, "root": 0.06, "out": 1.5}
"""The knobs, and how far each is turned to see what it does."""

WEIGHTS = {"across_back_width": 1.0, "across_front_width": 1.0, "axilla_depth": 0.3}
"""How much each mm counts: the armpit is told less sharply than a width (ours)."""

MOST = 3.0
"""The longest step, in turns."""
_HOME, _HELD = 0.05, 0.8
"""How much a knob is drawn to where it began, and to where it is, mm a turn."""


def arm_slopes(body: Solid, pose: Stance, got: Mapping[str, float]) -> Reals:
    """(3, 5): by how many mm each measure changes at one turn of each knob."""
    rows = []
    for name, by in TURNED.items():
        turned = _with(body.dials, {name: getattr(body.dials, name) + by})
        there = arm_folds(solid(body.sizes, turned, pose))
        rows.append([there[measure] - got[measure] for measure in WEIGHTS])
    return np.asarray(np.clip(np.array(rows).T, -20.0, 20.0))


def arm_turned(s: Sizes, k: Dials, got: Mapping[str, float], slopes: Reals) -> Dials:
    """The five knobs turned by the step of least squares."""
    turns = np.array(list(TURNED.values()))
    now = np.array([getattr(k, name) for name in TURNED]) / turns
    low, high, home = (np.array(list(of)) / turns for of in _limits(s))
    weights = np.array(list(WEIGHTS.values()))
    wanted = np.clip([s.wanted[name] - got[name] for name in WEIGHTS], -40.0, 40.0)
    still = np.eye(len(now))
    sides = np.concatenate([weights * wanted, _HOME * (home - now), 0.0 * now])
    table = np.concatenate([weights[:, None] * slopes, _HOME * still, _HELD * still])
    least, most = np.maximum(low - now, -MOST), np.minimum(high - now, MOST)
    step = lsq_linear(table, sides, bounds=(np.minimum(least, -1e-6), np.maximum(most, 1e-6))).x
    return _with(k, dict(zip(TURNED, map(float, (now + step) * turns), strict=True)))


def _with(k: Dials, arm: dict[str, float]) -> Dials:
    all_ = {name: getattr(k, name) for name in TURNED} | arm
    return replace(
        k,
        across=all_["across"],
        arm_back=all_["arm_back"],
        arm_in=all_["arm_in"],
        root=all_["root"],
        out=all_["out"],
    )


def _limits(s: Sizes) -> tuple[tuple[float, ...], tuple[float, ...], tuple[float, ...]]:
    """The least, the most, and the usual of each knob."""
    wide, u = s.shoulder[0], s.unit
    across = 0.25 * 0.95 * (s.wanted["across_back_width"] + s.wanted["across_front_width"])
    return (
        (0.5 * wide, -30 * u, -60 * u, 0.72, -5.0),
        (1.3 * wide, 30 * u, 25 * u, 1.1, 14.0),
        (across, 0, 0, 0.95, 0),
    )
