"""What can go wrong, said so that a maker can mend it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from drafting.ground.lengths import in_unit


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing wrong in one file.

    `what` says what is wrong, `right` what would be right; `line` counts from 1 and is None where
    the fault has no line (a file that cannot be opened, a body handed over by a notebook). A key
    that is missing has the line of its table. `misquoted` says that nothing but the quotes of the
    value is at fault, and that the line was read as it was most likely meant.
    """

    what: str
    right: str = ""
    field: str = ""
    file: str = ""
    line: int | None = None
    misquoted: bool = False

    def in_unit(self, unit: str | None) -> Fault:
        """Return this fault with the lengths that are told in it in `unit` (None: cm)."""
        return replace(self, what=in_unit(self.what, unit), right=in_unit(self.right, unit))

    def __str__(self) -> str:
        place = self.file + (f":{self.line}" if self.line is not None else "")
        head = ": ".join(part for part in (place, self.field) if part)
        text = f"{self.what}; {self.right}" if self.right else self.what
        return f"{head}: {text}" if head else text


class DraftError(Exception):
    """The draft cannot be made from what was given. Its text, `said` in her unit, is meant for the maker.

    Parameters: `what` cannot be had; the `value` that was given (with unit, as text); the `reach`
    that would do; what to `turn` (the way out).
    """

    def __init__(self, what: str, *, value: str = "", reach: str = "", turn: str = "") -> None:
        self.what, self.value, self.reach, self.turn = what, value, reach, turn
        parts = [what, f"given {value}" if value else "", f"reachable {reach}" if reach else ""]
        self.sentence = "; ".join(part for part in [", ".join(p for p in parts if p), turn] if part)
        super().__init__(self.sentence)

    def __str__(self) -> str:
        return self.said("mm")

    def said(self, unit: str | None) -> str:
        """Return the text with its lengths in `unit` (None: cm)."""
        return in_unit(self.sentence, unit)


class UnknownNameError(DraftError):
    """A piece or an edge that there is not; its text offers the nearest that there are."""


class InputError(DraftError):
    """Files that cannot be used: every fault of them once, in `faults`, by file and line."""

    def __init__(self, faults: tuple[Fault, ...] | list[Fault]) -> None:
        self.faults = tuple(sorted(_told_once(faults), key=lambda one: (one.file, one.line or 0)))
        super().__init__("\n".join(str(fault) for fault in self.faults))


def _told_once(faults: Iterable[Fault]) -> Iterator[Fault]:
    """Yield each fault once; that a value was written wrong is told with what is wrong with the value itself."""
    every = dict.fromkeys(faults)
    misquoted = {_value_of(one) for one in every if one.misquoted}
    judged = {_value_of(one) for one in every if not one.misquoted}
    for one in every:
        if one.misquoted and _value_of(one) in judged:
            continue
        if not one.misquoted and _value_of(one) in misquoted:
            right = f"{one.right}, and put straight quotes round the value".lstrip(", ")
            one = replace(one, right=right)
        yield one


def _value_of(fault: Fault) -> tuple[str, int | None, str]:
    """Return the file, the line and the key's own name: of which value a fault speaks."""
    return fault.file, fault.line, fault.field.rpartition(".")[2]
