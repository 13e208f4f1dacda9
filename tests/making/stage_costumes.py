"""Costumes of one garment whose stages are drawn: every block, on an even and an uneven body."""

from __future__ import annotations

from functools import cache

from drafting.blocks import names
from drafting.costume.garment import draft_garment
from drafting.costume.make import Made
from tests.bodies import bdims
from tests.making.orders import KNIT, WOVEN, costume_of, uneven

CLOSE = ("close-top", "close-torso", "puffed-top")
"""Blocks smaller than the body, which want a cloth that stretches."""

WEARER = 5
"""Which of the measured people of bdims wears them."""


@cache
def costume(block: str, lopsided: bool = False) -> Made:
    """Return a costume of one garment of this block, of a knit where it is close, with its own choices."""
    body = uneven(bdims()[WEARER]) if lopsided else bdims()[WEARER]
    fabric = KNIT if block in CLOSE else WOVEN
    return costume_of(draft_garment(body, fabric, block), fabric)


def blocks() -> list[str]:
    """Return every block that can be drafted by itself."""
    return names(alone=True)
