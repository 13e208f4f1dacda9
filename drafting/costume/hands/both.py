"""The two hands of a garment: its parts drafted in order, and each note of a fitting as soon as its place stands.

A note alters the part that draws its place, before anything that hangs on it is drafted: so the sleeve fits
the armhole as altered, the collar the neck, the lining the shell, the tails and the band the waist.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from drafting.blocks import Block, all_blocks
from drafting.body import Body
from drafting.body.body import SIDES
from drafting.body.sides import differing_measures, one_side
from drafting.costume.choices import Chosen
from drafting.costume.hands.agreed import agreed_choices
from drafting.costume.hands.middle_shared import NEARLY, ROUNDS, meeting, middles_apart, told_middles
from drafting.costume.hands.part import GarmentPart, part_drafted
from drafting.costume.put_together import left_open, refuse_unread_girths, sewn_up
from drafting.draft.chain import chain
from drafting.draft.draft import Draft, EdgeRef
from drafting.draft.two_sides import alike
from drafting.fabric import Fabric
from drafting.fitting.applied import Fitted, fitted
from drafting.fitting.note import Note, NoteSide
from drafting.ground.errors import DraftError
from drafting.shaping.skirt.plan import CLOTH_WIDTH

NARROWER = (0.99, 0.98, 0.96, 0.93, 0.9, 0.86, 0.8)
"""Of the cloth's width: what both hands are parted for, where one only just lies on it in fewer panels (ours)."""

AGREED = 3
"""How often both hands are drafted again for one value of a choice: a yoke first, then how deep it is (ours)."""


def both_drafted(
    body: Body, fabric: Fabric | None, block: Block, chosen: Chosen, notes: Sequence[Note] = ()
) -> list[Fitted]:
    """Return the draft of both hands, or one for each where they come out different.

    Raises `DraftError` where the measures and choices cannot be drafted together.
    """
    if not differing_measures(body) and all(note.side is NoteSide.BOTH for note in notes):
        return [_one_hand(body, fabric, chosen, notes)]
    left, right = _two(body, fabric, chosen, notes)
    if alike(left.draft, right.draft):
        one = _one_hand(body, fabric, chosen, [note for note in notes if note.side is NoteSide.BOTH])
        told = dict.fromkeys((*left.findings, *right.findings))
        own = [done for done in (*left.done, *right.done) if done.note.side is not NoteSide.BOTH]
        return [
            replace(
                one,
                done=(*one.done, *own),
                findings=tuple(told),
                left=tuple(dict.fromkeys((*left.left, *right.left))),
            )
        ]
    for _ in range(AGREED):
        agreed = agreed_choices(chosen, left.draft, right.draft)
        if agreed is chosen:
            break
        chosen = agreed
        left, right = _two(body, fabric, chosen, notes)
    hands = _parted_alike(body, fabric, chosen, notes, (left, right))
    return list(_middles_met(body, fabric, chosen, notes, hands))


def _middles_met(
    body: Body, fabric: Fabric | None, chosen: Chosen, notes: Sequence[Note], hands: tuple[Fitted, Fitted]
) -> tuple[Fitted, Fitted]:
    """Return both hands with middles as long as each other, where notes for one hand alone made them otherwise.

    As they are where no alteration makes them so: what is left over is settled where they are put together.
    """
    if all(note.side is NoteSide.BOTH for note in notes):
        return hands
    left, right = hands
    given: dict[EdgeRef, float] = {}
    for _ in range(ROUNDS):
        more = middles_apart(left.draft, right.draft)
        if not more:
            break
        given = {ref: given.get(ref, 0.0) + more.get(ref, 0.0) / 2 for ref in {**given, **more}}
        met = meeting(given, notes[0].garment)
        left, right = _two(body, fabric, chosen, notes, met)
        agreed = agreed_choices(chosen, left.draft, right.draft)  # a fly ends elsewhere in a middle that has moved
        if agreed is not chosen:
            chosen = agreed
            left, right = _two(body, fabric, chosen, notes, met)
        if any(len(fit.done) < len(was.done) + len(given) for fit, was in zip((left, right), hands, strict=True)):
            return hands
    if any(abs(more) > NEARLY for more in middles_apart(left.draft, right.draft).values()):
        return hands
    said = tuple(told_middles(hands[0].draft, hands[1].draft, given))
    own = [
        replace(fit, done=was.done, findings=(*was.findings, *said), left=was.left)
        for fit, was in zip((left, right), hands, strict=True)
    ]
    return own[0], own[1]


