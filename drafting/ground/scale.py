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
