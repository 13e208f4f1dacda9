"""Costumes of one garment whose stages are drawn: every block, uneven bodies, trims. Invented cloths."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import Any

from drafting.blocks import names
from drafting.costume.garment import draft_garment
from drafting.costume.make import Made
from tests.bodies import bdims
from tests.making.orders import KNIT, WOVEN, costume_of, uneven

WEARER = 5
"""Which of the measured people of bdims wears them."""

CHOSEN: Mapping[str, Mapping[str, Any]] = {"fly": {"block": "trousers"}, "boned": {"block": "close_top"}}


@cache
def costume(block: str, lopsided: bool = False, knit: bool = False) -> Made:
    """Return a costume of one garment of this block, with its own choices."""
    body = uneven(bdims()[WEARER]) if lopsided else bdims()[WEARER]
    fabric = KNIT if knit else WOVEN
    return costume_of(draft_garment(body, fabric, block), fabric)


def blocks() -> list[str]:
    """Return every block that can be drafted by itself."""
    return names(alone=True)
