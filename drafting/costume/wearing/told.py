"""How far a garment is on its way to rest, told at every step of the search: a guess, which never goes back."""

from __future__ import annotations

import math
from dataclasses import replace

from drafting.costume.telling import Tell
from drafting.worn.settled.search import Limits

FAR = 100.0
"""Residual from which the way to rest is counted (ours: a garment just put on; farther off it falls fast)."""


def told_on_the_way(limits: Limits, tell: Tell, words: str) -> Limits:
    """Return limits whose search tells, 0 to 1, how near its residual has come to what is wanted.

    >>> heard = []
    >>> limits = told_on_the_way(Limits(residual=0.01), lambda words, share: heard.append(share), "Falling")
    >>> limits.heard(1.0)
    >>> heard
    [0.5]
    """
    nearest, whole = [0.0], math.log(FAR / limits.residual)

    def heard(residual: float) -> None:
        gone = math.log(FAR / max(residual, limits.residual)) / whole
        nearest[0] = max(nearest[0], min(gone, 1.0))
        tell(words, nearest[0])

    return replace(limits, heard=heard)
