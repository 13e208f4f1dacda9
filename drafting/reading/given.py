"""A value as it stood in the file, with the line it stood on."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field, replace
from datetime import date, time
from typing import Literal, TypeVar

from drafting.ground.errors import Fault
from drafting.ground.names import clean_text
from drafting.ground.nearest import meant
from drafting.ground.units import SAY_UNIT, BadValue, NoUnit, as_written, is_length_unit

_T = TypeVar("_T")

SaidWhere = Literal["file", "notebook"]
"""Where a maker said it: in the file, or by hand at a control of a notebook."""


@dataclass(frozen=True, slots=True)
class Given:
    """A raw `value` and its `line` (from 1; None where no file has one for it), and who said it."""

    value: object
    line: int | None = None
    source: SaidWhere = "file"


@dataclass(frozen=True, slots=True)
class FilePlace:
    """Where something stands in a maker's files: the `file`, its line (from 1), and its name."""

    file: str = ""
    field: str = ""
    line: int | None = None

    def fault(self, what: str, right: str = "") -> Fault:
        """Return what is wrong here."""
        return Fault(what, right, self.field, self.file, self.line)


@dataclass(frozen=True, slots=True)
class Origin:
    """Where raw values come from: the file, its unit of length, and what heads their names."""

    file: str = ""
    unit: str | None = "mm"
    where: str = ""

    def field(self, name: str) -> str:
        return f"{self.where}.{name}" if self.where else name


MOST_FAULTS = 40
"""Faults told of one file (ours: who has more has taken the wrong file)."""

LONGEST_FIELD = 120
"""Characters told of a field's name."""


@dataclass(slots=True)
class Faults:
    """The faults of one `file`, collected while it is read; after `MOST_FAULTS` no more are told."""

    file: str
    found: list[Fault] = field(default_factory=list)
    count: int = 0
    bare: int = 0
    first_bare: int = 0

    def add(self, what: str, right: str = "", field: str = "", line: int | None = None) -> None:
        """Note one fault of this file."""
        self.count += 1
        if self.count == MOST_FAULTS + 1:
            what, right, field = "more is wrong from here on", "mend what is named first", ""
        if not self.full:
            name = clean_text(field, LONGEST_FIELD)
            self.found.append(Fault(what, right, name, self.file, line))

    @property
    def full(self) -> bool:
        """Whether nothing more will be told of this file."""
        return self.count > MOST_FAULTS + 1

    def value(self, parse: Callable[[object], _T], given: Given, field: str) -> _T | None:
        """Return `parse(given.value)`, or None with a fault noted when it raises `BadValue`."""
        try:
            return parse(given.value)
        except NoUnit as bad:
            self.without_unit(bad, field, given.line)
        except BadValue as bad:
            self.add(bad.what, bad.right, field, given.line)
        return None

    def without_unit(self, bad: NoUnit, field: str, line: int | None) -> None:
        """Note a length without a unit; what a whole file lacks is asked for once."""
        self.bare += 1
        if self.bare == 1:
            self.first_bare = len(self.found)
            self.add(bad.what, bad.right, field, line)
        elif self.first_bare < len(self.found):
            first, more = self.found[self.first_bare], self.bare - 1
            what = first.what.partition(", and ")[0]
            have = "1 more length has" if more == 1 else f"{more} more lengths have"
            self.found[self.first_bare] = replace(first, what=f"{what}, and {have} none", right=SAY_UNIT)

    def word(self, given: Given, words: Iterable[str], field: str) -> str | None:
        """Return a value that must be one of `words`, or None with a fault noted."""
        return self.value(lambda value: one_of(value, words), given, field)

    def unit(self, given: Given | None) -> str | None:
        """Return the file's unit of length, or None where it gives none (or a wrong one)."""
        if given is None:
            return None
        if isinstance(given.value, str) and is_length_unit(given.value):
            return given.value.strip().lower()
        right = 'write unit = "cm", "mm" or "in"'
        self.add(f"{as_written(given.value)} is no unit of length", right, "unit", given.line)
        return "cm"

    def unknown(self, spot: FilePlace, name: str, known: Iterable[str], listed: str = "") -> None:
        """Note a key that nobody knows, with the nearest that somebody does (or where all are)."""
        if not self.full:
            self.add("is not known here", meant(name, known, listed), spot.field, spot.line)


def one_of(value: object, words: Iterable[str], listed: str = "") -> str:
    """Return a value that is one of `words`; raises `BadValue` with the nearest of them.

    All that may be written are named, beside the nearest.
    """
    options = tuple(words)
    if isinstance(value, str) and value in options:
        return value
    options = tuple(filter(None, options))
    near = meant(as_written(value).strip("'"), options, listed)
    right = f"{near} it is one of {', '.join(options)}" if near.endswith("?") and not listed else near
    raise BadValue(f"{as_written(value)} is not known here", right)


def truth(value: object) -> bool:
    """Return a yes or a no; raises `BadValue` for anything else."""
    if isinstance(value, bool):
        return value
    text = value.strip().lower() if isinstance(value, str) else ""
    if text in ("yes", "true", "no", "false"):
        return text in ("yes", "true")
    raise BadValue(f"{as_written(value)} is neither yes nor no", "write true or false")


def plain_text(value: object) -> str:
    """Return a text (numbers and dates as they are written); raises `BadValue` for tables."""
    if isinstance(value, (dict, list)):
        what = f"is {as_written(value)} where a text is wanted"
        raise BadValue(what, 'write it in quotes, as in "cotton"')
    text = value if isinstance(value, (str, date, time)) else as_written(value)
    return str(text).strip()
