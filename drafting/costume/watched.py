"""A body that notes which of its measures a draft reads."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import fields, replace
from typing import Any

from drafting.body import Body, Measure

FIELDS = tuple(field.name for field in fields(Measure))


class WatchedMeasure(Measure):
    """A measure that notes its name when a draft reads its length, or whether it was measured.

    What is made from it (a measure of a body made smaller) notes nothing more, as it was read in
    the making.
    """

    __slots__ = ("asked", "name")
    asked: set[str]
    name: str

    def __getattribute__(self, field: str) -> Any:
        if field in ("mm", "source") and hasattr(self, "asked"):
            self.asked.add(self.name)
        return super().__getattribute__(field)

    def noting(self, name: str, asked: set[str]) -> WatchedMeasure:
        object.__setattr__(self, "name", name)
        object.__setattr__(self, "asked", asked)
        return self


def watched(body: Body, asked: set[str]) -> Body:
    """Return the body with measures that note in `asked` which of them a draft reads."""
    measures = {name: WatchedMeasure(*unseen(m)).noting(name, asked) for name, m in body.measures.items()}
    return replace(body, measures=measures)


def unseen(measure: Measure) -> tuple[Any, ...]:
    """Return the fields of a measure; one that is watched notes nothing."""
    return tuple(object.__getattribute__(measure, field) for field in FIELDS)


def note(body: Body, names: Iterable[str]) -> None:
    """Have a watched body note these measures as read."""
    for name in names:
        _ = body.measures[name].mm
