"""Where cloth turns over: roll lines of a flat piece, a wing collar's two among them, and which side turns."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from drafting.draft.frame import Straight
from drafting.geometry.curve import Points
from drafting.worn.nouns import Reals, Truth, Whole


def turned_from(rolls: Sequence[Straight], flat: Points) -> Reals:
    """Return (N,): mm that flat places lie past the roll line next to them, on the side where fewer of them are.

    Less than nothing on the side that stays; `rolls` are one or more.
    """
    next_one = _nearest(rolls, flat)
    past = np.zeros(len(flat))
    for number, (start, end) in enumerate(rolls):
        own = next_one == number
        left = ((flat[own] - start) / (end - start)).imag * abs(end - start)
        past[own] = left if (left > 0.0).sum() < (left < 0.0).sum() else -left
    return past


def _nearest(rolls: Sequence[Straight], flat: Points) -> Whole:
    """Return (N,): the number of the roll line whose middle lies nearest to each flat place."""
    middles = np.array([(start + end) / 2 for start, end in rolls])
    found: Whole = np.abs(flat[:, None] - middles).argmin(axis=1)
    return found


def laid_back(rolls: Sequence[Straight], flat: Points) -> Points:
    """Return (N,): flat places turned over the roll line next to them."""
    next_one = _nearest(rolls, flat)
    starts, ends = (np.array([roll[at] for roll in rolls])[next_one] for at in (0, 1))
    way = ends - starts
    over: Points = starts + np.conj((flat - starts) / way) * way
    return over


def past_roll(rolls: Sequence[Straight], flat: Points) -> Truth:
    """Return (N,): which flat places lie past the roll line next to them."""
    return np.asarray(turned_from(rolls, flat) > 0.0)
