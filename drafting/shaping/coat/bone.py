"""Bones in a hem: the channel's length and curve, what a bone must bear, and how long it is cut. mm.

A channel along a flared hem is curved in the plane of the cloth. A flat bone cannot bend edgewise:
its edge would stretch by width / (2 R). A spiral or round bone can; so can one flat bone a panel, in a
channel wider by the arc's height l^2 / (8 R) (plane geometry).
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from drafting.geometry import Path
from drafting.geometry.turning import turns
from drafting.ground.findings import Finding
from drafting.ground.lengths import told

FLAT, SPIRAL, ROUND = "flat", "spiral", "round"

BONING = "boning"
"""What a bone is called in the list of what to buy."""

HEM_BONE, SEAM_BONE = "hem_bone", "seam_bone"
"""What the marks are called that bones lie along."""

MOST_STRAIN = 0.003
"""Greatest strain at the edge of a flat bone (ours)."""

ROOM = 3.0
"""mm: a channel is so much wider than its bone (common practice: 2-3)."""

TURNINGS = 6.0
"""mm turned under along each edge of a casing strip (common practice)."""

AT_WAIST, AT_HEM = 15.0, 5.0
"""mm that a bone down a seam keeps from waist and hem (ours)."""


@dataclass(frozen=True)
class Channel:
    """One stretch of channel on one panel: its length and its mean radius in the cloth's plane."""

    panel: str
    length: float
    radius: float

    def strain(self, width: float) -> float:
        """Return the edge strain of a flat bone `width` mm wide."""
        return width / (2 * self.radius)

    def height(self) -> float:
        """Return how far the channel's arc rises over a straight bone: l^2 / (8 R)."""
        return self.length**2 / (8 * self.radius)


def channel(panel: str, path: Path) -> Channel:
    """Return the channel that runs along `path`."""
    turned = abs(math.radians(sum(turns(path))))
    return Channel(panel, path.length, path.length / turned if turned > 1e-6 else math.inf)


def flat_bone_said(channels: Sequence[Channel], kind: str, width: float, instead: str = "") -> Iterator[Finding]:
    """Yield that a flat bone `width` mm wide cannot bend edgewise, where a hem curves too much for it.

    `instead` names what may be taken besides; `{height}` in it is the height of the sharpest channel's arc.
    """
    sharpest = min(channels, key=lambda one: one.radius)
    strain = sharpest.strain(width)
    if kind == FLAT and strain > MOST_STRAIN:
        yield Finding(
            "flat bone",
            "warning",
            sharpest.panel,
            100 * strain,
            100 * MOST_STRAIN,
            f"A flat bone {told(width, 'small')} wide cannot follow the hem of {sharpest.panel}: it would "
            f"have to bend edgewise on a radius of {told(sharpest.radius)}, {100 * strain:.1f} % at its edge "
            f"({100 * MOST_STRAIN:.1f} % is the most). Take a spiral or a round bone"
            f"{instead.format(height=told(sharpest.height(), 'small'))}.",
        )


def bone_length(channel_length: float, short: float) -> float:
    """Return the bone for a channel: `short` mm free at each end (common practice: 10-15 in all).

    >>> bone_length(300.0, 6.0)
    288.0
    """
    return channel_length - 2 * short


def casing_size(length: float, bone: float, extra: float = 0.0) -> tuple[float, float]:
    """Return length and width of a casing strip, its turnings included."""
    return length + 20.0, bone + ROOM + extra + 2 * TURNINGS
