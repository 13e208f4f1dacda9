"""Rigid moves of the plane, turned over where asked, and the one that lays points best on others.

Points are complex arrays, mm, y up.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from drafting.geometry.curve import Points

SAME = 1e-9
"""What is shorter has no direction."""


@dataclass(frozen=True, slots=True)
class Motion:
    """z -> turn * (z, or z turned over about the upright) + by, with |turn| = 1."""

    turn: complex = 1 + 0j
    by: complex = 0j
    over: bool = False

    def __call__(self, points: Points) -> Points:
        return self.turn * (-np.conj(points) if self.over else points) + self.by

    def point(self, at: complex) -> complex:
        """Return where one point comes to lie."""
        return self.turn * (-at.conjugate() if self.over else at) + self.by

    def after(self, first: Motion) -> Motion:
        """Return this move done after `first`.

        >>> Motion(1j, 5 + 0j, over=True).after(Motion(by=2 + 0j)).point(1j)
        (4-2j)
        """
        if self.over:
            return Motion(self.turn * first.turn.conjugate(), self.point(first.by), not first.over)
        return Motion(self.turn * first.turn, self.point(first.by), first.over)


STAY, TURNED_OVER = Motion(), Motion(over=True)


def best_fit(there: Points, here: Points, *, over: bool = False) -> Motion:
    """Return the move (turned over where asked) that lays points `here` on `there` with the least squares.

    The closed form for the plane: the turn is the phase of the two sets' covariance (from memory).
    """
    turned = Motion(over=over)(here)
    middle, own = complex(there.mean()), complex(turned.mean())
    covariance = complex(np.sum((there - middle) * np.conj(turned - own)))
    turn = covariance / abs(covariance) if abs(covariance) > SAME else 1 + 0j
    return Motion(turn, middle - turn * own, over)


def mirrored_in(one: complex, two: complex) -> Motion:
    """Return the reflection in the line through two points.

    >>> mirrored_in(0j, 1j).point(3 + 4j)
    (-3+4j)
    """
    way = (two - one) / abs(two - one)
    return Motion(-way * way, one - way * way * one.conjugate(), over=True)
