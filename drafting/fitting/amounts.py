"""What a note's amount comes to on one hand: pinched, counted in all, or on each edge of a seam."""

from __future__ import annotations

from enum import StrEnum

from drafting.fitting.note import AmountAs, Note, NoteSide


class Counts(StrEnum):
    """What an alteration's amount goes along."""

    ROUND = "round"
    """A girth of the body: both hands share it."""
    LIMB = "limb"
    """A girth of one arm or one leg."""
    MIDDLE = "middle"
    """A girth of the body, taken at a seam in the middle that both hands share."""
    LENGTH = "length"
    """A length, a height or a place."""


def on_one_hand(note: Note, counts: Counts) -> float:
    """Return how many mm a note of this many changes on the hand for which it is carried out.

    1 cm pinched at each side makes the waist 4 cm smaller: 2 cm on each hand. As a total, 4 cm are 2 cm a
    hand where both have them, and all 4 where one hand does. On an edge, 1 cm is 2 cm a seam.
    """
    if counts is Counts.LENGTH:
        return note.amount
    if note.counted is AmountAs.TOTAL:
        shared = counts is not Counts.LIMB and note.side is NoteSide.BOTH
        return note.amount / 2 if shared else note.amount
    return note.amount if counts is Counts.MIDDLE else 2 * note.amount
