"""The steps of style in their order, each on the draft that the one before left."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Any

from drafting.alter.style.corner import corner_changed
from drafting.alter.style.cut_over_dart import cut_across
from drafting.alter.style.dart import dart_moved
from drafting.alter.style.edge_shifted import edge_shifted
from drafting.alter.style.edging import edged
from drafting.alter.style.godet import with_godet
from drafting.alter.style.join import joined_up
from drafting.alter.style.pleat import pleated
from drafting.draft.draft import Draft
from drafting.fabric import Fabric
from drafting.geometry.area import is_simple
from drafting.ground.errors import DraftError
from drafting.ground.names import name_in_words
from drafting.reading.style import CutWish, DartWish, JoinWish, PleatWish, ShiftWish, StyleWish
from drafting.reading.style_made import CornerWish, EdgingWish, GodetWish

STEPS: Mapping[type[Any], Callable[[Draft, Any], Draft]] = MappingProxyType(
    {
        CutWish: cut_across,
        JoinWish: joined_up,
        DartWish: dart_moved,
        PleatWish: pleated,
        ShiftWish: edge_shifted,
        GodetWish: with_godet,
        CornerWish: corner_changed,
    }
)
"""What does each step; a strip made for an edge asks for the cloth as well (`edged`)."""


def styled(draft: Draft, wish: StyleWish, fabric: Fabric | None = None) -> Draft:
    """Return the draft with one step done; a strip is cut the way this cloth gives.

    Raises `DraftError` where it cannot be done, and where an outline would cross itself.
    """
    after = edged(draft, wish, fabric) if isinstance(wish, EdgingWish) else STEPS[type(wish)](draft, wish)
    before = {id(piece) for piece in draft.pieces}
    for piece in after.pieces:
        if id(piece) not in before and not is_simple(piece.outline):
            raise DraftError(
                f"the outline of the {name_in_words(piece.name)} would cross itself",
                turn="move an end of the line, or make it shallower",
            )
    return after
