"""What is asked of one garment, as its maker wrote it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from drafting.ground.frozen import freeze
from drafting.reading.fullness import FullnessWish
from drafting.reading.given import Given
from drafting.reading.pockets import PocketWish
from drafting.reading.style import StyleWish
from drafting.reading.trimming import AppliqueWish, TrimWish


@dataclass(frozen=True)
class Garment:
    """One garment: the block it is drafted from, the role of its cloth, raw choices, its line, the
    steps of style, the fullness asked of its edges, the trims along them, the shapes and pockets sewn on,
    where the block stands."""

    name: str
    block: str
    fabric: str
    choices: Mapping[str, Given]
    line: int | None = None
    fullness: tuple[FullnessWish, ...] = ()
    trims: tuple[TrimWish, ...] = ()
    appliques: tuple[AppliqueWish, ...] = ()
    pockets: tuple[PocketWish, ...] = ()
    style: tuple[StyleWish, ...] = ()
    block_line: int | None = field(default=None, compare=False)

    @property
    def wishes(self) -> tuple[StyleWish | FullnessWish | AppliqueWish | PocketWish | TrimWish, ...]:
        """What is asked beside the choices, in the order in which it is done."""
        return (*self.style, *self.fullness, *self.appliques, *self.pockets, *self.trims)

    def __post_init__(self) -> None:
        freeze(self, "choices")


def for_another(garment: Garment) -> Garment:
    """Return what is asked of a garment on a wearer that it was not written for: its pockets give way."""
    return replace(garment, pockets=tuple(replace(pocket, gives_way=True) for pocket in garment.pockets))
