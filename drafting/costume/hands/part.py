"""One part of a garment drafted, and remembered by what it is drafted from.

A draft reads few of a body's measures: on another body with the same ones it is the same draft. So a
slider, an estimate moved to see what leans on it, or a measure tried drafts again only what changes.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, fields
from functools import lru_cache
from typing import Any

from drafting.body import Body
from drafting.costume.watched import note, unseen, watched
from drafting.draft.chain import Chain
from drafting.draft.draft import Draft
from drafting.fabric import Fabric
from drafting.ground.frozen import freeze

PARTS, BODIES = 64, 8
"""Parts remembered, and for each the bodies that it was drafted on last (ours)."""

_AROUND = tuple(sorted({field.name for field in fields(Body)} - {"measures"}))


@dataclass(frozen=True)
class GarmentPart:
    """What a part is drafted from beside the body; `before` is the draft that it changes, if it does.

    Choices with other defaults are of another class: they are told apart by their `values` alone.
    """

    name: str
    draft: Callable[..., Draft]
    fabric: Fabric | None
    values: tuple[tuple[str, Any], ...]
    chains: tuple[tuple[str, Chain], ...]
    choices: Any = field(compare=False)
    before: Draft | None = None

    def __hash__(self) -> int:
        return hash((self.name, self.values))

    def on(self, body: Body) -> Draft:
        """Return the part drafted on this body; raises what its block raises."""
        before = () if self.before is None else (self.before,)
        found: Draft = self.draft(*before, body, self.fabric, self.choices, **dict(self.chains))
        return found


@dataclass(frozen=True, eq=False)
class _Answer:
    """A draft, what it read of the body's measures, and what else the body was."""

    draft: Draft
    read: Mapping[str, tuple[Any, ...]]
    around: tuple[Any, ...]

    def __post_init__(self) -> None:
        freeze(self, "read")


def part_drafted(body: Body, part: GarmentPart) -> Draft:
    """Return one part on a body, drafted or remembered; raises what its block raises."""
    kept: deque[_Answer] = _answers(part)
    around = _around(body)
    for answer in reversed(kept):
        if answer.around == around and _reads_the_same(body, answer):
            kept.remove(answer)
            kept.append(answer)
            note(body, answer.read)
            return answer.draft
    asked: set[str] = set()
    draft = part.on(watched(body, asked))
    note(body, asked)
    kept.append(_Answer(draft, {name: unseen(body.measures[name]) for name in asked}, around))
    return draft


@lru_cache(maxsize=PARTS)
def _answers(part: GarmentPart) -> deque[_Answer]:
    return deque(maxlen=BODIES)


def _around(body: Body) -> tuple[Any, ...]:
    """Return what a draft may ask of a body beside its lengths, and which measures it has, by hand."""
    hands = tuple((name, m.left, m.right) for name, m in body.measures.items())
    return (*(getattr(body, name) for name in _AROUND), hands)


def _reads_the_same(body: Body, answer: _Answer) -> bool:
    return all(unseen(body.measures[name]) == was for name, was in answer.read.items())
