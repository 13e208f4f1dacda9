"""The stitch for a seam: what gives as far as the seam must lengthen, of what the room sews. Layer 5."""

from __future__ import annotations

from dataclasses import dataclass

from drafting.making.model import Said, said
from drafting.workroom import Workroom

STRETCHY = ("514", "504", "401")
"""Stitches that give with a knit, the best for a seam first (row K07)."""

MUCH = 0.15
"""Lengthening from which a plain 301 must not be chosen (row K07)."""

LITTLE = 0.005
"""Below it a seam does not have to lengthen at all (ours)."""

BACKSTITCH = "202"
"""Sewn by hand: the way out where no machine sews anything that gives (ISO 4915 class 200, K04; the
number from memory)."""

PLAIN, BASTED, TOP = 2.5, 5.0, 3.2
"""mm of stitch length: a seam 2.2 to 2.8, gathering 4 to 6, topstitching 3 to 3.5 (row K09)."""


@dataclass(frozen=True, slots=True)
class Stitch:
    """An ISO 4915 stitch, its length and width in mm, and why it was chosen."""

    number: str
    length: float = PLAIN
    width: float = 0.0
    why: tuple[Said, ...] = ()


def stitch_for(lengthens: float, knit: bool, room: Workroom) -> Stitch:
    """Return the stitch of a seam that must lengthen by this fraction.

    A seam that stretches is never sewn with a plain 301 alone: overedge or chain if there is one,
    then zigzag, wider the more it must give; else by hand.
    """
    if not knit and lengthens <= LITTLE:
        return _still(room)
    if knit and (overedge := room.has(*STRETCHY)):
        return Stitch(overedge, PLAIN, 0.0, (said("set.why_overedge"),))
    if zigzag := room.has("304"):
        wide = 0.5 if lengthens <= 0.05 else 1.0 if lengthens <= MUCH else 2.0
        return Stitch(zigzag, PLAIN, wide, (said("set.why_zigzag"),))
    if lengthens <= MUCH and room.has("301") and not knit:
        return Stitch("301", 2.2, 0.0, (said("set.why_even_tension"),))
    return Stitch(BACKSTITCH, 3.0, 0.0, (said("set.why_by_hand"),))


def _still(room: Workroom) -> Stitch:
    """Return the stitch of a seam that keeps its length."""
    found = room.has("301", "401", "101") or BACKSTITCH
    return Stitch(found, PLAIN)
