"""Waist darts: closed before the waist line is drawn, opened again after. mm.

A dart closes by turning the side's part of the piece about its tip. The closed line is cut at the
foot of the perpendicular from each tip, so a closed mouth is square to the dart and its legs equal.
"""

from __future__ import annotations

import cmath
import math
from collections.abc import Sequence
from dataclasses import dataclass

from drafting.geometry import Cubic, unit
from drafting.shaping.trouser.curves import clamp
from drafting.shaping.trouser.frame import LegFrame

ONE, TWO = (0.5,), (0.36, 0.68)
"""Places of one and of two darts along the waist, from the side (ours)."""

ON_CREASE = (0.35, 0.60)
"""The front dart stands on the crease if that lies so far along the waist (ours)."""

LONG_FRONT, LONG_BACK, LONGER = 0.55, 0.72, 8.0
"""Depth of the darts, of waist to hip, and mm at a hip of 1,000 besides (ours)."""

ABOVE_HIP, LEAST_LONG = 0.90, 0.15
"""A dart ends above the hip level, after so much of the way to it at most; of waist to hip (ours)."""


@dataclass(frozen=True, slots=True)
class ClosingDart:
    """One dart: its tip as drawn, its tip with the darts nearer the centre closed, its turn."""

    tip: complex
    seen: complex
    turn: complex


@dataclass(frozen=True, slots=True)
class ClosedDarts:
    """The side point with every dart closed, the factor it was turned by, and the darts."""

    side: complex
    turned: complex
    darts: tuple[ClosingDart, ...]


@dataclass(frozen=True, slots=True)
class OpenedWaist:
    """The waist as drawn, side to centre: parts, and between them the darts (mouth, tip, mouth)."""

    parts: tuple[Cubic, ...]
    darts: tuple[tuple[complex, complex, complex], ...]


def close_darts(
    frame: LegFrame, side: complex, top: complex, widths: Sequence[float], *, front: bool
) -> ClosedDarts:
    """Return the side point with darts of these widths (side to centre) closed."""
    if not widths:
        return ClosedDarts(side, 1 + 0j, ())
    along = top - side
    places: tuple[float, ...] = ONE if len(widths) == 1 else TWO
    if front:
        places = (clamp(-side.real / along.real, *ON_CREASE),)
    length = (LONG_FRONT if front else LONG_BACK) * frame.rise + LONGER * frame.unit
    above_hip = min((side + along * place).imag for place in places) - frame.hip
    length = min(length, max(ABOVE_HIP * above_hip, LEAST_LONG * frame.rise))
    return darts_closed(side, top, widths, places, (length,) * len(places))


def darts_closed(
    side: complex, top: complex, widths: Sequence[float], places: Sequence[float], lengths: Sequence[float]
) -> ClosedDarts:
    """Return the side point with darts closed that stand square to the straight from side to `top`.

    `widths`, `lengths` (mm) and `places` (shares of the way) go from the side to the centre.
    """
    along = top - side
    down = unit(along) / 1j
    tips = [side + along * place + down * length for place, length in zip(places, lengths, strict=True)]
    turns = [
        cmath.exp(-2j * math.asin(min(w / 2 / length, 0.9))) for w, length in zip(widths, lengths, strict=True)
    ]
    point, turned = side, 1 + 0j
    for tip, turn in zip(tips, turns, strict=True):
        point, turned = tip + (point - tip) * turn, turned * turn
    darts = [ClosingDart(tip, _moved(tip, tips[k + 1 :], turns[k + 1 :]), turns[k]) for k, tip in enumerate(tips)]
    return ClosedDarts(point, turned, tuple(darts))


def _moved(point: complex, tips: Sequence[complex], turns: Sequence[complex]) -> complex:
    for tip, turn in zip(tips, turns, strict=True):
        point = tip + (point - tip) * turn
    return point


def open_darts(line: Cubic, darts: Sequence[ClosingDart]) -> OpenedWaist:
    """Return the closed waist `line` (side to centre) cut at each dart and opened again."""
    parts = _cut(line, [_foot(line, dart.seen) for dart in darts])
    mouths = [[part.d, dart.tip, part.d] for part, dart in zip(parts, darts, strict=False)]
    for k in reversed(range(len(darts))):  # every dart nearer the centre is open by now

        def back(z: complex, tip: complex = darts[k].tip, turn: complex = darts[k].turn) -> complex:
            return tip + (z - tip) / turn

        parts[: k + 1] = [Cubic(*map(back, part)) for part in parts[: k + 1]]
        mouths[k][0] = back(mouths[k][0])
        for m in range(k):
            mouths[m][0], mouths[m][2] = back(mouths[m][0]), back(mouths[m][2])
    return OpenedWaist(tuple(parts), tuple((a, tip, b) for a, tip, b in mouths))


def _cut(line: Cubic, places: Sequence[float]) -> list[Cubic]:
    parts, rest, done = [], line, 0.0
    for place in places:
        first, rest = rest.split((place - done) / (1 - done))
        parts.append(first)
        done = place
    return [*parts, rest]


def _foot(line: Cubic, tip: complex) -> float:
    """Return the parameter of the foot of the perpendicular from `tip` (Newton's method)."""
    t = 0.5
    for _ in range(30):
        gap, speed = line.point(t) - tip, line.velocity(t)
        bend = 6 * (1 - t) * (line.c - 2 * line.b + line.a) + 6 * t * (line.d - 2 * line.c + line.b)
        step = (gap.conjugate() * speed).real / (abs(speed) ** 2 + (gap.conjugate() * bend).real)
        t = clamp(t - step, 0.08, 0.92)
        if abs(step) < 1e-13:
            break
    return t
