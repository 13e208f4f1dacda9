"""The needle for a cloth: its size by mass, its point by what the cloth is. Layer 5."""

from __future__ import annotations

from drafting.fabric import Fabric
from drafting.making.model import Needle
from drafting.workroom import Workroom

SIZES = (60, 70, 80, 90, 100, 110, 120)
"""NM: a hundred times the blade's diameter in mm (row K01)."""

BY_MASS = ((60.0, 60), (110.0, 70), (190.0, 80), (340.0, 90), (450.0, 100))
"""g/m2 up to which a size serves; above it 110. Row K02 names the cloths (sheer 60, blouse 70,
shirting 80, wool and trouser 90, denim 100, canvas 110); the masses between them are from memory."""

USUAL = 80
"""Where nobody weighed the cloth (common practice)."""

ELASTIC = 0.30
"""Greatest stretch from which a knit wants a stretch needle (from memory), or any elastane (K03)."""

STAND_IN = "universal"


def needle_for(fabric: Fabric | None, room: Workroom) -> tuple[Needle, bool]:
    """Return the needle, and whether it only stands in for a better point that is not at hand."""
    wanted = Needle(point_for(fabric), size_for(fabric))
    if not room.needles or wanted.point in room.needles:
        return wanted, False
    cousin = {"stretch": "ball point", "microtex": "sharp", "sharp": "microtex"}.get(
        wanted.point, ""
    )
    if cousin in room.needles:
        return Needle(cousin, wanted.size), True
    return Needle(STAND_IN, wanted.size), True


def point_for(fabric: Fabric | None) -> str:
    """Return the point by cloth (row K03): woven sharp, knit ball point, elastane stretch."""
    if fabric is None:
        return STAND_IN
    fibre = fabric.fibre.lower()
    if "leather" in fibre:
        return "leather"
    if fabric.weave == "knit":
        return (
            "stretch" if "elastane" in fibre or fabric.greatest_stretch > ELASTIC else "ball point"
        )
    return "microtex" if "microfibre" in fibre else "sharp"


def size_for(fabric: Fabric | None) -> int:
    """Return the size NM by the cloth's mass (rows K01, K02)."""
    if fabric is None or fabric.mass is None:
        return USUAL
    return next((size for most, size in BY_MASS if fabric.mass <= most), 110)
