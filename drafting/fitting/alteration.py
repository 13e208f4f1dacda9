"""What an alteration of the line is: words that ask for it, places at which it is meant, and what it does."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from drafting.fitting.amounts import Counts
from drafting.fitting.found import Found
from drafting.fitting.lines.altered import Altered
from drafting.fitting.meant import IsMeant
from drafting.fitting.note import Verb

Alter = Callable[[Found, float], Altered]
Verbs = frozenset[Verb]

IN, OUT = frozenset({Verb.TAKE_IN}), frozenset({Verb.LET_OUT})
LONGER, SHORTER = frozenset({Verb.LENGTHEN}), frozenset({Verb.SHORTEN})
UP, DOWN = frozenset({Verb.RAISE}), frozenset({Verb.LOWER})
FORWARD, BACK = frozenset({Verb.FORWARD}), frozenset({Verb.BACK})
TURN = frozenset({Verb.TURN})
MORE, LESS = frozenset({Verb.EASE_MORE}), frozenset({Verb.EASE_LESS})
NEVER: Verbs = frozenset()


@dataclass(frozen=True)
class Alteration:
    """One alteration: its name, the verbs that make more or less of it, where it is meant, what it does.

    `middle` says that it moves the middle line, which both hands have in common.
    """

    name: str
    more: Verbs
    less: Verbs
    meant: tuple[IsMeant, ...]
    counts: Counts
    alter: Alter
    middle: bool = False
