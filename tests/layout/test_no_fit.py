"""No-fit polygons, held against the Minkowski sum of Clipper, a general library for polygons."""

from __future__ import annotations

import cmath
import random
from typing import Any

import numpy as np
import pyclipper
import pytest
from numpy.typing import NDArray

from drafting.layout.packing.clip import no_fit

STAR, STEPS = range(3, 40), 2**20


def star(dice: random.Random) -> NDArray[np.int64]:
    """A ring about 0 with hollows, anticlockwise; some corners lie on one straight line or twice as far out."""
    count = dice.choice(STAR)
    spots = [cmath.rect(dice.choice((0.4, 0.8, dice.random() + 0.1)), 6.283 * n / count) for n in range(count)]
    return np.array([(round(p.real * STEPS), round(p.imag * STEPS)) for p in spots], dtype=np.int64)


def comb(dice: random.Random) -> NDArray[np.int64]:
    """A comb with upright teeth: its edges are parallel to one another, and its hollows deep."""
    line, x = [(0, 0)], 0
    teeth = [(dice.randrange(1, 9), dice.randrange(1, 9)) for _ in range(dice.randrange(2, 6))]
    tops: list[tuple[int, int]] = []
    for wide, high in teeth:
        tops += [(x, 10), (x, 10 + high), (x + wide, 10 + high), (x + wide, 10)]
        x += wide + 3
    line += [(x, 0), (x, 10), *reversed(tops[1:])]
    return np.array(line, dtype=np.int64) * (STEPS // 64)


def swept(first: NDArray[np.int64], second: NDArray[np.int64]) -> list[Any]:
    """The library's: every edge swept along every other, and a copy of each outline at a corner of the other."""
    turned = -second
    paths = pyclipper.MinkowskiSum(turned.tolist(), first.tolist(), True)
    paths += [(first + turned[0]).tolist(), (turned + first[0]).tolist()]
    return [path if pyclipper.Orientation(path) else path[::-1] for path in paths]


def apart(ours: list[Any], theirs: list[Any]) -> float:
    """The area that lies in one of two sets of paths only."""
    kernel = pyclipper.Pyclipper()
    kernel.AddPaths(ours, pyclipper.PT_SUBJECT, True)
    kernel.AddPaths(theirs, pyclipper.PT_CLIP, True)
    found = kernel.Execute(pyclipper.CT_XOR, pyclipper.PFT_NONZERO, pyclipper.PFT_NONZERO)
    return float(abs(sum(pyclipper.Area(path) for path in found)))


@pytest.mark.parametrize("seed", range(60))
def test_it_is_the_sum_that_the_library_finds_by_sweeping_every_edge(seed: int) -> None:
    dice = random.Random(seed)
    first, second = (dice.choice((star, comb))(dice) for _ in range(2))
    ours = [path.tolist() for path in no_fit(first, second)]
    round_both = 8.0 * STEPS * 2  # a step of the grid along both outlines, drawn out
    assert apart(ours, swept(first, second)) < 2 * round_both
    assert max(pyclipper.Area(path) for path in ours) > pyclipper.Area(first.tolist())
