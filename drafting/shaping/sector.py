"""Sectors of cloth: circle skirts, cones, godets, gores, and what a bias does. mm and degrees.

All of it is exact plane geometry: an arc is radius times angle. The waist of a circle skirt is an
arc on the stitching line, so radius = waist / angle (rows E20-E24; trouble FL2).
"""

from __future__ import annotations

import cmath
import math
from dataclasses import dataclass
from itertools import pairwise

from drafting.errors import DraftError
from drafting.findings import Finding
from drafting.geometry import Cubic, Path, line

FULL = 360.0

STEP = 45.0
"""degrees: an arc is drawn in cubics that turn no more (error below 2e-6 of the radius)."""


@dataclass(frozen=True, slots=True)
class Sector:
    """A ring's sector: inner `radius`, `length` down its sides, and the `angle` between them.

    `top` and `hem` are the arcs' lengths (mm).
    """

    radius: float
    length: float
    angle: float

    @property
    def outer(self) -> float:
        return self.radius + self.length

    @property
    def top(self) -> float:
        return self.radius * math.radians(self.angle)

    @property
    def hem(self) -> float:
        return self.outer * math.radians(self.angle)

    def outline(self) -> Path:
        """Return the closed stitching line, anticlockwise, its middle hanging from the centre 0."""
        half = math.radians(self.angle) / 2
        left, right = -1j * cmath.exp(-1j * half), -1j * cmath.exp(1j * half)
        hem = arc(0j, left * self.outer, self.angle)
        top = arc(0j, right * self.radius, -self.angle)
        sides = line(hem.end, top.start), line(top.end, hem.start)
        return Path((*hem, *sides[0], *top, *sides[1]))


def arc(centre: complex, start: complex, angle: float) -> Path:
    """Return the arc from `start` round `centre` by `angle` degrees (anticlockwise positive)."""
    parts = max(1, math.ceil(abs(angle) / STEP))
    step = cmath.exp(1j * math.radians(angle / parts))
    handle = 4 / 3 * math.tan(math.radians(angle / parts) / 4)
    rays = [(start - centre) * step**k for k in range(parts + 1)]
    return Path(
        tuple(
            Cubic(
                centre + a, centre + a + 1j * a * handle, centre + b - 1j * b * handle, centre + b
            )
            for a, b in pairwise(rays)
        )
    )


def circle_skirt(waist: float, length: float, share: float = 1.0) -> Sector:
    """Return the skirt that is this `share` of a full circle (1, 0.75, 0.5, 0.25; above 1: ruffled).

    >>> skirt = circle_skirt(700, 600)
    >>> round(skirt.radius, 3), round(skirt.hem, 3)
    (111.408, 4469.911)
    """
    if not (waist > 0 and length > 0 and share > 0):
        raise DraftError(
            "a circle skirt has a waist, a length and a share of the circle above 0",
            value=f"waist {waist:g} mm, length {length:g} mm, share {share:g}",
        )
    angle = FULL * share
    return Sector(waist / math.radians(angle), length, angle)


def cone(top: float, bottom: float, slant: float) -> Sector:
    """Return the flat piece of a cone: `top` and `bottom` round, `slant` long (row E25).

    >>> piece = cone(400, 1000, 550)
    >>> round(piece.angle, 3), round(piece.radius, 3)
    (62.504, 366.667)
    """
    if not bottom > top > 0:
        raise DraftError(
            "a flared piece is wider at its hem than at its top",
            value=f"top {top:g} mm, hem {bottom:g} mm",
            turn="one as wide at both is a rectangle; for a narrower hem turn it over",
        )
    if not slant > 0:
        raise DraftError("a flared piece has a length", value=f"{slant:g} mm")
    angle = (bottom - top) / slant
    return Sector(top / angle, slant, math.degrees(angle))


def godet(radius: float, angle: float) -> Sector:
    """Return the godet of this radius and angle; its hem is what it adds (row E26).

    >>> round(godet(300, 90).hem, 3), round(straight_hem(300, 90), 2)
    (471.239, 424.26)
    """
    if not (radius > 0 and 0 < angle <= FULL):
        raise DraftError(
            "a godet is a sector of up to a full circle", value=f"{radius:g} mm, {angle:g} degrees"
        )
    return Sector(0.0, radius, angle)


def straight_hem(radius: float, angle: float) -> float:
    """Return what a godet cut as a straight-hemmed triangle adds instead (mm): less, as the chord."""
    return 2 * radius * math.sin(math.radians(angle) / 2)


def gores(whole: Sector, count: int) -> Sector:
    """Return one of `count` equal gores of a flared piece (row E27).

    >>> gore = gores(circle_skirt(700, 600, 0.5), 8)
    >>> round(gore.top, 3), round(gore.hem, 3), gore.angle
    (87.5, 323.119, 22.5)
    """
    if count < 1:
        raise DraftError("a skirt has one gore or more", value=str(count))
    return Sector(whole.radius, whole.length, whole.angle / count)


