"""The needle for a cloth: its size by mass, its point by what the cloth is."""

from __future__ import annotations

from drafting.costume.workroom import Workroom
from drafting.fabric import Fabric, handling
from drafting.making.model import Needle

BY_MASS = ((60.0, 60), (110.0, 70), (190.0, 80), (340.0, 90), (450.0, 100))
"""g/m2 up to which a size serves; above it 110. Common practice names the cloths (sheer 60, blouse 70,
shirting 80, wool and trouser 90, denim 100, canvas 110); the masses between them are from memory."""

USUAL = 80
"""Where nobody weighed the cloth (common practice)."""

OTHER_SIZES = {60: 8, 65: 9, 70: 10, 75: 11, 80: 12, 90: 14, 100: 16, 110: 18, 120: 19}
"""What packets print beside the size in hundredths of a mm (common practice)."""

ELASTIC = 0.30
"""Greatest stretch from which a knit wants a stretch needle (from memory), or any elastane."""

DENSE = 600.0
"""kg/m3, mass over thickness, from which a woven is so dense that only a slim point slips between its
threads (ours: shirtings lie near 500)."""

FINE = ("microfibre", "silk")
"""Fibres whose woven cloths show every broken thread (common practice)."""

STAND_IN = "universal"

COUSINS = {
    "stretch": ("ball point",),
    "ball point": ("stretch",),
    "microtex": ("sharp",),
    "sharp": ("microtex", "jeans"),
}
"""Points of the same sort, that do nearly as well (common practice)."""


def needle_for(fabric: Fabric | None, room: Workroom) -> tuple[Needle, bool]:
    """Return the needle, and whether it only stands in for a better point that is not at hand.

    Where neither the point, nor one of its sort, nor a universal is at hand, the right one is bought.
    """
    point, size = point_for(fabric), size_for(fabric)
    at_hand = (p for p in (point, *COUSINS.get(point, ()), STAND_IN) if p in room.needles)
    found = next(at_hand, point)
    return Needle(found, size), found != point


def point_for(fabric: Fabric | None) -> str:
    """Return the point by cloth (common practice): woven sharp, knit ball point, elastane stretch."""
    if fabric is None:
        return STAND_IN
    fibre = fabric.fibre.lower()
    if "leather" in fibre:
        return "leather"
    if (asked := handling(fabric).point) and fabric.weave == "woven":
        return asked
    if fabric.weave == "knit":
        elastic = "elastane" in fibre or fabric.greatest_stretch > ELASTIC
        return "stretch" if elastic else "ball point"
    return "microtex" if any(word in fibre for word in FINE) or is_dense(fabric) else "sharp"


def is_dense(fabric: Fabric) -> bool:
    """Return whether a cloth's threads lie so close that a thick point would push holes into it."""
    if fabric.mass is None or not fabric.thickness:
        return False
    return fabric.mass / fabric.thickness > DENSE


def size_for(fabric: Fabric | None) -> int:
    """Return the size NM by the cloth's mass."""
    if fabric is None or fabric.mass is None:
        return USUAL
    return next((size for most, size in BY_MASS if fabric.mass <= most), 110)


def sold_as(size: int) -> str:
    """Return what the packet of a size says.

    >>> sold_as(80)
    '80/12'
    """
    return f"{size}/{OTHER_SIZES[size]}"
