"""Flared pieces as sectors of a ring: circle skirts, cones, gores, godets, and cloth sheared on the bias.

A sector of radius r and angle a has an edge r x a long; a waist w on an angle a lies at r = w / a
(exact geometry). Lengths in mm, angles in radians unless named otherwise.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from drafting.ground.errors import DraftError

FULL_CIRCLE = 2 * math.pi


@dataclass(frozen=True, slots=True)
class Sector:
    """A ring sector: inner radius (the upper edge), outer radius (the hem) and angle, radians."""

    inner: float
    outer: float
    angle: float

    @property
    def top(self) -> float:
        """Length of the upper edge, mm."""
        return self.inner * self.angle

    @property
    def hem(self) -> float:
        """Length of the lower edge, mm."""
        return self.outer * self.angle

    @property
    def degrees(self) -> float:
        return math.degrees(self.angle)

    def part(self, count: int) -> Sector:
        """Return one of `count` equal gores.

        >>> round(flared_skirt(700, 600, 0.5).part(8).hem, 2)
        323.12
        """
        return Sector(self.inner, self.outer, self.angle / count)


def flared_skirt(waist: float, length: float, circle: float) -> Sector:
    """Return the skirt that is `circle` of a full circle (0.25, 0.5, 0.75, 1 ...).

    >>> round(flared_skirt(700, 600, 1.0).inner, 3)
    111.408
    """
    if not (waist > 0 and length > 0 and circle > 0):
        raise DraftError("waist, length and share of a circle must be more than zero")
    angle = circle * FULL_CIRCLE
    return Sector(waist / angle, waist / angle + length, angle)


def cone(top: float, bottom: float, slant: float) -> Sector:
    """Return the sector that becomes a cone with these edges and slant height."""
    if not bottom > top > 0:
        raise DraftError(
            "a flared piece is wider below than above",
            value=f"{top:.0f} mm above, {bottom:.0f} mm below",
            turn="for equal edges cut a rectangle",
        )
    angle = (bottom - top) / slant
    return Sector(top / angle, top / angle + slant, angle)


def godet(length: float, degrees: float) -> Sector:
    """Return a godet let into a seam of this length."""
    return Sector(0.0, length, math.radians(degrees))


def circle_width(skirt: Sector, allowance: float = 0.0) -> float:
    """Return how wide a cloth a full circle cut in one piece needs, allowances counted."""
    return 2 * (skirt.outer + allowance)


def must_fit(skirt: Sector, usable_width: float, allowance: float = 0.0) -> None:
    """Refuse a one-piece circle that is wider than the cloth, offering halves or quarters.

    >>> must_fit(flared_skirt(700, 600, 1.0), 1500)
    """
    wide = circle_width(skirt, allowance)
    if wide <= usable_width:
        return
    raise DraftError(
        "the circle is wider than the cloth",
        value=f"{wide / 10:.1f} cm across, {usable_width / 10:.0f} cm usable",
        reach=f"a length up to {(usable_width / 2 - allowance - skirt.inner) / 10:.1f} cm in one piece",
        turn=f"cut two halves ({(skirt.outer + allowance) / 10:.1f} cm of width) or four quarters, with seams",
    )


def sheared(degrees: float) -> tuple[float, float]:
    """Return how much longer and narrower true-bias cloth grows when its threads shear by `degrees`.

    An inextensible square weave, the diagonal of a rhomb.

    >>> tuple(round(f, 4) for f in sheared(10))
    (1.0834, 0.909)
    """
    half = math.radians(45 - degrees / 2)
    flat = math.radians(45)
    return math.cos(half) / math.cos(flat), math.sin(half) / math.sin(flat)
