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
    one key press on a slider moves. `grows` says that the default grows with a large body too, `of_hand` that
    it is made for the hand and is one size on everybody but a doll (a button, an allowance). A length down
    the body `begins` at a landmark, so that it may be asked for down to another.
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
    grows: bool
    of_hand: bool
    begins: str


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
    grows: bool = False,
    of_hand: bool = False,
    begins: str = "",
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
        "grows": grows,
        "of_hand": of_hand,
        "begins": begins,
    }
    return field(default=default, metadata={"choice": about})


def choices_of(cls: type) -> tuple[Choice, ...]:
    """Return the `Choice` of every field of a block's `Choices` class, in the order written."""
    return _stated(cls)


@lru_cache(maxsize=256)
def _stated(cls: type) -> tuple[Choice, ...]:
    return tuple(Choice(name=f.name, **f.metadata["choice"]) for f in fields(cls))
