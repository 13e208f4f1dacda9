"""How a piece lies on the body: what it goes round, which of its places lie at which height, and its middle.

Most of it is read from edges, levels and marks (`worn/sewn/frames`). What these do not say a block states
in `Piece.frame`, so that its garment finds its own place on the wearer.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from enum import StrEnum


class Limb(StrEnum):
    """What part of the body a piece goes round."""

    TRUNK = "trunk"
    ARM = "arm"
    LEG = "leg"
    HANGS = "hangs"  # from its top edge, touches nothing below by design


class BodyHeight(StrEnum):
    """A height of the body that a place of a piece lies at."""

    NAPE = "nape"
    BUST = "bust"
    WAIST = "waist"
    HIP = "hip"
    CROTCH = "crotch"
    KNEE = "knee"
    CROWN = "crown"  # a sleeve's highest place, at the shoulder point
    ARMPIT = "armpit"  # round the upper arm
    ELBOW = "elbow"


Straight = tuple[complex, complex]
"""A straight line on a piece, from and to, mm."""


@dataclass(frozen=True)
class BodyFrame:
    """How a piece lies on the body, as far as its edges, levels and marks do not say it.

    `heights` are places of the piece and the height that each lies at; what hangs may name one place for each edge
    that it hangs from. `front` and `back` are straights
    that lie on the middle of the body, the left hand's cloth on their left: the front runs down, the back
    up on a piece drawn as it hangs. `outer` says that its garment goes over what is tucked in at the waist.
    `ahead` is the way across a piece to the toes, where it is drawn as foot and leg are seen from the side.
    """

    limb: Limb | None = None
    heights: tuple[tuple[BodyHeight, complex], ...] = ()
    front: Straight | None = None
    back: Straight | None = None
    outer: bool = False
    ahead: complex | None = None

    def at(self, height: BodyHeight) -> complex | None:
        """Return the place that lies at a height, or None."""
        return next((place for kind, place in self.heights if kind is height), None)

    def mapped(self, move: Callable[[complex], complex]) -> BodyFrame:
        """Return the frame with every place moved by an orientation-keeping move."""
        front, back = ((move(line[0]), move(line[1])) if line else None for line in (self.front, self.back))
        ahead = None if self.ahead is None else move(self.ahead) - move(0j)
        heights = tuple((k, move(p)) for k, p in self.heights)
        return replace(self, heights=heights, front=front, back=back, ahead=ahead)

    def mirrored(self) -> BodyFrame:
        """Return the frame of the other hand's piece; the middles keep their way."""
        return self.mapped(lambda place: -place.conjugate())
