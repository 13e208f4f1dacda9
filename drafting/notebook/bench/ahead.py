"""The next step of a hand, drafted while it rests: one more press of a key is then answered from it.

That is one step more the same way, or, once the hand has come to another control, a step of that one either way.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from drafting.costume.file import CostumeFile
from drafting.costume.make import Made, finished
from drafting.ground.errors import DraftError

MOST = 3
"""Drafts that are kept: one step on, and one either way at the control that the hand came to (ours)."""


@dataclass(frozen=True)
class HandStep:
    """What the hand did last: a choice, its value now and the value one such step further on."""

    choice: str
    value: float
    further: float


def step_of(choice: str, before: Any, value: Any) -> HandStep | None:
    """Return the step from one value of a choice to another, None where they are no numbers.

    Millionths are rounded as the page rounds them.
    """
    numbers = (int, float)
    if isinstance(value, bool) or not (isinstance(before, numbers) and isinstance(value, numbers)):
        return None
    return HandStep(choice, value, round(2 * value - before, 6)) if value != before else None


def steps_from(value: Any, step: float) -> tuple[float, ...]:
    """Return a value one step of the keys up and down, none for what is no number; rounded as the page does."""
    number = isinstance(value, (int, float)) and not isinstance(value, bool)
    return (round(value + step, 6), round(value - step, 6)) if number else ()


class Ahead:
    """Drafts garments, and keeps the last that were drafted ahead."""

    def __init__(self) -> None:
        self._known: tuple[tuple[CostumeFile, Made], ...] = ()

    def finished(self, costume: CostumeFile) -> Made:
        """Return what `make.finished` does, from what was drafted ahead where it is the same."""
        known = (made for asked, made in self._known if asked == costume)
        return next(known, None) or finished(costume)

    def look(self, costume: CostumeFile, then: Callable[[Made], object]) -> None:
        """Draft a costume ahead and hand it on; what cannot be drafted is let go without a word."""
        try:
            made = self.finished(costume)
        except DraftError:
            return
        self._known = (*self._known, (costume, made))[-MOST:]
        then(made)
