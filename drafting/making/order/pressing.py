"""What is said wherever a seam is joined: ease, gathers, which way it is pressed."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.draft.draft import Seam
from drafting.making.model import Said, said
from drafting.making.order.parts import Bench

NOTICED = 1.0
"""mm of ease from which it is worth a word (ours): less is taken up by the pins."""


def eased(ease: float) -> bool:
    return abs(ease) > NOTICED


def pressed(bench: Bench, seam: Seam) -> Said:
    """Return how a seam's allowances are pressed, as its setting has it."""
    setting = bench.settings.get((bench.garment.name, seam.name))
    match setting.press if setting else "open":
        case "open":
            return said("do.press_open")
        case "to one side":
            return said("do.press_side")
        case _:
            return said("do.press_not")


def gathers(ratio: float, drawn: float) -> Iterator[Said]:
    """Yield how an edge of `drawn` mm is gathered `ratio` to one and held."""
    yield said("do.gather", ratio=ratio, drawn=drawn)
    yield said("do.quarters")