def _parted_alike(
    body: Body, fabric: Fabric | None, chosen: Chosen, notes: Sequence[Note], hands: tuple[Fitted, Fitted]
) -> tuple[Fitted, Fitted]:
    """Return both hands in the same pieces, where a little less width of cloth makes them so, else as they are."""
    if fabric is None or _parted(hands[0].draft) == _parted(hands[1].draft):
        return hands
    for share in NARROWER:
        narrower = replace(fabric, usable_width=share * (fabric.usable_width or CLOTH_WIDTH))
        try:
            left, right = _two(body, narrower, chosen, notes)
        except DraftError:  # too narrow for any panel
            break
        if _parted(left.draft) == _parted(right.draft):
            return left, right
    return hands


def _parted(draft: Draft) -> set[tuple[str, bool]]:
    """Return the pieces of a hand's shell, and which of them are cut on the fold."""
    return {(piece.name, piece.fold_edge is not None) for piece in draft.pieces if not piece.material}


def _two(
    body: Body,
    fabric: Fabric | None,
    chosen: Chosen,
    notes: Sequence[Note],
    more: tuple[Sequence[Note], Sequence[Note]] = ((), ()),
) -> tuple[Fitted, Fitted]:
    """Return each hand with its notes; `more` are those of the left and of the right that nobody wrote."""
    left, right = (
        _one_hand(
            one_side(body, side),
            fabric,
            chosen,
            [*(note for note in notes if note.side in (NoteSide.BOTH, side)), *own],
        )
        for side, own in zip(SIDES, more, strict=True)
    )
    return left, right


def _one_hand(body: Body, fabric: Fabric | None, chosen: Chosen, notes: Sequence[Note]) -> Fitted:
    """Return the parts of a garment drafted in order, each handed the chains it needs, and fitted."""
    fit = Fitted(Draft(), left=tuple(notes))
    for name, choices in chosen.parts.items():
        more = fitted(_with_part(fit.draft, body, fabric, name, choices), fit.left)
        fit = replace(more, done=(*fit.done, *more.done), findings=(*fit.findings, *more.findings))
    refuse_unread_girths(fit.draft)
    return replace(fit, draft=left_open(sewn_up(fit.draft)))


def _with_part(draft: Draft, body: Body, fabric: Fabric | None, name: str, choices: Any) -> Draft:
    """Return a draft with one part more; raises `DraftError` where it lacks what the part has to fit."""
    part = all_blocks()[name]
    lost = [needed for needed in part.needs if needed not in draft.chains]
    if lost or part.draft is None:
        wanted = " and ".join(needed.replace("_", " ") for needed in lost)
        raise DraftError(
            f"the block {name} cannot be drafted here: it has to fit the {wanted}",
            turn="take a block of a whole garment that has both, for example shirt",
        )
    if part.alters and not draft.pieces:
        raise DraftError(
            f"the block {name} changes a garment, and makes none by itself",
            turn="take a block of a whole garment, for example shirt",
        )
    part_of = GarmentPart(
        name=name,
        draft=part.draft,
        fabric=fabric,
        values=tuple(vars(choices).items()),
        chains=tuple((needed, chain(draft, needed)) for needed in part.needs),
        choices=choices,
        before=draft if part.alters else None,
    )
    found = part_drafted(body, part_of)
    return found if part.alters else draft + found
