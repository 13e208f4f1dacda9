"""What changes when a costume is put on another wearer: lengths, ease, buttons, cloth to buy."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from drafting.costume.garment import MadeGarment
from drafting.costume.make import Made
from drafting.draft.by_role import is_shell
from drafting.ground.lengths import told
from drafting.ground.names import name_in_words

SAME = 1.0
"""mm: a length that differs by less is told as the same (half of what is shown)."""


class Changed(NamedTuple):
    """One thing on either wearer, in words: what it is, on the costume's own and on the other."""

    what: str
    before: str
    after: str


def what_changed(before: Made, after: Made) -> tuple[Changed, ...]:
    """Return what differs between a costume on its own wearer, `before`, and on another; both laid out.

    Lengths are those of the pieces that reach lowest, ease is that at each level; cloth is what is bought.
    """
    own = {garment.name: garment for garment in before.garments}
    found = [row for garment in after.garments for row in _of_garment(own[garment.name], garment)]
    bought = {lay.role: lay.buy_length for lay in before.lays}
    for lay in after.lays:
        if lay.role in bought:
            found += _row(f"{name_in_words(lay.role)}, to buy", bought[lay.role], lay.buy_length, "bought")
    return tuple(found)


def _of_garment(before: MadeGarment, after: MadeGarment) -> Iterator[Changed]:
    name = name_in_words(after.name)
    yield from _row(f"{name}, longest piece", _longest(before), _longest(after))
    eases = {(girth.level, girth.side): girth.settled_ease for girth in before.draft.girths}
    for girth in after.draft.girths:
        old = eases.get((girth.level, girth.side))
        if old is not None:
            yield from _row(f"{name}, ease at the {name_in_words(girth.level)}", old, girth.settled_ease)
    was, now = _buttons(before), _buttons(after)
    if was != now:
        yield Changed(f"{name}, buttons", str(was), str(now))


def _row(what: str, before: float, after: float, how: str = "plain") -> Iterator[Changed]:
    if abs(after - before) > SAME:
        shown = (told(before, "bought"), told(after, "bought")) if how == "bought" else (told(before), told(after))
        yield Changed(what, *shown)


def _longest(garment: MadeGarment) -> float:
    """Return how high the longest piece of the shell is, mm."""
    boxes = [piece.outline.bounds for piece in garment.draft.pieces if is_shell(piece)]
    return max(y1 - y0 for _, y0, _, y1 in boxes)


def _buttons(garment: MadeGarment) -> int:
    return sum(notion.count for notion in garment.draft.notions if notion.what == "button")
