"""Flare as a bend: every ruling and the waist edge keep their length, only the turn along it grows.

    turn rate on a panel, u = 0..1:  q = a (1 - u) + b u + m 6 u (1 - u)
    new waist  w(s) = integral of exp(i (heading + Theta)),  Theta = integral of q
    new hem    h(s) = w(s) + drop(s) exp(i (ruling + Theta))
    speed of the hem  |h'| = |exp(i heading) + (drop' + i drop (ruling' + q)) exp(i ruling)|

So seams, being rulings, stay straight and equal, corners at waist and hem stay as they are, and the
hem has no corner, as q runs on without a jump. `m` is solved so that the panel's hem grows by half
of the flare at each of its seams, exactly (the geometry is ours).
"""

from __future__ import annotations

import cmath
import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from itertools import pairwise

import numpy as np

from drafting.geometry import Cubic, Path, line
from drafting.geometry.curve import Numbers, Points
from drafting.geometry.spline import simpson_so_far
from drafting.ground.errors import DraftError
from drafting.ground.lengths import told
from drafting.shaping.flare.plain_tail import PlainTail

SAMPLES = 65
"""Points a panel at which its curves are worked out (an odd number, for Simpson's rule)."""

_EACH = np.eye(SAMPLES)
_SO_FAR = simpson_so_far(_EACH, 1.0)
_WHOLE = _SO_FAR[-1]
"""What each point weighs in an integral over all steps, and over the steps so far (Simpson)."""

CLOSE = 0.003
"""mm: how near the drawn cubics keep to the worked-out curve."""

MOST_PANELS = 10


@dataclass(frozen=True)
class TailPanel:
    """One panel of a tail as it lies in the whole tail, back to the left; mm and radians.

    `waist` and `hem` run from back to front; `back` and `front` down the seams. `hem_plain` is the
    length of its hem without flare; `turned` how far its waist is turned at either end, 0 where the
    waist is left as it was.
    """

    waist: Path
    hem: Path
    back: Path
    front: Path
    hem_plain: float
    turned: tuple[float, float] = (0.0, 0.0)

    @property
    def angle(self) -> float:
        """The angle between its two seams at the waist, degrees; positive where they part downwards."""
        return math.degrees(cmath.phase(self.front.leave / self.back.leave))

    @property
    def grown(self) -> float:
        """How much longer its hem is than the plain one, mm."""
        return self.hem.length - self.hem_plain


def even_cuts(tail: PlainTail, panels: int) -> tuple[float, ...]:
    """Return the waist stations of so many panels of equal width, mm from the back fold."""
    return tuple(tail.width * k / panels for k in range(panels + 1))


def bent_panels(
    tail: PlainTail, cuts: Sequence[float], flare: Sequence[float], longer: float = 1.0
) -> tuple[TailPanel, ...]:
    """Return the panels between the waist stations `cuts` (mm, from 0 to the tail's width).

    `flare` is the extra hem (mm) at each station: half of it goes to the panel on either side, all
    of it at the two free edges. `longer` multiplies every ruling; the sweep stays as asked. Raises
    `DraftError` for stations or amounts that make no panels.
    """
    _accepted(tail, cuts, flare)
    rates = _rates(tail, cuts, flare)
    share = [1.0, *([0.5] * (len(cuts) - 2)), 1.0]
    panels, at, turned = [], tail.start, 0.0
    for k, ends in enumerate(pairwise(cuts)):
        grow = share[k] * flare[k] + share[k + 1] * flare[k + 1]
        panel = _panel(tail, ends, (rates[k], rates[k + 1]), grow, longer, at, turned)
        panels.append(panel)
        at, turned = panel.waist.end, panel.turned[1]
    return tuple(panels)


def _accepted(tail: PlainTail, cuts: Sequence[float], flare: Sequence[float]) -> None:
    rising = all(b - a > 1.0 for a, b in pairwise(cuts))
    if len(cuts) < 2 or len(cuts) - 1 > MOST_PANELS or not rising:
        raise DraftError(
            "the tail cannot be split at these places",
            value=", ".join(map(told, cuts)) + " from the back fold",
            reach=f"1 to {MOST_PANELS} panels, each at least {told(1.0)} wide at the waist",
            turn="choose fewer panels, or move the seams apart",
        )
    if abs(cuts[0]) > 1e-9 or abs(cuts[-1] - tail.width) > 1e-6 or len(flare) != len(cuts):
        raise DraftError(
            "the panels have to cover the waist edge from end to end, with one flare for each station",
            value=f"{len(flare)} amounts for {len(cuts)} stations from {told(cuts[0], 'fine')} "
            f"to {told(cuts[-1], 'fine')}",
            reach=f"stations from 0 to {told(tail.width, 'fine')}",
        )
    if min(flare) < 0:
        raise DraftError(
            "flare adds to the hem, it cannot take away",
            value=told(min(flare)),
            reach="0 and more",
            turn="for a narrower hem choose a narrower plain tail",
        )


