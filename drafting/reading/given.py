"""A value as it stood in the file, with the line it stood on."""

from __future__ import annotations

import difflib
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from typing import Literal, TypeVar

from drafting.ground.errors import Fault
from drafting.ground.units import BadValue, is_length_unit

_T = TypeVar("_T")

SaidWhere = Literal["file", "notebook"]
"""Where a maker said it: in the file, or by hand at a control of a notebook."""


@dataclass(frozen=True, slots=True)
class Given:
    """A raw `value` and its `line` (from 1; None where no file has one for it), and who said it."""

    value: object
    line: int | None = None
    source: SaidWhere = "file"


@dataclass(slots=True)
class Faults:
    """The faults of one `file`, collected while it is read."""

    file: str
    found: list[Fault] = field(default_factory=list)

    def add(self, what: str, right: str = "", field: str = "", line: int | None = None) -> None:
        """Note one fault of this file."""
        self.found.append(Fault(what, right, field, self.file, line))

    def value(self, parse: Callable[[object], _T], given: Given, field: str) -> _T | None:
        """Return `parse(given.value)`, or None with a fault noted when it raises `BadValue`."""
        try:
            return parse(given.value)
        except BadValue as bad:
            self.add(bad.what, bad.right, field, given.line)
            return None

    def word(self, given: Given, words: Iterable[str], field: str) -> str | None:
        """Return a value that must be one of `words`, or None with a fault noted."""
        options = tuple(words)
        if given.value in options:
            return str(given.value)
        right = f"write one of {', '.join(options)}{_maybe(str(given.value), options)}"
        self.add(f"'{str(given.value)[:40]}' is not known here", right, field, given.line)
        return None

    def unit(self, given: Given | None) -> str | None:
        """Return the file's unit of length, or None where it gives none (or a wrong one)."""
        if given is None:
            return None
        if isinstance(given.value, str) and is_length_unit(given.value):
            return given.value.strip().lower()
        right = 'write unit = "cm", "mm" or "in"'
        self.add(f"'{str(given.value)[:40]}' is no unit of length", right, "unit", given.line)
        return "cm"

    def unknown(self, name: str, known: Iterable[str], field: str, line: int | None) -> None:
        """Note a key that nobody knows, with the nearest one that somebody does."""
        options = tuple(known)
        right = _maybe(name, options).lstrip("; ") or f"known are {', '.join(options)}"
        self.add("is not known here", right, field, line)


def _maybe(name: str, options: tuple[str, ...]) -> str:
    close = difflib.get_close_matches(name, options, n=1, cutoff=0.5)
    return f"; did you mean {close[0]}?" if close else ""


def truth(value: object) -> bool:
    """Return a yes or a no; raises `BadValue` for anything else."""
    if isinstance(value, bool):
        return value
    text = value.strip().lower() if isinstance(value, str) else ""
    if text in ("yes", "true", "no", "false"):
        return text in ("yes", "true")
    raise BadValue(f"'{str(value)[:40]}' is neither yes nor no", "write true or false")


def plain_text(value: object) -> str:
    """Return a text (numbers and dates as they are written); raises `BadValue` for tables."""
    if isinstance(value, (dict, list)):
        raise BadValue("is a table where a text is wanted", 'write it in quotes, as in "cotton"')
    return str(value).strip()
