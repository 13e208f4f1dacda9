"""The foot for a seam, and how the layers are kept together under it."""

from __future__ import annotations

from collections.abc import Iterator

from drafting.costume.workroom import Workroom
from drafting.fabric import Fabric
from drafting.fabric.handling import has_pile
from drafting.making.model import Said, said
from drafting.making.settings.stitches import BACKSTITCH, CAUGHT, LITTLE, MUCH, OVEREDGE

THICK = 280.0
"""g/m2 from which layers creep under a plain foot (from memory)."""

SHEER = 60.0
"""g/m2 up to which a cloth is drawn into a wide needle hole (sheer to the trade; the mass from
memory)."""

STICKY = ("leather", "vinyl", "pvc", "rubber", "latex")
"""What sticks to a metal foot (common practice)."""

BASTED, WORKED, CAST = "209", "buttonhole stitch", "overcast stitch"
"""A running stitch, a buttonhole and a raw edge worked by hand (the number of `Source.ISO_4915` from memory)."""

BY_HAND = (BACKSTITCH, CAUGHT, BASTED, WORKED, CAST)


def creeps(fabric: Fabric | None, gives: float) -> bool:
    """Return whether the upper layer is pushed along: pile, thick cloth, much stretch."""
    thick = fabric is not None and (has_pile(fabric) or (fabric.mass or 0.0) > THICK)
    return thick or gives > MUCH


def foot_for(fabric: Fabric | None, gives: float, stitch: str, room: Workroom) -> str:
    """Return the foot, of those in the room: an overedge machine has its own, a hand none."""
    if stitch in BY_HAND:
        return "no"
    if stitch in OVEREDGE:
        return "overedge"
    if fabric is not None and "roller" in room.feet and _sticky(fabric):
        return "roller"
    if creeps(fabric, gives) and "walking" in room.feet:
        return "walking"
    sheer = fabric is not None and fabric.mass is not None and fabric.mass <= SHEER
    return "straight-stitch" if sheer and stitch == "301" and "straight-stitch" in room.feet else "all-purpose"


def _sticky(fabric: Fabric) -> bool:
    smooth = {"coated", "foiled"} & set(fabric.possible_sorts)
    return bool(smooth) or any(word in fabric.fibre.lower() for word in STICKY)


def set_lighter(fabric: Fabric | None, gives: float, foot: str, room: Workroom) -> bool:
    """Return whether the foot presses less, if it can: on pile, and where layers would wave.

    An overedge machine has another way, its two feeds.
    """
    soft = fabric is not None and (fabric.weave == "knit" or has_pile(fabric))
    return room.foot_pressure and foot not in ("no", "overedge") and (gives > LITTLE or soft)


def feeding(gives: float, knit: bool, stitch: str, foot: str, light: bool) -> Iterator[Said]:
    """Yield how the layers are fed: pinned where they stretch little, else without being pulled."""
    if stitch in BY_HAND:
        return
    if stitch in OVEREDGE and (knit or gives > LITTLE):
        yield said("set.differential")
    elif gives > MUCH:
        yield said("set.much_walking" if foot == "walking" else "set.much_light" if light else "set.much")
    elif gives > LITTLE:
        yield said("set.pinned")
