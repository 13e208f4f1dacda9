"""The choices of one garment: one flat set of names over all its parts and the finish.

The same name in two parts is one value. Where a whole garment gives a part other defaults (its
`PARTS`), those stand; what a maker typed beats both.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, fields, make_dataclass, replace
from functools import lru_cache
from typing import Any

from drafting.blocks import Block, all_blocks
from drafting.body import Body
from drafting.body.children import grows
from drafting.fabric import Fabric
from drafting.fabric.handling import handling
from drafting.finish import FinishChoices
from drafting.finish.choices import ONCE, AllowedFor, proposed
from drafting.ground.choices import Choice, choices_of
from drafting.ground.errors import Fault, InputError
from drafting.ground.frozen import freeze
from drafting.ground.nearest import meant
from drafting.ground.units import as_written
from drafting.reading.choices import ALL_CHOICES, ChosenBy, read_choices
from drafting.reading.given import Faults, FilePlace, Given, Origin

ALL_BLOCKS = "`drafting blocks` lists them all"


@dataclass(frozen=True)
class Chosen:
    """Filled choices: `parts` by block in drafting order, `finish`, and each value's source."""

    parts: Mapping[str, Any]
    finish: FinishChoices
    values: Mapping[str, tuple[Any, ChosenBy]]

    def __post_init__(self) -> None:
        freeze(self, "parts", "values")


def block_named(name: str, fault_field: str = "block", file: str = "", line: int | None = None) -> Block:
    """Return a block; an `InputError` offers the nearest names."""
    known = all_blocks()
    if name in known:
        return known[name]
    what, right = (
        f"there is no block {as_written(name)}",
        f"{meant(name, known, ALL_BLOCKS)} (a block of your own wants --blocks DIR)",
    )
    raise InputError([Fault(what, right, fault_field, file, line)])


def parts_of(block: Block) -> Mapping[str, Mapping[str, Any]]:
    """Return the blocks to draft in order, each with the defaults that differ."""
    return block.parts or {block.name: {}}


def garment_choices(block: Block) -> tuple[Choice, ...]:
    """Return every choice a garment of this block has, those of the finish last."""
    return (*block.choices, *choices_of(FinishChoices))


def choose(
    block: Block,
    given: Mapping[str, Given],
    scale: float,
    origin: Origin,
    sewn: AllowedFor = ONCE,
    growth: float = 1.0,
) -> Chosen:
    """Return the choices of a garment from raw values; `scale` shrinks adult defaults,
    `growth` is what those of style grow by.

    What is `sewn` for one who grows, or with its seams enclosed, gets allowances for it (`sewn_so`).

    Raises `InputError` with every fault: a name no part knows, a value out of its range.
    """
    filling = _Filling(given, scale, origin, Faults(origin.file), growth)
    known = [choice.name for choice in garment_choices(block)]
    for name, raw in given.items():
        if name not in known:
            spot = FilePlace(origin.file, origin.field(name), raw.line)
            filling.faults.unknown(spot, name, known, ALL_CHOICES)
    blocks = all_blocks()
    parts = {
        part: filling.fill(blocks[part].choices_class, defaults) for part, defaults in parts_of(block).items()
    }
    finish = replace(filling, scale=1.0).fill(FinishChoices, proposed(scale, sewn))
    if filling.faults.found:
        raise InputError(filling.faults.found)
    return Chosen(parts, finish, filling.values)


@dataclass
class _Filling:
    """The parts of a garment while they get their choices; `values` holds those read so far."""

    given: Mapping[str, Given]
    scale: float
    origin: Origin
    faults: Faults
    growth: float = 1.0
    values: dict[str, tuple[Any, ChosenBy]] = field(default_factory=dict)

    def fill(self, cls: type | None, defaults: Mapping[str, Any]) -> Any:
        """Return one part's choices; a name an earlier part has read keeps that part's value."""
        assert cls is not None
        names = [f.name for f in fields(cls)]
        own = {name: self.given[name] for name in names if name in self.given}
        kind = _with_defaults(cls, tuple(defaults.items()))
        try:
            chosen: Any
            chosen, sources = read_choices(kind, own, self.origin, self.scale, self.growth)
        except InputError as error:
            self.faults.found.extend(error.faults)
            return None
        shared = {name: self.values[name][0] for name in names if name in self.values}
        chosen = replace(chosen, **shared)
        new = {n: (getattr(chosen, n), sources[n]) for n in names if n not in self.values}
        self.values.update(new)
        return chosen


@lru_cache(maxsize=256)
def _with_defaults(cls: type, other: tuple[tuple[str, Any], ...]) -> type:
    """Return the choices class with some defaults changed; it is a kind of the same class."""
    defaults = dict(other)
    own = [
        (
            f.name,
            f.type,
            field(
                default=defaults[f.name],
                metadata={"choice": {**f.metadata["choice"], "default": defaults[f.name]}},
            ),
        )
        for f in fields(cls)
        if f.name in defaults
    ]
    return make_dataclass(cls.__name__, own, bases=(cls,), frozen=True) if own else cls


def sewn_so(body: Body, fabric: Fabric | None) -> AllowedFor:
    """Return what allowances depend on: nothing for a knit, which gives and is sewn in one pass."""
    if fabric is None:
        return AllowedFor(grows(body))
    if fabric.weave == "knit":
        return ONCE
    return AllowedFor(grows(body), handling(fabric).neatens == "french")
