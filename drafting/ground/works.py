"""A work that figures come from, as it is printed."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

SourceKind = Literal[
    "standard", "handbook", "survey", "paper", "common practice", "from memory", "ours", "in words"
]


@dataclass(frozen=True, slots=True)
class Work:
    """One work: its `name` in a line, who wrote or issued it, title, year and the place in it."""

    kind: SourceKind
    name: str
    by: str = ""
    title: str = ""
    year: int | None = None
    place: str = ""
