"""How a block states its choices: unit, range, default, meaning and source of each.

A block's `Choices` is one small frozen dataclass whose fields are made by `choice(...)`. Sliders,
`drafting blocks`, the costume file's reader and the report are all built from `choices_of`.
"""

from __future__ import annotations

from dataclasses import dataclass, field, fields
from functools import lru_cache
from typing import Any, Literal

from drafting.ground.sources import Cited, Sources, in_words

Unit = Literal["mm", "deg", "percent", "ratio", "count", "word", "yes/no"]


@dataclass(frozen=True, slots=True)
class Choice:
    """One choice: its `name`, `unit`, `default`, range `low`..`high`, what it means, and its sources.

    `words` lists what a choice of unit "word" may be. `scales` says that the default is meant for
    an adult and shrinks with a small body (a value that a maker typed never does). `step` is what
    one key press on a slider moves.
    """

    name: str
    unit: Unit
    default: Any
    low: float | None
    high: float | None
    meaning: str
    source: Sources
    group: str
    step: float
    words: tuple[str, ...]
    scales: bool


def choice(
    default: Any,
    unit: Unit,
    meaning: str,
    *,
    low: float | None = None,
    high: float | None = None,
    source: Cited | Sources | str = "",
    group: str = "fit",
    step: float = 1.0,
    words: tuple[str, ...] = (),
    scales: bool = False,
) -> Any:
    """Return a dataclass field that carries a `Choice` (its name is the field's).

    `default`, `low`, `high` and `step` are in `unit`; for the rest see `Choice`. Nothing is raised
    here: a block from outside is asked when it is taken in use.

    >>> @dataclass(frozen=True)
    ... class Choices:
    ...     cape_length: float = choice(480.0, "mm", "neck to hem", low=300, high=1600, source="ours")
    >>> Choices().cape_length, choices_of(Choices)[0].high
    (480.0, 1600)
    """
    cited = in_words(source) if isinstance(source, str) else source
    sources = cited if isinstance(cited, tuple) else (cited,)
    about = {
        "unit": unit,
        "default": default,
        "low": low,
        "high": high,
        "meaning": meaning,
        "source": sources,
        "group": group,
        "step": step,
        "words": words,
        "scales": scales,
    }
    return field(default=default, metadata={"choice": about})


def choices_of(cls: type) -> tuple[Choice, ...]:
    """Return the `Choice` of every field of a block's `Choices` class, in the order written."""
    return _stated(cls)


@lru_cache(maxsize=256)
def _stated(cls: type) -> tuple[Choice, ...]:
    return tuple(Choice(name=f.name, **f.metadata["choice"]) for f in fields(cls))
