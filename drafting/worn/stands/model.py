"""What a garment at rest is found to do: girths, how far it stands off, strain, hem. mm; strain is a fraction."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from drafting.worn.nouns import Limb

Where = Literal["front", "side", "back"]
WHERE: tuple[Where, ...] = ("front", "side", "back")


ALL_ALONG = 0.5
"""Of what the cloth gives, as much is the mean at least where it pulls; less is stretched at single places only,
as a loose shirt is by up to 2 % below the chest that its sleeves draw across (ours)."""


@dataclass(frozen=True, slots=True)
class StandsOff:
    """How far cloth stands off the form at one level, on one face of the body."""

    where: Where
    mm: float


@dataclass(frozen=True, slots=True)
class Strain:
    """Stretch along a level: its `mean`, and what 95 of 100 mm stay under; `gives` is what the cloth gives in
    comfort there. `trusted`: the form is verified at this level."""

    mean: float
    p95: float
    gives: float
    trusted: bool

    @property
    def pulls(self) -> bool:
        """Whether it is more than the cloth gives in comfort, and not at single places only."""
        return self.p95 > self.gives and self.mean > ALL_ALONG * self.gives


@dataclass(frozen=True, slots=True)
class LevelWorn:
    """One drafted level as it is worn; `height` over the floor.

    `slack` is what could be pinched there: `worn` less a tape drawn tight round the body beneath it.
    """

    name: str
    limb: Limb
    height: float
    drafted: float
    worn: float
    stands_off: tuple[StandsOff, ...]
    strain: Strain
    slack: float = 0.0


@dataclass(frozen=True, slots=True)
class Hoop:
    """A ring of bone: what it is `across` where it stands, and the `share` of its area that it encloses."""

    across: float
    share: float


@dataclass(frozen=True, slots=True)
class HemWorn:
    """The lowest hem: its `width` from left to right, how far it reaches behind the seat (`back_reach`), its
    lowest and highest point over the floor, between which widths it came to rest (`range`), and along how much
    of it it lies on the floor (`trails`). `hoop`: the bone that goes all round it, if one does."""

    width: float
    back_reach: float
    lowest: float
    highest: float
    range: tuple[float, float]
    trails: float = 0.0
    hoop: Hoop | None = None


@dataclass(frozen=True, slots=True)
class GarmentWorn:
    """What is found on one garment; where it has not `settled`, only its shape may be looked at.

    `slid` says that the body does not hold it where it was drafted to lie: it sank, or hangs from braces.
    """

    garment: str
    settled: bool
    residual: float
    vertices: int
    levels: tuple[LevelWorn, ...]
    hem: HemWorn | None
    seconds: float = 0.0
    slid: bool = False
