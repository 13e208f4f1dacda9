"""The next step of a hand, drafted while it rests: one more press of a key is then answered from it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from drafting.costume.file import CostumeFile
from drafting.costume.make import Made, finished
from drafting.ground.errors import DraftError


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


class Ahead:
    """Drafts garments, and keeps the one that was drafted ahead."""

    def __init__(self) -> None:
        self._known: tuple[CostumeFile, Made] | None = None

    def finished(self, costume: CostumeFile) -> Made:
        """Return what `make.finished` does, from what was drafted ahead where it is the same."""
        if self._known and self._known[0] == costume:
            return self._known[1]
        return finished(costume)

    def look(self, costume: CostumeFile, then: Callable[[Made], object]) -> None:
        """Draft a costume ahead and hand it on; what cannot be drafted is let go without a word."""
        self._known = None
        try:
            self._known = (costume, finished(costume))
        except DraftError:
            return
        then(self._known[1])
