"""Flared pieces on the cloth: their outlines, the room they need, and into how many gores they go.

Lengths in mm, angles in degrees. The sectors themselves are `geometry.sectors`; all of it is exact
plane geometry.
"""

from __future__ import annotations

import cmath
import math
from dataclasses import dataclass
from itertools import pairwise

from drafting.geometry import Cubic, Path, line
from drafting.geometry.sectors import Sector
from drafting.ground.errors import DraftError
from drafting.ground.findings import Finding

STEP = 45.0
"""degrees: an arc is drawn in cubics that turn no more (error below 2e-6 of the radius)."""

MOST_GORES = 12
"""More pieces than that are not looked for (ours)."""


def arc(centre: complex, start: complex, angle: float) -> Path:
    """Return the arc from `start` round `centre` by `angle` degrees (anticlockwise positive), in mm.

    >>> round(arc(0j, 100 + 0j, 90).length, 2)  # a quarter of 2 pi 100
    157.08
    """
    parts = max(1, math.ceil(abs(angle) / STEP))
    step = cmath.exp(1j * math.radians(angle / parts))
    handle = 4 / 3 * math.tan(math.radians(angle / parts) / 4)
    rays = [(start - centre) * step**k for k in range(parts + 1)]
    cubics = (
        Cubic(centre + a, centre + a + 1j * a * handle, centre + b - 1j * b * handle, centre + b)
        for a, b in pairwise(rays)
    )
    return Path(tuple(cubics))


def outline(piece: Sector) -> Path:
    """Return the closed stitching line, anticlockwise, its middle hanging straight below 0.

    A waist measured on this line is the waist asked for.
    """
    half = piece.angle / 2
    left, right = -1j * cmath.exp(-1j * half), -1j * cmath.exp(1j * half)
    hem = arc(0j, left * piece.outer, piece.degrees)
    if piece.inner <= 0:
        return Path((*hem, *line(hem.end, 0j, hem.start)))
    top = arc(0j, right * piece.inner, -piece.degrees)
    return Path((*hem, *line(hem.end, top.start), *top, *line(top.end, hem.start)))


def straight_hem(radius: float, degrees: float) -> float:
    """Return what a godet with a straight hem adds instead of its arc: the chord.

    >>> round(straight_hem(300, 90), 2)
    424.26
    """
    return 2 * radius * math.sin(math.radians(degrees) / 2)


def extent(piece: Sector, allowance: float = 0.0) -> tuple[float, float]:
    """Return width and height (mm) of the box that holds a sector, its middle upright.

    `allowance` is counted round it: square to the sides, along the rays at waist and hem.
    """
    half, outer = piece.angle / 2, piece.outer + allowance
    if half >= math.pi:
        return 2 * outer, 2 * outer
    if half >= math.pi / 2:
        return 2 * outer, outer - outer * math.cos(half) + allowance
    top = max(0.0, (piece.inner - allowance) * math.cos(half))
    return 2 * (outer * math.sin(half) + allowance * math.cos(half)), outer - top


def least_width(piece: Sector, allowance: float = 0.0) -> float:
    """Return how wide a cloth must be for a sector with its allowances, mm.

    A gore lies with its middle along the warp. A quarter to a half of a circle has the straight
    grain in it anyway: it lies with one side along the warp, as wide as its outer radius.
    """
    wide, high = extent(piece, allowance)
    if piece.degrees < 90 - 1e-9:
        return wide
    if piece.degrees <= 180 + 1e-9:
        return min(wide, piece.outer + 2 * allowance)
    return min(wide, high)


@dataclass(frozen=True, slots=True)
class Gored:
    """A flared piece as it is cut: `count` pieces like `piece`, and what there is to say."""

    piece: Sector
    count: int
    findings: tuple[Finding, ...] = ()


def gored(whole: Sector, usable_width: float, allowance: float = 0.0, where: str = "skirt") -> Gored:
    """Return a flared piece in the fewest equal gores that lie on cloth of this width.

    Each has its own grainline; the hem in all is unchanged and the seams are equal. Raises
    `DraftError` where not even 12 gores would do.
    """
    sizes = {n: least_width(whole.part(n), allowance) for n in range(1, 2 * MOST_GORES + 1)}
    fits = [n for n in range(1, MOST_GORES + 1) if sizes[n] <= usable_width]
    if not fits:
        raise DraftError(
            f"the {where} is wider than its cloth even in {MOST_GORES} gores",
            value=f"{usable_width:.0f} mm of usable width",
            reach=f"{sizes[MOST_GORES]:.0f} mm and more",
            turn="take a wider cloth, a shorter skirt or less flare",
        )
    count = fits[0]
    if count == 1:
        return Gored(whole, 1)
    return Gored(
        whole.part(count),
        count,
        (
            Finding(
                "wider than the cloth",
                "warning",
                where,
                sizes[1],
                usable_width,
                f"In one piece the {where} would be {sizes[1]:.0f} mm wide and the cloth has {usable_width:.0f}: it "
                f"is cut in {count} equal pieces, each {sizes[count]:.0f} mm wide with a grainline of its own, or in "
                f"{2 * count}, each {sizes[2 * count]:.0f} mm wide. The hem stays {whole.hem:.0f} mm in all.",
            ),
        ),
    )


def panels(hem: float, usable_width: float) -> int:
    """Return into how many equal panels a piece with this hem (mm, allowances in it) is split.

    >>> panels(1650, 1470), panels(1400, 1470)
    (2, 1)
    """
    if not usable_width > 0:
        raise DraftError("cloth has a width above 0", value=f"{usable_width:g} mm")
    return max(1, math.ceil(hem / usable_width - 1e-9))


def bias_box(width: float, length: float, degrees: float = 45.0) -> tuple[float, float]:
    """Return the box (mm, across and along the warp) of a panel laid askew to the warp.

    >>> [round(side, 3) for side in bias_box(600, 1000)]
    [1131.371, 1131.371]
    """
    c, s = abs(math.cos(math.radians(degrees))), abs(math.sin(math.radians(degrees)))
    return width * c + length * s, width * s + length * c


def bias_strip(area: float, width: float) -> float:
    """Return the length (mm) of bias strip that cloth of this area (mm2) gives, joins not counted.

    Area / width.

    >>> bias_strip(500 * 500, 40)
    6250.0
    """
    if not width > 0:
        raise DraftError("a strip has a width above 0", value=f"{width:g} mm")
    return area / width
