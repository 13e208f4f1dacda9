"""What both hands of a wearer take where a choice must have one value: a block's `SHARED` is made of these."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from drafting.draft.by_role import edges_as
from drafting.draft.draft import Draft
from drafting.draft.roles import EdgeRole
from drafting.draft.two_sides import ALIKE

OneValue = Callable[[Draft, Draft], Any]
"""From the left and the right draft to the value that both take; None where they agree as they are."""


def the_smaller(fact: str) -> OneValue:
    """Return a rule that gives both hands the smaller one's `fact`, as one zip closes both fronts."""

    def settle(left: Draft, right: Draft) -> float | None:
        made = [draft.facts.get(fact, 0.0) for draft in (left, right)]
        return min(made) if max(made) - min(made) > ALIKE else None

    return settle


def the_larger_within(fact: str, room: str) -> OneValue:
    """Return a rule that gives both hands the larger one's `fact`, which one needs, within either's `room`."""

    def settle(left: Draft, right: Draft) -> float | None:
        made = [draft.facts.get(fact, 0.0) for draft in (left, right)]
        most = min(draft.facts.get(room, 0.0) for draft in (left, right))
        return min(max(made), most) if max(made) - min(made) > ALIKE else None

    return settle


def where_either_has(role: EdgeRole, value: str) -> OneValue:
    """Return a rule that gives both hands `value` where only one of them has an edge of this role."""

    def has(draft: Draft) -> bool:
        return any(edges_as(piece, role) for piece in draft.pieces)

    def settle(left: Draft, right: Draft) -> str | None:
        return value if has(left) != has(right) else None

    return settle