def _rates(tail: PlainTail, cuts: Sequence[float], flare: Sequence[float]) -> list[float]:
    """Return the turn rate (radians a mm) at each station: all of its flare in the wider neighbour."""
    widths = [b - a for a, b in pairwise(cuts)]
    found = []
    for i, amount in enumerate(flare):
        beside = widths[max(0, i - 1) : i + 1]
        free = 2.0 if i in (0, len(flare) - 1) else 1.0
        found.append(free * amount / (tail.length_at(cuts[i]) * max(beside)))
    return found


def _panel(
    tail: PlainTail,
    ends: tuple[float, float],
    rates: tuple[float, float],
    grow: float,
    longer: float,
    start: complex,
    turned: float,
) -> TailPanel:
    s = np.linspace(*ends, SAMPLES)
    u = (s - s[0]) / (s[-1] - s[0])
    heading, ruling = tail.heading(s), tail.ruling(s)
    leans, drop, falls = tail.ruling(s, 1), tail.drop(s), tail.drop(s, 1)
    along, down = np.exp(1j * heading), np.exp(1j * ruling)
    run = float(s[-1] - s[0]) / (SAMPLES - 1)
    plain = run * float(_WHOLE @ np.abs(along + (falls + 1j * drop * leans) * down))

    def rate(middle: float) -> Numbers:
        return np.asarray(rates[0] * (1 - u) + rates[1] * u + middle * 6 * u * (1 - u))

    def hem_speed(q: Numbers) -> Points:
        return np.asarray(along + longer * (falls + 1j * drop * (leans + q)) * down)

    def miss(middle: float) -> float:
        return run * float(_WHOLE @ np.abs(hem_speed(rate(middle)))) - plain - grow

    untouched = grow == 0 and longer == 1.0
    q = rate(0.0 if untouched else _secant(miss, 0.1 / float(drop.mean())))
    theta = turned + run * (_SO_FAR @ q)
    step = along * np.exp(1j * theta)
    w = start + run * (_SO_FAR @ step.real + 1j * (_SO_FAR @ step.imag))
    h = w + longer * drop * down * np.exp(1j * theta)
    v = hem_speed(q) * np.exp(1j * theta)
    waist, hem = cubics_through(s, w, step), cubics_through(s, h, v)
    back, front = line(waist.start, hem.start), line(waist.end, hem.end)
    return TailPanel(waist, hem, back, front, plain, (turned, float(theta[-1])))


def _secant(miss: object, first: float) -> float:
    """Return the root of a nearly straight function of a rate (three or four steps)."""
    assert callable(miss)
    a, b = 0.0, first * 1e-2
    at_a = miss(a)
    for _ in range(20):
        at_b = miss(b)
        if abs(at_b) < 1e-8 or at_b == at_a:
            break
        a, at_a, b = b, at_b, b - at_b * (b - a) / (at_b - at_a)
    return b


def cubics_through(s: Numbers, points: Points, velocity: Points) -> Path:
    """Return cubics through points of a curve with its true directions there.

    They keep within `CLOSE` mm of every point; as few as that takes, in equal steps of `s`.
    """
    count = len(s) - 1
    steps = [n for n in (1, 2, 4, 8, 16, 32) if count % n == 0]
    for n in steps:
        nodes = np.arange(0, count + 1, count // n)
        parts = [_hermite(s[b] - s[a], points[a], velocity[a], points[b], velocity[b]) for a, b in pairwise(nodes)]
        if n == steps[-1] or _apart(parts, points, count // n) < CLOSE:
            break
    return Path(tuple(parts))


def _hermite(run: float, a: complex, va: complex, d: complex, vd: complex) -> Cubic:
    third = run / 3
    return Cubic(complex(a), complex(a + va * third), complex(d - vd * third), complex(d))


def _apart(parts: Sequence[Cubic], points: Points, step: int) -> float:
    """Return the greatest gap (mm) across the curve between the cubics and the points."""
    place, speed = _weights(step)
    ends = np.array(parts)
    p, v = ends @ place, np.diff(ends) @ speed
    off = (points[:-1].reshape(len(parts), step)[:, 1:] - p) * np.conj(v)
    return float(np.max(np.abs(off.imag) / np.abs(v), initial=0.0))


@cache
def _weights(step: int) -> tuple[Numbers, Numbers]:
    """Return what a cubic's points weigh in its inner places, and its legs in the speeds there."""
    t = np.linspace(0.0, 1.0, step + 1)[1:-1]
    r = 1 - t
    place = np.stack([r**3, 3 * r * r * t, 3 * r * t * t, t**3])
    return place, np.stack([r * r, 2 * r * t, t * t])


def level_factor(turned: float, wrap: float) -> float:
    """Return by what the rulings grow so that a tail held open hangs level.

    A tail that turns by `turned` and is worn round `wrap` radians of the body is a cone that leans
    out by psi, sin psi = turned / wrap (plane geometry); its hem rises by drop x (1 - cos psi).

    >>> round(level_factor(0.349, 2.2), 4)
    1.0128
    """
    lean = min(max(turned, 0.0) / wrap, 0.95)
    return 1 / math.sqrt(1 - lean * lean)
