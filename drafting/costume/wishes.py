"""What a maker wishes of a draft beside its choices: fullness, shapes sewn on, trims."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from contextlib import suppress
from dataclasses import replace
from typing import TYPE_CHECKING, TypeVar

from drafting.draft.draft import Draft, EdgeRef
from drafting.draft.named import edge_named, piece_named
from drafting.fabric import Fabric
from drafting.ground.errors import DraftError
from drafting.reading.fullness import FullnessWish
from drafting.reading.given import FilePlace
from drafting.reading.pockets import PocketWish
from drafting.reading.style import HANDS, StyleWish
from drafting.reading.trimming import AppliqueWish, TrimWish

if TYPE_CHECKING:
    from drafting.alter.fullness import Wish

GarmentWish = StyleWish | FullnessWish | AppliqueWish | PocketWish | TrimWish
Misfit = tuple[FilePlace, DraftError]
"""Where a wish stands in the maker's file, and why it cannot be had."""


AnyWish = TypeVar("AnyWish", bound=GarmentWish)


def on_each_hand(draft: Draft, wish: AnyWish) -> tuple[AnyWish, ...]:
    """Return a wish for one edge as the wishes for that edge on each hand, where each is drafted apart.

    Style and fullness are left as they are: they find their hands by themselves. Edges of the right hand run the
    other way than those of the left, as its pieces are turned over: a pocket lies as far along on both.
    """
    if isinstance(wish, StyleWish | FullnessWish):
        return (wish,)
    hand = wish.hand if isinstance(wish, PocketWish) else ""
    pieces = [p for p in draft.pieces if wish.piece in (p.name, p.base) and (not hand or p.hand in ("", hand))]
    halves = (wish.edge, *(f"{wish.edge}_{side}" for side in HANDS if hand in ("", side)))
    refs = [(p.name, edge) for p in pieces for edge in halves if edge in p]
    refs = refs or [(p.name, wish.edge) for p in pieces[:1]]  # a piece that has no such edge names those it has
    found = (replace(wish, piece=piece, edge=edge) for piece, edge in refs)
    return tuple(_turned_over(draft, one, (wish.piece, wish.edge)) for one in found) or (wish,)


def _turned_over(draft: Draft, found: AnyWish, named: EdgeRef) -> AnyWish:
    """Return a wish; a pocket asked for by the name of both hands lies on the right one as on the left."""
    if not isinstance(found, PocketWish) or found.edge not in draft[found.piece]:
        return found
    parts = draft[found.piece], draft[found.piece][found.edge]
    hands = {part.hand for part in parts if part.name not in named}
    return replace(found, along=1 - found.along, tilt=-found.tilt) if "right" in hands else found


def altered(draft: Draft, wishes: Iterable[GarmentWish], fabric: Fabric | None) -> tuple[Draft, list[Misfit]]:
    """Return the draft with fullness and shapes as wished, and each wish that it cannot have.

    A trim changes nothing; its edge has to be there.
    """
    misfits: list[Misfit] = []
    number, pockets = 0, 0
    on_hands = [one for asked in wishes for one in on_each_hand(draft, asked)]
    for wish in on_hands:
        number += isinstance(wish, AppliqueWish)
        pockets += isinstance(wish, PocketWish)
        try:
            draft = _granted(draft, wish, fabric, number, pockets)
        except DraftError as error:
            misfits.append((wish.spot, error))
    return draft, misfits


def on_one_pivot(
    hands: tuple[Draft, Draft], wishes: Sequence[AnyWish], fabric: Fabric | None
) -> list[AnyWish | FullnessWish]:
    """Return wishes for both hands, each fullness that names no pivot opened from one and the same: what lies
    across on the left, where the right has it too. Else each hand's own build would choose, and the two differ."""
    if not any(isinstance(wish, FullnessWish) for wish in wishes):
        return list(wishes)
    from drafting.alter.fan import edge_across

    left, right = hands
    found: list[AnyWish | FullnessWish] = []
    for asked in wishes:
        wish: AnyWish | FullnessWish = asked
        if isinstance(asked, FullnessWish) and not asked.pivot and asked.piece in left and asked.piece in right:
            with suppress(DraftError, KeyError):  # refused in words where each hand is altered
                across = edge_across(left[asked.piece], asked.edge)
                if all(name in right[asked.piece] for name in across):
                    wish = replace(asked, pivot=", ".join(across))
        left, right = (
            altered(hand, [] if isinstance(wish, StyleWish) and wish.hand not in ("", side) else [wish], fabric)[0]
            for hand, side in zip((left, right), HANDS, strict=True)
        )
        found.append(wish)
    return found


def _granted(draft: Draft, wish: GarmentWish, fabric: Fabric | None, number: int, pockets: int) -> Draft:
    """Return the draft with one wish; what alters it so is loaded by who wishes for it only."""
    if isinstance(wish, StyleWish):
        from drafting.alter.style.apply import styled

        return styled(draft, wish, fabric)
    if isinstance(wish, FullnessWish):
        from drafting.alter.fullness import fuller

        return fuller(draft, _spread_wish(wish), fabric)
    if isinstance(wish, AppliqueWish):
        from drafting.alter.applique import appliqued

        return appliqued(draft, wish, number)
    if isinstance(wish, PocketWish):
        from drafting.alter.pocket import with_pocket

        return with_pocket(draft, wish, pockets, fabric)
    edge_named(piece_named(draft, wish.piece), wish.edge)
    return draft


def _spread_wish(wish: FullnessWish) -> Wish:
    """Return a maker's wish as the alteration takes it."""
    from drafting.alter.fullness import Wish

    ref = (wish.piece, wish.edge)
    if wish.each is not None:
        return Wish(ref, wish.pivot, wish.cuts, amount=wish.cuts * wish.each)
    return Wish(ref, wish.pivot, wish.cuts, ratio=wish.ratio, gather=True, flat=wish.flat)