def extent(piece: Sector, allowance: float = 0.0) -> tuple[float, float]:
    """Return width and height (mm) of the box that holds a sector, its middle upright.

    `allowance` lies round it, at the hem along the rays: the outer radius grows by it.
    """
    half, outer = math.radians(piece.angle) / 2, piece.outer + allowance
    if half >= math.pi:
        return 2 * outer, 2 * outer
    width = 2 * outer * (1.0 if half >= math.pi / 2 else math.sin(half))
    if half >= math.pi / 2:
        return width, outer - outer * math.cos(half) + allowance
    top = max(0.0, (piece.radius - allowance) * math.cos(half))
    return width + 2 * allowance * math.cos(half), outer - top


@dataclass(frozen=True, slots=True)
class Cut:
    """A flared skirt as it is cut: `count` pieces like `piece`, and what there is to say."""

    piece: Sector
    count: int
    findings: tuple[Finding, ...] = ()


MOST_GORES = 12
"""More pieces than that are not looked for (ours)."""


def least_width(piece: Sector, allowance: float = 0.0) -> float:
    """Return how wide a cloth must be for a sector with its allowances, mm.

    A gore lies with its middle along the warp. A quarter of a circle or more has the straight grain
    in it either way: it lies with one side along the warp, as wide as its outer radius.
    """
    wide, high = extent(piece, allowance)
    if piece.angle < FULL / 4 or piece.angle > FULL / 2:
        return min(wide, high) if piece.angle > FULL / 2 else wide
    return min(wide, piece.outer + 2 * allowance)


def cut_to_width(
    whole: Sector, usable_width: float, allowance: float = 0.0, where: str = "skirt"
) -> Cut:
    """Return the skirt in the fewest equal pieces that lie on cloth of this width (FL1, FL5).

    Each piece has its own grainline down its middle; the hem in all is unchanged. `allowance` (mm)
    is counted round every piece. Raises `DraftError` where not even 12 gores would do.
    """
    sizes = {n: least_width(gores(whole, n), allowance) for n in range(1, 2 * MOST_GORES + 1)}
    fits = [n for n in range(1, MOST_GORES + 1) if sizes[n] <= usable_width]
    if not fits:
        raise DraftError(
            f"the {where} is wider than its cloth even in {MOST_GORES} gores",
            value=f"{usable_width:.0f} mm of usable width", reach=f"{sizes[MOST_GORES]:.0f} mm and more",
            turn="take a wider cloth, a shorter skirt or less flare, or lay the pieces crosswise",
        )  # fmt: skip
    count = fits[0]
    if count == 1:
        return Cut(whole, 1)
    return Cut(gores(whole, count), count, (Finding(
        "wider than the cloth", "warning", where, sizes[1], usable_width,
        f"In one piece the {where} would be {sizes[1]:.0f} mm wide and the cloth has {usable_width:.0f}: it "
        f"is cut in {count} equal pieces, each {sizes[count]:.0f} mm wide with a grainline of its own, or in "
        f"{2 * count}, each {sizes[2 * count]:.0f} mm wide; the hem stays {whole.hem:.0f} mm in all.",
    ),))  # fmt: skip


def panels(hem: float, usable_width: float) -> int:
    """Return into how many equal panels a piece with this hem (mm, allowances in it) is split.

    >>> panels(1650, 1470), panels(1400, 1470)
    (2, 1)
    """
    if not usable_width > 0:
        raise DraftError("cloth has a width above 0", value=f"{usable_width:g} mm")
    return max(1, math.ceil(hem / usable_width - 1e-9))


def bias_box(width: float, length: float, angle: float = 45.0) -> tuple[float, float]:
    """Return the box (mm, across and along the warp) of a panel laid at `angle` to the warp (E29).

    >>> [round(side, 3) for side in bias_box(600, 1000)]
    [1131.371, 1131.371]
    """
    c, s = abs(math.cos(math.radians(angle))), abs(math.sin(math.radians(angle)))
    return width * c + length * s, width * s + length * c


def bias_strip(area: float, width: float) -> float:
    """Return the length (mm) of bias strip that cloth of this area (mm2) gives, joins not counted."""
    return area / width


def trellis(shear: float) -> tuple[float, float]:
    """Return length and width factors of a bias panel whose weave shears by `shear` degrees (E31).

    The crossing threads keep their lengths and turn by half the shear each (own geometry).

    >>> [round(f, 4) for f in trellis(10)]
    [1.0834, 0.909]
    """
    if not 0 <= shear < 90:
        raise DraftError("a weave shears by 0 to 90 degrees", value=f"{shear:g} degrees")
    half = math.radians(45 - shear / 2)
    return math.cos(half) / math.cos(math.pi / 4), math.sin(half) / math.sin(math.pi / 4)
