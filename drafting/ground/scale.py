"""How far the adult constants shrink on a small body.

Millimetre constants here are meant for adults. Below a bust of 700 mm they shrink with bust / 900,
so that a 40 cm doll drafts too; between 600 and 700 mm the two rules are joined by a straight line,
so that nothing jumps (ours).
"""

from __future__ import annotations

from typing import Protocol

ADULT_BUST = 700.0
"""mm: from this bust girth up, constants stand as written."""

SMALL_BUST = 600.0
"""mm: from this bust girth down, constants shrink with bust / REFERENCE_BUST."""

REFERENCE_BUST = 900.0
"""mm: the bust girth for which the constants were written."""

LARGE_BUST, MOST_GROWN = 1000.0, 1.5
"""mm: from this bust girth up style grows with it, to at most so much (ours: on most bodies it stays)."""

CHILD, DOLL = 0.50, 0.45
"""Body scales (a bust of 450 and of 405 mm): from the first up a child grows, from the second down it is
a doll (ours; a child of one year measures some 460 round the chest, from memory)."""


class Measured(Protocol):
    """Anything that knows a measure by its name, in mm."""

    def __getitem__(self, name: str, /) -> float: ...


def scale_of_bust(bust: float) -> float:
    """Return the factor (0..1) for the adult constants at a bust girth in mm.

    >>> scale_of_bust(912.0), scale_of_bust(450.0), round(scale_of_bust(650.0), 6)
    (1.0, 0.5, 0.833333)
    """
    if bust >= ADULT_BUST:
        return 1.0
    if bust <= SMALL_BUST:
        return bust / REFERENCE_BUST
    least = SMALL_BUST / REFERENCE_BUST
    return least + (1 - least) * (bust - SMALL_BUST) / (ADULT_BUST - SMALL_BUST)


def body_scale(body: Measured) -> float:
    """Return the factor (0..1) by which adult constants and `scales` defaults shrink for `body`.

    `body` is asked for its `bust_girth` in mm; a KeyError, or an `InputError`, says that it has none.

    >>> body_scale({"bust_girth": 450.0})
    0.5
    """
    return scale_of_bust(body["bust_girth"])


def style_growth(body: Measured) -> float:
    """Return the factor (1 or more) by which the defaults of style grow on a large body.

    >>> style_growth({"bust_girth": 940.0}), style_growth({"bust_girth": 1250.0})
    (1.0, 1.25)
    """
    return min(max(body["bust_girth"] / LARGE_BUST, 1.0), MOST_GROWN)


def allowance_scale(scale: float) -> float:
    """Return the factor for allowances at a body scale: 1 for whoever grows, the scale for a doll.

    >>> allowance_scale(1.0), allowance_scale(0.6), allowance_scale(0.2)
    (1.0, 1.0, 0.2)
    """
    grows = min(max((scale - DOLL) / (CHILD - DOLL), 0.0), 1.0)
    return scale + grows * (1 - scale)
