"""The steps of style in their order, each on the draft that the one before left."""

from __future__ import annotations

from drafting.alter.style.cut import cut_apart
from drafting.alter.style.dart import dart_moved
from drafting.alter.style.edge_shifted import edge_shifted
from drafting.alter.style.join import joined_up
from drafting.alter.style.pleat import pleated
from drafting.draft.draft import Draft
from drafting.reading.style import CutWish, DartWish, JoinWish, ShiftWish, StyleWish


def styled(draft: Draft, wish: StyleWish) -> Draft:
    """Return the draft with one step done; raises `DraftError` where it cannot be."""
    if isinstance(wish, CutWish):
        return cut_apart(draft, wish)
    if isinstance(wish, JoinWish):
        return joined_up(draft, wish)
    if isinstance(wish, ShiftWish):
        return edge_shifted(draft, wish)
    return dart_moved(draft, wish) if isinstance(wish, DartWish) else pleated(draft, wish)
