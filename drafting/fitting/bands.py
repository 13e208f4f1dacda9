"""How much ease the trade leaves, by what a garment is and where it goes round the body. mm at adult scale."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType

from drafting.checks.ease import ABOVE
from drafting.draft.by_role import edge_as
from drafting.draft.draft import Draft
from drafting.draft.frame import Limb
from drafting.draft.roles import EdgeRole, PieceRole
from drafting.ground.sources import Cited, Source, cite, practice


class GarmentSort(StrEnum):
    """What a garment is, as far as its ease goes."""

    LEGS = "legs"
    COAT = "coat"
    TOP = "top"
    WAISTED = "hangs from the waist"
    CAPE = "hangs from the neck"
    FOOT = "round the foot"


@dataclass(frozen=True, slots=True)
class EaseBand:
    """The least ease that the trade leaves, mm, the most before it is style, and who says so."""

    low: float
    high: float | None
    source: Cited


_TEXT = Source.EASE_IN_CLOTHING

BANDS: Mapping[tuple[GarmentSort, str], EaseBand] = MappingProxyType(
    {
        (GarmentSort.TOP, "bust"): EaseBand(38.0, 76.0, cite(_TEXT, "a bodice to a classic shirt")),
        (GarmentSort.TOP, "waist"): EaseBand(19.0, 25.0, cite(_TEXT, "a dress")),
        (GarmentSort.TOP, "hip"): EaseBand(51.0, 70.0, cite(_TEXT)),
        (GarmentSort.TOP, "upper_arm"): EaseBand(50.0, None, practice()),
        (GarmentSort.COAT, "bust"): EaseBand(80.0, 200.0, practice("a jacket to a coat")),
        (GarmentSort.COAT, "waist"): EaseBand(19.0, None, cite(_TEXT, "as a dress")),
        (GarmentSort.COAT, "hip"): EaseBand(51.0, None, cite(_TEXT)),
        (GarmentSort.COAT, "upper_arm"): EaseBand(50.0, None, practice()),
        (GarmentSort.LEGS, "waist"): EaseBand(13.0, 19.0, cite(_TEXT)),
        (GarmentSort.LEGS, "hip"): EaseBand(51.0, 70.0, cite(_TEXT)),
        (GarmentSort.WAISTED, "waist"): EaseBand(13.0, 19.0, cite(_TEXT, "a skirt, as trousers")),
        (GarmentSort.WAISTED, "hip"): EaseBand(51.0, 70.0, cite(_TEXT)),
        (GarmentSort.LEGS, "thigh"): EaseBand(25.0, None, cite(_TEXT)),
    }
)


def sort_of_garment(draft: Draft) -> GarmentSort:
    """Return what a garment is, from what its pieces and edges were declared to be."""
    roles = {edge.role for piece in draft.pieces for edge in piece.edges}
    if EdgeRole.CROTCH in roles:
        return GarmentSort.LEGS
    limbs = {piece.frame.limb for piece in draft.pieces if piece.frame}
    if limbs == {Limb.LEG}:
        return GarmentSort.FOOT
    if any(p.frame and p.frame.limb is Limb.HANGS and edge_as(p, EdgeRole.NECK) for p in draft.pieces):
        return GarmentSort.CAPE
    tails = any(piece.role is PieceRole.TAIL for piece in draft.pieces)
    if tails or EdgeRole.LAPEL in roles:
        return GarmentSort.COAT
    return GarmentSort.TOP if roles & ABOVE or EdgeRole.WAIST not in roles else GarmentSort.WAISTED
